//! Entries and pages of entries, as sent.

use combclear_domain::basics::calendar::TimeOfDay;
use combclear_domain::basics::words::{HoldingName, Person};
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::journal::entry::{Correction, Envelope};
use combclear_domain::journal::{Entry, EntryId, Hash, KeyId, Kind};
use combclear_domain::{Day, Instant};
use percent_encoding::{AsciiSet, NON_ALPHANUMERIC, utf8_percent_encode};
use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::openapi::schema::{ArrayBuilder, Schema};
use utoipa::openapi::{Ref, RefOr};
use utoipa::{PartialSchema, ToSchema};

use crate::kinds::WITH_ID;

/// A sealed entry of the journal of a holding.
///
/// Its fields are the same as in a line of an exported journal.
#[derive(Debug, Clone, Serialize, ToSchema)]
#[schema(as = Entry)]
pub(crate) struct EntryReport {
    /// Its place in the journal, from 1 without gaps.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    seq: u64,
    /// The id made by its writer.
    id: EntryId,
    /// The civil day on which it happened.
    on: Day,
    /// The time of day, if it was noted.
    #[serde(skip_serializing_if = "Option::is_none")]
    at: Option<TimeOfDay>,
    /// When it was recorded; not when it happened.
    recorded_at: Instant,
    /// Who recorded it.
    recorded_by: Person,
    /// The key with which it was recorded, where a key was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    key: Option<KeyId>,
    /// The kind of entry.
    kind: Kind,
    /// What happened, in the fields of that kind; null if an `archived` entry moved it into an archive.
    #[schema(value_type = Option<Object>, required = true)]
    body: Box<RawValue>,
    /// What it was copied from, if a paper register was taken over.
    #[serde(skip_serializing_if = "Option::is_none")]
    copied_from: Option<String>,
    /// The day on which it was written there.
    #[serde(skip_serializing_if = "Option::is_none")]
    written_on: Option<Day>,
    /// The entry that it corrects.
    #[serde(skip_serializing_if = "Option::is_none")]
    corrects: Option<EntryId>,
    /// Why it was corrected.
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<String>,
    /// The hash of the previous entry.
    prev: Hash,
    /// The hash of this entry. It covers everything above and the name of the holding.
    hash: Hash,
}

impl EntryReport {
    pub(crate) fn of(entry: &Entry) -> EntryReport {
        let draft = &entry.draft;
        let (corrects, reason) = match draft.correction.as_deref() {
            Some(Correction { of, reason }) => (Some(*of), Some(reason.clone())),
            None => (None, None),
        };
        let (copied_from, written_on) = CopiedFrom::fields(draft.copied_from.as_deref());
        EntryReport {
            seq: entry.seq,
            id: draft.id,
            on: draft.on,
            at: draft.at,
            recorded_at: entry.recorded_at,
            recorded_by: draft.recorded_by.clone(),
            key: entry.key,
            kind: draft.kind(),
            // A body is valid JSON, since it was parsed before; an archived one becomes null.
            body: RawValue::from_string(draft.body.as_ref().to_owned()).unwrap_or_default(),
            copied_from,
            written_on,
            corrects,
            reason,
            prev: entry.prev,
            hash: entry.hash,
        }
    }
}

/// A part of a journal.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct EntryPage {
    /// The entries, in the order of recording.
    pub(crate) items: Vec<EntryReport>,
    /// The path of the next page; absent if there are no more yet.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "/holdings/heathside/entries?after=100&limit=100")]
    pub(crate) next: Option<String>,
}

/// Most entries in one batch.
pub(crate) const BATCH_MOST: usize = 1000;

/// A batch, for the document. The handler parses it entry by entry, to report what is wrong with each.
pub(crate) struct NewEntries;

impl PartialSchema for NewEntries {
    fn schema() -> RefOr<Schema> {
        // In a batch the path names no id, so each entry must have one.
        let entries = ArrayBuilder::new().items(Ref::from_schema_name(WITH_ID));
        let entries = entries.description(Some("Entries to record: all of them or none."));
        Schema::Array(entries.min_items(Some(1)).max_items(Some(BATCH_MOST)).build()).into()
    }
}

impl ToSchema for NewEntries {
    fn schemas(schemas: &mut Vec<(String, RefOr<Schema>)>) {
        schemas.push((Envelope::name().into_owned(), Envelope::schema()));
        Envelope::schemas(schemas);
    }
}

/// Everything but letters, digits and `-._~` (RFC 3986, unreserved).
pub(crate) const ESCAPED: &AsciiSet = &NON_ALPHANUMERIC.remove(b'-').remove(b'.').remove(b'_').remove(b'~');

/// The path of a holding's journal.
pub(crate) fn path_of_entries(holding: &HoldingName) -> String {
    format!("/holdings/{}/entries", utf8_percent_encode(holding.as_str(), ESCAPED))
}

/// The path of a holding's documents, or of one if a hash is given.
pub(crate) fn path_of_documents(holding: &HoldingName, hash: &str) -> String {
    let slash = if hash.is_empty() { "" } else { "/" };
    format!("/holdings/{}/documents{slash}{hash}", utf8_percent_encode(holding.as_str(), ESCAPED))
}

#[cfg(test)]
mod tests {
    use combclear_domain::journal::event::{ColonyEnded, Event};
    use combclear_domain::journal::{Draft, Entry, EntryId};

    use super::EntryReport;

    #[test]
    fn an_entry_is_sent_exactly_as_it_is_exported() {
        let id = EntryId("01964c7e-6f00-7000-8000-000000000001".parse().unwrap());
        let event = Event::from(ColonyEnded {
            colony: "M1".parse().unwrap(),
            cause: "queenless \"again\"".to_owned(),
        });
        let draft = Draft::new(id, "2026-04-11".parse().unwrap(), "A. Keeper".parse().unwrap(), event);
        let holding = "heathside".parse().unwrap();
        let now: combclear_domain::Instant = "2026-04-11T08:15:30.123Z".parse().unwrap();
        for draft in [draft.clone(), draft.at("09:30".parse().unwrap()).correcting(id, "wrong colony")] {
            let entry = Entry::seal(&holding, draft, now, None);
            assert_eq!(serde_json::to_string(&EntryReport::of(&entry)).unwrap(), entry.to_json());
        }
    }
}
