//! The exchange file against JSON Schemas written from the standard's tables of properties.
//!
//! Source: ICAR Animal Data Exchange, development branch of 8 February 2024, by its tables of properties (`tests/exchange/schemas`).

use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::basics::words::ColonyName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Draft;
use combclear_domain::journal::entry::Correction;
use combclear_domain::journal::event::{Event, StrikeOut};
use combclear_domain::questions::register::{AdministrationRow, StruckOutRow};
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
        let gone = |list: &Vec<Value>| list.iter().filter(|item| item["meta"]["isDeleted"] == true).count();
        // What a vet gave from the vet's own stock moved nothing in the keeper's.
        let lots: BTreeSet<_> = report
            .administrations
            .iter()
            .flat_map(|row| {
                row.given.iter().filter(|part| !part.of_vet).map(move |part| (row.written.entry, &part.lot))
            })
            .collect();
        let given = lots.len();
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
        for list in [treatments, movements] {
            let ids: BTreeSet<&str> = list.iter().map(|item| item["id"].as_str().unwrap()).collect();
            assert_eq!(ids.len(), list.len(), "an id stands twice");
        }
        for row in &report.administrations {
            each_colony_once(row, treatments);
        }
    }
}

/// Each colony that was given it is in one treatment of the entry, and each that received it later in another.
fn each_colony_once(row: &AdministrationRow, treatments: &[Value]) {
    let entry = row.written.entry.to_string();
    let of_entry = treatments.iter().filter(|item| item["meta"]["sourceId"] == entry.as_str());
    let standing = of_entry.filter(|item| item["meta"]["isDeleted"].is_null());
    let of_sets = standing.flat_map(|item| item["embeddedAnimalSet"]["member"].as_array().unwrap());
    let mut sent: Vec<&str> = of_sets.map(|member| member["id"].as_str().unwrap()).collect();
    let came = row.courses.iter().filter(|part| part.came_by.is_some()).flat_map(|part| &part.colonies);
    let given: BTreeSet<_> = row.given.iter().flat_map(|part| &part.colonies).collect();
    let mut wanted: Vec<&str> = given.into_iter().chain(came).map(ColonyName::as_str).collect();
    sent.sort_unstable();
    wanted.sort_unstable();
    assert_eq!(sent, wanted, "{entry}");
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
    let of_entry = all.filter(|item| item["meta"]["sourceId"] == entry);
    of_entry.filter(|item| item["meta"]["isDeleted"].is_null()).cloned().collect()
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
    for item in all.into_iter().flatten().filter(|item| item["meta"]["isDeleted"].is_null()) {
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
    let mut kinds = BTreeSet::new();
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
                kinds.insert(item.get("transactionKind").map_or("treatment".to_owned(), ToString::to_string));
            }
            for old in &was {
                assert!(
                    now.iter().any(|item| item["id"] == old["id"]),
                    "nobody says that {} is gone",
                    old["id"]
                );
            }
            let colonies = |items: &[Value]| -> BTreeSet<String> {
                let sets = items.iter().filter_map(|item| item["embeddedAnimalSet"]["member"].as_array());
                sets.flatten().map(|member| member["id"].to_string()).collect()
            };
            assert!(colonies(&now).is_subset(&colonies(&was)), "{list} of {}", written.entry);
        }
    }
    assert_eq!(kinds.into_iter().collect::<Vec<_>>(), ["\"Disposal\"", "\"Use\"", "treatment"]);
}

/// What a program holds that takes in each sending in its order: by id, replacing what it had and dropping what is deleted.
#[derive(Default)]
struct Reader(BTreeMap<String, Value>, usize);

impl Reader {
    fn take_in(&mut self, sending: &[&Value]) {
        for item in sending {
            let id = item["id"].as_str().unwrap().to_owned();
            if item["meta"]["isDeleted"] == true {
                self.1 += usize::from(self.0.remove(&id).is_some());
                continue;
            }
            if let Some(known) = self.0.get(&id).filter(|known| known != item) {
                let (was, now) = (&known["meta"]["modified"], &item["meta"]["modified"]);
                assert!(was.as_str() <= now.as_str(), "{id} was changed, with an earlier time: {was}, {now}");
            }
            self.0.insert(id, (*item).clone());
        }
    }
}

/// A sending as it is, without what is on hand: that is a state of its day, with an id of that day.
fn sending(file: &Value) -> Vec<&Value> {
    let lists = ["treatments", "transactions"].map(|list| file[list].as_array().unwrap());
    lists.into_iter().flatten().filter(|item| item["transactionKind"] != "OnHand").collect()
}

/// Source: ICAR Animal Data Exchange, `icarMetaDataType`: a reader follows a source by id, `modified` and `isDeleted`.
#[test]
fn whoever_takes_in_every_sending_has_what_the_last_one_says() {
    let mut holding = Holding::new("demo".parse().unwrap());
    let mut reader = Reader::default();
    for (place, entry) in combclear_testkit::files::demo().iter().enumerate() {
        holding.restore(entry);
        if place % 3 != 0 && !matches!(&entry.draft.event, Event::Removal(_)) {
            continue;
        }
        let file = file(&register(&holding, "2025-01-01", "2026-12-31"));
        let sending = sending(&file);
        reader.take_in(&sending);
        let standing: BTreeMap<String, Value> = sending
            .iter()
            .filter(|item| item["meta"]["isDeleted"] != true)
            .map(|item| (item["id"].as_str().unwrap().to_owned(), (*item).clone()))
            .collect();
        let (known, now): (BTreeSet<_>, BTreeSet<_>) = (reader.0.keys().collect(), standing.keys().collect());
        assert_eq!(known, now, "after entry {}", place + 1);
        assert!(reader.0 == standing);
    }
    assert!(reader.1 > 0, "no sending ever took anything back");
}

/// Strips that came out of two hives on one day, written down one after the other: two groups became one.
#[test]
fn a_group_that_joined_another_is_deleted_under_its_own_id() {
    let entries = [
        r#"{ on = "2026-01-01", kind = "holding_details", body = { keeper = "K", jurisdiction = "gb" } }"#,
        r#"{ on = "2026-01-01", kind = "apiary_details", body = { apiary = "East" } }"#,
        r#"{ on = "2026-01-01", kind = "colony_established", body = { colony = "A1", apiary = "East", medicines = "none" } }"#,
        r#"{ on = "2026-01-01", kind = "colony_established", body = { colony = "A2", apiary = "East", medicines = "none" } }"#,
        r#"{ on = "2026-01-01", kind = "medicine_described", body = { medicine = "strip", pack_name = "Strip", unit = "strip", leaflet = "amitraz-strip-500mg-a" } }"#,
        r#"{ on = "2026-01-01", kind = "lot_acquired", body = { lot = "S-1", medicine = "strip", quantity = 20 } }"#,
        r#"{ id = "in", on = "2026-03-02", kind = "administration", body = { given = [{ lot = "S-1", each = 2, colonies = ["A1", "A2"] }] } }"#,
        r#"{ on = "2026-05-11", kind = "removal", body = { administration = "in", colonies = ["A1"] } }"#,
        r#"{ on = "2026-05-11", kind = "removal", body = { administration = "in", colonies = ["A2"] } }"#,
    ];
    let told = |count: usize| -> Vec<String> {
        let text = format!("entry = [{}]", entries[..count].join(", "));
        let table: toml::Table = toml::from_str(&text).unwrap();
        let holding = combclear_testkit::entries::holding(table["entry"].as_array().unwrap()).unwrap();
        let file = file(&register(&holding, "2026-01-01", "2026-12-31"));
        let all = file["treatments"].as_array().unwrap().iter();
        all.map(|item| {
            let id = item["id"].as_str().unwrap();
            let gone = if item["meta"]["isDeleted"] == true { " deleted" } else { "" };
            format!("{}{gone}", id.split_once('/').unwrap().1)
        })
        .collect()
    };
    assert_eq!(told(7), ["treatment/A1"]);
    assert_eq!(told(8), ["treatment/A1", "treatment/A2"]);
    assert_eq!(told(9), ["treatment/A1", "treatment/A2 deleted"]);
}
