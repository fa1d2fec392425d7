//! The sheet of a visit to an apiary.

use axum::response::Response;
use combclear_domain::facts::holding::Holding;
use combclear_wording::reports::apiaries;
use combclear_wording::visit::VisitSheet;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// Read the sheet of a visit
///
/// What a keeper carries round an apiary on a day: what is due there, and one line for each colony in walking order, with the answer
/// to whether it may be supered, the reason in a few words, what is in it, and until when the answer holds.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries/{apiary}/visit",
    tag = "apiaries",
    params(ApiaryPath, OnQuery),
    responses((status = 200, description = "The sheet.", body = VisitSheet), Problems),
)]
pub(crate) async fn get_visit(
    Asked(app): Asked,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let sheet = move |holding: &Holding, app: &App| {
        let (leaflets, laws) = (&app.leaflets, &app.laws);
        let sheet = apiaries::visit(words(), holding, leaflets, laws, &path.apiary, on)?;
        Ok(Doubt::of(app, holding, query.on.is_none()).json(sheet))
    };
    app.ask(&path.holding, sheet).await?
}
