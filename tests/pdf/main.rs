//! The PDF. Another program reads its pages back: see `check_pdf.py`, run by `.ci/run`.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test stops at the first surprise")]

use std::path::PathBuf;

use combclear_domain::Instant;
use combclear_papers::{NotSet, Paper, Pdf, Typesetter};
use combclear_pdf::BuiltIn;
use combclear_wording::Words;
use combclear_wording::register::RegisterReport;
use making::{HARD, copied, demo, hard, made, with_documents};

#[expect(dead_code, reason = "shared with the other papers, which need more")]
#[path = "../papers/making.rs"]
mod making;

fn pdf(paper: &Paper, made: Instant) -> Result<Pdf, NotSet> {
    BuiltIn.set(paper, made)
}

#[test]
fn the_same_register_gives_the_same_bytes_and_says_when_it_was_made() {
    let paper = Paper::of(Words::english(), &demo(), None);
    let (one, other) = (pdf(&paper, made()).unwrap(), pdf(&paper, made()).unwrap());
    assert!(one.bytes == other.bytes);
    assert_eq!(one.missing, Vec::<String>::new());
    let text = String::from_utf8_lossy(&one.bytes);
    for said in ["D:20261127100000", "pdfaid:part>2<", "pdfaid:conformance>A<"] {
        assert!(text.contains(said), "`{said}` is not in the file");
    }
    keep("demo", &demo(), &one.bytes);
}

#[test]
fn hard_texts_are_set_as_they_are_and_signs_without_a_shape_are_named() {
    let report = hard();
    assert!(HARD[0].contains("#panic"));
    let set = pdf(&Paper::of(Words::english(), &report, None), made()).unwrap();
    assert_eq!(set.missing, ["U+4E61", "U+8702", "U+1F41D"]);
    keep("hard", &report, &set.bytes);
}

/// A row longer than a page breaks; if it stayed whole, the part below the edge would be lost.
#[test]
fn a_row_longer_than_a_page_loses_nothing() {
    let report = many(600);
    let set = pdf(&Paper::of(Words::english(), &report, None), made()).unwrap();
    keep("many", &report, &set.bytes);
}

/// Text copied from the pages is the recorded text: no hyphen is inserted into a number to break its line.
///
/// The other program separates the lines of a cell, so only its line ends are removed.
#[test]
fn a_hash_a_batch_and_an_id_are_taken_from_the_pages_as_they_were_written() {
    let hash = combclear_domain::journal::Content::new(b"an invoice".to_vec()).hash();
    let mut report = with_documents(demo(), &[hash, hash], &["invoice.pdf", "again.pdf"]);
    let batch = "20250811146998220000/77-2025-114-2025-07-11";
    report.acquisitions[0].batch = Some(batch.to_owned());
    let set = pdf(&Paper::of(Words::english(), &report, None), made()).unwrap();
    let text = pdf_extract::extract_text_from_mem(&set.bytes).unwrap();
    let whole: String = text.chars().filter(|sign| !sign.is_whitespace()).collect();
    for wanted in [hash.to_string().as_str(), batch, report.head.unwrap().to_string().as_str()] {
        assert!(whole.contains(wanted), "`{wanted}` is not in the pages");
    }
    assert!(text.contains(&hash.to_string()), "the hash fits its column, so its line does not end within it");
    assert!(!text.contains(batch), "the batch is wider than its column, so its line ends within it");
    assert!(!text.contains(['\u{200b}', '\u{ad}']), "a sign that nobody wrote is in the pages");
    keep("long", &report, &set.bytes);
}

/// The narrowest column of the widest sheet holds a date.
#[test]
fn no_date_is_broken_across_lines() {
    let report = copied();
    let set = pdf(&Paper::of(Words::english(), &report, None), made()).unwrap();
    let text = pdf_extract::extract_text_from_mem(&set.bytes).unwrap();
    let whole: String = text.chars().filter(|sign| !sign.is_whitespace()).collect();
    let mut dates: Vec<String> = report.standing().map(|written| written.on.to_string()).collect();
    dates.push("2025-04-12".to_owned());
    for date in dates {
        assert_eq!(text.matches(&date).count(), whole.matches(&date).count(), "{date}");
    }
    keep("copied", &report, &set.bytes);
}

/// A register with one administration to this many colonies.
fn many(colonies: usize) -> combclear_domain::questions::register::Register {
    let mut report = demo();
    report.administrations.truncate(1);
    let names: Vec<_> = (1..=colonies).map(|number| format!("Colony{number}").parse().unwrap()).collect();
    let row = &mut report.administrations[0];
    row.given.truncate(1);
    row.given[0].colonies.clone_from(&names);
    row.courses.truncate(1);
    row.courses[0].colonies = names;
    report
}

/// Saves the file and its expected content for `check_pdf.py`.
fn keep(name: &str, report: &combclear_domain::questions::register::Register, bytes: &[u8]) {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("papers").join("pdf");
    std::fs::create_dir_all(&folder).unwrap();
    std::fs::write(folder.join(format!("{name}.pdf")), bytes).unwrap();
    std::fs::write(
        folder.join(format!("{name}.json")),
        serde_json::to_vec(&RegisterReport::of(Words::english(), report)).unwrap(),
    )
    .unwrap();
}
