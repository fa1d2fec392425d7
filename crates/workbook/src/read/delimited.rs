//! A sheet as CSV (RFC 4180): one kind of entry, named in the first column.
//!
//! The first row has the headings, of which the first is `Kind`. Below it, any row may name the kind, as the row of hints of the
//! template does; all that do must name the same. Cells are separated by commas or by semicolons, whichever the first row has
//! more of. The text is UTF-8, with or without a byte order mark. An apostrophe before what a spreadsheet program would take
//! for a formula is taken off, as the register's CSV puts it there.

use combclear_domain::journal::Kind;
use combclear_papers::flat::unguarded;
use combclear_wording::{Label, Words, forms};

use super::cell::Raw;
use super::{FILE_MOST_MB, RawRow, Sheet, is_too_long, too_many_rows};
use crate::columns::kind_of_tab;
use crate::faults::Unfit;

/// The byte order mark that some programs put before UTF-8 text.
const BYTE_ORDER_MARK: &[u8] = b"\xef\xbb\xbf";

/// Reads a sheet.
///
/// # Errors
/// Why the file is not read at all. What is wrong with its cells is in the sheet.
pub fn csv(words: &Words, bytes: &[u8]) -> Result<Sheet, Unfit> {
    if u64::try_from(bytes.len()).is_ok_and(|length| length > FILE_MOST_MB * 1_000_000) {
        return Err(Unfit::TooLarge { most: FILE_MOST_MB });
    }
    let text = text(bytes)?;
    let rows = rows(text)?;
    let kind = kind(words, &rows)?;
    let cells = rows.into_iter().map(|(number, cells)| {
        let cells = cells.into_iter().skip(1).zip(1_u32..);
        let filled = cells.filter(|(cell, _)| !cell.trim().is_empty());
        (number, filled.map(|(cell, index)| (index, Raw::Text(unguarded(&cell)))).collect())
    });
    let rows: Vec<RawRow> = cells.filter(|(_, cells): &RawRow| !cells.is_empty()).collect();
    let mut sheet = Sheet::default();
    sheet.add_tab(words, kind, forms::tab(words, kind), 0, rows);
    sheet.checked()
}

fn text(bytes: &[u8]) -> Result<&str, Unfit> {
    let bytes = bytes.strip_prefix(BYTE_ORDER_MARK).unwrap_or(bytes);
    std::str::from_utf8(bytes).map_err(|error| {
        let before = std::str::from_utf8(bytes.get(..error.valid_up_to()).unwrap_or_default());
        let lines = before.map(breaks).unwrap_or_default();
        Unfit::NotUtf8 { line: u64::try_from(lines).unwrap_or(u64::MAX).saturating_add(1) }
    })
}

/// The rows, each with its number as a spreadsheet program shows it: a line break within a cell begins no row.
fn rows(text: &str) -> Result<Vec<(u32, Vec<String>)>, Unfit> {
    let mut reader = ::csv::ReaderBuilder::new()
        .has_headers(false)
        .flexible(true)
        .delimiter(separator(text))
        .from_reader(text.as_bytes());
    let mut rows = Vec::new();
    let (mut before, mut counted, mut within) = (0, 0, 0);
    for record in reader.records() {
        let record = record.map_err(|error| Unfit::NotASpreadsheet { why: error.to_string() })?;
        if is_too_long(rows.len()) {
            return Err(too_many_rows());
        }
        // The reader passes over empty lines, before which the record is said to begin.
        let begins = record.position().map_or(0, ::csv::Position::byte);
        let begins = usize::try_from(begins).unwrap_or(usize::MAX);
        let empty = text.bytes().skip(begins).take_while(|byte| matches!(byte, b'\r' | b'\n')).count();
        let begins = begins.saturating_add(empty);
        before += breaks(text.get(counted..begins).unwrap_or_default());
        counted = begins;
        let number = (before + 1).saturating_sub(within);
        within += record.iter().map(breaks).sum::<usize>();
        rows.push((u32::try_from(number).unwrap_or(u32::MAX), record.iter().map(str::to_owned).collect()));
    }
    Ok(rows)
}

fn breaks(text: &str) -> usize {
    text.bytes().filter(|byte| *byte == b'\n').count()
}

/// The character between cells.
fn separator(text: &str) -> u8 {
    let first = text.lines().next().unwrap_or_default();
    let count = |wanted: u8| first.bytes().filter(|byte| *byte == wanted).count();
    if count(b';') > count(b',') { b';' } else { b',' }
}

/// The kind that the first column names.
fn kind(words: &Words, rows: &[(u32, Vec<String>)]) -> Result<Kind, Unfit> {
    let mut first = rows.iter().filter_map(|(_, cells)| cells.first()).map(|cell| cell.trim());
    if !first.next().is_some_and(|heading| heading.eq_ignore_ascii_case(words.label(Label::SheetKind))) {
        return Err(Unfit::NoKind);
    }
    let mut found: Option<Kind> = None;
    for name in first.filter(|name| !name.is_empty()) {
        let kind = kind_of_tab(words, name).ok_or_else(|| Unfit::OtherKind { kind: name.to_owned() })?;
        match found {
            Some(one) if one != kind => {
                let tab = |kind| forms::tab(words, kind).to_owned();
                return Err(Unfit::TwoKinds { one: tab(one), other: tab(kind) });
            }
            _ => found = Some(kind),
        }
    }
    found.ok_or(Unfit::NoKind)
}
