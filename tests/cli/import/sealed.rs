//! Sealed files: every change is detected, with its line; and which journals accept an export.

use serde_json::{Value, json};

use super::refused;
use crate::bench::{Bench, DEMO, DEMO_ENTRIES, demo_part, demo_up_to, draft, lines};

/// The lines of the demo, header first, so that entry n is at index n.
fn demo() -> Vec<String> {
    std::fs::read_to_string(DEMO).unwrap().lines().map(ToOwned::to_owned).collect()
}

fn text(demo: &[String]) -> String {
    lines(demo.iter().map(String::as_str))
}

/// Changes to the demo, and the lines reported for each. Line n + 1 holds entry n.
fn changes() -> Vec<(&'static str, Vec<String>, Vec<u32>)> {
    let change = |at: usize, from: &str, to: &str| {
        let mut demo = demo();
        let changed = demo[at].replacen(from, to, 1);
        assert_ne!(changed, demo[at], "`{from}` is not in entry {at}");
        demo[at] = changed;
        demo
    };
    let with = |edit: &dyn Fn(&mut Vec<String>)| {
        let mut demo = demo();
        edit(&mut demo);
        demo
    };
    let hash_of = |entry: usize| serde_json::from_str::<Value>(&demo()[entry]).unwrap()["hash"].clone();
    let one_digit = |hash: &Value| {
        let hash = hash.as_str().unwrap();
        let other = if hash.ends_with('0') { "1" } else { "0" };
        hash.split_at(hash.len() - 1).0.to_owned() + other
    };
    let hash = hash_of(200);
    let repeated = demo()[DEMO_ENTRIES].clone();
    vec![
        ("a letter of the body", change(2, "walled yard", "walled yarm"), vec![3]),
        ("a space in the body", change(2, r#""body":{"#, r#""body":{ "#), vec![3]),
        ("the day", change(2, "\"on\":\"2025-03-01\"", "\"on\":\"2025-02-28\""), vec![3]),
        ("who recorded it", change(2, "Perpetua", "Perpetau"), vec![3]),
        ("when it was recorded", change(2, "T19:00:02.000Z", "T19:00:03.000Z"), vec![3]),
        ("the hash", change(200, hash.as_str().unwrap(), &one_digit(&hash)), vec![201, 202]),
        (
            "the hash before",
            {
                let before = hash_of(199);
                change(200, &format!("\"prev\":{before}"), &format!("\"prev\":\"{}\"", one_digit(&before)))
            },
            vec![201],
        ),
        ("its place", change(200, "\"seq\":200,", "\"seq\":201,"), vec![201, 202]),
        (
            "two entries",
            {
                let mut demo = change(2, "walled yard", "walled yarm");
                demo[400] = change(400, "\"on\":\"2026", "\"on\":\"2025").swap_remove(400);
                demo
            },
            vec![3, 401],
        ),
        ("a line removed", with(&|demo| drop(demo.remove(200))), vec![201]),
        ("two lines swapped", with(&|demo| demo.swap(200, 201)), vec![201, 202, 203]),
        ("the last entry cut off", with(&|demo| drop(demo.remove(DEMO_ENTRIES))), vec![1]),
        ("a hundred lines cut off", with(&|demo| demo.truncate(368)), vec![1, 1]),
        ("the last line cut short", with(&|demo| demo[DEMO_ENTRIES].truncate(300)), vec![457]),
        ("the last entry twice", with(&|demo| demo.insert(DEMO_ENTRIES, repeated.clone())), vec![458]),
        (
            "the last entry twice, and counted",
            with(&|demo| {
                demo.insert(DEMO_ENTRIES, repeated.clone());
                demo[0] = demo[0].replace("\"entries\":456", "\"entries\":457");
            }),
            vec![458],
        ),
        (
            "a draft appended",
            with(&|demo| {
                demo.insert(DEMO_ENTRIES + 1, draft(1, "2026-03-02", "inspection", &json!({"colony": "H1"})));
            }),
            vec![458],
        ),
        ("the count in the header", change(0, "456", "455"), vec![1]),
        (
            "the head in the header",
            {
                let head = serde_json::from_str::<Value>(&demo()[0]).unwrap()["head"].clone();
                change(0, head.as_str().unwrap(), &one_digit(&head))
            },
            vec![1],
        ),
        ("the name of the holding", change(0, "\"demo\"", "\"dema\""), vec![1]),
    ]
}

#[test]
fn whatever_is_changed_in_a_sealed_file_is_named_with_its_line_and_nothing_goes_in() {
    let (empty, early, whole) = (Bench::new(), Bench::new(), Bench::with_demo());
    early.write("early.jsonl", demo_up_to(100));
    early.run(&["import", "early.jsonl"]).done();
    for (what, demo, wanted) in changes() {
        // Even if the journal already holds the changed entry: a faulty file is refused although it is not needed.
        for bench in [&empty, &early, &whole] {
            bench.write("bad.jsonl", text(&demo));
            let ran = refused(bench, "bad.jsonl", &[]);
            assert_eq!(ran.lines("bad.jsonl"), wanted, "{what}: {}", ran.err);
            assert!(!ran.err.contains("--keep-going"), "{what}: {}", ran.err);
            assert!(ran.err.contains("export the journal again") || wanted.len() == 1, "{what}: {}", ran.err);
        }
    }
    assert_eq!(empty.files(), ["bad.jsonl"], "not even a database is made");
}

#[test]
fn the_messages_say_what_was_changed() {
    let bench = Bench::new();
    for (what, demo, _) in changes() {
        let says: &[&str] = match what {
            "the day" => {
                &["entry 2 (", "its content does not match its hash: it was changed after it was recorded"]
            }
            "a line removed" => &["entry 201 (", "it comes after entry 199, so it should be entry 200"],
            "the last entry cut off" => {
                &["the header announces 456 entries; 455 are here", "cut short or added to"]
            }
            "the head in the header" => &["/head: the header names `", "` as the last hash; it is `"],
            "the name of the holding" => &[
                "no entry of the file was sealed in a journal of `dema`",
                "the name of the holding was changed",
            ],
            "the hash before" => &["entry 200 (", "its `prev` is not the hash of the entry before it"],
            _ => continue,
        };
        bench.write("bad.jsonl", text(&demo));
        refused(&bench, "bad.jsonl", &[]).says(says);
    }
}

#[test]
fn an_export_goes_on_from_a_journal_that_has_its_beginning() {
    let bench = Bench::new();
    bench.write("early.jsonl", demo_up_to(300));
    bench
        .run(&["import", "early.jsonl"])
        .done()
        .says(&["300 entries added, with 5 documents; the journal has 300 entries"]);
    bench.run(&["import", DEMO]).done().says(&[
        "demo: 156 entries added, 300 were already there, with 11 documents; the journal has 456 entries",
    ]);
    assert_eq!(bench.run(&["export"]).done().out, text(&demo()));
    // The earlier export adds nothing to the later journal.
    bench.run(&["import", "early.jsonl"]).done().says(&[
        "demo: 0 entries added, 300 were already there, with 5 documents; the journal has 456 entries",
    ]);
}

#[test]
fn the_same_export_twice_is_known_the_second_time() {
    let bench = Bench::with_demo();
    let before = bench.kept();
    bench.run(&["import", DEMO]).done().says(&[
        "demo: 0 entries added, 456 were already there, with 11 documents; the journal has 456 entries",
    ]);
    assert_eq!(bench.kept(), before);
}

#[test]
fn an_export_of_the_end_alone_goes_on_where_it_fits_and_nowhere_else() {
    let bench = Bench::new();
    bench.write("early.jsonl", demo_up_to(100));
    bench.write("late.jsonl", demo_part(101, DEMO_ENTRIES));
    let ran = refused(&bench, "late.jsonl", &[]);
    assert_eq!(ran.lines("late.jsonl"), [2], "{}", ran.err);
    bench.run(&["import", "early.jsonl"]).done();
    bench
        .run(&["import", "late.jsonl"])
        .done()
        .says(&["356 entries added, with 9 documents; the journal has 456 entries"]);
    assert_eq!(bench.run(&["export"]).done().out, text(&demo()));
}

#[test]
fn an_export_is_refused_by_another_journal_at_the_line_where_they_part() {
    let apiary = draft(1, "2026-03-01", "apiary_details", &json!({"apiary": "East"}));
    let other = lines([r#"{"combclear_journal":1,"holding":"demo","sealed":false}"#, &apiary]);
    let says =
        ["the journal holds another entry in its place", "help: the file and the journal diverge here"];

    let from_the_start = Bench::new();
    from_the_start.write("other.jsonl", &other);
    from_the_start.run(&["import", "other.jsonl"]).done();
    from_the_start.write("demo.jsonl", text(&demo()));
    let ran = refused(&from_the_start, "demo.jsonl", &[]).says(&says);
    assert_eq!(ran.lines("demo.jsonl"), [2], "{}", ran.err);

    let later = Bench::new();
    later.write("other.jsonl", &other);
    later.write("early.jsonl", demo_up_to(100));
    later.write("demo.jsonl", text(&demo()));
    later.run(&["import", "early.jsonl"]).done();
    later.run(&["import", "other.jsonl"]).done().says(&["1 entry added; the journal has 101 entries"]);
    let ran = refused(&later, "demo.jsonl", &[]).says(&says);
    assert_eq!(ran.lines("demo.jsonl"), [102], "{}", ran.err);
    // The entries in common are still recognised.
    later.run(&["import", "early.jsonl"]).done().says(&["0 entries added, 100 were already there"]);
}

#[test]
fn an_export_of_one_holding_does_not_touch_another() {
    let bench = Bench::with_mine();
    let before = bench.kept();
    bench.run(&["import", "--begin", DEMO]).done().says(&["demo: 456 entries added, with 11 documents"]);
    assert_eq!(bench.kept(), [vec![text(&demo())], before].concat());
}
