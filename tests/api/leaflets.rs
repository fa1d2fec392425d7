//! `/leaflets` and `/leaflets/{jurisdiction}/{id}`

use std::sync::Arc;

use serde_json::{Value, json};

use crate::bench::Bench;

#[tokio::test]
async fn the_leaflets_are_listed_by_active_form_and_strength() {
    let bench = Bench::new().await;
    let item = json!({
        "jurisdiction": "gb", "id": "demo-strip", "title": "demo strip, 1 g", "actives": ["nothing"], "form": "strip",
        "strength": "1 g nothing per strip", "unit": "strip",
    });
    assert_eq!(bench.get("/leaflets").await.good(), json!({ "items": [item] }));
}

#[tokio::test]
async fn leaflets_are_listed_by_jurisdiction_active_and_unit() {
    let bench = Bench::with(Arc::new(combclear_leaflets::builtin().unwrap().clone())).await;
    let listed = async |query: &str| -> Vec<(String, String)> {
        let list = bench.get(&format!("/leaflets{query}")).await.good();
        let text = |item: &Value, field: &str| item[field].as_str().unwrap().to_owned();
        let items = list["items"].as_array().unwrap().iter();
        items.map(|item| (text(item, "jurisdiction"), text(item, "id"))).collect()
    };
    let all = listed("").await;
    let of_gb = listed("?jurisdiction=gb").await;
    assert!(!of_gb.is_empty() && of_gb.len() < all.len() && of_gb.iter().all(|(of, _)| of == "gb"));
    // France has none of its own, so those of the Union apply.
    assert!(listed("?jurisdiction=fr").await.iter().all(|(of, _)| of == "eu"));
    let amitraz = listed("?jurisdiction=gb&active=Amitraz&unit=strip").await;
    assert!(
        !amitraz.is_empty() && amitraz.iter().all(|(_, id)| id.starts_with("amitraz-strip")),
        "{amitraz:?}"
    );
    assert_eq!(listed("?active=amitraz&unit=g").await, []);
    let fault = bench.get("/leaflets?active=amitras").await.fault(400, "bad-parameter", "/leaflets");
    let detail = "no leaflet has the active substance `amitras`";
    assert_eq!(fault, ("active".to_owned(), detail.to_owned(), "did you mean `amitraz`?".to_owned()));
}

#[tokio::test]
async fn a_leaflet_has_its_rules_with_their_sources() {
    let bench = Bench::new().await;
    let leaflet = bench.get("/leaflets/gb/demo-strip").await.good();
    assert_eq!(leaflet["sources"][0]["title"], "Leaflet invented for tests");
    let rules = leaflet["rules"].as_array().unwrap();
    assert_eq!(rules.len(), 8);
    assert_eq!(
        rules[4],
        json!({
            "kind": "stay_min", "days": 42, "brood": "absent_or_lowest", "from": "2020-01-01", "force": "label",
            "source": ["S1"], "confidence": "document", "checked_on": "2026-01-01", "line": rules[4]["line"],
        })
    );
}

#[tokio::test]
async fn a_leaflet_that_there_is_not_is_a_problem_that_names_the_nearest() {
    let bench = Bench::new().await;
    for (path, detail, help) in [
        (
            "/leaflets/gb/demo-stripe",
            "there is no leaflet `demo-stripe` for `gb`",
            "did you mean `demo-strip`?",
        ),
        ("/leaflets/eu/demo-strip", "there is no leaflet `demo-strip` for `eu`", "there is one for `gb`"),
        ("/leaflets/gb/x", "there is no leaflet `x` for `gb`", "GET /leaflets lists the leaflets available"),
    ] {
        let fault = bench.get(path).await.fault(404, "unknown-leaflet", path);
        assert_eq!(fault, ("id".to_owned(), detail.to_owned(), help.to_owned()));
    }
}

/// The real leaflets fit the same schemas as the invented one.
#[tokio::test]
async fn every_built_in_leaflet_is_what_the_document_says() {
    let document = crate::schema::Document::of_the_service();
    let schema = json!({ "$ref": "#/components/schemas/Leaflet" });
    let leaflets = combclear_leaflets::builtin().unwrap();
    assert!(leaflets.iter().count() > 0);
    for leaflet in leaflets.iter() {
        let value = serde_json::to_value(&**leaflet).unwrap();
        assert_eq!(document.fault(&schema, &value, ""), None, "{}", leaflet.id);
    }
}
