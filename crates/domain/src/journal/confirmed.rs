//! Values of the built-in leaflet that a keeper found on the leaflet of a lot.
//!
//! A confirmation counts for that one value, not for later versions of the built-in leaflet. It holds the value:
//! `{"topic":"brood","value":{"value":"absent"}}`. Older journals hold the words that were displayed:
//! `{"topic":"brood","says":"brood absent"}`. They are read and written unchanged.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Serialize, Serializer};

use crate::basics::misread::Misread;
use crate::basics::node::Node;
use crate::basics::says::Says;
use crate::basics::topic::Topic;

/// A value of the built-in leaflet that a keeper found on the leaflet of a lot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Confirmed {
    /// In words.
    InWords {
        /// Its topic.
        topic: Topic,
        /// The value in the words that were displayed.
        says: String,
    },
    /// As a value.
    Value(Says),
}

impl Confirmed {
    /// Its topic.
    #[must_use]
    pub const fn topic(&self) -> Topic {
        match self {
            Confirmed::InWords { topic, .. } => *topic,
            Confirmed::Value(says) => says.topic(),
        }
    }
}

/// A value of the built-in leaflet that a keeper found on the leaflet of a lot. It counts for that value only, not for later
/// versions of the built-in leaflet.
#[derive(Serialize)]
#[serde(untagged)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
enum ConfirmedForm<'c> {
    Value(ConfirmedValue<'c>),
    InWords(ConfirmedInWords<'c>),
}

/// A confirmed value.
#[derive(Serialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct ConfirmedValue<'c> {
    /// Its topic.
    topic: Topic,
    /// The fields that a rule of this kind has in `Says`, without `kind`: `{"amount": 2, "per": "hive"}` for a dose.
    #[cfg_attr(feature = "openapi", schema(value_type = Object))]
    value: Fields<'c>,
}

/// A confirmed value in words, as in older journals.
#[derive(Serialize)]
#[serde(deny_unknown_fields)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct ConfirmedInWords<'c> {
    /// Its topic.
    topic: Topic,
    /// The value in the words that were displayed.
    #[cfg_attr(feature = "openapi", schema(min_length = 1))]
    says: &'c str,
}

struct Fields<'c>(&'c Says);

impl Serialize for Fields<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.write_fields(serializer)
    }
}

impl Serialize for Confirmed {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let written = match self {
            Confirmed::InWords { topic, says } => {
                ConfirmedForm::InWords(ConfirmedInWords { topic: *topic, says })
            }
            Confirmed::Value(says) => {
                ConfirmedForm::Value(ConfirmedValue { topic: says.topic(), value: Fields(says) })
            }
        };
        written.serialize(serializer)
    }
}

#[cfg(feature = "openapi")]
impl utoipa::PartialSchema for Confirmed {
    fn schema() -> utoipa::openapi::RefOr<utoipa::openapi::schema::Schema> {
        ConfirmedForm::schema()
    }
}

#[cfg(feature = "openapi")]
impl utoipa::ToSchema for Confirmed {
    fn schemas(schemas: &mut Vec<(String, utoipa::openapi::RefOr<utoipa::openapi::schema::Schema>)>) {
        ConfirmedForm::schemas(schemas);
    }
}

impl<'de> Deserialize<'de> for Confirmed {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Confirmed, D::Error> {
        deserializer.deserialize_struct("Confirmed", &["topic", "says", "value"], Reader)
    }
}

#[derive(Deserialize)]
#[serde(field_identifier, rename_all = "lowercase")]
enum Key {
    Topic,
    Says,
    Value,
}

/// Reads a value by its topic, so that a fault is reported at its place.
struct FieldsOf(Topic);

impl<'de> DeserializeSeed<'de> for FieldsOf {
    type Value = Says;

    fn deserialize<D: Deserializer<'de>>(self, fields: D) -> Result<Says, D::Error> {
        Says::read_fields(self.0, fields)
    }
}

struct Reader;

impl<'de> Visitor<'de> for Reader {
    type Value = Confirmed;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("struct Confirmed")
    }

    fn visit_seq<A: SeqAccess<'de>>(self, _: A) -> Result<Confirmed, A::Error> {
        Err(A::Error::custom(Misread::ListForObject))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Confirmed, A::Error> {
        let (mut topic, mut words, mut value) = (None, None, None);
        // A value that stands before its topic waits for it.
        let mut waiting: Option<Node> = None;
        while let Some(key) = map.next_key()? {
            match key {
                Key::Topic => once(&mut topic, "topic", map.next_value()?)?,
                Key::Says => once(&mut words, "says", map.next_value()?)?,
                Key::Value => match topic {
                    Some(topic) => once(&mut value, "value", map.next_value_seed(FieldsOf(topic))?)?,
                    None => once(&mut waiting, "value", map.next_value()?)?,
                },
            }
        }
        let topic = topic.ok_or_else(|| A::Error::missing_field("topic"))?;
        if let Some(waiting) = waiting {
            let read = FieldsOf(topic).deserialize(waiting).map_err(|fault| A::Error::custom(fault.what))?;
            once(&mut value, "value", read)?;
        }
        match (words, value) {
            (Some(says), None) => Ok(Confirmed::InWords { topic, says }),
            (None, Some(value)) => Ok(Confirmed::Value(value)),
            (None, None) => Err(A::Error::custom(Misread::NothingConfirmed)),
            (Some(_), Some(_)) => Err(A::Error::custom(Misread::ConfirmedTwice)),
        }
    }
}

fn once<T, E: Error>(field: &mut Option<T>, name: &'static str, read: T) -> Result<(), E> {
    match field.replace(read) {
        None => Ok(()),
        Some(_) => Err(E::duplicate_field(name)),
    }
}
