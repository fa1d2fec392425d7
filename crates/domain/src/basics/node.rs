//! Reading JSON anew to find what is wrong with it, and where.
//!
//! A reader of serde says what is wrong in English. [`Reading`] is the same error as a value, with a pointer to its place. It is
//! only used for what could not be read, so it need not be fast.

use std::fmt;

use serde::de::value::{BorrowedStrDeserializer, StringDeserializer};
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, Expected, IntoDeserializer, MapAccess, SeqAccess,
    Unexpected, VariantAccess, Visitor,
};
use serde::{Deserialize, forward_to_deserialize_any};

use super::misread::{Found, Misread, Wanted};

/// Why something cannot be read, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{pointer}: {what}")]
pub struct Reading {
    /// JSON pointer (RFC 6901); empty for the whole.
    pub pointer: String,
    /// What is wrong.
    pub what: Misread,
}

impl Reading {
    /// The name of the field in which it stands, or that is one too many; empty for the whole.
    #[must_use]
    pub fn name(&self) -> String {
        let first = self.pointer.split('/').nth(1).unwrap_or_default();
        first.replace("~1", "/").replace("~0", "~")
    }

    pub(crate) fn within(self, part: &str) -> Reading {
        let part = part.replace('~', "~0").replace('/', "~1");
        Reading { pointer: format!("/{part}{}", self.pointer), ..self }
    }
}

impl From<Misread> for Reading {
    fn from(what: Misread) -> Reading {
        Reading { pointer: String::new(), what }
    }
}

fn owned(names: &[&str]) -> Vec<String> {
    names.iter().map(|name| (*name).to_owned()).collect()
}

impl de::Error for Reading {
    fn custom<T: fmt::Display>(message: T) -> Reading {
        Misread::passed(&message).into()
    }

    fn invalid_type(found: Unexpected<'_>, wanted: &dyn Expected) -> Reading {
        Misread::WrongType { found: Found::of(&found), wanted: Wanted::of(wanted) }.into()
    }

    fn invalid_value(found: Unexpected<'_>, wanted: &dyn Expected) -> Reading {
        Misread::WrongValue { found: Found::of(&found), wanted: Wanted::of(wanted) }.into()
    }

    fn unknown_variant(word: &str, known: &'static [&'static str]) -> Reading {
        Misread::UnknownWord { word: word.to_owned(), known: owned(known) }.into()
    }

    fn unknown_field(field: &str, known: &'static [&'static str]) -> Reading {
        Misread::UnknownField { field: field.to_owned(), known: owned(known) }.into()
    }

    fn missing_field(field: &'static str) -> Reading {
        Misread::MissingField { field: field.to_owned() }.into()
    }

    fn duplicate_field(field: &'static str) -> Reading {
        Misread::DuplicateField { field: field.to_owned() }.into()
    }
}

/// Why a text could not be read as this type, if the JSON reader said this. Only what cannot be read is read again, to tell where the
/// fault is.
pub(crate) fn why_not<'de, T: Deserialize<'de>>(text: &str, error: &serde_json::Error) -> Reading {
    let node = match serde_json::from_str::<Node>(text) {
        Ok(node) => node,
        // That it is not JSON comes before what else is wrong with it.
        Err(not_json) => return Misread::not_json(&not_json).into(),
    };
    T::deserialize(node).err().unwrap_or_else(|| Misread::not_json(error).into())
}

/// Reads a JSON object as this type.
///
/// # Errors
/// What is wrong, and where. A list is refused: its items would be taken for the fields in their order.
pub fn read_object<'de, T: Deserialize<'de>>(text: &'de str) -> Result<T, Reading> {
    if text.trim_start().starts_with('[') {
        return Err(Misread::ListForObject.into());
    }
    serde_json::from_str(text).map_err(|error| why_not::<T>(text, &error))
}

/// Reads named texts, as an address has them, as this type.
///
/// # Errors
/// What is wrong, and with which of them.
pub fn read_named<'de, T: Deserialize<'de>>(
    named: impl IntoIterator<Item = (String, String)>,
) -> Result<T, Reading> {
    T::deserialize(Node::Object(named.into_iter().map(|(name, text)| (name, Node::Text(text))).collect()))
}

/// JSON as it is written: fields in their order, each as often as it is given.
#[derive(Debug, Clone)]
pub(crate) enum Node {
    Null,
    Boolean(bool),
    Number(serde_json::Number),
    Text(String),
    List(Vec<Node>),
    Object(Vec<(String, Node)>),
}

impl Node {
    /// Whether it is an object.
    pub(crate) const fn is_object(&self) -> bool {
        matches!(self, Node::Object(_))
    }

    /// The fields of an object.
    pub(crate) fn into_fields(self) -> Option<Vec<(String, Node)>> {
        match self {
            Node::Object(fields) => Some(fields),
            Node::Null | Node::Boolean(_) | Node::Number(_) | Node::Text(_) | Node::List(_) => None,
        }
    }
}

impl<'de> Deserialize<'de> for Node {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Node, D::Error> {
        deserializer.deserialize_any(NodeVisitor)
    }
}

struct NodeVisitor;

impl<'de> Visitor<'de> for NodeVisitor {
    type Value = Node;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("any valid JSON value")
    }

    fn visit_unit<E: de::Error>(self) -> Result<Node, E> {
        Ok(Node::Null)
    }

    fn visit_bool<E: de::Error>(self, value: bool) -> Result<Node, E> {
        Ok(Node::Boolean(value))
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Node, E> {
        Ok(Node::Number(number.into()))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Node, E> {
        Ok(Node::Number(number.into()))
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<Node, E> {
        Ok(serde_json::Number::from_f64(number).map_or(Node::Null, Node::Number))
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Node, E> {
        Ok(Node::Text(text.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut seq: A) -> Result<Node, A::Error> {
        let mut list = Vec::new();
        while let Some(item) = seq.next_element()? {
            list.push(item);
        }
        Ok(Node::List(list))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Node, A::Error> {
        let mut fields = Vec::new();
        while let Some(field) = map.next_entry()? {
            fields.push(field);
        }
        Ok(Node::Object(fields))
    }
}

/// The name under which `serde_json` asks for text as it is written. What is looked for here is a fault, and there is none in
/// such text, so `null` is given for it.
const RAW: &str = "$serde_json::private::RawValue";

impl<'de> Deserializer<'de> for Node {
    type Error = Reading;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Reading> {
        match self {
            Node::Null => visitor.visit_unit(),
            Node::Boolean(value) => visitor.visit_bool(value),
            Node::Number(number) => {
                if let Some(number) = number.as_u64() {
                    visitor.visit_u64(number)
                } else if let Some(number) = number.as_i64() {
                    visitor.visit_i64(number)
                } else {
                    visitor.visit_f64(number.as_f64().unwrap_or_default())
                }
            }
            Node::Text(text) => visitor.visit_string(text),
            Node::List(items) => visitor.visit_seq(Items { items: items.into_iter(), index: 0 }),
            Node::Object(fields) => visitor.visit_map(Fields { fields: fields.into_iter(), value: None }),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Reading> {
        match self {
            Node::Null => visitor.visit_none(),
            Node::Boolean(_) | Node::Number(_) | Node::Text(_) | Node::List(_) | Node::Object(_) => {
                visitor.visit_some(self)
            }
        }
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Reading> {
        if name == RAW { visitor.visit_map(Raw { given: false }) } else { visitor.visit_newtype_struct(self) }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Reading> {
        match self {
            Node::Text(word) => visitor.visit_enum(OneWord(word)),
            Node::Null | Node::Boolean(_) | Node::Number(_) | Node::List(_) | Node::Object(_) => {
                // Says what was found.
                self.deserialize_any(TextWanted).map(|never| match never {})
            }
        }
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct seq tuple
        tuple_struct map struct identifier ignored_any
    }
}

impl IntoDeserializer<'_, Reading> for Node {
    type Deserializer = Node;

    fn into_deserializer(self) -> Node {
        self
    }
}

enum Never {}

struct TextWanted;

impl Visitor<'_> for TextWanted {
    type Value = Never;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a string")
    }
}

struct Items {
    items: std::vec::IntoIter<Node>,
    index: usize,
}

impl<'de> SeqAccess<'de> for Items {
    type Error = Reading;

    fn next_element_seed<T: DeserializeSeed<'de>>(&mut self, seed: T) -> Result<Option<T::Value>, Reading> {
        let Some(item) = self.items.next() else { return Ok(None) };
        let index = self.index;
        self.index = index.saturating_add(1);
        seed.deserialize(item).map(Some).map_err(|fault| fault.within(&index.to_string()))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.items.len())
    }
}

struct Fields {
    fields: std::vec::IntoIter<(String, Node)>,
    value: Option<(String, Node)>,
}

impl<'de> MapAccess<'de> for Fields {
    type Error = Reading;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Reading> {
        let Some((name, value)) = self.fields.next() else { return Ok(None) };
        let key = StringDeserializer::<Reading>::new(name.clone());
        let read = seed.deserialize(key).map_err(|fault| fault.within(&name))?;
        self.value = Some((name, value));
        Ok(Some(read))
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Reading> {
        // serde asks for a value after its key only.
        let (name, value) = self.value.take().unwrap_or_else(|| (String::new(), Node::Null));
        seed.deserialize(value).map_err(|fault| fault.within(&name))
    }

    fn size_hint(&self) -> Option<usize> {
        Some(self.fields.len())
    }
}

/// A word of a list.
struct OneWord(String);

impl<'de> EnumAccess<'de> for OneWord {
    type Error = Reading;
    type Variant = NoMore;

    fn variant_seed<V: DeserializeSeed<'de>>(self, seed: V) -> Result<(V::Value, NoMore), Reading> {
        let word = StringDeserializer::<Reading>::new(self.0);
        Ok((seed.deserialize(word)?, NoMore))
    }
}

/// A word has nothing in it.
struct NoMore;

impl<'de> VariantAccess<'de> for NoMore {
    type Error = Reading;

    fn unit_variant(self) -> Result<(), Reading> {
        Ok(())
    }

    fn newtype_variant_seed<T: DeserializeSeed<'de>>(self, seed: T) -> Result<T::Value, Reading> {
        seed.deserialize(Node::Null)
    }

    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Reading> {
        Node::Null.deserialize_any(visitor)
    }

    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Reading> {
        Node::Null.deserialize_any(visitor)
    }
}

struct Raw {
    given: bool,
}

impl<'de> MapAccess<'de> for Raw {
    type Error = Reading;

    fn next_key_seed<K: DeserializeSeed<'de>>(&mut self, seed: K) -> Result<Option<K::Value>, Reading> {
        if self.given {
            return Ok(None);
        }
        self.given = true;
        seed.deserialize(BorrowedStrDeserializer::<Reading>::new(RAW)).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Reading> {
        seed.deserialize(BorrowedStrDeserializer::<Reading>::new("null"))
    }
}
