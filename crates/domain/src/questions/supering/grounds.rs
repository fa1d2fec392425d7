//! Grounds: what was checked, how it came out, and the facts and values used.

use crate::basics::calendar::Day;
use crate::basics::sourced::Sourced;
use crate::basics::verdict::Verdict;
use crate::basics::words::{RemovalNeed, SupersDuring};
use crate::facts::history::{BroodSeen, Course, Doses, Doubt, End, FlowBefore, FlowSpan, SuperSpan, Term};
use crate::journal::entry::EntryId;

/// How something came out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Outcome {
    /// It holds.
    Met,
    /// It does not hold.
    Broken,
    /// Something is missing to tell.
    Unknown,
    /// Neither: a reader must know of it.
    Noted,
}

/// One ground of an answer.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'h> {
    /// How it came out.
    pub outcome: Outcome,
    /// Whether the answer depends on it. Grounds that do not decide are shown all the same.
    pub decides: bool,
    /// The course it is about; none if it is about the colony.
    pub course: Option<&'h Course>,
    /// What was checked.
    pub reason: Reason<'h>,
}

impl Ground<'_> {
    /// The verdict of this ground.
    #[must_use]
    pub fn verdict(&self) -> Verdict {
        super::assess::says(self.outcome, self.decides)
    }

    /// The entries it rests on.
    #[must_use]
    pub fn entries(&self) -> Vec<EntryId> {
        let of_course = self.course.iter().flat_map(|course| end_entries(course, &self.reason));
        let own = match &self.reason {
            Reason::NotYetBegun { entry, .. }
            | Reason::Ended { entry, .. }
            | Reason::CameWithUnknown { entry }
            | Reason::NothingGiven { entry }
            | Reason::WhereaboutsNotSaid { entry, .. }
            | Reason::BarredEitherWay { doubt: Doubt::NotSaid { entry, .. }, .. }
            | Reason::ReadAfterwards { entry, .. } => Some(*entry),
            Reason::NothingStaysYetStays { said } => said.authority.entry(),
            Reason::UsedBeforeFlow { flow, .. } => flow.map(|flow| flow.entry),
            Reason::StayedAtLeast { brood, .. } => brood.map(|seen| seen.entry),
            Reason::SupersWhileIn { span, .. } => span.map(|span| span.entry),
            Reason::ColonyNotRecorded
            | Reason::StillIn { .. }
            | Reason::InWithSupersAllowed { .. }
            | Reason::BarredEitherWay { .. }
            | Reason::NotEstablished { .. }
            | Reason::WithdrawalRuns { .. }
            | Reason::WaitRuns { .. }
            | Reason::PeriodsOver { .. }
            | Reason::HarvestBarred { .. }
            | Reason::StayTurnsOnBrood { .. }
            | Reason::StayedAtMost { .. }
            | Reason::DosesGiven { .. }
            | Reason::DoseOffTime { .. }
            | Reason::CombsCarryOver { .. }
            | Reason::LooserThanLeaflet { .. } => None,
        };
        of_course.chain(own).collect()
    }
}

/// The entries of a course that a ground rests on: its doses, and its end if the ground is about being out.
fn end_entries(course: &Course, reason: &Reason<'_>) -> Vec<EntryId> {
    let mut entries: Vec<EntryId> = course.doses.iter().map(|dose| dose.entry).collect();
    let reads_end = matches!(
        reason,
        Reason::PeriodsOver { .. }
            | Reason::WithdrawalRuns { .. }
            | Reason::WaitRuns { .. }
            | Reason::UsedBeforeFlow { .. }
            | Reason::StayedAtLeast { .. }
            | Reason::StayTurnsOnBrood { .. }
            | Reason::StayedAtMost { still_in: false, .. }
    );
    if let End::Out { entry, .. } = course.end
        && reads_end
    {
        entries.push(entry);
    }
    entries
}

/// What was checked.
#[derive(Debug, Clone, Copy)]
pub enum Reason<'h> {
    /// No entry establishes this colony.
    ColonyNotRecorded,
    /// The colony came into the record later.
    NotYetBegun {
        /// On this day.
        begun: Day,
        /// By this entry.
        entry: EntryId,
    },
    /// The colony has ended.
    Ended {
        /// On this day.
        on: Day,
        /// By this entry.
        entry: EntryId,
    },
    /// It came into the record with medicines not known.
    CameWithUnknown {
        /// By this entry.
        entry: EntryId,
    },
    /// No course is on record.
    NothingGiven {
        /// The entry that brought the colony into the record with nothing inside.
        entry: EntryId,
    },
    /// It is in, and supers must be off while it is.
    StillIn {
        /// The term.
        supers: &'h Sourced<SupersDuring>,
    },
    /// It is in, and supers may be on while it is.
    InWithSupersAllowed {
        /// The term.
        supers: &'h Sourced<SupersDuring>,
    },
    /// A split or uniting did not say where the strips went.
    WhereaboutsNotSaid {
        /// On this day.
        since: Day,
        /// By this entry.
        entry: EntryId,
    },
    /// It is not known whether it is in or out; supers are barred in either case.
    BarredEitherWay {
        /// It may be out since this day.
        since: Day,
        /// Why that is not known.
        doubt: Doubt,
    },
    /// A person stated that nothing stays in the hive, but a least stay is known: one of the two is wrong.
    NothingStaysYetStays {
        /// The statement.
        said: &'h Sourced<RemovalNeed>,
    },
    /// It must not be used right before a nectar flow, and was, or nobody can tell.
    UsedBeforeFlow {
        /// It was out since this day.
        out: Day,
        /// The first flow from then on, if one is on record.
        flow: Option<FlowSpan>,
        /// The term.
        bar: &'h Sourced<FlowBefore>,
    },
    /// A term is missing, or its value is not documented.
    NotEstablished {
        /// Which.
        topic: Term,
        /// The undocumented value in days, if there is one.
        days: Option<&'h Sourced<u16>>,
        /// The undocumented statement on supers, if there is one.
        supers: Option<&'h Sourced<SupersDuring>>,
    },
    /// The withdrawal period is running.
    WithdrawalRuns {
        /// Since this day.
        out: Day,
        /// The term.
        days: &'h Sourced<u16>,
    },
    /// The wait is running.
    WaitRuns {
        /// Since this day.
        out: Day,
        /// The term.
        days: &'h Sourced<u16>,
    },
    /// It is out, and every period is over.
    PeriodsOver {
        /// Since this day.
        out: Day,
        /// The withdrawal period.
        withdrawal: &'h Sourced<u16>,
        /// The wait.
        wait: &'h Sourced<u16>,
    },
    /// Honey may not be taken yet, though supers may be on.
    HarvestBarred {
        /// The statement on supers.
        supers: &'h Sourced<SupersDuring>,
        /// The last day on which it is barred, if known.
        through: Option<Day>,
    },
    /// How long it stayed, compared with the least stay.
    StayedAtLeast {
        /// Until this day.
        until: Day,
        /// The term.
        days: &'h Sourced<u16>,
        /// The brood last seen by then, if the term depends on it.
        brood: Option<BroodSeen>,
    },
    /// The least stay depends on brood, and none was seen by then.
    StayTurnsOnBrood {
        /// Until this day.
        until: Day,
        /// With brood absent or at its lowest.
        shorter: u16,
        /// With brood present.
        longer: u16,
    },
    /// How long it stayed or has stayed, compared with the most.
    StayedAtMost {
        /// Until this day.
        until: Day,
        /// The term.
        days: &'h Sourced<u16>,
        /// Whether it is still in.
        still_in: bool,
    },
    /// Doses given, compared with those of a course.
    DosesGiven {
        /// This many by this day.
        given: usize,
        /// The term.
        doses: &'h Sourced<Doses>,
    },
    /// A dose that came sooner or later after the previous one than the leaflet says.
    DoseOffTime {
        /// Which dose, counted from 1.
        number: usize,
        /// The day it was given.
        on: Day,
        /// This many days after the previous one.
        after: i64,
        /// The term.
        doses: &'h Sourced<Doses>,
    },
    /// Harvest supers, while it was in and they had to be off.
    SupersWhileIn {
        /// The stretch of days, if any.
        span: Option<SuperSpan>,
        /// The term.
        supers: &'h Sourced<SupersDuring>,
    },
    /// What the leaflet says about combs that were in the hive with it.
    CombsCarryOver {
        /// The rule, in the words of our leaflet data.
        text: &'h str,
    },
    /// A looser value was read after the treatment. It is not used unless the wrong entry is corrected.
    ReadAfterwards {
        /// Which.
        topic: Term,
        /// The entry that states it.
        entry: EntryId,
    },
    /// A stated value is looser than the documented one of the built-in leaflet. It is used.
    LooserThanLeaflet {
        /// Which.
        topic: Term,
    },
}
