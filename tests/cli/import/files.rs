//! Files that are not journals, and unreadable headers.

use super::refused;
use crate::bench::{Bench, MINE, draft, inspection, lines, mine};

const BEGINS: &str = r#"a journal file begins like {"combclear_journal":1,"holding":"...","sealed":false}"#;

#[test]
fn what_is_not_there_or_no_file_is_named() {
    let bench = Bench::with_mine();
    std::fs::create_dir(bench.path("folder")).unwrap();
    bench.write("note.txt", "x");
    for (name, why) in [
        ("missing.jsonl", "there is no such file or folder"),
        ("no/such/file.jsonl", "there is no such file or folder"),
        ("folder", "it is a folder"),
        ("note.txt/file.jsonl", "a part of its path is not a folder"),
    ] {
        refused(&bench, name, &[]).failed_with(
            &format!("nothing was imported: cannot read `{name}`: {why}"),
            "name a journal file, or - for standard input",
        );
        refused(&bench, name, &["--keep-going"]);
    }
}

#[test]
fn an_empty_file_is_refused_and_told_how_one_begins() {
    let bench = Bench::with_mine();
    bench.write("empty.jsonl", "");
    for more in [&[][..], &["--keep-going"], &["--json"]] {
        refused(&bench, "empty.jsonl", more)
            .failed_with("nothing was imported: `empty.jsonl` is empty", BEGINS);
    }
    let ran = bench.run_with_input(&["import", "-"], "");
    ran.failed_with("nothing was imported: `-` is empty", BEGINS);
}

#[test]
fn a_header_that_cannot_be_read_is_line_one() {
    let bench = Bench::with_mine();
    let entry = inspection(3, "2026-03-02", "A1");
    let holding = r#""holding":"mine","sealed":false}"#;
    for (header, said) in [
        (entry.clone(), "not a journal header"),
        (String::new(), "not a journal header"),
        ("date,colony,what".to_owned(), "not a journal header"),
        (format!(r#"{{"combclear_journal":2,{holding}"#), "format version `2`; this program reads version 1"),
        (format!(r#"{{"combclear_journal":2,"more":[],{holding}"#), "format version `2`"),
        (r#"{"combclear_journal":1,"holding":"mine"}"#.to_owned(), "sealed"),
        (r#"{"combclear_journal":1,"sealed":false}"#.to_owned(), "holding"),
        (format!(r#"{{"combclear_journal":1,"colour":"red",{holding}"#), "`colour`"),
        (r#"{"combclear_journal":1,"holding":"a/b","sealed":false}"#.to_owned(), "`a/b`"),
        (r#"{"combclear_journal":1,"holding":"mine","sealed":true}"#.to_owned(), "how many entries follow"),
    ] {
        bench.write("bad.jsonl", lines([header.as_str(), &entry]));
        for more in [&[][..], &["--keep-going"]] {
            let ran = refused(&bench, "bad.jsonl", more).says(&["1 fault in `bad.jsonl`\n", said]);
            assert_eq!(ran.lines("bad.jsonl"), [1], "{}", ran.err);
        }
    }
}

#[test]
fn text_in_another_encoding_is_named_with_its_line() {
    let bench = Bench::with_mine();
    let wide: Vec<u8> =
        [0xff, 0xfe].into_iter().chain(mine(&[]).bytes().flat_map(|byte| [byte, 0])).collect();
    bench.write("wide.jsonl", wide);
    let ran =
        refused(&bench, "wide.jsonl", &[]).says(&["the line is not UTF-8 text", "save the file as UTF-8"]);
    assert_eq!(ran.lines("wide.jsonl"), [1]);

    let latin = mine(&[&inspection(3, "2026-03-02", "A1").replace("\"me\"", "\"J?rgen\"")]);
    let latin: Vec<u8> = latin.bytes().map(|byte| if byte == b'?' { 0xfc } else { byte }).collect();
    bench.write("latin.jsonl", latin);
    let ran =
        refused(&bench, "latin.jsonl", &[]).says(&["the line is not UTF-8 text", "save the file as UTF-8"]);
    assert_eq!(ran.lines("latin.jsonl"), [4]);
}

#[test]
fn what_editors_add_to_a_file_is_passed_over() {
    let plain = mine(&[]);
    for text in [
        format!("\u{feff}{plain}"),
        plain.replace('\n', "\r\n"),
        plain.replace('\n', "\n\n  \n"),
        plain.trim_end().to_owned(),
    ] {
        let bench = Bench::new();
        bench.write("mine.jsonl", &text);
        bench
            .run(&["import", "mine.jsonl"])
            .done()
            .says(&["mine: 2 entries added; the journal has 2 entries"]);
    }
}

#[test]
fn blank_lines_are_counted_when_a_line_is_named() {
    let bench = Bench::with_mine();
    bench.write("bad.jsonl", mine(&["", "", "no entry"]));
    assert_eq!(refused(&bench, "bad.jsonl", &[]).lines("bad.jsonl"), [6]);
}

#[test]
fn a_header_alone_is_a_journal_without_entries() {
    let bench = Bench::new();
    bench.write("none.jsonl", lines([MINE]));
    assert_eq!(
        bench.run(&["import", "none.jsonl"]).done().out,
        "mine: 0 entries added; the journal has 0 entries\n"
    );
}

#[test]
fn a_file_of_another_holding_than_the_one_asked_for_is_refused() {
    let bench = Bench::with_mine();
    let apiary = draft(1, "2026-03-01", "apiary_details", &serde_json::json!({"apiary": "West"}));
    bench.write("yours.jsonl", lines([&MINE.replace("mine", "yours"), apiary.as_str()]));
    refused(&bench, "yours.jsonl", &["--holding", "mine"]).failed_with(
        "nothing was imported: `yours.jsonl` is the journal of `yours`, not of `mine`",
        "leave --holding out, or name the right file",
    );
    let mut elsewhere = bench.command(&["import", "yours.jsonl"]);
    let output = elsewhere.env("COMBCLEAR_HOLDING", "mine").output().unwrap();
    crate::bench::ran(output).failed();
    bench.run(&["import", "--begin", "yours.jsonl", "--holding", "yours"]).done();
}
