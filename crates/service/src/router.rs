//! Every route, registered once, and the layers around them.

use std::any::Any;
use std::time::Duration;

use axum::Router;
use axum::extract::{DefaultBodyLimit, MatchedPath, Request};
use axum::http::StatusCode;
use axum::middleware::from_fn;
use axum::response::{IntoResponse, Response};
use tower::ServiceBuilder;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::limit::RequestBodyLimitLayer;
use tower_http::request_id::{MakeRequestUuid, PropagateRequestIdLayer, SetRequestIdLayer};
use tower_http::timeout::TimeoutLayer;
use tower_http::trace::TraceLayer;
use tracing::Span;
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

use crate::app::App;
use crate::host::own_names_only;
use crate::problem::{Problem, finish};
use crate::{
    apiaries, colonies, document, documents, due, entries, holdings, laws, leaflets, options, register,
    retention, service, stock,
};

/// Time limit for an answer.
const TIME_MOST: Duration = Duration::from_secs(30);
/// Largest body, in bytes.
const BODY_MOST: usize = 4 * 1024 * 1024;

/// The whole service as a router, for serving or testing.
pub fn router(app: App) -> Router {
    // From the outermost to the innermost.
    let layers = ServiceBuilder::new()
        .layer(SetRequestIdLayer::x_request_id(MakeRequestUuid))
        .layer(
            TraceLayer::new_for_http()
                .make_span_with(span)
                .on_request(())
                .on_response(log)
                .on_body_chunk(())
                .on_eos(())
                .on_failure(()),
        )
        .layer(PropagateRequestIdLayer::x_request_id())
        .layer(from_fn(finish))
        .layer(from_fn(own_names_only))
        .layer(CatchPanicLayer::custom(|panic: Box<dyn Any + Send>| caught(panic.as_ref())))
        .layer(TimeoutLayer::with_status_code(StatusCode::SERVICE_UNAVAILABLE, TIME_MOST))
        // The framework's own limit is smaller and would apply first.
        .layer(DefaultBodyLimit::disable());
    let (router, _) = routes().split_for_parts();
    router
        .fallback(|| async { StatusCode::NOT_FOUND })
        .method_not_allowed_fallback(|| async { StatusCode::METHOD_NOT_ALLOWED })
        .layer(layers)
        .with_state(app)
}

/// The routes, and the document made from them.
pub(crate) fn routes() -> OpenApiRouter<App> {
    // The smaller of two nested limits wins, so each is put around its own routes only.
    let entries = entry_routes().layer(RequestBodyLimitLayer::new(BODY_MOST));
    let documents = document_routes().layer(
        ServiceBuilder::new()
            .layer(from_fn(documents::say_too_large))
            .layer(RequestBodyLimitLayer::new(documents::BODY_MOST)),
    );
    OpenApiRouter::with_openapi(document::frame()).merge(entries).merge(documents)
}

fn document_routes() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(documents::list_documents))
        .routes(routes!(documents::get_document, documents::put_document))
}

fn entry_routes() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(holdings::list_holdings))
        .routes(routes!(entries::put_holding))
        .routes(routes!(entries::list_entries, entries::post_entries))
        .routes(routes!(entries::get_entry, entries::put_entry))
        .routes(routes!(holdings::verify_holding))
        .routes(routes!(colonies::list_colonies))
        .routes(routes!(colonies::get_colony))
        .routes(routes!(colonies::get_colony_supering))
        .routes(routes!(options::get_colony_options))
        .routes(routes!(apiaries::list_apiaries))
        .routes(routes!(apiaries::get_apiary))
        .routes(routes!(apiaries::get_apiary_supering))
        .routes(routes!(options::get_apiary_options))
        .routes(routes!(due::get_due))
        .routes(routes!(stock::get_stock))
        .routes(routes!(retention::get_retention))
        .routes(routes!(laws::list_laws))
        .routes(routes!(laws::get_law))
        .routes(routes!(register::get_register))
        .routes(routes!(register::get_register_gaps))
        .routes(routes!(register::get_register_exchange))
        .routes(routes!(register::get_register_pack))
        .routes(routes!(leaflets::list_leaflets))
        .routes(routes!(leaflets::get_leaflet))
        .routes(routes!(service::get_health))
        .routes(routes!(service::get_readiness))
        .routes(routes!(service::get_openapi))
        .routes(routes!(service::find_start))
        .routes(routes!(service::find_docs))
        .routes(routes!(service::get_docs))
        .routes(routes!(service::get_problem))
}

fn span(request: &Request) -> Span {
    let path = request.extensions().get::<MatchedPath>().map_or("(none)", MatchedPath::as_str);
    let id = request.headers().get("x-request-id").and_then(|id| id.to_str().ok()).unwrap_or_default();
    tracing::info_span!("request", method = %request.method(), path, id)
}

fn log(response: &Response, latency: Duration, _: &Span) {
    let latency_ms = u64::try_from(latency.as_millis()).unwrap_or(u64::MAX);
    tracing::info!(status = response.status().as_u16(), latency_ms, "answered");
}

/// The answer to a panic. Its message goes to the log.
fn caught(panic: &(dyn Any + Send)) -> Response {
    let text =
        panic.downcast_ref::<String>().map(String::as_str).or_else(|| panic.downcast_ref::<&str>().copied());
    tracing::error!(panic = text.unwrap_or("(no text)"), "a handler panicked");
    Problem::internal().into_response()
}
