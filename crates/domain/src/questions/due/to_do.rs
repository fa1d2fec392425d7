//! What is to be done, with the facts that a person is told of it beside its days.

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::LotName;
use crate::facts::history::{Course, Term};
use crate::journal::event::Kind;
use crate::questions::gaps::Gap;
use crate::questions::stock::Lot;
use crate::questions::supering::AskedFor;

/// A course, by what names it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CourseName {
    /// The name on the pack; the keeper's name of the medicine where none is recorded.
    pub pack: String,
    /// The day of the first dose.
    pub placed: Day,
    /// Whether nothing of it stays in the hive to be taken out, so that it is given and not placed.
    pub nothing_stays: bool,
}

impl CourseName {
    pub(super) fn of(course: &Course) -> CourseName {
        let pack = if course.pack_name.is_empty() { course.medicine.as_str() } else { &course.pack_name };
        let nothing_stays = course.terms.nothing_stays();
        CourseName { pack: pack.to_owned(), placed: course.placed, nothing_stays }
    }
}

/// What is to be done. Tasks of one apiary that are told alike are taken together, so that nothing stands here but what is told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ToDo {
    /// Take the honey supers off.
    TakeSupersOff {
        /// They are on since this day.
        since: Day,
        /// What bars them.
        barring: Vec<CourseName>,
    },
    /// Look where a course went when the colony was split or united.
    FindCarriers {
        /// The course.
        course: CourseName,
        /// The day on which that was not said.
        since: Day,
    },
    /// Record what became of a course that was in when the colony ended.
    RecordEnd {
        /// The course.
        course: CourseName,
        /// The day on which the colony ended.
        ended: Day,
    },
    /// Give the next dose.
    GiveDose {
        /// The course.
        course: CourseName,
        /// Which dose it is, counted from 1.
        number: u8,
        /// Of how many.
        of: u8,
    },
    /// Take a course out.
    TakeOut {
        /// The course.
        course: CourseName,
        /// From when it may come out.
        earliest: Fact<Day, Term>,
    },
    /// Nothing: it is used up.
    UsedUp {
        /// The course.
        course: CourseName,
        /// The day on which it is.
        on: Day,
    },
    /// Supers may go on.
    PutSupersOn {
        /// The course that was begun last.
        course: CourseName,
        /// The first free day.
        free: Day,
        /// The day on which everything must be out for that, where something is in.
        if_out_on: Option<Day>,
    },
    /// Count mites after a course.
    CountMites {
        /// The course.
        course: CourseName,
        /// The day on which it ended.
        ended: Day,
        /// The first day on which the count tells whether it worked.
        from: Day,
        /// The last such day.
        by: Day,
    },
    /// Ask whoever kept the colony before what medicine was in it.
    AskFormerKeeper {
        /// The day on which it came into the record.
        since: Day,
    },
    /// Read terms of a course on its leaflet.
    ReadLeaflet {
        /// The course.
        course: CourseName,
        /// The lots that were given to the colony.
        lots: Vec<LotName>,
        /// The terms, at least one.
        terms: Vec<Term>,
    },
    /// Record something else without which the supering question has no answer.
    RecordMissing {
        /// The course.
        course: CourseName,
        /// The kind of entry that supplies it.
        supplied_by: Kind,
        /// Where a leaflet is to be read: the lots that were given to the colony.
        lots: Vec<LotName>,
        /// What the keeper is asked for.
        asks_for: AskedFor,
        /// The lots that are told of with it.
        lots_asked: Vec<LotName>,
        /// Terms that the same look at the leaflet tells.
        terms: Vec<Term>,
    },
    /// Use up what was opened of a lot.
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
    /// Supply what the law requires and the record lacks.
    CompleteRecord {
        /// What is missing.
        gap: Box<Gap>,
    },
}
