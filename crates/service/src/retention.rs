//! How long the records of a holding must be kept.

use axum::response::Response;
use combclear_domain::questions::retention::Retention;
use combclear_wording::retention::RetentionReport;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// Ask how long records must be kept
///
/// Every entry of a lot's set, with the last day on which it must be kept, the rule that decides, and what could be
/// archived on the day asked about. Nothing is archived automatically.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/retention",
    tag = "laws",
    params(HoldingPath, OnQuery),
    responses((status = 200, description = "The sets of records, in order.", body = RetentionReport), Problems),
)]
pub(crate) async fn get_retention(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let report = move |holding: &_, app: &App| {
        let retention = Retention::of(holding, &app.leaflets, &app.laws, on);
        let report = RetentionReport::of(words(), retention);
        Doubt::of(app, holding, query.on.is_none()).json(report)
    };
    app.report(&path.holding, report).await
}
