//! `/metrics`: what the operator sees from outside.

use std::sync::Arc;

use axum::body::Body;
use axum::http::Request;
use combclear_domain::journal::Hash;
use tower::ServiceExt;

use crate::bench::{self, Bench};
use crate::faulty::{self, Faulty, Gate, Trouble};
use crate::seed::{self, HOLDING};

async fn metrics(bench: &Bench) -> Vec<String> {
    let answer = bench.get("/metrics").await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    let form = "application/openmetrics-text; version=1.0.0; charset=utf-8";
    assert_eq!(
        (answer.header("content-type"), answer.header("cache-control")),
        (Some(form), Some("no-store"))
    );
    answer.text().lines().map(str::to_owned).collect()
}

#[track_caller]
fn has(metrics: &[String], line: &str) {
    assert!(metrics.iter().any(|found| found == line), "no {line} in {metrics:#?}");
}

#[tokio::test]
async fn requests_are_counted_by_method_route_and_class_of_status() {
    let bench = seed::bench().await;
    for path in [
        "/holdings/heathside/colonies/M1",
        "/holdings/heathside/colonies/M2",
        "/holdings/heathside/colonies/M9",
        "/nowhere/at/all",
    ] {
        bench.get(path).await;
    }
    let request = Request::builder().method("FROB").uri("/healthz").body(Body::empty()).unwrap();
    assert_eq!(bench.router.clone().oneshot(request).await.unwrap().status(), 405);
    let found = metrics(&bench).await;
    let requests = |method: &str, path: &str, status: &str, times: u32| {
        has(
            &found,
            &format!(
                r#"combclear_requests_total{{method="{method}",path="{path}",status="{status}"}} {times}"#
            ),
        );
    };
    requests("GET", "/holdings/{holding}/colonies/{colony}", "2xx", 2);
    requests("GET", "/holdings/{holding}/colonies/{colony}", "4xx", 1);
    requests("GET", "(none)", "4xx", 1);
    requests("PUT", "/holdings/{holding}", "2xx", 1);
    requests("other", "/healthz", "4xx", 1);
    let timed = r#"combclear_request_duration_seconds_count{method="GET",path="/holdings/{holding}/colonies/{colony}"} 3"#;
    has(&found, timed);
}

#[tokio::test]
async fn what_is_recorded_is_counted_and_no_holding_is_named() {
    let bench = seed::bench().await;
    // Sent again, it is not recorded again.
    bench.put(&seed::path(13), &seed::entries()[12]).await.good();
    let found = metrics(&bench).await;
    has(&found, "combclear_entries_appended_total 16");
    has(&found, "combclear_commit_entries_count 2");
    has(&found, "combclear_commit_entries_sum 16.0");
    let label: String = Hash::of_content(HOLDING.as_bytes()).to_string().chars().take(16).collect();
    has(&found, &format!(r#"combclear_journal_head{{holding="{label}"}} 16"#));
    has(&found, "combclear_folded_holdings 1");
    has(&found, "combclear_folded_entries 16");
    has(&found, "combclear_reports_in_progress 0");
    has(&found, "combclear_bodies_bytes 0");
    assert_eq!(found.last().map(String::as_str), Some("# EOF"));
    assert!(!found.join("\n").contains(HOLDING), "{found:#?}");
}

#[tokio::test]
async fn who_does_not_wait_is_counted_and_what_was_recorded_for_it() {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::AppendWaits(Arc::clone(&gate)))).await;
    let path = format!("/holdings/{HOLDING}");
    let request = bench::json(axum::http::Method::PUT, &path, seed::entries()[0].to_string());
    tokio::select! {
        answer = bench.router.clone().oneshot(request) => panic!("it was answered: {answer:?}"),
        () = gate.is_reached() => {}
    }
    let found = metrics(&bench).await;
    has(&found, r#"combclear_requests_total{method="PUT",path="/holdings/{holding}",status="gone"} 1"#);
    gate.let_through();
    // It waits for the append.
    assert_eq!(bench.put(&path, &seed::entries()[0]).await.status, 200);
    has(&metrics(&bench).await, "combclear_entries_appended_total 1");
}

#[tokio::test]
async fn the_metrics_are_there_when_the_database_is_not() {
    let bench = Bench::over(Faulty::with(Trouble::HoldingsFail(faulty::locked))).await;
    bench.get("/holdings").await.problem(503, "store-busy", "/holdings");
    let found = metrics(&bench).await;
    has(&found, r#"combclear_requests_total{method="GET",path="/holdings",status="5xx"} 1"#);
    assert!(!found.iter().any(|line| line.starts_with("combclear_journal_head{")), "{found:#?}");
}
