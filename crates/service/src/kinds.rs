//! Entries in the document: one schema for each kind, with the body of that kind. A type in Rust has one envelope for all of
//! them; from it the schemas are made here.

use std::collections::BTreeMap;

use combclear_domain::journal::Kind;
use combclear_domain::journal::entry::Envelope;
use utoipa::ToSchema;
use utoipa::openapi::schema::{
    Components, Discriminator, Object, ObjectBuilder, OneOfBuilder, Schema, SchemaType, Type,
};
use utoipa::openapi::{Ref, RefOr};

use crate::pages::EntryReport;

/// The schema of a new entry that must state its id, because no path does.
pub(crate) const WITH_ID: &str = "NewEntryWithId";

/// Replaces the schemas of a new and of a sealed entry by one of each kind, told apart by `kind`.
///
/// Every schema is written out: programs that make a client from the document do not follow one that adds to another.
pub(crate) fn tell_apart(components: &mut Components) {
    let mut bodies = Vec::new();
    for kind in Kind::ALL {
        kind.add_schemas(&mut bodies);
    }
    components.schemas.extend(bodies);
    if let Some(new) = taken(components, &Envelope::name()) {
        let name = |kind: Kind| format!("New{}", kind.schema_name());
        split(components, &Envelope::name(), &new, name, new_body);
        let mut new = new;
        need(&mut new, "id");
        split(components, WITH_ID, &new, new_name_with_id, new_body);
    }
    if let Some(sealed) = taken(components, &EntryReport::name()) {
        let name = |kind: Kind| format!("{}Entry", kind.schema_name());
        split(components, &EntryReport::name(), &sealed, name, sealed_body);
    }
}

/// The name of the schema of a new entry of a kind that must state its id.
pub(crate) fn new_name_with_id(kind: Kind) -> String {
    format!("New{}WithId", kind.schema_name())
}

fn taken(components: &mut Components, name: &str) -> Option<Object> {
    match components.schemas.remove(name)? {
        RefOr::T(Schema::Object(all)) => Some(all),
        _ => None,
    }
}

/// Adds one schema for each kind, and one of this name for all of them.
fn split(
    components: &mut Components,
    name: &str,
    all: &Object,
    name_of: impl Fn(Kind) -> String,
    body_of: impl Fn(Kind) -> RefOr<Schema>,
) {
    let mut mapping = BTreeMap::new();
    let mut any = OneOfBuilder::new().description(all.description.clone());
    for kind in Kind::ALL {
        let mut one = all.clone();
        one.description = described(components, *kind);
        let word = ObjectBuilder::new().schema_type(Type::String).enum_values(Some([kind.as_str()]));
        one.properties.insert("kind".to_owned(), word.into());
        one.properties.insert("body".to_owned(), body_of(*kind));
        if *kind == Kind::StrikeOut {
            need(&mut one, "corrects");
            need(&mut one, "reason");
        }
        let reference = Ref::from_schema_name(name_of(*kind));
        mapping.insert(kind.as_str(), reference.ref_location.clone());
        any = any.item(reference);
        components.schemas.insert(name_of(*kind), Schema::Object(one).into());
    }
    let any = any.discriminator(Some(Discriminator::with_mapping("kind", mapping)));
    components.schemas.insert(name.to_owned(), Schema::OneOf(any.build()).into());
}

/// What an entry of a kind records, as its body says it.
fn described(components: &Components, kind: Kind) -> Option<String> {
    match components.schemas.get(&kind.schema_name()) {
        Some(RefOr::T(Schema::Object(body))) => body.description.clone(),
        _ => None,
    }
}

fn new_body(kind: Kind) -> RefOr<Schema> {
    let mut body = Ref::from_schema_name(kind.schema_name());
    "What happened, in the fields of that kind.".clone_into(&mut body.description);
    body.into()
}

fn sealed_body(kind: Kind) -> RefOr<Schema> {
    let none = ObjectBuilder::new().schema_type(Type::Null);
    let body = OneOfBuilder::new().item(Ref::from_schema_name(kind.schema_name())).item(none);
    let about =
        "What happened, in the fields of that kind; null if an `archived` entry moved it into an archive.";
    Schema::OneOf(body.description(Some(about)).build()).into()
}

/// Makes an optional field of an entry one that must be there.
fn need(entry: &mut Object, field: &str) {
    entry.required.push(field.to_owned());
    match entry.properties.get_mut(field) {
        Some(RefOr::T(Schema::Object(value))) => value.schema_type = SchemaType::Type(Type::String),
        Some(RefOr::T(Schema::OneOf(value))) => {
            // Either a reference or null.
            if let Some(reference) = value.items.iter().find(|item| matches!(item, RefOr::Ref(_))).cloned() {
                entry.properties.insert(field.to_owned(), reference);
            }
        }
        _ => {}
    }
}
