//! `combclear options`: what else can be used in a colony or at an apiary, with invented leaflets.
//!
//! The saltings are under water until 25 April, have no power and are reached on foot; thrift is expected there from 1 June.
//! `C1` has brood, `C2` has none, `C3` was never inspected. Nothing is known of the hill, where `H1` stands.

use serde_json::{Value, json};

use crate::bench::{Bench, MINE, draft, lines};

const FROM: &str = "2026-04-11";
const TO: &str = "2026-05-10";

/// A folder with the holding imported, and the leaflets in `own`.
fn bench() -> Bench {
    let bench = Bench::new();
    std::fs::create_dir_all(bench.path("own/zz")).unwrap();
    bench.write("own/zz/pad.toml", include_str!("../api/data/zz/pad.toml"));
    bench.write("own/zz/salt.toml", include_str!("../api/data/zz/salt.toml"));
    bench.write("own/zz/strip.toml", include_str!("../api/data/zz/strip.toml"));
    let entries: Vec<String> = entries();
    bench.write("mine.jsonl", lines(std::iter::once(MINE).chain(entries.iter().map(String::as_str))));
    bench.run(&["import", "mine.jsonl"]).done();
    bench
}

fn entries() -> Vec<String> {
    let mut number = 0;
    let mut of = |on: &str, kind: &str, body: &Value| {
        number += 1;
        draft(number, on, kind, body)
    };
    let mut entries =
        vec![of("2026-01-02", "holding_details", &json!({"keeper": "me", "jurisdiction": "zz"}))];
    for apiary in ["Saltings", "Hill"] {
        entries.push(of("2026-01-02", "apiary_details", &json!({ "apiary": apiary })));
    }
    for (colony, apiary) in [("C1", "Saltings"), ("C2", "Saltings"), ("C3", "Saltings"), ("H1", "Hill")] {
        let body = json!({"colony": colony, "apiary": apiary, "medicines": "none"});
        entries.push(of("2026-01-05", "colony_established", &body));
    }
    for (medicine, unit, quantity, expiry) in
        [("strip", "strip", 10, "2027-06-30"), ("pad", "piece", 3, "2026-12-31")]
    {
        let body = json!({"medicine": medicine, "pack_name": medicine, "unit": unit, "leaflet": medicine});
        entries.push(of("2026-01-10", "medicine_described", &body));
        let body = json!({"lot": medicine, "medicine": medicine, "quantity": quantity, "expiry": expiry});
        entries.push(of("2026-01-10", "lot_acquired", &body));
    }
    let site = json!({"apiary": "Saltings", "power": "none", "access": "on_foot"});
    entries.push(of("2026-04-01", "site_conditions", &site));
    let flow = json!({
        "apiary": "Saltings", "forage": "thrift", "stage": "expected", "from_early": "2026-05-25",
        "from": "2026-06-01", "from_late": "2026-06-08", "to": "2026-07-01",
    });
    entries.push(of("2026-04-02", "nectar_flow", &flow));
    let months = json!([{"month": 4, "min_c": 4, "max_c": 14.5}, {"month": 5, "min_c": 8, "max_c": 18}]);
    entries.push(of("2026-04-02", "temperature_normals", &json!({"apiary": "Saltings", "months": months})));
    for (colony, brood, seams) in [("C1", "present", 6), ("C2", "absent", 4)] {
        let body = json!({"colony": colony, "brood": brood, "seams": seams});
        entries.push(of("2026-04-09", "inspection", &body));
    }
    let flood = json!({"apiary": "Saltings", "ground": "flooded", "until": "2026-04-25"});
    entries.push(of("2026-04-10", "site_conditions", &flood));
    let days = json!([
        {"day": "2026-04-11", "min_c": 3.5, "max_c": 12}, {"day": "2026-04-12", "min_c": 2, "max_c": 9.5},
        {"day": "2026-04-13", "min_c": 4, "max_c": 15}, {"day": "2026-04-14", "min_c": 6, "max_c": 16.5},
    ]);
    let forecast = json!({"apiary": "Saltings", "stage": "forecast", "days": days});
    entries.push(of("2026-04-11", "temperature", &forecast));
    entries
}

/// The question with these arguments, for the month of the tests.
fn ask<'a>(arguments: &[&'a str]) -> Vec<&'a str> {
    let mut ask = vec!["options", "--leaflets", "own", "--from", FROM, "--to", TO];
    ask.extend(arguments);
    ask
}

#[test]
fn a_colony_is_shown_with_its_options_in_three_lines_each_and_those_ruled_out_by_reason() {
    insta::assert_snapshot!(bench().run(&ask(&["C1"])).answered(0).out);
}

#[test]
fn a_colony_in_full_is_shown_with_every_option_and_what_each_turns_on() {
    insta::assert_snapshot!(bench().run(&ask(&["C1", "--full"])).answered(0).out);
}

#[test]
fn an_apiary_is_shown_with_its_options_in_few_lines_each() {
    insta::assert_snapshot!(bench().run(&ask(&["--apiary", "Saltings"])).answered(0).out);
}

#[test]
fn a_condition_of_one_day_names_that_day_alone() {
    let out = bench().run(&ask(&["C1", "--leaflet", "pad"])).answered(0).out;
    assert!(out.contains("\n        2026-04-12: broken, daily maximum 9.5 °C"), "{out}");
}

#[test]
fn one_leaflet_is_shown_with_every_condition_and_what_a_start_would_mean() {
    insta::assert_snapshot!(bench().run(&ask(&["C2", "--leaflet", "salt"])).answered(0).out);
}

#[test]
fn an_apiary_is_shown_with_the_colonies_for_which_an_option_is_usable_and_for_which_not() {
    insta::assert_snapshot!(bench().run(&ask(&["--apiary", "Saltings", "--full"])).answered(0).out);
}

#[test]
fn where_nothing_is_known_of_the_site_each_missing_fact_is_named_with_the_entry_that_supplies_it() {
    insta::assert_snapshot!(bench().run(&ask(&["H1", "--full"])).answered(4).out);
}

#[test]
fn what_is_assumed_of_the_site_is_shown_and_not_recorded() {
    let bench = bench();
    let kept = bench.kept();
    let assumed = ["C2", "--full", "--power", "battery", "--ground", "dry", "--site-until", "2026-04-12"];
    let ran = bench.run(&ask(&assumed)).answered(0);
    let head = "assumed for the site, not recorded: power battery, ground dry, until 2026-04-12";
    ran.says(&[head, "salt, vapour: usable"]);
    let before = bench.run(&ask(&["C2", "--full"])).answered(0);
    assert!(!before.out.contains("assumed"), "{}", before.out);
    before.says(&["salt, vapour: ruled out"]);
    assert_eq!(bench.kept(), kept);
}

#[test]
fn zero_is_usable_three_is_all_ruled_out_and_four_is_none_usable_but_not_all_ruled_out() {
    let bench = bench();
    for (arguments, code) in [
        (&["C1"][..], 0),
        (&["--apiary", "Saltings"], 0),
        (&["C1", "--access", "none"], 3),
        (&["--apiary", "Saltings", "--access", "none"], 3),
        (&["H1"], 4),
        (&["--apiary", "Hill"], 4),
        // An assumption may turn unknown into usable.
        (&["H1", "--access", "vehicle"], 4),
        (&["H1", "--access", "none"], 3),
        (&["C1", "--leaflet", "salt"], 4),
    ] {
        for json in [&[][..], &["--json"]] {
            let ran = bench.run(&ask(&[arguments, json].concat()));
            assert_eq!((ran.code, ran.err.as_str()), (Some(code), ""), "{arguments:?}");
        }
    }
}

#[test]
fn json_is_what_the_table_is_made_of() {
    let bench = bench();
    let json = bench.run(&ask(&["C1", "--json"])).answered(0).json();
    let options = json["options"].as_array().unwrap();
    let word = |value: &Value| value.as_str().unwrap_or_default().to_owned();
    let rows: Vec<[String; 3]> = options
        .iter()
        .map(|option| [word(&option["leaflet"]), word(&option["method"]), word(&option["answer"])])
        .collect();
    let wanted = [
        ["pad", "", "usable"],
        ["strip", "", "usable"],
        ["salt", "trickle", "unknown"],
        ["salt", "vapour", "ruled_out"],
    ];
    assert_eq!(rows, wanted);
    assert_eq!([&json["holding"], &json["colony"], &json["apiary"]], ["mine", "C1", "Saltings"]);
    assert_eq!([&json["from"], &json["to"], &json["as_of"]], [FROM, TO, FROM]);
    assert!(options.iter().all(|option| option["own"] == true), "the leaflets are the keeper's own");
    let table = bench.run(&ask(&["C1", "--full"])).answered(0).out;
    for (number, [leaflet, method, answer]) in rows.iter().enumerate() {
        let comma = if method.is_empty() { "" } else { ", " };
        let head = format!("\n{}. {leaflet}{comma}{method}: {}\n", number + 1, answer.replace('_', " "));
        assert!(table.contains(&head), "{head} is not in:\n{table}");
    }
    let of_apiary = bench.run(&ask(&["--apiary", "Saltings", "--json"])).answered(0).json();
    assert_eq!(of_apiary["colonies"], json!(["C1", "C2", "C3"]));
    let salt = &of_apiary["options"].as_array().unwrap()[2];
    assert_eq!((&salt["leaflet"], &salt["method"]), (&json!("salt"), &json!("trickle")));
    assert_eq!(salt["colonies"][0], json!({"answer": "usable", "colonies": ["C2"], "why": []}));
}

#[test]
fn the_same_question_gives_the_same_bytes_whatever_the_terminal_is() {
    let bench = bench();
    for arguments in
        [&["C1"][..], &["C1", "--json"], &["--apiary", "Saltings"], &["C1", "--leaflet", "strip"]]
    {
        let plain = bench.run(&ask(arguments)).answered(0);
        let mut narrow = bench.command(&ask(arguments));
        assert_eq!(crate::bench::ran(narrow.env("COLUMNS", "40").output().unwrap()), plain);
    }
}

#[test]
fn without_days_it_is_sixty_from_today() {
    let bench = bench();
    let json = bench.run(&["options", "C1", "--leaflets", "own", "--json"]).json();
    let day = |field: &str| json[field].as_str().unwrap().parse::<combclear_domain::Day>().unwrap();
    assert!(day("from") >= "2026-03-01".parse().unwrap(), "{}", json["from"]);
    assert_eq!(day("to").days_since(day("from")), 59);
    assert_eq!(day("as_of"), day("from"));
}

#[test]
fn what_happened_after_the_day_as_of_which_is_asked_does_not_bear_on_the_answer() {
    let bench = bench();
    let trickle = |as_of: &[&str]| {
        let arguments =
            [&["options", "C2", "--leaflets", "own", "--from", FROM, "--to", FROM, "--json"], as_of];
        let json = bench.run(&arguments.concat()).json();
        let option =
            json["options"].as_array().unwrap().iter().find(|option| option["method"] == "trickle").unwrap();
        option["answer"].as_str().unwrap().to_owned()
    };
    assert_eq!(trickle(&[]), "usable");
    assert_eq!(trickle(&["--as-of", "2026-04-08"]), "unknown", "its brood was seen on the day after");
}

#[test]
fn what_is_not_there_is_named_with_what_may_have_been_meant() {
    let bench = bench();
    bench.run(&ask(&["C12"])).failed_with("there is no colony `C12`", "did you mean `C1`?");
    bench
        .run(&ask(&["the big one"]))
        .failed_with("there is no colony `the big one`", "list them all: combclear supering");
    bench
        .run(&ask(&["--apiary", "Salting"]))
        .failed_with("there is no apiary `Salting`", "did you mean `Saltings`?");
    bench
        .run(&ask(&["--apiary", "Nowhere at all"]))
        .failed_with("there is no apiary `Nowhere at all`", "the apiaries are: Hill, Saltings");
    bench
        .run(&ask(&["C1", "--leaflet", "slat"]))
        .failed_with("there is no option `slat` here", "did you mean `salt`?");
    bench
        .run(&ask(&["C1", "--leaflet", "slat", "--json"]))
        .failed_with("there is no option `slat` here", "did you mean `salt`?");
    bench
        .run(&ask(&["C1", "--leaflet", "evaporator"]))
        .failed_with("there is no option `evaporator` here", "leave --leaflet out to see them all");
}

#[test]
fn days_that_cannot_be_asked_about_are_refused() {
    let bench = bench();
    let ask = |days: &[&str]| bench.run(&[&["options", "C1", "--leaflets", "own"], days].concat());
    ask(&["--from", "2026-05-02", "--to", "2026-05-01"]).failed_with(
        "the last day 2026-05-01 is before the first, 2026-05-02",
        "swap --from and --to, or correct one of them",
    );
    ask(&["--from", "2026-01-01", "--to", "2027-02-05"]).failed_with(
        "401 days are too many: at most 400 can be asked about at once",
        "ask about a shorter period",
    );
    ask(&["--from", FROM, "--to", "2027-05-15"]).answered(0);
}

#[test]
fn an_end_of_nothing_assumed_or_before_the_first_day_is_refused() {
    let bench = bench();
    for place in [&["C1"][..], &["--apiary", "Saltings"]] {
        bench.run(&ask(&[place, &["--site-until", "2026-04-20"]].concat())).failed_with(
            "`--site-until` is given, but nothing is assumed about the site",
            "give --power, --access or --ground as well, or leave it out",
        );
        bench.run(&ask(&[place, &["--ground", "dry", "--site-until", "2026-04-10"]].concat())).failed_with(
            "what is assumed would end on 2026-04-10, before the first day, 2026-04-11",
            "give a later day, or leave it out",
        );
    }
    bench.run(&ask(&["C1", "--ground", "dry", "--site-until", FROM])).answered(0);
}

#[test]
fn a_wrong_command_line_is_refused_before_anything_is_asked() {
    let bench = bench();
    for (arguments, said) in [
        (&[][..], &["required", "COLONY", "--apiary <NAME>"][..]),
        (&["C1", "--apiary", "Saltings"], &["cannot be used with", "--apiary <NAME>"]),
        (&["C1", "C2"], &["unexpected argument 'C2'"]),
        (&["--apiary", "Saltings", "--leaflet", "salt"], &["cannot be used with", "--leaflet <ID>"]),
        (&["C1", "--power", "batery"], &["'batery' for '--power <WORD>'", "did you mean `battery`?"]),
        (&["C1", "--power", "230 V"], &["'230 V'", "write one of: none, battery, generator, mains"]),
        (&["C1", "--access", "on foot"], &["'on foot' for '--access <WORD>'", "did you mean `on_foot`?"]),
        (&["C1", "--access", "by boat"], &["write one of: vehicle, on_foot, none"]),
        (&["C1", "--ground", "flood"], &["'flood' for '--ground <WORD>'", "flooded"]),
        (&["C1", "--ground", ""], &["--ground <WORD>"]),
        (&["C1", "--as-of", "2025-02-29"], &["`2025-02-29` is not a day of the calendar"]),
        (&["C1", "--site-until", "11.4.2026"], &["`11.4.2026`"]),
        (&["C1", "--to", "2026-06-01"], &["--to <DATE>", "multiple times"]),
        (&["a/b"], &["`a/b` cannot be the name of a colony: it contains a `/`"]),
        (&["C1", "--on", FROM], &["--on"]),
    ] {
        let ran = bench.run(&ask(arguments));
        assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{arguments:?}: {}", ran.err);
        assert!(ran.err.starts_with("error: "), "{arguments:?}: {}", ran.err);
        for said in said {
            assert!(ran.err.contains(said), "{arguments:?}: {}", ran.err);
        }
    }
}

#[test]
fn a_holding_without_a_jurisdiction_has_no_options_and_says_what_is_missing() {
    let ran = Bench::with_mine().run(&["options", "A1", "--from", FROM]).answered(4);
    ran.says(&[
        "missing: the jurisdiction whose leaflets apply to this holding (holding_details: ",
        "0 options",
    ]);
    let ran = Bench::with_mine().run(&["options", "--apiary", "East", "--from", FROM]).answered(4);
    ran.says(&["missing: the jurisdiction whose leaflets apply to this holding (holding_details: "]);
}

#[test]
fn without_a_database_nothing_is_answered() {
    let ran = Bench::new().run(&["options", "C1", "--from", FROM]).failed();
    assert!(Bench::keeps_nothing(&ran), "{}", ran.err);
}
