//! The OpenAPI document: its frame, and the parts that the routes cannot describe.

use combclear_wording::retention::DecidedBy;
use utoipa::openapi::schema::Schema;
use utoipa::openapi::tag::TagBuilder;
use utoipa::openapi::{InfoBuilder, LicenseBuilder, OpenApi, OpenApiBuilder, Paths, Ref, RefOr, Tag};
use utoipa::{PartialSchema, ToSchema};

use crate::pages::EntryBody;
use crate::router::routes;

/// The OpenAPI document of [`router`](crate::router()).
#[must_use]
pub fn openapi() -> OpenApi {
    let (_, mut document) = routes().split_for_parts();
    name_bodies(&mut document);
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
        ("service", "Health, this document, what to do about a problem."),
    ];
    let tag = |(name, description): (&str, &str)| -> Tag {
        TagBuilder::new().name(name).description(Some(description)).build()
    };
    OpenApiBuilder::new().info(info).paths(Paths::new()).tags(Some(tags.map(tag))).build()
}

/// Describes the body of a new entry as one of the known bodies. Its type is in a crate without HTTP, which leaves that
/// open. A type that is only the parameter of another type is not found by itself.
fn name_bodies(document: &mut OpenApi) {
    let Some(components) = document.components.as_mut() else { return };
    let mut schemas = Vec::new();
    EntryBody::schemas(&mut schemas);
    components.schemas.extend(schemas);
    components.schemas.insert(EntryBody::name().into_owned(), EntryBody::schema());
    components.schemas.insert(DecidedBy::name().into_owned(), DecidedBy::schema());
    if let Some(RefOr::T(Schema::Object(entry))) = components.schemas.get_mut("NewEntry") {
        let mut body = Ref::from_schema_name(EntryBody::name());
        "What happened, in the fields of that kind.".clone_into(&mut body.description);
        entry.properties.insert("body".to_owned(), body.into());
    }
}
