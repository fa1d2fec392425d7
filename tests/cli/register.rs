//! `combclear register` and `combclear pack`: on the terminal and as files that are never written over.

use crate::bench::Bench;

const TIME: [&str; 6] = ["--from", "2025-01-01", "--to", "2026-12-31", "--as-of", "2026-11-27"];

fn register<'a>(more: &[&'a str]) -> Vec<&'a str> {
    ["register"].into_iter().chain(TIME).chain(more.iter().copied()).collect()
}

#[test]
fn without_more_the_register_is_a_text() {
    let bench = Bench::with_demo();
    let text = bench.run(&register(&[])).done().out;
    for said in ["Acquisitions", "Administrations", "no. 61", "Corrections", "0 days", "not recorded"] {
        assert!(text.contains(said), "`{said}` is not in the text");
    }
    assert_eq!(bench.files().iter().filter(|name| !name.starts_with("combclear.db")).count(), 0);
}

#[test]
fn several_files_are_written_at_once_and_none_is_written_over() {
    let bench = Bench::with_demo();
    let all = ["--csv", "r.csv", "--html", "r.html", "--pdf", "r.pdf", "--exchange", "x.json"];
    assert_eq!(bench.run(&register(&all)).done().out, "");
    let csv = bench.read("r.csv");
    assert!(csv.starts_with("\"record\",") && csv.contains("\r\n\"administration\","));
    assert!(bench.read("r.html").starts_with("<!DOCTYPE html>"));
    assert!(std::fs::read(bench.path("r.pdf")).unwrap().starts_with(b"%PDF-"));
    assert!(bench.read("x.json").contains("icarGroupTreatmentEventResource"));
    let help = "name a file that is not there yet";
    bench
        .run(&register(&["--csv", "r.csv"]))
        .failed_with("`r.csv` is there already; it was left as it is", help);
    assert_eq!(bench.read("r.csv"), csv);
}

#[test]
fn one_thing_can_go_to_standard_output() {
    let bench = Bench::with_demo();
    assert!(bench.run(&register(&["--csv", "-"])).done().out.starts_with("\"record\","));
    for two in [&["--csv", "-", "--html", "-"][..], &["--csv", "-", "--json"]] {
        bench.run(&register(two)).failed_with(
            "only one thing can go to standard output",
            "write `-` once at most, and not together with --json; name files for the others",
        );
    }
}

#[test]
fn the_pack_is_one_file_that_is_not_written_over() {
    let bench = Bench::with_demo();
    let pack: Vec<&str> = ["pack", "p.zip"].into_iter().chain(TIME).collect();
    let said =
        "`p.zip`: the register of demo from 2025-01-01 to 2026-12-31, 38 administrations, 12 documents\n";
    let ran = bench.run(&pack).done().out;
    assert!(ran.starts_with(said) && ran.contains("missing that the law wants"), "{ran}");
    assert!(std::fs::read(bench.path("p.zip")).unwrap().starts_with(b"PK\x03\x04"));
    let help = "name a file that is not there yet";
    bench.run(&pack).failed_with("`p.zip` is there already; it was left as it is", help);
}
