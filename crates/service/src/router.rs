//! Every route, registered once, and the layers around them.

use std::any::Any;
use std::time::Duration;

use axum::extract::{DefaultBodyLimit, MatchedPath, Request, State};
use axum::http::header::{ACCEPT, AUTHORIZATION, CONTENT_TYPE, ETAG, IF_NONE_MATCH, LOCATION, RETRY_AFTER};
use axum::http::{HeaderMap, HeaderName, Method, StatusCode, Version};
use axum::middleware::{Next, from_fn, from_fn_with_state};
use axum::response::{IntoResponse, Response};
use axum::routing::get;
use axum::{Extension, Router};
use tower::ServiceBuilder;
use tower_http::catch_panic::CatchPanicLayer;
use tower_http::compression::{CompressionLayer, DefaultPredicate, Predicate};
use tower_http::cors::{AllowOrigin, CorsLayer};
use tower_http::limit::RequestBodyLimitLayer;
use tower_http::request_id::{MakeRequestUuid, PropagateRequestIdLayer, SetRequestIdLayer};
use tower_http::timeout::TimeoutLayer;
use tower_http::trace::TraceLayer;
use tracing::{Span, field};
use utoipa_axum::router::OpenApiRouter;
use utoipa_axum::routes;

use crate::access::let_in;
use crate::app::App;
use crate::body::take_room;
use crate::doubt::CLOCK_BEHIND;
use crate::freshness::{by_content, by_what_it_rests_on, say_whether_to_keep};
use crate::host::own_names_only;
use crate::language::{preferred, spoken};
use crate::metrics::{Counted, get_metrics};
use crate::origin::Origin;
use crate::problem::{Problem, finish};
use crate::{
    apiaries, colonies, document, documents, due, entries, forms, holdings, laws, leaflets, medicines,
    options, page, register, retention, service, stock, visit,
};

/// Time limit for an answer.
const TIME_MOST: Duration = Duration::from_secs(30);
/// Largest body, in bytes.
const BODY_MOST: usize = 4 * 1024 * 1024;

/// The whole service as a router, for serving or testing.
pub fn router(app: App) -> Router {
    // From the outermost to the innermost.
    let layers = ServiceBuilder::new()
        .map_request(only_fit_request_ids)
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
        .layer(from_fn_with_state(app.clone(), around_all))
        .layer(callable_from(&app.origins))
        .layer(CompressionLayer::new().compress_when(DefaultPredicate::new().and(may_be_compressed)))
        .layer(from_fn_with_state(app.clone(), around_those_let_in))
        .layer(CatchPanicLayer::custom(|panic: Box<dyn Any + Send>| caught(panic.as_ref())))
        .layer(TimeoutLayer::with_status_code(StatusCode::SERVICE_UNAVAILABLE, TIME_MOST))
        // The framework's own limit is smaller and would apply first.
        .layer(DefaultBodyLimit::disable())
        .layer(Extension(app.clone()));
    let (router, _) = routes().split_for_parts();
    router
        .fallback(|| async { StatusCode::NOT_FOUND })
        .method_not_allowed_fallback(|| async { StatusCode::METHOD_NOT_ALLOWED })
        .layer(layers)
        .with_state(app)
}

/// What belongs to every request and every answer. In one piece: each layer that calls the next costs a copy of all that are below.
async fn around_all(State(app): State<App>, request: Request, next: Next) -> Response {
    let counted = Counted::begun(&app.metrics, &request);
    let words = preferred(request.headers());
    let (method, uri) = (request.method().clone(), request.uri().clone());
    let answer = async {
        let answer = match own_names_only(&app.names, request.headers()) {
            Ok(()) => next.run(request).await,
            Err(problem) => problem.into_response(),
        };
        finish(&uri, say_whether_to_keep(&method, answer))
    };
    let response = spoken(words, answer).await;
    counted.answered(response.status());
    response
}

/// The question of a page elsewhere, whether it may ask, needs no key.
async fn around_those_let_in(State(app): State<App>, request: Request, next: Next) -> Response {
    match let_in(&app, request).await {
        Ok(request) => by_content(request, next).await,
        Err(problem) => problem.into_response(),
    }
}

/// The routes, and the document made from them.
pub(crate) fn routes() -> OpenApiRouter<App> {
    // The smaller of two nested limits wins, so each is put around its own routes only. Room is taken for what passes it.
    let entries =
        entry_routes().layer(from_fn(take_room::<BODY_MOST>)).layer(RequestBodyLimitLayer::new(BODY_MOST));
    let documents = document_routes().layer(from_fn(take_room::<{ documents::BODY_MOST }>)).layer(
        ServiceBuilder::new()
            .layer(from_fn(documents::say_too_large))
            .layer(RequestBodyLimitLayer::new(documents::BODY_MOST)),
    );
    let answers = answer_routes().layer(from_fn(by_what_it_rests_on));
    let frame = OpenApiRouter::with_openapi(document::frame());
    frame.merge(entries).merge(answers).merge(documents).merge(service_routes())
}

/// Routes that the document does not describe.
fn service_routes() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .route("/", get(page::open))
        .route("/page/{file}", get(page::get_file))
        .route("/docs", get(service::find_docs))
        .route("/docs/{file}", get(service::get_docs))
        .route("/openapi.json", get(service::get_openapi))
        .route("/healthz", get(service::get_health))
        .route("/readyz", get(service::get_readiness))
        .route("/metrics", get(get_metrics))
        .route("/problems/{slug}", get(service::get_problem))
}

/// Routes whose answers rest on nothing but the journal of the holding, the day, the leaflets and the laws: not on attached
/// documents, whose bytes are looked at anew each time.
fn answer_routes() -> OpenApiRouter<App> {
    OpenApiRouter::new()
        .routes(routes!(colonies::list_colonies))
        .routes(routes!(colonies::get_colony))
        .routes(routes!(colonies::get_colony_supering))
        .routes(routes!(colonies::get_colony_history))
        .routes(routes!(options::get_colony_options))
        .routes(routes!(apiaries::list_apiaries))
        .routes(routes!(apiaries::get_apiary))
        .routes(routes!(apiaries::get_apiary_supering))
        .routes(routes!(visit::get_visit))
        .routes(routes!(colonies::get_colony_season))
        .routes(routes!(apiaries::get_apiary_season))
        .routes(routes!(options::get_apiary_options))
        .routes(routes!(due::get_due))
        .routes(routes!(stock::get_stock))
        .routes(routes!(stock::get_lot_leaflet))
        .routes(routes!(medicines::list_medicines))
        .routes(routes!(retention::get_retention))
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
        .routes(routes!(forms::list_forms))
        .routes(routes!(forms::fill_in))
        .routes(routes!(holdings::verify_holding))
        .routes(routes!(laws::list_laws))
        .routes(routes!(laws::get_law))
        .routes(routes!(register::get_register))
        .routes(routes!(register::get_register_gaps))
        .routes(routes!(register::get_exchange_treatments))
        .routes(routes!(register::get_exchange_transactions))
        .routes(routes!(register::get_register_pack))
        .routes(routes!(leaflets::list_leaflets))
        .routes(routes!(leaflets::get_leaflet))
}

/// What a page elsewhere may do: nothing, unless its origin is on the list.
fn callable_from(origins: &[Origin]) -> CorsLayer {
    let request_id = HeaderName::from_static("x-request-id");
    CorsLayer::new()
        .allow_origin(AllowOrigin::list(origins.iter().map(Origin::header)))
        .allow_methods([Method::GET, Method::PUT, Method::POST])
        .allow_headers([ACCEPT, AUTHORIZATION, CONTENT_TYPE, IF_NONE_MATCH, request_id.clone()])
        .expose_headers([ETAG, LOCATION, RETRY_AFTER, HeaderName::from_static(CLOCK_BEHIND), request_id])
        .allow_private_network(!origins.is_empty())
}

/// A strong tag stands for the very bytes; files for download are compressed already.
fn may_be_compressed(_: StatusCode, _: Version, headers: &HeaderMap, _: &axum::http::Extensions) -> bool {
    let strong = headers.get(ETAG).is_some_and(|tag| !tag.as_bytes().starts_with(b"W/"));
    let media_type = headers.get(CONTENT_TYPE).map_or(&b""[..], |declared| declared.as_bytes());
    let texts: [&[u8]; 3] = [b"text/", b"application/json", b"application/wasm"];
    !strong && texts.iter().any(|kind| media_type.starts_with(kind))
}

/// The most characters of a client's own request id.
const ID_MOST: usize = 64;

/// Takes away a client's own request id that is no plain word: it stands in every line of the log. Another is made for it.
fn only_fit_request_ids(mut request: Request) -> Request {
    let fits = |id: &[u8]| {
        (1..=ID_MOST).contains(&id.len())
            && id.iter().all(|byte| byte.is_ascii_alphanumeric() || b"-_.".contains(byte))
    };
    if !request.headers().get("x-request-id").is_some_and(|id| fits(id.as_bytes())) {
        request.headers_mut().remove("x-request-id");
    }
    request
}

fn span(request: &Request) -> Span {
    let path = request.extensions().get::<MatchedPath>().map_or("(none)", MatchedPath::as_str);
    let id = request.headers().get("x-request-id").and_then(|id| id.to_str().ok()).unwrap_or_default();
    // Who asked is known once the key is.
    tracing::info_span!("request", method = %request.method(), path, id, key = field::Empty)
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
