//! The CSV as a whole, and arbitrary text in it.

use combclear_papers::flat::{COLUMNS, csv, guarded, unguarded};
use proptest::prelude::*;

use super::making::{demo, vets};

#[test]
fn the_demo_as_csv() {
    insta::assert_snapshot!(
        String::from_utf8(csv(&demo()).unwrap())
            .unwrap()
            .trim_start_matches('\u{feff}')
            .replace("\r\n", "\n")
    );
}

#[test]
fn a_vets_lot_has_a_row_and_its_vet_stands_there_too() {
    let bytes = csv(&vets()).unwrap();
    let mut reader = csv_reader(&bytes[3..]);
    let place = |name: &str| COLUMNS.iter().position(|column| *column == name).unwrap();
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let of = |kind: &str| {
        let mut of_kind = rows.iter().filter(|row| &row[0] == kind && &row[place("lot")] == "VET-1");
        let row = of_kind.next().unwrap();
        ["batch", "vet", "vet_contact", "quantity"].map(|name| row[place(name)].to_owned())
    };
    assert_eq!(of("vet_lot"), ["VB 7 demo", "V. Vet (invented)", "3 Nowhere Lane (invented)", ""]);
    assert_eq!(of("administration"), ["VB 7 demo", "V. Vet (invented)", "", "2"]);
    assert!(rows.iter().all(|row| &row[0] != "stock" || &row[place("lot")] != "VET-1"));
}

/// Texts of the critical characters, and others.
fn text() -> impl Strategy<Value = String> {
    prop_oneof!["[ '=+@\\-\t\r\n\u{ff1d}\u{a0}\",;a0]{0,8}", any::<String>()]
}

/// Characters that begin a formula, according to OWASP's page.
const BEGINS: [char; 11] =
    ['=', '+', '-', '@', '\t', '\r', '\n', '\u{ff1d}', '\u{ff0b}', '\u{ff0d}', '\u{ff20}'];

proptest! {
    #[test]
    fn a_cell_reads_back_and_never_begins_a_formula(text in text()) {
        let cell = guarded(&text);
        prop_assert_eq!(&unguarded(&cell), &text);
        let first = cell.trim_start_matches(|sign: char| sign.is_whitespace() && !BEGINS.contains(&sign));
        prop_assert!(!first.starts_with(BEGINS));
        // Nor any part that another program takes for a cell. A line end is one of those characters itself, so it ends a
        // part and begins none.
        for part in cell.split([';', '\t', '\r', '\n']) {
            let first = part.trim_start_matches(|sign: char| sign == '"' || sign.is_whitespace());
            prop_assert!(!first.starts_with(BEGINS), "{part:?} of {cell:?}");
        }
    }

    #[test]
    fn a_register_reads_back_with_any_text(text in text()) {
        let mut report = demo_once().clone();
        report.disposals[0].how_and_where.clone_from(&text);
        let bytes = csv(&report).unwrap();
        let mut reader = csv_reader(&bytes);
        prop_assert_eq!(reader.headers().unwrap().iter().collect::<Vec<_>>(), COLUMNS.to_vec());
        let place = COLUMNS.iter().position(|column| *column == "how_and_where").unwrap();
        let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
        let row = rows.iter().find(|row| &row[0] == "disposal").unwrap();
        let expected = if text.trim().is_empty() { "not recorded" } else { text.as_str() };
        prop_assert_eq!(unguarded(&row[place]), expected);
    }
}

fn csv_reader(bytes: &[u8]) -> ::csv::Reader<&[u8]> {
    ::csv::Reader::from_reader(bytes)
}

fn demo_once() -> &'static combclear_domain::questions::register::Register {
    static DEMO: std::sync::OnceLock<combclear_domain::questions::register::Register> =
        std::sync::OnceLock::new();
    DEMO.get_or_init(|| {
        let mut report = demo();
        report.administrations.clear();
        report
    })
}
