//! The id of an entry, and how an entry is named.

use std::fmt;

use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Serialize, Serializer};

use super::misread::Misread;
pub use super::misread::{NotAnEntry, NotAnId};
use super::text::text_in_json;

/// The id of an entry: a UUID (version 7 advised) made by whoever writes the entry, before it is sent.
///
/// It is the idempotency key: sending the same entry twice records it once.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(value_type = String, format = Uuid))]
pub struct EntryId(pub uuid::Uuid);

impl EntryId {
    /// An id that no entry has, for one that is only tried: by its number among those tried together.
    #[must_use]
    pub const fn stand_in(number: u64) -> EntryId {
        // Neither a version nor a variant that anybody makes.
        EntryId(uuid::Uuid::from_u64_pair(u64::MAX, number))
    }
}

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

/// An entry as whoever speaks of it names it: by its id, or by its number in the journal of the holding. A journal keeps
/// ids only.
///
/// In JSON a number is a number. In a path, both are text.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WhichEntry {
    /// By its id.
    Id(EntryId),
    /// By its number in the journal, from 1.
    Number(u64),
}

/// What [`WhichEntry`] wants in JSON. [`super::misread::Wanted`] knows it by this.
pub(super) const WANTED: &str = "the id of an entry or its number";

impl From<EntryId> for WhichEntry {
    fn from(id: EntryId) -> WhichEntry {
        WhichEntry::Id(id)
    }
}

impl fmt::Display for WhichEntry {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WhichEntry::Id(id) => id.fmt(f),
            WhichEntry::Number(number) => number.fmt(f),
        }
    }
}

impl std::str::FromStr for WhichEntry {
    type Err = NotAnEntry;

    fn from_str(text: &str) -> Result<WhichEntry, NotAnEntry> {
        let not = || NotAnEntry(text.to_owned());
        // One spelling only: Rust also reads `+5` and `007`.
        let is_number = text.bytes().all(|byte| byte.is_ascii_digit()) && !text.starts_with('0');
        if is_number {
            return text.parse().map(WhichEntry::Number).map_err(|_| not());
        }
        text.parse().map(WhichEntry::Id).map_err(|_: NotAnId| not())
    }
}

impl Serialize for WhichEntry {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            WhichEntry::Id(id) => id.serialize(serializer),
            WhichEntry::Number(number) => serializer.serialize_u64(*number),
        }
    }
}

impl<'de> Deserialize<'de> for WhichEntry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<WhichEntry, D::Error> {
        struct Written;

        impl Visitor<'_> for Written {
            type Value = WhichEntry;

            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(WANTED)
            }

            fn visit_str<E: de::Error>(self, text: &str) -> Result<WhichEntry, E> {
                let id: Result<EntryId, NotAnId> = text.parse();
                id.map(WhichEntry::Id).map_err(|_| E::custom(Misread::from(NotAnEntry(text.to_owned()))))
            }

            fn visit_u64<E: de::Error>(self, number: u64) -> Result<WhichEntry, E> {
                Ok(WhichEntry::Number(number))
            }
        }

        deserializer.deserialize_any(Written)
    }
}

#[cfg(feature = "openapi")]
impl utoipa::PartialSchema for WhichEntry {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        use utoipa::openapi::schema::{ObjectBuilder, OneOfBuilder, Schema, Type};

        let number = ObjectBuilder::new()
            .schema_type(Type::Integer)
            .minimum(Some(1))
            .maximum(Some(9_007_199_254_740_991_i64));
        let number = number.description(Some("Its number in the journal."));
        let named = OneOfBuilder::new().item(<EntryId as utoipa::PartialSchema>::schema()).item(number);
        Schema::OneOf(named.description(Some("An entry, by its id or by its number in the journal.")).build())
            .into()
    }
}

#[cfg(feature = "openapi")]
impl utoipa::ToSchema for WhichEntry {}
