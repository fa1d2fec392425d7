//! `combclear stock`: the stock of the demo, and a disposal that is prepared, completed and recorded.

use serde_json::Value;

use crate::bench::{Bench, DEMO_DAY, DEMO_ENTRIES};

#[test]
fn the_stock_of_the_demo_is_shown_with_what_is_left_what_to_dispose_of_and_what_is_short() {
    insta::assert_snapshot!(Bench::with_demo().run(&["stock", "--on", DEMO_DAY]).done().out);
}

#[test]
fn the_stock_of_the_demo_in_full_is_shown_lot_by_lot_with_what_a_course_takes_and_entries_for_disposals() {
    insta::assert_snapshot!(Bench::with_demo().run(&["stock", "--on", DEMO_DAY, "--full"]).done().out);
}

#[test]
fn json_tells_the_same_lots() {
    let bench = Bench::with_demo();
    let table = bench.run(&["stock", "--on", DEMO_DAY]).done().out;
    let json = bench.run(&["stock", "--on", DEMO_DAY, "--json"]).done().json();
    let lots = json["lots"].as_array().unwrap();
    assert_eq!(lots.len(), 19);
    for lot in lots {
        assert!(table.contains(lot["lot"].as_str().unwrap()), "{lot}");
        let number = |field: &str| lot[field].as_f64();
        let left = number("left").unwrap_or_else(|| -number("over").unwrap());
        let gone = number("given").unwrap() + number("disposed").unwrap();
        assert!((number("acquired").unwrap() - gone - left).abs() < 1e-6, "{lot}");
    }
}

/// The lines that the table prepares for an import.
fn prepared(table: &str) -> Vec<&str> {
    table.lines().filter(|line| line.starts_with('{')).collect()
}

#[test]
fn a_prepared_disposal_is_refused_until_how_and_where_is_written_and_then_empties_the_lot_once() {
    let bench = Bench::with_demo();
    let table = bench.run(&["stock", "--on", DEMO_DAY, "--full"]).done().out;
    let lines = prepared(&table);
    let line = *lines.iter().find(|line| line.contains("NOTCH-25-2")).unwrap();
    bench.write("open.jsonl", format!("{}\n{line}\n", lines[0]));
    let refused = bench.run(&["import", "open.jsonl"]);
    assert_eq!(refused.code, Some(1), "{}", refused.out);
    assert!(refused.err.contains("/body/how_and_where"), "{}", refused.err);
    bench.write("done.jsonl", format!("{}\n{}\n", lines[0], line.replace("null", "\"collection point\"")));
    let taken = bench.run(&["import", "done.jsonl"]).done().out;
    assert!(taken.contains(&(DEMO_ENTRIES + 1).to_string()), "{taken}");
    let json = bench.run(&["stock", "--on", DEMO_DAY, "--json"]).done().json();
    let lot = json["lots"].as_array().unwrap().iter().find(|lot| lot["lot"] == "NOTCH-25-2").unwrap();
    assert_eq!((lot["state"].as_str(), lot["left"].as_u64()), (Some("empty"), Some(0)), "{lot}");
    let disposed: Vec<&Value> = json["dispose"].as_array().unwrap().iter().map(|of| &of["lot"]).collect();
    assert!(!disposed.contains(&&Value::from("NOTCH-25-2")), "{disposed:?}");
    // The same line again is the same entry.
    let again = bench.run(&["import", "done.jsonl"]).done().out;
    assert!(again.contains(&format!("has {} entries", DEMO_ENTRIES + 1)), "{again}");
}

#[test]
fn a_holding_without_lots_has_a_stock_of_nothing() {
    let bench = Bench::with_mine();
    let out = bench.run(&["stock", "--on", "2026-02-28"]).done().out;
    assert!(out.contains("none on record"), "{out}");
}
