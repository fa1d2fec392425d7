//! The examples of answers in the document: what the service says to the examples of requests, once the holding of the
//! examples is recorded.

use std::collections::BTreeMap;
use std::fs;
use std::sync::Arc;

use axum::body::Body;
use axum::http::Request;
use combclear_domain::basics::words::MediaType;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_testkit::documents::sample;
use percent_encoding::{NON_ALPHANUMERIC, utf8_percent_encode};
use serde_json::Value;

use crate::bench::{Answer, Bench};
use crate::document::WRITE;
use crate::schema::Document;

const FILE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../openapi/answers.json");
/// The leaflet of the medicine in the examples. With the others, an answer on all options would be longer than the document.
const LEAFLET: &str =
    include_str!(concat!(env!("CARGO_MANIFEST_DIR"), "/../leaflets/gb/amitraz-strip-500mg-a.toml"));
/// The day of the examples.
const TODAY: &str = "2026-08-24";

/// By operation and status.
type Answers = BTreeMap<String, BTreeMap<String, Value>>;

#[tokio::test]
async fn every_answer_has_an_example_and_it_is_what_the_service_answers() {
    let document = Document::of_the_service();
    let answers = answers(&document).await;
    let said = serde_json::to_string_pretty(&answers).unwrap() + "\n";
    if std::env::var_os(WRITE).is_some() {
        fs::write(FILE, &said).unwrap();
    }
    let first =
        said.lines().zip(fs::read_to_string(FILE).unwrap().lines()).position(|(said, kept)| said != kept);
    assert_eq!(
        first, None,
        "openapi/answers.json is not what the service answers (first line that differs, from 0). If the change is meant, \
         write it anew, twice, since the document is built with it:\n\n    {WRITE}=1 cargo test -p combclear-service \
         --test api -- document answers\n",
    );
    for (path, method, operation) in document.operations() {
        for (status, response) in operation["responses"].as_object().unwrap() {
            let content = &response["content"]["application/json"];
            if content.is_null() || !status.starts_with('2') {
                continue;
            }
            let id = operation["operationId"].as_str().unwrap();
            let same = answers[id].get(status) == content.get("example");
            assert!(same, "{method} {path} {status}: the example is not the answer");
            assert!(content.get("example").is_some(), "{method} {path} {status} has no example");
        }
    }
}

/// Records the examples and asks the questions, in the order in which a client can.
async fn answers(document: &Document) -> Answers {
    let leaflets = Leaflets::load([("gb/amitraz-strip-500mg-a.toml", LEAFLET)]).unwrap();
    let laws = combclear_leaflets::laws().unwrap().clone();
    let bench = Bench::of(Arc::new(leaflets), Arc::new(laws), TODAY).await;
    let mut answers = Answers::new();
    let mut keep = |operation: &Value, answer: &Answer| {
        let of = answers.entry(operation["operationId"].as_str().unwrap().to_owned()).or_default();
        of.insert(answer.status.to_string(), answer.good());
    };
    let operation = |path: &str, method: &str| &document.0["paths"][path][method];
    let body = |operation: &Value| operation["requestBody"]["content"]["application/json"].clone();

    let begin = operation("/holdings/{holding}", "put");
    for _ in ["recorded", "sent again"] {
        keep(begin, &bench.put("/holdings/heathside", &body(begin)["example"]).await);
    }
    let batch = operation("/holdings/{holding}/entries", "post");
    keep(batch, &bench.post("/holdings/heathside/entries", &body(batch)["example"]).await);
    let one = operation("/holdings/{holding}/entries/{id}", "put");
    let examples = body(one)["examples"].take();
    let mut entries: Vec<&Value> =
        examples.as_object().unwrap().values().map(|example| &example["value"]).collect();
    entries.sort_by_key(|entry| entry["id"].as_str());
    for entry in entries {
        let path = format!("/holdings/heathside/entries/{}", entry["id"].as_str().unwrap());
        let recorded = bench.put(&path, entry).await;
        if entry["kind"] == "administration" {
            keep(one, &recorded);
            keep(one, &bench.put(&path, entry).await);
        }
    }
    let attach = operation("/holdings/{holding}/documents/{document}", "put");
    for _ in ["recorded", "sent again"] {
        let bytes = sample(MediaType::Pdf, "invoice 17");
        let request = Request::put(address("/holdings/{holding}/documents/{document}", attach));
        keep(attach, &bench.send(request.body(Body::from(bytes)).unwrap()).await);
    }
    let form = operation("/holdings/{holding}/forms/{kind}", "post");
    let path = address("/holdings/{holding}/forms/{kind}", form);
    keep(form, &bench.post(&path, &body(form)["example"]).await);
    for (path, method, operation) in document.operations() {
        if method == "get" && operation.pointer("/responses/200/content/application~1json").is_some() {
            keep(operation, &bench.get(&address(path, operation)).await);
        }
    }
    answers
}

/// The path with the examples of its parameters.
fn address(path: &str, operation: &Value) -> String {
    let mut address = path.to_owned();
    let mut query: Vec<String> = Vec::new();
    for parameter in operation["parameters"].as_array().into_iter().flatten() {
        let name = parameter["name"].as_str().unwrap();
        let Some(value) = parameter["example"].as_str() else { continue };
        let value = utf8_percent_encode(value, NON_ALPHANUMERIC).to_string();
        match parameter["in"].as_str().unwrap() {
            "path" => address = address.replace(&format!("{{{name}}}"), &value),
            _ => query.push(format!("{name}={value}")),
        }
    }
    if query.is_empty() { address } else { format!("{address}?{}", query.join("&")) }
}
