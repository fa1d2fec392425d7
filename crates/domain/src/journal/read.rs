//! Reading entries and bodies strictly, and finding what is wrong with them.

use std::borrow::Cow;
use std::fmt;

use serde::de::{IgnoredAny, MapAccess, Visitor};
use serde::{Deserialize, Deserializer};
use serde_json::value::RawValue;

use super::entry::{EntryFault, EntryId, WhichEntry};
use super::event::Kind;
use super::fault::{TextFault, Unreadable};
use super::form::{Entered, Field, Input, faults_in, field};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::misread::Misread;
use crate::basics::node::{Node, Reading, why_not};
use crate::basics::spelling::nearest;
use crate::basics::words::Person;

/// A body that cannot be read: why, and where (a JSON pointer into the body).
pub type BodyError = Reading;

/// Reads a body as this type.
pub(super) fn read_body<'de, T: Deserialize<'de>>(body: &'de str) -> Result<T, BodyError> {
    serde_json::from_str(body).map_err(|error| why_not::<T>(body, &error))
}

/// Refuses a list in place of an object. The JSON reader takes its items for the fields in order, so that a value could end up in
/// the wrong field.
pub(super) fn check_named(written: &str, understood: &str) -> Result<(), BodyError> {
    let read = |text| serde_json::from_str::<serde_json::Value>(text).unwrap_or_default();
    match list_for_object(&read(written), &read(understood)) {
        None => Ok(()),
        Some(pointer) => Err(BodyError { pointer, what: Misread::ListForObject }),
    }
}

fn list_for_object(written: &serde_json::Value, understood: &serde_json::Value) -> Option<String> {
    use serde_json::Value;
    match (written, understood) {
        (Value::Array(_), Value::Object(_)) => Some(String::new()),
        (Value::Object(written), Value::Object(understood)) => written.iter().find_map(|(name, value)| {
            let within = list_for_object(value, understood.get(name)?)?;
            Some(format!("/{name}{within}"))
        }),
        (Value::Array(written), Value::Array(understood)) => {
            written.iter().zip(understood).enumerate().find_map(|(index, (value, other))| {
                let within = list_for_object(value, other)?;
                Some(format!("/{index}{within}"))
            })
        }
        _ => None,
    }
}

/// The fields of an object as they are written: in their order, each as often as it is given.
pub(super) struct RawFields<'t>(Vec<(String, Cow<'t, str>)>);

impl<'t> RawFields<'t> {
    /// The value of a field that is a whole number, and that number.
    pub(super) fn number(&mut self, field: &str) -> Option<(&mut Cow<'t, str>, u64)> {
        let (_, value) = self.0.iter_mut().find(|(name, _)| name == field)?;
        let number = value.parse().ok()?;
        Some((value, number))
    }

    pub(super) fn to_json(&self) -> String {
        let fields =
            self.0.iter().map(|(name, value)| format!("{}:{value}", serde_json::Value::from(name.as_str())));
        format!("{{{}}}", fields.collect::<Vec<_>>().join(","))
    }
}

impl<'de> Deserialize<'de> for RawFields<'de> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<RawFields<'de>, D::Error> {
        deserializer.deserialize_map(RawFieldsVisitor)
    }
}

struct RawFieldsVisitor;

impl<'de> Visitor<'de> for RawFieldsVisitor {
    type Value = RawFields<'de>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<RawFields<'de>, A::Error> {
        let mut fields = Vec::new();
        while let Some((name, value)) = map.next_entry::<String, &RawValue>()? {
            fields.push((name, Cow::Borrowed(value.get())));
        }
        Ok(RawFields(fields))
    }
}

/// Reads an entry as this type.
pub(super) fn read_json<'de, T: Deserialize<'de>>(text: &'de str) -> Result<T, TextFault> {
    if text.trim_start().starts_with('[') {
        return Err(TextFault { found: Misread::ListForObject.into(), near: Some(1) });
    }
    serde_json::from_str(text)
        .map_err(|error| TextFault { found: why_not::<T>(text, &error), near: Some(error.column()) })
}

/// The fault for an unknown kind, with the nearest known one.
pub(super) fn unknown_kind(written: &str) -> EntryFault {
    let near = nearest(written, Kind::ALL.iter().map(|kind| kind.as_str())).and_then(Kind::from_word);
    EntryFault::at("/kind", Unreadable::UnknownKind { written: written.to_owned(), near })
}

/// Everything that is wrong with an entry in JSON of which the reader found the first fault.
pub(super) fn all_faults(text: &str, first: EntryFault) -> Vec<EntryFault> {
    let mut faults = vec![first];
    let Ok(Node::Object(written)) = serde_json::from_str::<Node>(text) else { return faults };
    let body =
        written.iter().rfind(|(name, _)| name == "body").and_then(|(_, body)| body.clone().into_fields());
    let kind = written.iter().find_map(|(name, value)| {
        let Node::Text(word) = value else { return None };
        Kind::from_word(word).filter(|_| name == "kind")
    });
    let found_around = faults_in(AROUND, written).into_iter().map(|Reading { pointer, what }| EntryFault {
        pointer,
        what: Unreadable::Envelope { why: what, near: None },
    });
    let found_within = kind.zip(body).into_iter().flat_map(|(kind, body)| {
        let numbered = numbered(kind, &body);
        let within = faults_in(kind.fields(), body).into_iter();
        let within = within.filter(move |fault| !numbered.contains(&fault.pointer));
        within.map(move |Reading { pointer, what }| EntryFault {
            pointer: format!("/body{pointer}"),
            what: Unreadable::Body { kind, why: what },
        })
    });
    for found in found_around.chain(found_within) {
        if !faults.iter().any(|known| known.is_the_same(&found)) {
            faults.push(found);
        }
    }
    faults
}

/// Where a body names another entry by its number, which is looked up only in an entry that can be read.
fn numbered(kind: Kind, body: &[(String, Node)]) -> Vec<String> {
    let may_be = |name: &str| {
        kind.fields().iter().any(|field| field.name == name && matches!(field.input, Input::FirstDose))
    };
    let is_number = |value: &Node| matches!(value, Node::Number(number) if number.is_u64());
    let named = body.iter().filter(|(name, value)| is_number(value) && may_be(name));
    named.map(|(name, _)| format!("/{name}")).collect()
}

/// Any JSON: what stands in a body is checked by its kind.
impl Entered for IgnoredAny {
    const INPUT: Input = Input::Made;
}

/// The fields of an entry, in the order in which an [`Envelope`](super::entry::Envelope) has them.
const AROUND: &[Field] = &[
    field!(id: Option<EntryId>),
    field!(on: Day),
    field!(at: Option<TimeOfDay>),
    field!(recorded_by: Person),
    field!(kind: String),
    field!(body: IgnoredAny),
    field!(copied_from: Option<String>),
    field!(written_on: Option<Day>),
    field!(corrects: Option<WhichEntry>),
    field!(reason: Option<String>),
];
