//! Common to rows of every kind: words, places in the journal, and how an entry was recorded.

use std::collections::BTreeMap;

use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::gaps::{CopiedEntries, copied_entries};
use combclear_domain::questions::register::{MedicinePart, Register, Written};
use combclear_wording::{Label, Words, paper};

use crate::sheet::{Cell, Piece, written};

/// The words, and the places in the journal of the entries in a register.
pub(crate) struct Telling {
    pub(crate) words: &'static Words,
    places: BTreeMap<EntryId, u64>,
    /// The records on paper from which entries were copied, in the order of their numbers.
    pub(crate) copied: Vec<CopiedEntries>,
}

impl Telling {
    pub(crate) fn of(words: &'static Words, register: &Register) -> Telling {
        let mut places: BTreeMap<EntryId, u64> =
            register.written().map(|written| (written.entry, written.seq)).collect();
        places.extend(register.named_entries.iter().map(|named| (named.entry, named.seq)));
        Telling { words, places, copied: copied_entries(register) }
    }

    pub(crate) fn label(&self, label: Label) -> &'static str {
        self.words.label(label)
    }

    /// A label as the words of a line.
    pub(crate) fn piece(&self, label: Label) -> Piece {
        Piece::text(self.label(label))
    }

    /// Whether the place of an entry is known.
    pub(crate) fn knows(&self, entry: EntryId) -> bool {
        self.places.contains_key(&entry)
    }

    /// `no. 59`; the id of an entry that is not in the register.
    pub(crate) fn entry(&self, entry: EntryId) -> String {
        let place = self.places.get(&entry);
        place.map_or_else(|| paper::entry(self.words, &entry.to_string()), |place| self.number(*place))
    }

    /// `no. 59`
    pub(crate) fn number(&self, place: u64) -> String {
        paper::entry_number(self.words, place)
    }
}

/// The place of an entry, with remarks if it was written down late, copied from paper, or corrects another.
pub(crate) fn entry(written: &Written, tell: &Telling) -> Cell {
    let mut cell = Cell::text(tell.number(written.seq));
    if written.days_late > 0 {
        cell = cell.and_text(paper::written_late(tell.words, written.days_late));
    }
    if let Some(copied) = &written.copied_from {
        let number = tell.copied.iter().position(|of| of.what == copied.what).map_or(0, |index| index + 1);
        cell = cell.and_text(paper::copied_here(tell.words, number, copied));
    }
    if let Some(old) = written.corrects {
        cell = cell.and_text(paper::corrects(tell.words, &tell.entry(old)));
    }
    cell
}

/// The day, with the time if recorded.
pub(crate) fn day(written: &Written, tell: &Telling) -> Cell {
    let cell = Cell::of(Piece::Date(written.on));
    match written.at {
        Some(at) => cell.and(tell.label(Label::At), Piece::text(at)),
        None => cell,
    }
}

/// A medicine by its name on the pack.
pub(crate) fn medicine(part: &MedicinePart, tell: &Telling) -> Cell {
    let pack_name = written(part.pack_name.as_ref());
    let name = pack_name.map_or_else(|| paper::medicine(tell.words, &part.medicine), str::to_owned);
    let mut cell = Cell::text(name);
    if pack_name.is_none() {
        cell = cell.and(tell.label(Label::NameOnPack), Piece::NotRecorded);
    }
    cell = cell.and(tell.label(Label::AuthorisationNumber), part.authorisation.as_ref().into());
    if !part.actives.is_empty() {
        cell = cell.and(tell.label(Label::Active), Piece::Text(part.actives.join(", ")));
    }
    cell
}

/// Every colony by its name, in the order people count. A record that the law wants is not abridged to `R1-R15`: whoever
/// looks for one colony finds it.
pub(crate) fn names<'r>(colonies: impl IntoIterator<Item = &'r ColonyName>) -> String {
    let mut names: Vec<&str> = colonies.into_iter().map(ColonyName::as_str).collect();
    sort_naturally(&mut names, |name| *name);
    names.join(", ")
}
