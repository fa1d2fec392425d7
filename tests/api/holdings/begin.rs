//! `PUT /holdings/{holding}`

use serde_json::{Value, json};

use crate::bench::Bench;
use crate::seed::{HOLDING, entries, entry, id, path};

const PATH: &str = "/holdings/heathside";

fn first() -> Value {
    entries().remove(0)
}

#[tokio::test]
async fn a_holding_is_begun_with_its_first_entry() {
    let bench = Bench::new().await;
    let answer = bench.put(PATH, &first()).await;
    let stored = answer.good();
    assert_eq!(answer.status, 201);
    assert_eq!(answer.header("location"), Some(path(1).as_str()));
    assert_eq!(answer.header("etag"), Some(format!("{}", stored["hash"]).as_str()));
    let want = json!({
        "seq": 1, "id": id(1), "on": "2026-01-02", "recorded_at": "2026-04-11T08:15:30.123Z",
        "recorded_by": "A. Keeper", "kind": "holding_details", "body": { "keeper": "A. Keeper", "jurisdiction": "gb" },
        "prev": "0".repeat(64), "hash": stored["hash"],
    });
    assert_eq!(stored, want);
    assert_eq!(bench.get(&path(1)).await.good(), stored);
    assert_eq!(bench.entries_of(HOLDING).await, 1);
}

#[tokio::test]
async fn the_same_first_entry_sent_again_begins_nothing_more() {
    let bench = Bench::new().await;
    let begun = bench.put(PATH, &first()).await;
    bench.clock.move_on(5);
    let again = bench.put(PATH, &first()).await;
    assert_eq!((again.status, again.text()), (200, begun.text()));
    assert_eq!(again.header("location"), begun.header("location"));
    // Also once others have been recorded.
    bench.post("/holdings/heathside/entries", &json!(entries()[1..4])).await.good();
    assert_eq!(bench.put(PATH, &first()).await.text(), begun.text());
    assert_eq!(bench.entries_of(HOLDING).await, 4);
}

/// Another id, and the same id with other content.
#[tokio::test]
async fn another_first_entry_of_a_holding_that_exists_is_a_problem_and_changes_nothing() {
    let bench = Bench::new().await;
    bench.put(PATH, &first()).await.good();
    let details = json!({ "keeper": "B. Keeper", "jurisdiction": "gb" });
    for number in [1, 2] {
        let other = entry(number, "2026-01-02", "holding_details", details.clone());
        let problem = bench.put(PATH, &other).await.problem(409, "holding-exists", PATH);
        assert_eq!(problem["detail"], "the holding `heathside` exists already; nothing was recorded");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 1);
    assert_eq!(bench.get(&path(1)).await.good()["body"]["keeper"], "A. Keeper");
}

#[tokio::test]
async fn a_first_entry_of_another_kind_is_a_problem_that_points_at_its_kind() {
    let bench = Bench::new().await;
    for number in 1..entries().len() {
        let other = &entries()[number];
        let (pointer, detail, help) = bench.put(PATH, other).await.fault(422, "unreadable-entry", PATH);
        assert_eq!(pointer, "/kind", "{other}");
        let wanted =
            "the first entry of a holding is of kind holding_details: it names the keeper and the country";
        assert_eq!(detail, wanted);
        assert_eq!(help, "send an entry of kind holding_details with its id");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 0);
    assert_eq!(bench.get("/holdings").await.good(), json!({ "items": [] }));
}

/// The path names no id, so the entry must.
#[tokio::test]
async fn a_first_entry_without_an_id_is_a_problem() {
    let bench = Bench::new().await;
    let mut first = first();
    first.as_object_mut().unwrap().remove("id");
    let (pointer, detail, _) = bench.put(PATH, &first).await.fault(422, "unreadable-entry", PATH);
    assert_eq!((pointer.as_str(), detail.as_str()), ("/id", "the entry has no id"));
    assert_eq!(bench.entries_of(HOLDING).await, 0);
}

#[tokio::test]
async fn a_holding_in_a_country_that_there_is_not_is_not_begun() {
    let bench = Bench::new().await;
    for (country, help) in [
        ("uk", "did you mean `gb`?"),
        ("Great Britain", "did you mean `gb`?"),
        ("br", "write gb, ni, ch, us, eu or"),
    ] {
        let details = json!({ "keeper": "A. Keeper", "jurisdiction": country });
        let first = entry(1, "2026-01-02", "holding_details", details);
        let (pointer, detail, said) = bench.put(PATH, &first).await.fault(422, "refused-entry", PATH);
        assert_eq!(pointer, "/body/jurisdiction", "{country}");
        let wanted = format!("no leaflets and no law are known for the jurisdiction `{country}`");
        assert_eq!(detail, wanted);
        assert!(said.starts_with(help), "{said}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 0);
}

#[tokio::test]
async fn a_holding_is_named_as_names_are() {
    let bench = Bench::new().await;
    let path = "/holdings/%20heathside";
    let (parameter, ..) = bench.put(path, &first()).await.fault(400, "bad-parameter", path);
    assert_eq!(parameter, "holding");
}
