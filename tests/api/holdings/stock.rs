//! `/holdings/{holding}/stock`

use crate::bench::TODAY;
use crate::seed;

const STOCK: &str = "/holdings/heathside/stock";

#[tokio::test]
async fn the_stock_is_answered_lot_by_lot() {
    insta::assert_json_snapshot!(seed::bench().await.get(STOCK).await.good());
}

#[tokio::test]
async fn without_a_day_it_is_today_and_what_came_later_does_not_bear() {
    let bench = seed::bench().await;
    assert_eq!(bench.get(STOCK).await.good()["on"], TODAY);
    let before = bench.get(&format!("{STOCK}?on=2025-12-31")).await.good();
    assert_eq!(before["lots"], serde_json::json!([]));
}
