//! Health, the document and its page, help on problems. A front end asks none of these, so the document does not describe them.

use std::sync::{Arc, LazyLock};

use axum::Json;
use axum::extract::State;
use axum::http::header::CONTENT_TYPE;
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{Html, IntoResponse, Redirect, Response};
use combclear_domain::basics::spelling::nearest;
use combclear_wording::{Label, http};
use serde::Serialize;
use utoipa_swagger_ui::Config;

use crate::app::App;
use crate::document;
use crate::extract::{FilePath, Nothing, Path, Query, SlugPath};
use crate::freshness::not_kept;
use crate::language::words;
use crate::packed::unpacked_for;
use crate::problem::{Problem, ProblemKind, label};

/// Whether the service answers.
#[derive(Debug, Serialize)]
pub(crate) struct Health {
    /// Always `ok`.
    status: &'static str,
}

/// Ask whether the service runs
pub(crate) async fn get_health(Query(Nothing {}): Query<Nothing>) -> impl IntoResponse {
    (not_kept(), Json(Health { status: "ok" }))
}

/// Ask whether the service can reach its database
pub(crate) async fn get_readiness(
    State(app): State<App>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<impl IntoResponse, Problem> {
    match app.holdings.journal().ready().await {
        Ok(()) => Ok((not_kept(), Json(Health { status: "ok" }))),
        Err(error) => {
            tracing::error!(%error, "the database does not answer");
            Err(Problem::new(ProblemKind::NotReady, label(Label::HttpNotReady)))
        }
    }
}

/// Read this document
pub(crate) async fn get_openapi(Query(Nothing {}): Query<Nothing>) -> Response {
    static DOCUMENT: LazyLock<String> =
        LazyLock::new(|| document::openapi().to_pretty_json().unwrap_or_default());
    ([(CONTENT_TYPE, HeaderValue::from_static("application/json"))], DOCUMENT.as_str()).into_response()
}

/// Go to the page that shows this document
pub(crate) async fn find_docs(Query(Nothing {}): Query<Nothing>) -> Redirect {
    Redirect::permanent("/docs/index.html")
}

static CONFIG: LazyLock<Arc<Config<'static>>> =
    LazyLock::new(|| Arc::new(Config::new(["/openapi.json"]).validator_url("none").use_base_layout()));

/// The page itself: the toolkit's own shows its mark and name.
const PAGE: &str = include_str!("docs.html");

/// Read a file of the page that shows this document
///
/// `index.html` is the page. It fetches nothing from elsewhere.
pub(crate) async fn get_docs(
    Path(path): Path<FilePath>,
    Query(Nothing {}): Query<Nothing>,
    asked: HeaderMap,
) -> Result<Response, Problem> {
    if path.file == "index.html" {
        return Ok(Html(PAGE).into_response());
    }
    let file = utoipa_swagger_ui::serve(&path.file, Arc::clone(&CONFIG)).map_err(|error| {
        tracing::error!(%error, "a file of the page cannot be served");
        Problem::internal()
    })?;
    let Some(file) = file else {
        let problem = Problem::new(ProblemKind::UnknownPath, http::no_file(words(), &path.file));
        return Err(problem.at_parameter("file", label(Label::HttpNoFileHelp)));
    };
    let content_type = HeaderValue::from_str(&file.content_type).map_err(|_| Problem::internal())?;
    let sent = if file.gzpipped {
        unpacked_for(&asked, file.bytes).await?
    } else {
        file.bytes.into_owned().into_response()
    };
    Ok(([(CONTENT_TYPE, content_type)], sent).into_response())
}

/// Read what to do about a problem
///
/// The `type` of a problem document is the address of this page.
pub(crate) async fn get_problem(
    Path(path): Path<SlugPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<String, Problem> {
    if let Some(kind) = ProblemKind::from_slug(&path.slug) {
        return Ok(kind.page());
    }
    let words = words();
    let slugs: Vec<&str> = ProblemKind::ALL.iter().map(|kind| kind.slug()).collect();
    let near = nearest(&path.slug, slugs.iter().copied());
    let problem = Problem::new(ProblemKind::UnknownProblem, http::no_problem(words, &path.slug));
    Err(problem.at_unknown("slug", near, http::problems_are(words, &slugs.join(", "))))
}
