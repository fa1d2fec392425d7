//! `/holdings/{holding}/medicines`

use serde_json::json;

use crate::seed::{self, entry, id, path};

const MEDICINES: &str = "/holdings/heathside/medicines";

#[tokio::test]
async fn each_medicine_has_its_description_its_leaflet_and_its_lots_in_the_order_people_count() {
    let bench = seed::bench().await;
    for (number, lot) in [(40, "strips-10"), (41, "strips-9")] {
        let body = json!({ "lot": lot, "medicine": "strips", "quantity": 10 });
        assert_eq!(
            bench.put(&path(number), &entry(number, "2026-04-01", "lot_acquired", body)).await.status,
            201
        );
    }
    let own = json!({ "medicine": "syrup", "pack_name": "Own Syrup (invented)", "unit": "ml" });
    assert_eq!(
        bench.put(&path(42), &entry(42, "2026-04-01", "medicine_described", own.clone())).await.status,
        201
    );
    let list = bench.get(MEDICINES).await.good();
    assert_eq!(list["holding"], "heathside");
    let items = list["items"].as_array().unwrap();
    assert_eq!(items.len(), 2);
    assert_eq!(items[0]["described"]["medicine"], "strips");
    assert_eq!(items[0]["leaflet_title"], "demo strip, 1 g");
    assert_eq!(items[0]["lots"], json!(["strips-1", "strips-9", "strips-10"]));
    let syrup = json!({ "described": own, "entry": id(42), "seq": 19, "leaflet_title": null, "lots": [] });
    assert_eq!(items[1], syrup);
}
