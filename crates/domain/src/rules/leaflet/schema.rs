//! The leaflet format as a JSON Schema, for editors: they then offer keys and words, and mark what is wrong while it is
//! written. What rules mean to each other (two values in force on one day, sources that nobody defined) only the loader sees.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde_json::{Map, Value, json};

use super::read_says::{BEES, DAYS_MOST, IN_USE_MOST};
use super::rule::{BroodState, DosePer, Force, Need, Other, TemperatureWindow, Timing, YearCounting};
use crate::basics::words::{Brood, Permission, RemovalNeed, SourceKind, SupersDuring, Unit};

/// The schema of one leaflet file, its dates as strings.
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

/// One `[[rule]]`: the keys of its kind, then those that every rule has.
#[expect(clippy::wildcard_enum_match_arm, reason = "no key of the other kinds asks for another")]
fn rule(topic: Topic) -> Value {
    let kind = Keys::new().must("kind", json!({ "const": topic.as_str() }));
    let keys = of_kind(topic, kind)
        .may("method", described(name(), "The method it is limited to."))
        .may("revision", described(text(), "The label revision it is limited to."))
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
    let mut object = keys.object();
    // A rule must set a limit, or say something.
    let one_of = |keys: &[&str]| {
        let any: Vec<Value> = keys.iter().map(|key| json!({ "required": [key] })).collect();
        json!(any)
    };
    let limits: [(Topic, &[&str]); 3] = [
        (Topic::Temperature, &["min_c", "max_c"]),
        (Topic::ColonySize, &["min_brood_frames", "min_bees", "text"]),
        (Topic::Withdrawal, &["days", "none_by_label"]),
    ];
    let any = limits.iter().find(|(of, _)| *of == topic).map(|(_, keys)| one_of(keys));
    if let (Value::Object(fields), Some(any)) = (&mut object, any) {
        fields.insert("anyOf".to_owned(), any);
    }
    let together = match topic {
        Topic::Temperature => {
            vec![beside("window", "maximum_in_first_days", &["first_days"], &["first_days"])]
        }
        Topic::Dose => vec![
            beside("per", "frames_of_bees", &["frames"], &["frames"]),
            beside("per", "bees", &[], &["min_bees", "max_bees"]),
            json!({
                "if": { "properties": { "per": { "const": "bees" } }, "required": ["per"] },
                "then": { "anyOf": [{ "required": ["min_bees"] }, { "required": ["max_bees"] }] },
            }),
        ],
        Topic::Withdrawal => vec![json!({ "not": { "required": ["days", "none_by_label"] } })],
        _ => Vec::new(),
    };
    if let Value::Object(fields) = &mut object
        && !together.is_empty()
    {
        fields.insert("allOf".to_owned(), json!(together));
    }
    object
}

/// Keys that are needed beside one word, or mean something only beside it.
fn beside(key: &str, word: &str, needed: &[&str], only: &[&str]) -> Value {
    let none: Vec<Value> = only.iter().map(|key| json!({ "required": [key] })).collect();
    json!({
        "if": { "properties": { key: { "const": word } }, "required": [key] },
        "then": { "required": needed },
        "else": { "not": { "anyOf": none } },
    })
}

fn of_kind(topic: Topic, keys: Keys) -> Keys {
    let permission = || words(Permission::ALL.iter().map(|word| word.as_str()));
    match topic {
        Topic::SupersDuring => keys.must("value", words(SupersDuring::ALL.iter().map(|word| word.as_str()))),
        Topic::FlowDuring | Topic::HarvestDuring => keys.must("value", permission()),
        Topic::FlowBefore => {
            keys.must("value", words([Permission::Forbidden.as_str()])).may("days", whole(1, DAYS_MOST))
        }
        Topic::Withdrawal => keys.may("days", whole(0, DAYS_MOST)).may(
            "none_by_label",
            described(json!({ "const": true }), "The label knows no withdrawal period."),
        ),
        Topic::WaitAfterRemoval => keys.must("days", whole(0, DAYS_MOST)),
        Topic::Removal => {
            let in_leaflets = [RemovalNeed::Needed, RemovalNeed::NotNeeded];
            keys.must("value", words(in_leaflets.iter().map(|word| word.as_str())))
        }
        Topic::StayMin | Topic::StayMax => keys
            .may("brood", words(BroodState::ALL.iter().map(|state| state.as_str())))
            .must("days", whole(1, DAYS_MOST)),
        Topic::Doses => keys
            .must("count", whole(1, 12))
            .may("count_max", whole(1, 12))
            .may("interval_min_days", whole(1, DAYS_MOST))
            .may("interval_max_days", whole(1, DAYS_MOST)),
        Topic::CoursesPerYear => keys
            .must("count", whole(1, 12))
            .may("counted", words(YearCounting::ALL.iter().map(|word| word.as_str()))),
        Topic::CoursesPerBroodlessPeriod => keys.must("count", whole(1, 12)),
        Topic::GapBetweenCourses => keys.must("days", whole(1, DAYS_MOST)),
        Topic::Season => keys.must("from_day", year_day()).must("to_day", year_day()),
        Topic::Timing => keys.must("value", words(Timing::ALL.iter().map(|word| word.as_str()))),
        Topic::Temperature => keys
            .must("window", words(TemperatureWindow::ALL.iter().map(|word| word.as_str())))
            .may("first_days", whole(1, 60))
            .may("min_c", degrees())
            .may("max_c", degrees()),
        Topic::BroodNeed => keys.must("value", words(Brood::ALL.iter().map(|word| word.as_str()))),
        Topic::ColonySize => keys
            .may("min_brood_frames", whole(1, 40))
            .may("min_bees", whole(*BEES.start(), *BEES.end()))
            .may("text", text()),
        Topic::BroodBoxes => keys.must("max", whole(1, 10)),
        Topic::Dose => keys
            .must("amount", amount())
            .may("amount_max", amount())
            .must("per", words(DosePer::ALL.iter().map(|word| word.as_str())))
            .may("frames", whole(1, 40))
            .may("min_bees", whole(*BEES.start(), *BEES.end()))
            .may("max_bees", whole(*BEES.start(), *BEES.end()))
            .may("unit", text())
            .may("when", text()),
        Topic::DoseCap => keys.must("amount", amount()).may("unit", text()).may("when", text()),
        Topic::Recipe => keys
            .must("amount", amount())
            .may("unit", text())
            .may("water_ml", amount())
            .may("sugar_g", amount())
            .must("makes_ml", amount())
            .must("text", text()),
        Topic::Needs => keys.must("list", list(words(Need::ALL.iter().map(|word| word.as_str())))),
        Topic::NotWith => {
            keys.must("text", text()).may("others", list(words(Other::ALL.iter().map(|word| word.as_str()))))
        }
        Topic::Class => keys.must("name", text()),
        Topic::AfterOpening => keys.must("text", text()).may("days", whole(0, IN_USE_MOST)),
        Topic::CombRule
        | Topic::Contraindication
        | Topic::Entrance
        | Topic::WholeApiary
        | Topic::UserSafety
        | Topic::Storage
        | Topic::Disposal => keys.must("text", text()),
    }
}

/// The keys of a table.
struct Keys {
    properties: Map<String, Value>,
    required: Vec<&'static str>,
}

impl Keys {
    fn new() -> Keys {
        Keys { properties: Map::new(), required: Vec::new() }
    }

    fn may(mut self, key: &'static str, schema: Value) -> Keys {
        self.properties.insert(key.to_owned(), schema);
        self
    }

    fn must(mut self, key: &'static str, schema: Value) -> Keys {
        self.required.push(key);
        self.may(key, schema)
    }

    fn object(self) -> Value {
        json!({
            "type": "object",
            "properties": self.properties,
            "required": self.required,
            "additionalProperties": false,
        })
    }
}

fn described(mut schema: Value, what: &str) -> Value {
    if let Value::Object(fields) = &mut schema {
        fields.insert("description".to_owned(), json!(what));
    }
    schema
}

fn text() -> Value {
    json!({ "type": "string", "pattern": "\\S" })
}

fn name() -> Value {
    json!({ "type": "string", "minLength": 1, "maxLength": 80, "pattern": "^[^\\s/]([^/]*[^\\s/])?$" })
}

fn date() -> Value {
    json!({ "type": "string", "format": "date" })
}

fn year_day() -> Value {
    json!({ "type": "string", "pattern": "^((0[13578]|1[02])-(0[1-9]|[12][0-9]|3[01])|(0[469]|11)-(0[1-9]|[12][0-9]|30)|02-(0[1-9]|1[0-9]|2[0-8]))$" })
}

fn whole(least: i64, most: i64) -> Value {
    json!({ "type": "integer", "minimum": least, "maximum": most })
}

fn degrees() -> Value {
    json!({ "type": "number", "minimum": -30, "maximum": 60 })
}

fn amount() -> Value {
    json!({ "type": "number", "exclusiveMinimum": 0, "maximum": 1_000_000 })
}

fn list(of: Value) -> Value {
    let mut list = json!({ "type": "array", "minItems": 1 });
    if let Value::Object(fields) = &mut list {
        fields.insert("items".to_owned(), of);
    }
    list
}

fn words<'w>(all: impl IntoIterator<Item = &'w str>) -> Value {
    json!({ "enum": all.into_iter().collect::<Vec<_>>() })
}
