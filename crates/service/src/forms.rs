//! The forms, and a form that somebody filled in as the entries that it records. Nothing is recorded here.

use axum::Json;
use axum::extract::State;
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::Holding;
use combclear_wording::reports::filled_in::{FilledForm, FormList, NewForm};

use crate::app::App;
use crate::extract::{FormPath, JsonText, Nothing, Path, Query};
use crate::freshness::not_kept;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// List the forms
///
/// What there is to fill in for each kind of entry that people fill in: label, hint and example of each field, how it is filled in,
/// and what there is to choose from.
#[utoipa::path(
    get,
    path = "/forms",
    tag = "journal",
    responses((status = 200, description = "The forms.", body = FormList), Problems),
)]
pub(crate) async fn list_forms(Query(Nothing {}): Query<Nothing>) -> Json<FormList> {
    Json(FormList::all(words()))
}

/// Fill in a form
///
/// Reads what was filled in, takes what nobody wrote from the record where the form says so, and answers with the entries and what
/// they say. **Nothing is recorded**: give each entry an id and send them as a batch. Everything that is wrong is reported at once,
/// field by field; so is what cannot be true.
#[utoipa::path(
    post,
    path = "/holdings/{holding}/forms/{kind}",
    tag = "journal",
    params(FormPath),
    request_body(
        content = NewForm,
        content_type = "application/json",
        example = json!({ "on": "2026-08-24", "fields": { "colony": ["S1"], "brood": ["absent"], "seams": ["6"] } }),
    ),
    responses(
        (status = 200, description = "What it records.", body = FilledForm),
        (status = 422, description = "Something is missing or cannot be read, or cannot be true.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn fill_in(
    State(app): State<App>,
    Path(path): Path<FormPath>,
    Query(Nothing {}): Query<Nothing>,
    JsonText(text): JsonText,
) -> Result<Response, Problem> {
    let form = NewForm::read(words(), &text)?;
    let fill = move |holding: &Holding, app: &App| {
        let now = (app.clock.today(), app.clock.now());
        form.fill_in(words(), holding, &app.leaflets, path.kind, now)
    };
    let filled = app.ask(&path.holding, fill).await??;
    Ok((not_kept(), Json(filled)).into_response())
}
