//! Entries that rows name by id and that have no row: a split, an earlier first dose, a leaflet reading, a corrected
//! entry, the attachment of a document, the details of the keeper.

use std::collections::BTreeSet;

use super::{Register, View, Written};
use crate::journal::EntryId;
use crate::questions::NamedEntry;

/// These entries, in journal order.
pub(super) fn entries(view: &View<'_>, register: &Register) -> Vec<NamedEntry> {
    let rows: BTreeSet<EntryId> = register.written().map(|written| written.entry).collect();
    let Register { keepers, administrations, removals, corrections, .. } = register;
    let courses = || administrations.iter().flat_map(|row| &row.courses);
    let named = keepers
        .iter()
        .map(|keeper| keeper.entry)
        .chain(register.documents().map(|(_, document)| document.entry))
        .chain(administrations.iter().map(|row| row.first_dose))
        .chain(removals.iter().map(|row| row.first_dose))
        .chain(register.written().filter_map(|Written { corrects, .. }| *corrects))
        .chain(register.written().map(|written| written.first_entry))
        .chain(corrections.iter().map(|row| row.of))
        .chain(courses().filter_map(|course| course.withdrawal.as_ref()?.entry))
        .chain(courses().filter_map(|course| course.came_by));
    NamedEntry::all(view.holding, named.filter(|entry| !rows.contains(entry)))
}
