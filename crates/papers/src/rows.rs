//! What rows of every kind have in common: places in the journal, and words for what was written down.

use std::collections::BTreeMap;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::register::{MedicinePart, SaidBy, Written};
use combclear_wording::register::RegisterReport;

use crate::sheet::{Cell, Piece, written};

/// The places in the journal of the entries that a register tells of.
pub(crate) struct JournalPlaces(BTreeMap<EntryId, u64>);

impl JournalPlaces {
    pub(crate) fn of(report: &RegisterReport) -> JournalPlaces {
        let written = report
            .acquisitions
            .iter()
            .map(|row| &row.written)
            .chain(report.prescriptions.iter().map(|row| &row.written))
            .chain(report.administrations.iter().map(|row| &row.written))
            .chain(report.removals.iter().map(|row| &row.written))
            .chain(report.disposals.iter().map(|row| &row.written))
            .chain(report.corrections.iter().map(|row| &row.written));
        let mut places: BTreeMap<EntryId, u64> =
            written.map(|written| (written.entry, written.place)).collect();
        places.extend(report.corrections.iter().map(|row| (row.of, row.of_place)));
        places.extend(report.also_named.iter().map(|named| (named.entry, named.place)));
        JournalPlaces(places)
    }

    /// Whether its place is known.
    pub(crate) fn knows(&self, entry: EntryId) -> bool {
        self.0.contains_key(&entry)
    }

    /// `no. 59`; the id of an entry that the journal does not have any more.
    pub(crate) fn words(&self, entry: EntryId) -> String {
        self.0.get(&entry).map_or_else(|| format!("entry {entry}"), |place| number(*place))
    }
}

/// `no. 59`
pub(crate) fn number(place: u64) -> String {
    format!("no. {place}")
}

/// Where an entry stands in the journal, the day it speaks of, and what a reader must know about how it was written.
pub(crate) fn entry(written: &Written, places: &JournalPlaces) -> Cell {
    let mut cell = Cell::text(number(written.place));
    if let Some(late) = late(written) {
        cell = cell.and_text(late);
    }
    if let Some(old) = written.corrects {
        cell = cell.and_text(format!("corrects {}", places.words(old)));
    }
    cell
}

/// `written down 9 days later`
pub(crate) fn late(written: &Written) -> Option<String> {
    let days = Piece::Days(written.days_late).words();
    (written.days_late > 0).then(|| format!("written down {days} later"))
}

/// The day, with the time where it was noted.
pub(crate) fn day(written: &Written) -> Cell {
    let cell = Cell::of(Piece::Date(written.on));
    match written.at {
        Some(at) => cell.and("at", Piece::text(at)),
        None => cell,
    }
}

/// A medicine by the name on the pack.
pub(crate) fn medicine(part: &MedicinePart) -> Cell {
    let pack_name = written(part.pack_name.as_ref());
    let mut cell = Cell::text(pack_name.map_or_else(|| part.medicine.to_string(), str::to_owned));
    if pack_name.is_none() {
        cell = cell.and("name on the pack", Piece::NotRecorded);
    }
    cell = cell.and("authorisation no.", part.authorisation.as_ref().into());
    if !part.actives.is_empty() {
        cell = cell.and("active", Piece::Text(part.actives.join(", ")));
    }
    cell
}

/// Names, one after the other.
pub(crate) fn names<'r>(colonies: impl IntoIterator<Item = &'r ColonyName>) -> String {
    colonies.into_iter().map(ColonyName::as_str).collect::<Vec<_>>().join(", ")
}

/// Who said a value, in words.
pub(crate) fn said_by(by: SaidBy) -> &'static str {
    match by {
        SaidBy::Prescription => "by the prescription",
        SaidBy::LeafletReading => "read on the leaflet of the lot",
        SaidBy::Pack => "read on the pack",
        SaidBy::Declared => "declared by the keeper",
        SaidBy::Leaflet => "by the built-in leaflet; nobody wrote it down",
    }
}
