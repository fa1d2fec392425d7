//! The tasks, each with the facts that the keeper sees beside its days.

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::LotName;
use crate::facts::NotOnRecord;
use crate::facts::history::{Course, Term};
use crate::journal::event::Kind;
use crate::questions::gaps::Gap;
use crate::questions::stock::Lot;
use crate::questions::supering::AskedFor;

/// A course, as named to the keeper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CourseName {
    /// The name on the pack, or the keeper's name of the medicine if none is recorded.
    pub pack: Fact<String, NotOnRecord>,
    /// The day of the first dose.
    pub placed: Day,
    /// Whether nothing of it stays in the hive: it is then given, not placed.
    pub nothing_stays: bool,
}

impl CourseName {
    pub(super) fn of(course: &Course) -> CourseName {
        let pack = course.called().map(str::to_owned);
        CourseName { pack, placed: course.placed, nothing_stays: course.terms.nothing_stays() }
    }
}

/// A task. Tasks of one apiary with equal facts are grouped, so this holds only the facts shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ToDo {
    /// Take the honey supers off.
    TakeSupersOff {
        /// The day since which they are on.
        since: Day,
        /// The courses that bar them.
        barring: Vec<CourseName>,
    },
    /// Take the honey supers off before the next dose: they may be on today, and not when it is given.
    TakeSupersOffForDose {
        /// The course.
        course: CourseName,
        /// Number of the dose, counted from 1.
        number: u8,
    },
    /// Find out where a course went when the colony was split or united.
    FindCarriers {
        /// The course.
        course: CourseName,
        /// The day of that split or uniting.
        since: Day,
    },
    /// Record how a course ended that was in when the colony ended.
    RecordEnd {
        /// The course.
        course: CourseName,
        /// The day the colony ended.
        ended: Day,
    },
    /// Give the next dose.
    GiveDose {
        /// The course.
        course: CourseName,
        /// Number of the dose, counted from 1.
        number: u8,
        /// Number of doses in the course.
        of: u8,
    },
    /// Take a course out.
    TakeOut {
        /// The course.
        course: CourseName,
        /// The earliest day on which it may come out.
        earliest: Fact<Day, Term>,
    },
    /// Nothing to do: the course is used up.
    UsedUp {
        /// The course.
        course: CourseName,
        /// The day on which it is used up.
        on: Day,
    },
    /// Supers may go on.
    PutSupersOn {
        /// The course that began last.
        course: CourseName,
        /// The first free day.
        free: Day,
        /// The day on which everything must be out for that, if a medicine is in.
        if_out_on: Option<Day>,
    },
    /// Count mites after a course.
    CountMites {
        /// The course.
        course: CourseName,
        /// The day it ended.
        ended: Day,
        /// The first day on which a count shows whether it worked.
        from: Day,
        /// The last such day.
        by: Day,
    },
    /// Ask the former keeper what medicine was in the colony.
    AskFormerKeeper {
        /// The day the colony was entered.
        since: Day,
    },
    /// Read terms of a course on its leaflet.
    ReadLeaflet {
        /// The course.
        course: CourseName,
        /// The lots given to the colony.
        lots: Vec<LotName>,
        /// The terms, at least one.
        terms: Vec<Term>,
    },
    /// Record another missing fact that the supering question needs.
    RecordMissing {
        /// The course.
        course: CourseName,
        /// The kind of entry that supplies it.
        supplied_by: Kind,
        /// The lots given to the colony, if a leaflet must be read.
        lots: Vec<LotName>,
        /// The information the keeper is asked for.
        asks_for: AskedFor,
        /// The lots named with it.
        lots_asked: Vec<LotName>,
        /// Further terms that the same look at the leaflet gives.
        terms: Vec<Term>,
    },
    /// Use up an opened lot.
    UseUpOpened {
        /// The lot.
        lot: Box<Lot>,
        /// The last day.
        until: Day,
    },
    /// Use up a lot before it expires.
    UseUpLot {
        /// The lot.
        lot: Box<Lot>,
        /// The last day.
        expiry: Day,
    },
    /// Dispose of a lot that has expired or was open for too long.
    DisposeOfLot {
        /// The lot.
        lot: Box<Lot>,
    },
    /// Record something that the law requires.
    CompleteRecord {
        /// The missing fact.
        gap: Box<Gap>,
    },
}

impl ToDo {
    /// The lots whose leaflet is to be read, if that is the task.
    #[must_use]
    pub fn leaflets_of(&self) -> &[LotName] {
        if let ToDo::ReadLeaflet { lots, .. }
        | ToDo::RecordMissing { lots, supplied_by: Kind::LeafletReading, .. } = self
        {
            lots
        } else {
            &[]
        }
    }
}
