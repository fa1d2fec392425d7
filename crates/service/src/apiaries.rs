//! Apiaries, and whether each colony at one may be supered.

use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use combclear_domain::Day;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::facts::holding::{ApiaryView, Holding};
use combclear_domain::questions::timeline::Timeline;
use combclear_papers::picture;
use combclear_wording::supering::SuperingReport;
use combclear_wording::{Label, Words, http};
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::colonies::as_picture;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::problem::{Problem, ProblemKind, Problems, label};

/// The apiaries of a holding on a day.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ApiaryList {
    /// The holding.
    holding: HoldingName,
    /// The day asked about.
    on: Day,
    /// In order of name.
    items: Vec<ApiaryView>,
}

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
        let items = holding.apiaries().filter_map(|apiary| holding.apiary(apiary, on)).collect();
        let list = ApiaryList { holding: holding.name().clone(), on, items };
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
        Ok(doubt.json(view(holding, &path.apiary, on)?))
    };
    app.ask(&path.holding, view).await?
}

/// Whether the colonies of an apiary may be supered.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ApiarySupering {
    /// The holding.
    holding: HoldingName,
    /// The apiary.
    apiary: ApiaryName,
    /// The day asked about.
    on: Day,
    /// Number of colonies that may be.
    #[schema(minimum = 0, maximum = 9_007_199_254_740_991i64)]
    yes: usize,
    /// Number that may not.
    #[schema(minimum = 0, maximum = 9_007_199_254_740_991i64)]
    no: usize,
    /// Number for which it is not known.
    #[schema(minimum = 0, maximum = 9_007_199_254_740_991i64)]
    unknown: usize,
    /// The answer for each, in order of name.
    colonies: Vec<SuperingReport>,
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
        let apiary = view(holding, &path.apiary, on)?;
        let words = Words::english();
        let colonies = SuperingReport::board(words, holding, &app.leaflets, &apiary.colonies, on);
        let count = |verdict| colonies.iter().filter(|report| report.in_brief.answer == verdict).count();
        let (yes, no, unknown) = (count(Verdict::Yes), count(Verdict::No), count(Verdict::Unknown));
        let (name, apiary) = (holding.name().clone(), path.apiary);
        let report = ApiarySupering { holding: name, apiary, on, yes, no, unknown, colonies };
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
        let colonies = view(holding, &path.apiary, on)?.colonies;
        let season = |colony| Timeline::of(holding, &app.leaflets, colony, on);
        let seasons: Vec<Timeline> = colonies.iter().map(season).collect();
        let drawn = picture::of_apiary(Words::english(), &path.apiary, on, &seasons);
        let doubt = Doubt::of(app, holding, query.on.is_none());
        // Nobody stands there, so there is nothing to draw.
        Ok(drawn
            .map_or_else(|| StatusCode::NO_CONTENT.into_response(), |drawn| doubt.over(as_picture(drawn))))
    };
    app.ask(&path.holding, draw).await?
}

pub(crate) fn view(holding: &Holding, apiary: &ApiaryName, on: Day) -> Result<ApiaryView, Problem> {
    holding.apiary(apiary, on).ok_or_else(|| unknown_apiary(holding, apiary))
}

/// The problem for an apiary that is not recorded.
pub(crate) fn unknown_apiary(holding: &Holding, apiary: &ApiaryName) -> Problem {
    let detail = http::no_apiary(Words::english(), holding.name(), apiary);
    let near = nearest(apiary.as_str(), holding.apiaries().map(ApiaryName::as_str));
    let problem = Problem::new(ProblemKind::UnknownApiary, detail);
    problem.at_unknown("apiary", near, label(Label::HttpNoApiaryHelp))
}
