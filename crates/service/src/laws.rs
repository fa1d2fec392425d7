//! The law on medicine records.

use axum::Json;
use axum::extract::State;
use combclear_domain::basics::words::Jurisdiction;
use combclear_wording::law::LawReport;
use combclear_wording::terminal::failures;
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::extract::{LawPath, Nothing, OnQuery, Path, Query};
use crate::language::words;
use crate::problem::{Problem, ProblemKind, Problems};

/// The jurisdictions whose law is built in.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct LawList {
    /// In order of jurisdiction.
    items: Vec<LawItem>,
}

/// A jurisdiction in a list.
#[derive(Debug, Serialize, ToSchema)]
struct LawItem {
    /// Its code.
    jurisdiction: Jurisdiction,
    /// Its title.
    title: String,
    /// The jurisdictions whose rules apply there too.
    includes: Vec<Jurisdiction>,
}

/// List the laws
///
/// Member states of the Union that are not listed have the law of the Union.
#[utoipa::path(
    get,
    path = "/laws",
    tag = "laws",
    responses((status = 200, description = "The laws.", body = LawList), Problems),
)]
pub(crate) async fn list_laws(
    State(app): State<App>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Json<LawList>, Problem> {
    let items = app.laws.iter().map(|law| LawItem {
        jurisdiction: law.jurisdiction.clone(),
        title: law.title.clone(),
        includes: law.includes.clone(),
    });
    Ok(Json(LawList { items: items.collect() }))
}

/// Read the law of a jurisdiction
///
/// What must be recorded, how soon, in what form and for how long, as in force on a day: the day of the event. Each rule has
/// dates, sources and confidence.
#[utoipa::path(
    get,
    path = "/laws/{jurisdiction}",
    tag = "laws",
    params(LawPath, OnQuery),
    responses((status = 200, description = "The law on that day.", body = LawReport), Problems),
)]
pub(crate) async fn get_law(
    State(app): State<App>,
    Path(path): Path<LawPath>,
    Query(query): Query<OnQuery>,
) -> Result<Json<LawReport>, Problem> {
    let (on, words) = (app.day(query.on), words());
    if let Some(profile) = app.laws.profile(&path.jurisdiction, on) {
        return Ok(Json(LawReport::of(words, &profile)));
    }
    let detail = failures::no_law(words, &path.jurisdiction);
    let help = failures::laws_are(words, &app.laws.listed());
    Err(Problem::new(ProblemKind::UnknownLaw, detail).at_parameter("jurisdiction", help))
}
