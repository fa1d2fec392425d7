//! `/healthz` and `/readyz`

use serde_json::json;

use crate::bench::Bench;
use crate::faulty::{Faulty, Trouble};

#[tokio::test]
async fn a_service_that_runs_says_so() {
    let bench = Bench::new().await;
    assert_eq!(bench.get("/healthz").await.good(), json!({ "status": "ok" }));
    assert_eq!(bench.get("/readyz").await.good(), json!({ "status": "ok" }));
}

#[tokio::test]
async fn a_service_whose_database_does_not_answer_runs_but_is_not_ready() {
    let bench = Bench::over(Faulty::with(Trouble::NotReady)).await;
    bench.get("/healthz").await.good();
    let problem = bench.get("/readyz").await.problem(503, "not-ready", "/readyz");
    assert_eq!(problem["detail"], "the database does not answer");
}
