//! Reads entries and bodies strictly, and words faults for keepers.

use serde::Deserialize;

use super::entry::EntryFault;
use super::event::Kind;
use crate::basics::diagnostic::nearest;

/// Why a body cannot be read, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{message}")]
pub struct BodyError {
    /// JSON pointer into the body; empty for the whole body.
    pub pointer: String,
    /// What is wrong with it.
    pub message: String,
}

/// Reads a body as this type.
pub(super) fn read_body<'de, T: Deserialize<'de>>(body: &'de str) -> Result<T, BodyError> {
    // Only an unreadable body is read again, to locate the fault.
    if let Ok(read) = serde_json::from_str(body) {
        return Ok(read);
    }
    let mut json = serde_json::Deserializer::from_str(body);
    let read = serde_path_to_error::deserialize(&mut json).map_err(|fault| BodyError {
        pointer: pointer(fault.path()),
        message: without_position(&fault.inner().to_string()),
    })?;
    json.end().map_err(|fault| BodyError {
        pointer: String::new(),
        message: without_position(&fault.to_string()),
    })?;
    Ok(read)
}

/// Refuses a list in place of an object. The JSON reader takes its items for the fields in order, so that a value could end up in
/// the wrong field.
pub(super) fn check_named(written: &str, understood: &str) -> Result<(), BodyError> {
    let read = |text| serde_json::from_str::<serde_json::Value>(text).unwrap_or_default();
    match list_for_object(&read(written), &read(understood)) {
        None => Ok(()),
        Some(pointer) => {
            let message = "expected an object with named fields, not a list".to_owned();
            Err(BodyError { pointer, message })
        }
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

/// A path as a JSON pointer (RFC 6901).
pub(crate) fn pointer(path: &serde_path_to_error::Path) -> String {
    use serde_path_to_error::Segment;
    path.iter()
        .filter_map(|segment| match segment {
            Segment::Seq { index } => Some(format!("/{index}")),
            Segment::Map { key } => Some(format!("/{}", key.replace('~', "~0").replace('/', "~1"))),
            Segment::Enum { .. } | Segment::Unknown => None,
        })
        .collect()
}

/// Rewords a message of the JSON reader for keepers and drops its position: a body is one line, so the pointer locates a
/// fault better than "at line 1 column 17".
pub(crate) fn without_position(message: &str) -> String {
    const PLAIN: [(&str, &str); 8] = [
        ("unknown variant", "not a word of the list:"),
        ("invalid type: map", "an object"),
        ("invalid type: ", ""),
        ("invalid value: ", ""),
        ("expected u8", "expected a whole number from 0 to 255"),
        ("expected u16", "expected a whole number from 0 to 65535"),
        ("expected u64", "expected a whole number"),
        ("expected a sequence", "expected a list"),
    ];
    let message = message.split_once(" at line ").map_or(message, |(what, _)| what);
    let message = match message.split_once("expected struct ") {
        Some((before, _)) => format!("{before}expected an object with named fields"),
        None => message.to_owned(),
    };
    PLAIN.iter().fold(message, |message, (rust, plain)| message.replace(rust, plain))
}

/// Reads an entry as this type.
pub(super) fn read_json<'de, T: Deserialize<'de>>(text: &'de str) -> Result<T, EntryFault> {
    let mut json = serde_json::Deserializer::from_str(text);
    let fault = |pointer: String, message: String| {
        let column = message.rsplit_once(" column ").map(|(_, column)| column.to_owned());
        let message = message.split_once(" at line ").map_or(message.as_str(), |(what, _)| what).to_owned();
        let place = column.map_or(String::new(), |column| format!(" (near character {column})"));
        EntryFault { pointer, help: help_with_envelope(&message), message: format!("{message}{place}") }
    };
    if text.trim_start().starts_with('[') {
        return Err(fault(
            String::new(),
            "expected an object with named fields, not a list at line 1 column 1".to_owned(),
        ));
    }
    let read = serde_path_to_error::deserialize(&mut json)
        .map_err(|error| fault(pointer(error.path()), error.inner().to_string()))?;
    json.end().map_err(|error| fault(String::new(), error.to_string()))?;
    Ok(read)
}

/// The fault for an unknown kind, with the nearest known one.
pub(super) fn unknown_kind(written: &str) -> EntryFault {
    let words = Kind::ALL.iter().map(|kind| kind.as_str());
    let help = nearest(written, words.clone()).map_or_else(
        || format!("the kinds are: {}", words.collect::<Vec<_>>().join(", ")),
        |near| format!("did you mean `{near}`?"),
    );
    EntryFault::at("/kind", format!("`{written}` is not a kind of entry"), help)
}

/// How to fix a body.
pub(super) fn help_with_body(kind: Kind, message: &str) -> String {
    if message.starts_with("missing field") {
        return format!("add it to the body of this `{}` entry", kind.as_str());
    }
    if message.starts_with("duplicate field") {
        return "the field is given twice; keep one of them".to_owned();
    }
    if message.starts_with("unknown field") {
        return format!("an entry of kind `{}` has no such field; correct or drop it", kind.as_str());
    }
    format!("see the fields of `{}` in the API document", kind.as_str())
}

fn help_with_envelope(message: &str) -> String {
    if message.contains("is not a day of the calendar") {
        return "look the date up; February has 29 days in leap years only".to_owned();
    }
    if message.starts_with("EOF") || message.starts_with("expected") || message.starts_with("trailing") {
        return "each entry is one JSON object on one line; look for a missing quote, comma or bracket"
            .to_owned();
    }
    "an entry has id, on, at, recorded_by, kind, body, corrects, reason".to_owned()
}
