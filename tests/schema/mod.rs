//! The JSON Schema of the leaflet format, with an independent validator.
//!
//! Source: JSON Schema, draft 2020-12, as the crate `jsonschema` reads it.

use combclear_domain::basics::topic::Topic;
use std::collections::BTreeSet;
use std::path::PathBuf;

use combclear_domain::rules::fault::{Fault, KeyFault};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::rules::leaflet::schema::schema;
use combclear_testkit::files::{listing, root};
use jsonschema::Validator;
use serde_json::{Map, Value};

/// Broken files of the error gallery whose fault only the loader can see: rules against each other, references within the
/// file, and decimal places.
const BEYOND_A_SCHEMA: &[&str] = &[
    "a-date-is-before-1900",
    "a-date-is-in-quotes",
    "a-dose-has-four-decimals",
    "a-method-is-declared-twice",
    "a-method-is-misspelt",
    "a-method-is-none-of-those-declared",
    "a-method-is-not-declared",
    "a-range-that-does-not-rise",
    "a-revision-is-misspelt",
    "a-revision-is-named-twice",
    "a-revision-is-not-declared",
    "a-single-dose-has-a-least-stay",
    "a-single-dose-is-taken-out",
    "a-source-is-defined-twice",
    "a-source-is-not-defined",
    "a-source-is-not-defined-but-near-one",
    "a-source-is-not-used",
    "a-temperature-has-two-decimals",
    "a-value-for-one-method-stands-beside-one-for-all",
    "a-value-for-one-revision-stands-beside-one-for-all",
    "brood-and-no-brood-side-by-side",
    "checked-before-it-was-in-force",
    "fewer-doses-at-most-than-at-least",
    "no-brood-and-brood-side-by-side",
    "no-source-is-defined",
    "the-highest-temperature-is-not-above-the-lowest",
    "the-id-is-not-the-file-name",
    "the-jurisdiction-is-not-the-folder",
    "the-least-stay-is-above-the-longest",
    "the-longest-interval-is-below-the-least",
    "the-longest-stay-is-below-the-least",
    "two-limits-of-one-temperature",
    "two-values-are-in-force-on-one-day",
    "two-values-begin-on-one-day",
    "two-values-meet-on-the-last-day",
    "until-is-before-from",
    "a-document-of-a-magazine",
    "a-document-of-another-country",
    "a-source-does-not-say-whose-text-it-is",
    "a-text-of-the-union-with-a-country",
    "states-outside-the-union",
];

#[test]
fn the_published_schema_is_the_one_of_this_program() {
    let path = root().join("schema/leaflet.schema.json");
    let made = format!("{}\n", serde_json::to_string_pretty(&schema()).unwrap());
    if std::env::var_os("COMBCLEAR_WRITE_SCHEMA").is_some() {
        std::fs::write(&path, made).unwrap();
        return;
    }
    let published = std::fs::read_to_string(&path).unwrap();
    assert!(
        published == made,
        "schema/leaflet.schema.json is behind the program; run\n  COMBCLEAR_WRITE_SCHEMA=1 cargo test -p combclear-leaflets schema::"
    );
}

#[test]
fn every_leaflet_keeps_the_schema() {
    let validator = validator();
    let mut seen = 0;
    // The laws have a format of their own.
    let of_leaflets = |path: &PathBuf| path.is_dir() && !path.ends_with("law");
    for folder in listing(root().join("crates/leaflets")).into_iter().filter(of_leaflets) {
        for file in
            listing(&folder).into_iter().filter(|path| path.extension().is_some_and(|end| end == "toml"))
        {
            let json = json(&std::fs::read_to_string(&file).unwrap()).unwrap();
            let faults: Vec<String> = validator.iter_errors(&json).map(|fault| fault.to_string()).collect();
            assert!(faults.is_empty(), "{}: {faults:?}", file.display());
            seen += 1;
        }
    }
    assert!(seen > 30, "only {seen} leaflets were seen");
}

#[test]
fn what_the_loader_refuses_the_schema_refuses_too_where_it_can() {
    let validator = validator();
    let mut passed = BTreeSet::new();
    let mut refused = 0;
    for file in listing(root().join("tests/errors/leaflets")).into_iter().filter(|path| path.is_file()) {
        let name = file.file_stem().unwrap().to_string_lossy().into_owned();
        // A file that is not TOML has no schema.
        let Some(json) = json(&std::fs::read_to_string(&file).unwrap()) else { continue };
        if validator.is_valid(&json) {
            passed.insert(name);
        } else {
            refused += 1;
        }
    }
    let beyond: BTreeSet<String> = BEYOND_A_SCHEMA.iter().map(ToString::to_string).collect();
    assert_eq!(passed, beyond, "left: what the schema lets pass; right: what it is known to let pass");
    assert!(refused > 50, "only {refused} broken files were refused");
}

#[test]
fn loader_and_schema_take_the_same_keys_for_every_kind() {
    let schema = schema();
    let rules = schema.pointer("/properties/rule/items/oneOf").unwrap().as_array().unwrap();
    assert_eq!(rules.len(), Topic::ALL.len());
    for (topic, rule) in Topic::ALL.iter().zip(rules) {
        let of_schema: BTreeSet<&str> =
            rule["properties"].as_object().unwrap().keys().map(String::as_str).collect();
        let of_loader = keys_that_the_loader_takes(*topic);
        let of_loader: BTreeSet<&str> = of_loader.iter().map(String::as_str).collect();
        assert_eq!(of_schema, of_loader, "{}", topic.as_str());
    }
}

/// Given an unknown key, the loader names the keys of the kind.
fn keys_that_the_loader_takes(topic: Topic) -> Vec<String> {
    let text = format!("format = 1\n[[rule]]\nkind = \"{}\"\nqqqqqqqqqqqqqqqq = 1\n", topic.as_str());
    let faults = Leaflets::load([("zz/a.toml", text.as_str())]).unwrap_err();
    let keys = faults.iter().find_map(|fault| match &fault.what {
        Fault::Keys(KeyFault::Unknown { key, takes, .. }) if key == "qqqqqqqqqqqqqqqq" => Some(takes),
        _ => None,
    });
    let keys = keys.unwrap_or_else(|| panic!("no fault names the keys: {faults:?}"));
    keys.iter().map(ToString::to_string).collect()
}

fn validator() -> Validator {
    jsonschema::options().should_validate_formats(true).build(&schema()).unwrap()
}

/// A TOML file as JSON, its dates as strings.
fn json(text: &str) -> Option<Value> {
    let table: toml::Table = text.parse().ok()?;
    Some(value(toml::Value::Table(table)))
}

fn value(of: toml::Value) -> Value {
    match of {
        toml::Value::String(text) => Value::from(text),
        toml::Value::Integer(number) => Value::from(number),
        toml::Value::Float(number) => Value::from(number),
        toml::Value::Boolean(truth) => Value::from(truth),
        toml::Value::Datetime(datetime) => Value::from(datetime.to_string()),
        toml::Value::Array(items) => items.into_iter().map(value).collect(),
        toml::Value::Table(table) => {
            Value::Object(table.into_iter().map(|(key, of)| (key, value(of))).collect::<Map<_, _>>())
        }
    }
}
