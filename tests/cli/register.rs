//! `combclear register` and `combclear pack`: on the terminal, and as files that are never overwritten.

use std::collections::BTreeSet;

use combclear_wording::Words;
use combclear_wording::terminal::gap_sort;
use serde_json::{Value, json};

use crate::bench::{Bench, MINE, draft, lines, mine, unbroken};

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
    let mut all = vec![
        "--csv",
        "r.csv",
        "--html",
        "r.html",
        "--exchange-treatments",
        "x.json",
        "--exchange-transactions",
        "y.json",
    ];
    if cfg!(feature = "pdf") {
        all.extend(["--pdf", "r.pdf"]);
    } else {
        // A build without the typesetter says so and writes nothing.
        bench.run(&register(&["--pdf", "r.pdf", "--csv", "r.csv"])).failed_with(
            "this program was built without its typesetter, so it cannot write PDF",
            "use --html and print that page, or build the program with `--features pdf`",
        );
        assert_eq!(bench.files().iter().filter(|name| name.starts_with("r.")).count(), 0);
        bench.write("r.pdf", "%PDF-");
    }
    let said = bench.run(&register(&all)).done().out;
    for name in all.iter().filter(|name| ["r.csv", "r.html", "r.pdf", "x.json", "y.json"].contains(name)) {
        assert!(
            said.contains(&format!("{name}: the register of demo, 2025-01-01 to 2026-12-31\n")),
            "{said}"
        );
    }
    let csv = bench.read("r.csv");
    assert!(csv.starts_with("\u{feff}\"record\",") && csv.contains("\r\n\"administration\","));
    assert!(bench.read("r.html").starts_with("<!DOCTYPE html>"));
    assert!(std::fs::read(bench.path("r.pdf")).unwrap().starts_with(b"%PDF-"));
    assert!(bench.read("x.json").contains("icarGroupTreatmentEventResource"));
    assert!(bench.read("y.json").contains("icarMedicineTransactionResource"));
    let help = "name a file that does not exist yet";
    bench
        .run(&register(&["--csv", "r.csv"]))
        .failed_with("`r.csv` already exists; it was left as it is", help);
    assert_eq!(bench.read("r.csv"), csv);
    // One existing file prevents all from being written.
    bench
        .run(&register(&["--html", "new.html", "--csv", "new.csv", "--pdf", "r.pdf"]))
        .failed_with("`r.pdf` already exists; it was left as it is", help);
    bench
        .run(&register(&["--html", "new", "--csv", "new"]))
        .failed_with("`new` is named twice, for different things", "name a separate file for each");
    assert_eq!(bench.files().iter().filter(|name| name.starts_with("new")).count(), 0);
}

#[test]
fn one_thing_can_go_to_standard_output() {
    let bench = Bench::with_demo();
    assert!(bench.run(&register(&["--csv", "-"])).done().out.starts_with("\u{feff}\"record\","));
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
        "`p.zip`: the register of demo from 2025-01-01 to 2026-12-31, 33 administrations, 11 documents";
    bench.run(&pack).done().says(&[said, "that the law requires"]);
    assert!(std::fs::read(bench.path("p.zip")).unwrap().starts_with(b"PK\x03\x04"));
    let help = "name a file that does not exist yet";
    bench.run(&pack).failed_with("`p.zip` already exists; it was left as it is", help);
}

#[test]
fn the_pack_goes_to_standard_output_alone_where_that_is_meant() {
    let bench = Bench::with_demo();
    let pack: Vec<&str> = ["pack", "-"].into_iter().chain(TIME).collect();
    let ran = bench.command(&pack).output().unwrap();
    assert_eq!(ran.status.code(), Some(0));
    assert!(ran.stdout.starts_with(b"PK\x03\x04"));
    let said = String::from_utf8(ran.stderr).unwrap();
    assert!(said.starts_with("`-`: the register of demo"), "{said}");
    assert!(!bench.files().contains(&"-".to_owned()));
}

/// A terminal obeys escape characters, and a direction mark can make a line read as another.
#[test]
fn signs_that_a_terminal_obeys_are_shown_and_not_sent() {
    let bench = Bench::new();
    let (hostile, turned) = ("red\u{1b}[31m\r\u{202e}dlo", "strips\u{202e}x");
    let medicine = json!({"medicine": "strips", "pack_name": hostile, "unit": "strip"});
    let lot =
        json!({"lot": "strips", "medicine": "strips", "quantity": 10, "batch": hostile, "proof": hostile});
    let given = json!({"given": [{"lot": "strips", "each": 2, "colonies": ["A1"]}], "against": hostile});
    let document = json!({
        "content": "2".repeat(64), "media_type": "application/pdf", "bytes": 5, "file_name": hostile, "lot": "strips",
    });
    let more = [
        draft(3, "2026-03-02", "medicine_described", &medicine),
        draft(4, "2026-03-02", "lot_acquired", &lot),
        draft(5, "2026-03-10", "administration", &given),
        draft(6, "2026-03-12", "document_attached", &document),
    ];
    bench.write("mine.jsonl", mine(&more.each_ref().map(String::as_str)));
    let imported = bench.run(&["import", "mine.jsonl"]);
    let mut all = vec![imported.out, imported.err];
    assert_eq!(bench.run(&["export"]).out.lines().count(), 7, "{all:?}");
    for command in ["gaps", "stock", "documents", "due", "supering", "register", "retention"] {
        let ran = bench.run(&[command]);
        all.extend([ran.out, ran.err]);
    }
    let said = bench.run(&["supering", turned]);
    all.push(said.err);
    for text in &all {
        assert!(!text.contains(['\u{1b}', '\r', '\u{202e}']), "{text:?}");
    }
    assert!(all.iter().any(|text| text.contains("U+001B") && text.contains("U+202E")), "{all:?}");
}

/// A detail of one gap is not shown as if it applied to all.
#[test]
fn advice_of_one_sort_is_told_once_by_its_sort_and_the_numbers_of_its_entries() {
    let bench = Bench::with_demo();
    let ask: Vec<&str> = ["gaps"].into_iter().chain(TIME).collect();
    let text = bench.run(&[&ask[..], &["--full"]].concat()).out;
    let json: Value = serde_json::from_str(&bench.run(&[&ask[..], &["--json"]].concat()).out).unwrap();
    let advised: Vec<&Value> =
        json["gaps"].as_array().unwrap().iter().filter(|gap| gap["weight"] == "advised").collect();
    let mut told = 0;
    for sort in advised.iter().map(|gap| gap["missing"].as_str().unwrap()).collect::<BTreeSet<_>>() {
        let places: Vec<String> =
            advised.iter().filter(|gap| gap["missing"] == sort).map(|gap| gap["seq"].to_string()).collect();
        if places.len() > 2 {
            let (count, sort) = (places.len(), gap_sort(Words::english(), sort));
            let line = format!("  {sort}: {count} times\n    entries no. {}\n", places.join(", "));
            assert!(unbroken(&text).contains(&unbroken(&line)), "`{line}` is not in\n{text}");
            told += 1;
        }
    }
    assert!(told > 0, "the demo has no sort of advice that is told in short");
}

/// A record from before any law known here, with one purchase a day: the glance says each thing once, and how many there are.
#[test]
fn many_gaps_of_one_kind_are_counted_and_the_first_are_named() {
    let bench = Bench::new();
    let keeper = json!({"keeper": "A. Keeper", "jurisdiction": "gb"});
    let medicine = json!({"medicine": "strips", "pack_name": "Strips (invented)", "unit": "strip"});
    let mut entries = vec![
        draft(1, "1990-01-01", "holding_details", &keeper),
        draft(2, "1990-01-01", "medicine_described", &medicine),
    ];
    let ask = |lots: usize, entries: &mut Vec<String>| {
        for lot in entries.len() / 2..=lots {
            let body = json!({"lot": format!("L{lot}"), "medicine": "strips", "quantity": 10});
            let on = format!("1990-03-{lot:02}");
            entries.push(draft(2 * lot + 1, &on, "lot_acquired", &body));
            let between = json!({"apiary": format!("Field {lot}")});
            entries.push(draft(2 * lot + 2, &on, "apiary_details", &between));
        }
        bench.write("mine.jsonl", lines([MINE].into_iter().chain(entries.iter().map(String::as_str))));
        bench.run(&["import", "mine.jsonl"]).done();
        bench.run(&["gaps", "--from", "1990-01-01", "--to", "1990-12-31"]).answered(4)
    };
    // The last day of the period is checked too.
    let in_force = "no law of `gb` known here was in force on";
    ask(1, &mut entries).says(&[&format!("{in_force} 1990-03-01 and on 1990-12-31.")]);
    ask(20, &mut entries).says(&[
        &format!("{in_force} 21 of the days checked, the first 1990-03-01 and the last 1990-12-31."),
        "document: entries no. 3, 5, 7,",
        "39, 41 (20)",
    ]);
    ask(21, &mut entries).says(&["document: 21 entries; the first are no. 3, 5, 7,", "39, 41 -> attach"]);
}

/// Source: Veterinary Medicines Regulations 2013 (SI 2013/2033), reg. 18: what the keeper's record of a vet's administration needs.
#[test]
fn what_a_vet_gave_from_the_vets_own_stock_is_recorded_in_two_commands_and_complete() {
    let bench = Bench::with_demo();
    let (vet, day) = ("V. Vet (invented)", "2026-08-20");
    let gaps = ["gaps", "--from", day, "--to", day, "--as-of", "2026-08-29"];
    let lot = ["record", "vet-lot", "VET-1", "--medicine", "winter", "--vet", vet, "--on", day, "-y"];
    bench
        .run(&lot)
        .done()
        .says(&["lot VET-1; medicine winter; vet V. Vet (invented)", "recorded as entry 457"]);
    bench
        .run(&gaps)
        .answered(4)
        .says(&["no entry says that any of it was given", "record what the vet gave"]);
    let given = ["record", "given", "M1", "M2", "--lot", "VET-1", "--each", "2", "--withdrawal-days", "0"];
    bench.run(&[&given[..], &["--on", day, "-y"]].concat()).done();
    bench.run(&gaps).answered(3).says(&[
        "1 item that the law requires is missing",
        "lot VET-1 of Winterpowder 886 (demo), of the vet's own stock, recorded for",
        "correct entry no. 457 and add: batch number",
    ]);
    let batch =
        ["record", "correction", "457", "--set", "batch=VB 7", "--reason", "the vet sent the batch", "-y"];
    bench.run(&batch).done();
    bench.run(&gaps).done().says(&["everything that the law requires is on record"]);
    let register = bench.run(&["register", "--from", day, "--to", day]).done().out;
    assert!(register.contains("Given by a vet from the vet's own stock"), "{register}");
    let stock = bench.run(&["stock", "--on", "2026-08-29", "--full"]).done().out;
    assert!(!stock.contains("VET-1"), "{stock}");
    let disposed = [
        "record",
        "disposed",
        "VET-1",
        "--quantity",
        "1",
        "--how-and-where",
        "x",
        "--on",
        "2026-08-21",
        "-y",
    ];
    let refused = bench.run(&disposed);
    assert!(
        refused.code != Some(0) && refused.err.contains("lot `VET-1` is of a vet's own stock"),
        "{refused:?}"
    );
}
