//! `/holdings/{holding}/apiaries`, `…/{apiary}` and `…/{apiary}/supering`

use serde_json::{Value, json};

use crate::seed;

const PATH: &str = "/holdings/heathside/apiaries";

/// The conditions of a site without entries.
fn nothing_known() -> Value {
    json!({ "power": null, "access": null, "ground": null })
}

fn orchard() -> Value {
    json!({
        "apiary": "orchard", "place": "behind the old barn", "colonies": ["M1", "M2", "M3"],
        "conditions": nothing_known(),
        "flows": [{ "apiary": "orchard", "forage": "plum", "stage": "expected", "from": "2026-04-20" }],
    })
}

#[tokio::test]
async fn the_apiaries_are_listed_as_they_stand_today() {
    let bench = seed::bench().await;
    let far_field = json!({
        "apiary": "far field", "place": null, "colonies": ["F1"], "conditions": nothing_known(), "flows": [],
    });
    let want = json!({ "holding": "heathside", "on": "2026-04-11", "items": [far_field, orchard()] });
    assert_eq!(bench.get(PATH).await.good(), want);
}

#[tokio::test]
async fn an_apiary_is_shown_as_it_stood_on_the_day() {
    let bench = seed::bench().await;
    assert_eq!(bench.get(&format!("{PATH}/orchard")).await.good(), orchard());
    let earlier = bench.get(&format!("{PATH}/orchard?on=2026-02-28")).await.good();
    assert_eq!((&earlier["colonies"], &earlier["flows"]), (&json!(["M1", "M2", "M3", "M4"]), &json!([])));
    // Each field comes from the newest entry that states it.
    let site = async |number: u32, on: &str, body: Value| {
        bench.put(&seed::path(number), &seed::entry(number, on, "site_conditions", body)).await.good();
        bench.get(&format!("{PATH}/far%20field")).await.good()["conditions"].clone()
    };
    let first = json!({ "apiary": "far field", "power": "none", "access": "on_foot" });
    let want = json!({ "power": "none", "access": "on_foot", "ground": null });
    assert_eq!(site(20, "2026-04-09", first).await, want);
    let flood =
        json!({ "apiary": "far field", "ground": "flooded", "access": "none", "until": "2026-04-20" });
    let want = json!({ "power": "none", "access": "none", "ground": "flooded" });
    assert_eq!(site(21, "2026-04-10", flood).await, want);
    let later = bench.get(&format!("{PATH}/far%20field?on=2026-04-21")).await.good();
    assert_eq!(later["conditions"], json!({ "power": "none", "access": "on_foot", "ground": null }));
}

#[tokio::test]
async fn the_question_for_an_apiary_is_answered_for_each_colony_there() {
    let bench = seed::bench().await;
    let answers = bench.get(&format!("{PATH}/orchard/supering")).await.good();
    let counts = (&answers["yes"], &answers["no"], &answers["unknown"]);
    assert_eq!(counts, (&json!(1), &json!(1), &json!(1)));
    let colonies = answers["colonies"].as_array().unwrap();
    assert_eq!(colonies.len(), 3);
    for (report, colony) in colonies.iter().zip(["M1", "M2", "M3"]) {
        let alone = bench.get(&format!("/holdings/heathside/colonies/{colony}/supering")).await.good();
        assert_eq!(*report, alone);
    }
    let earlier = bench.get(&format!("{PATH}/orchard/supering?on=2026-02-20")).await.good();
    let counts = (&earlier["on"], &earlier["yes"], &earlier["no"], &earlier["unknown"]);
    assert_eq!(counts, (&json!("2026-02-20"), &json!(1), &json!(2), &json!(1)));
}

#[tokio::test]
async fn an_apiary_where_nothing_stands_has_no_answers() {
    let bench = seed::bench().await;
    let answers = bench.get(&format!("{PATH}/orchard/supering?on=2026-01-03")).await.good();
    let want = json!({
        "holding": "heathside", "apiary": "orchard", "on": "2026-01-03", "yes": 0, "no": 0, "unknown": 0, "colonies": [],
    });
    assert_eq!(answers, want);
}

#[tokio::test]
async fn an_apiary_that_there_is_not_is_a_problem_that_names_the_nearest() {
    let bench = seed::bench().await;
    for below in ["orchid", "orchid/supering"] {
        let path = format!("{PATH}/{below}");
        let fault = bench.get(&path).await.fault(404, "unknown-apiary", &path);
        let detail = "the holding `heathside` has no apiary `orchid`".to_owned();
        assert_eq!(fault, ("apiary".to_owned(), detail, "did you mean `orchard`?".to_owned()));
    }
    let path = format!("{PATH}/moor");
    let help = bench.get(&path).await.fault(404, "unknown-apiary", &path).2;
    assert_eq!(help, "look it up among the apiaries of the holding; if it is new, record its details");
}
