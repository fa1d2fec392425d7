//! Documents that were attached, listed, saved, packed or exported.

use combclear_domain::Day;
use combclear_domain::basics::words::{HoldingName, LotName, Person, PrescriptionName};
use combclear_domain::journal::{EntryId, Hash};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// A document was attached. `kind` is its type in everyday words.
    DocumentAttached: attached(file: &str, kind: &str, bytes: u32, to: &str, hash: Hash, entry: EntryId);
    /// What to know of an attached document before opening it.
    DocumentCaution: caution(cautions: &str);
    /// A document was not attached.
    DocumentNotAttached: not_attached(file: &str, why: &str);
    /// A document was attached before, and its content is stored.
    DocumentAttachedBefore: attached_before(to: &str, on: Day, by: &Person, entry: EntryId);
    /// A document was attached before, and its content is stored now.
    DocumentSupplied: supplied(to: &str, on: Day, by: &Person, entry: EntryId);
    /// When and by whom, in two lines.
    DocumentAttachedOn: attached_on(on: &str, by: &str);
    /// What it belongs to, and the entry that corrected this, in two lines.
    DocumentCorrected: corrected(to: &str, entry: &str);
    /// Its type and size.
    DocumentKindAndSize: kind_and_size(kind: &str, bytes: u32);
    /// The number of documents.
    DocumentsInAll: in_all(documents: usize);
    /// The number of documents, and of those without content.
    DocumentsLacking: lacking(documents: usize, lacking: usize);
    /// A document was saved.
    DocumentSaved: saved(file: &str, kind: &str, bytes: u32, to: &str);
    /// A document that cannot be saved.
    DocumentCannotSave: cannot_save(file: &str, why: &str);
    /// A hash prefix that is too short to find a document.
    DocumentHashTooShort: hash_too_short(hash: &str);
    /// A hash prefix that matches no document.
    DocumentNoSuch: no_such(hash: &str);
    /// A hash prefix that matches several documents.
    DocumentSeveral: several(hash: &str);

    /// Documents whose content a pack lacks.
    PackLost: lost(lost: usize);

    /// A file named in a sentence.
    ExportInBackticks: file(file: &str);
    /// A document left out of an export.
    ExportWithout: without(fault: &str);
    /// A document that was altered meanwhile.
    ExportChanged: changed(hash: Hash, place: &str);
    /// An export that cannot be written.
    ExportCannotWrite: cannot_export(place: &str, why: &str);
}

/// What a document belongs to.
#[must_use]
pub fn belongs_to(words: &Words, lot: Option<&LotName>, prescription: Option<&PrescriptionName>) -> String {
    match (lot, prescription) {
        (Some(lot), _) => say!(words, DocumentOfLot, lot = lot),
        (None, Some(prescription)) => say!(words, DocumentOfPrescription, prescription = prescription),
        (None, None) => words.label(Label::DocumentOfNothing).to_owned(),
    }
}

/// The contents of the pack, with the administrations of its period and those before it.
#[must_use]
pub fn packed(words: &Words, pack: &Packed<'_>) -> String {
    let Packed { file, holding, from, to, administrations, earlier, documents } = *pack;
    let given = match earlier {
        0 => say!(words, PackAdministrations, administrations = administrations),
        earlier => {
            say!(words, PackAdministrationsAndEarlier, administrations = administrations, earlier = earlier)
        }
    };
    say!(
        words,
        PackMade,
        file = file,
        holding = holding,
        from = from,
        to = to,
        given = given,
        documents = documents
    )
}

/// The contents of a pack.
#[derive(Debug, Clone, Copy)]
pub struct Packed<'p> {
    /// The file it was written to.
    pub file: &'p str,
    /// The holding.
    pub holding: &'p HoldingName,
    /// The first day of the register.
    pub from: Day,
    /// The last day of the register.
    pub to: Day,
    /// Number of administrations in the period.
    pub administrations: usize,
    /// Number of administrations before the period.
    pub earlier: usize,
    /// Number of documents in the pack.
    pub documents: usize,
}
