//! What is left of each lot.

use axum::response::Response;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::stock::Stock;
use combclear_wording::reports::lot_leaflet::LotLeaflet;
use combclear_wording::stock::StockReport;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{HoldingPath, LotPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// Ask what is in stock
///
/// By lot: acquired = given + disposed of + left, expiry, life in use; what to dispose of, with the entry prepared but not
/// recorded; and what one course of all colonies would take of each medicine.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/stock",
    tag = "holding",
    params(HoldingPath, OnQuery),
    responses((status = 200, description = "The stock.", body = StockReport), Problems),
)]
pub(crate) async fn get_stock(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let stock = move |holding: &_, app: &App| {
        let stock = Stock::of(holding, &app.leaflets, on);
        let report = StockReport::of(words(), holding, stock);
        Doubt::of(app, holding, query.on.is_none()).json(report)
    };
    app.report(&path.holding, stock).await
}

/// Ask what to read on the leaflet of a lot
///
/// For somebody who has the leaflet in hand: a question for each term, beside what is built in, and one for each other built-in value
/// that no document for this country states. What it says goes into the form `leaflet_reading`.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/lots/{lot}/leaflet",
    tag = "holding",
    params(LotPath, OnQuery),
    responses((status = 200, description = "The questions.", body = LotLeaflet), Problems),
)]
pub(crate) async fn get_lot_leaflet(
    Asked(app): Asked,
    Path(path): Path<LotPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let questions = move |holding: &Holding, app: &App| {
        let questions = LotLeaflet::of(words(), holding, &app.leaflets, &path.lot, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(questions))
    };
    app.ask(&path.holding, questions).await?
}
