//! `/holdings/{holding}/colonies/{colony}/supering`

use serde_json::{Value, json};

use crate::seed;

const PATH: &str = "/holdings/heathside/colonies";

#[tokio::test]
async fn a_colony_with_strips_in_it_may_not_be_supered_and_the_report_says_why() {
    let bench = seed::bench().await;
    insta::assert_json_snapshot!(bench.get(&format!("{PATH}/M1/supering")).await.good());
}

#[tokio::test]
async fn a_colony_whose_strips_are_out_may_be_supered() {
    let bench = seed::bench().await;
    insta::assert_json_snapshot!(bench.get(&format!("{PATH}/M2/supering")).await.good());
}

#[tokio::test]
async fn a_bought_colony_with_an_unknown_past_is_not_known_and_the_report_says_what_is_missing() {
    let bench = seed::bench().await;
    let report = bench.get(&format!("{PATH}/M3/supering")).await.good();
    assert_eq!(report["answer"], "unknown");
    assert_eq!(report["missing"][0]["supplied_by"], "colony_established");
    assert_eq!(report["first_free_day"], Value::Null);
}

#[tokio::test]
async fn the_answer_is_that_of_the_day_asked_about_and_of_today_if_none_is_named() {
    let bench = seed::bench().await;
    let answer = async |query: &str| bench.get(&format!("{PATH}/M2/supering{query}")).await.good();
    assert_eq!(answer("").await, answer("?on=2026-04-11").await);
    for (on, want) in [
        ("2026-01-04", "unknown"),
        ("2026-01-05", "yes"),
        ("2026-02-19", "yes"),
        ("2026-02-20", "no"),
        ("2026-04-05", "no"),
        ("2026-04-06", "yes"),
        ("2030-01-01", "yes"),
    ] {
        let report = answer(&format!("?on={on}")).await;
        assert_eq!((&report["on"], &report["answer"]), (&json!(on), &json!(want)), "{report}");
    }
}

#[tokio::test]
async fn a_new_entry_shows_in_the_next_answer() {
    let bench = seed::bench().await;
    let path = format!("{PATH}/M1/supering");
    assert_eq!(bench.get(&path).await.good()["answer"], "no");
    let out = seed::entry(
        20,
        "2026-04-11",
        "removal",
        json!({ "administration": seed::id(11), "colonies": ["M1"] }),
    );
    bench.put(&seed::path(20), &out).await.good();
    let report = bench.get(&path).await.good();
    assert_eq!((&report["answer"], &report["first_free_day"]), (&json!("yes"), &json!("2026-04-11")));
    // It came out too early. That is on record and does not change the answer.
    let early =
        report["grounds"].as_array().unwrap().iter().find(|ground| ground["about"] == "stay_min").unwrap();
    assert_eq!((&early["outcome"], &early["decides"]), (&json!("broken"), &json!(false)));
}

#[tokio::test]
async fn the_same_question_is_answered_with_the_same_bytes() {
    let bench = seed::bench().await;
    let again = seed::bench().await;
    let path = format!("{PATH}/M1/supering");
    assert_eq!(bench.get(&path).await.body, again.get(&path).await.body);
}
