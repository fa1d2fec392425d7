//! Checks answers against the document.
//!
//! Supports as much of JSON Schema as the document uses, and stops at an unknown keyword.

use axum::http::Method;
use serde_json::Value;

use crate::bench::Answer;

/// Keywords that do not constrain a value, and two that are not checked here: `format` and `pattern`.
const SAID_ONLY: [&str; 8] =
    ["description", "title", "example", "examples", "default", "deprecated", "format", "pattern"];

/// The document of the service.
pub(crate) struct Document(pub(crate) Value);

impl Document {
    pub(crate) fn of_the_service() -> Document {
        Document(serde_json::to_value(combclear_service::openapi()).unwrap())
    }

    /// The target of a `$ref`.
    pub(crate) fn resolve(&self, reference: &str) -> Option<&Value> {
        self.0.pointer(reference.strip_prefix('#')?)
    }

    /// Every operation: path, method, operation.
    pub(crate) fn operations(&self) -> impl Iterator<Item = (&str, &str, &Value)> {
        let paths = self.0["paths"].as_object().unwrap().iter();
        paths.flat_map(|(path, item)| {
            let methods = item.as_object().unwrap().iter();
            methods.map(move |(method, operation)| (path.as_str(), method.as_str(), operation))
        })
    }

    /// Checks that the document describes this answer. An unknown path or method has no operation.
    #[track_caller]
    pub(crate) fn check(&self, method: &Method, path: &str, answer: &Answer) {
        let method = method.as_str().to_lowercase();
        let operation = self.operations().find(|(template, of, _)| *of == method && fits(template, path));
        let Some((template, _, operation)) = operation else {
            // What a front end does not ask for is not described.
            let first = path.trim_start_matches('/').split(['/', '?']).next().unwrap();
            let of_the_service =
                ["", "docs", "healthz", "metrics", "openapi.json", "page", "problems", "readyz"]
                    .contains(&first);
            assert!(
                of_the_service || [401, 403, 404, 405].contains(&answer.status),
                "{method} {path} is not in the document: {}",
                answer.status
            );
            return;
        };
        let here = format!("{method} {template} {}", answer.status);
        let responses = &operation["responses"];
        let range = format!("{}XX", answer.status / 100);
        let response = responses.get(answer.status.to_string()).or_else(|| responses.get(range));
        let response = response.unwrap_or_else(|| panic!("{here} is not in the document: {}", answer.text()));
        let Some(content) = response.get("content") else {
            assert!(answer.body.is_empty(), "{here} has a body that is not in the document");
            return;
        };
        let media_type = answer.header("content-type").unwrap().split(';').next().unwrap();
        if media_type == "application/json" || media_type == "application/problem+json" {
            let schema = &content[media_type]["schema"];
            assert!(!schema.is_null(), "{here} has no schema for {media_type}");
            let fault = self.fault(schema, &answer.json(), "");
            assert_eq!(fault, None, "{here} is not what the document says: {}", answer.text());
        }
    }

    /// Where and how a value does not fit a schema.
    pub(crate) fn fault(&self, schema: &Value, value: &Value, at: &str) -> Option<String> {
        let keywords = schema.as_object().unwrap();
        if let Some(reference) = keywords.get("$ref") {
            let reference = reference.as_str().unwrap();
            return self.fault(
                self.resolve(reference).unwrap_or_else(|| panic!("{reference} dangles")),
                value,
                at,
            );
        }
        keywords.iter().find_map(|(keyword, says)| self.fault_of(schema, keyword, says, value, at))
    }

    fn fault_of(
        &self,
        schema: &Value,
        keyword: &str,
        says: &Value,
        value: &Value,
        at: &str,
    ) -> Option<String> {
        let wrong = |good: bool, what: String| (!good).then(|| format!("`{at}` {what}"));
        let count = |says: &Value| usize::try_from(says.as_u64().unwrap()).unwrap();
        let any = |schemas: &Value| {
            schemas
                .as_array()
                .unwrap()
                .iter()
                .filter(|schema| self.fault(schema, value, at).is_none())
                .count()
        };
        match keyword {
            "type" => {
                let types = says.as_array().cloned().unwrap_or_else(|| vec![says.clone()]);
                wrong(
                    types.iter().any(|word| is_of_type(value, word.as_str().unwrap())),
                    format!("is no {says}"),
                )
            }
            "enum" => wrong(says.as_array().unwrap().contains(value), format!("is none of {says}")),
            "const" => wrong(says == value, format!("is not {says}")),
            "minimum" => wrong(
                value.as_f64().is_none_or(|number| number >= says.as_f64().unwrap()),
                "is too small".into(),
            ),
            "maximum" => wrong(
                value.as_f64().is_none_or(|number| number <= says.as_f64().unwrap()),
                "is too large".into(),
            ),
            "multipleOf" => wrong(
                value.as_f64().is_none_or(|number| {
                    let times = number / says.as_f64().unwrap();
                    // 0.1 has no exact binary form: close is good enough.
                    (times - times.round()).abs() < 1e-9
                }),
                format!("is no multiple of {says}"),
            ),
            "minLength" => wrong(
                value.as_str().is_none_or(|text| text.chars().count() >= count(says)),
                "is too short".into(),
            ),
            "maxLength" => wrong(
                value.as_str().is_none_or(|text| text.chars().count() <= count(says)),
                "is too long".into(),
            ),
            "minItems" => {
                wrong(value.as_array().is_none_or(|items| items.len() >= count(says)), "has too few".into())
            }
            "maxItems" => {
                wrong(value.as_array().is_none_or(|items| items.len() <= count(says)), "has too many".into())
            }
            "required" => {
                let missing =
                    says.as_array().unwrap().iter().find(|name| value.get(name.as_str().unwrap()).is_none());
                missing.map(|name| format!("`{at}` lacks {name}"))
            }
            "properties" => {
                let schemas = says.as_object().unwrap();
                schemas
                    .iter()
                    .find_map(|(name, schema)| self.fault(schema, value.get(name)?, &format!("{at}/{name}")))
            }
            "additionalProperties" if *says == Value::Bool(false) => {
                let known = schema["properties"].as_object();
                let unknown = value
                    .as_object()
                    .into_iter()
                    .flatten()
                    .find(|(name, _)| known.is_none_or(|known| !known.contains_key(*name)));
                unknown.map(|(name, _)| format!("`{at}` has a `{name}` that is not in the document"))
            }
            // Every name in JSON is text.
            "propertyNames" if says["type"] == "string" => None,
            "additionalProperties" if says.is_object() => {
                let mut fields = value.as_object().into_iter().flatten();
                fields.find_map(|(name, field)| self.fault(says, field, &format!("{at}/{name}")))
            }
            "items" => {
                let mut items = value.as_array().into_iter().flatten().enumerate();
                items.find_map(|(index, item)| self.fault(says, item, &format!("{at}/{index}")))
            }
            "allOf" => says.as_array().unwrap().iter().find_map(|schema| self.fault(schema, value, at)),
            "anyOf" => wrong(any(says) >= 1, "fits none of those it might be".into()),
            "oneOf" => wrong(any(says) == 1, format!("fits {} of those it might be", any(says))),
            "discriminator" => {
                let word = value.get(says["propertyName"].as_str().unwrap()).and_then(Value::as_str);
                let told = word.and_then(|word| says["mapping"].get(word)).cloned();
                match told {
                    None => Some(format!("`{at}` is of no kind: {word:?}")),
                    Some(reference) => self.fault(&serde_json::json!({ "$ref": reference }), value, at),
                }
            }
            known if SAID_ONLY.contains(&known) => None,
            other => panic!("`{at}`: this test does not know the keyword `{other}`"),
        }
    }
}

fn is_of_type(value: &Value, word: &str) -> bool {
    match word {
        "null" => value.is_null(),
        "boolean" => value.is_boolean(),
        "integer" => value.is_i64() || value.is_u64(),
        "number" => value.is_number(),
        "string" => value.is_string(),
        "array" => value.is_array(),
        "object" => value.is_object(),
        other => panic!("`{other}` is no type"),
    }
}

/// Whether a path fits a template.
fn fits(template: &str, path: &str) -> bool {
    let (wanted, given): (Vec<&str>, Vec<&str>) = (template.split('/').collect(), path.split('/').collect());
    wanted.len() == given.len()
        && wanted
            .iter()
            .zip(given)
            .all(|(wanted, given)| if wanted.starts_with('{') { !given.is_empty() } else { *wanted == given })
}
