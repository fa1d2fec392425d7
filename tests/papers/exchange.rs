//! The exchange file against JSON Schemas written from the standard's tables of properties.
//!
//! Source: ICAR Animal Data Exchange, development branch of 8 February 2024, by its tables of properties (`tests/exchange/schemas`).

use combclear_domain::journal::Draft;
use combclear_domain::journal::entry::Correction;
use combclear_domain::journal::event::{Event, StrikeOut};
use combclear_domain::questions::register::StruckOutRow;
use combclear_papers::exchange::Exchange;
use combclear_testkit::entries::{day, id, take_in};
use combclear_testkit::files::demo_holding;
use serde_json::Value;

use super::making::{autumn, copied, demo, hard, register, vets};

fn schema(text: &str) -> jsonschema::Validator {
    jsonschema::draft202012::new(&serde_json::from_str(text).unwrap()).unwrap()
}

fn file(report: &combclear_domain::questions::register::Register) -> Value {
    let Exchange { treatments, transactions } = Exchange::of(report);
    let members = |collection: Value| {
        let count = collection["member"].as_array().unwrap().len();
        let one_page = serde_json::json!({ "totalItems": count, "totalPages": 1, "currentPage": 1 });
        assert_eq!(collection["view"], one_page);
        assert_eq!(collection.as_object().unwrap().len(), 2, "a root of the standard");
        collection["member"].clone()
    };
    serde_json::json!({
        "treatments": members(serde_json::to_value(treatments).unwrap()),
        "transactions": members(serde_json::to_value(transactions).unwrap()),
    })
}

#[test]
fn every_treatment_and_every_movement_has_the_shape_of_the_standard() {
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    let movement = schema(include_str!("../exchange/schemas/medicine-transaction.json"));
    for report in [demo(), hard(), copied(), vets()] {
        let file = file(&report);
        let (treatments, movements) =
            (file["treatments"].as_array().unwrap(), file["transactions"].as_array().unwrap());
        let fates: usize = report.administrations.iter().map(|row| row.courses.len()).sum();
        let gone = |list: &Vec<Value>| list.iter().filter(|item| item["meta"]["isDeleted"] == true).count();
        assert_eq!(treatments.len() - gone(treatments), fates);
        // What a vet gave from the vet's own stock moved nothing in the keeper's.
        let own = report.administrations.iter().flat_map(|row| &row.given).filter(|part| !part.of_vet);
        let given = own.count();
        let on_hand = report.totals.iter().filter(|lot| lot.left.is_some_and(|left| !left.is_zero())).count();
        let standing = movements.len() - gone(movements);
        assert_eq!(standing, report.acquisitions.len() + given + report.disposals.len() + on_hand);
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

/// The schemas detect faults: each single change is refused.
#[test]
fn the_schemas_refuse_what_is_not_of_the_standard() {
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    let good = file(&demo())["treatments"][0].clone();
    assert!(treatment.is_valid(&good));
    let cases = [
        ("/eventDateTime", Value::from("2026-04-11"), "a civil date"),
        ("/groupMethod", Value::from("Hives"), "a word that the list does not have"),
        ("/totalMedicineUsed/doseUnits", Value::from("strip"), "a unit of our own"),
        ("/medicine/family", Value::from("Medicines"), "a family that the list does not have"),
        ("/medicine/identifier", serde_json::json!({ "id": "1" }), "an identifier without a scheme"),
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
        let (within, name_of) = pointer.rsplit_once('/').unwrap();
        match bad.pointer_mut(within).unwrap() {
            Value::Object(fields) => _ = fields.insert(name_of.to_owned(), value),
            other => other[name_of.parse::<usize>().unwrap()] = value,
        }
        assert!(!treatment.is_valid(&bad), "{name} was let through");
    }
}

/// Midday UTC is the same civil date in every zone from UTC-12 to UTC+11: 12 - 12 = 0 h and 12 + 11 = 23 h of that day.
#[test]
fn every_civil_date_is_written_as_midday_utc() {
    let report = demo();
    let file = file(&report);
    for item in file["treatments"].as_array().unwrap() {
        let gone = report.struck_out.iter().filter_map(|gone| match &gone.row {
            StruckOutRow::Administration(row) => Some(row.as_ref()),
            StruckOutRow::Acquisition(_) | StruckOutRow::Disposal(_) => None,
        });
        let mut rows = report.administrations.iter().chain(gone);
        let row = rows.find(|row| item["meta"]["sourceId"] == row.written.entry.to_string()).unwrap();
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

/// A dose from before the period that still blocks in it comes with its use of stock, on its own day, and the receipt of
/// its lot: a program that reads the two collections finds for each treatment what it was taken from.
#[test]
fn a_dose_given_before_the_time_is_a_treatment_with_its_use_and_the_receipt_of_its_lot() {
    let report = autumn();
    let file = file(&report);
    let (mut earlier, mut own) = (0, 0);
    for row in &report.administrations {
        let entry = row.written.entry.to_string();
        let stands = |list: &str, kind: Option<&str>| {
            file[list].as_array().unwrap().iter().any(|item| {
                item["meta"]["sourceId"] == entry && kind.is_none_or(|kind| item["transactionKind"] == kind)
            })
        };
        assert!(stands("treatments", None), "{entry}");
        assert!(stands("transactions", Some("Use")), "{entry}");
        for part in &row.given {
            assert!(report.acquisitions.iter().any(|acquired| acquired.lot == part.lot), "{}", part.lot);
        }
        *(if row.earlier { &mut earlier } else { &mut own }) += 1;
    }
    assert!(earlier > 0 && own > 0, "{earlier} earlier, {own} of the time");
}

/// The treatments of one entry.
fn told(report: &combclear_domain::questions::register::Register, place: usize) -> Vec<Value> {
    let entry = report.administrations[place].written.entry.to_string();
    let file = file(report);
    let all = file["treatments"].as_array().unwrap().iter();
    all.filter(|item| item["meta"]["sourceId"] == entry).cloned().collect()
}

fn withdrawals(treatments: &[Value]) -> Vec<Value> {
    treatments.iter().map(|item| item["withdrawals"].clone()).collect()
}

fn honey(end: &str) -> Value {
    serde_json::json!([{ "productType": "Honey", "endDate": end }])
}

/// A withdrawal of unknown end is still listed.
fn open() -> Value {
    serde_json::json!([{ "productType": "Honey" }])
}

#[test]
fn a_period_of_no_days_ends_when_the_treatment_does_and_stands_in_the_remark() {
    let first = told(&demo(), 0);
    assert_eq!(withdrawals(&first), [honey("2025-04-26T12:00:00Z"), honey("2025-05-14T12:00:00Z")]);
    assert!(first[0]["remark"].as_str().unwrap().contains("withdrawal period 0 days"), "{:#}", first[0]);
    let used = |item: &Value| item["totalMedicineUsed"]["doseQuantity"].as_u64().unwrap();
    assert_eq!(first.iter().map(used).sum::<u64>(), 16, "the amounts add up to what the entry gave");
    assert_eq!(first[0]["totalMedicineUsed"].get("doseUnits"), None, "the standard has no unit for strips");
}

/// Merged, the known end of one would be read as that of both.
#[test]
fn strips_still_in_one_of_two_leave_its_end_open_and_that_of_the_other_known() {
    let mut report = demo();
    let course = &mut report.administrations[0].courses[1];
    course.last = None;
    course.still_in = true;
    (course.last_blocked_day, course.first_free_day) = (None, None);
    let colonies: Vec<String> = course.colonies.iter().map(ToString::to_string).collect();
    let first = told(&report, 0);
    assert_eq!(withdrawals(&first), [honey("2025-04-26T12:00:00Z"), open()]);
    let members = first[1]["embeddedAnimalSet"]["member"].as_array().unwrap();
    assert_eq!(members.iter().map(|member| member["id"].as_str().unwrap()).collect::<Vec<_>>(), colonies);
    let remark = first[1]["remark"].as_str().unwrap();
    assert!(remark.contains("to still in"), "{remark}");
    assert!(remark.contains("end of withdrawal not known"), "{remark}");
}

#[test]
fn a_period_that_nobody_recorded_is_an_open_withdrawal_and_not_none() {
    let mut report = demo();
    for course in &mut report.administrations[0].courses {
        course.withdrawal = None;
        (course.last_blocked_day, course.first_free_day) = (None, None);
    }
    let first = told(&report, 0);
    assert_eq!(withdrawals(&first), [open(), open()]);
    let remark = first[0]["remark"].as_str().unwrap();
    assert!(remark.contains("withdrawal period not recorded"), "{remark}");
}

/// A course without record is no freedom either.
#[test]
fn colonies_whose_course_is_not_told_have_an_open_withdrawal() {
    let mut report = demo();
    report.administrations[0].courses.clear();
    let first = told(&report, 0);
    assert_eq!(withdrawals(&first), [open()]);
    assert_eq!(first[0]["totalMedicineUsed"]["doseQuantity"], 16);
}

#[test]
fn a_colony_that_came_by_it_in_a_split_belongs_to_the_animals_and_has_a_withdrawal() {
    let mut report = demo();
    let row = &mut report.administrations[0];
    let mut split = row.courses[1].clone();
    split.colonies = vec!["M9".parse().unwrap()];
    split.came_by = Some(row.written.entry);
    split.came_on = Some(row.written.on);
    row.courses.push(split);
    let first = told(&report, 0);
    assert_eq!(first.len(), 3);
    assert_eq!(first[2]["embeddedAnimalSet"]["member"][0]["id"], "M9");
    assert_eq!(first[2]["countObserved"], 1);
    assert_eq!(first[2]["withdrawals"], honey("2025-05-14T12:00:00Z"));
    assert_eq!(first[2].get("totalMedicineUsed"), None, "it was given nothing itself");
    assert!(first[2]["remark"].as_str().unwrap().contains("carried over when split or united on"));
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    assert!(first.iter().all(|item| treatment.is_valid(item)));
    let mut ids: Vec<&str> = first.iter().map(|item| item["id"].as_str().unwrap()).collect();
    ids.dedup();
    assert_eq!(ids.len(), 3);
}

/// The standard has no place for a record on paper.
#[test]
fn what_was_copied_from_paper_says_so_in_the_remark_and_nothing_else_does() {
    let report = copied();
    let file = file(&report);
    let all = ["treatments", "transactions"].map(|list| file[list].as_array().unwrap());
    let first = [
        report.acquisitions[0].written.entry,
        report.administrations[0].written.entry,
        report.disposals[0].written.entry,
    ];
    let mut told = 0;
    for item in all.into_iter().flatten() {
        let is_first = first.iter().any(|entry| item["meta"]["sourceId"] == entry.to_string());
        let remark = item["remark"].as_str().unwrap();
        let says = remark.contains("copied from red notebook 2025, written there on 2025-04-12");
        assert_eq!(says, is_first, "{item:#}");
        told += usize::from(says);
    }
    assert!(told >= 4, "a receipt, two treatments and their use, a disposal");
}

/// A corrected entry goes out under the id of the first one, so that a reader replaces what it has.
#[test]
fn a_corrected_entry_keeps_its_id_with_a_later_time() {
    let report = demo();
    let file = file(&report);
    let corrected: Vec<_> = report.acquisitions.iter().filter(|row| row.written.corrects.is_some()).collect();
    assert!(!corrected.is_empty());
    for row in corrected {
        let first = row.written.first_entry.to_string();
        let transactions = file["transactions"].as_array().unwrap();
        let item = transactions.iter().find(|item| item["id"] == first.as_str()).unwrap();
        assert_eq!(item["meta"]["sourceId"], row.written.entry.to_string());
        assert_ne!(first, row.written.entry.to_string());
        assert!(
            item["meta"]["modified"].as_str().unwrap() > row.written.first_recorded_at.to_string().as_str()
        );
    }
}

/// A program that was sent an entry hears that it was struck out: `meta.isDeleted`, "whether this resource has been deleted
/// in the source system" by the standard's table of `icarMetaDataType`, under the id it knows.
#[test]
fn what_was_struck_out_goes_out_again_as_deleted_with_the_id_it_had() {
    let treatment = schema(include_str!("../exchange/schemas/group-treatment.json"));
    let movement = schema(include_str!("../exchange/schemas/medicine-transaction.json"));
    let mut holding = demo_holding();
    let before = file(&register(&holding, "2025-01-01", "2026-12-31"));
    let report = register(&holding, "2025-01-01", "2026-12-31");
    // The latest of each: nothing else depends on it.
    let given = report.administrations.iter().rev().map(|row| &row.written);
    let disposed = report.disposals.iter().map(|row| &row.written);
    let mut struck_out = Vec::new();
    for (number, written) in given.chain(disposed).enumerate() {
        let draft = Draft {
            correction: Some(Box::new(Correction { of: written.entry, reason: "written twice".to_owned() })),
            ..Draft::new(
                id(7_000 + number),
                day("2026-11-20"),
                "A. Keeper".parse().unwrap(),
                Event::from(StrikeOut {}),
            )
        };
        if take_in(&mut holding, draft, "2026-11-20T10:00:00.000Z").is_ok() {
            struck_out.push(written.clone());
        }
    }
    let after = file(&register(&holding, "2025-01-01", "2026-12-31"));
    let mut kinds = std::collections::BTreeSet::new();
    for written in &struck_out {
        for (list, validator) in [("treatments", &treatment), ("transactions", &movement)] {
            let of_entry = |file: &Value| -> Vec<Value> {
                let all = file[list].as_array().unwrap().iter();
                let first = written.first_entry.to_string();
                all.filter(|item| item["id"].as_str().unwrap().starts_with(&first)).cloned().collect()
            };
            let (was, now) = (of_entry(&before), of_entry(&after));
            assert_eq!(was.is_empty(), now.is_empty(), "{list} of {}", written.entry);
            for item in &now {
                assert_eq!(item["meta"]["isDeleted"], true, "{item:#}");
                assert_eq!(item["meta"]["modified"], "2026-11-20T10:00:00.000Z");
                assert_eq!(item["remark"], "struck out: written twice");
                assert!(validator.is_valid(item), "{item:#}");
                assert!(was.iter().any(|old| old["id"] == item["id"]), "it had another id: {}", item["id"]);
                kinds.insert(item.get("transactionKind").map_or("treatment".to_owned(), ToString::to_string));
            }
            let colonies = |items: &[Value]| -> std::collections::BTreeSet<String> {
                let sets = items.iter().filter_map(|item| item["embeddedAnimalSet"]["member"].as_array());
                sets.flatten().map(|member| member["id"].to_string()).collect()
            };
            assert!(colonies(&now).is_subset(&colonies(&was)), "{list} of {}", written.entry);
        }
    }
    assert_eq!(kinds.into_iter().collect::<Vec<_>>(), ["\"Disposal\"", "\"Use\"", "treatment"]);
}
