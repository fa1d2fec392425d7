//! Which answers may be kept, and when a kept one still holds.
//!
//! Source: RFC 9110, sections 8.8 and 13.1.2 (`ETag`, `If-None-Match`); RFC 9111, section 5.2 (`Cache-Control`).

use std::sync::Arc;
use std::sync::atomic::{AtomicIsize, Ordering};

use axum::body::{Body, to_bytes};
use axum::http::Request;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_service::{App, Clock, router};
use combclear_store::Holdings;
use serde_json::{Value, json};
use tower::ServiceExt;

use crate::bench::{Answer, Bench, laws, leaflets};
use crate::schema::Document;
use crate::seed::{self, HOLDING};

const ANSWER: &str = "/holdings/heathside/colonies/M2/supering";

async fn asking(bench: &Bench, path: &str, headers: &[(&str, &str)]) -> Answer {
    let mut request = Request::get(path);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    bench.send(request.body(Body::empty()).unwrap()).await
}

fn tag(answer: &Answer) -> String {
    assert_eq!(answer.status, 200, "{}", answer.text());
    answer.header("etag").unwrap().to_owned()
}

async fn still_holds(bench: &Bench, path: &str, tag: &str) -> bool {
    let answer = asking(bench, path, &[("if-none-match", tag)]).await;
    assert!([200, 304].contains(&answer.status), "{}", answer.text());
    answer.status == 304
}

#[tokio::test]
async fn every_answer_to_a_question_has_a_tag_by_which_it_is_known_again_and_must_be_asked_about() {
    let bench = seed::bench().await;
    let document = Document::of_the_service();
    let mut asked = 0;
    for (path, method, _) in document.operations().filter(|(_, method, _)| *method == "get") {
        let path = [
            ("{holding}", HOLDING),
            ("{colony}", "M2"),
            ("{apiary}", "orchard"),
            ("{lot}", "strips-1"),
            ("{id}", if path.starts_with("/leaflets") { "demo-strip" } else { "1" }),
            ("{jurisdiction}", "gb"),
        ]
        .iter()
        .fold(path.to_owned(), |path, (name, value)| path.replace(name, value));
        // A pack says when it was made; a document needs one that is attached (see `documents.rs`).
        if path.ends_with("/pack") || path.contains("{document}") {
            continue;
        }
        let answer = bench.get(&path).await;
        assert_eq!(answer.header("cache-control"), Some("private, no-cache"), "{method} {path}");
        let tag = tag(&answer);
        let again = asking(&bench, &path, &[("if-none-match", &tag)]).await;
        assert_eq!(
            (again.status, again.body.len(), again.header("etag")),
            (304, 0, Some(tag.as_str())),
            "{path}"
        );
        assert_eq!(again.header("cache-control"), Some("private, no-cache"), "{path}");
        assert!(!still_holds(&bench, &path, "W/\"0\"").await, "{path}");
        asked += 1;
    }
    assert!(asked >= 20, "only {asked}");
}

#[tokio::test]
async fn an_answer_holds_until_an_entry_is_recorded() {
    let bench = seed::bench().await;
    let before = bench.get(ANSWER).await;
    assert_eq!(before.good()["answer"], "yes");
    let kept = tag(&before);
    assert!(still_holds(&bench, ANSWER, &kept).await);
    let given = json!({
        "given": [{ "lot": "strips-1", "each": 2, "colonies": ["M2"] }], "given_by": "A. Keeper", "withdrawal_days": 0,
    });
    let entry = seed::entry(40, "2026-04-11", "administration", given);
    assert_eq!(bench.put(&seed::path(40), &entry).await.status, 201);
    assert!(!still_holds(&bench, ANSWER, &kept).await);
    assert_eq!(asking(&bench, ANSWER, &[("if-none-match", &kept)]).await.good()["answer"], "no");
}

#[tokio::test]
async fn an_answer_for_today_does_not_hold_tomorrow() {
    let bench = seed::bench().await;
    let kept = tag(&bench.get(ANSWER).await);
    for (day, holds) in [("2026-04-11", true), ("2026-04-12", false), ("2026-04-10", false)] {
        bench.clock.move_to(day);
        assert_eq!(still_holds(&bench, ANSWER, &kept).await, holds, "{day}");
    }
}

#[tokio::test]
async fn an_answer_does_not_hold_under_another_leaflet() {
    let strip = include_str!("data/demo-strip.toml");
    let tag_with = async |strip: &str| {
        let leaflets = Leaflets::load([("gb/demo-strip.toml", strip)]).unwrap();
        let bench = Bench::with(Arc::new(leaflets)).await;
        seed::record(&bench).await;
        tag(&bench.get(ANSWER).await)
    };
    let stays = strip.replace("days = 42", "days = 43");
    assert_ne!(strip, stays);
    assert_eq!(tag_with(strip).await, tag_with(strip).await);
    assert_ne!(tag_with(strip).await, tag_with(&stays).await);
}

#[tokio::test]
async fn a_tag_stands_for_one_question_in_one_form() {
    let bench = seed::bench().await;
    let kept = tag(&bench.get("/holdings/heathside/due").await);
    for other in ["/holdings/heathside/due?from=2026-04-11", "/holdings/heathside/due?format=calendar"] {
        assert!(!still_holds(&bench, other, &kept).await, "{other}");
    }
    let calendar = [("accept", "text/calendar"), ("if-none-match", kept.as_str())];
    assert_eq!(asking(&bench, "/holdings/heathside/due", &calendar).await.status, 200);
    let several = format!("\"other\", {kept}");
    assert!(still_holds(&bench, "/holdings/heathside/due", &several).await);
    // Whatever the client has, as long as there is an answer.
    assert!(still_holds(&bench, "/holdings/heathside/due", "*").await);
    let unknown = "/holdings/heathside/colonies/M99/supering";
    asking(&bench, unknown, &[("if-none-match", "*")]).await.problem(404, "unknown-colony", unknown);
}

#[tokio::test]
async fn what_is_written_what_fails_and_whether_it_runs_is_not_kept() {
    let bench = seed::bench().await;
    let entry = seed::entry(40, "2026-04-11", "inspection", json!({ "colony": "M1", "brood": "present" }));
    let written = bench.put(&seed::path(40), &entry).await;
    assert_eq!((written.status, written.header("cache-control")), (201, Some("no-store")));
    for path in
        ["/holdings/nowhere/stock", "/nowhere", "/healthz", "/readyz", "/holdings/heathside/register/pack"]
    {
        let answer = bench.get(path).await;
        assert_eq!(
            (answer.header("cache-control"), answer.header("etag")),
            (Some("no-store"), None),
            "{path}"
        );
    }
}

#[tokio::test]
async fn an_answer_is_compressed_for_a_client_that_says_it_can_read_that() {
    let bench = seed::bench().await;
    let plain = bench.get(ANSWER).await;
    let compressed = asking(&bench, ANSWER, &[("accept-encoding", "gzip")]).await;
    assert_eq!(
        (plain.header("content-encoding"), compressed.header("content-encoding")),
        (None, Some("gzip"))
    );
    assert!(compressed.body.starts_with(&[0x1f, 0x8b]), "the mark of RFC 1952");
    assert!(compressed.body.len() * 2 < plain.body.len(), "{} {}", compressed.body.len(), plain.body.len());
    assert!(compressed.header("vary").unwrap().contains("accept-encoding"));
    // The tag is weak, so it stands for both.
    assert_eq!(tag(&plain), tag(&compressed));
    // The tag of an entry stands for the bytes of its hash.
    let entry = asking(&bench, &seed::path(1), &[("accept-encoding", "gzip")]).await;
    assert_eq!(entry.header("content-encoding"), None);
}

/// A clock that says the next day once it was looked at so often.
struct Midnight {
    looks_left: AtomicIsize,
}

impl Clock for Midnight {
    fn now(&self) -> Instant {
        "2026-04-11T22:59:59.999Z".parse().unwrap()
    }

    fn today(&self) -> Day {
        let is_over = self.looks_left.fetch_sub(1, Ordering::SeqCst) <= 0;
        if is_over { "2026-04-12" } else { "2026-04-11" }.parse().unwrap()
    }
}

/// A yes of tomorrow that is given again for today would be a wrong yes.
#[tokio::test]
async fn an_answer_that_midnight_falls_into_is_not_given_again_for_another_day() {
    let bench = seed::bench().await;
    for looks in 1..5 {
        let clock = Arc::new(Midnight { looks_left: AtomicIsize::new(looks) });
        let holdings = Arc::new(Holdings::new(Arc::clone(&bench.journal)));
        let router = router(App::new(holdings, leaflets(), laws(), Arc::clone(&clock) as _));
        let mut days = Vec::new();
        // Midnight falls into the first. For the second, the clock was set back to the evening.
        for _ in 0..2 {
            let request = Request::get(ANSWER).body(Body::empty()).unwrap();
            let answer = router.clone().oneshot(request).await.unwrap();
            let whole = to_bytes(answer.into_body(), usize::MAX).await.unwrap();
            let answer: Value = serde_json::from_slice(&whole).unwrap();
            days.push(answer["on"].as_str().unwrap().to_owned());
            clock.looks_left.store(isize::MAX, Ordering::SeqCst);
        }
        assert_eq!(days[1], "2026-04-11", "midnight after {looks} looks: {days:?}");
    }
}

#[tokio::test]
async fn a_question_for_the_head_alone_has_the_tag_of_the_whole_answer() {
    let bench = seed::bench().await;
    let whole = tag(&bench.get(ANSWER).await);
    let head = bench.send(Request::head(ANSWER).body(Body::empty()).unwrap()).await;
    assert_eq!((head.status, head.header("etag")), (200, Some(&*whole)));
    assert!(head.body.is_empty());
    assert!(!bench.get(ANSWER).await.body.is_empty(), "what is kept is the whole answer");
}
