//! A journal file that was taken in, and what is wrong with one.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// A file that cannot be read.
    ImportCannotRead: cannot_read(file: &str, why: &str);
    /// A file without a line.
    ImportEmpty: empty(file: &str);
    /// How such a file begins.
    ImportBeginsLike: begins_like(header: &str);
    /// A file of another holding.
    ImportOtherHolding: other_holding(file: &str, holding: &HoldingName, wanted: &HoldingName);
    /// An export, of which nothing can be left out.
    ImportSealed: sealed(file: &str);
    /// How many faults a file has.
    ImportFaults: faults(faults: usize, file: &str);
    /// How many more there are.
    ImportAndMore: and_more(more: usize);
    /// How many lines were left out.
    ImportLeftOut: left_out(lines: usize);
    /// How long the rest takes.
    ImportLeft: left(time: &str);
    /// A file in which no hash fits.
    ImportNoneSealedHere: none_sealed_here(holding: &HoldingName);
    /// Entries that are missing, or too many.
    ImportEntriesPromised: entries_promised(promised: u64, found: u64);
    /// Documents that are missing, or too many.
    ImportDocumentsPromised: documents_promised(promised: u64, found: u64);
    /// A document in the wrong place.
    ImportDocumentAmongEntries: document_among_entries(hash: Hash);
    /// A document that belongs to nothing.
    ImportDocumentOfNone: document_of_none(hash: Hash);
    /// A document that stands twice.
    ImportDocumentTwice: document_twice(hash: Hash);
}

/// What is wrong at a place, which is a JSON pointer and may be empty.
#[must_use]
pub fn at(words: &Words, pointer: &str, message: &str) -> String {
    if pointer.is_empty() {
        return message.to_owned();
    }
    say!(words, ImportAt, pointer = pointer, message = message)
}

/// That the last hash is not the one that was promised.
#[must_use]
pub fn other_head(words: &Words, promised: Option<Hash>, found: Option<Hash>) -> String {
    let said = |hash: Option<Hash>| match hash {
        Some(hash) => say!(words, ExportInBackticks, file = hash),
        None => words.label(Label::None).to_owned(),
    };
    say!(words, ImportOtherHead, promised = said(promised), found = said(found))
}

/// What was taken in.
#[derive(Debug, Clone, Copy)]
pub struct Imported<'i> {
    /// The holding.
    pub holding: &'i HoldingName,
    /// How many entries were added.
    pub added: usize,
    /// How many were there already.
    pub known: usize,
    /// How many documents came with them.
    pub documents: usize,
    /// How many entries the journal has now.
    pub entries: u64,
    /// The hash of the last; absent if there is none.
    pub head: Option<&'i str>,
}

/// What was taken in.
#[must_use]
pub fn imported(words: &Words, of: &Imported<'_>) -> String {
    let Imported { holding, added, known, documents, entries, head } = *of;
    let mut what = match known {
        0 => say!(words, ImportAdded, added = added),
        known => say!(words, ImportAddedSomeKnown, added = added, known = known),
    };
    if documents > 0 {
        what = say!(words, ImportWithDocuments, what = what, documents = documents);
    }
    match head {
        None => say!(words, ImportDone, holding = holding, what = what, entries = entries),
        Some(head) => {
            say!(words, ImportDoneHead, holding = holding, what = what, entries = entries, head = head)
        }
    }
}
