//! The sheet of a visit to an apiary.

use axum::response::Response;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::Due;
use combclear_wording::Words;
use combclear_wording::visit::VisitSheet;

use crate::apiaries::view;
use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, OnQuery, Path, Query};
use crate::freshness::Asked;
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
    let span = app.span(Some(on), Some(on))?;
    let sheet = move |holding: &Holding, app: &App| {
        let colonies = view(holding, &path.apiary, on)?.colonies;
        let due = Due::of(holding, &app.leaflets, &app.laws, span, Some(&path.apiary));
        let (words, leaflets) = (Words::english(), &app.leaflets);
        let sheet = VisitSheet::of(words, holding, leaflets, &path.apiary, &colonies, due, on);
        Ok(Doubt::of(app, holding, query.on.is_none()).json(sheet))
    };
    app.ask(&path.holding, sheet).await?
}
