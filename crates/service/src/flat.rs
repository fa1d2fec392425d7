//! One shape for each thing: an answer that adds fields to another type is described as one object with all its fields.
//!
//! In Rust, a report in words holds the typed answer and adds sentences to it. Described as `allOf`, each would be two shapes,
//! and a generated client an intersection of both.

use std::collections::{BTreeMap, BTreeSet};

use serde_json::Value;
use utoipa::openapi::schema::{AllOf, Components, Object, Schema, Type};
use utoipa::openapi::{OpenApi, RefOr};

const SCHEMAS: &str = "#/components/schemas/";

/// Puts the fields of such a type into one object, and leaves out what nothing names any more.
pub(crate) fn flatten(document: &mut OpenApi) {
    let Some(components) = document.components.as_mut() else { return };
    let flat: BTreeMap<String, Object> = components
        .schemas
        .iter()
        .filter_map(|(name, schema)| {
            let RefOr::T(Schema::AllOf(parts)) = schema else { return None };
            Some((name.clone(), one_object(components, parts)?))
        })
        .collect();
    components.schemas.extend(flat.into_iter().map(|(name, object)| (name, Schema::Object(object).into())));
    let named = named_in(document);
    if let (Some(components), Some(named)) = (document.components.as_mut(), named) {
        components.schemas.retain(|name, _| named.contains(name));
    }
}

/// `None` if a part is no object, such as one of several shapes.
fn one_object(components: &Components, parts: &AllOf) -> Option<Object> {
    let mut all = Object::with_type(Type::Object);
    all.description.clone_from(&parts.description);
    for part in &parts.items {
        let part = object(components, part)?;
        all.properties.extend(part.properties);
        all.required.extend(part.required);
    }
    Some(all)
}

fn object(components: &Components, schema: &RefOr<Schema>) -> Option<Object> {
    match schema {
        RefOr::Ref(reference) => {
            let name = reference.ref_location.strip_prefix(SCHEMAS)?;
            object(components, components.schemas.get(name)?)
        }
        RefOr::T(Schema::Object(object)) => Some(object.clone()),
        RefOr::T(Schema::AllOf(parts)) => one_object(components, parts),
        RefOr::T(_) => None,
    }
}

/// The schemas that a path needs, directly or through others.
fn named_in(document: &OpenApi) -> Option<BTreeSet<String>> {
    let document = serde_json::to_value(document).ok()?;
    let (mut named, mut open) = (BTreeSet::new(), vec![document.get("paths")?]);
    open.extend(document.pointer("/components/responses"));
    while let Some(value) = open.pop() {
        match value {
            Value::Object(fields) => open.extend(fields.values()),
            Value::Array(items) => open.extend(items),
            Value::String(text) => {
                if let Some(name) = text.strip_prefix(SCHEMAS)
                    && named.insert(name.to_owned())
                {
                    open.extend(document.pointer("/components/schemas")?.get(name));
                }
            }
            Value::Null | Value::Bool(_) | Value::Number(_) => {}
        }
    }
    Some(named)
}
