//! Colonies: where they stand, what is in them, whether they may be supered.

use axum::http::HeaderValue;
use axum::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::Holding;
use combclear_pictures as picture;
use combclear_wording::reports::colonies::{self, ColonyList, ColonyReport};
use combclear_wording::reports::history::ColonyHistory;
use combclear_wording::supering::SuperingReport;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{ColonyPath, HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// List the colonies
///
/// Those alive on the day, each with the answer to whether it may be supered.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies",
    tag = "colonies",
    params(HoldingPath, OnQuery),
    responses((status = 200, description = "The colonies.", body = ColonyList), Problems),
)]
pub(crate) async fn list_colonies(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let list = move |holding: &Holding, app: &App| {
        let list = colonies::list(words(), holding, &app.leaflets, on);
        Doubt::of(app, holding, query.on.is_none()).json(list)
    };
    app.report(&path.holding, list).await
}

/// Read one colony
///
/// Its life, apiary, courses with their terms, supers and brood, as recorded at the end of the day.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The colony.", body = ColonyReport), Problems),
)]
pub(crate) async fn get_colony(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let report = move |holding: &Holding, app: &App| {
        let report = colonies::one(words(), holding, &app.leaflets, &path.colony, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(report))
    };
    app.ask(&path.holding, report).await?
}

/// Ask whether a colony may be supered
///
/// Yes, no or unknown, with the grounds, the first free day, what must happen first and what is missing. The answer is
/// unknown for a colony that came into the record after the day; a colony that no entry mentions is a problem.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/supering",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The answer.", body = SuperingReport), Problems),
)]
pub(crate) async fn get_colony_supering(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let report = move |holding: &Holding, app: &App| {
        let report = colonies::supering(words(), holding, &app.leaflets, &path.colony, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(report))
    };
    app.ask(&path.holding, report).await?
}

/// Read what was written down of a colony
///
/// Every entry that names it, of events up to the day, the latest first, in a line each; also those that were corrected or struck out,
/// with the reason.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/history",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The entries.", body = ColonyHistory), Problems),
)]
pub(crate) async fn get_colony_history(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let history = move |holding: &Holding, app: &App| {
        let history = ColonyHistory::of(words(), holding, &path.colony, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(history))
    };
    app.ask(&path.holding, history).await?
}

/// Draw the season of a colony
///
/// A picture (SVG, black and white, as wide as a phone) of the 120 days before the day and after it: may it be supered, what was in and
/// how long it may stay, doses, supers and nectar flows. It has a title and a description in words.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/season",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The picture.", body = String, content_type = "image/svg+xml"), Problems),
)]
pub(crate) async fn get_colony_season(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let draw = move |holding: &Holding, app: &App| {
        let season = colonies::season(words(), holding, &app.leaflets, &path.colony, on)?;
        let drawn = picture::of_colony(words(), &season);
        Ok(Doubt::of(app, holding, query.on.is_none()).over(as_picture(drawn)))
    };
    app.ask(&path.holding, draw).await?
}

/// A picture that runs nothing and fetches nothing, wherever it is opened.
pub(crate) fn as_picture(drawn: String) -> impl IntoResponse {
    let policy = HeaderValue::from_static("default-src 'none'");
    let kind = HeaderValue::from_static(picture::MEDIA_TYPE);
    ([(CONTENT_TYPE, kind), (CONTENT_SECURITY_POLICY, policy)], drawn)
}
