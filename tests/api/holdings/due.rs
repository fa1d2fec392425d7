//! `/holdings/{holding}/due`

use axum::body::Body;
use axum::http::Request;
use serde_json::Value;

use crate::bench::{Answer, Bench, TODAY};
use crate::seed;

const DUE: &str = "/holdings/heathside/due";

async fn accepting(bench: &Bench, path: &str, accept: &str) -> Answer {
    bench.send(Request::get(path).header("accept", accept).body(Body::empty()).unwrap()).await
}

#[tokio::test]
async fn what_is_due_is_answered_visit_by_visit() {
    insta::assert_json_snapshot!(seed::bench().await.get(DUE).await.good());
}

#[tokio::test]
async fn without_days_it_is_sixty_from_today() {
    let bench = seed::bench().await;
    let days = async |query: &str| {
        let answer = bench.get(&format!("{DUE}{query}")).await.good();
        [answer["from"].clone(), answer["to"].clone()]
    };
    assert_eq!(days("").await, [TODAY, "2026-06-09"]);
    assert_eq!(days("?from=2026-05-01").await, ["2026-05-01", "2026-06-29"]);
    assert_eq!(days("?to=2026-04-11").await, [TODAY, "2026-04-11"]);
}

#[tokio::test]
async fn a_calendar_is_sent_to_whoever_accepts_one_or_asks_for_it_by_name() {
    let bench = seed::bench().await;
    let json = bench.get(DUE).await;
    assert_eq!(
        (json.header("content-type"), json.header("vary")),
        (Some("application/json"), Some("accept"))
    );
    let calendar = bench.get(&format!("{DUE}?format=calendar")).await;
    assert_eq!(calendar.status, 200);
    assert_eq!(calendar.header("content-type"), Some("text/calendar; charset=utf-8"));
    let items = json.json();
    let items =
        items["visits"].as_array().unwrap().iter().map(|visit| visit["items"].as_array().unwrap().len());
    assert_eq!(calendar.text().matches("BEGIN:VEVENT\r\n").count(), items.sum::<usize>());
    for (accept, is_calendar) in [
        ("text/calendar", true),
        ("TEXT/Calendar", true),
        ("text/*", true),
        ("text/calendar;q=0.5, application/json;q=0.4", true),
        ("text/calendar, */*;q=0.1", true),
        ("text/calendar; q=0.2, application/json", false),
        ("text/calendar;q=0, */*", false),
        ("*/*", false),
        ("application/json", false),
        ("text/calendar, application/json", false),
        ("image/png", false),
    ] {
        let answer = accepting(&bench, DUE, accept).await;
        let sent = answer.header("content-type").unwrap().starts_with("text/calendar");
        assert_eq!((answer.status, sent), (200, is_calendar), "{accept}");
    }
    // `format` takes precedence over `Accept`.
    let json = accepting(&bench, &format!("{DUE}?format=json"), "text/calendar").await;
    assert_eq!(json.header("content-type"), Some("application/json"));
}

#[tokio::test]
async fn one_apiary_can_be_asked_about() {
    let bench = seed::bench().await;
    let answer = bench.get(&format!("{DUE}?apiary=orchard")).await.good();
    let visits = answer["visits"].as_array().unwrap();
    assert!(!visits.is_empty() && visits.iter().all(|visit| visit["apiary"] == "orchard"), "{answer}");
    let (parameter, detail, help) =
        bench.get(&format!("{DUE}?apiary=orchid")).await.fault(404, "unknown-apiary", DUE);
    assert_eq!(parameter, "apiary");
    assert_eq!(detail, "the holding `heathside` has no apiary `orchid`");
    assert_eq!(help, "did you mean `orchard`?");
}

#[tokio::test]
async fn what_cannot_be_asked_is_a_problem() {
    let bench = seed::bench().await;
    for (query, parameter) in [
        ("from=2026-05-02&to=2026-05-01", "to"),
        ("format=pdf", "format"),
        ("form=json", "form"),
        ("from=x", "from"),
    ] {
        let fault = bench.get(&format!("{DUE}?{query}")).await.fault(400, "bad-parameter", DUE);
        assert_eq!(fault.0, parameter, "{query}: {fault:?}");
    }
}

#[tokio::test]
async fn the_sequence_rises_when_an_entry_bears_on_an_item() {
    let bench = seed::bench().await;
    let of_colony = |answer: &Value| {
        let items =
            answer["visits"].as_array().unwrap().iter().flat_map(|visit| visit["items"].as_array().unwrap());
        let item =
            items.clone().find(|item| item["kind"] == "take_out" && item["colonies"][0] == "M1").cloned();
        item.unwrap_or_else(|| panic!("{answer}"))
    };
    let before = of_colony(&bench.get(DUE).await.good());
    let seen = seed::entry(90, TODAY, "inspection", serde_json::json!({ "colony": "M1", "brood": "absent" }));
    bench.put(&seed::path(90), &seen).await.good();
    let after = of_colony(&bench.get(DUE).await.good());
    assert_eq!((&before["key"], &before["uid"]), (&after["key"], &after["uid"]));
    assert!(before["sequence"].as_u64() < after["sequence"].as_u64(), "{before} {after}");
}
