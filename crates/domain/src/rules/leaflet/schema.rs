//! The leaflet format as a JSON Schema, with which editors offer keys and words and mark mistakes. Only the loader checks
//! rules against each other (two values in force on one day, undefined sources).

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use std::ops::RangeInclusive;

use serde_json::{Map, Value, json};

use super::kinds;
use super::rule::{Force, Region};
use crate::basics::words::{SourceKind, Unit};

/// The schema of one leaflet file. Dates are strings.
#[must_use]
pub fn schema() -> Value {
    let rules: Vec<Value> = Topic::ALL.iter().map(|topic| rule(*topic)).collect();
    let source = Keys::new()
        .must("id", described(text(), "The key by which rules cite it."))
        .must("title", described(text(), "What it is, without brand or company."))
        .may(
            "country",
            described(name(), "Whose text it is, as a lower-case code; left out only where kind is memory."),
        )
        .must("kind", words(SourceKind::ALL.iter().map(|word| word.as_str())))
        .may("record", described(text(), "Its authorisation or record number."))
        .may("locator", described(text(), "Where in it."))
        .may("address", described(text(), "Its public address, without brand or company."))
        .may("published", described(text(), "A year, a month or a day, as text."));
    let file = Keys::new()
        .must("format", json!({ "const": super::load::FORMAT }))
        .must(
            "id",
            described(name(), "Active, form, strength, variant; the name of the file without its end."),
        )
        .must("jurisdiction", described(name(), "A code in lower case, such as gb; the name of the folder."))
        .must("title", described(text(), "Active, form and strength in words."))
        .must("actives", list(text()))
        .must("form", text())
        .must("strength", text())
        .must("unit", words(Unit::ALL.iter().map(|word| word.as_str())))
        .must(
            "release",
            described(words(["slow", "single"]), "Whether a carrier works on from inside the hive."),
        )
        .may("methods", list(name()))
        .may("revisions", described(list(text()), "Label revisions that are on packs, in order."))
        .may("states", described(list(name()), "The member states in which it is authorised, where known."))
        .may("instead_of", described(text(), "The built-in leaflet that this one stands in for: gb/its-id."))
        .may("source", json!({ "type": "array", "items": source.object() }))
        .must("rule", json!({ "type": "array", "minItems": 1, "items": { "oneOf": rules } }));
    let mut schema = file.object();
    if let Value::Object(fields) = &mut schema {
        fields.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
        fields.insert("title".to_owned(), json!("Leaflet of a varroa medicine"));
        fields.insert(
            "description".to_owned(),
            json!("The directions of one authorised form in one jurisdiction, as dated and sourced rules."),
        );
    }
    schema
}

/// One `[[rule]]`: the keys of its kind, then the common ones.
fn rule(topic: Topic) -> Value {
    let kind = Keys::new().must("kind", json!({ "const": topic.as_str() }));
    let keys = kinds::describe(topic, kind)
        .may("method", described(name(), "The method it is limited to."))
        .may("revision", described(text(), "The label revision it is limited to."))
        .may(
            "region",
            described(
                words(Region::ALL.iter().map(|word| word.as_str())),
                "The part of the Union it is limited to. A cap of one region does not hold for a dose of another.",
            ),
        )
        .may("from", described(date(), "First day in force; open to the past if left out."))
        .may("until", described(date(), "Last day in force."))
        .must("force", words(Force::ALL.iter().map(|word| word.as_str())))
        .must("source", list(text()))
        .must(
            "confidence",
            described(
                words(Confidence::ALL.iter().map(|word| word.as_str())),
                "document: read in the authority's own text for this country. Only that carries a yes.",
            ),
        )
        .must("checked_on", described(date(), "When somebody last checked that it still holds."))
        .may("note", text());
    keys.object()
}

/// The keys of a table, with the constraints between them.
pub(super) struct Keys {
    properties: Map<String, Value>,
    required: Vec<&'static str>,
    any_of: Vec<Value>,
    all_of: Vec<Value>,
}

impl Keys {
    fn new() -> Keys {
        Keys { properties: Map::new(), required: Vec::new(), any_of: Vec::new(), all_of: Vec::new() }
    }

    pub(super) fn may(mut self, key: &'static str, schema: Value) -> Keys {
        self.properties.insert(key.to_owned(), schema);
        self
    }

    pub(super) fn must(mut self, key: &'static str, schema: Value) -> Keys {
        self.required.push(key);
        self.may(key, schema)
    }

    /// Requires at least one of these keys.
    pub(super) fn any_of(mut self, keys: &[&str]) -> Keys {
        self.any_of.extend(keys.iter().map(|key| json!({ "required": [key] })));
        self
    }

    /// Adds a schema that must hold too.
    pub(super) fn all_of(mut self, schema: Value) -> Keys {
        self.all_of.push(schema);
        self
    }

    fn object(self) -> Value {
        let mut object = json!({
            "type": "object",
            "properties": self.properties,
            "required": self.required,
            "additionalProperties": false,
        });
        if let Value::Object(fields) = &mut object {
            let besides = [("anyOf", self.any_of), ("allOf", self.all_of)];
            let said = besides.into_iter().filter(|(_, schemas)| !schemas.is_empty());
            fields.extend(said.map(|(key, schemas)| (key.to_owned(), json!(schemas))));
        }
        object
    }
}

pub(super) fn described(mut schema: Value, what: &str) -> Value {
    if let Value::Object(fields) = &mut schema {
        fields.insert("description".to_owned(), json!(what));
    }
    schema
}

pub(super) fn text() -> Value {
    json!({ "type": "string", "pattern": "\\S" })
}

fn name() -> Value {
    json!({ "type": "string", "minLength": 1, "maxLength": 80, "pattern": "^[^\\s/]([^/]*[^\\s/])?$" })
}

fn date() -> Value {
    json!({ "type": "string", "format": "date" })
}

pub(super) fn year_day() -> Value {
    json!({ "type": "string", "pattern": "^((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))$" })
}

pub(super) fn whole(bounds: &RangeInclusive<i64>) -> Value {
    json!({ "type": "integer", "minimum": bounds.start(), "maximum": bounds.end() })
}

pub(super) fn degrees() -> Value {
    json!({ "type": "number", "minimum": -30, "maximum": 60 })
}

pub(super) fn amount() -> Value {
    json!({ "type": "number", "exclusiveMinimum": 0, "maximum": 1_000_000 })
}

pub(super) fn list(of: Value) -> Value {
    let mut list = json!({ "type": "array", "minItems": 1 });
    if let Value::Object(fields) = &mut list {
        fields.insert("items".to_owned(), of);
    }
    list
}

pub(super) fn words<'w>(all: impl IntoIterator<Item = &'w str>) -> Value {
    json!({ "enum": all.into_iter().collect::<Vec<_>>() })
}
