//! The courses of one colony, each with its terms, and everything else that affects its supers.
//!
//! A [`History`] is derived from the files of a [`Holding`] and the [`Leaflets`] when a question is asked. It follows splits
//! and unitings back, because a colony carries the courses and the treated comb of the colonies it came from.

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
use crate::basics::words::{Brood, ColonyName, MedicineName, SuperPurpose};
use crate::facts::holding::{Holding, Record};
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
    /// When it came into the record, and by which entry.
    pub begun: Option<(Day, EntryId)>,
    /// Since when the medicine inside is not known: the colony came that way, or was made from or united with one that
    /// did.
    pub unknown_since: Option<(Day, EntryId)>,
    /// When it ended, and by which entry.
    pub ended: Option<(Day, EntryId)>,
    /// Its courses, in the order of placing.
    pub courses: Vec<Course>,
    /// When harvest supers were on.
    pub supers: Vec<SuperSpan>,
    /// Brood seen, in the order of inspection.
    pub broods: Vec<BroodSeen>,
    /// The nectar flows it stood in, by first day.
    pub flows: Vec<FlowSpan>,
}

/// One course in one colony: from the first dose to the removal of the last carrier, or one dose.
#[derive(Debug, Clone)]
pub struct Course {
    /// The entry of the first dose.
    pub entry: EntryId,
    /// The medicine, by the keeper's name.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: Arc<str>,
    /// The day of the first dose.
    pub placed: Day,
    /// The doses, in order.
    pub doses: Vec<Dose>,
    /// What became of it in this colony.
    pub end: End,
    /// The split or uniting that did not say where the strips went, and its day. From then on it is uncertain whether the
    /// course is in, until it is recorded as out.
    pub in_doubt: Option<(Day, EntryId)>,
    /// The first day on which this colony had part in it.
    pub here_from: Day,
    /// The day from which the same course continues with other terms, brought by a later dose.
    pub until: Option<Day>,
    /// The entry that brought it to this colony from another, if one did.
    pub came_by: Option<EntryId>,
    /// The nectar flows it stood in, if it came from colonies that were united into this one; otherwise those of this
    /// colony apply.
    pub flows: Option<Vec<FlowSpan>>,
    /// The terms that apply to it. Colonies that were given the same share them.
    pub terms: Arc<Terms>,
}

/// One dose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = DoseReport))]
pub struct Dose {
    /// The day it was given.
    pub on: Day,
    /// The time of day, if noted.
    #[serde(skip)]
    pub at: Option<TimeOfDay>,
    /// The entry that recorded it.
    pub entry: EntryId,
}

impl Dose {
    /// Whether it was given on the day of an event, and no clock shows which came first.
    pub(crate) fn may_be_before_or_after(&self, event: &Record) -> bool {
        let told = self.at.zip(event.at).is_some_and(|(given, happened)| given != happened);
        self.on == event.on && !told
    }
}

/// How a course ended in a colony.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum End {
    /// Nothing was recorded: a carrier is still in.
    Open,
    /// All of it came out: taken out, or gone with a split.
    Out {
        /// The day.
        on: Day,
        /// The entry that says so.
        entry: EntryId,
    },
}

/// A period with harvest supers on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = SupersReport))]
pub struct SuperSpan {
    /// The day they went on.
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
    /// The day.
    pub on: Day,
    /// The brood seen.
    pub brood: Brood,
    /// The entry that recorded it.
    pub entry: EntryId,
}

/// How many days before placing an inspection still counts for the brood of the course.
///
/// Common practice, no source: worker brood takes three weeks from egg to bee, so brood seen earlier has emerged.
pub const BROOD_TELLS_DAYS: u16 = 21;

/// The histories of several colonies of a holding, one after another. What they share is worked out once: most courses are
/// given to many colonies.
pub struct Histories<'h> {
    holding: &'h Holding,
    known: Known<'h>,
}

impl<'h> Histories<'h> {
    /// Those of this holding.
    #[must_use]
    pub fn new(holding: &'h Holding, leaflets: &'h Leaflets) -> Histories<'h> {
        Histories { holding, known: Known::new(holding, leaflets) }
    }

    /// Derives the history of a colony; an empty one for a colony that nobody entered.
    pub fn of(&mut self, colony: &ColonyName) -> History {
        let holding = self.holding;
        let life = holding.life(colony);
        let courses = courses::of(holding, &mut self.known, colony);
        History {
            colony: colony.clone(),
            begun: life.begun.map(|record| (record.on, record.id)),
            unknown_since: holding.unknown_since(colony).map(|record| (record.on, record.id)),
            ended: life.ended.map(|record| (record.on, record.id)),
            courses,
            supers: supers(holding.colony_file(colony)),
            broods: broods(holding.colony_file(colony)),
            flows: flows::of(holding, colony),
        }
    }
}

impl History {
    /// Derives the history of a colony; an empty one for a colony that nobody entered. See [`Histories`] for several.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, colony: &ColonyName) -> History {
        Histories::new(holding, leaflets).of(colony)
    }

    /// The nectar flows that a line of a course stands in.
    pub(crate) fn flows_of<'h>(&'h self, line: &'h impl Line) -> &'h [FlowSpan] {
        line.own_flows().unwrap_or(&self.flows)
    }

    /// The history as it stood at the end of a day, without later events.
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

    /// The courses that this colony has or had part in by the end of a day, each with the terms of that day.
    #[must_use = "iterators are lazy"]
    pub fn courses_on(&self, on: Day) -> impl DoubleEndedIterator<Item = &Course> {
        self.courses.iter().filter(move |course| course.speaks_on(on))
    }

    /// The last brood inspection by the end of a day that counts for a course: made while it was in, or shortly before
    /// it was placed.
    #[must_use]
    pub fn brood_for(&self, course: &Course, on: Day) -> Option<&BroodSeen> {
        let earliest = course.placed.minus(BROOD_TELLS_DAYS);
        self.broods.iter().rfind(|seen| seen.on <= on).filter(|seen| seen.on >= earliest)
    }

    /// The harvest supers on at the end of a day.
    #[must_use]
    pub fn supers_on(&self, on: Day) -> Option<&SuperSpan> {
        self.supers.iter().rfind(|span| span.from <= on && span.off.is_none_or(|off| on < off))
    }
}

impl BroodSeen {
    /// The state that leaflets distinguish.
    #[must_use]
    pub fn state(&self) -> BroodState {
        BroodState::seen(self.brood)
    }
}

impl Course {
    /// The day by which all of it had come out, if it has.
    #[must_use]
    pub fn out(&self) -> Option<Day> {
        match self.end {
            End::Out { on, .. } => Some(on),
            End::Open => None,
        }
    }

    /// The day by which all of it had come out, if it had by the end of `on`.
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

/// An entry is in the files of the colonies that it names, and in no other.
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

/// Of several inspections on one day the latest by the clock counts; without times, the one with the most brood, since
/// more brood means a longer stay.
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
