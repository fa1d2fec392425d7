//! Corrections and strike-outs, with the struck value and the new one.

use std::collections::BTreeMap;

use serde_json::Value;

use super::rows::{Change, CorrectionRow, Written};
use super::{View, is_of_the_register};
use crate::holding::Record;
use crate::journal::event::Event;

/// What was corrected about entries of the time, in the order in which the corrections were written down.
pub(super) fn corrections(view: &View<'_>) -> Vec<CorrectionRow> {
    let rows = view.holding.corrections().into_iter().filter_map(|(old, new)| {
        let of_time = view.period.holds(old.on) || view.period.holds(new.on);
        // A correction is knowledge: it bears on every day, whenever it was made.
        (of_time && is_of_the_register(&old.event)).then(|| row(old, new))
    });
    rows.collect()
}

fn row(old: &Record, new: &Record) -> CorrectionRow {
    let struck_out = matches!(*new.event, Event::StrikeOut(_));
    let now = if struck_out { BTreeMap::new() } else { values(new) };
    CorrectionRow {
        written: Written::of(new),
        of: old.id,
        of_place: old.seq,
        kind: old.event.kind(),
        struck_out,
        reason: new.correction.as_ref().map(|correction| correction.reason.clone()).unwrap_or_default(),
        changes: changes(&values(old), &now),
    }
}

/// Every value that differs, by field.
fn changes(was: &BTreeMap<String, String>, now: &BTreeMap<String, String>) -> Vec<Change> {
    let mut fields: Vec<&String> = was.keys().chain(now.keys()).collect();
    fields.sort();
    fields.dedup();
    let change = fields.into_iter().filter(|field| was.get(*field) != now.get(*field)).map(|field| Change {
        field: field.clone(),
        was: was.get(field).cloned(),
        now: now.get(field).cloned(),
    });
    change.collect()
}

/// The values of an entry as text, by field. A list of names is one value.
fn values(record: &Record) -> BTreeMap<String, String> {
    let mut values = BTreeMap::from([("on".to_owned(), record.on.to_string())]);
    values.extend(record.at.map(|at| ("at".to_owned(), at.to_string())));
    let body = serde_json::from_str(&record.event.to_body()).unwrap_or_default();
    flatten("", &body, &mut values);
    values
}

fn flatten(field: &str, value: &Value, values: &mut BTreeMap<String, String>) {
    let within = |name: &str| if field.is_empty() { name.to_owned() } else { format!("{field}/{name}") };
    match value {
        Value::Object(parts) => parts.iter().for_each(|(name, part)| flatten(&within(name), part, values)),
        Value::Array(items) if !items.iter().all(Value::is_string) => {
            for (index, item) in items.iter().enumerate() {
                flatten(&within(&index.to_string()), item, values);
            }
        }
        Value::Array(names) => {
            let names: Vec<&str> = names.iter().filter_map(Value::as_str).collect();
            values.insert(field.to_owned(), names.join(", "));
        }
        Value::String(text) => {
            values.insert(field.to_owned(), text.clone());
        }
        other => {
            values.insert(field.to_owned(), other.to_string());
        }
    }
}
