//! Reading entries and bodies strictly, and finding what is wrong with them.

use serde::Deserialize;

use super::entry::EntryFault;
use super::event::Kind;
use super::fault::{TextFault, Unreadable};
use crate::basics::misread::Misread;
use crate::basics::node::{Reading, fault_in};
use crate::basics::spelling::nearest;

/// A body that cannot be read: why, and where (a JSON pointer into the body).
pub type BodyError = Reading;

/// Reads a body as this type.
pub(super) fn read_body<'de, T: Deserialize<'de>>(body: &'de str) -> Result<T, BodyError> {
    // Only what cannot be read is read again, to tell where the fault is.
    serde_json::from_str(body).map_err(|error| {
        let unplaced = || Misread::not_json(&error).into();
        fault_in::<T>(body).unwrap_or_else(unplaced)
    })
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

/// Reads an entry as this type.
pub(super) fn read_json<'de, T: Deserialize<'de>>(text: &'de str) -> Result<T, TextFault> {
    if text.trim_start().starts_with('[') {
        return Err(TextFault { found: Misread::ListForObject.into(), near: Some(1) });
    }
    serde_json::from_str(text).map_err(|error| {
        let unplaced = || Misread::not_json(&error).into();
        TextFault { found: fault_in::<T>(text).unwrap_or_else(unplaced), near: Some(error.column()) }
    })
}

/// The fault for an unknown kind, with the nearest known one.
pub(super) fn unknown_kind(written: &str) -> EntryFault {
    let near = nearest(written, Kind::ALL.iter().map(|kind| kind.as_str())).and_then(Kind::from_word);
    EntryFault::at("/kind", Unreadable::UnknownKind { written: written.to_owned(), near })
}
