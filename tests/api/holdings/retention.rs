//! `/holdings/{holding}/retention`

use serde_json::json;

use crate::bench::Bench;
use crate::seed::{self, HOLDING, entry};

#[tokio::test]
async fn every_entry_of_a_lot_is_kept_until_a_day_with_the_rule_that_decided() {
    let bench = seed::bench().await;
    let path = format!("/holdings/{HOLDING}/retention");
    let report = bench.get(&path).await.good();
    assert_eq!((&report["holding"], &report["on"]), (&json!(HOLDING), &json!("2026-04-11")));
    let set = &report["sets"][0];
    assert_eq!(set["lots"][0]["lot"], "strips-1");
    assert_eq!(set["keep"]["state"], "at_least");
    assert!(!set["keep"]["because"].as_array().unwrap().is_empty());
    assert_eq!((&set["could_go"], &set["could_go_from"]), (&json!(false), &json!(null)));
    assert_eq!(set["keep"]["decided_by"]["sources"], json!(["Act invented for tests"]));
    for entry in set["entries"].as_array().unwrap() {
        assert_ne!(entry["records"], json!([]), "{entry}");
    }
}

/// A used-up lot on the day before, on and after the last day on which its records must be kept.
#[tokio::test]
async fn what_could_go_is_said_for_the_day_asked_about() {
    let bench = Bench::new().await;
    let lot = json!({ "lot": "L", "medicine": "pads", "quantity": 1 });
    let disposed = json!({ "lot": "L", "quantity": 1, "how_and_where": "returned" });
    let details = json!({ "keeper": "A. Keeper", "jurisdiction": "gb" });
    seed::begin(&bench, "h", &entry(1, "2026-01-05", "holding_details", details)).await;
    let entries = json!([
        entry(
            2,
            "2026-01-05",
            "medicine_described",
            json!({ "medicine": "pads", "pack_name": "pads", "unit": "piece" })
        ),
        entry(3, "2026-01-05", "lot_acquired", lot),
        entry(4, "2026-04-01", "disposal", disposed),
    ]);
    bench.post("/holdings/h/entries", &entries).await.good();
    for (on, could_go) in [("2031-03-31", false), ("2031-04-01", false), ("2031-04-02", true)] {
        let report = bench.get(&format!("/holdings/h/retention?on={on}")).await.good();
        let set = &report["sets"][0];
        assert_eq!(set["could_go"], could_go, "{on}");
        assert_eq!(set["could_go_from"], "2031-04-02");
        assert_eq!(set["keep"]["day"], "2031-04-01");
    }
}

#[tokio::test]
async fn a_holding_without_entries_is_a_problem() {
    let bench = Bench::new().await;
    bench.get("/holdings/nobody/retention").await.problem(
        404,
        "unknown-holding",
        "/holdings/nobody/retention",
    );
}
