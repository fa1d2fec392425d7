//! What the service says of a request that it cannot answer.

use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName, Jurisdiction, LeafletId};
use combclear_domain::journal::keeping::StoreError;
use combclear_domain::journal::{EntryId, Hash};

use crate::refusals::Refused;
use crate::{Label, Words, keeping};

/// Why a journal could not be read or written. Where it is kept concerns only the operator, so the message leaves that out.
#[must_use]
pub fn store(words: &Words, error: &StoreError) -> Refused {
    let Refused { message, help } = keeping::store(words, error);
    let message = match error {
        StoreError::Locked { .. } => words.label(Label::HttpStoreLocked).to_owned(),
        StoreError::Full { .. } => nothing_recorded(words, words.label(Label::HttpStoreFull)),
        StoreError::ReadOnly { .. } => nothing_recorded(words, words.label(Label::HttpStoreReadOnly)),
        StoreError::Unreadable { .. } => message,
        _ => words.label(Label::HttpStoreFailed).to_owned(),
    };
    Refused { message, help }
}

crate::terminal::sentences! {
    /// The status of a problem.
    HttpStatus: status(status: &str);
    /// Why nothing was recorded.
    HttpNothingRecorded: nothing_recorded(why: &str);
    /// A name of the host that the service does not answer to.
    HttpNotOwnName: not_own_name(host: &str);

    /// A part of the address that is not the id of an entry.
    HttpNotAnEntry: not_an_entry(why: &str);
    /// A query parameter that is given twice.
    HttpGivenTwice: given_twice(parameter: &str);
    /// A query parameter that is missing.
    HttpMissing: missing(parameter: &str);
    /// A query parameter that the path does not take.
    HttpNoParameter: no_parameter(parameter: &str);
    /// Those that it takes.
    HttpTakes: takes(known: &str);
    /// How to mend a query parameter.
    HttpCorrectOrLeaveOut: correct_or_leave_out(parameter: &str);
    /// A number of entries that cannot be asked for.
    HttpNotALimit: not_a_limit(text: &str, most: u32);
    /// A place in a journal that cannot be one.
    HttpNotAPlace: not_a_place(text: &str);
    /// What is wrong with a text, and where.
    HttpAtLine: at_line(line: usize, column: usize, what: &str);
    /// The media type that the body is declared as.
    HttpBodyDeclared: body_declared(declared: &str);

    /// A holding without entries.
    HttpNoHolding: no_holding(holding: &HoldingName);
    /// An apiary that is not recorded.
    HttpNoApiary: no_apiary(holding: &HoldingName, apiary: &ApiaryName);
    /// A colony that is not recorded.
    HttpNoColony: no_colony(holding: &HoldingName, colony: &ColonyName);
    /// A leaflet that is not built in for a jurisdiction.
    HttpNoLeaflet: no_leaflet(leaflet: &LeafletId, jurisdiction: &Jurisdiction);
    /// The jurisdiction for which it is.
    HttpLeafletFor: leaflet_for(jurisdiction: &Jurisdiction);
    /// A file that the page of the document does not have.
    HttpNoFile: no_file(file: &str);
    /// A kind of problem that there is not.
    HttpNoProblem: no_problem(slug: &str);
    /// Those that there are.
    HttpProblemsAre: problems_are(slugs: &str);

    /// An entry that is not recorded.
    HttpNoEntry: no_entry(holding: &HoldingName, id: EntryId);
    /// The path of those that are.
    HttpNoEntryHelp: lists_entries(path: &str);
    /// An entry sent under the id of another.
    HttpOtherId: other_id(id: EntryId, named: EntryId);
    /// A batch with no entries, or too many.
    HttpBatchOf: batch_of(entries: usize);
    /// What a batch is.
    HttpNotABatchHelp: not_a_batch_help(most: usize);
    /// The first fault of several, and how many others there are.
    HttpAndMore: and_more(first: &str, more: usize);
    /// Why an entry cannot be true.
    HttpUntrue: untrue(why: &str);
    /// Why one of a batch cannot be true.
    HttpUntrueInBatch: untrue_in_batch(number: usize, of: usize, why: &str);

    /// A document that no entry attaches.
    HttpNoDocument: no_document(holding: &HoldingName, hash: Hash);
    /// The path of those that are attached.
    HttpNoDocumentHelp: lists_documents(path: &str);
    /// A document that is not kept.
    HttpDocumentMissing: document_missing(hash: Hash);
    /// A document in whose place something else is kept.
    HttpDocumentAltered: document_altered(hash: Hash);
    /// What a document that belongs to nothing could belong to.
    RefusalDocumentOfNothingHelp: name_what_it_proves();
    /// A document that would belong to two things.
    RefusalDocumentOfTwoThings: two_things_named();
    /// A document that is declared as something else.
    HttpDocumentDeclared: document_declared(declared: &str, kind: &str);
    /// How to declare it.
    HttpDocumentDeclaredHelp: document_declared_help(media_type: &str);
    /// How much of an upload arrived.
    HttpUploadShorter: upload_shorter(announced: usize, arrived: usize);
    /// A name that a file cannot have.
    HttpNotAFileName: not_a_file_name(name: &str, why: &str);
}
