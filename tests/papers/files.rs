//! Files for other programs, and running those programs.

use std::path::PathBuf;

use combclear_domain::journal::Content;
use combclear_papers::pack::{Failing, Input, Why, pack};
use combclear_wording::Words;
use combclear_wording::register::RegisterReport;

use super::making::{autumn, demo, hard, made, with_documents};
use crate::one_line::OneLine;

/// A folder of this test alone.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("papers").join(name);
    std::fs::create_dir_all(&folder).unwrap();
    folder
}

/// Runs a script beside this file, which says what it found.
fn python(script: &str, arguments: &[PathBuf]) -> String {
    combclear_testkit::files::python(&format!("tests/papers/{script}"), arguments, "")
}

fn content(text: &str) -> Content {
    Content::new(text.as_bytes().to_vec())
}

#[test]
fn python_opens_the_pack_and_finds_every_file_as_its_sum_says() {
    let contents = [content("one"), content("two"), content("three"), content("four")];
    let hashes: Vec<_> = contents.iter().map(Content::hash).collect();
    let names = ["../../etc/passwd", "invoice H-1987.pdf", "\u{8702}\u{0}.pdf", "gone.pdf"];
    let report = with_documents(hard(), &hashes, &names);
    let failing = [Failing { hash: hashes[3], why: Why::Altered }];
    let (contents, failing) = (&contents[..3], &failing[..]);
    let input =
        Input { register: &report, gaps: None, contents, failing, typesetter: Some(&OneLine), made: made() };
    let packed = pack(&input).unwrap();
    assert!(packed == pack(&input).unwrap(), "the same input gives the same bytes");
    let file = folder("pack").join("pack.zip");
    std::fs::write(&file, packed).unwrap();
    insta::assert_snapshot!(python("check_zip.py", &[file]));
    let without = folder("pack-without-pdf").join("pack.zip");
    std::fs::write(&without, pack(&Input { typesetter: None, ..input }).unwrap()).unwrap();
    let files = python("check_zip.py", &[without]);
    assert!(files.contains("register.html") && !files.contains("register.pdf"), "{files}");
}

#[test]
fn python_reads_the_csv_back_as_the_json_tells_it() {
    for (name, report) in [("demo", demo()), ("autumn", autumn()), ("hard", hard())] {
        let folder = folder("csv");
        let csv = folder.join(format!("{name}.csv"));
        let json = folder.join(format!("{name}.json"));
        std::fs::write(&csv, combclear_papers::flat::csv(&report).unwrap()).unwrap();
        std::fs::write(&json, serde_json::to_vec(&RegisterReport::of(Words::english(), &report)).unwrap())
            .unwrap();
        let said = python("check_csv.py", &[csv, json]);
        assert!(said.starts_with("as the JSON tells it: "), "{said}");
    }
}
