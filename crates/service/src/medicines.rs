//! The medicines of a holding, as the keeper described them.

use axum::Json;
use axum::response::{IntoResponse, Response};
use combclear_wording::reports::medicines::MedicineList;

use crate::extract::{HoldingPath, Nothing, Path, Query};
use crate::freshness::Asked;
use crate::problem::{Problem, Problems};

/// List the medicines
///
/// Every medicine described so far, with its leaflet and its lots.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/medicines",
    tag = "holding",
    params(HoldingPath),
    responses((status = 200, description = "The medicines.", body = MedicineList), Problems),
)]
pub(crate) async fn list_medicines(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Response, Problem> {
    app.report(&path.holding, |holding, app| {
        Json(MedicineList::of(holding, &app.leaflets, app.clock.today())).into_response()
    })
    .await
}
