//! The courses of one colony with their terms, and everything else that affects its supers.
//!
//! A [`History`] is derived from the files of a [`Holding`] and the [`Leaflets`] for each question. It follows splits
//! and unitings back, because a colony carries the courses and treated comb of the colonies it came from.

mod by_doses;
mod courses;
mod flows;
mod line;
mod periods;
mod plan;
mod resolve;
mod stated;
mod stay;
mod term;
pub mod terms;
mod timeline;
mod topics;
mod whereabouts;

use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::fact::Fact;
use crate::basics::words::{Brood, ColonyName, MedicineName, SuperPurpose};
use crate::facts::holding::{Holding, Record};
use crate::facts::{MedicineGiven, NotOnRecord};
use crate::journal::entry::EntryId;
use crate::journal::event::{Inspection, SupersOff, SupersOn};
use crate::rules::leaflet::Leaflets;
use crate::rules::leaflet::rule::BroodState;

pub use crate::facts::apiary::FlowSpan;
use by_doses::Known;
pub use flows::RIGHT_BEFORE_DAYS;
pub(crate) use flows::{BeforeFlow, before_flow};
pub(crate) use line::{Line, Planned};
pub(crate) use periods::{Bars, blocked_through, inside, withdrawal_bars};
pub(crate) use plan::{Ends, Plan};
pub(crate) use stated::label_revision;
pub use stay::Stay;
pub use term::Term;
pub use terms::{Doses, FlowBefore, TermValue, Terms};
pub use timeline::{DoseDue, EarliestOut, OutByBrood, Presence, Standing};
pub use whereabouts::Doubt;
pub(crate) use whereabouts::{Whereabouts, used_up, whereabouts};

/// Everything that affects whether one colony may be supered.
#[derive(Debug, Clone)]
pub struct History {
    /// The colony.
    pub colony: ColonyName,
    /// The day it was entered, and the entry.
    pub begun: Option<(Day, EntryId)>,
    /// Since when the medicine inside is not known, and the entry: the colony arrived that way, or was made from or
    /// united with one that did.
    pub unknown_since: Option<(Day, EntryId)>,
    /// Until which day courses in an archive may affect the answer, and the entry of that archive.
    pub archived_through: Option<(Day, EntryId)>,
    /// The day it ended, and the entry.
    pub ended: Option<(Day, EntryId)>,
    /// Its courses, in order of the first dose.
    pub courses: Vec<Course>,
    /// When harvest supers were on, in order.
    pub supers: Vec<SuperSpan>,
    /// Brood seen, in order of inspection: one for each day.
    pub broods: Vec<BroodSeen>,
    /// The nectar flows at its sites, by first day.
    pub flows: Vec<FlowSpan>,
}

/// One course in one colony: from the first dose to the removal of the last carrier. A medicine that leaves nothing
/// inside has doses only.
#[derive(Debug, Clone)]
pub struct Course {
    /// The entry of the first dose.
    pub entry: EntryId,
    /// The medicine, by the keeper's name.
    pub medicine: MedicineGiven,
    /// The name on its pack; empty if the medicine is not described.
    pub pack_name: Arc<str>,
    /// The day of the first dose.
    pub placed: Day,
    /// The doses, in order.
    pub doses: Vec<Dose>,
    /// How it ended in this colony.
    pub end: End,
    /// Day and entry of a split or uniting that did not say where the strips went. From then on it is uncertain whether
    /// the course is in, until it is recorded as out.
    pub in_doubt: Option<(Day, EntryId)>,
    /// The first day of this line in this colony.
    pub here_from: Day,
    /// The day from which a later dose continues the course on other terms, in another line.
    pub until: Option<Day>,
    /// The entry that brought it from another colony, if any.
    pub came_by: Option<EntryId>,
    /// The nectar flows at its sites, if it came from colonies that were united into this one. `None`: those of this
    /// colony apply.
    pub flows: Option<Vec<FlowSpan>>,
    /// The terms that apply to it, shared by the colonies with the same doses.
    pub terms: Arc<Terms>,
}

impl Course {
    /// The name on its pack, or the keeper's name if the medicine is not described.
    #[must_use]
    pub fn called(&self) -> Fact<&str, NotOnRecord> {
        if self.pack_name.is_empty() {
            self.medicine.as_ref().map(MedicineName::as_str)
        } else {
            Fact::Known(&self.pack_name)
        }
    }
}

/// One dose.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Dose {
    /// The day it was given.
    pub on: Day,
    /// The time of day, if noted.
    pub at: Option<TimeOfDay>,
    /// The entry that recorded it.
    pub entry: EntryId,
}

impl Dose {
    /// Whether it was given on the day of an event and no time shows which came first.
    pub(crate) fn may_be_before_or_after(&self, event: &Record) -> bool {
        let told = self.at.zip(event.at).is_some_and(|(given, happened)| given != happened);
        self.on == event.on && !told
    }
}

/// How a course ended in a colony.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// No removal is recorded: a carrier is still in, unless it is used up.
    Open,
    /// All of it came out: removed, or taken along in a split.
    Out {
        /// The day it came out.
        on: Day,
        /// The removal, split or uniting that says so.
        entry: EntryId,
    },
}

/// A period with harvest supers on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = SupersReport))]
pub struct SuperSpan {
    /// The day the supers went on.
    pub from: Day,
    /// The day the last of them came off; null while any are on.
    pub off: Option<Day>,
    /// The entry that put them on.
    pub entry: EntryId,
}

/// Brood seen on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = BroodReport))]
pub struct BroodSeen {
    /// The day of the inspection.
    pub on: Day,
    /// How much brood was seen.
    pub brood: Brood,
    /// The entry that recorded it.
    pub entry: EntryId,
}

/// An inspection counts for the brood of a course if it was made at most this many days before placing.
///
/// Common practice, no source: worker brood takes three weeks from egg to bee, so brood seen earlier has emerged.
pub const BROOD_TELLS_DAYS: u16 = 21;

/// Derives the histories of several colonies of a holding. Work common to them is done once, since most courses are
/// given to many colonies.
pub struct Histories<'h> {
    holding: &'h Holding,
    known: Known<'h>,
}

impl<'h> Histories<'h> {
    /// The histories of the colonies of this holding.
    #[must_use]
    pub fn new(holding: &'h Holding, leaflets: &'h Leaflets) -> Histories<'h> {
        Histories { holding, known: Known::new(holding, leaflets) }
    }

    /// Derives the history of a colony; empty for a colony that was never entered.
    pub fn of(&mut self, colony: &ColonyName) -> History {
        let holding = self.holding;
        let life = holding.life(colony);
        let courses = courses::of(holding, &mut self.known, colony);
        History {
            colony: colony.clone(),
            begun: life.begun.map(|record| (record.on, record.id)),
            unknown_since: holding.unknown_since(colony).map(|record| (record.on, record.id)),
            archived_through: holding.archived_through(),
            ended: life.ended.map(|record| (record.on, record.id)),
            courses,
            supers: supers(holding.colony_file(colony)),
            broods: broods(holding.colony_file(colony)),
            flows: flows::of(holding, colony),
        }
    }
}

impl History {
    /// Derives the history of a colony; empty for a colony that was never entered. Use [`Histories`] for several
    /// colonies.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName) -> History {
        Histories::new(holding, leaflets).of(colony)
    }

    /// The nectar flows that count for a line of a course.
    pub(crate) fn flows_of<'h>(&'h self, line: &'h impl Line) -> &'h [FlowSpan] {
        line.own_flows().unwrap_or(&self.flows)
    }

    /// The history at the end of a day, without later events.
    #[must_use]
    pub(crate) fn up_to(mut self, day: Day) -> History {
        self.begun = self.begun.filter(|(on, _)| *on <= day);
        self.unknown_since = self.unknown_since.filter(|(on, _)| *on <= day);
        self.ended = self.ended.filter(|(on, _)| *on <= day);
        self.courses.retain(|course| course.placed <= day && course.here_from <= day);
        for course in &mut self.courses {
            course.doses.retain(|dose| dose.on <= day);
            course.in_doubt = course.in_doubt.filter(|(on, _)| *on <= day);
            course.until = course.until.filter(|until| *until <= day);
            if course.out_by(day).is_none() {
                course.end = End::Open;
            }
        }
        self.supers.retain(|span| span.from <= day);
        for span in &mut self.supers {
            span.off = span.off.filter(|off| *off <= day);
        }
        self.broods.retain(|seen| seen.on <= day);
        self
    }

    /// The lines of courses that apply on a day, with the terms of that day.
    #[must_use = "iterators are lazy"]
    pub fn courses_on(&self, on: Day) -> impl DoubleEndedIterator<Item = &Course> {
        self.courses.iter().filter(move |course| course.speaks_on(on))
    }

    /// The last brood inspection by the end of a day that counts for a course: made while it was in, or at most
    /// [`BROOD_TELLS_DAYS`] before it was placed.
    #[must_use]
    pub fn brood_for(&self, course: &Course, on: Day) -> Option<&BroodSeen> {
        let earliest = course.placed.minus(BROOD_TELLS_DAYS);
        let by_then = self.broods.partition_point(|seen| seen.on <= on);
        self.broods.get(..by_then)?.last().filter(|seen| seen.on >= earliest)
    }

    /// The harvest supers on at the end of a day.
    #[must_use]
    pub fn supers_on(&self, on: Day) -> Option<&SuperSpan> {
        self.supers.iter().rfind(|span| span.from <= on && span.off.is_none_or(|off| on < off))
    }

    /// The first period with harvest supers on that had not ended by the end of a day.
    pub(crate) fn supers_after(&self, day: Day) -> Option<&SuperSpan> {
        self.supers.get(self.supers.partition_point(|span| span.off.is_some_and(|off| off <= day)))
    }
}

impl BroodSeen {
    /// The brood state, as leaflets distinguish it.
    #[must_use]
    pub fn state(&self) -> BroodState {
        BroodState::seen(self.brood)
    }
}

impl Course {
    /// The day by which everything had come out, if it has.
    #[must_use]
    pub fn out(&self) -> Option<Day> {
        match self.end {
            End::Out { on, .. } => Some(on),
            End::Open => None,
        }
    }

    /// The day by which everything had come out, if that was by the end of `on`.
    #[must_use]
    pub fn out_by(&self, on: Day) -> Option<Day> {
        self.out().filter(|out| *out <= on)
    }

    /// The doses given by the end of a day.
    #[must_use = "iterators are lazy"]
    pub fn doses_by(&self, on: Day) -> impl DoubleEndedIterator<Item = &Dose> {
        self.doses.iter().filter(move |dose| dose.on <= on)
    }
}

/// The periods with harvest supers on. The file must be that of one colony: it holds only entries that name it.
fn supers(file: &[Arc<Record>]) -> Vec<SuperSpan> {
    let mut spans: Vec<SuperSpan> = Vec::new();
    for record in file {
        let on = record.body::<SupersOn>();
        let on = on.filter(|on| on.purpose == SuperPurpose::Harvest);
        let off = record.body::<SupersOff>().filter(|off| off.left_on == 0);
        match spans.last_mut().filter(|span| span.off.is_none()) {
            Some(last) if off.is_some() => last.off = Some(record.on),
            None if on.is_some() => spans.push(SuperSpan { from: record.on, off: None, entry: record.id }),
            Some(_) | None => {}
        }
    }
    spans
}

/// The brood seen on each day. The latest inspection of a day counts. Without times, the one with the most brood
/// counts, since more brood means a longer stay.
fn broods(file: &[Arc<Record>]) -> Vec<BroodSeen> {
    let mut seen: Vec<(Option<TimeOfDay>, BroodSeen)> = Vec::new();
    for record in file {
        let Some(inspection) = record.body::<Inspection>() else { continue };
        let Some(brood) = inspection.brood else { continue };
        let next = BroodSeen { on: record.on, brood, entry: record.id };
        match seen.last_mut() {
            Some((at, last)) if last.on == next.on => {
                let by_clock = at.zip(record.at);
                if by_clock.map_or(next.brood > last.brood, |(earlier, later)| later > earlier) {
                    *at = record.at;
                    *last = next;
                }
            }
            _ => seen.push((record.at, next)),
        }
    }
    seen.into_iter().map(|(_, seen)| seen).collect()
}
