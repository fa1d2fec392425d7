//! Corrections and strike-outs, with the old value and the new one.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use serde_json::Value;

use super::rows::{Change, CorrectionRow, Written};
use super::{View, is_of_the_register};
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// An entry that was wrong, and the one that corrects it or strikes it out.
pub(super) type Correction<'h> = (&'h Arc<Record>, &'h Arc<Record>);

/// Corrections of entries of the period, and of older ones that its rows depend on, in the order they were recorded.
/// A chain of corrections is included as a whole if any of its entries belongs here.
pub(super) fn corrections(
    view: &View<'_>,
    all: &[Correction<'_>],
    rest_on: &BTreeSet<EntryId>,
) -> Vec<CorrectionRow> {
    // The chains that belong here, by their first id.
    let chains: BTreeSet<EntryId> = all
        .iter()
        .filter(|(old, new)| {
            view.holds(old.on) || view.holds(new.on) || rest_on.contains(&new.id) || rest_on.contains(&old.id)
        })
        .map(|(old, _)| view.holding.original(old.id))
        .collect();
    let rows = all
        .iter()
        .filter(|(old, _)| is_of_the_register(&old.event) && chains.contains(&view.holding.original(old.id)));
    rows.map(|(old, new)| row(view, old, new)).collect()
}

fn row(view: &View<'_>, old: &Record, new: &Record) -> CorrectionRow {
    let struck_out = matches!(new.event, Event::StrikeOut(_));
    let now = if struck_out { BTreeMap::new() } else { values(view, new) };
    CorrectionRow {
        written: Written::of(view.holding, new),
        of: old.id,
        of_seq: old.seq,
        kind: old.event.kind(),
        struck_out,
        reason: reason(new),
        changes: changes(&values(view, old), &now),
    }
}

/// Why an entry corrects another or strikes it out.
pub(super) fn reason(new: &Record) -> String {
    new.correction.as_ref().map(|correction| correction.reason.clone()).unwrap_or_default()
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

/// The values of an entry as text, by field, with the person who recorded it. A list of names is one value.
fn values(view: &View<'_>, record: &Record) -> BTreeMap<String, String> {
    let mut values = BTreeMap::from([
        ("on".to_owned(), record.on.to_string()),
        ("recorded_by".to_owned(), record.recorded_by.to_string()),
    ]);
    values.extend(record.at.map(|at| ("at".to_owned(), at.to_string())));
    if let Some(copied) = view.holding.copied_from(record) {
        values.insert("copied_from".to_owned(), copied.what.clone());
        values.insert("written_on".to_owned(), copied.written_on.to_string());
    }
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
            values.insert(field.to_owned(), listed(names));
        }
        Value::String(text) => {
            values.insert(field.to_owned(), text.clone());
        }
        other @ (Value::Null | Value::Bool(_) | Value::Number(_)) => {
            values.insert(field.to_owned(), other.to_string());
        }
    }
}

/// Names separated by commas. A name that contains a comma is quoted, so that two names never read as one.
fn listed(names: &[Value]) -> String {
    let name = |name: &Value| match name.as_str() {
        Some(plain) if !plain.contains([',', '"']) => plain.to_owned(),
        _ => name.to_string(),
    };
    names.iter().map(name).collect::<Vec<_>>().join(", ")
}
