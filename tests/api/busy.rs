//! Reports over a whole holding that take long: who else is answered meanwhile, and how many are worked out at a time.

use std::sync::Arc;
use std::time::{Duration, Instant};

use axum::body::Body;
use axum::http::Request;
use combclear_domain::basics::words::MediaType;
use combclear_service::{App, Limits};
use combclear_testkit::documents::sample;
use tokio::task::JoinHandle;

use crate::bench::{Answer, Bench};
use crate::faulty::{Faulty, Slow, Trouble};
use crate::seed;

const COLONY: &str = "/holdings/heathside/colonies/M1/supering";

/// Long enough that a request which waits for it is noticed.
const LONG: Duration = Duration::from_millis(1_500);
/// In a debug build, with other tests beside it.
const AT_ONCE: Duration = Duration::from_millis(700);

/// A holding with this many documents, whose journal is still quick.
async fn with_documents(bench: Bench, documents: u32) -> Arc<Bench> {
    seed::record(&bench).await;
    for number in 0..documents {
        let path = format!("/holdings/heathside/documents/{}", seed::id(100 + number));
        let bytes = sample(MediaType::Pdf, &format!("invoice {number}"));
        let request = Request::put(format!("{path}?lot=strips-1&on=2026-04-10&recorded_by=A.%20Keeper"));
        assert_eq!(bench.send(request.body(Body::from(bytes)).unwrap()).await.status, 201);
    }
    Arc::new(bench)
}

/// Asks from a task of its own, as a server does.
fn ask(bench: &Arc<Bench>, path: &'static str) -> JoinHandle<(Answer, Duration)> {
    let (bench, begun) = (Arc::clone(bench), Instant::now());
    tokio::spawn(async move { (bench.get(path).await, begun.elapsed()) })
}

async fn at_once(bench: &Arc<Bench>) {
    for path in ["/healthz", COLONY] {
        let (answer, taken) = ask(bench, path).await.unwrap();
        answer.good();
        assert!(taken < AT_ONCE, "{path}: {taken:?}");
    }
}

/// Waits until this many reads have begun. Not by the clock of the runtime, which stands still while all its threads are busy.
fn begun(slow: &Slow, reads: u64) {
    while slow.reads() < reads {
        std::thread::sleep(Duration::from_millis(5));
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn while_long_reports_are_worked_out_others_are_answered_at_once() {
    let slow = Arc::new(Slow::default());
    let bench = Bench::over(Faulty::with(Trouble::Slow(Arc::clone(&slow)))).await;
    let bench = with_documents(bench, 1).await;
    for path in [
        "/holdings/heathside/verification",
        "/holdings/heathside/documents",
        "/holdings/heathside/register/gaps",
        "/holdings/heathside/register/pack",
    ] {
        slow.down(LONG);
        let reports: Vec<_> = (0..4).map(|_| ask(&bench, path)).collect();
        begun(&slow, 1);
        at_once(&bench).await;
        for report in reports {
            assert_eq!(report.await.unwrap().0.status, 200, "{path}");
        }
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn while_a_holding_is_read_for_the_first_time_others_are_answered_at_once() {
    let slow = Arc::new(Slow::default());
    let bench = Bench::over(Faulty::with(Trouble::Slow(Arc::clone(&slow)))).await;
    let first = &seed::entries()[0];
    let holdings = ["/holdings/a/colonies", "/holdings/b/colonies", "/holdings/c/colonies"];
    for holding in ["a", "b", "c"] {
        seed::begin(&bench, holding, first).await;
    }
    // Another process, to which none of them is known yet.
    let bench = Arc::new(bench.started_again());
    slow.down(LONG);
    let asked: Vec<_> = holdings.into_iter().map(|path| ask(&bench, path)).collect();
    begun(&slow, 2);
    let (answer, taken) = ask(&bench, "/healthz").await.unwrap();
    answer.good();
    assert!(taken < AT_ONCE, "{taken:?}");
    for answer in asked {
        answer.await.unwrap().0.good();
    }
}

/// One report at a time, and little patience.
fn narrow(app: App) -> App {
    app.within(Limits { reports: 1, wait: Duration::from_millis(200), ..Limits::default() })
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn who_finds_no_room_for_a_report_is_told_when_to_come_again() {
    let slow = Arc::new(Slow::default());
    let bench = Bench::over_and_made(Faulty::with(Trouble::Slow(Arc::clone(&slow))), narrow).await;
    let bench = with_documents(bench, 0).await;
    slow.stop();
    let first = ask(&bench, "/holdings/heathside/verification");
    begun(&slow, 1);
    for path in [
        "/holdings/heathside/verification",
        "/holdings/heathside/documents",
        "/holdings/heathside/colonies",
        "/holdings/heathside/apiaries",
        "/holdings/heathside/due",
        "/holdings/heathside/stock",
        "/holdings/heathside/medicines",
        "/holdings/heathside/retention",
        "/holdings/heathside/register",
        "/holdings/heathside/register/gaps",
        "/holdings/heathside/register/pack",
        "/holdings/heathside/register/exchange/treatments",
        "/holdings/heathside/register/exchange/transactions",
    ] {
        let (answer, _) = ask(&bench, path).await.unwrap();
        answer.problem(503, "service-busy", path);
        assert_eq!(answer.header("retry-after"), Some("2"));
    }
    at_once(&bench).await;
    slow.down(Duration::ZERO);
    assert_eq!(first.await.unwrap().0.status, 200);
    let (answer, _) = ask(&bench, "/holdings/heathside/due").await.unwrap();
    answer.good();
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_report_that_nobody_waits_for_any_more_is_given_up_and_makes_room() {
    let slow = Arc::new(Slow::default());
    let bench = Bench::over_and_made(Faulty::with(Trouble::Slow(Arc::clone(&slow))), narrow).await;
    let bench = with_documents(bench, 40).await;
    slow.down(Duration::from_millis(100));
    // All of it would take four seconds.
    let abandoned = ask(&bench, "/holdings/heathside/documents");
    begun(&slow, 2);
    abandoned.abort();
    let (answer, _) = ask(&bench, "/holdings/heathside/due").await.unwrap();
    answer.good();
    assert!(slow.reads() < 6, "{} reads", slow.reads());
}

#[tokio::test]
async fn the_gaps_read_the_content_of_a_document_once_and_the_pack_reads_it_to_send_it() {
    let slow = Arc::new(Slow::default());
    let bench = Bench::over(Faulty::with(Trouble::Slow(Arc::clone(&slow)))).await;
    let bench = with_documents(bench, 3).await;
    let mut read = Vec::new();
    for path in [
        "/holdings/heathside/register/gaps",
        "/holdings/heathside/register/gaps",
        "/holdings/heathside/register/pack",
        "/holdings/heathside/register/pack",
        // Which is what this one is asked for.
        "/holdings/heathside/documents",
    ] {
        assert_eq!(bench.get(path).await.status, 200, "{path}");
        read.push(slow.contents());
    }
    assert_eq!(read, [3, 3, 6, 9, 12]);
}
