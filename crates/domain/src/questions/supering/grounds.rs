//! Grounds: each check with its outcome, and the facts and values it used.

use crate::basics::calendar::Day;
use crate::basics::sourced::Sourced;
use crate::basics::verdict::Verdict;
use crate::basics::words::{RemovalNeed, SupersDuring};
use crate::facts::history::{BroodSeen, Course, Doses, Doubt, End, FlowBefore, FlowSpan, SuperSpan, Term};
use crate::journal::entry::EntryId;

/// The outcome of a check.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Outcome {
    /// The condition holds.
    Met,
    /// The condition does not hold.
    Broken,
    /// A missing fact leaves it open.
    Unknown,
    /// Neither met nor broken, but the reader must know of it.
    Noted,
}

/// One ground of an answer.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'h> {
    /// The outcome of the check.
    pub outcome: Outcome,
    /// Whether the answer depends on it. Other grounds are shown too.
    pub decides: bool,
    /// The course it is about. `None` if it is about the colony.
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

    /// The entries that support it.
    #[must_use]
    pub fn entries(&self) -> Vec<EntryId> {
        let of_course = self.course.iter().flat_map(|course| end_entries(course, &self.reason));
        let own = match &self.reason {
            Reason::NotYetBegun { entry, .. }
            | Reason::Ended { entry, .. }
            | Reason::CameWithUnknown { entry }
            | Reason::RecordsInArchive { entry, .. }
            | Reason::NothingGiven { entry, .. }
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

/// The entries of a course behind a ground: its doses, and its end if the ground is about being out.
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

/// What was checked, with the facts used.
#[derive(Debug, Clone, Copy)]
pub enum Reason<'h> {
    /// No entry establishes this colony.
    ColonyNotRecorded,
    /// The colony was entered after the day asked about.
    NotYetBegun {
        /// The day it was entered.
        begun: Day,
        /// The entry that began it.
        entry: EntryId,
    },
    /// The colony has ended.
    Ended {
        /// The day it ended.
        on: Day,
        /// The entry that ended it.
        entry: EntryId,
    },
    /// The colony was entered with unknown medicines inside.
    CameWithUnknown {
        /// The entry that left it open.
        entry: EntryId,
    },
    /// Courses that may affect the day are in an archive.
    RecordsInArchive {
        /// The last day on which they may.
        through: Day,
        /// The archive entry.
        entry: EntryId,
    },
    /// No course is on record.
    NothingGiven {
        /// The entry that established the colony with nothing inside.
        entry: EntryId,
        /// The first day that no course in an archive can affect, if any are in one.
        since: Option<Day>,
    },
    /// It is in, and supers must be off meanwhile.
    StillIn {
        /// The rule on supers.
        supers: &'h Sourced<SupersDuring>,
    },
    /// It is in, and supers may be on meanwhile.
    InWithSupersAllowed {
        /// The rule on supers.
        supers: &'h Sourced<SupersDuring>,
    },
    /// A split or uniting did not say where the strips went.
    WhereaboutsNotSaid {
        /// The day of the split or uniting.
        since: Day,
        /// The entry of the split or uniting.
        entry: EntryId,
    },
    /// It is not known whether it is in or out, and supers are barred in either case.
    BarredEitherWay {
        /// It may be out since this day.
        since: Day,
        /// The reason for the doubt.
        doubt: Doubt,
    },
    /// One statement says that nothing stays in the hive, another gives a least stay: one of the two is wrong.
    NothingStaysYetStays {
        /// The statement that nothing stays.
        said: &'h Sourced<RemovalNeed>,
    },
    /// It must not be used right before a nectar flow, and it was, or that is not known.
    UsedBeforeFlow {
        /// The day since which it is out.
        out: Day,
        /// The first flow from then on, if one is on record.
        flow: Option<FlowSpan>,
        /// The ban.
        bar: &'h Sourced<FlowBefore>,
    },
    /// A term is missing, or its value is not documented.
    NotEstablished {
        /// The term.
        topic: Term,
        /// The undocumented value in days, if any.
        days: Option<&'h Sourced<u16>>,
        /// The undocumented rule on supers, if any.
        supers: Option<&'h Sourced<SupersDuring>>,
    },
    /// The withdrawal period is running.
    WithdrawalRuns {
        /// The day since which it is out.
        out: Day,
        /// The withdrawal period, in days.
        days: &'h Sourced<u16>,
    },
    /// The wait is running.
    WaitRuns {
        /// The day since which it is out.
        out: Day,
        /// The wait, in days.
        days: &'h Sourced<u16>,
    },
    /// It is out, and every period is over.
    PeriodsOver {
        /// The day since which it is out.
        out: Day,
        /// The withdrawal period, in days.
        withdrawal: &'h Sourced<u16>,
        /// The wait, in days.
        wait: &'h Sourced<u16>,
    },
    /// Supers may be on, but honey may not be taken yet.
    HarvestBarred {
        /// The rule on supers.
        supers: &'h Sourced<SupersDuring>,
        /// The last barred day, if known.
        through: Option<Day>,
    },
    /// How long it stayed, compared with the least stay.
    StayedAtLeast {
        /// The day it came out.
        until: Day,
        /// The least stay, in days.
        days: &'h Sourced<u16>,
        /// The last brood inspection by then, if the term depends on brood.
        brood: Option<BroodSeen>,
    },
    /// The least stay depends on brood, and no inspection counts.
    StayTurnsOnBrood {
        /// The day it came out.
        until: Day,
        /// Days with brood absent or at its lowest.
        shorter: u16,
        /// Days with brood present.
        longer: u16,
    },
    /// How long it stayed or has stayed, compared with the longest stay.
    StayedAtMost {
        /// The day it came out, or the day asked about.
        until: Day,
        /// The longest stay, in days.
        days: &'h Sourced<u16>,
        /// Whether it is still in.
        still_in: bool,
    },
    /// Doses given, compared with the stated number.
    DosesGiven {
        /// Doses given by the day asked about.
        given: usize,
        /// The stated doses.
        doses: &'h Sourced<Doses>,
    },
    /// A dose given too soon or too late after the previous one.
    DoseOffTime {
        /// Number of the dose, counted from 1.
        number: usize,
        /// The day it was given.
        on: Day,
        /// Days since the previous dose.
        after: i64,
        /// The stated doses.
        doses: &'h Sourced<Doses>,
    },
    /// Whether harvest supers were on while it was in and they had to be off.
    SupersWhileIn {
        /// The period with supers on, if any.
        span: Option<SuperSpan>,
        /// The rule on supers.
        supers: &'h Sourced<SupersDuring>,
    },
    /// The leaflet's rule on combs that were in the hive with it.
    CombsCarryOver {
        /// The rule, as worded in the built-in leaflet.
        text: &'h str,
    },
    /// A looser value was read after the treatment. It is ignored unless the wrong entry is corrected.
    ReadAfterwards {
        /// The term.
        topic: Term,
        /// The entry that states it.
        entry: EntryId,
    },
    /// A stated value is looser than the documented value of the built-in leaflet. The stated one is used.
    LooserThanLeaflet {
        /// The term.
        topic: Term,
    },
}
