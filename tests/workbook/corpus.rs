//! The inputs that fuzzing kept, read again.

use combclear_testkit::corpus::tried;
use combclear_wording::Words;
use combclear_workbook::read::xlsx;

use crate::sheet::{check_csv, check_parts, check_xlsx, packed};

#[test]
fn what_was_kept_of_csv_is_recorded_once_or_refused_in_words() {
    assert!(tried("csv", check_csv) > 0);
}

#[test]
fn what_was_kept_of_packed_files_is_recorded_once_or_refused_in_words() {
    assert!(tried("xlsx", check_xlsx) > 0);
}

#[test]
fn what_was_kept_of_their_parts_is_recorded_once_or_refused_in_words() {
    assert!(tried("workbook", check_parts) > 0);
}

#[test]
fn a_cell_in_a_row_that_no_sheet_has_is_refused_in_words() {
    let workbook = r#"<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="Apiaries" sheetId="1" r:id="rId1"/></sheets></workbook>"#;
    let of_sheet = |cell: &str| {
        let sheet =
            format!(r#"<worksheet><sheetData><row><c r="{cell}"><v>1</v></c></row></sheetData></worksheet>"#);
        let read = xlsx(Words::english(), &packed(format!("{workbook}\0{sheet}").as_bytes()));
        read.map(|sheet| sheet.faults.len())
            .map_err(|unfit| unfit.said(Words::english(), "sheet.xlsx").message)
    };
    assert_eq!(of_sheet("A1"), Ok(1));
    let refused = "nothing was imported: `sheet.xlsx` is not a spreadsheet that can be read: \
                   it holds something that no spreadsheet program writes";
    assert_eq!(of_sheet("A99999999999"), Err(refused.to_owned()));
}
