//! The exchange file against JSON Schemas written from the standard's tables of properties.
//!
//! Source: ICAR Animal Data Exchange, development branch of 2024, by its tables of properties (`tests/exchange/schemas`).

use combclear_papers::exchange::Exchange;
use serde_json::Value;

use super::making::{demo, hard};

fn schema(text: &str) -> jsonschema::Validator {
    jsonschema::draft202012::new(&serde_json::from_str(text).unwrap()).unwrap()
}

fn file(report: &combclear_domain::register::RegisterReport) -> Value {
    serde_json::to_value(Exchange::of(report, None)).unwrap()
}

#[test]
fn every_treatment_and_every_movement_has_the_shape_of_the_standard() {
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    let movement = schema(include_str!("../exchange/schemas/medicine-transaction.json"));
    for report in [demo(), hard()] {
        let file = file(&report);
        let (treatments, movements) =
            (file["treatments"].as_array().unwrap(), file["transactions"].as_array().unwrap());
        assert_eq!(treatments.len(), report.administrations.len());
        let given: usize = report.administrations.iter().map(|row| row.given.len()).sum();
        assert_eq!(movements.len(), report.acquisitions.len() + given + report.disposals.len());
        for (validator, item) in treatments
            .iter()
            .map(|item| (&treatment, item))
            .chain(movements.iter().map(|item| (&movement, item)))
        {
            let faults: Vec<String> = validator.iter_errors(item).map(|fault| fault.to_string()).collect();
            assert_eq!(faults, Vec::<String>::new(), "{item:#}");
        }
        let mut ids: Vec<&str> = movements.iter().map(|item| item["id"].as_str().unwrap()).collect();
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), movements.len(), "an id stands twice");
    }
}

/// The schemas would show a fault: each change of one thing is refused.
#[test]
fn the_schemas_refuse_what_is_not_of_the_standard() {
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    let good = file(&demo())["treatments"][0].clone();
    assert!(treatment.is_valid(&good));
    let cases = [
        ("/eventDateTime", Value::from("2026-04-11"), "a civil date"),
        ("/groupMethod", Value::from("Hives"), "a word that the list does not have"),
        ("/totalMedicineUsed/doseUnits", Value::from("strip"), "a unit of our own"),
        ("/withdrawals/0/productType", Value::from("Wax"), "a product that the list does not have"),
        ("/embeddedAnimalSet/member/0/scheme", Value::from("colony"), "a scheme that is no reversed domain"),
        (
            "/meta",
            serde_json::json!({ "source": "x", "modifed": "2026-04-11T12:00:00Z" }),
            "a misspelt property",
        ),
    ];
    for (pointer, value, name) in cases {
        let mut bad = good.clone();
        *bad.pointer_mut(pointer).unwrap() = value;
        assert!(!treatment.is_valid(&bad), "{name} was let through");
    }
}

/// Midday UTC is the same civil date in every zone from UTC-12 to UTC+11: 12 - 12 = 0 h and 12 + 11 = 23 h of that day.
#[test]
fn every_civil_date_is_written_as_midday_utc() {
    let report = demo();
    let file = file(&report);
    for (row, item) in report.administrations.iter().zip(file["treatments"].as_array().unwrap()) {
        assert_eq!(item["eventDateTime"], format!("{}T12:00:00Z", row.written.on));
        for batch in item["batches"].as_array().unwrap() {
            assert!(batch["expiryDate"].as_str().is_none_or(|date| date.ends_with("T12:00:00Z")), "{batch}");
        }
    }
    for (row, item) in report.acquisitions.iter().zip(file["transactions"].as_array().unwrap()) {
        let expiry = row.expiry.map(|day| format!("{day}T12:00:00Z"));
        assert_eq!(item["expiryDate"].as_str(), expiry.as_deref());
    }
}

#[test]
fn a_period_of_no_days_ends_when_the_treatment_does_and_stands_in_the_remark() {
    let file = file(&demo());
    let first = &file["treatments"][0];
    let ends: Vec<&str> = first["withdrawals"]
        .as_array()
        .unwrap()
        .iter()
        .map(|period| period["endDate"].as_str().unwrap())
        .collect();
    assert_eq!(ends, ["2025-05-03T12:00:00Z", "2025-05-21T12:00:00Z"]);
    assert!(first["remark"].as_str().unwrap().contains("withdrawal period 0 days"), "{first:#}");
    assert_eq!(first["totalMedicineUsed"], serde_json::json!({ "doseQuantity": 16, "doseUnits": "EA" }));
}
