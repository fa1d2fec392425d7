//! The built-in leaflets: the rules with their sources.

use axum::Json;
use axum::extract::State;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::words::{Jurisdiction, LeafletId, Unit};
use combclear_domain::rules::leaflet::Leaflet;
use combclear_wording::{Label, http};
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::extract::{LeafletPath, LeafletQuery, Nothing, Path, Query};
use crate::language::words;
use crate::problem::{Problem, ProblemKind, Problems, label};

/// The built-in leaflets.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct LeafletList {
    /// In order of jurisdiction and id.
    items: Vec<LeafletItem>,
}

/// A leaflet in a list.
#[derive(Debug, Serialize, ToSchema)]
struct LeafletItem {
    /// The jurisdiction it was written for.
    jurisdiction: Jurisdiction,
    /// Active, form, strength, variant.
    id: LeafletId,
    /// Active, form and strength in words.
    title: String,
    /// Active substances.
    actives: Vec<String>,
    /// The form, such as strip or gel.
    form: String,
    /// The strength in words.
    strength: String,
    /// The unit in which it is counted.
    unit: Unit,
}

/// List the leaflets
///
/// Each by active, form and strength, never by brand.
#[utoipa::path(
    get,
    path = "/leaflets",
    tag = "leaflets",
    params(LeafletQuery),
    responses((status = 200, description = "The leaflets.", body = LeafletList), Problems),
)]
pub(crate) async fn list_leaflets(
    State(app): State<App>,
    Query(wanted): Query<LeafletQuery>,
) -> Result<Json<LeafletList>, Problem> {
    let all: Vec<&Leaflet> = match &wanted.jurisdiction {
        Some(jurisdiction) => app.leaflets.holding_in(jurisdiction).into_iter().map(AsRef::as_ref).collect(),
        None => app.leaflets.iter().map(AsRef::as_ref).collect(),
    };
    if let Some(active) = &wanted.active {
        check_active(&app, active)?;
    }
    let items = all.into_iter().filter(|leaflet| {
        wanted.active.as_ref().is_none_or(|active| has(leaflet, active))
            && wanted.unit.is_none_or(|unit| leaflet.unit == unit)
    });
    Ok(Json(LeafletList { items: items.map(LeafletItem::of).collect() }))
}

fn has(leaflet: &Leaflet, active: &str) -> bool {
    leaflet.actives.iter().any(|known| known.eq_ignore_ascii_case(active))
}

/// Refuses an active that no leaflet has: an empty list would look like an answer.
fn check_active(app: &App, active: &str) -> Result<(), Problem> {
    if app.leaflets.iter().any(|leaflet| has(leaflet, active)) {
        return Ok(());
    }
    let actives = app.leaflets.iter().flat_map(|leaflet| &leaflet.actives);
    let near = nearest(active, actives.map(String::as_str));
    let problem = Problem::new(ProblemKind::BadParameter, http::no_active(words(), active));
    Err(problem.at_unknown("active", near, label(Label::HttpListsLeaflets)))
}

impl LeafletItem {
    fn of(leaflet: &Leaflet) -> LeafletItem {
        LeafletItem {
            jurisdiction: leaflet.jurisdiction.clone(),
            id: leaflet.id.clone(),
            title: leaflet.title.clone(),
            actives: leaflet.actives.clone(),
            form: leaflet.form.clone(),
            strength: leaflet.strength.clone(),
            unit: leaflet.unit,
        }
    }
}

/// Read one leaflet
///
/// Its rules, each with dates, force, sources and confidence.
#[utoipa::path(
    get,
    path = "/leaflets/{jurisdiction}/{id}",
    tag = "leaflets",
    params(LeafletPath),
    responses((status = 200, description = "The leaflet.", body = Leaflet), Problems),
)]
pub(crate) async fn get_leaflet(
    State(app): State<App>,
    Path(path): Path<LeafletPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Json<Leaflet>, Problem> {
    if let Some(leaflet) = app.leaflets.get(&path.jurisdiction, &path.id) {
        return Ok(Json(Leaflet::clone(leaflet)));
    }
    let words = words();
    let detail = http::no_leaflet(words, &path.id, &path.jurisdiction);
    let problem = Problem::new(ProblemKind::UnknownLeaflet, detail);
    let near = app.leaflets.nearest_to(path.id.as_str());
    Err(match app.leaflets.iter().find(|leaflet| leaflet.id == path.id) {
        Some(leaflet) => problem.at_parameter("id", http::leaflet_for(words, &leaflet.jurisdiction)),
        None => problem.at_unknown("id", near, label(Label::HttpListsLeaflets)),
    })
}
