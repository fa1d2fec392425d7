//! A holding for questions. Its answers on 11 April 2026:
//!
//! - `M1` at the orchard has strips in since 20 February, and brood: no.
//! - `M2` at the orchard had the same until 6 April: yes.
//! - `M3` at the orchard was bought, and the medicine inside is not known: unknown.
//! - `M4` at the orchard ended on 1 March.
//! - `F1` at the far field was never treated, and has supers on: yes.

use serde_json::{Value, json};

use crate::bench::Bench;

pub(crate) const HOLDING: &str = "heathside";

/// The id with this number.
pub(crate) fn id(number: u32) -> String {
    format!("01964c7e-6f00-7000-8000-{number:012}")
}

/// An entry as JSON.
#[expect(clippy::needless_pass_by_value, reason = "it is made where it is handed in")]
pub(crate) fn entry(number: u32, on: &str, kind: &str, body: Value) -> Value {
    json!({ "id": id(number), "on": on, "recorded_by": "A. Keeper", "kind": kind, "body": body })
}

/// The path of an entry of the holding.
pub(crate) fn path(number: u32) -> String {
    format!("/holdings/{HOLDING}/entries/{}", id(number))
}

pub(crate) fn established(number: u32, colony: &str, apiary: &str) -> Value {
    let body = json!({ "colony": colony, "apiary": apiary, "hive_mark": format!("hive {number}"), "medicines": "none" });
    entry(number, "2026-01-05", "colony_established", body)
}

/// All entries of the holding, in order.
pub(crate) fn entries() -> Vec<Value> {
    let administration = json!({
        "given": [{ "lot": "strips-1", "each": 2, "colonies": ["M1", "M2"] }],
        "withdrawal_days": 0,
        "given_by": "A. Keeper",
    });
    vec![
        entry(1, "2026-01-02", "holding_details", json!({ "keeper": "A. Keeper", "jurisdiction": "gb" })),
        entry(
            2,
            "2026-01-02",
            "apiary_details",
            json!({ "apiary": "orchard", "place": "behind the old barn" }),
        ),
        entry(3, "2026-01-02", "apiary_details", json!({ "apiary": "far field" })),
        established(4, "M1", "orchard"),
        established(5, "M2", "orchard"),
        entry(
            6,
            "2026-01-05",
            "colony_established",
            json!({ "colony": "M3", "apiary": "orchard", "medicines": "not_known" }),
        ),
        established(7, "M4", "orchard"),
        established(8, "F1", "far field"),
        entry(
            9,
            "2026-01-10",
            "medicine_described",
            json!({
                "medicine": "strips", "pack_name": "Demo strips", "authorisation": "DEMO 1", "unit": "strip",
                "leaflet": "demo-strip",
            }),
        ),
        entry(
            10,
            "2026-01-10",
            "lot_acquired",
            json!({
                "lot": "strips-1", "medicine": "strips", "batch": "B 123", "expiry": "2027-06-30", "quantity": 20,
                "supplier": { "name": "A. Supplier" }, "proof": "invoice 17",
            }),
        ),
        entry(11, "2026-02-20", "administration", administration),
        entry(12, "2026-03-01", "colony_ended", json!({ "colony": "M4", "cause": "queenless, dwindled" })),
        entry(13, "2026-03-20", "inspection", json!({ "colony": "M1", "brood": "present", "seams": 6 })),
        entry(
            14,
            "2026-04-05",
            "supers_on",
            json!({ "colonies": ["F1"], "supers": 1, "purpose": "harvest" }),
        ),
        entry(15, "2026-04-06", "removal", json!({ "administration": id(11), "colonies": ["M2"] })),
        entry(
            16,
            "2026-04-09",
            "nectar_flow",
            json!({ "apiary": "orchard", "forage": "plum", "stage": "expected", "from": "2026-04-20" }),
        ),
    ]
}

/// A service with the holding.
pub(crate) async fn bench() -> Bench {
    let bench = Bench::new().await;
    record(&bench).await;
    bench
}

/// A service with the holding begun: its first entry, and no other.
pub(crate) async fn begun() -> Bench {
    let bench = Bench::new().await;
    begin(&bench, HOLDING, &entries()[0]).await;
    bench
}

/// Records the holding.
pub(crate) async fn record(bench: &Bench) {
    let mut entries = entries();
    begin(bench, HOLDING, &entries.remove(0)).await;
    let answer = bench.post(&format!("/holdings/{HOLDING}/entries"), &Value::Array(entries)).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
}

/// Begins a holding with its first entry.
pub(crate) async fn begin(bench: &Bench, holding: &str, first: &Value) {
    let answer = bench.put(&format!("/holdings/{holding}"), first).await;
    assert_eq!(answer.status, 201, "{}", answer.text());
}
