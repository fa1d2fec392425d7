//! The result of an import, and faults of a journal file.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// A file that cannot be read.
    ImportCannotRead: cannot_read(file: &str, why: &str);
    /// An empty file.
    ImportEmpty: empty(file: &str);
    /// The first line of such a file.
    ImportBeginsLike: begins_like(header: &str);
    /// A file of another holding.
    ImportOtherHolding: other_holding(file: &str, holding: &HoldingName, wanted: &HoldingName);
    /// A file of a holding that the database does not keep.
    ImportNoHolding: no_holding(file: &str, holding: &HoldingName, known: &str);
    /// An export, from which no line may be left out.
    ImportSealed: sealed(file: &str);
    /// The number of faults in a file.
    ImportFaults: faults(faults: usize, file: &str);
    /// The number of further faults.
    ImportAndMore: and_more(more: usize);
    /// The number of lines left out.
    ImportLeftOut: left_out(lines: usize);
    /// The estimated time left.
    ImportLeft: left(time: &str);
    /// A file in which no hash matches.
    ImportNoneSealedHere: none_sealed_here(holding: &HoldingName);
    /// Missing or extra entries.
    ImportEntriesPromised: entries_promised(promised: u64, found: u64);
    /// Missing or extra documents.
    ImportDocumentsPromised: documents_promised(promised: u64, found: u64);
    /// A document at the wrong position.
    ImportDocumentAmongEntries: document_among_entries(hash: Hash);
    /// A document that no entry attaches.
    ImportDocumentOfNone: document_of_none(hash: Hash);
    /// A document listed twice.
    ImportDocumentTwice: document_twice(hash: Hash);
}

/// A fault at a JSON pointer, which may be empty.
#[must_use]
pub fn at(words: &Words, pointer: &str, message: &str) -> String {
    if pointer.is_empty() {
        return message.to_owned();
    }
    say!(words, ImportAt, pointer = pointer, message = message)
}

/// The last hash differs from the one announced.
#[must_use]
pub fn other_head(words: &Words, promised: Option<Hash>, found: Option<Hash>) -> String {
    let said = |hash: Option<Hash>| match hash {
        Some(hash) => say!(words, ExportInBackticks, file = hash),
        None => words.label(Label::None).to_owned(),
    };
    say!(words, ImportOtherHead, promised = said(promised), found = said(found))
}

/// The result of an import.
#[derive(Debug, Clone, Copy)]
pub struct Imported<'i> {
    /// The holding.
    pub holding: &'i HoldingName,
    /// Number of entries added.
    pub added: usize,
    /// Number of entries that were there already.
    pub known: usize,
    /// Number of documents added with them.
    pub documents: usize,
    /// Number of entries in the journal now.
    pub entries: u64,
    /// The hash of the last entry. Absent if there is none.
    pub head: Option<&'i str>,
}

/// The result of an import.
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
