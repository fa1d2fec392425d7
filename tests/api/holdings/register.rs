//! `/holdings/{holding}/register` in every form, `/register/exchange/…` and `/register/pack`

use axum::body::Body;
use axum::http::Request;

use crate::bench::{Answer, Bench};
use crate::seed;

const REGISTER: &str = "/holdings/heathside/register";

async fn asked(bench: &Bench, path: &str, accept: &str) -> Answer {
    bench.send(Request::get(path).header("accept", accept).body(Body::empty()).unwrap()).await
}

#[tokio::test]
async fn the_register_comes_in_the_form_that_is_asked_for() {
    let bench = seed::bench().await;
    let page = "text/html; charset=utf-8";
    let csv = "text/csv; charset=utf-8; header=present";
    for (path, accept, media_type, begins) in [
        ("", "*/*", "application/json", "{\"holding\":\"heathside\""),
        ("", "text/csv", csv, "\u{feff}\"record\",\"entry\""),
        ("", "text/html,application/xml;q=0.9,*/*;q=0.8", page, "<!DOCTYPE html>"),
        ("", "application/pdf", "application/pdf", "%PDF-"),
        ("?format=csv", "application/pdf", csv, "\u{feff}\"record\",\"entry\""),
        ("?format=html", "*/*", page, "<!DOCTYPE html>"),
        ("", "image/png", "application/json", "{\"holding\":\"heathside\""),
    ] {
        let answer = asked(&bench, &format!("{REGISTER}{path}"), accept).await;
        assert_eq!(answer.status, 200, "{path} {accept}");
        assert_eq!(answer.header("content-type"), Some(media_type), "{path} {accept}");
        assert_eq!(answer.header("vary"), Some("accept"), "{path} {accept}");
        assert!(answer.body.starts_with(begins.as_bytes()), "{path} {accept}");
        if media_type != "application/json" {
            let name = answer.header("content-disposition").unwrap().to_owned();
            assert!(name.contains("filename=\"register-heathside-2026-01-01-2026-04-11."), "{name}");
        }
    }
}

#[tokio::test]
async fn the_register_tells_what_was_given_in_the_time() {
    let bench = seed::bench().await;
    let report = bench.get(&format!("{REGISTER}?from=2026-01-01&to=2026-12-31")).await.good();
    assert_eq!(report["administrations"][0]["given"][0]["lot"], "strips-1");
    let before = bench.get(&format!("{REGISTER}?from=2025-01-01&to=2025-12-31")).await.good();
    assert_eq!(before["administrations"], serde_json::json!([]));
}

#[tokio::test]
async fn other_programs_get_treatments_and_movements_of_stock() {
    let bench = seed::bench().await;
    let treatments = bench.get(&format!("{REGISTER}/exchange/treatments")).await.good();
    assert_eq!(treatments["member"][0]["resourceType"], "icarGroupTreatmentEventResource");
    assert_eq!(treatments["member"][0]["embeddedAnimalSet"]["member"][0]["id"], "M1");
    let movements = bench.get(&format!("{REGISTER}/exchange/transactions")).await.good();
    assert_eq!(movements["member"][0]["resourceType"], "icarMedicineTransactionResource");
}

#[tokio::test]
async fn the_pack_is_one_zip_file() {
    let bench = seed::bench().await;
    let answer = bench.get(&format!("{REGISTER}/pack")).await;
    assert_eq!((answer.status, answer.header("content-type")), (200, Some("application/zip")));
    let name = "attachment; filename=\"pack-heathside-2026-01-01-2026-04-11.zip\"";
    assert_eq!(answer.header("content-disposition"), Some(name));
    assert!(answer.body.starts_with(b"PK\x03\x04"));
}

#[tokio::test]
async fn a_time_that_ends_before_it_begins_is_a_problem() {
    let bench = seed::bench().await;
    for below in ["", "/exchange/treatments", "/exchange/transactions", "/pack"] {
        let path = format!("{REGISTER}{below}");
        let answer = bench.get(&format!("{path}?from=2026-02-01&to=2026-01-01")).await;
        let fault = answer.fault(400, "bad-parameter", &path);
        let detail = "the last day 2026-01-01 is before the first, 2026-02-01".to_owned();
        let help = "swap the two days, or correct one of them".to_owned();
        assert_eq!(fault, ("to".to_owned(), detail, help));
    }
}

#[tokio::test]
async fn an_unknown_form_is_a_problem() {
    let answer = seed::bench().await.get(&format!("{REGISTER}?format=docx")).await;
    assert_eq!(answer.fault(400, "bad-parameter", REGISTER).0, "format");
}

/// The keeper's own list of what is missing is in the pack only if it is asked for.
#[tokio::test]
async fn the_pack_holds_the_gaps_if_they_are_asked_for() {
    let bench = seed::bench().await;
    let has_gaps = |answer: &Answer| answer.body.windows(5).any(|part| part == b"gaps.");
    for (query, wanted) in [("", false), ("?gaps=false", false), ("?gaps=true", true)] {
        let answer = bench.get(&format!("{REGISTER}/pack{query}")).await;
        assert_eq!((answer.status, has_gaps(&answer)), (200, wanted), "{query}");
    }
    let path = format!("{REGISTER}/pack");
    let (parameter, detail, help) =
        bench.get(&format!("{path}?gaps=yes")).await.fault(400, "bad-parameter", &path);
    assert_eq!((parameter.as_str(), detail.as_str()), ("gaps", "`yes` is neither `true` nor `false`"));
    assert_eq!(help, "correct `gaps`, or leave it out");
}
