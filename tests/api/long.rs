//! Requests that are much longer than any person writes: answered at once, and not sent back.

use std::time::{Duration, Instant};

use axum::body::Body;
use axum::http::Request;
use serde_json::{Value, json};

use crate::seed;

/// Long enough for an answer that grows with the square of it to take minutes.
const LONG: usize = 3_900_000;
/// An answer that repeats the request would be larger.
const SHORT: usize = 16 * 1024;
/// In a debug build, with other tests beside it.
const SOON: Duration = Duration::from_secs(20);

#[tokio::test]
async fn a_text_of_megabytes_in_any_field_is_refused_soon_and_not_repeated() {
    let bench = seed::bench().await;
    let long = "k".repeat(LONG);
    let good =
        json!({ "on": "2026-04-10", "recorded_by": "K", "kind": "inspection", "body": { "colony": "A1" } });
    let with = |pointer: &str, value: Value| {
        let mut entry = good.clone();
        *entry.pointer_mut(pointer).unwrap() = value;
        entry
    };
    let cases = [
        ("the kind", with("/kind", json!(long))),
        ("the day", with("/on", json!(long))),
        ("the person", with("/recorded_by", json!(long))),
        ("a name", with("/body/colony", json!(long))),
        ("a word", with("/body", json!({ "colony": "A1", "brood": long }))),
        ("the name of a field", with("/body", json!({ "colony": "A1", long.as_str(): 1 }))),
        ("a number", with("/body", json!({ "colony": "A1", "seams": long }))),
    ];
    for (name, entry) in cases {
        let begun = Instant::now();
        let request = Request::put(seed::path(77)).header("content-type", "application/json");
        let answer = bench.send(request.body(Body::from(entry.to_string())).unwrap()).await;
        assert_eq!(answer.status, 422, "{name}");
        assert!(answer.body.len() < SHORT, "{name}: {} bytes", answer.body.len());
        assert!(begun.elapsed() < SOON, "{name}: {:?}", begun.elapsed());
        assert!(answer.text().contains('\u{2026}'), "{name}: it does not say that it was cut");
    }
}

#[tokio::test]
async fn a_long_path_or_parameter_is_refused_and_not_repeated() {
    let bench = seed::bench().await;
    let long = "k".repeat(60_000);
    for path in [
        format!("/holdings/{long}/supering"),
        format!("/holdings/heathside/colonies/{long}/supering"),
        format!("/holdings/heathside/colonies/{long}/options"),
        format!("/holdings/heathside/supering?apiary={long}"),
        format!("/leaflets/{long}"),
        format!("/leaflets?active={long}"),
        format!("/leaflets?unit={long}"),
        format!("/laws/{long}"),
        format!("/{long}"),
    ] {
        let answer = bench.get(&path).await;
        assert!((400..500).contains(&answer.status), "{}", answer.status);
        assert!(
            answer.body.len() < SHORT,
            "{}: {} bytes",
            path.chars().take(30).collect::<String>(),
            answer.body.len()
        );
    }
}
