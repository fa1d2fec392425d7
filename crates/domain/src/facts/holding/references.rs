//! Whether entries can be archived together: no retained entry may depend on an archived one or be changed by it.

use std::collections::HashSet;
use std::sync::Arc;

use super::{Holding, Record, mentions};
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// A tie between a retained entry and one to archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tie {
    /// The retained entry.
    pub stays: EntryId,
    /// The entry to archive.
    pub goes: EntryId,
    /// The kind of tie.
    pub how: Bond,
}

/// The kind of tie between two entries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bond {
    /// One corrects or strikes out the other.
    Correction,
    /// One is a later dose or a removal of the other.
    Course,
    /// The retained entry names something that the other introduced: a lot, a medicine, a colony and the like.
    Name,
    /// The entry to archive does not exist.
    Unknown,
}

impl Holding {
    /// The first tie, in journal order, between these entries and the others. `None` if these can be archived
    /// together.
    #[must_use]
    pub fn first_tie(&self, going: &[EntryId]) -> Option<Tie> {
        if let Some(goes) = going.iter().find(|id| self.entry(**id).is_none()) {
            return Some(Tie { stays: *goes, goes: *goes, how: Bond::Unknown });
        }
        let going: HashSet<EntryId> = going.iter().copied().collect();
        self.in_order().into_iter().find_map(|record| {
            let refers = record.correction.iter().map(|correction| (correction.of, Bond::Correction));
            let refers =
                refers.chain(mentions::of(&record.event).builds_on.map(|first| (first, Bond::Course)));
            let goes = going.contains(&record.id);
            let mut parted = refers.filter(|(other, _)| going.contains(other) != goes);
            match parted.next() {
                Some((other, how)) if goes => Some(Tie { stays: other, goes: record.id, how }),
                Some((other, how)) => Some(Tie { stays: record.id, goes: other, how }),
                None if goes => None,
                None => {
                    let brought_in = self.brought_in(record).into_iter().find(|id| going.contains(id))?;
                    Some(Tie { stays: record.id, goes: brought_in, how: Bond::Name })
                }
            }
        })
    }

    /// The entries that introduced the names in this one.
    fn brought_in(&self, record: &Record) -> Vec<EntryId> {
        let names = mentions::of(&record.event);
        let lots = names.lots.iter().filter_map(|lot| Some(self.lot(lot)?.0.id));
        let medicines = names.medicines.iter().filter_map(|medicine| Some(self.medicine(medicine)?.0.id));
        let prescriptions =
            names.prescriptions.iter().filter_map(|number| Some(self.prescription(number)?.0.id));
        let colonies = names.colonies.iter().filter_map(|colony| Some(self.life(colony).begun?.id));
        let apiaries = names.apiaries.iter().filter_map(|apiary| {
            let details = |record: &&Arc<Record>| matches!(record.event, Event::ApiaryDetails(_));
            Some(self.apiary_file(apiary).iter().find(details)?.id)
        });
        lots.chain(medicines).chain(prescriptions).chain(colonies).chain(apiaries).collect()
    }
}
