//! A correction from the entry that was wrong and what changes in it.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::wrong::{Wrong, WrongWith};
use super::{copied, from_record, names, put, values};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::words::Person;
use crate::facts::holding::{Holding, Record};
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::{Correction, Draft, EntryId};
use crate::journal::event::Event;
use crate::journal::form::{self, Blank, Input, blanks};

/// What changes in an entry.
#[derive(Debug, Clone, Default)]
pub struct Changes {
    /// The day, if it was wrong.
    pub on: Option<Day>,
    /// The time of day, if it was wrong.
    pub at: Option<TimeOfDay>,
    /// Who corrects it; the person who recorded the last entry if not stated.
    pub recorded_by: Option<Person>,
    /// What it was copied from, if that was not said or was wrong.
    pub copied_from: Option<String>,
    /// The day on which it was written there, if that was not said or was wrong.
    pub written_on: Option<Day>,
    /// The fields that change, by key. An empty text takes the value out.
    pub texts: BTreeMap<String, String>,
}

/// The entry that corrects `old`, with what changes and everything else as it was.
///
/// # Errors
/// Everything that is wrong with the changes.
pub fn corrected(
    holding: &Holding,
    old: &Record,
    changes: &Changes,
    reason: &str,
    id: EntryId,
) -> Result<Draft, Vec<Wrong>> {
    let kind = old.event.kind();
    let blanks = blanks(kind);
    let mut wrong = Vec::new();
    let mut body: Map<String, Value> = serde_json::from_str(&old.event.to_body()).unwrap_or_default();
    let on = changes.on.unwrap_or(old.on);
    for (key, text) in &changes.texts {
        let Some(blank) = blanks.iter().find(|blank| blank.key == *key) else {
            wrong.push(Wrong::at(key, WrongWith::NoSuchField));
            continue;
        };
        match changed(holding, blank, text.trim(), on) {
            Ok(Some(value)) => put(&mut body, blank, value),
            Ok(None) => take_out(&mut body, blank),
            Err(with) => wrong.push(Wrong::at(key, with)),
        }
    }
    let body = Value::Object(body).to_string();
    wrong.extend(form::faults(kind, &body).into_iter().map(|fault| Wrong::of_fault(&blanks, fault)));
    let (what, written_on) = CopiedFrom::fields(holding.copied_from(old));
    let copied_from = copied(changes.copied_from.clone().or(what), changes.written_on.or(written_on));
    let copied_from = copied_from.map_err(|fault| wrong.push(fault)).ok().flatten().map(Box::new);
    let by = changes.recorded_by.clone().or_else(|| from_record::person_named_last(holding).cloned());
    match (Event::read(kind, &body), by) {
        (Ok(event), Some(by)) if wrong.is_empty() => {
            let correction = Correction { of: old.id, reason: reason.to_owned() };
            let draft = Draft::new(id, on, by, event);
            let at = changes.at.or(old.at);
            Ok(Draft { at, copied_from, correction: Some(Box::new(correction)), ..draft })
        }
        (Err(fault), _) if wrong.is_empty() => Err(vec![Wrong::of_fault(&blanks, fault)]),
        (Ok(_), None) if wrong.is_empty() => Err(vec![Wrong::at("recorded_by", WrongWith::NobodyYet)]),
        _ => Err(wrong),
    }
}

/// The new value of a field; none if it is taken out.
fn changed(holding: &Holding, blank: &Blank, text: &str, on: Day) -> Result<Option<Value>, WrongWith> {
    if text.is_empty() {
        return Ok(None);
    }
    if matches!(blank.input, Input::Names(_)) {
        // A correction names exactly the colonies that it means.
        let read = names::colonies(holding, text, on, false)?;
        return Ok(Some(read.names.into()));
    }
    if matches!(blank.input, Input::FirstDose) {
        return from_record::entry_named(holding, text).map(Some);
    }
    Ok(Some(values::value(blank, text)))
}

fn take_out(body: &mut Map<String, Value>, blank: &Blank) {
    match blank.path.as_slice() {
        [name] => {
            body.remove(*name);
        }
        [part, name] => {
            let part = match body.get_mut(*part) {
                Some(Value::Array(items)) => items.first_mut(),
                other => other,
            };
            if let Some(Value::Object(fields)) = part {
                fields.remove(*name);
            }
        }
        _ => {}
    }
}
