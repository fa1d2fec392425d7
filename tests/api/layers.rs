//! Around every path: request ids, the log, limits of time and size, panics, clients that hang up.

use std::io::Write;
use std::sync::{Arc, LazyLock, Mutex};
use std::time::Duration;

use axum::body::Body;
use axum::http::{Method, Request};
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::{Draft, Entry};
use serde_json::{Value, json};
use tower::ServiceExt;

use crate::bench::{self, Bench};
use crate::faulty::{self, Faulty, Found, Gate, Trouble};
use crate::seed::{self, HOLDING};

const MIB: usize = 1024 * 1024;

#[tokio::test]
async fn an_answer_carries_the_id_of_its_request() {
    let bench = Bench::new().await;
    let request = Request::get("/nowhere").header("x-request-id", "mine-1").body(Body::empty()).unwrap();
    assert_eq!(bench.send(request).await.header("x-request-id"), Some("mine-1"));
    let (one, two) = (bench.get("/healthz").await, bench.get("/healthz").await);
    let (one, two) = (one.header("x-request-id").unwrap(), two.header("x-request-id").unwrap());
    assert!(one.len() == 36 && two.len() == 36 && one != two, "{one} {two}");
}

#[tokio::test]
async fn only_the_names_of_this_machine_itself_are_answered_to() {
    let bench = seed::bench().await;
    for (host, status) in
        [("localhost:8420", 200), ("127.0.0.1:8420", 200), ("[::1]", 200), ("hives.example.org", 403)]
    {
        let request = Request::get("/holdings").header("host", host).body(Body::empty()).unwrap();
        let answer = bench.send(request).await;
        assert_eq!(answer.status, status, "{host}");
        if status == 403 {
            assert_eq!(answer.json()["type"], "/problems/foreign-host");
        }
    }
}

#[tokio::test]
async fn the_log_has_the_method_the_matched_path_the_status_and_the_time() {
    // The request id distinguishes the lines of other tests.
    let log = &*LOG;
    let bench = seed::bench().await;
    for (path, id) in
        [("/holdings/heathside/colonies/M1?on=2026-04-11", "logged-1"), ("/nowhere/at/all", "logged-2")]
    {
        bench.send(Request::get(path).header("x-request-id", id).body(Body::empty()).unwrap()).await;
    }
    let is_ours = |line: &Value| line["span"]["id"].as_str().is_some_and(|id| id.starts_with("logged-"));
    let lines = logged(|line| is_ours(line).then(|| line.clone()));
    let said = |line: &Value| {
        let (span, fields) = (&line["span"], &line["fields"]);
        json!([span["id"], span["method"], span["path"], fields["status"], fields["message"]])
    };
    let want = [
        json!(["logged-1", "GET", "/holdings/{holding}/colonies/{colony}", 200, "answered"]),
        json!(["logged-2", "GET", "(none)", 404, "answered"]),
    ];
    assert_eq!(lines.iter().map(said).collect::<Vec<_>>(), want, "{lines:#?}");
    assert!(lines.iter().all(|line| line["fields"]["latency_ms"].is_u64()), "{lines:#?}");
    nothing_that_a_client_wrote_is_logged(log).await;
}

/// What clients send: in every part of a request, and where something goes wrong with it.
async fn nothing_that_a_client_wrote_is_logged(log: &Log) {
    const SECRET: &str = "quince-marmalade";
    let entry = seed::entries()[12].to_string().replace("A. Keeper", SECRET);
    let (path, no_entry) = (seed::path(13), format!("{{\"{SECRET}\":1}}"));
    for trouble in [
        Trouble::HoldingsFail(faulty::locked),
        Trouble::HoldingsPanic,
        Trouble::AppendPanics,
        Trouble::NotReady,
    ] {
        let bench = Bench::over(Faulty::with(trouble)).await;
        for (method, path, body) in [
            (Method::PUT, begun().as_str(), &seed::entries()[0].to_string().replace("A. Keeper", SECRET)),
            (Method::PUT, &path, &entry),
            (Method::PUT, &path, &no_entry),
            (Method::PUT, &format!("{path}?{SECRET}=1"), &entry),
            (Method::POST, &format!("/holdings/{SECRET}/entries"), &format!("[{entry}]")),
            (Method::GET, &format!("/holdings?{SECRET}"), &String::new()),
            (Method::GET, "/holdings", &String::new()),
            (Method::GET, "/readyz", &String::new()),
            (Method::GET, &format!("/holdings/{SECRET}/register"), &String::new()),
            (Method::GET, &format!("/{SECRET}"), &String::new()),
        ] {
            let request = Request::builder().method(method).uri(path);
            let request =
                request.header("authorization", SECRET).header("cookie", SECRET).header("referer", SECRET);
            let request = request
                .header("content-type", "application/json")
                .header("x-request-id", format!("{SECRET} 1"));
            let answer =
                bench.router.clone().oneshot(request.body(Body::from(body.clone())).unwrap()).await.unwrap();
            let id = answer.headers()["x-request-id"].to_str().unwrap();
            assert!(id.len() == 36 && !id.contains(SECRET), "{path}: {id}");
        }
    }
    let text = String::from_utf8(log.0.lock().unwrap().clone()).unwrap();
    assert!(!text.contains(SECRET), "{text}");
    // Whatever is said about a request, says about which one. Listening is about none.
    let lines = text.lines().map(|line| serde_json::from_str::<Value>(line).unwrap());
    let ours = |line: &Value| {
        let target = line["target"].as_str().unwrap();
        target.starts_with("combclear_service") && target != "combclear_service::serve"
    };
    let lines: Vec<Value> = lines.filter(ours).collect();
    assert!(lines.len() > 45, "{}", lines.len());
    for level in ["INFO", "ERROR"] {
        assert!(lines.iter().any(|line| line["level"] == level), "{level}");
    }
    for line in lines {
        assert!(line["span"]["id"].as_str().is_some_and(|id| !id.is_empty()), "{line}");
    }
}

#[tokio::test]
async fn a_request_id_that_is_no_plain_word_is_replaced() {
    let bench = Bench::new().await;
    for (id, kept) in [
        ("mine-1", true),
        ("a.b_C-9", true),
        (&*"x".repeat(64), true),
        (&*"x".repeat(65), false),
        ("two words", false),
        ("status=200", false),
        ("", false),
    ] {
        let request = Request::get("/nowhere").header("x-request-id", id).body(Body::empty()).unwrap();
        let answer = bench.send(request).await;
        assert_eq!(answer.header("x-request-id") == Some(id), kept, "{id}");
        // Whatever the problem, its answer can be looked up in the log.
        answer.problem(404, "unknown-path", "/nowhere");
        assert!(!answer.header("x-request-id").unwrap().is_empty());
    }
}

/// The log of all tests. Set for one thread alone, it would miss what other threads do for a request; set later than a request
/// begins, it would not know which.
static LOG: LazyLock<Log> = LazyLock::new(|| {
    let log = Log::default();
    let written = log.clone();
    let subscriber = tracing_subscriber::fmt().json().with_writer(move || written.clone()).finish();
    tracing::subscriber::set_global_default(subscriber).unwrap();
    log
});

/// Keeps the log from now on.
pub(crate) fn keep_log() {
    LazyLock::force(&LOG);
}

/// What the lines of the log say, as far as it is wanted.
pub(crate) fn logged<T>(wanted: impl Fn(&Value) -> Option<T>) -> Vec<T> {
    let lines = String::from_utf8(LOG.0.lock().unwrap().clone()).unwrap();
    lines.lines().filter_map(|line| wanted(&serde_json::from_str(line).unwrap())).collect()
}

#[derive(Clone, Default)]
struct Log(Arc<Mutex<Vec<u8>>>);

impl Write for Log {
    fn write(&mut self, text: &[u8]) -> std::io::Result<usize> {
        self.0.lock().unwrap().write(text)
    }

    fn flush(&mut self) -> std::io::Result<()> {
        Ok(())
    }
}

#[tokio::test]
async fn a_body_of_more_than_4_mib_is_a_problem_whether_or_not_it_says_its_length() {
    let bench = Bench::new().await;
    let path = seed::path(1);
    let blank = " ".repeat(4 * MIB + 1);
    let mut declared = bench::json(Method::PUT, &path, blank.clone());
    declared.headers_mut().insert("content-length", (4 * MIB + 1).into());
    let streamed = bench::json(Method::PUT, &path, blank);
    for request in [declared, streamed] {
        let problem = bench.send(request).await.problem(413, "body-too-large", &path);
        assert_eq!(problem["detail"], "the body is larger than 4 MiB");
    }
}

/// The path under which a holding is begun.
fn begun() -> String {
    format!("/holdings/{HOLDING}")
}

#[tokio::test]
async fn a_body_of_4_mib_is_read() {
    let bench = Bench::new().await;
    let entry = seed::entries()[0].to_string();
    let padded = format!("{entry}{}", " ".repeat(4 * MIB - entry.len()));
    assert_eq!(padded.len(), 4 * MIB);
    assert_eq!(bench.send(bench::json(Method::PUT, &begun(), padded)).await.status, 201);
}

#[tokio::test]
async fn an_answer_that_takes_too_long_is_a_problem() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsHang)).await;
    tokio::time::pause();
    let begun = tokio::time::Instant::now();
    bench.get("/holdings").await.problem(503, "timeout", "/holdings");
    let taken = begun.elapsed();
    assert!((Duration::from_secs(30)..Duration::from_secs(31)).contains(&taken), "{taken:?}");
}

#[tokio::test]
async fn a_panic_is_a_problem_that_does_not_tell_what_it_said() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsPanic)).await;
    let answer = bench.get("/holdings").await;
    answer.problem(500, "internal", "/holdings");
    assert!(!answer.text().contains("secret"), "{}", answer.text());
    assert!(answer.header("x-request-id").is_some());
    bench.get("/healthz").await.good();
}

#[tokio::test]
async fn a_panic_in_an_append_is_a_problem_too() {
    let bench = Bench::over(Faulty::with(Trouble::AppendPanics)).await;
    bench.put(&begun(), &seed::entries()[0]).await.problem(500, "internal", &begun());
    bench.get("/holdings").await.good();
}

#[tokio::test]
async fn a_database_that_is_locked_is_a_problem_to_wait_for() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsFail(faulty::locked))).await;
    let (_, detail, help) = bench.get("/holdings").await.fault(503, "store-busy", "/holdings");
    assert_eq!(detail, "the journal is locked by another writer");
    assert!(help.starts_with("try again"), "{help}");
}

/// A holding whose journal waits to be looked at as a whole, and a question about it that was given up meanwhile.
async fn given_up(found: Found) -> (Bench, Arc<Gate>, String) {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::LookWaits(Arc::clone(&gate), found))).await;
    let holding: HoldingName = HOLDING.parse().unwrap();
    let draft = Draft::from_json(&seed::entries()[0].to_string(), None).unwrap();
    let first = Entry::seal(&holding, draft, "2026-01-02T10:00:00.000Z".parse().unwrap(), None);
    bench.journal.append(&holding, None, &[first], &[]).await.unwrap();
    let path = format!("/holdings/{HOLDING}/colonies");
    tokio::select! {
        answer = bench.get(&path) => panic!("it was answered: {}", answer.text()),
        () = gate.is_reached() => {}
    }
    (bench, gate, path)
}

/// What is in memory then is all there, but nobody has looked whether the journal holds: no answer rests on it.
#[tokio::test]
async fn a_first_question_that_is_given_up_leaves_nothing_that_was_not_looked_at_as_a_whole() {
    let (bench, gate, path) = given_up(Found::Lost).await;
    for _ in 0..3 {
        gate.let_through();
    }
    for _ in 0..2 {
        bench.get(&path).await.problem(500, "store-untrusted", &path);
    }
}

/// Reading a long journal may take longer than anybody waits for an answer.
#[tokio::test]
async fn a_first_question_that_is_given_up_has_not_read_the_journal_in_vain() {
    let (bench, gate, path) = given_up(Found::AllInOrder).await;
    gate.let_through();
    // Nobody is let through a second time.
    bench.get(&path).await.good();
}

#[tokio::test]
async fn a_database_that_cannot_be_reached_is_a_problem_to_wait_for() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsFail(faulty::unreachable))).await;
    let answer = bench.get("/holdings").await;
    let (_, detail, help) = answer.fault(503, "store-unreachable", "/holdings");
    assert_eq!(detail, "the database cannot be reached");
    assert!(help.contains("under the same ids"), "{help}");
    assert!(!answer.text().contains("secret"), "{}", answer.text());
}

#[tokio::test]
async fn a_database_that_fails_is_a_problem_that_does_not_tell_where_it_is() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsFail(faulty::damaged))).await;
    let answer = bench.get("/holdings").await;
    let (_, detail, help) = answer.fault(500, "store-untrusted", "/holdings");
    assert_eq!(detail, "the journal could not be read or written");
    assert!(help.contains("restore the journal from a copy"), "{help}");
    assert!(!answer.text().contains("secret"), "{}", answer.text());
}

/// The database takes its time to commit, and whoever asks meanwhile is answered from what it has.
#[tokio::test]
async fn an_entry_that_is_being_written_holds_up_no_question() {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::AppendWaits(Arc::clone(&gate)))).await;
    gate.let_through();
    seed::begin(&bench, HOLDING, &seed::entries()[0]).await;
    let path = format!("/holdings/{HOLDING}/colonies");
    bench.get(&path).await.good();
    gate.is_reached().await;
    let entry = seed::entries()[1].clone();
    let written = tokio::spawn({
        let (router, path) = (bench.router.clone(), seed::path(2));
        async move { router.oneshot(bench::json(Method::PUT, &path, entry.to_string())).await }
    });
    gate.is_reached().await;
    for _ in 0..3 {
        let answered = tokio::time::timeout(Duration::from_secs(5), bench.get(&path)).await;
        answered.expect("the writer holds it up").good();
    }
    assert!(!written.is_finished());
    gate.let_through();
    assert_eq!(written.await.unwrap().unwrap().status(), 201);
    assert_eq!(bench.entries_of(HOLDING).await, 2);
}

#[tokio::test]
async fn an_append_goes_on_when_its_client_hangs_up() {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::AppendWaits(Arc::clone(&gate)))).await;
    let request = bench::json(Method::PUT, &begun(), seed::entries()[0].to_string());
    // The request is dropped once its append reaches the gate.
    tokio::select! {
        answer = bench.router.clone().oneshot(request) => panic!("it was answered: {answer:?}"),
        () = gate.is_reached() => {}
    }
    assert_eq!(bench.entries_of(HOLDING).await, 0);
    gate.let_through();
    // Sent again it is already recorded, once the first append is let through.
    let again = bench.put(&begun(), &seed::entries()[0]).await;
    assert_eq!(again.status, 200, "{}", again.text());
    assert_eq!(bench.entries_of(HOLDING).await, 1);
}
