//! What was written down of a colony.

use serde_json::{Value, json};

use crate::seed::{self, HOLDING, entry, id, path};

#[tokio::test]
async fn the_history_of_a_colony_has_what_stands_and_what_was_corrected_with_the_reason() {
    let bench = seed::bench().await;
    let mut corrected =
        entry(30, "2026-03-20", "inspection", json!({ "colony": "M1", "brood": "absent", "seams": 5 }));
    corrected["corrects"] = json!(id(13));
    corrected["reason"] = json!("looked at the wrong card");
    assert_eq!(bench.put(&path(30), &corrected).await.status, 201);
    let mut struck = entry(31, "2026-03-20", "strike_out", json!({}));
    struck["corrects"] = json!(id(30));
    struck["reason"] = json!("it was M2");
    assert_eq!(bench.put(&path(31), &struck).await.status, 201);
    let at = format!("/holdings/{HOLDING}/colonies/M1/history");
    let history = bench.get(&format!("{at}?on=2026-04-11")).await.good();
    let items = history["items"].as_array().unwrap();
    let told: Vec<(u64, Option<u64>, Option<bool>, &str)> = items
        .iter()
        .map(|item| {
            let by = &item["superseded"];
            (
                item["seq"].as_u64().unwrap(),
                by["by"].as_u64(),
                by["struck_out"].as_bool(),
                by["reason"].as_str().unwrap_or_default(),
            )
        })
        .collect();
    assert_eq!(
        told,
        [
            (17, Some(18), Some(true), "it was M2"),
            (13, Some(17), Some(false), "looked at the wrong card"),
            (11, None, None, ""),
            (4, None, None, ""),
        ]
    );
    assert!(items.iter().all(|item| item["line"].as_str().is_some_and(|line| !line.is_empty())), "{history}");
    // The day before, on and after: what happened later is not told yet.
    for (on, expected) in [("2026-02-19", 1), ("2026-02-20", 2), ("2026-02-21", 2)] {
        let history = bench.get(&format!("{at}?on={on}")).await.good();
        assert_eq!(history["items"].as_array().map(Vec::len), Some(expected), "{on}");
    }
    let nobody = format!("/holdings/{HOLDING}/colonies/Nobody/history");
    let problem: Value = bench.get(&nobody).await.problem(404, "unknown-colony", &nobody);
    assert_eq!(problem["status"], 404);
}
