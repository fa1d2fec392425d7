//! The OpenAPI document itself. That answers match it is checked with every answer.

use std::collections::BTreeSet;
use std::fs;

use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::words;
use combclear_domain::journal::Kind;
use combclear_domain::journal::form::is_filled_in;
use serde_json::Value;

use crate::bench::Bench;
use crate::schema::Document;

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../openapi/openapi.json");
/// The variable that makes the test rewrite the document.
pub(crate) const WRITE: &str = "COMBCLEAR_WRITE_OPENAPI";

#[tokio::test]
async fn the_document_that_is_served_is_the_one_that_is_kept() {
    let served = Bench::new().await.get("/openapi.json").await;
    served.good();
    let served = format!("{}\n", served.text());
    if std::env::var_os(WRITE).is_some() {
        fs::write(FILE, &served).unwrap();
    }
    let kept = fs::read_to_string(FILE).unwrap_or_default();
    let first = served.lines().zip(kept.lines()).position(|(served, kept)| served != kept);
    assert!(
        served == kept,
        "openapi/openapi.json is not what is served (first at line {}). If the change is meant, write it anew and look \
         at the difference:\n\n    {WRITE}=1 cargo test -p combclear-service --test api document\n",
        first.map_or_else(|| served.lines().count().min(kept.lines().count()), |line| line + 1),
    );
}

#[test]
fn every_reference_leads_somewhere() {
    let document = Document::of_the_service();
    let mut references = Vec::new();
    walk(&document.0, &mut |value| {
        references.extend(value.get("$ref").and_then(Value::as_str).map(str::to_owned));
    });
    assert!(references.len() > 100, "only {} references were found", references.len());
    let dangling: Vec<_> =
        references.iter().filter(|reference| document.resolve(reference).is_none()).collect();
    assert_eq!(dangling, Vec::<&String>::new());
}

#[test]
fn every_schema_that_is_kept_is_used() {
    let document = Document::of_the_service();
    let mut used = BTreeSet::new();
    walk(&document.0, &mut |value| used.extend(value.get("$ref").and_then(Value::as_str).map(str::to_owned)));
    let kept = document.0["components"]["schemas"].as_object().unwrap().keys();
    let unused: Vec<_> =
        kept.filter(|name| !used.contains(&format!("#/components/schemas/{name}"))).collect();
    assert_eq!(unused, Vec::<&String>::new());
}

#[test]
fn every_operation_has_an_id_of_its_own_a_summary_a_tag_a_success_and_the_problems() {
    let document = Document::of_the_service();
    let tags: Vec<&Value> = document.0["tags"].as_array().unwrap().iter().map(|tag| &tag["name"]).collect();
    let mut ids = BTreeSet::new();
    for (path, method, operation) in document.operations() {
        let here = format!("{method} {path}");
        let id = operation["operationId"].as_str().unwrap_or_else(|| panic!("{here} has no id"));
        assert!(ids.insert(id.to_owned()), "{here}: the id {id} is taken");
        assert!(
            operation["summary"].as_str().is_some_and(|summary| !summary.is_empty()),
            "{here} has no summary"
        );
        let tag = &operation["tags"][0];
        assert!(tags.contains(&tag), "{here}: the tag {tag} is not described");
        let responses = operation["responses"].as_object().unwrap();
        assert!(responses.keys().any(|status| status.starts_with(['2', '3'])), "{here} has no success");
        for (status, response) in responses {
            let described = response["description"].as_str().is_some_and(|text| !text.is_empty());
            assert!(described, "{here} {status} is not described");
            if status.starts_with(['4', '5']) {
                let schema = &response["content"]["application/problem+json"]["schema"]["$ref"];
                assert_eq!(schema, "#/components/schemas/Problem", "{here} {status}");
            }
        }
        for problems in ["4XX", "5XX"] {
            assert!(responses.contains_key(problems), "{here} does not say {problems}");
        }
    }
    assert_eq!(ids.len(), 38, "{ids:?}");
}

#[test]
fn the_parameters_of_a_path_are_exactly_those_in_its_template() {
    for (path, method, operation) in Document::of_the_service().operations() {
        let here = format!("{method} {path}");
        let wanted: BTreeSet<&str> =
            path.split('/').filter_map(|part| part.strip_prefix('{')?.strip_suffix('}')).collect();
        let parameters = operation["parameters"].as_array().cloned().unwrap_or_default();
        let mut declared = BTreeSet::new();
        let mut names = BTreeSet::new();
        for parameter in &parameters {
            let name = parameter["name"].as_str().unwrap();
            assert!(names.insert(name), "{here}: `{name}` is declared twice");
            assert!(parameter["schema"].is_object(), "{here}: `{name}` has no schema");
            match parameter["in"].as_str() {
                Some("path") => {
                    assert_eq!(parameter["required"], true, "{here}: `{name}`");
                    declared.insert(name);
                }
                Some("query") => {
                    // An attached document has no body for these, and none of them is optional.
                    let needed =
                        operation["operationId"] == "put_document" && ["on", "recorded_by"].contains(&name);
                    assert_eq!(parameter["required"], needed, "{here}: `{name}`");
                }
                other => panic!("{here}: `{name}` is in {other:?}"),
            }
        }
        assert_eq!(declared, wanted, "{here}");
    }
}

/// The examples of request bodies are accepted, in the order of their ids: they make one holding.
#[tokio::test]
async fn every_example_of_a_body_is_recorded() {
    let document = Document::of_the_service();
    // The day of the examples.
    let bench = Bench::on("2026-08-24").await;
    let body = |path: &str, method: &str| {
        document.0["paths"][path][method]["requestBody"]["content"]["application/json"].clone()
    };
    let begin = body("/holdings/{holding}", "put");
    assert_eq!(document.fault(&begin["schema"], &begin["example"], ""), None);
    assert_eq!(bench.put("/holdings/heathside", &begin["example"]).await.status, 201);
    let batch = body("/holdings/{holding}/entries", "post");
    assert_eq!(document.fault(&batch["schema"], &batch["example"], ""), None);
    let report = bench.post("/holdings/heathside/entries", &batch["example"]).await.good();
    assert!(report["items"].as_array().unwrap().iter().all(|item| item["outcome"] == "new"), "{report}");
    let single = body("/holdings/{holding}/entries/{id}", "put");
    let mut examples: Vec<&Value> =
        single["examples"].as_object().unwrap().values().map(|example| &example["value"]).collect();
    examples.sort_by_key(|example| example["id"].as_str());
    for example in &examples {
        assert_eq!(document.fault(&single["schema"], example, ""), None, "{example}");
        let path = format!("/holdings/heathside/entries/{}", example["id"].as_str().unwrap());
        bench.put(&path, example).await.good();
    }
    // A form records nothing.
    let form = body("/holdings/{holding}/forms/{kind}", "post");
    assert_eq!(document.fault(&form["schema"], &form["example"], ""), None);
    bench.post("/holdings/heathside/forms/inspection", &form["example"]).await.good();
    // A document is a file, for which there is no example.
    let bodies = document.operations().filter(|(_, _, operation)| operation.get("requestBody").is_some());
    assert_eq!(bodies.filter(|(_, _, operation)| operation["operationId"] != "put_document").count(), 4);
    // Each kind that people fill in has one.
    let words: BTreeSet<&str> = examples.iter().map(|example| example["kind"].as_str().unwrap()).collect();
    let filled_in = Kind::ALL.iter().filter(|kind| is_filled_in(**kind)).map(|kind| kind.as_str());
    assert_eq!(words, filled_in.collect());
    let recorded = bench.entries_of("heathside").await;
    assert!(recorded > u64::try_from(examples.len()).unwrap(), "{recorded}");
}

#[test]
fn what_is_sent_may_hold_no_field_that_is_not_in_the_document() {
    let document = Document::of_the_service();
    let schemas = &document.0["components"]["schemas"];
    let mut kinds = of_kinds(schemas, "NewEntry");
    kinds.extend(of_kinds(schemas, "NewEntryWithId"));
    let names = kinds.iter().flat_map(|(new, body)| [new.as_str(), body.as_str()]);
    for name in names.chain([
        "StatedTerms",
        "Given",
        "Supplier",
        "ConfirmedValue",
        "ConfirmedInWords",
        "DayTemperature",
        "MonthNormal",
    ]) {
        assert_eq!(schemas[name]["additionalProperties"], false, "{name}");
    }
}

/// The schemas of an entry of each kind, in the order of the kinds: of the entry, and of its body.
fn of_kinds(schemas: &Value, entry: &str) -> Vec<(String, String)> {
    let name = |reference: &Value| reference.as_str().unwrap().rsplit('/').next().unwrap().to_owned();
    let one_of = schemas[entry]["oneOf"].as_array().unwrap();
    assert_eq!(one_of.len(), Kind::ALL.len(), "{entry}");
    let each = one_of.iter().zip(Kind::ALL).map(|(one, kind)| {
        let schema = name(&one["$ref"]);
        assert_eq!(schemas[entry]["discriminator"]["mapping"][kind.as_str()], one["$ref"], "{entry}");
        assert_eq!(
            schemas[&schema]["properties"]["kind"]["enum"],
            serde_json::json!([kind.as_str()]),
            "{schema}"
        );
        let body = &schemas[&schema]["properties"]["body"];
        (schema.clone(), name(body.get("$ref").unwrap_or(&body["oneOf"][0]["$ref"])))
    });
    assert_eq!(schemas[entry]["discriminator"]["propertyName"], "kind");
    each.collect()
}

#[test]
fn an_entry_is_told_apart_by_its_kind_and_has_the_body_of_that_kind() {
    let schemas = Document::of_the_service().0["components"]["schemas"].clone();
    let (new, sealed) = (of_kinds(&schemas, "NewEntry"), of_kinds(&schemas, "Entry"));
    let bodies = |kinds: &[(String, String)]| kinds.iter().map(|(_, body)| body.clone()).collect::<Vec<_>>();
    assert_eq!(bodies(&new), bodies(&sealed));
    assert_eq!(bodies(&new).into_iter().collect::<BTreeSet<_>>().len(), Kind::ALL.len());
    for ((new, _), (sealed, _)) in new.iter().zip(&sealed) {
        // An archived entry has no body.
        let body = schemas[sealed]["properties"]["body"]["oneOf"].as_array().unwrap();
        assert!(body.iter().any(|one| one["type"] == "null"), "{body:?}");
        for (schema, needed) in [(new, "body"), (new, "kind"), (sealed, "body"), (sealed, "kind")] {
            let required = schemas[schema]["required"].as_array().unwrap();
            assert!(required.iter().any(|field| field == needed), "{schema}: {required:?}");
        }
    }
    // In a batch no path names the id.
    let ids = of_kinds(&schemas, "NewEntryWithId");
    assert_eq!(bodies(&ids), bodies(&new));
    for (with_id, _) in &ids {
        assert!(
            schemas[with_id]["required"].as_array().unwrap().iter().any(|field| field == "id"),
            "{with_id}"
        );
        assert_eq!(schemas[with_id]["properties"]["id"]["$ref"], "#/components/schemas/EntryId");
    }
    assert_eq!(schemas["NewEntries"]["items"]["$ref"], "#/components/schemas/NewEntryWithId");
    let required = schemas["NewStrikeOut"]["required"].as_array().unwrap();
    for field in ["corrects", "reason"] {
        assert!(required.iter().any(|needed| needed == field), "{required:?}");
        let value = &schemas["NewStrikeOut"]["properties"][field];
        assert!(!value.to_string().contains("null"), "{value}");
    }
}

/// A body of one kind in an entry of another fits no schema.
#[test]
fn an_entry_with_the_body_of_another_kind_is_not_what_the_document_says() {
    let document = Document::of_the_service();
    let schema = serde_json::json!({ "$ref": "#/components/schemas/NewEntry" });
    for entry in crate::seed::entries() {
        assert_eq!(document.fault(&schema, &entry, ""), None, "{entry}");
        for other in crate::seed::entries().iter().filter(|other| other["kind"] != entry["kind"]) {
            let mut mixed = entry.clone();
            mixed["kind"] = other["kind"].clone();
            assert!(document.fault(&schema, &mixed, "").is_some(), "{mixed}");
        }
    }
}

/// Bounds that the program enforces are in the document, and 64-bit numbers end where JSON readers do.
#[test]
fn every_whole_number_that_is_sent_or_may_be_large_has_its_bounds() {
    let document = Document::of_the_service();
    let mut sent = BTreeSet::new();
    reachable(&document, &document.0["components"]["schemas"]["NewEntry"], &mut sent);
    assert!(sent.contains("#/components/schemas/Given"), "{sent:?}");
    let mut without = Vec::new();
    let mut check = |value: &Value, is_sent: bool| {
        let types = value.get("type").cloned().unwrap_or_default();
        let is_whole =
            types == "integer" || types.as_array().is_some_and(|words| words.contains(&"integer".into()));
        let is_small = value.get("format").is_some_and(|format| format == "int32");
        let has_bounds = value.get("minimum").is_some() && value.get("maximum").is_some();
        if is_whole && !has_bounds && (is_sent || !is_small) {
            without.push(value.clone());
        }
    };
    for (name, schema) in document.0["components"]["schemas"].as_object().unwrap() {
        let is_sent = sent.contains(&format!("#/components/schemas/{name}"));
        walk(schema, &mut |value| check(value, is_sent));
    }
    walk(&document.0["paths"], &mut |value| check(value, true));
    assert_eq!(without, Vec::<Value>::new());
}

/// All references reachable from a schema.
fn reachable(document: &Document, schema: &Value, seen: &mut BTreeSet<String>) {
    let mut next = Vec::new();
    walk(schema, &mut |value| next.extend(value.get("$ref").and_then(Value::as_str).map(str::to_owned)));
    for reference in next {
        if seen.insert(reference.clone()) {
            reachable(document, document.resolve(&reference).unwrap(), seen);
        }
    }
}

#[test]
fn every_closed_list_of_words_is_written_as_the_words_travel() {
    let schemas = Document::of_the_service().0["components"]["schemas"].clone();
    macro_rules! check {
        ($($list:ident),+) => {$(
            let travel: Vec<Value> = words::$list::ALL.iter().map(|word| serde_json::to_value(word).unwrap()).collect();
            assert_eq!(schemas[stringify!($list)]["enum"], Value::Array(travel), stringify!($list));
        )+};
    }
    check!(
        Access,
        Brood,
        FlowStage,
        Ground,
        MedicinesInside,
        Permission,
        Power,
        RemovalNeed,
        StripsAtSplit,
        StripsAtUniting,
        SuperPurpose,
        SupersDuring,
        TemperatureStage,
        Unit
    );
    let topics: Vec<&str> = Topic::ALL.iter().map(|topic| topic.as_str()).collect();
    assert_eq!(schemas["Topic"]["enum"], serde_json::json!(topics));
    let kinds: Vec<&str> = Kind::ALL.iter().map(|kind| kind.as_str()).collect();
    assert_eq!(schemas["Kind"]["enum"], serde_json::json!(kinds));
}

#[test]
fn every_field_says_what_it_is() {
    let document = Document::of_the_service();
    let mut silent = Vec::new();
    for (name, schema) in document.0["components"]["schemas"].as_object().unwrap() {
        walk(schema, &mut |value| {
            for (field, schema) in value.get("properties").and_then(Value::as_object).into_iter().flatten() {
                let one_of = schema.get("oneOf").and_then(Value::as_array);
                let said = schema.get("description").is_some()
                    || one_of.is_some_and(|schemas| {
                        schemas.iter().any(|schema| schema.get("description").is_some())
                    });
                // The word that distinguishes the variants of a value.
                let tag = schema.get("enum").and_then(Value::as_array).is_some_and(|words| words.len() == 1);
                if !said && !tag {
                    silent.push(format!("{name}.{field}"));
                }
            }
        });
    }
    assert_eq!(silent, Vec::<String>::new());
}

fn walk(value: &Value, visit: &mut impl FnMut(&Value)) {
    visit(value);
    match value {
        Value::Array(items) => items.iter().for_each(|item| walk(item, visit)),
        Value::Object(fields) => fields.values().for_each(|field| walk(field, visit)),
        _ => {}
    }
}

/// Two types of one name would share one schema, which would be wrong for one of them. This reads the types from the code:
/// in the document the second has replaced the first.
#[test]
fn no_two_types_of_the_document_share_a_name() {
    let crates = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut names: Vec<(String, String)> = Vec::new();
    let mut folders = vec![crates.join("domain/src"), crates.join("service/src")];
    while let Some(folder) = folders.pop() {
        for file in fs::read_dir(folder).unwrap() {
            let file = file.unwrap().path();
            if file.is_dir() {
                folders.push(file);
            } else {
                let text = fs::read_to_string(&file).unwrap();
                names
                    .extend(names_of_types(&text).into_iter().map(|name| (name, file.display().to_string())));
            }
        }
    }
    names.sort();
    assert!(names.len() > 80, "the types are not found any more: {}", names.len());
    let twice: Vec<_> = names.windows(2).filter(|pair| pair[0].0 == pair[1].0).collect();
    assert!(twice.is_empty(), "{twice:#?}");
}

/// The schema names of types, from their derives and `schema(as = ...)`.
fn names_of_types(text: &str) -> Vec<String> {
    let mut names = Vec::new();
    let mut derived: Option<Option<String>> = None;
    for line in text.lines().map(str::trim) {
        if line.starts_with("#[") {
            let given = line.split_once("schema(as = ").and_then(|(_, name)| name.split(')').next());
            if line.contains("derive(") && line.contains("ToSchema") {
                derived = Some(None);
            }
            if let (Some(name), Some(given)) = (&mut derived, given) {
                *name = Some(given.to_owned());
            }
            continue;
        }
        let mut words = line.split([' ', '(', '<', '{', ';']).filter(|word| !word.starts_with("pub"));
        let is_type = words.clone().any(|word| word == "struct" || word == "enum");
        if !line.starts_with("//") && is_type {
            words.by_ref().find(|word| *word == "struct" || *word == "enum");
            let own = words.next().unwrap_or_default().to_owned();
            // A name made by a macro is not known here.
            if let Some(given) = derived.take().filter(|_| !own.starts_with('$')) {
                names.push(given.unwrap_or(own));
            }
        }
    }
    names
}

#[test]
fn a_text_of_a_fixed_form_has_its_pattern() {
    let document = Document::of_the_service();
    for (schema, pattern) in [("TimeOfDay", "^([01][0-9]|2[0-3]):[0-5][0-9]$"), ("Hash", "^[0-9a-f]{64}$")] {
        assert_eq!(document.0["components"]["schemas"][schema]["pattern"], pattern, "{schema}");
    }
    let places = &document.0["components"]["schemas"]["Archived"]["properties"]["places"];
    assert!(places["pattern"].is_string(), "{places}");
}
