//! `/holdings/{holding}/colonies/{colony}/treatment-options` and `/holdings/{holding}/apiaries/{apiary}/treatment-options`
//!
//! A holding in a jurisdiction with invented leaflets. The saltings are under water until 25 April, have no power and are
//! reached on foot; thrift is expected there from 1 June. `C1` has brood, `C2` has none, `C3` was never inspected.

use std::sync::Arc;

use combclear_domain::rules::leaflet::Leaflets;
use serde_json::{Value, json};

use crate::bench::{Bench, TODAY};
use crate::seed::{self, entry};

const HOLDING: &str = "/holdings/lowland";
const COLONY: &str = "/holdings/lowland/colonies/C1/treatment-options";
const APIARY: &str = "/holdings/lowland/apiaries/saltings/treatment-options";

fn leaflets() -> Arc<Leaflets> {
    let files = [
        ("zz/pad.toml", include_str!("../data/zz/pad.toml")),
        ("zz/salt.toml", include_str!("../data/zz/salt.toml")),
        ("zz/strip.toml", include_str!("../data/zz/strip.toml")),
    ];
    Arc::new(Leaflets::load(files).unwrap())
}

fn entries() -> Vec<Value> {
    let colony = |number: u32, colony: &str| {
        let body = json!({ "colony": colony, "apiary": "saltings", "medicines": "none" });
        entry(number, "2026-01-05", "colony_established", body)
    };
    let medicine = |number: u32, medicine: &str, unit: &str| {
        let body = json!({ "medicine": medicine, "pack_name": format!("Demo {medicine}"), "unit": unit, "leaflet": medicine });
        entry(number, "2026-01-10", "medicine_described", body)
    };
    let lot = |number: u32, lot: &str, medicine: &str, quantity: u32, expiry: &str| {
        let body = json!({ "lot": lot, "medicine": medicine, "quantity": quantity, "expiry": expiry });
        entry(number, "2026-01-10", "lot_acquired", body)
    };
    let forecast = json!([
        { "day": "2026-04-11", "min_c": 3.5, "max_c": 12 },
        { "day": "2026-04-12", "min_c": 2, "max_c": 9.5 },
        { "day": "2026-04-13", "min_c": 4, "max_c": 15 },
        { "day": "2026-04-14", "min_c": 6, "max_c": 16.5 },
    ]);
    vec![
        entry(1, "2026-01-02", "holding_details", json!({ "keeper": "A. Keeper", "jurisdiction": "zz" })),
        entry(2, "2026-01-02", "apiary_details", json!({ "apiary": "saltings" })),
        colony(3, "C1"),
        colony(4, "C2"),
        colony(5, "C3"),
        medicine(6, "strip", "strip"),
        medicine(7, "pad", "piece"),
        lot(8, "strips-1", "strip", 10, "2027-06-30"),
        lot(9, "strips-0", "strip", 4, "2026-03-31"),
        lot(10, "pads-1", "pad", 3, "2026-12-31"),
        entry(
            11,
            "2026-04-01",
            "site_conditions",
            json!({ "apiary": "saltings", "power": "none", "access": "on_foot" }),
        ),
        entry(
            12,
            "2026-04-02",
            "nectar_flow",
            json!({
                "apiary": "saltings", "forage": "thrift", "stage": "expected", "from_early": "2026-05-25",
                "from": "2026-06-01", "from_late": "2026-06-08", "to": "2026-07-01",
            }),
        ),
        entry(
            13,
            "2026-04-02",
            "temperature_normals",
            json!({
                "apiary": "saltings", "months": [{ "month": 4, "min_c": 4, "max_c": 14.5 }, { "month": 5, "min_c": 8, "max_c": 18 }],
                "origin": "the nearest station",
            }),
        ),
        entry(14, "2026-04-09", "inspection", json!({ "colony": "C1", "brood": "present", "seams": 6 })),
        entry(15, "2026-04-09", "inspection", json!({ "colony": "C2", "brood": "absent", "seams": 4 })),
        entry(
            16,
            "2026-04-10",
            "site_conditions",
            json!({ "apiary": "saltings", "ground": "flooded", "until": "2026-04-25" }),
        ),
        entry(
            17,
            TODAY,
            "temperature",
            json!({ "apiary": "saltings", "stage": "forecast", "days": forecast, "origin": "the forecast" }),
        ),
    ]
}

async fn bench() -> Bench {
    let bench = Bench::with(leaflets()).await;
    let mut entries = entries();
    seed::begin(&bench, "lowland", &entries.remove(0)).await;
    let answer = bench.post(&format!("{HOLDING}/entries"), &Value::Array(entries)).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    bench
}

#[tokio::test]
async fn a_colony_is_answered_with_every_option_in_order_and_all_that_it_turns_on() {
    let answer = bench().await.get(&format!("{COLONY}?to=2026-05-10")).await.good();
    insta::assert_json_snapshot!(answer);
}

#[tokio::test]
async fn an_apiary_is_answered_for_all_its_colonies_together() {
    let answer = bench().await.get(&format!("{APIARY}?to=2026-05-10")).await.good();
    insta::assert_json_snapshot!(answer);
}

#[tokio::test]
async fn without_days_it_is_sixty_from_today_as_of_the_first_of_them() {
    let bench = bench().await;
    for path in [COLONY, APIARY] {
        let days = async |query: &str| {
            let answer = bench.get(&format!("{path}{query}")).await.good();
            [answer["from"].clone(), answer["to"].clone(), answer["as_of"].clone()]
        };
        assert_eq!(days("").await, ["2026-04-11", "2026-06-09", "2026-04-11"]);
        assert_eq!(days("?from=2026-05-01").await, ["2026-05-01", "2026-06-29", "2026-05-01"]);
        assert_eq!(days("?to=2026-04-11").await, ["2026-04-11", "2026-04-11", "2026-04-11"]);
        let all = days("?from=2026-05-01&to=2026-05-02&as_of=2026-04-11").await;
        assert_eq!(all, ["2026-05-01", "2026-05-02", "2026-04-11"]);
        assert_eq!(days("?from=2199-12-31").await[1], "2199-12-31", "the calendar ends there");
    }
}

#[tokio::test]
async fn every_day_asked_about_stands_in_exactly_one_range_of_every_option() {
    let answer = bench().await.get(COLONY).await.good();
    let options = answer["options"].as_array().unwrap();
    assert_eq!(options.len(), 4);
    for option in options {
        let mut next: Option<combclear_domain::Day> = None;
        let day = |value: &Value| value.as_str().unwrap().parse::<combclear_domain::Day>().unwrap();
        for days in option["days"].as_array().unwrap() {
            let (from, to) = (day(&days["from"]), day(&days["to"]));
            assert_eq!(from, next.unwrap_or_else(|| day(&answer["from"])), "{option}");
            assert!(from <= to, "{option}");
            next = Some(to.next());
        }
        assert_eq!(next, Some(day(&answer["to"]).next()), "{option}");
    }
}

/// The answer of an option on the first day asked about.
fn on_first_day(report: &Value, leaflet: &str, method: Option<&str>) -> String {
    let options = report["options"].as_array().unwrap();
    let meant = |option: &&Value| option["leaflet"] == leaflet && option["method"].as_str() == method;
    let option = options.iter().find(meant).unwrap_or_else(|| panic!("no {leaflet}, {method:?}: {report}"));
    option["days"][0]["answer"].as_str().unwrap().to_owned()
}

#[tokio::test]
async fn what_is_assumed_of_the_site_holds_for_its_days_and_is_not_recorded() {
    let bench = bench().await;
    let path = "/holdings/lowland/colonies/C2/treatment-options";
    let answer = async |query: &str| bench.get(&format!("{path}?{query}")).await.good();
    let vapour = |report: &Value| on_first_day(report, "salt", Some("vapour"));
    let before = answer("to=2026-04-14").await;
    assert_eq!((vapour(&before).as_str(), &before["what_if"]), ("ruled_out", &Value::Null));
    // A battery alone does not dry the ground.
    assert_eq!(vapour(&answer("to=2026-04-14&power=battery").await), "ruled_out");
    let both = answer("to=2026-04-14&power=battery&ground=dry&site_until=2026-04-12").await;
    let what_if = json!({ "power": "battery", "ground": "dry", "until": "2026-04-12" });
    assert_eq!((vapour(&both).as_str(), &both["what_if"]), ("usable", &what_if));
    let days =
        both["options"].as_array().unwrap().iter().find(|option| option["method"] == "vapour").unwrap();
    let days: Vec<String> = days["days"]
        .as_array()
        .unwrap()
        .iter()
        .map(|days| format!("{} {} {}", days["from"], days["to"], days["answer"]).replace('"', ""))
        .collect();
    assert_eq!(days, ["2026-04-11 2026-04-12 usable", "2026-04-13 2026-04-14 ruled_out"]);
    // A colony that cannot be reached cannot be treated.
    let cut_off = answer("to=2026-04-14&access=none").await;
    for option in cut_off["options"].as_array().unwrap() {
        assert_eq!(option["answer"], "ruled_out", "{option}");
    }
    let one_day =
        answer("from=2026-04-11&to=2026-04-11&power=battery&ground=dry&site_until=2026-04-11").await;
    assert_eq!(vapour(&one_day), "usable");
    assert_eq!(answer("to=2026-04-14").await, before);
    assert_eq!(bench.entries_of("lowland").await, 17);
}

#[tokio::test]
async fn what_happened_after_the_day_as_of_which_is_asked_does_not_bear_on_the_answer() {
    let bench = bench().await;
    let path = "/holdings/lowland/colonies/C2/treatment-options?from=2026-04-11&to=2026-04-11";
    let answer = async |as_of: &str| {
        let report = bench.get(&format!("{path}{as_of}")).await.good();
        on_first_day(&report, "salt", Some("trickle"))
    };
    assert_eq!(answer("").await, "usable");
    assert_eq!(answer("&as_of=2026-04-09").await, "usable");
    assert_eq!(answer("&as_of=2026-04-08").await, "unknown", "its brood was seen on the day after");
}

#[tokio::test]
async fn a_new_entry_shows_in_the_next_answer() {
    let bench = bench().await;
    let path = "/holdings/lowland/colonies/C3/treatment-options?to=2026-04-11";
    let trickle = |report: &Value| on_first_day(report, "salt", Some("trickle"));
    assert_eq!(trickle(&bench.get(path).await.good()), "unknown");
    let seen = entry(30, TODAY, "inspection", json!({ "colony": "C3", "brood": "absent", "seams": 5 }));
    bench.put(&format!("{HOLDING}/entries/{}", seed::id(30)), &seen).await.good();
    assert_eq!(trickle(&bench.get(path).await.good()), "usable");
}

#[tokio::test]
async fn a_holding_without_a_jurisdiction_has_no_options_and_is_told_what_is_missing() {
    let bench = bench().await;
    let mut struck_out = entry(40, TODAY, "strike_out", json!({}));
    struck_out["corrects"] = json!(seed::id(1));
    struck_out["reason"] = json!("another holding");
    bench.put(&format!("{HOLDING}/entries/{}", seed::id(40)), &struck_out).await.good();
    for path in [COLONY, APIARY] {
        let answer = bench.get(path).await.good();
        assert_eq!((&answer["options"], &answer["jurisdiction"]), (&json!([]), &Value::Null));
        assert_eq!(answer["missing"].as_array().unwrap().len(), 1, "{answer}");
        assert_eq!(answer["missing"][0]["supplied_by"], "holding_details");
    }
}

#[tokio::test]
async fn the_same_question_is_answered_with_the_same_bytes() {
    let (one, two) = (bench().await, bench().await);
    for path in [COLONY, APIARY] {
        let answer = one.get(path).await;
        assert_eq!(answer.status, 200);
        assert_eq!(answer.body, two.get(path).await.body);
    }
}

#[tokio::test]
async fn a_colony_or_an_apiary_that_there_is_not_is_a_problem_that_names_the_nearest() {
    let bench = bench().await;
    let is_new = "look it up among the apiaries of the holding; if it is new, record its details";
    for (path, slug, parameter, detail, help) in [
        (
            "colonies/C12",
            "unknown-colony",
            "colony",
            "no entry of the holding `lowland` mentions a colony `C12`",
            "did you mean `C1`?",
        ),
        (
            "apiaries/salting",
            "unknown-apiary",
            "apiary",
            "the holding `lowland` has no apiary `salting`",
            "did you mean `saltings`?",
        ),
        (
            "apiaries/hilltop",
            "unknown-apiary",
            "apiary",
            "the holding `lowland` has no apiary `hilltop`",
            is_new,
        ),
    ] {
        let path = format!("{HOLDING}/{path}/treatment-options");
        assert_eq!(bench.get(&path).await.fault(404, slug, &path), three(parameter, detail, help), "{path}");
    }
    let path = format!("{HOLDING}/colonies/nucleus/treatment-options");
    let help = bench.get(&path).await.fault(404, "unknown-colony", &path).2;
    assert!(!help.contains("did you mean"), "{help}");
}

/// Place, message and help, which must be the same for both questions.
async fn fault(bench: &Bench, query: &str) -> (String, String, String) {
    let fault = bench.get(&format!("{COLONY}?{query}")).await.fault(400, "bad-parameter", COLONY);
    let of_apiary = bench.get(&format!("{APIARY}?{query}")).await.fault(400, "bad-parameter", APIARY);
    assert_eq!(fault, of_apiary, "{query}");
    fault
}

fn three(at: &str, detail: &str, help: &str) -> (String, String, String) {
    (at.to_owned(), detail.to_owned(), help.to_owned())
}

#[tokio::test]
async fn days_that_cannot_be_asked_about_are_a_problem() {
    let bench = bench().await;
    for (query, detail, help) in [
        (
            "from=2026-05-02&to=2026-05-01",
            "the last day 2026-05-01 is before the first, 2026-05-02",
            "swap `from` and `to`, or correct one of them",
        ),
        (
            "to=2026-04-10",
            "the last day 2026-04-10 is before the first, 2026-04-11",
            "swap `from` and `to`, or correct one of them",
        ),
        (
            "from=2026-01-01&to=2027-02-05",
            "401 days are too many: at most 400 can be asked about at once",
            "ask about a shorter period",
        ),
        (
            "from=1900-01-01&to=2199-12-31",
            "109573 days are too many: at most 400 can be asked about at once",
            "ask about a shorter period",
        ),
    ] {
        assert_eq!(fault(&bench, query).await, three("to", detail, help), "{query}");
    }
    for path in [COLONY, APIARY] {
        let most = bench.get(&format!("{path}?from=2026-01-01&to=2027-02-04")).await.good();
        assert_eq!(most["to"], "2027-02-04");
    }
    for parameter in ["from", "to", "as_of", "site_until"] {
        let (at, detail, help) = fault(&bench, &format!("{parameter}=2025-02-29")).await;
        assert_eq!((at.as_str(), detail.as_str()), (parameter, "`2025-02-29` is not a day of the calendar"));
        assert_eq!(help, format!("correct `{parameter}`, or leave it out"));
    }
}

#[tokio::test]
async fn a_word_that_is_not_of_the_list_is_a_problem_that_names_the_words() {
    let bench = bench().await;
    for (parameter, word, words) in [
        ("power", "batery", ["none", "battery", "generator", "mains"].as_slice()),
        ("power", "", &["none", "battery", "generator", "mains"]),
        ("access", "on+foot", &["vehicle", "on_foot", "none"]),
        ("access", "Vehicle", &["vehicle", "on_foot", "none"]),
        ("ground", "flood", &["dry", "wet", "flooded"]),
    ] {
        let (at, detail, help) = fault(&bench, &format!("{parameter}={word}")).await;
        assert_eq!(at, parameter, "{word}: {detail}");
        assert!(detail.contains(&format!("`{}`", word.replace('+', " "))), "{detail}");
        for word in words {
            assert!(detail.contains(&format!("`{word}`")), "{detail}");
        }
        assert!(!help.is_empty(), "{detail}");
    }
}

#[tokio::test]
async fn a_query_parameter_that_there_is_not_or_that_is_given_twice_is_a_problem() {
    let bench = bench().await;
    let takes = "this path takes one of `from`, `to`, `as_of`, `power`, `access`, `ground`, `site_until`";
    for parameter in ["on", "From", "leaflet"] {
        let detail = format!("this path has no query parameter `{parameter}`");
        assert_eq!(fault(&bench, &format!("{parameter}=1")).await, three(parameter, &detail, takes));
    }
    let twice = fault(&bench, "ground=dry&ground=wet").await;
    assert_eq!(twice, three("ground", "the query parameter `ground` is given twice", "give it once"));
}

#[tokio::test]
async fn an_end_of_nothing_assumed_or_before_the_first_day_is_a_problem() {
    let bench = bench().await;
    let alone = three(
        "site_until",
        "`site_until` is given, but nothing is assumed about the site",
        "give `power`, `access` or `ground` as well, or leave it out",
    );
    assert_eq!(fault(&bench, "site_until=2026-04-20").await, alone);
    let before = three(
        "site_until",
        "what is assumed would end on 2026-04-30, before the first day, 2026-05-01",
        "give a later day, or leave it out",
    );
    assert_eq!(fault(&bench, "from=2026-05-01&ground=dry&site_until=2026-04-30").await, before);
}

/// The fault of an entry that the service cannot read.
async fn unreadable(bench: &Bench, kind: &str, body: Value) -> (String, String, String) {
    let path = format!("{HOLDING}/entries/{}", seed::id(40));
    let answer = bench.put(&path, &entry(40, TODAY, kind, body)).await;
    answer.fault(422, "unreadable-entry", &path)
}

#[tokio::test]
async fn fahrenheit_handed_over_as_celsius_is_a_problem_with_what_it_would_be() {
    let bench = bench().await;
    let good = json!({ "day": "2026-04-11", "min_c": 3.5, "max_c": 12 });
    let days = |day: Value| json!({ "apiary": "saltings", "stage": "forecast", "days": [good, day] });
    let months = |month: Value| json!({ "apiary": "saltings", "months": [month] });
    // 75 °F are 23.9 °C, 50.1 °F are 10.1 °C, 140 °F are 60 °C.
    for (kind, body, pointer, written, celsius) in [
        (
            "temperature",
            days(json!({ "day": "2026-04-12", "min_c": 12, "max_c": 75 })),
            "/body/days/1/max_c",
            "75",
            Some("23.9"),
        ),
        (
            "temperature",
            days(json!({ "day": "2026-04-12", "min_c": 50.1, "max_c": 49 })),
            "/body/days/1/min_c",
            "50.1",
            Some("10.1"),
        ),
        (
            "temperature_normals",
            months(json!({ "month": 7, "min_c": 20, "max_c": 140 })),
            "/body/months/0/max_c",
            "140",
            Some("60.0"),
        ),
        // A value implausible even in Fahrenheit is refused without that hint.
        (
            "temperature_normals",
            months(json!({ "month": 7, "min_c": 20, "max_c": 1e3 })),
            "/body/months/0/max_c",
            "1000",
            None,
        ),
        (
            "temperature",
            days(json!({ "day": "2026-04-12", "min_c": -60.1, "max_c": 1 })),
            "/body/days/1/min_c",
            "-60.1",
            None,
        ),
    ] {
        let (at, detail, help) = unreadable(&bench, kind, body).await;
        assert_eq!(at, pointer, "{detail}");
        assert!(detail.contains(&format!("`{written}")), "{detail}");
        assert!(detail.contains("it is out of range; write degrees Celsius between -60 and 50"), "{detail}");
        let hint = celsius.map(|celsius| format!("if it is in Fahrenheit, write {celsius}"));
        let said = format!("{detail}; {help}");
        assert_eq!(said.contains("Fahrenheit"), hint.is_some(), "{said}");
        assert!(said.contains(&hint.unwrap_or_default()), "{said}");
    }
    assert_eq!(bench.entries_of("lowland").await, 17);
}

#[tokio::test]
async fn everything_that_is_wrong_with_an_entry_is_said_at_once() {
    let bench = bench().await;
    let path = format!("{HOLDING}/entries/{}", seed::id(40));
    let days = json!([{ "day": "2026-04-12", "min_f": 36, "max_c": 2 }]);
    let mut sent =
        entry(40, TODAY, "temperature", json!({ "apiary": "saltings", "stage": "guessed", "days": days }));
    sent["colour"] = json!("blue");
    let problem = bench.put(&path, &sent).await.problem(422, "unreadable-entry", &path);
    let places: Vec<_> = problem["errors"]
        .as_array()
        .unwrap()
        .iter()
        .map(|fault| fault["pointer"].as_str().unwrap())
        .collect();
    // Two faults of one day: a field that there is not, and another that is missing.
    assert_eq!(places, ["/colour", "/body/days/0/min_f", "/body/days/0", "/body/stage"]);
}

#[tokio::test]
async fn temperatures_and_words_that_cannot_be_read_are_a_problem_that_points_at_them() {
    let bench = bench().await;
    let day = |min: Value, max: Value| {
        let days = json!([{ "day": "2026-04-12", "min_c": min, "max_c": max }]);
        json!({ "apiary": "saltings", "stage": "forecast", "days": days })
    };
    let no_days = json!({ "apiary": "saltings", "stage": "forecast" });
    let stage = json!({ "apiary": "saltings", "stage": "guessed", "days": [] });
    let month = |month: Value| json!({ "apiary": "saltings", "months": [month] });
    let reading = |confirms: Value| json!({ "lot": "strips-1", "terms": {}, "confirms": confirms });
    for (kind, body, pointer, part) in [
        (
            "temperature",
            day(json!(1.25), json!(2)),
            "/body/days/0/min_c",
            "`1.25` is not a temperature: one decimal is kept",
        ),
        (
            "temperature",
            day(json!(1), json!(-0.05)),
            "/body/days/0/max_c",
            "`-0.05` is not a temperature: one decimal",
        ),
        ("temperature", day(json!("1"), json!(2)), "/body/days/0/min_c", "\"1\""),
        ("temperature", day(json!(null), json!(2)), "/body/days/0/min_c", "null"),
        ("temperature", stage, "/body/stage", "`guessed`"),
        ("temperature", no_days, "/body", "missing field `days`"),
        (
            "temperature",
            json!({ "apiary": "saltings", "stage": "forecast", "days": [{ "day": "2026-04-12", "max_c": 2 }] }),
            "/body/days/0",
            "missing field `min_c`",
        ),
        (
            "temperature",
            json!({ "apiary": "saltings", "stage": "forecast", "days": [{ "day": "2026-04-12", "min_c": 2, "max_c": 9, "min_f": 36 }] }),
            "/body/days/0/min_f",
            "unknown field `min_f`",
        ),
        (
            "temperature_normals",
            month(json!({ "month": 4, "min_c": 1.25, "max_c": 14 })),
            "/body/months/0/min_c",
            "`1.25` is not a temperature",
        ),
        (
            "temperature_normals",
            month(json!({ "month": "April", "min_c": 1, "max_c": 14 })),
            "/body/months/0/month",
            "April",
        ),
        (
            "site_conditions",
            json!({ "apiary": "saltings", "ground": "flood" }),
            "/body/ground",
            "unknown word `flood`, expected one of `dry`, `wet`, `flooded`",
        ),
        (
            "site_conditions",
            json!({ "apiary": "saltings", "power": "12 V" }),
            "/body/power",
            "unknown word `12 V`, expected one of `none`, `battery`, `generator`, `mains`",
        ),
        (
            "site_conditions",
            json!({ "apiary": "saltings", "access": "boat" }),
            "/body/access",
            "unknown word `boat`, expected one of `vehicle`, `on_foot`, `none`",
        ),
        (
            "site_conditions",
            json!({ "apiary": "saltings", "electricity": "none" }),
            "/body/electricity",
            "unknown field",
        ),
        (
            "nectar_flow",
            json!({ "apiary": "saltings", "forage": "lime", "stage": "expected", "from": "2026-06-20", "from_early": "June" }),
            "/body/from_early",
            "`June` is not a date",
        ),
        (
            "leaflet_reading",
            reading(json!([{ "topic": "colour", "says": "red" }])),
            "/body/confirms/0/topic",
            "`colour`",
        ),
        (
            "leaflet_reading",
            reading(json!([{ "topic": "class" }])),
            "/body/confirms/0",
            "missing field `says`",
        ),
        ("leaflet_reading", reading(json!(["class"])), "/body/confirms/0", "class"),
    ] {
        let (at, detail, help) = unreadable(&bench, kind, body).await;
        assert_eq!(at, pointer, "{kind}: {detail}");
        assert!(detail.contains(part), "{kind}: {detail}");
        assert!(!help.is_empty() && !detail.ends_with('.'), "{kind}: {detail}");
    }
    assert_eq!(bench.entries_of("lowland").await, 17);
}

#[tokio::test]
async fn a_confirmed_value_that_cannot_be_read_is_a_problem_that_points_at_its_field() {
    let bench = bench().await;
    for (confirmed, pointer, part) in [
        (
            json!({ "topic": "dose", "value": { "amount": 2, "per": "hive", "colour": "red" } }),
            "/body/confirms/0/value/colour",
            "unknown field `colour`",
        ),
        (
            json!({ "topic": "brood", "value": { "value": "absent" }, "says": "brood absent" }),
            "/body/confirms/0",
            "`says` and `value` are both given",
        ),
    ] {
        let body = json!({ "lot": "strips-1", "terms": {}, "confirms": [confirmed] });
        let (at, detail, help) = unreadable(&bench, "leaflet_reading", body).await;
        assert_eq!(at, pointer, "{detail}");
        assert!(detail.contains(part) && !help.is_empty(), "{detail}");
    }
    assert_eq!(bench.entries_of("lowland").await, 17);
}

#[tokio::test]
async fn temperatures_that_cannot_be_true_are_refused() {
    let bench = bench().await;
    let path = format!("{HOLDING}/entries/{}", seed::id(40));
    let days = json!([{ "day": "2026-04-12", "min_c": 9, "max_c": 4.5 }]);
    let body = json!({ "apiary": "saltings", "stage": "forecast", "days": days });
    let answer = bench.put(&path, &entry(40, TODAY, "temperature", body)).await;
    let want = three(
        "/body/days/0/min_c",
        "the lowest temperature 9 is above the highest, 4.5",
        "swap or correct them",
    );
    assert_eq!(answer.fault(422, "refused-entry", &path), want);
    assert_eq!(bench.entries_of("lowland").await, 17);
}

#[tokio::test]
async fn temperatures_are_kept_as_they_were_written() {
    let bench = bench().await;
    let answer = bench.get(&format!("{HOLDING}/entries/{}", seed::id(17))).await.good();
    assert_eq!(answer["body"], entries()[16]["body"]);
}
