//! What the operator sees of the service from outside: `/metrics`, in the text form of `OpenMetrics`.
//!
//! A holding stands there as the beginning of the hash of its name: metrics are copied to other machines and kept for long, and a
//! name is often that of a person or a farm. Nothing that a client wrote is a label, so their number is bounded.

use std::sync::Arc;
use std::time::Instant;

use axum::extract::{MatchedPath, Request, State};
use axum::http::header::CONTENT_TYPE;
use axum::http::{HeaderValue, Method, StatusCode};
use axum::response::{IntoResponse, Response};
use combclear_domain::journal::Hash;
use combclear_store::{InMemory, StoreError};
use prometheus_client::encoding::EncodeLabelSet;
use prometheus_client::encoding::text::{encode_eof, encode_registry};
use prometheus_client::metrics::counter::Counter;
use prometheus_client::metrics::family::Family;
use prometheus_client::metrics::gauge::Gauge;
use prometheus_client::metrics::histogram::Histogram;
use prometheus_client::registry::{Registry, Unit};

use crate::app::App;
use crate::extract::{Nothing, Query};
use crate::freshness::not_kept;
use crate::problem::Problem;

const OPEN_METRICS: HeaderValue =
    HeaderValue::from_static("application/openmetrics-text; version=1.0.0; charset=utf-8");

/// From an answer out of memory to the limit on answers.
const SECONDS: [f64; 9] = [0.001, 0.004, 0.016, 0.064, 0.25, 1.0, 4.0, 16.0, 30.0];
/// From one entry to the largest batch.
const ENTRIES: [f64; 7] = [1.0, 2.0, 5.0, 20.0, 100.0, 300.0, 1_000.0];

/// A route, as it is registered.
#[derive(Debug, Clone, PartialEq, Eq, Hash, EncodeLabelSet)]
struct Route {
    method: &'static str,
    path: Arc<str>,
}

/// An answer of a route: the class of its status, or that nobody waited for it.
#[derive(Debug, Clone, PartialEq, Eq, Hash, EncodeLabelSet)]
struct Answered {
    #[prometheus(flatten)]
    route: Route,
    status: &'static str,
}

type Labels<const COUNT: usize> = [(&'static str, String); COUNT];

/// What is counted while requests are answered.
#[derive(Debug)]
pub(crate) struct Metrics {
    registry: Registry,
    requests: Family<Answered, Counter>,
    durations: Family<Route, Histogram>,
    entries: Counter,
    commits: Histogram,
}

impl Metrics {
    pub(crate) fn new() -> Metrics {
        let durations: Family<Route, Histogram> = Family::new_with_constructor(|| Histogram::new(SECONDS));
        let metrics = Metrics {
            registry: Registry::with_prefix("combclear"),
            requests: Family::default(),
            durations,
            entries: Counter::default(),
            commits: Histogram::new(ENTRIES),
        };
        metrics.registered()
    }

    fn registered(mut self) -> Metrics {
        let Metrics { registry, requests, durations, entries, commits } = &mut self;
        let about = "Requests by method, route and class of status; gone is one whose client did not wait";
        registry.register("requests", about, requests.clone());
        let about = "Time until the head of the answer, by method and route";
        registry.register_with_unit("request_duration", about, Unit::Seconds, durations.clone());
        registry.register("entries_appended", "Entries added to journals", entries.clone());
        registry.register("commit_entries", "Entries in each commit that added any", commits.clone());
        self
    }

    /// Counts what one commit added, which may be what several requests sent.
    pub(crate) fn committed(&self, entries: usize) {
        if let Ok(entries) = u32::try_from(entries)
            && entries > 0
        {
            self.entries.inc_by(entries.into());
            self.commits.observe(entries.into());
        }
    }
}

/// A request that is counted when its answer leaves, or when it is dropped without one.
pub(crate) struct Counted {
    metrics: Arc<Metrics>,
    method: &'static str,
    path: Arc<str>,
    begun: Instant,
    class: &'static str,
}

impl Counted {
    pub(crate) fn begun(metrics: &Arc<Metrics>, request: &Request) -> Counted {
        let path = request.extensions().get::<MatchedPath>().map_or("(none)", MatchedPath::as_str);
        Counted {
            metrics: Arc::clone(metrics),
            method: word(request.method()),
            path: path.into(),
            begun: Instant::now(),
            class: "gone",
        }
    }

    /// The head of its answer leaves.
    pub(crate) fn answered(mut self, status: StatusCode) {
        self.class = class(status);
    }
}

impl Drop for Counted {
    fn drop(&mut self) {
        let Counted { metrics, method, path, begun, class } = self;
        let route = Route { method, path: Arc::clone(path) };
        metrics.durations.get_or_create(&route).observe(begun.elapsed().as_secs_f64());
        metrics.requests.get_or_create(&Answered { route, status: class }).inc();
    }
}

/// A client may make up any method.
fn word(method: &Method) -> &'static str {
    match *method {
        Method::GET => "GET",
        Method::HEAD => "HEAD",
        Method::PUT => "PUT",
        Method::POST => "POST",
        Method::OPTIONS => "OPTIONS",
        _ => "other",
    }
}

/// The class of a status (RFC 9110, section 15).
fn class(status: StatusCode) -> &'static str {
    match status.as_u16() {
        0..200 => "1xx",
        200..300 => "2xx",
        300..400 => "3xx",
        400..500 => "4xx",
        500.. => "5xx",
    }
}

/// Read the metrics
pub(crate) async fn get_metrics(
    State(app): State<App>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Response, Problem> {
    let now = right_now(&app).await;
    let mut text = String::new();
    let written = encode_registry(&mut text, &app.metrics.registry)
        .and_then(|()| encode_registry(&mut text, &now))
        .and_then(|()| encode_eof(&mut text));
    written.map_err(|_| Problem::internal())?;
    Ok((not_kept(), [(CONTENT_TYPE, OPEN_METRICS)], text).into_response())
}

/// What is looked up when it is asked for.
async fn right_now(app: &App) -> Registry {
    let mut registry = Registry::with_prefix("combclear");
    let heads: Family<Labels<1>, Gauge> = Family::default();
    if let Err(error) = look_up(app, &heads).await {
        // The rest is wanted all the more.
        tracing::warn!(%error, "the heads of the journals are missing from the metrics");
    }
    let about = "Entries in the journal of a holding: the place of its head. The label is the beginning of the SHA-256 of its name";
    registry.register("journal_head", about, heads);
    let InMemory { holdings, entries, bytes } = app.holdings.in_memory();
    let mut gauge = |name: &str, about: &str, unit: Option<Unit>, value: u64| {
        let gauge = Gauge::<i64>::default();
        gauge.set(i64::try_from(value).unwrap_or(i64::MAX));
        match unit {
            Some(unit) => registry.register_with_unit(name, about, unit, gauge),
            None => registry.register(name, about, gauge),
        }
    };
    gauge("folded_holdings", "Holdings in memory", None, holdings);
    gauge("folded_entries", "Entries of the holdings in memory", None, entries);
    gauge("folds", "What the holdings in memory take, about", Some(Unit::Bytes), bytes);
    gauge(
        "kept_answers",
        "What answers take that are kept to be given again",
        Some(Unit::Bytes),
        app.kept.bytes(),
    );
    gauge(
        "reports_in_progress",
        "Reports over a whole holding that are being worked out",
        None,
        app.reports.taken(),
    );
    gauge("bodies", "Room taken by the bodies of requests", Some(Unit::Bytes), app.room.taken());
    registry
}

async fn look_up(app: &App, heads: &Family<Labels<1>, Gauge>) -> Result<(), StoreError> {
    let journal = app.holdings.journal();
    for holding in journal.holdings().await? {
        if let Some((length, _)) = journal.tip(&holding).await? {
            let name = Hash::of_content(holding.as_str().as_bytes()).to_string().chars().take(16).collect();
            heads.get_or_create(&[("holding", name)]).set(i64::try_from(length).unwrap_or(i64::MAX));
        }
    }
    Ok(())
}
