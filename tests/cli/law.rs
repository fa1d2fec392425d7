//! `combclear law`: the list, a profile with its sources, a day before the first rule.

use crate::bench::Bench;

#[test]
fn the_laws_are_listed() {
    insta::assert_snapshot!(Bench::new().run(&["law"]).done().out);
}

#[test]
fn a_profile_is_shown_as_it_is_in_force_on_the_day_with_its_sources() {
    insta::assert_snapshot!(Bench::new().run(&["law", "ni", "--on", "2026-08-20"]).done().out);
}

#[test]
fn a_day_before_the_first_rule_says_so_and_does_not_look_complete() {
    let bench = Bench::new();
    bench.run(&["law", "gb", "--on", "2013-09-30"]).done().says(&[
        "not in force yet, from 2013-10-01",
        "No rule known here is in force on that day. That does not mean that nothing was required.",
    ]);
    let said = bench.run(&["law", "gb", "--on", "2013-10-01"]).done().out;
    assert!(said.contains("in force") && !said.contains("not in force yet"), "{said}");
}

#[test]
fn for_programs_the_same() {
    let bench = Bench::new();
    let list = bench.run(&["law", "--json"]).done().json();
    let codes: Vec<&str> =
        list.as_array().unwrap().iter().map(|law| law["jurisdiction"].as_str().unwrap()).collect();
    assert_eq!(codes, ["ch", "de", "eu", "fr", "gb", "ie", "ni", "us"]);
    for code in codes {
        let law = bench.run(&["law", code, "--on", "2026-08-20", "--json"]).done().json();
        assert_eq!((&law["jurisdiction"], &law["standing"]["state"]), (&code.into(), &"in_force".into()));
    }
    // A member state without a file of its own has the rules of the Union.
    let law = bench.run(&["law", "at", "--on", "2026-08-20", "--json"]).done().json();
    assert_eq!((&law["jurisdiction"], &law["parts"][0]["jurisdiction"]), (&"at".into(), &"eu".into()));
    assert!(bench.files().is_empty(), "no database is needed");
}

#[test]
fn a_law_that_there_is_not_is_answered_with_those_that_there_are() {
    Bench::new()
        .run(&["law", "nz"])
        .failed_with("there is no law of `nz`", "the laws built in are: ch, de, eu, fr, gb, ie, ni, us");
}
