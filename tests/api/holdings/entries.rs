//! `GET /holdings/{holding}/entries`

use serde_json::{Value, json};

use crate::bench::Bench;
use crate::seed;

const PATH: &str = "/holdings/heathside/entries";

fn places(page: &Value) -> Vec<u64> {
    page["items"].as_array().unwrap().iter().map(|entry| entry["seq"].as_u64().unwrap()).collect()
}

/// Follows `next` to the end. Returns the places page by page.
async fn walk(bench: &Bench, from: &str) -> Vec<Vec<u64>> {
    let mut pages = Vec::new();
    let mut next = Some(from.to_owned());
    while let Some(path) = next {
        let page = bench.get(&path).await.good();
        pages.push(places(&page));
        next = page.get("next").map(|next| next.as_str().unwrap().to_owned());
        assert!(pages.len() < 20, "the pages do not end: {pages:?}");
    }
    pages
}

#[tokio::test]
async fn the_journal_can_be_read_page_by_page_to_its_end() {
    let bench = seed::bench().await;
    let all: Vec<u64> = (1..=16).collect();
    assert_eq!(walk(&bench, PATH).await, vec![all.clone()]);
    let sizes = |pages: &[Vec<u64>]| pages.iter().map(Vec::len).collect::<Vec<_>>();
    for (limit, want) in [
        (1, vec![1; 16]),
        (5, vec![5, 5, 5, 1]),
        (8, vec![8, 8]),
        (15, vec![15, 1]),
        (16, vec![16]),
        (500, vec![16]),
    ] {
        let pages = walk(&bench, &format!("{PATH}?limit={limit}")).await;
        assert_eq!(sizes(&pages), want, "limit {limit}");
        assert_eq!(pages.concat(), all, "limit {limit}");
    }
}

#[tokio::test]
async fn a_page_says_where_the_next_one_is_and_the_last_one_says_nothing() {
    let bench = seed::bench().await;
    let page = bench.get(&format!("{PATH}?after=3&limit=4")).await.good();
    assert_eq!(
        (places(&page), &page["next"]),
        (vec![4, 5, 6, 7], &json!("/holdings/heathside/entries?after=7&limit=4"))
    );
    for last in ["?after=12&limit=4", "?after=16", "?after=9007199254740991"] {
        let page = bench.get(&format!("{PATH}{last}")).await.good();
        assert!(page.get("next").is_none(), "{last}");
    }
}

#[tokio::test]
async fn entries_are_listed_as_they_are_read_one_by_one() {
    let bench = seed::bench().await;
    let page = bench.get(PATH).await.good();
    for (number, entry) in (1..).zip(page["items"].as_array().unwrap()) {
        assert_eq!(bench.get(&seed::path(number)).await.good(), *entry);
    }
}

#[tokio::test]
async fn a_hundred_entries_make_a_page_if_no_limit_is_named() {
    let bench = seed::bench().await;
    let seen = |number: u32| seed::entry(100 + number, "2026-04-01", "inspection", json!({ "colony": "M1" }));
    bench.post(PATH, &Value::Array((0..100).map(seen).collect())).await.good();
    let page = bench.get(PATH).await.good();
    assert_eq!(
        (places(&page).len(), &page["next"]),
        (100, &json!("/holdings/heathside/entries?after=100&limit=100"))
    );
}

#[tokio::test]
async fn the_next_page_of_a_holding_with_an_unusual_name_can_be_followed() {
    let bench = Bench::new().await;
    let holding = "/holdings/Heide%20%26%20S%C3%B6hne%3F";
    let path = &format!("{holding}/entries");
    let first = seed::entries();
    let answer = bench.put(holding, &first[0]).await;
    assert_eq!(answer.header("location"), Some(format!("{path}/{}", seed::id(1)).as_str()));
    bench.post(path, &json!(first[1..5])).await.good();
    assert_eq!(walk(&bench, &format!("{path}?limit=2")).await, [vec![1, 2], vec![3, 4], vec![5]]);
    assert_eq!(bench.get("/holdings").await.good()["items"][0]["holding"], "Heide & S\u{f6}hne?");
}

#[tokio::test]
async fn a_limit_or_a_place_that_is_out_of_range_is_a_problem() {
    let bench = seed::bench().await;
    for limit in ["0", "501", "-1", "+5", "1.5", "ten", "", "99999999999999999999"] {
        let (parameter, detail, help) = bench
            .get(&format!("{PATH}?limit={}", limit.replace('+', "%2B")))
            .await
            .fault(400, "bad-parameter", PATH);
        assert_eq!(parameter, "limit");
        assert_eq!(detail, format!("`{limit}` is not a whole number from 1 to 500"));
        assert_eq!(help, "correct `limit`, or leave it out");
    }
    for after in ["-1", "x", "9007199254740992", ""] {
        let (parameter, detail, _) =
            bench.get(&format!("{PATH}?after={after}")).await.fault(400, "bad-parameter", PATH);
        assert_eq!(parameter, "after");
        assert_eq!(detail, format!("`{after}` is not a place in a journal: a whole number, 0 or more"));
    }
    let help = bench.get(&format!("{PATH}?page=2")).await.fault(400, "bad-parameter", PATH).2;
    assert_eq!(help, "this path takes `after` or `limit`");
}
