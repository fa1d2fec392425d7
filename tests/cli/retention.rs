//! `combclear retention`: the demo's lots, on the day before and after one may be archived.

use crate::bench::Bench;

#[test]
fn every_lot_of_the_demo_is_shown_with_the_day_until_which_its_records_are_kept() {
    insta::assert_snapshot!(Bench::with_demo().run(&["retention", "--on", "2026-11-27"]).done().out);
}

#[test]
fn in_full_every_set_of_the_demo_is_kept_with_the_reason() {
    insta::assert_snapshot!(
        Bench::with_demo().run(&["retention", "--on", "2026-11-27", "--full"]).done().out
    );
}

/// The rest of a lot of doses was disposed of on 14 March 2026, and the rest of a lot of strips, all of them out, on 20 June.
/// The last day is five years later.
#[test]
fn what_could_go_is_named_from_the_day_after_the_last() {
    let bench = Bench::with_demo();
    for (on, said) in [
        ("2031-03-14", "No records may be archived on 2031-03-14."),
        ("2031-03-15", "1 set of records may be archived on 2031-03-15: WINTER-24-1."),
        ("2031-06-20", "1 set of records may be archived on 2031-06-20: WINTER-24-1."),
        ("2031-06-21", "2 sets of records may be archived on 2031-06-21: EIGHT-25-1; WINTER-24-1."),
    ] {
        let out = bench.run(&["retention", "--on", on]).done().out.replace("\n  ", " ");
        assert!(out.contains(said) && out.contains("Nothing is archived automatically."), "{out}");
    }
}

#[test]
fn for_programs_every_entry_has_its_day_and_its_rule() {
    let report = Bench::with_demo().run(&["retention", "--on", "2026-11-27", "--json"]).done().json();
    let sets = report["sets"].as_array().unwrap();
    let entries: Vec<_> = sets.iter().flat_map(|set| set["entries"].as_array().unwrap()).collect();
    assert!(sets.len() > 15 && entries.len() > 90, "{} {}", sets.len(), entries.len());
    for entry in entries {
        assert!(entry["keep"]["day"].is_string(), "{entry}");
        assert_eq!(entry["keep"]["decided_by"]["years"], 5, "{entry}");
        assert!(!entry["keep"]["decided_by"]["sources"].as_array().unwrap().is_empty(), "{entry}");
    }
}
