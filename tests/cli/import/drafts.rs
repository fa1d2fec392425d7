//! Drafts: the fault of a line, its number and the help; and odd but legal lines.

use serde_json::{Value, json};

use super::refused;
use crate::bench::{Bench, DEMO, draft, id, inspection, lines, mine};

/// A refused line, and parts of its message.
struct Bad {
    what: &'static str,
    line: String,
    says: &'static [&'static str],
}

fn bad(what: &'static str, line: impl Into<String>, says: &'static [&'static str]) -> Bad {
    Bad { what, line: line.into(), says }
}

/// Lines that cannot be read.
fn unreadable() -> Vec<Bad> {
    let entry = inspection(3, "2026-03-02", "A1");
    vec![
        bad("not JSON", "A1 looked well", &["help: each entry is one JSON object on one line"]),
        bad(
            "a missing colon",
            entry.replacen(':', " ", 1),
            &["(near character ", "look for a missing quote"],
        ),
        bad("a list", "[1, 2]", &["not a list"]),
        bad("two entries on a line", format!("{entry} {entry}"), &["trailing characters"]),
        bad(
            "a field that an entry has not",
            entry.replacen('{', r#"{"colour":"red","#, 1),
            &[
                "/colour: ",
                "`colour`",
                "an entry has id, on, at, recorded_by, kind, body, copied_from, written_on, corrects, reason",
            ],
        ),
        bad(
            "a field that this kind has not",
            draft(3, "2026-03-02", "inspection", &json!({"colony": "A1", "brod": "absent"})),
            &["/body/brod: ", "`brod`", "`brood`", "`inspection`"],
        ),
        bad(
            "a word that is not in the list",
            draft(3, "2026-03-02", "inspection", &json!({"colony": "A1", "brood": "some"})),
            &["/body/brood: ", "`some`", "`absent`, `lowest`, `present`"],
        ),
        bad(
            "a fault deep in the body",
            draft(
                3,
                "2026-03-02",
                "administration",
                &json!({"given": [{"lot": "L1", "each": "two", "colonies": ["A1"]}]}),
            ),
            &["/body/given/0/each: ", "two"],
        ),
        bad(
            "a field that is missing",
            draft(3, "2026-03-02", "inspection", &json!({"seams": 4})),
            &["missing field `colony`", "add it to the body of this `inspection` entry"],
        ),
        bad(
            "a kind that is nearly one",
            draft(3, "2026-03-02", "inspektion", &json!({"colony": "A1"})),
            &["/kind: `inspektion` is not a kind of entry", "help: did you mean `inspection`?"],
        ),
        bad(
            "a kind that is none",
            draft(3, "2026-03-02", "weather", &json!({})),
            &["/kind: `weather` is not a kind of entry", "help: the kinds are: ", "colony_established"],
        ),
        bad(
            "a day that is not in the calendar",
            inspection(3, "2025-02-29", "A1"),
            &["/on: `2025-02-29` is not a day of the calendar", "February has 29 days in leap years only"],
        ),
        bad("a day written day first", inspection(3, "02.03.2026", "A1"), &["/on: ", "`02.03.2026`"]),
        bad("an id that is none", entry.replace(&id(3), "third"), &["/id: "]),
        bad("no id", entry.replacen(&format!(r#""id":"{}","#, id(3)), "", 1), &["/id: the entry has no id"]),
        bad(
            "a correction without reason",
            entry.replacen('{', &format!(r#"{{"corrects":"{}","#, id(2)), 1),
            &["/reason: ", "say in `reason` why the earlier entry was wrong"],
        ),
    ]
}

/// Lines that can be read, but cannot be true.
fn untrue() -> Vec<Bad> {
    vec![
        bad(
            "a colony that is not there",
            inspection(3, "2026-03-02", "A2"),
            &["/body/colony: there is no colony `A2`", "help: did you mean `A1`?"],
        ),
        bad(
            "an apiary that is not there",
            draft(3, "2026-03-02", "colony_moved", &json!({"colony": "A1", "to": "Eest"})),
            &["/body/to: there is no apiary `Eest`", "help: did you mean `East`?"],
        ),
        bad(
            "a colony before it was there",
            inspection(3, "2026-02-28", "A1"),
            &["/body/colony: ", "`A1`", "2026-02-28"],
        ),
        bad(
            "a day in the future",
            inspection(3, "2099-01-01", "A1"),
            &["/on: 2099-01-01 is in the future", "help: record what happened"],
        ),
        bad(
            "the id of an entry with different content",
            inspection(2, "2026-03-02", "A1"),
            &[
                "/id: ",
                "00000000-0000-7000-8000-000000000002",
                "with different content",
                "help: make a new id",
            ],
        ),
        bad(
            "a name given twice",
            draft(3, "2026-03-02", "apiary_details", &json!({"apiary": "East"})),
            &["/body/apiary: ", "`East`"],
        ),
    ]
}

#[test]
fn each_fault_is_named_with_its_line_and_nothing_is_imported() {
    for empty in [true, false] {
        for Bad { what, line, says } in unreadable().into_iter().chain(untrue()) {
            println!("{what}");
            let bench = if empty { Bench::new() } else { Bench::with_mine() };
            bench.write("bad.jsonl", mine(&[&line, &inspection(4, "2026-03-03", "A1")]));
            let ran = refused(&bench, "bad.jsonl", &[]).says(says);
            assert_eq!(ran.lines("bad.jsonl"), [4], "{what}: {}", ran.err);
            let head = ran.err.lines().next().unwrap();
            assert_eq!(head, "error: nothing was imported: 1 fault in `bad.jsonl`", "{what}");
            assert!(ran.err.contains("--keep-going"), "{what}: {}", ran.err);
            assert_eq!(refused(&bench, "bad.jsonl", &["--json"]).err, ran.err, "{what}");
        }
    }
}

#[test]
fn a_last_line_that_was_cut_is_named_wherever_it_was_cut() {
    let bench = Bench::with_mine();
    let last = inspection(3, "2026-03-02", "A1");
    // Every place would take too long; these fall into names, values and between them, and just before the end.
    for length in (1..last.len()).step_by(13).chain([last.len() - 1]) {
        let (kept, _) = last.split_at(length);
        bench.write("cut.jsonl", mine(&[kept]).trim_end());
        let ran = refused(&bench, "cut.jsonl", &[]);
        assert_eq!(ran.lines("cut.jsonl"), [4], "{}", ran.err);
    }
}

#[test]
fn every_line_that_cannot_be_read_is_reported_at_once_in_order() {
    let bench = Bench::with_mine();
    let all = unreadable();
    let written: Vec<&str> = all.iter().map(|bad| bad.line.as_str()).collect();
    bench.write("bad.jsonl", mine(&written));
    let ran = refused(&bench, "bad.jsonl", &[]);
    let count = u32::try_from(all.len()).unwrap();
    assert_eq!(ran.lines("bad.jsonl"), (4..4 + count).collect::<Vec<u32>>(), "{}", ran.err);
    let head =
        format!("error: nothing was imported: {count} faults in `bad.jsonl`\n  help: fix them, or import");
    assert!(ran.err.starts_with(&head), "{}", ran.err);
    // Refusals are not checked yet, and the message says so.
    assert!(ran.err.contains("contradictions are looked for once all lines can be read"), "{}", ran.err);
}

#[test]
fn every_line_that_cannot_be_true_is_reported_at_once_in_order() {
    let bench = Bench::with_mine();
    let all = untrue();
    let good = inspection(9, "2026-03-05", "A1");
    let mut written: Vec<&str> = all.iter().map(|bad| bad.line.as_str()).collect();
    written.insert(2, &good);
    bench.write("bad.jsonl", mine(&written));
    let ran = refused(&bench, "bad.jsonl", &[]);
    assert_eq!(ran.lines("bad.jsonl"), [4, 5, 7, 8, 9, 10], "{}", ran.err);
}

#[test]
fn of_many_faults_the_first_twenty_are_shown_and_the_rest_counted() {
    let bench = Bench::with_mine();
    let written: Vec<String> = (0..33).map(|number| format!("nonsense {number}")).collect();
    bench.write("bad.jsonl", mine(&written.iter().map(String::as_str).collect::<Vec<_>>()));
    let ran = refused(&bench, "bad.jsonl", &[]).says(&["33 faults in `bad.jsonl`", "... and 13 more"]);
    assert_eq!(ran.lines("bad.jsonl"), (4..24).collect::<Vec<u32>>());
}

#[test]
fn an_entry_with_the_same_id_and_content_is_known_in_the_file_and_in_the_journal() {
    let bench = Bench::new();
    let once = inspection(3, "2026-03-02", "A1");
    bench.write("mine.jsonl", mine(&[&once, &once]));
    bench
        .run(&["import", "mine.jsonl"])
        .done()
        .says(&["mine: 3 entries added, 1 was already there; the journal has 3 entries, head "]);
    let before = bench.kept();
    let again = "mine: 0 entries added, 4 were already there; the journal has 3 entries, head ";
    bench.run(&["import", "mine.jsonl"]).done().says(&[again]);
    assert_eq!(bench.kept(), before);
    let report = bench.run(&["import", "mine.jsonl", "--json"]).done().json();
    assert_eq!((&report["added"], &report["known"], &report["entries"]), (&json!(0), &json!(4), &json!(3)));
    assert_eq!(report["left_out"], json!([]));
}

#[test]
fn two_entries_of_one_id_in_one_file_differ_at_the_second() {
    let bench = Bench::new();
    let other = draft(3, "2026-03-02", "inspection", &json!({"colony": "A1", "seams": 5}));
    bench.write("bad.jsonl", mine(&[&inspection(3, "2026-03-02", "A1"), &other]));
    let ran = refused(&bench, "bad.jsonl", &[]).says(&["/id: ", "with different content"]);
    assert_eq!(ran.lines("bad.jsonl"), [5]);
}

#[test]
fn entries_need_not_come_in_the_order_of_their_days() {
    let bench = Bench::new();
    let days = ["2026-03-20", "2026-03-02", "2026-03-11"];
    let written: Vec<String> = (3..).zip(days).map(|(number, on)| inspection(number, on, "A1")).collect();
    bench.write("mine.jsonl", mine(&written.iter().map(String::as_str).collect::<Vec<_>>()));
    bench.run(&["import", "mine.jsonl"]).done().says(&["mine: 5 entries added"]);
    // They stay in the order in which they were written.
    let kept = bench.run(&["export"]).done().out;
    let on: Vec<String> = kept
        .lines()
        .skip(3)
        .map(|line| serde_json::from_str::<Value>(line).unwrap()["on"].as_str().unwrap().to_owned())
        .collect();
    assert_eq!(on, days);
}

#[test]
fn the_report_of_an_import_is_the_same_in_words_and_as_json() {
    let bench = Bench::new();
    let said = bench.run(&["import", DEMO]).done();
    let report = bench.run(&["import", DEMO, "--json"]).done().json();
    let head = report["head"].as_str().unwrap();
    said.says_only(&format!(
        "demo: 456 entries added, with 11 documents; the journal has 456 entries, head {head}"
    ));
    let rest = json!({
        "holding": "demo", "added": 0, "known": 456, "left_out": [], "documents": 11, "entries": 456, "head": head
    });
    assert_eq!(report, rest);
}

#[test]
fn one_entry_is_counted_as_one() {
    let bench = Bench::new();
    bench.write("mine.jsonl", lines(mine(&[]).lines().take(2)));
    bench
        .run(&["import", "mine.jsonl"])
        .done()
        .says(&["mine: 1 entry added; the journal has 1 entry, head "]);
    bench.run(&["verify"]).done().says(&["The journal of mine is intact: 1 entry, each as it was recorded."]);
}
