//! "Answers give both": an entry that an answer names by its id has its number in the journal in the same answer, since a
//! person reads "no. 12" on paper and in sentences.

use std::collections::BTreeSet;

use serde_json::Value;

/// Ids of the tests, as [`crate::seed::id`] makes them. Tasks and prepared entries have ids of another form.
const ID: &str = "01964c7e-6f00-7000-8000-";

/// Panics if the answer names an entry without its number. The journal is sent as it is, and an entry may name another; the
/// exchange has the fields of its standard, and the document of the API has examples.
#[track_caller]
pub(crate) fn check(path: &str, answer: &Value) {
    if path.contains("/entries") || path.contains("/exchange/") || path == "/openapi.json" {
        return;
    }
    let (mut named, mut numbered) = (BTreeSet::new(), BTreeSet::new());
    walk(answer, &mut named, &mut numbered);
    let without: Vec<_> = named.difference(&numbered).collect();
    assert!(without.is_empty(), "{path}: no number for {without:?} in {answer:#}");
}

fn walk<'v>(value: &'v Value, named: &mut BTreeSet<&'v str>, numbered: &mut BTreeSet<&'v str>) {
    match value {
        Value::String(text) if text.starts_with(ID) => _ = named.insert(text),
        Value::Array(items) => items.iter().for_each(|item| walk(item, named, numbered)),
        Value::Object(fields) => {
            if fields.contains_key("seq") {
                let id = fields.get("entry").or(fields.get("id")).and_then(Value::as_str);
                numbered.extend(id);
            }
            fields.values().for_each(|field| walk(field, named, numbered));
        }
        _ => {}
    }
}
