//! The entries that an answer names, each with its number in the journal.

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

/// An entry that an answer names. Elsewhere in the answer only its id stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct NamedEntry {
    /// The entry.
    pub entry: EntryId,
    /// Its number in the journal, as sentences and the register print it.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// Its kind.
    pub kind: Kind,
    /// The day of the event.
    pub on: Day,
}

impl NamedEntry {
    /// Each of these entries once, in the order of the journal. An id that no entry has is left out.
    #[must_use]
    pub fn all(holding: &Holding, ids: impl IntoIterator<Item = EntryId>) -> Vec<NamedEntry> {
        let mut named: Vec<NamedEntry> = ids
            .into_iter()
            .filter_map(|id| holding.entry(id))
            .map(|record| NamedEntry {
                entry: record.id,
                seq: record.seq,
                kind: record.event.kind(),
                on: record.on,
            })
            .collect();
        named.sort_unstable_by_key(|entry| entry.seq);
        named.dedup();
        named
    }
}
