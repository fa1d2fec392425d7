//! The id of an entry.

use std::fmt;

pub use super::misread::NotAnId;
use super::text::text_in_json;

/// The id of an entry: a UUID (version 7 advised) made by whoever writes the entry, before it is sent.
///
/// It is the idempotency key: sending the same entry twice records it once.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(value_type = String, format = Uuid))]
pub struct EntryId(pub uuid::Uuid);

impl fmt::Display for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(&self.0, f)
    }
}

impl fmt::Debug for EntryId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl std::str::FromStr for EntryId {
    type Err = NotAnId;

    fn from_str(text: &str) -> Result<EntryId, NotAnId> {
        // One spelling only: the hash chain covers the id, and a change of its letters must show.
        let one_spelling = text.len() == 36 && !text.bytes().any(|letter| letter.is_ascii_uppercase());
        let read = text.parse().ok().filter(|_| one_spelling);
        read.map(EntryId).ok_or_else(|| NotAnId(text.to_owned()))
    }
}

text_in_json!(EntryId);
