//! `combclear attach` and `combclear documents`; documents in exports and imports; missing documents.

use combclear_domain::basics::words::MediaType;
use combclear_domain::journal::Hash;
use combclear_testkit::documents::sample;
use serde_json::{Value, json};

use crate::bench::{Bench, draft, id, lines};
use crate::verify::behind_its_back;

/// A folder with a holding of one lot and one prescription, and the files `invoice.pdf`, `photo.jpg`, `scan.png`,
/// `phone.heic`.
fn with_lot() -> Bench {
    let bench = Bench::new();
    let medicine = json!({"medicine": "strips", "pack_name": "Strips (invented)", "unit": "strip"});
    let prescription = json!({"prescription": "P 1", "medicine": "strips", "vet": "A. Vet", "terms": {}});
    bench.write(
        "mine.jsonl",
        lines([
            crate::bench::MINE,
            &draft(1, "2026-03-01", "medicine_described", &medicine),
            &draft(
                2,
                "2026-03-01",
                "lot_acquired",
                &json!({"lot": "L1", "medicine": "strips", "quantity": 10}),
            ),
            &draft(3, "2026-03-01", "prescription", &prescription),
        ]),
    );
    bench.run(&["import", "mine.jsonl"]).done();
    for (name, media_type) in FILES {
        bench.write(name, sample(media_type, name));
    }
    bench
}

const FILES: [(&str, MediaType); 4] = [
    ("invoice.pdf", MediaType::Pdf),
    ("photo.jpg", MediaType::Jpeg),
    ("scan.png", MediaType::Png),
    ("phone.heic", MediaType::Heic),
];

fn hash_of(name: &str) -> String {
    let (name, media_type) = FILES.iter().find(|(known, _)| *known == name).unwrap();
    Hash::of_content(&sample(*media_type, name)).to_string()
}

/// The same with all four attached, three to the lot and one to the prescription.
fn with_documents() -> Bench {
    let bench = with_lot();
    for (name, to) in [
        ("invoice.pdf", "--lot=L1"),
        ("photo.jpg", "--lot=L1"),
        ("scan.png", "--prescription=P 1"),
        ("phone.heic", "--lot=L1"),
    ] {
        bench.run(&["attach", name, to, "--by", "A. Keeper", "--on", "2026-03-02"]).done();
    }
    bench
}

fn listed(bench: &Bench) -> Vec<Value> {
    bench.run(&["documents", "--json"]).done().json().as_array().unwrap().clone()
}

fn states(bench: &Bench) -> Vec<String> {
    listed(bench).iter().map(|row| row["state"].as_str().unwrap().to_owned()).collect()
}

const NO_GUARDS: [&str; 2] =
    ["drop trigger contents_are_not_updated", "drop trigger contents_are_not_deleted"];

fn tamper(bench: &Bench, sql: &str) {
    behind_its_back(bench, "combclear.db", &[&NO_GUARDS[..], &[sql]].concat());
}

/// A scan only shows; a PDF that does more is kept as it is, and the keeper hears of it while another scan is easy.
#[test]
fn attaching_a_pdf_that_is_locked_or_runs_something_says_so() {
    let bench = with_lot();
    let plain = bench.run(&["attach", "invoice.pdf", "--lot=L1", "--by", "A. Keeper"]).done();
    assert!(!plain.out.contains("Caution"), "{}", plain.out);
    let object = "own\n9 0 obj\n<< /S /JavaScript /JS (app.alert\\(1\\)) >>\nendobj";
    bench.write("form.pdf", sample(MediaType::Pdf, object));
    let said = bench.run(&["attach", "form.pdf", "--lot=L1", "--by", "A. Keeper"]).done();
    said.says(&["is attached to lot `L1`", "Caution, this file is as follows: contains a script."]);
    assert_eq!(states(&bench), ["kept", "kept"]);
}

#[test]
fn a_document_is_attached_listed_and_saved_to_the_byte() {
    let bench = with_documents();
    let rows = listed(&bench);
    let wanted: Vec<Value> = FILES.iter().map(|(name, _)| json!([name, hash_of(name), "kept"])).collect();
    let found: Vec<Value> =
        rows.iter().map(|row| json!([row["file_name"], row["content"], row["state"]])).collect();
    assert_eq!(found, wanted);
    assert_eq!((&rows[0]["lot"], &rows[2]["prescription"]), (&json!("L1"), &json!("P 1")));
    assert_eq!((&rows[0]["on"], &rows[0]["recorded_by"]), (&json!("2026-03-02"), &json!("A. Keeper")));
    bench.run(&["documents"]).done().says(&[
        "lot `L1`",
        // Its cell is broken after the first word.
        "prescription",
        "`P 1`",
        "invoice.pdf",
        "PDF, ",
        "4 documents",
    ]);
    for (name, media_type) in FILES {
        // The whole hash, or its beginning.
        let hash = hash_of(name);
        bench.run(&["documents", &hash, "--save", &format!("whole-{name}")]).done();
        bench.run(&["documents", hash.split_at(16).0, "--save", &format!("begin-{name}")]).done();
        for saved in ["whole", "begin"] {
            assert_eq!(
                std::fs::read(bench.path(&format!("{saved}-{name}"))).unwrap(),
                sample(media_type, name)
            );
        }
    }
    bench.run(&["verify"]).done();
}

#[test]
fn saving_never_writes_over_a_file() {
    let bench = with_documents();
    bench.write("diary.txt", "dear diary");
    let hash = hash_of("invoice.pdf");
    bench.run(&["documents", &hash, "--save", "diary.txt"]).failed_with(
        "`diary.txt` already exists; it was left as it is",
        "name a file that does not exist yet",
    );
    assert_eq!(bench.read("diary.txt"), "dear diary");
    bench.run(&["documents", &hash, "--save", "nowhere/x.pdf"]).failed_with(
        "cannot create `nowhere/x.pdf`: there is no such file or folder",
        "name a file in an existing folder that can be written to",
    );
    bench
        .run(&["documents", "ffffffffffff", "--save", "x.pdf"])
        .failed_with("no document `ffffffffffff` is attached", "list them: combclear documents");
    bench
        .run(&["documents", "ff", "--save", "x.pdf"])
        .failed_with("`ff` is too short to find a document by", "give at least 8 digits of its hash");
    assert!(!bench.path("x.pdf").exists());
    for wrong in [&["documents", hash.as_str()][..], &["documents", "--save", "x.pdf"]] {
        assert_eq!(bench.run(wrong).code, Some(2), "{wrong:?}");
    }
}

#[test]
fn the_same_document_is_attached_once() {
    let bench = with_documents();
    let again = bench.run(&["attach", "invoice.pdf", "--lot", "L1", "--by", "B. Keeper"]).done();
    again.says(&[
        "it is already attached to lot `L1`, on 2026-03-02 by A. Keeper (entry ",
        "; nothing was added",
    ]);
    assert_eq!(listed(&bench).len(), 4);
    // Attached to something else it is a new entry, but the content is stored once.
    bench.run(&["attach", "invoice.pdf", "--prescription", "P 1", "--by", "A. Keeper"]).done();
    assert_eq!(listed(&bench).len(), 5);
    assert_eq!(bench.run(&["export"]).done().out.matches("\"base64\"").count(), 4);
}

#[test]
fn what_cannot_be_attached_says_why_and_leaves_nothing_behind() {
    let bench = with_lot();
    let before = bench.kept();
    let pdf = sample(MediaType::Pdf, "x");
    bench.write("cut.pdf", &pdf[..pdf.len() - 9]);
    bench.write("page.pdf", "<!DOCTYPE html><script>alert(1)</script>");
    bench.write("empty.pdf", "");
    let mut large = sample(MediaType::Jpeg, "x");
    large.resize(10_000_001, 0);
    bench.write("large.jpg", large);
    std::fs::create_dir(bench.path("folder.pdf")).unwrap();
    let paper = "attach a scan or a photograph of the paper";
    let smaller = "scan it at a lower resolution, or take a smaller photograph";
    let file = "name a file: a PDF, JPEG, PNG or HEIC";
    for (name, message, help) in [
        (
            "cut.pdf",
            "`cut.pdf` was not attached: the PDF looks cut off: there is no `%%EOF` near its end",
            "copy it again from the original, check that it opens, and attach that copy",
        ),
        (
            "page.pdf",
            "`page.pdf` was not attached: the content is `text/html`, not a PDF, JPEG, PNG or HEIC",
            paper,
        ),
        ("empty.pdf", "`empty.pdf` was not attached: the document is empty", "attach the file itself"),
        (
            "large.jpg",
            "`large.jpg` was not attached: the document has more than 10 MB (10000000 bytes)",
            smaller,
        ),
        ("folder.pdf", "cannot read `folder.pdf`: it is a folder", file),
        ("missing.pdf", "cannot read `missing.pdf`: there is no such file or folder", file),
    ] {
        bench.run(&["attach", name, "--lot", "L1", "--by", "me"]).failed_with(message, help);
    }
    bench
        .run(&["attach", "invoice.pdf", "--lot", "L2", "--by", "me"])
        .failed()
        .says(&["`invoice.pdf` was not attached: there is no lot `L2`", "help: did you mean `L1`?"]);
    for wrong in [
        &["attach", "invoice.pdf", "--by", "me"][..],
        &["attach", "invoice.pdf", "--lot", "L1"],
        &["attach", "invoice.pdf", "--lot", "L1", "--prescription", "P 1", "--by", "me"],
    ] {
        assert_eq!(bench.run(wrong).code, Some(2), "{wrong:?}");
    }
    assert_eq!(bench.kept(), before);
}

#[test]
fn documents_go_out_and_in_again_and_the_export_stays_the_same_to_the_byte() {
    let bench = with_documents();
    bench.run(&["export", "one.jsonl"]).done();
    let one = bench.read("one.jsonl");
    let rows: Vec<&str> = one.lines().collect();
    assert_eq!(rows.len(), 1 + 7 + 4);
    let header: Value = serde_json::from_str(rows[0]).unwrap();
    assert_eq!((&header["entries"], &header["contents"]), (&json!(7), &json!(4)));
    let hashes: Vec<String> = rows[8..]
        .iter()
        .map(|row| serde_json::from_str::<Value>(row).unwrap()["content"].as_str().unwrap().to_owned())
        .collect();
    assert_eq!(hashes, FILES.map(|(name, _)| hash_of(name)));
    bench
        .run(&["--db", "sqlite:two.db", "import", "one.jsonl"])
        .done()
        .says(&["mine: 7 entries added, with 4 documents; the journal has 7 entries, head "]);
    bench.run(&["--db", "sqlite:two.db", "export", "two.jsonl"]).done();
    assert_eq!(bench.read("two.jsonl"), one);
    bench.run(&["--db", "sqlite:two.db", "verify"]).done();
    // A second time it adds nothing.
    bench
        .run(&["--db", "sqlite:two.db", "import", "one.jsonl"])
        .done()
        .says(&["0 entries added, 7 were already there, with 4 documents"]);
    bench.run(&["--db", "sqlite:two.db", "export", "three.jsonl"]).done();
    assert_eq!(bench.read("three.jsonl"), one);
}

#[test]
fn an_export_without_documents_says_nothing_of_them() {
    let bench = Bench::with_mine();
    let export = bench.run(&["export"]).done().out;
    assert!(!export.contains("content"));
    assert_eq!(bench.run(&["documents"]).done().out, "No document is attached.\n");
    assert_eq!(listed(&bench), Vec::<Value>::new());
}

#[test]
fn whatever_is_cut_from_or_changed_in_the_documents_of_an_export_is_named_with_its_line() {
    let bench = with_documents();
    bench.run(&["export", "good.jsonl"]).done();
    let good: Vec<String> = bench.read("good.jsonl").lines().map(ToOwned::to_owned).collect();
    let with = |edit: &dyn Fn(&mut Vec<String>)| {
        let mut rows = good.clone();
        edit(&mut rows);
        rows
    };
    let other = combclear_domain::journal::Content::new(sample(MediaType::Png, "other")).to_json();
    let other_count = |count: &'static str| {
        with(&|rows| rows[0] = rows[0].replace("\"contents\":4", &format!("\"contents\":{count}")))
    };
    let flipped = |row: &str| {
        let at = row.len() - 12;
        let sign = if row.as_bytes()[at] == b'A' { "B" } else { "A" };
        format!("{}{sign}{}", row.split_at(at).0, row.split_at(at + 1).1)
    };
    for (what, rows, line, message) in [
        (
            "the last line cut off",
            with(&|rows| drop(rows.pop())),
            1,
            "the header announces 4 documents; 3 are here",
        ),
        (
            "all of them cut off",
            with(&|rows| rows.truncate(8)),
            1,
            "the header announces 4 documents; 0 are here",
        ),
        (
            "the last line cut short",
            with(&|rows| {
                rows[11].pop();
                rows[11].pop();
            }),
            12,
            "EOF",
        ),
        ("the last line cut shorter", with(&|rows| rows[11].truncate(90)), 12, "EOF"),
        ("a sign of the bytes", with(&|rows| rows[9] = flipped(&rows[9])), 10, "does not match its hash"),
        (
            "another number of bytes",
            with(&|rows| rows[9] = rows[9].replace("\"bytes\":", "\"bytes\":1")),
            10,
            "the line says 1",
        ),
        (
            "another document in its place",
            with(&|rows| rows[9].clone_from(&other)),
            10,
            "no entry in the file attaches",
        ),
        (
            "one added",
            with(&|rows| rows.push(other.clone())),
            1,
            "the header announces 4 documents; 5 are here",
        ),
        (
            "one added and counted",
            with(&|rows| {
                rows[0] = rows[0].replace("\"contents\":4", "\"contents\":5");
                rows.push(other.clone());
            }),
            13,
            "no entry in the file attaches",
        ),
        ("one twice", with(&|rows| rows[11] = rows[8].clone()), 12, "is here twice"),
        (
            "one among the entries",
            with(&|rows| {
                let row = rows.remove(11);
                rows.insert(5, row);
            }),
            6,
            "not after them",
        ),
        (
            "the count left out",
            with(&|rows| rows[0] = rows[0].replace(",\"contents\":4", "")),
            1,
            "the header announces 0 documents; 4 are here",
        ),
        ("another count", other_count("3"), 1, "the header announces 3 documents; 4 are here"),
    ] {
        assert_ne!(rows, good, "{what}");
        bench.write("bad.jsonl", lines(rows.iter().map(String::as_str)));
        let ran = bench.run(&["--db", "sqlite:new.db", "import", "bad.jsonl"]).failed();
        let place = format!("bad.jsonl:{line}: ");
        assert!(ran.err.contains(&place) && ran.err.contains(message), "{what}: {}", ran.err);
        assert!(ran.err.contains("export the journal again"), "{what}: {}", ran.err);
        assert!(!bench.path("new.db").exists(), "{what}");
    }
}

#[test]
fn a_changed_document_is_named_by_verify_and_never_handed_out() {
    for (change, bytes) in [("one byte", "cast(bytes || x'00' as blob)"), ("all of it", "x'25504446'")] {
        let bench = with_documents();
        let hash = hash_of("photo.jpg");
        tamper(&bench, &format!("update contents set bytes = {bytes} where hash = x'{hash}'"));
        assert_eq!(states(&bench), ["kept", "altered", "kept", "kept"], "{change}");
        let entry = listed(&bench)[1]["id"].as_str().unwrap().to_owned();
        let intact =
            "The entries of mine are intact: 7 entries, each as it was recorded. But 1 document is MISSING";
        let named = format!(
            "document `{hash}` of lot `L1` (entry 5, {entry}) is altered: its content is not what was attached"
        );
        bench.run(&["verify"]).answered(3).says(&[intact, &named]);
        let report = bench.run(&["verify", "--json"]).answered(3).json();
        assert_eq!(
            (&report["sound"], &report["fault"]),
            (&json!(false), &json!("1 document is missing or altered"))
        );
        let bad = json!([{
            "content": hash, "state": "altered", "seq": 5, "id": entry, "lot": "L1", "prescription": null
        }]);
        assert_eq!(report["documents"], bad);
        bench.run(&["documents", &hash, "--save", "x.jpg"]).failed().says(&["is altered"]);
        assert!(!bench.path("x.jpg").exists());
        bench
            .run(&["documents"])
            .done()
            .says(&["4 documents; 1 is missing or altered, see combclear verify"]);
        bench
            .run(&["attach", "photo.jpg", "--lot", "L1", "--by", "me"])
            .failed()
            .says(&["is altered", "into a new database"]);
    }
}

#[test]
fn a_missing_document_is_named_the_journal_still_goes_out_and_the_file_itself_mends_it() {
    let bench = with_documents();
    bench.run(&["export", "whole.jsonl"]).done();
    let hash = hash_of("scan.png");
    tamper(&bench, &format!("delete from contents where hash = x'{hash}'"));
    bench.run(&["verify"]).answered(3).says(&[
        &format!("document `{hash}` of prescription `P 1` (entry 6, "),
        "is missing: nothing is kept under its hash",
        "help: attach the same file again",
    ]);
    let ran = bench.run(&["export", "without.jsonl"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(5), ""));
    assert!(ran.err.starts_with(&format!("warning: document `{hash}` of prescription `P 1`")), "{}", ran.err);
    assert!(ran.err.contains("; the export leaves it out\n  help: "), "{}", ran.err);
    // It imports, and the missing content is missing there too.
    bench.run(&["--db", "sqlite:two.db", "import", "without.jsonl"]).done().says(&["with 3 documents"]);
    bench.run(&["--db", "sqlite:two.db", "verify"]).answered(3).says(&[&hash]);
    // The file itself supplies it; so does an export that has it.
    bench
        .run(&["attach", "scan.png", "--prescription", "P 1", "--by", "me"])
        .done()
        .says(&["; its content was missing and is now kept"]);
    bench.run(&["--db", "sqlite:two.db", "import", "whole.jsonl"]).done();
    for db in ["sqlite:combclear.db", "sqlite:two.db"] {
        bench.run(&["--db", db, "verify"]).done();
        assert_eq!(bench.run(&["--db", db, "export"]).done().out, bench.read("whole.jsonl"));
    }
}

#[test]
fn drafts_may_attach_a_document_whose_content_comes_later() {
    let bench = with_lot();
    let body = json!({
        "content": hash_of("invoice.pdf"), "media_type": "application/pdf",
        "bytes": sample(MediaType::Pdf, "invoice.pdf").len(), "lot": "L1",
    });
    bench.write(
        "more.jsonl",
        lines([crate::bench::MINE, &draft(4, "2026-03-02", "document_attached", &body)]),
    );
    bench.run(&["import", "more.jsonl"]).done();
    assert_eq!(states(&bench), ["missing"]);
    bench
        .run(&["attach", "invoice.pdf", "--lot", "L1", "--by", "me"])
        .done()
        .says(&[&format!("on 2026-03-02 by me (entry {}); its content was missing and is now kept", id(4))]);
    assert_eq!(states(&bench), ["kept"]);
    // A file of drafts cannot carry documents.
    let header = crate::bench::MINE.replace("false", "false,\"contents\":1");
    bench.write("bad.jsonl", lines([header.as_str()]));
    bench
        .run(&["import", "bad.jsonl"])
        .failed()
        .says(&["/contents: a file of drafts cannot carry the contents of documents"]);
}
