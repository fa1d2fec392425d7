//! Which doses and removals belong to one course, and which removal cleared a colony of it.
//!
//! Used both to derive courses and to refuse entries, so that both follow the same rules.

use std::sync::Arc;

use super::holding::{Holding, Record};
use crate::basics::words::ColonyName;
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Removal};

impl Holding {
    /// The first dose of the course that this dose continues, as corrected. `None` for a first dose, and if the first
    /// dose was struck out.
    pub(in crate::facts) fn goes_on_with(&self, given: &Administration) -> Option<EntryId> {
        given.continues.and_then(|first| self.effective(first)).map(|first| first.id)
    }

    /// The later doses of a course in a file, in the order they were given.
    pub(in crate::facts) fn later_doses<'f>(
        &'f self,
        file: &'f [Arc<Record>],
        first: EntryId,
    ) -> impl Iterator<Item = &'f Arc<Record>> {
        file.iter().filter(move |record| {
            record.body::<Administration>().and_then(|given| self.goes_on_with(given)) == Some(first)
        })
    }

    /// The removal that cleared a colony of a course: it left nothing inside, and no later dose was given on that
    /// day.
    ///
    /// This looks at the entries, not at the timeline. In the timeline a course is also out if its strips went with a
    /// split or are used up; but then pieces may still be found and taken out, or a further dose given, and such
    /// entries are not refused. As in the timeline, a removal cannot take out a course that had not reached the
    /// colony in order of the entries.
    pub(in crate::facts) fn cleared(&self, colony: &ColonyName, first: &Record) -> Option<&Arc<Record>> {
        let file = self.colony_file(colony);
        file.iter().find(|record| {
            let clears = record.body::<Removal>().is_some_and(|removal| {
                let of_course = || self.effective(removal.administration).is_some_and(|of| of.id == first.id);
                removal.left_inside == 0 && removal.colonies.contains(colony) && of_course()
            });
            clears
                && self.course_reached_before(colony, first, record)
                && !self.later_doses(file, first.id).any(|dose| dose.renews(record))
        })
    }
}

impl Record {
    /// Whether this dose was given on the day of a removal, and not clearly before it: then the previous carrier came
    /// out.
    pub(in crate::facts) fn renews(&self, removal: &Record) -> bool {
        let before = self.at.zip(removal.at).is_some_and(|(given, removed)| given < removed);
        self.on == removal.on && !before
    }
}
