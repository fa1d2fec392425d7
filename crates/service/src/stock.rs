//! What is left of each lot.

use axum::response::Response;
use combclear_domain::questions::stock::Stock;
use combclear_wording::Words;
use combclear_wording::stock::StockReport;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
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
        let report = StockReport::of(Words::english(), holding, stock);
        Doubt::of(app, holding, query.on.is_none()).json(report)
    };
    app.report(&path.holding, stock).await
}
