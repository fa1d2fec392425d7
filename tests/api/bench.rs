//! A client, and the service it calls.

use std::sync::atomic::{AtomicI64, Ordering};
use std::sync::{Arc, LazyLock, Mutex};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Method, Request};
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_service::{App, Clock, Rate};
use combclear_store::{Holdings, Journal};
use serde_json::Value;
use tempfile::TempDir;
use tower::ServiceExt;

use crate::one_line::OneLine;
use crate::{layers, numbered, schema};

/// The day of the tests. At the hour of the clock it is still 11 April in Greenwich and at the keeper's place.
pub(crate) const TODAY: &str = "2026-04-11";

/// A clock that stands still until it is set.
pub(crate) struct Standing {
    minutes: AtomicI64,
    day: Mutex<&'static str>,
}

impl Standing {
    pub(crate) fn move_on(&self, minutes: i64) {
        self.minutes.fetch_add(minutes, Ordering::SeqCst);
    }

    pub(crate) fn move_to(&self, day: &'static str) {
        *self.day.lock().unwrap() = day;
    }
}

impl Clock for Standing {
    fn now(&self) -> Instant {
        let minutes = 15 + self.minutes.load(Ordering::SeqCst);
        format!("{}T08:{minutes:02}:30.123Z", self.day.lock().unwrap()).parse().unwrap()
    }

    fn today(&self) -> Day {
        self.day.lock().unwrap().parse().unwrap()
    }
}

/// A service with its journal and clock.
pub(crate) struct Bench {
    pub(crate) router: Router,
    pub(crate) clock: Arc<Standing>,
    pub(crate) journal: Arc<dyn Journal>,
    _folder: TempDir,
}

/// Invented leaflets, so that changes to real ones do not affect the tests.
pub(crate) fn leaflets() -> Arc<Leaflets> {
    let strip = include_str!("data/demo-strip.toml");
    Arc::new(Leaflets::load([("gb/demo-strip.toml", strip)]).unwrap())
}

/// Invented laws, so that changes to real ones do not affect the tests.
pub(crate) fn laws() -> Arc<Laws> {
    let files =
        [("gb.toml", include_str!("data/law/gb.toml")), ("eu.toml", include_str!("data/law/eu.toml"))];
    Arc::new(Laws::load(files).unwrap())
}

impl Bench {
    /// A service without entries.
    pub(crate) async fn new() -> Bench {
        Bench::over(|journal| journal).await
    }

    /// A service with a wrapped journal.
    pub(crate) async fn over(wrap: impl FnOnce(Arc<dyn Journal>) -> Arc<dyn Journal>) -> Bench {
        Bench::over_with(wrap, leaflets(), TODAY).await
    }

    /// A service without entries, with these leaflets.
    pub(crate) async fn with(leaflets: Arc<Leaflets>) -> Bench {
        Bench::over_with(|journal| journal, leaflets, TODAY).await
    }

    /// A service without entries, on another day.
    pub(crate) async fn on(day: &'static str) -> Bench {
        Bench::over_with(|journal| journal, leaflets(), day).await
    }

    /// A service without entries, with these leaflets and laws, on another day.
    pub(crate) async fn of(leaflets: Arc<Leaflets>, laws: Arc<Laws>, day: &'static str) -> Bench {
        Bench::set_up(|journal| journal, (leaflets, laws), day, |app| app).await
    }

    /// A service without entries, with settings of its own.
    pub(crate) async fn made(set: impl FnOnce(App) -> App) -> Bench {
        Bench::set_up(|journal| journal, (leaflets(), laws()), TODAY, set).await
    }

    /// A service with a wrapped journal and settings of its own.
    pub(crate) async fn over_and_made(
        wrap: impl FnOnce(Arc<dyn Journal>) -> Arc<dyn Journal>,
        set: impl FnOnce(App) -> App,
    ) -> Bench {
        Bench::set_up(wrap, (leaflets(), laws()), TODAY, set).await
    }

    async fn over_with(
        wrap: impl FnOnce(Arc<dyn Journal>) -> Arc<dyn Journal>,
        leaflets: Arc<Leaflets>,
        day: &'static str,
    ) -> Bench {
        Bench::set_up(wrap, (leaflets, laws()), day, |app| app).await
    }

    async fn set_up(
        wrap: impl FnOnce(Arc<dyn Journal>) -> Arc<dyn Journal>,
        (leaflets, laws): (Arc<Leaflets>, Arc<Laws>),
        day: &'static str,
        set: impl FnOnce(App) -> App,
    ) -> Bench {
        layers::keep_log();
        let folder = tempfile::tempdir().unwrap();
        let url = format!("sqlite:{}", folder.path().join("journal.db").display());
        let journal = wrap(combclear_store::open(&url).await.unwrap());
        let clock = Arc::new(Standing { minutes: AtomicI64::new(0), day: Mutex::new(day) });
        let holdings = Arc::new(Holdings::new(Arc::clone(&journal)));
        let app = App::new(holdings, leaflets, laws, Arc::clone(&clock) as _).typeset_by(Arc::new(OneLine));
        let router = combclear_service::router(set(app));
        Bench { router, clock, journal, _folder: folder }
    }

    /// Another service over the same journal, which it has not read yet.
    pub(crate) fn started_again(self) -> Bench {
        let app = app(Arc::clone(&self.journal), Arc::clone(&self.clock));
        Bench { router: combclear_service::router(app), ..self }
    }

    /// The same, asking for keys from now on.
    pub(crate) fn asking_for_keys(self, rate: Rate) -> Bench {
        let app = app(Arc::clone(&self.journal), Arc::clone(&self.clock));
        Bench { router: combclear_service::router(app.asking_for_keys(rate)), ..self }
    }

    pub(crate) async fn get(&self, path: &str) -> Answer {
        self.send(Request::get(path).body(Body::empty()).unwrap()).await
    }

    pub(crate) async fn put(&self, path: &str, entry: &Value) -> Answer {
        self.send(json(Method::PUT, path, entry.to_string())).await
    }

    pub(crate) async fn post(&self, path: &str, entries: &Value) -> Answer {
        self.send(json(Method::POST, path, entries.to_string())).await
    }

    /// Sends a request and checks the answer against the document.
    pub(crate) async fn send(&self, request: Request<Body>) -> Answer {
        let method = request.method().clone();
        let path = request.uri().path().to_owned();
        let response = self.router.clone().oneshot(request).await.unwrap();
        let (parts, body) = response.into_parts();
        let body = to_bytes(body, usize::MAX).await.unwrap().to_vec();
        let answer = Answer { status: parts.status.as_u16(), headers: parts.headers, body };
        // An answer without a body, a browser's question whether it may ask, and a compressed answer are not described.
        let described = ![Method::HEAD, Method::OPTIONS].contains(&method);
        if described && answer.header("content-encoding").is_none() {
            DOCUMENT.check(&method, &path, &answer);
            if answer.status == 200 && answer.header("content-type") == Some("application/json") {
                numbered::check(&path, &answer.json());
            }
        }
        answer
    }

    /// Number of entries of a holding.
    pub(crate) async fn entries_of(&self, holding: &str) -> u64 {
        self.journal.tip(&holding.parse().unwrap()).await.unwrap().map_or(0, |(seq, _)| seq)
    }
}

pub(crate) fn app(journal: Arc<dyn Journal>, clock: Arc<Standing>) -> App {
    App::new(Arc::new(Holdings::new(journal)), leaflets(), laws(), clock)
}

/// A request with a body declared as JSON.
pub(crate) fn json(method: Method, path: &str, body: impl Into<Body>) -> Request<Body> {
    let request = Request::builder().method(method).uri(path).header("content-type", "application/json");
    request.body(body.into()).unwrap()
}

static DOCUMENT: LazyLock<schema::Document> = LazyLock::new(schema::Document::of_the_service);

/// What came back.
#[derive(Debug)]
pub(crate) struct Answer {
    pub(crate) status: u16,
    pub(crate) headers: HeaderMap,
    pub(crate) body: Vec<u8>,
}

impl Answer {
    pub(crate) fn text(&self) -> String {
        String::from_utf8(self.body.clone()).unwrap()
    }

    pub(crate) fn json(&self) -> Value {
        serde_json::from_slice(&self.body).unwrap_or_else(|_| panic!("not JSON: {}", self.text()))
    }

    pub(crate) fn header(&self, name: &str) -> Option<&str> {
        self.headers.get(name).map(|value| value.to_str().unwrap())
    }

    /// The JSON of a success.
    #[track_caller]
    pub(crate) fn good(&self) -> Value {
        assert!((200..300).contains(&self.status), "{}: {}", self.status, self.text());
        assert_eq!(self.header("content-type"), Some("application/json"));
        self.json()
    }

    /// The problem document, which must be of this kind and name this path.
    #[track_caller]
    pub(crate) fn problem(&self, status: u16, slug: &str, instance: &str) -> Value {
        assert_eq!(self.status, status, "{}", self.text());
        assert_eq!(self.header("content-type"), Some("application/problem+json"), "{}", self.text());
        let problem = self.json();
        assert_eq!(problem["type"], format!("/problems/{slug}"), "{problem}");
        assert_eq!(problem["status"], status, "{problem}");
        assert_eq!(problem["instance"], instance, "{problem}");
        assert_ne!(problem["title"], "", "{problem}");
        assert_ne!(problem["detail"], "", "{problem}");
        let when = self.header("retry-after").map(|seconds| seconds.parse::<u32>().unwrap());
        assert_eq!(
            when.is_some(),
            [429, 503].contains(&status),
            "whoever may come again is told when: {problem}"
        );
        problem
    }

    /// The only fault of a problem document: place, message, help.
    #[track_caller]
    pub(crate) fn fault(&self, status: u16, slug: &str, instance: &str) -> (String, String, String) {
        let problem = self.problem(status, slug, instance);
        let errors = problem["errors"].as_array().unwrap();
        assert_eq!(errors.len(), 1, "{problem}");
        let place = errors[0].get("pointer").or_else(|| errors[0].get("parameter")).unwrap_or(&Value::Null);
        let text = |value: &Value| value.as_str().unwrap_or_default().to_owned();
        (text(place), text(&errors[0]["detail"]), text(&errors[0]["help"]))
    }
}
