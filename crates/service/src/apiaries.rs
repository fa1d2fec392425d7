//! Apiaries, and whether each colony at one may be supered.

use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::{ApiaryView, Holding};
use combclear_pictures as picture;
use combclear_wording::reports::apiaries::{self, ApiaryList, ApiarySupering};

use crate::app::App;
use crate::colonies::as_picture;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// List the apiaries
///
/// Each at the end of the day: place, colonies, conditions, nectar flows.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries",
    tag = "apiaries",
    params(HoldingPath, OnQuery),
    responses((status = 200, description = "The apiaries.", body = ApiaryList), Problems),
)]
pub(crate) async fn list_apiaries(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let list = move |holding: &Holding, app: &App| {
        let list = apiaries::list(holding, on);
        Doubt::of(app, holding, query.on.is_none()).json(list)
    };
    app.report(&path.holding, list).await
}

/// Read one apiary
///
/// At the end of the day: place, colonies, conditions, nectar flows.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries/{apiary}",
    tag = "apiaries",
    params(ApiaryPath, OnQuery),
    responses((status = 200, description = "The apiary.", body = ApiaryView), Problems),
)]
pub(crate) async fn get_apiary(
    Asked(app): Asked,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let view = move |holding: &Holding, app: &App| {
        let doubt = Doubt::of(app, holding, query.on.is_none());
        Ok(doubt.json(apiaries::one(words(), holding, &path.apiary, on)?))
    };
    app.ask(&path.holding, view).await?
}

/// Ask whether the colonies of an apiary may be supered
///
/// The whole answer for every colony that stands there on the day, with the number of each answer.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries/{apiary}/supering",
    tag = "apiaries",
    params(ApiaryPath, OnQuery),
    responses((status = 200, description = "The answers.", body = ApiarySupering), Problems),
)]
pub(crate) async fn get_apiary_supering(
    Asked(app): Asked,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let answers = move |holding: &Holding, app: &App| {
        let report = apiaries::supering(words(), holding, &app.leaflets, &path.apiary, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(report))
    };
    app.ask(&path.holding, answers).await?
}

/// Draw the season of an apiary
///
/// The same picture for the colonies that stand there on the day: for each the answers day by day, and what is in as a line below.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries/{apiary}/season",
    tag = "apiaries",
    params(ApiaryPath, OnQuery),
    responses(
        (status = 200, description = "The picture.", body = String, content_type = "image/svg+xml"),
        (status = 204, description = "No colony stands there: there is nothing to draw."),
        Problems,
    ),
)]
pub(crate) async fn get_apiary_season(
    Asked(app): Asked,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let draw = move |holding: &Holding, app: &App| {
        let colonies = apiaries::one(words(), holding, &path.apiary, on)?.colonies;
        let drawn = picture::around(words(), holding, &app.leaflets, &path.apiary, &colonies, on);
        let doubt = Doubt::of(app, holding, query.on.is_none());
        // Nobody stands there, so there is nothing to draw.
        Ok(drawn
            .map_or_else(|| StatusCode::NO_CONTENT.into_response(), |drawn| doubt.over(as_picture(drawn))))
    };
    app.ask(&path.holding, draw).await?
}
