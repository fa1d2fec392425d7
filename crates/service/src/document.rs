//! The OpenAPI document: its frame, and the parts that the routes cannot describe.

use std::collections::BTreeMap;

use combclear_domain::Instant;
use combclear_domain::journal::Kind;
use combclear_wording::forms;
use combclear_wording::reports::ClockBehind;
use combclear_wording::retention::DecidedBy;
use serde_json::Value;
use utoipa::openapi::example::{Example, ExampleBuilder};
use utoipa::openapi::path::{Operation, Parameter, PathItem};
use utoipa::openapi::security::{HttpAuthScheme, HttpBuilder, SecurityRequirement, SecurityScheme};
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{
    Content, HeaderBuilder, InfoBuilder, LicenseBuilder, Object, ObjectBuilder, OpenApi, OpenApiBuilder,
    Paths, Ref, RefOr, ResponseBuilder, Schema, ServerBuilder, Tag, Type,
};
use utoipa::{PartialSchema, ToSchema};

use crate::doubt::CLOCK_BEHIND;
use crate::examples::{Examples, examples};
use crate::flat::flatten;
use crate::kinds::{new_name_with_id, tell_apart};
use crate::language::words;
use crate::router::routes;

/// The OpenAPI document of [`router`](crate::router()).
#[must_use]
pub fn openapi() -> OpenApi {
    let (_, mut document) = routes().split_for_parts();
    complete(&mut document);
    document
}

/// The head of the document, without the routes.
pub(crate) fn frame() -> OpenApi {
    let description = "May this hive be supered today? Answers that from the journal of a holding and the leaflets of \
                       varroa medicines. An aid to record-keeping: the leaflet on the pack, the prescriber and local law \
                       decide.\n\nDates are civil dates at the apiary. What is missing is never taken for zero. Unknown \
                       fields and query parameters are refused. Errors are problem documents (RFC 9457); the `type` of \
                       each is the address of a page that says what to do.";
    let license =
        LicenseBuilder::new().name("MIT OR Apache-2.0").identifier(Some("MIT OR Apache-2.0")).build();
    let info = InfoBuilder::new()
        .title("Combclear")
        .version(env!("CARGO_PKG_VERSION"))
        .description(Some(description))
        .license(Some(license))
        .build();
    let tags = [
        ("journal", "What happened, in the order in which it was recorded. Nothing is changed or deleted."),
        (
            "documents",
            "Proofs of purchase and copies of prescriptions. They are kept as received, and can only be downloaded.",
        ),
        ("colonies", "Where a colony stands, what is in it, and whether it may be supered."),
        ("apiaries", "The same for whole apiaries."),
        ("holding", "What is due, and what is in stock."),
        ("register", "The legal register of a period."),
        ("leaflets", "The rules with their sources."),
        ("laws", "What the law requires of a medicine record, and how long it must be kept."),
    ];
    let tag = |(name, description): (&str, &str)| -> Tag {
        TagBuilder::new().name(name).description(Some(description)).build()
    };
    // Where the document comes from, the answers come from too.
    let server = ServerBuilder::new().url("/").build();
    OpenApiBuilder::new()
        .info(info)
        .servers(Some([server]))
        .paths(Paths::new())
        .tags(Some(tags.map(tag)))
        // Where only this machine can reach the service, it asks for no key.
        .security(Some([
            SecurityRequirement::default(),
            SecurityRequirement::new("key", Vec::<String>::new()),
        ]))
        .build()
}

/// Describes what no route describes by itself: entries by their kind, and a type that is only the parameter of another type.
fn complete(document: &mut OpenApi) {
    let Some(components) = document.components.as_mut() else { return };
    tell_apart(components);
    components.schemas.insert(DecidedBy::name().into_owned(), DecidedBy::schema());
    let key = HttpBuilder::new().scheme(HttpAuthScheme::Bearer).description(Some(
        "Where others can reach the service, it asks for a key: `Authorization: Bearer KEY`. A key is for one holding and has a \
         role: a keeper may do everything, a helper reads and adds, a vet reads and adds prescriptions and what was given, a \
         reader reads, an operator begins holdings.",
    ));
    components.add_security_scheme("key", SecurityScheme::Http(key.build()));
    // A pack is made anew each time: a client that kept one would ask in vain.
    let kept = document.paths.paths.iter_mut().filter(|(path, _)| !path.ends_with("/register/pack"));
    kept.filter_map(|(_, path)| path.get.as_mut()).for_each(may_be_kept);
    doubted(document);
    let Examples { first, batch, of_kind } = examples();
    if let Some(begin) = body_of(document, "/holdings/{holding}", |path| path.put.as_mut()) {
        begin.schema = Some(Ref::from_schema_name(new_name_with_id(Kind::HoldingDetails)).into());
        begin.example = Some(first);
    }
    if let Some(post) = body_of(document, "/holdings/{holding}/entries", |path| path.post.as_mut()) {
        post.example = Some(Value::Array(batch));
    }
    if let Some(put) = body_of(document, "/holdings/{holding}/entries/{id}", |path| path.put.as_mut()) {
        put.examples = of_kind.into_iter().map(of_one_kind).collect();
    }
    answered(document);
    flatten(document);
}

/// What the service answers to the examples, by operation and status. A test asks them and keeps this file true.
const ANSWERS: &str = include_str!("../../../openapi/answers.json");

/// Gives every answer its example.
fn answered(document: &mut OpenApi) {
    let mut answers: BTreeMap<String, BTreeMap<String, Value>> =
        serde_json::from_str(ANSWERS).unwrap_or_default();
    for path in document.paths.paths.values_mut() {
        for operation in [&mut path.get, &mut path.put, &mut path.post].into_iter().flatten() {
            let of_it = operation.operation_id.as_ref().and_then(|id| answers.remove(id));
            for (status, answer) in of_it.unwrap_or_default() {
                let Some(RefOr::T(response)) = operation.responses.responses.get_mut(&status) else {
                    continue;
                };
                if let Some(RefOr::T(content)) = response.content.get_mut("application/json") {
                    content.example = Some(answer);
                }
            }
        }
    }
}

/// An answer whose day is today if none is named says where the clock is behind the journal.
fn doubted(document: &mut OpenApi) {
    let Some(components) = document.components.as_mut() else { return };
    components.schemas.insert(ClockBehind::name().into_owned(), ClockBehind::schema());
    for (_, path) in document.paths.paths.iter_mut().filter(|(path, _)| path.starts_with("/holdings/")) {
        let Some(question) = path.get.as_mut() else { continue };
        let mut parameters = question.parameters.iter().flatten();
        let Some(RefOr::T(answer)) = question.responses.responses.get_mut("200") else { continue };
        let names_a_day = |parameter: &RefOr<Parameter>| matches!(parameter, RefOr::T(parameter) if ["on", "from"].contains(&parameter.name.as_str()));
        if !parameters.any(names_a_day) {
            continue;
        }
        let header = HeaderBuilder::new().schema(Some(Instant::schema())).description(Some(
            "Only if no day is named and the clock of the machine is behind the journal: when the newest entry was recorded.",
        ));
        answer.headers.insert(CLOCK_BEHIND.to_owned(), header.build().into());
        let Some(RefOr::T(json)) = answer.content.get("application/json") else { continue };
        let Some(RefOr::Ref(report)) = &json.schema else { continue };
        let Some((_, name)) = report.ref_location.rsplit_once('/') else { continue };
        let mut warning = Ref::from_schema_name(ClockBehind::name());
        "Only if no day is named and the clock of the machine is behind the journal."
            .clone_into(&mut warning.description);
        let beside = ObjectBuilder::new().property("clock_behind", warning).build();
        match components.schemas.get_mut(name) {
            Some(RefOr::T(Schema::Object(report))) => report.properties.extend(beside.properties),
            Some(RefOr::T(Schema::AllOf(parts))) => parts.items.push(Schema::Object(beside).into()),
            _ => {}
        }
    }
}

/// Every answer to a question may be kept and asked about again.
fn may_be_kept(question: &mut Operation) {
    let responses = &mut question.responses.responses;
    let Some(RefOr::T(answer)) = responses.get_mut("200") else { return };
    let tag = HeaderBuilder::new().schema(Some(Object::with_type(Type::String)));
    let tag =
        tag.description(Some("Send it in `If-None-Match` to ask whether the answer still holds.")).build();
    answer.headers.entry("ETag".to_owned()).or_insert(tag.into());
    let unchanged =
        ResponseBuilder::new().description("The answer that the client kept still holds.").build();
    responses.entry("304".to_owned()).or_insert(unchanged.into());
}

fn of_one_kind((kind, entry): (Kind, Value)) -> (String, RefOr<Example>) {
    let title = forms::title(words(), kind);
    let example = ExampleBuilder::new().summary(title).value(Some(entry)).build();
    (kind.as_str().to_owned(), example.into())
}

/// The JSON body that an operation takes.
fn body_of<'d>(
    document: &'d mut OpenApi,
    path: &str,
    operation: fn(&mut PathItem) -> Option<&mut Operation>,
) -> Option<&'d mut Content> {
    let operation = operation(document.paths.paths.get_mut(path)?)?;
    let RefOr::T(body) = operation.request_body.as_mut()? else { return None };
    let RefOr::T(content) = body.content.get_mut("application/json")? else { return None };
    Some(content)
}
