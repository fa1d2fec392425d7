//! Which doses and removals on record belong to one course, and which removal cleared a colony of it.
//!
//! The courses of a colony and the refusal of entries both ask here, so that what is accepted is what is judged.

use std::sync::Arc;

use super::holding::{Holding, Record};
use crate::basics::words::ColonyName;
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Removal};

impl Holding {
    /// The first dose that a later one goes on with, as it stands now; none for a first dose, and if that one was struck out.
    pub(in crate::facts) fn goes_on_with(&self, given: &Administration) -> Option<EntryId> {
        given.continues.and_then(|first| self.effective(first)).map(|first| first.id)
    }

    /// The doses of a course after the first among the entries of a file, in the order in which they were given.
    pub(in crate::facts) fn later_doses<'f>(
        &'f self,
        file: &'f [Arc<Record>],
        first: EntryId,
    ) -> impl Iterator<Item = &'f Arc<Record>> {
        file.iter().filter(move |record| {
            record.body::<Administration>().and_then(|given| self.goes_on_with(given)) == Some(first)
        })
    }

    /// The removal that cleared a colony of a course: nothing left inside, and no later dose put in on that day.
    ///
    /// This is asked of the entries and not of the timeline. There a course is also out if its strips went along with a split or
    /// are used up, and yet pieces of it may be found and taken out, or a further dose given: nothing of that is untrue. As in
    /// the timeline, a removal takes nothing out that had not reached the colony by the order of the entries.
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
    /// Whether this dose went in on the day of a removal, and not clearly before it: then what came out was the carrier
    /// before.
    pub(in crate::facts) fn renews(&self, removal: &Record) -> bool {
        let before = self.at.zip(removal.at).is_some_and(|(given, removed)| given < removed);
        self.on == removal.on && !before
    }
}
