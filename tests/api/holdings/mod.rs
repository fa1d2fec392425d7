//! `/holdings` and below.

mod apiaries;
mod archived;
mod batch;
mod begin;
mod colonies;
mod documents;
mod due;
mod entries;
mod entry;
mod history;
mod medicines;
mod options;
mod register;
mod retention;
mod stock;
mod supering;
mod verification;

use serde_json::json;

use crate::bench::Bench;
use crate::seed;

#[tokio::test]
async fn a_new_service_has_no_holdings() {
    assert_eq!(Bench::new().await.get("/holdings").await.good(), json!({ "items": [] }));
}

#[tokio::test]
async fn each_holding_is_listed_with_the_number_of_its_entries_and_the_hash_of_the_last() {
    let bench = seed::bench().await;
    let first = seed::entry(
        1,
        "2026-01-02",
        "holding_details",
        json!({ "keeper": "B. Keeper", "jurisdiction": "gb" }),
    );
    let other = bench.put("/holdings/a%20second%20one", &first).await.good();
    let last = bench.get(&seed::path(16)).await.good();
    let items = json!([
        { "holding": "a second one", "entries": 1, "head": other["hash"] },
        { "holding": "heathside", "entries": 16, "head": last["hash"] },
    ]);
    assert_eq!(bench.get("/holdings").await.good(), json!({ "items": items }));
}

#[tokio::test]
async fn a_holding_without_entries_is_a_problem_everywhere_that_names_the_nearest() {
    let bench = seed::bench().await;
    let entry = format!("entries/{}", seed::id(1));
    for below in [
        "entries",
        "entries?after=5",
        &entry,
        "verification",
        "documents",
        &format!("documents/{}", "0".repeat(64)),
        "colonies",
        "colonies/M1",
        "colonies/M1/supering",
        "colonies/M1/treatment-options",
        "apiaries",
        "apiaries/orchard",
        "apiaries/orchard/supering",
        "apiaries/orchard/treatment-options",
        "due",
        "due?format=calendar",
        "stock",
        "medicines",
        "register",
        "register?format=pdf",
        "register/exchange/treatments",
        "register/exchange/transactions",
        "register/pack",
    ] {
        let path = format!("/holdings/heathsite/{below}");
        let instance = path.split('?').next().unwrap();
        let fault = bench.get(&path).await.fault(404, "unknown-holding", instance);
        let detail = "no entry is recorded under the holding `heathsite`".to_owned();
        assert_eq!(fault, ("holding".to_owned(), detail, "did you mean `heathside`?".to_owned()), "{path}");
    }
    let help =
        bench.get("/holdings/x/colonies").await.fault(404, "unknown-holding", "/holdings/x/colonies").2;
    assert_eq!(
        help,
        "GET /holdings lists the holdings that have entries; PUT /holdings/{holding} begins a new one"
    );
}
