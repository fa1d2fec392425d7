//! Messages of the service for requests that it cannot answer.

use combclear_domain::basics::words::{
    ApiaryName, ColonyName, HoldingName, Jurisdiction, LeafletId, LotName,
};
use combclear_domain::journal::keeping::StoreError;
use combclear_domain::journal::key::{Deed, Key, NotAllowed, Role};
use combclear_domain::journal::{EntryId, Hash};

use crate::refusals::Refused;
use crate::words::say;
use crate::{Label, Words, keeping};

/// Why a journal could not be read or written. The message leaves out where it is stored, which concerns only the
/// operator.
#[must_use]
pub fn store(words: &Words, error: &StoreError) -> Refused {
    let Refused { message, help } = keeping::store(words, error);
    let message = match error {
        StoreError::Locked { .. } => words.label(Label::HttpStoreLocked).to_owned(),
        StoreError::Unreachable { .. } => words.label(Label::HttpStoreUnreachable).to_owned(),
        StoreError::Full { .. } => nothing_recorded(words, words.label(Label::HttpStoreFull)),
        StoreError::ReadOnly { .. } => nothing_recorded(words, words.label(Label::HttpStoreReadOnly)),
        StoreError::Unreadable { .. } => message,
        _ => words.label(Label::HttpStoreFailed).to_owned(),
    };
    Refused { message, help }
}

/// Why a role may not do this.
#[must_use]
pub fn not_allowed(words: &Words, role: Role, deed: Deed) -> String {
    let deed = match deed {
        Deed::Read => "read",
        Deed::Add => "add",
        Deed::Begin => "begin",
        Deed::Watch => "watch",
    };
    say!(words, HttpNotAllowed, role = role.as_str(), deed = deed)
}

/// Why a role may not record an entry.
#[must_use]
pub fn not_allowed_entry(words: &Words, role: Role, why: NotAllowed) -> String {
    let role = role.as_str();
    match why {
        NotAllowed::Records => say!(words, HttpNotAllowed, role = role, deed = "add"),
        NotAllowed::Corrects => say!(words, HttpNotAllowed, role = role, deed = "correct"),
        NotAllowed::OtherKind { kind } => say!(words, HttpNotAllowedKind, role = role, kind = kind.as_str()),
    }
}

/// Why a key does not hold today.
#[must_use]
pub fn ended_key(words: &Words, key: &Key) -> String {
    match key.until {
        Some(until) if key.ended_at.is_none() => say!(words, HttpKeyRanOut, id = key.id, until = until),
        Some(_) | None => say!(words, HttpKeyEnded, id = key.id),
    }
}

crate::terminal::sentences! {
    /// The HTTP status of a problem.
    HttpStatus: status(status: &str);
    /// Why nothing was recorded.
    HttpNothingRecorded: nothing_recorded(why: &str);
    /// A host name that the service does not accept.
    HttpNotOwnName: not_own_name(host: &str);

    /// Part of a URL that is not an entry id.
    HttpNotAnEntry: not_an_entry(why: &str);
    /// A query parameter given twice.
    HttpGivenTwice: given_twice(parameter: &str);
    /// A missing query parameter.
    HttpMissing: missing(parameter: &str);
    /// A query parameter that the path does not have.
    HttpNoParameter: no_parameter(parameter: &str);
    /// The query parameters of the path.
    HttpTakes: takes(known: &str);
    /// How to fix a query parameter.
    HttpCorrectOrLeaveOut: correct_or_leave_out(parameter: &str);
    /// An invalid limit on the number of entries.
    HttpNotALimit: not_a_limit(text: &str, most: u32);
    /// An invalid position in a journal.
    HttpNotAPlace: not_a_place(text: &str);
    /// A query parameter that is neither true nor false.
    HttpNotYesOrNo: not_yes_or_no(text: &str);
    /// What is wrong with a text, and where.
    HttpAtLine: at_line(line: usize, column: usize, what: &str);
    /// The declared media type of the body.
    HttpBodyDeclared: body_declared(declared: &str);

    /// A holding without entries.
    HttpNoHolding: no_holding(holding: &HoldingName);
    /// A holding that exists already.
    HttpHoldingExists: holding_exists(holding: &HoldingName);
    /// An apiary that is not recorded.
    HttpNoApiary: no_apiary(holding: &HoldingName, apiary: &ApiaryName);
    /// A colony that is not recorded.
    HttpNoColony: no_colony(holding: &HoldingName, colony: &ColonyName);
    /// A lot that is not recorded.
    HttpNoLot: no_lot(holding: &HoldingName, lot: &LotName);
    /// A leaflet that is not built in for a jurisdiction.
    HttpNoLeaflet: no_leaflet(leaflet: &LeafletId, jurisdiction: &Jurisdiction);
    /// An active substance that no leaflet has.
    HttpNoActive: no_active(active: &str);
    /// The jurisdiction that a leaflet is for.
    HttpLeafletFor: leaflet_for(jurisdiction: &Jurisdiction);
    /// A file that the documentation page does not have.
    HttpNoFile: no_file(file: &str);
    /// An unknown kind of problem.
    HttpNoProblem: no_problem(slug: &str);
    /// The known kinds of problem.
    HttpProblemsAre: problems_are(slugs: &str);

    /// An entry that is not recorded.
    HttpNoEntry: no_entry(holding: &HoldingName, id: EntryId);
    /// The path that lists the entries.
    HttpNoEntryHelp: lists_entries(path: &str);
    /// An entry sent under the id of another.
    HttpOtherId: other_id(id: EntryId, named: EntryId);
    /// A batch with no entries, or too many.
    HttpBatchOf: batch_of(entries: usize);
    /// The format of a batch.
    HttpNotABatchHelp: not_a_batch_help(most: usize);
    /// A body that is no filled-in form.
    HttpNotAForm: not_a_form(why: &str);
    /// How much is wrong with a form.
    HttpFormFaults: form_faults(faults: usize);
    /// A kind of entry that nobody fills in.
    HttpNoForm: no_form(kind: &str);
    /// The first of several faults, and the number of others.
    HttpAndMore: and_more(first: &str, more: usize);
    /// Why an entry cannot be true.
    HttpUntrue: untrue(why: &str);
    /// Why an entry in a batch cannot be true.
    HttpUntrueInBatch: untrue_in_batch(number: usize, of: usize, why: &str);

    /// A document that no entry attaches.
    HttpNoDocument: no_document(holding: &HoldingName, hash: Hash);
    /// The path that lists the documents.
    HttpNoDocumentHelp: lists_documents(path: &str);
    /// A document whose content is missing.
    HttpDocumentMissing: document_missing(hash: Hash);
    /// A document whose content was altered.
    HttpDocumentAltered: document_altered(hash: Hash);
    /// What a document must belong to.
    RefusalDocumentOfNothingHelp: name_what_it_proves();
    /// A document that belongs to both a lot and a prescription.
    RefusalDocumentOfTwoThings: two_things_named();
    /// A document declared as another type.
    HttpDocumentDeclared: document_declared(declared: &str, kind: &str);
    /// How to declare it.
    HttpDocumentDeclaredHelp: document_declared_help(media_type: &str);
    /// An upload that ended early, with the bytes received.
    HttpUploadShorter: upload_shorter(announced: usize, arrived: usize);
    /// An invalid file name.
    HttpNotAFileName: not_a_file_name(name: &str, why: &str);
}
