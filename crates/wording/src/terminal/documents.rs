//! Documents that were attached, listed, saved, packed or exported.

use combclear_domain::Day;
use combclear_domain::basics::words::{HoldingName, LotName, Person, PrescriptionName};
use combclear_domain::journal::{EntryId, Hash};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// That a document was attached. `kind` is its type as people call it.
    DocumentAttached: attached(file: &str, kind: &str, bytes: u32, to: &str, hash: Hash, entry: EntryId);
    /// That a document was not attached.
    DocumentNotAttached: not_attached(file: &str, why: &str);
    /// That a document was attached before, and is kept.
    DocumentAttachedBefore: attached_before(to: &str, on: Day, by: &Person, entry: EntryId);
    /// That a document was attached before, and is kept from now on.
    DocumentSupplied: supplied(to: &str, on: Day, by: &Person, entry: EntryId);
    /// When and by whom, in two lines.
    DocumentAttachedOn: attached_on(on: &str, by: &str);
    /// What it belongs to, and the entry that corrected that, in two lines.
    DocumentCorrected: corrected(to: &str, entry: &str);
    /// What it is, and how long.
    DocumentKindAndSize: kind_and_size(kind: &str, bytes: u32);
    /// How many documents.
    DocumentsInAll: in_all(documents: usize);
    /// How many documents, and of how many the content is lacking.
    DocumentsLacking: lacking(documents: usize, lacking: usize);
    /// That a document was saved.
    DocumentSaved: saved(file: &str, kind: &str, bytes: u32, to: &str);
    /// A document that cannot be saved.
    DocumentCannotSave: cannot_save(file: &str, why: &str);
    /// A hash too short to find a document by.
    DocumentHashTooShort: hash_too_short(hash: &str);
    /// A hash that no document has.
    DocumentNoSuch: no_such(hash: &str);
    /// The beginning of several hashes.
    DocumentSeveral: several(hash: &str);

    /// Documents of which a pack has no content.
    PackLost: lost(lost: usize);

    /// A file named in a sentence.
    ExportInBackticks: file(file: &str);
    /// A document that an export goes without.
    ExportWithout: without(fault: &str);
    /// A document that was changed meanwhile.
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

/// What was packed: how many administrations of its time, and how many from before it.
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

/// What was packed.
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
    /// How many administrations lie in that time.
    pub administrations: usize,
    /// How many lie before it.
    pub earlier: usize,
    /// How many documents are in the pack.
    pub documents: usize,
}
