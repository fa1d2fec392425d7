//! What holds of every file that is read as a spreadsheet.

use std::io::{Cursor, Write};
use std::sync::LazyLock;

use combclear_domain::Instant;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Draft;
use combclear_domain::journal::entry::Envelope;
use combclear_testkit::files::demo_holding;
use combclear_wording::Words;
use combclear_workbook::entries::entries;
use combclear_workbook::faults::Unfit;
use combclear_workbook::read::{self, Sheet};
use zip::write::SimpleFileOptions;
use zip::{CompressionMethod, ZipWriter};

/// The parts of a workbook that differ, in the order in which [`check_parts`] takes them.
pub const PARTS: [&str; 4] =
    ["xl/workbook.xml", "xl/worksheets/sheet1.xml", "xl/sharedStrings.xml", "xl/styles.xml"];

const TYPES: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/></Types>"#;
const RELATIONS: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>"#;
const OF_WORKBOOK: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="rId2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/><Relationship Id="rId3" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings" Target="sharedStrings.xml"/></Relationships>"#;

static DEMO: LazyLock<Holding> = LazyLock::new(demo_holding);

/// Reads the bytes as a file of Excel.
pub fn check_xlsx(bytes: &[u8]) {
    checked(read::xlsx(Words::english(), bytes), bytes);
}

/// Reads the bytes as CSV.
pub fn check_csv(bytes: &[u8]) {
    checked(read::csv(Words::english(), bytes), bytes);
}

/// Packs the bytes as the parts of a workbook, with a zero byte between them, and reads that.
pub fn check_parts(bytes: &[u8]) {
    check_xlsx(&packed(bytes));
}

/// A workbook of these parts, with a zero byte between them.
pub fn packed(bytes: &[u8]) -> Vec<u8> {
    let mut out = ZipWriter::new(Cursor::new(Vec::new()));
    let stored = SimpleFileOptions::default().compression_method(CompressionMethod::Stored);
    let fixed = [
        ("[Content_Types].xml", TYPES.as_bytes()),
        ("_rels/.rels", RELATIONS.as_bytes()),
        ("xl/_rels/workbook.xml.rels", OF_WORKBOOK.as_bytes()),
    ];
    for (name, content) in fixed.into_iter().chain(PARTS.into_iter().zip(bytes.split(|byte| *byte == 0))) {
        out.start_file(name, stored).unwrap();
        out.write_all(content).unwrap();
    }
    out.finish().unwrap().into_inner()
}

fn checked(read: Result<Sheet, Unfit>, bytes: &[u8]) {
    let words = Words::english();
    let sheet = match read {
        Ok(sheet) => sheet,
        Err(unfit) => {
            let said = unfit.said(words, "a file");
            assert!(!said.message.is_empty() && !said.help.is_empty(), "{unfit:?} is not said");
            return;
        }
    };
    assert!(sheet.rows.len() <= read::ROWS_MOST);
    assert!(sheet.rows.len() <= bytes.len(), "there are more rows than bytes");
    let leaflets = combclear_leaflets::builtin().unwrap();
    let now: Instant = "2026-08-29T08:00:00.000Z".parse().unwrap();
    match entries(&sheet, &DEMO, leaflets, now) {
        Ok(found) => {
            let mut holding = DEMO.clone();
            for draft in &found.drafts {
                let written = serde_json::to_string(&Envelope::of(draft)).unwrap();
                assert_eq!(Draft::from_json(&written, None).as_ref(), Ok(draft), "{written}");
                holding.record(draft.clone(), now).unwrap_or_else(|refusal| panic!("{written}: {refusal}"));
            }
            // The same sheet records nothing more.
            let again =
                entries(&sheet, &holding, leaflets, now).unwrap_or_else(|faults| panic!("{faults:?}"));
            assert!(again.drafts.is_empty(), "{:?}", again.drafts);
            assert_eq!(again.known, found.known + found.drafts.len());
        }
        Err(faults) => {
            assert!(!faults.is_empty(), "it is refused for nothing");
            for fault in &faults {
                assert!(!fault.said(words).is_empty(), "{fault:?} is not said");
            }
        }
    }
}
