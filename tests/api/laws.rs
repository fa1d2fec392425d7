//! `/laws` and `/laws/{jurisdiction}`

use combclear_wording::Words;
use combclear_wording::law::LawReport;
use serde_json::json;

use crate::bench::Bench;

#[tokio::test]
async fn the_laws_are_listed_with_those_whose_rules_hold_there_too() {
    let bench = Bench::new().await;
    let items = json!([
        { "jurisdiction": "eu", "title": "law of a union, invented for tests", "includes": ["gb"] },
        { "jurisdiction": "gb", "title": "law invented for tests", "includes": [] },
    ]);
    assert_eq!(bench.get("/laws").await.good(), json!({ "items": items }));
}

#[tokio::test]
async fn a_law_is_shown_as_it_is_in_force_on_the_day_with_its_sources() {
    let bench = Bench::new().await;
    let law = bench.get("/laws/gb?on=2026-04-10").await.good();
    assert_eq!(law["standing"], json!({ "state": "in_force" }));
    assert_eq!(law["fields"].as_array().unwrap().len(), 1);
    assert_eq!(law["fields"][0]["name"], "batch number");
    let by = json!({
        "jurisdiction": "gb", "need": "required", "from": "2020-01-01", "source": ["T"], "confidence": "document",
        "checked_on": "2026-01-01", "line": law["fields"][0]["by"][0]["line"],
    });
    assert_eq!(law["fields"][0]["by"], json!([by]));
    assert_eq!(law["time_limits"][0]["within_days"], 0);
    assert_eq!(law["forms"][0]["text"], "Legible.");
    assert_eq!(law["retentions"][0]["years"], 5);
    assert_eq!(law["parts"][0]["sources"][0]["title"], "Act invented for tests");
}

/// The day before, on and after the first day of a rule; today if none is named.
#[tokio::test]
async fn rules_are_chosen_by_the_day_and_the_strictest_need_wins() {
    let bench = Bench::new().await;
    for (path, rules) in [
        ("/laws/eu?on=2026-04-10", 1),
        ("/laws/eu?on=2026-04-11", 2),
        ("/laws/eu?on=2026-04-12", 2),
        ("/laws/eu", 2),
        // A member state without a law of its own has that of the Union.
        ("/laws/at", 2),
    ] {
        let law = bench.get(path).await.good();
        assert_eq!(law["fields"][0]["by"].as_array().unwrap().len(), rules, "{path}");
        assert_eq!(law["fields"][0]["need"], "required", "{path}");
    }
}

#[tokio::test]
async fn a_day_before_the_first_rule_says_so() {
    let bench = Bench::new().await;
    let law = bench.get("/laws/gb?on=2019-12-31").await.good();
    assert_eq!(law["standing"], json!({ "state": "not_yet", "from": "2020-01-01" }));
    assert_eq!(law["fields"], json!([]));
}

#[tokio::test]
async fn a_law_that_there_is_not_is_a_problem_that_lists_those_that_there_are() {
    let bench = Bench::new().await;
    let fault = bench.get("/laws/nz").await.fault(404, "unknown-law", "/laws/nz");
    let wanted = ["jurisdiction", "there is no law of `nz`", "the laws built in are: eu, gb"];
    assert_eq!(fault, (wanted[0].to_owned(), wanted[1].to_owned(), wanted[2].to_owned()));
}

/// The real laws fit the same schemas as the invented ones.
#[tokio::test]
async fn every_built_in_law_is_what_the_document_says() {
    let document = crate::schema::Document::of_the_service();
    let schema = json!({ "$ref": "#/components/schemas/LawReport" });
    let laws = combclear_leaflets::laws().unwrap();
    assert!(laws.iter().count() >= 8);
    for law in laws.iter() {
        for on in ["1990-01-01", "2015-01-01", "2026-08-20"] {
            let profile = laws.profile(&law.jurisdiction, on.parse().unwrap()).unwrap();
            let value = serde_json::to_value(LawReport::of(Words::english(), &profile)).unwrap();
            assert_eq!(document.fault(&schema, &value, ""), None, "{} {on}", law.jurisdiction);
        }
    }
}
