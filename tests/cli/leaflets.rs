//! `combclear leaflets`: the list, one leaflet, and mistyped ids.

use serde_json::Value;

use crate::bench::Bench;

#[test]
fn the_list_names_each_leaflet_by_country() {
    insta::assert_snapshot!(Bench::new().run(&["leaflets"]).done().out);
}

#[test]
fn the_list_in_full_says_of_each_leaflet_how_well_its_values_are_established() {
    insta::assert_snapshot!(Bench::new().run(&["leaflets", "--full"]).done().out);
}

#[test]
fn one_leaflet_is_shown_value_by_value_for_the_country_of_the_holding() {
    let bench = Bench::with_demo();
    let out = bench.run(&["leaflets", "amitraz-strip-500mg-b"]).done().out;
    insta::assert_snapshot!(out);
    let all = bench.run(&["leaflets", "amitraz-strip-500mg-b", "--all-countries"]).done().out;
    assert_eq!(all, Bench::new().run(&["leaflets", "amitraz-strip-500mg-b"]).done().out);
    assert!(
        all.contains("[eu amitraz-strip-500mg-b]") && all.contains("[gb amitraz-strip-500mg-b]"),
        "{all}"
    );
    assert!(!out.contains("[eu "), "{out}");
    // A leaflet that does not apply there is shown all the same.
    let elsewhere = bench.run(&["leaflets", "coumaphos-strip"]).done().out;
    assert!(elsewhere.contains("[us coumaphos-strip]"), "{elsewhere}");
}

#[test]
fn one_leaflet_in_full_is_shown_value_by_value_with_its_sources() {
    insta::assert_snapshot!(Bench::new().run(&["leaflets", "amitraz-strip-500mg-a", "--full"]).done().out);
}

#[test]
fn a_holding_sees_the_leaflets_of_its_country_and_all_if_it_asks_for_them() {
    let bench = Bench::with_demo();
    let own = bench.run(&["leaflets"]).done().out;
    assert!(own.starts_with("gb\n") && !own.contains("\nus\n"), "{own}");
    let all = bench.run(&["leaflets", "--all-countries"]).done().out;
    assert_eq!(all, Bench::new().run(&["leaflets"]).done().out);
}

#[test]
fn every_leaflet_of_the_list_can_be_shown_and_counts_its_rules_right() {
    let bench = Bench::new();
    let json = bench.run(&["leaflets", "--json"]).done().json();
    let list = bench.run(&["leaflets", "--full"]).done().out;
    let rows = rows(&list);
    let leaflets = json.as_array().unwrap();
    assert!(leaflets.len() > 5);
    for leaflet in leaflets {
        let (id, of) = (leaflet["id"].as_str().unwrap(), leaflet["jurisdiction"].as_str().unwrap());
        let rules = leaflet["rules"].as_array().unwrap();
        let sure = |word: &str| rules.iter().filter(|rule| rule["confidence"] == word).count().to_string();
        let row = rows
            .iter()
            .find(|row| row[..2] == [of, id])
            .unwrap_or_else(|| panic!("no row of {of} {id}:\n{list}"));
        let wanted = [rules.len().to_string(), sure("document"), sure("second_hand"), sure("unconfirmed")];
        let counts: Vec<String> = row.iter().rev().take(4).rev().map(ToString::to_string).collect();
        assert_eq!(counts, wanted, "{row:?}");
        let shown = bench.run(&["leaflets", id, "--full"]).done().out.replace("\n    ", " ");
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

/// The cells of each row of the list, which has no room to be a table.
fn rows(list: &str) -> Vec<Vec<&str>> {
    let mut rows: Vec<Vec<&str>> = Vec::new();
    for line in list.lines().take_while(|line| line.starts_with("  ")) {
        match line.strip_prefix("    ") {
            None => rows.push(vec![line.trim()]),
            Some(cell) if !cell.starts_with(' ') => {
                rows.last_mut().unwrap().push(cell.split_once(": ").unwrap().1);
            }
            Some(_) => {}
        }
    }
    rows
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
