//! `combclear leaflets`: the list, one leaflet, and mistyped ids.

use serde_json::Value;

use crate::bench::Bench;

#[test]
fn the_list_says_of_each_leaflet_how_well_its_values_are_established() {
    insta::assert_snapshot!(Bench::new().run(&["leaflets"]).done().out);
}

#[test]
fn one_leaflet_is_shown_value_by_value_with_its_sources() {
    insta::assert_snapshot!(Bench::new().run(&["leaflets", "amitraz-strip-500mg-a"]).done().out);
}

#[test]
fn every_leaflet_of_the_list_can_be_shown_and_counts_its_rules_right() {
    let bench = Bench::new();
    let json = bench.run(&["leaflets", "--json"]).done().json();
    let list = bench.run(&["leaflets"]).done().out;
    let leaflets = json.as_array().unwrap();
    assert!(leaflets.len() > 5);
    for leaflet in leaflets {
        let (id, of) = (leaflet["id"].as_str().unwrap(), leaflet["jurisdiction"].as_str().unwrap());
        let rules = leaflet["rules"].as_array().unwrap();
        let sure = |word: &str| rules.iter().filter(|rule| rule["confidence"] == word).count().to_string();
        let is_row = |line: &&str| line.split_whitespace().take(2).eq([of, id]);
        let row = list.lines().find(is_row).unwrap_or_else(|| panic!("no row of {of} {id}:\n{list}"));
        let wanted = [rules.len().to_string(), sure("document"), sure("second_hand"), sure("unconfirmed")];
        let counts: Vec<&str> = row.split_whitespace().rev().take(4).collect();
        assert!(counts.iter().rev().eq(wanted.iter()), "{wanted:?}: {row}");
        let shown = bench.run(&["leaflets", id]).done().out;
        for source in leaflet["sources"].as_array().unwrap() {
            let (source, title) = (source["id"].as_str().unwrap(), source["title"].as_str().unwrap());
            assert!(shown.contains(&format!("  {source}: {title}")), "{shown}");
        }
        // Words for people, not program text.
        for program in ["[\"", "{\"", "_tenths_c", "_or_", "on_no"] {
            assert!(!shown.contains(program), "`{program}`: {shown}");
        }
        let only: Vec<Value> =
            serde_json::from_str(&bench.run(&["leaflets", id, "--json"]).done().out).unwrap();
        // One id may occur in several jurisdictions.
        assert!(only.contains(leaflet) && only.iter().all(|other| other["id"] == id), "{of} {id}");
    }
    assert!(bench.files().is_empty(), "no database is needed");
}

#[test]
fn an_unknown_id_is_answered_with_what_may_have_been_meant() {
    let bench = Bench::new();
    for (written, help) in [
        ("amitraz-strip-500mg", "did you mean `amitraz-strip-500mg-a`?"),
        ("thymol-gel", "did you mean `thymol-gel-12.5g` or `thymol-gel-multidose-25`?"),
        (
            "Amitraz",
            "did you mean `amitraz-fumigation-tablet-12.5mg` or `amitraz-strip-3.33` or `amitraz-strip-500mg-a` or \
             `amitraz-strip-500mg-b` or `amitraz-strip-500mg-c`?",
        ),
        ("coumaphos", "did you mean `coumaphos-strip`?"),
        ("sawdust", "list them all: combclear leaflets"),
        ("", "list them all: combclear leaflets"),
    ] {
        bench.run(&["leaflets", written]).failed_with(&format!("there is no leaflet `{written}`"), help);
        bench.run(&["leaflets", written, "--json"]).failed();
    }
}
