//! `combclear today`: the morning's page of the demo, and what it takes from the other questions.

use serde_json::Value;

use crate::bench::{Bench, DEMO_DAY};

#[test]
fn the_morning_of_the_demo_shows_what_is_due_what_may_be_supered_and_what_to_find_out() {
    insta::assert_snapshot!(Bench::with_demo().run(&["today", "--on", DEMO_DAY]).done().out);
}

#[test]
fn a_colony_that_becomes_free_today_is_named_as_such() {
    let bench = Bench::with_demo();
    let on = |day: &str| bench.run(&["today", "--on", day]).done().out;
    let free = "free from today: H1, H2 (2) at Withyhythe";
    // Their strips came out on the same day as the tablets of others, which had no period to wait for.
    assert!(on("2026-08-28").contains("free from today: C1, H6, H7, P2, Y1, Y6 (6) at Withyhythe"));
    assert!(!on("2026-09-18").contains("free from today"));
    assert!(on("2026-09-19").contains(free));
    assert!(!on("2026-09-20").contains("free from today"));
}

#[test]
fn json_says_the_same_as_the_questions_that_it_asks() {
    let bench = Bench::with_demo();
    let today = bench.run(&["today", "--on", DEMO_DAY, "--json"]).done().json();
    let board = bench.run(&["supering", "--on", DEMO_DAY, "--json"]).done().json();
    let count = |groups: &Value| -> usize {
        let places = groups.as_array().unwrap().iter().flat_map(|group| group["places"].as_array().unwrap());
        places.map(|place| place["colonies"].as_array().unwrap().len()).sum()
    };
    let wanted = |answer: &str| board.as_array().unwrap().iter().filter(|of| of["answer"] == answer).count();
    assert_eq!(count(&today["may_be_supered"]), wanted("yes"));
    assert_eq!(today["may_not_be_supered"], wanted("no"));
    assert_eq!(count(&today["not_known"]), wanted("unknown"));
    let due = bench.run(&["due", "--from", DEMO_DAY, "--to", "2026-09-04", "--json"]).done().json();
    let keys = |report: &Value| -> Vec<String> {
        let visits = report["visits"].as_array().unwrap().iter();
        let items = visits.flat_map(|visit| visit["items"].as_array().unwrap());
        items.map(|item| item["key"].as_str().unwrap().to_owned()).collect()
    };
    let (here, there) = (keys(&today), keys(&due));
    assert!(!here.is_empty() && here.iter().all(|key| there.contains(key)), "{here:?}");
    // What is left out is said elsewhere on the page.
    let left_out = there.iter().filter(|key| !here.contains(key));
    for key in left_out {
        let kind = key.split(':').next().unwrap();
        assert!(
            ["supers_free", "legal_gap", "record_missing", "record_whereabouts"].contains(&kind),
            "{key} is not on the page"
        );
    }
    let gaps = ["gaps", "--from", "2026-01-01", "--to", DEMO_DAY, "--as-of", DEMO_DAY, "--json"];
    let gaps = bench.run(&gaps).answered(3).json();
    let of =
        |weight: &str| gaps["gaps"].as_array().unwrap().iter().filter(|gap| gap["weight"] == weight).count();
    assert_eq!(today["records"]["required"], of("required"));
    assert_eq!(today["records"]["complete"], gaps["complete"]);
}

#[test]
fn a_holding_with_nothing_to_do_says_so() {
    Bench::with_mine().run(&["today", "--on", "2026-03-02"]).done().says(&[
        "Nothing is due today or in the next six days.",
        "A1 at East",
        "the law could not be checked for every record of this year",
    ]);
}

/// What is listed under "To find out" and "Records" is due as well.
#[test]
fn a_morning_with_leaflets_to_read_does_not_say_that_nothing_is_due() {
    Bench::with_spring().run(&["today", "--on", "2026-05-10"]).done().says(&[
        "Nothing is due today or in the next six days apart from what is listed below.",
        "next: read the leaflet of lot P1 and record it",
    ]);
}
