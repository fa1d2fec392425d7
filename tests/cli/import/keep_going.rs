//! `combclear import --keep-going`: imports what it can, and lists what it left out.

use serde_json::json;

use super::refused;
use crate::bench::{Bench, DEMO, draft, inspection, lines, mine};

/// Four good lines and five bad ones.
fn some_bad() -> String {
    mine(&[
        "not an entry",
        &inspection(3, "2026-03-02", "A1"),
        &inspection(4, "2026-03-02", "A2"),
        &draft(5, "2026-03-02", "inspektion", &json!({"colony": "A1"})),
        &inspection(6, "2099-01-01", "A1"),
        &inspection(2, "2026-03-02", "A1"),
        &inspection(7, "2026-03-03", "A1"),
    ])
}

#[test]
fn what_is_left_out_is_listed_by_line_and_the_rest_is_in() {
    let bench = Bench::new();
    bench.write("some.jsonl", some_bad());
    let ran = bench.run(&["import", "some.jsonl", "--keep-going"]).answered(5);
    assert_eq!(ran.lines("some.jsonl"), [4, 6, 7, 8, 9], "{}", ran.out);
    let ran = ran.says(&[
        "mine: 4 entries added; the journal has 4 entries, head ",
        "\n5 lines were left out:\nsome.jsonl:4: ",
        "there is no colony `A2`\n  help: did you mean `A1`?",
        "`inspektion` is not a kind of entry\n  help: did you mean `inspection`?",
        "2099-01-01 is in the future",
        "with different content",
    ]);
    let head = ran.out.split_once("head").unwrap().1.split_whitespace().next().unwrap();
    let kept = bench.run(&["export"]).done().out;
    assert!(kept.lines().next().unwrap().contains(head), "{kept}");
    for in_it in [3, 7] {
        assert!(kept.contains(&crate::bench::id(in_it)), "{kept}");
    }
    for left_out in [4, 5, 6] {
        assert!(!kept.contains(&crate::bench::id(left_out)), "{kept}");
    }
    bench.run(&["verify"]).done();
}

#[test]
fn programs_get_the_same_list_in_full() {
    let bench = Bench::new();
    let bad: Vec<String> = (0..33).map(|number| format!("nonsense {number}")).collect();
    bench.write("some.jsonl", mine(&bad.iter().map(String::as_str).collect::<Vec<_>>()));
    let report = bench.run(&["import", "some.jsonl", "--keep-going", "--json"]).answered(5).json();
    assert_eq!((&report["added"], &report["known"]), (&json!(2), &json!(0)));
    let left_out = report["left_out"].as_array().unwrap();
    assert_eq!(left_out.len(), 33);
    for (fault, line) in left_out.iter().zip(4..) {
        assert_eq!((&fault["file"], &fault["line"]), (&json!("some.jsonl"), &json!(line)));
        assert!(
            !fault["message"].as_str().unwrap().is_empty() && !fault["help"].as_str().unwrap().is_empty()
        );
    }
}

#[test]
fn taken_in_again_the_good_lines_are_known_and_the_bad_ones_left_out_as_before() {
    let bench = Bench::new();
    bench.write("some.jsonl", some_bad());
    let first = bench.run(&["import", "some.jsonl", "--keep-going"]).answered(5);
    let kept = bench.kept();
    let again = bench.run(&["import", "some.jsonl", "--keep-going"]).answered(5);
    assert_eq!(again.lines("some.jsonl"), first.lines("some.jsonl"));
    let again = again.says(&["mine: 0 entries added, 4 were already there"]);
    assert!(again.out.contains("5 lines were left out:\n"), "{}", again.out);
    assert_eq!(bench.kept(), kept);
}

#[test]
fn a_mended_file_brings_in_what_was_left_out() {
    let bench = Bench::new();
    bench
        .write("some.jsonl", mine(&[&inspection(3, "2026-03-02", "A2"), &inspection(4, "2026-03-03", "A1")]));
    bench
        .run(&["import", "some.jsonl", "--keep-going"])
        .answered(5)
        .says(&["3 entries added", "1 line was left out:\nsome.jsonl:4: "]);
    bench
        .write("some.jsonl", mine(&[&inspection(3, "2026-03-02", "A1"), &inspection(4, "2026-03-03", "A1")]));
    bench.run(&["import", "some.jsonl"]).done().says(&["1 entry added, 3 were already there"]);
}

#[test]
fn a_file_without_faults_is_done_and_not_done_in_part() {
    let bench = Bench::new();
    bench.write("mine.jsonl", mine(&[]));
    bench.run(&["import", "mine.jsonl", "--keep-going"]).done();
}

#[test]
fn where_every_line_is_bad_nothing_is_in_and_that_is_said() {
    let bench = Bench::with_mine();
    let before = bench.kept();
    bench.write("bad.jsonl", lines([crate::bench::MINE, "one", "two"]));
    let ran = bench.run(&["import", "bad.jsonl", "--keep-going"]).answered(5);
    assert_eq!(ran.says(&["mine: 0 entries added; the journal has 2 entries"]).lines("bad.jsonl"), [2, 3]);
    assert_eq!(bench.kept(), before);
}

#[test]
fn of_a_sealed_file_no_entry_is_left_out() {
    let bench = Bench::with_mine();
    std::fs::copy(DEMO, bench.path("demo.jsonl")).unwrap();
    refused(&bench, "demo.jsonl", &["--keep-going"]).failed_with(
        "nothing was imported: `demo.jsonl` is sealed, so no entry can be left out",
        "leave --keep-going out; an export is imported in full or not at all",
    );
}
