//! Entries that administrations and removals name by id: a split, an earlier first dose, a leaflet reading, a
//! corrected entry.

use std::collections::{BTreeMap, BTreeSet};

use super::{AdministrationRow, NamedEntry, RemovalRow, View};
use crate::journal::EntryId;

/// The position of each in the journal, in journal order: on paper a number is easier to find than an id.
pub(super) fn entries(
    view: &View<'_>,
    administrations: &[AdministrationRow],
    removals: &[RemovalRow],
) -> Vec<NamedEntry> {
    let rows: BTreeSet<EntryId> = administrations
        .iter()
        .map(|row| row.written.entry)
        .chain(removals.iter().map(|row| row.written.entry))
        .collect();
    let courses = || administrations.iter().flat_map(|row| &row.courses);
    let named = administrations
        .iter()
        .map(|row| row.first_dose)
        .chain(removals.iter().map(|row| row.first_dose))
        .chain(administrations.iter().filter_map(|row| row.written.corrects))
        .chain(removals.iter().filter_map(|row| row.written.corrects))
        .chain(courses().filter_map(|course| course.withdrawal.as_ref()?.entry))
        .chain(courses().filter_map(|course| course.came_by));
    let places: BTreeMap<u64, EntryId> = named
        .filter(|entry| !rows.contains(entry))
        .filter_map(|entry| Some((view.holding.entry(entry)?.seq, entry)))
        .collect();
    places.into_iter().map(|(place, entry)| NamedEntry { entry, place }).collect()
}
