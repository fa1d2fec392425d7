//! A sheet as .xlsx: a tab for each kind of entry.
//!
//! Cells are read one after the other: a file that has a cell in its last row and column takes no more memory than its cells.

use std::io::Cursor;
use std::panic::{AssertUnwindSafe, catch_unwind};

use calamine::{DataRef, Dimensions, ExcelDateTime, Reader, SheetType, Xlsx, XlsxError};
use combclear_wording::{Label, Words};

use super::cell::{Moment, Raw};
use super::{FILE_MOST_MB, RawRow, Sheet, is_too_long, too_many_rows};
use crate::columns::{kind_of_tab, letters};
use crate::faults::{Fault, Unfit, What};

/// Most MB of a file that is unpacked.
const UNPACKED_MOST_MB: u64 = 200;

type Workbook<'b> = Xlsx<Cursor<&'b [u8]>>;

/// Reads a sheet.
///
/// # Errors
/// Why the file is not read at all. What is wrong with its cells is in the sheet.
pub fn xlsx(words: &Words, bytes: &[u8]) -> Result<Sheet, Unfit> {
    check_size(bytes)?;
    // The library works out the place of a cell without checking that a sheet has such a place: a long row number overflows.
    catch_unwind(AssertUnwindSafe(|| read(words, bytes))).unwrap_or_else(|_| {
        Err(Unfit::NotASpreadsheet { why: words.label(Label::SheetReaderFailed).to_owned() })
    })
}

fn read(words: &Words, bytes: &[u8]) -> Result<Sheet, Unfit> {
    let mut workbook: Workbook<'_> = Xlsx::new(Cursor::new(bytes)).map_err(|error| unreadable(&error))?;
    let tabs: Vec<String> = workbook
        .sheets_metadata()
        .iter()
        .filter(|tab| tab.typ == SheetType::WorkSheet)
        .map(|tab| tab.name.clone())
        .filter(|name| name != words.label(Label::SheetChoices))
        .collect();
    let mut read = Vec::new();
    let mut count = 0;
    for tab in &tabs {
        let rows = rows(&mut workbook, tab, &mut count)?;
        read.push((tab, rows, workbook.merge_cells_by_sheet_name(tab).map_err(|error| unreadable(&error))?));
    }
    let mut sheet = Sheet::default();
    for (index, (tab, rows, merged)) in read.into_iter().enumerate() {
        if tab == words.label(Label::SheetAbout) {
            sheet.holding = holding(words, &rows);
            continue;
        }
        if rows.is_empty() {
            continue;
        }
        let kind = kind_of_tab(words, tab);
        let of_tab = |what| Fault { kind, tab: tab.clone(), tab_index: index, row: None, column: None, what };
        let Some(kind) = kind else {
            sheet.faults.push(of_tab(What::NoSuchTab));
            continue;
        };
        sheet.faults.extend(merged.iter().map(|merged| {
            let (row, column) = merged.start;
            let at = of_tab(What::Merged { range: range(merged) });
            Fault { row: Some(row.saturating_add(1)), column: Some(column), ..at }
        }));
        sheet.add_tab(words, kind, tab, index, rows);
    }
    sheet.checked()
}

/// Refuses a file that would take much memory, before anything of it is unpacked.
fn check_size(bytes: &[u8]) -> Result<(), Unfit> {
    let is_more = |length: u64, most: u64| length > most.saturating_mul(1_000_000);
    if u64::try_from(bytes.len()).map_or(true, |length| is_more(length, FILE_MOST_MB)) {
        return Err(Unfit::TooLarge { most: FILE_MOST_MB });
    }
    let unreadable = |error: zip::result::ZipError| Unfit::NotASpreadsheet { why: error.to_string() };
    let mut packed = zip::ZipArchive::new(Cursor::new(bytes)).map_err(unreadable)?;
    let mut unpacked: u64 = 0;
    for index in 0..packed.len() {
        let file = packed.by_index_raw(index).map_err(unreadable)?;
        unpacked = unpacked.saturating_add(file.size());
    }
    if is_more(unpacked, UNPACKED_MOST_MB) {
        return Err(Unfit::TooLarge { most: FILE_MOST_MB });
    }
    Ok(())
}

/// The rows of a tab that are not empty.
fn rows(workbook: &mut Workbook<'_>, tab: &str, count: &mut usize) -> Result<Vec<RawRow>, Unfit> {
    let mut cells = workbook.worksheet_cells_reader(tab).map_err(|error| unreadable(&error))?;
    let mut rows: Vec<RawRow> = Vec::new();
    while let Some(cell) = cells.next_cell_with_formula_metadata().map_err(|error| unreadable(&error))? {
        let raw = if cell.formula.is_some() { Some(Raw::Formula) } else { raw(cell.value) };
        let Some(raw) = raw else { continue };
        let (row, column) = cell.pos;
        let number = row.saturating_add(1);
        match rows.last_mut() {
            Some((last, cells)) if *last == number => cells.push((column, raw)),
            _ => {
                *count = count.saturating_add(1);
                if is_too_long(*count) {
                    return Err(too_many_rows());
                }
                rows.push((number, vec![(column, raw)]));
            }
        }
    }
    Ok(rows)
}

/// What is in a cell; nothing for one that is empty.
fn raw(value: DataRef<'_>) -> Option<Raw> {
    let text = |text: &str| (!text.trim().is_empty()).then(|| Raw::Text(text.to_owned()));
    match value {
        DataRef::Empty => None,
        DataRef::String(written) | DataRef::DateTimeIso(written) | DataRef::DurationIso(written) => {
            text(&written)
        }
        DataRef::SharedString(written) => text(written),
        #[expect(clippy::cast_precision_loss, reason = "a spreadsheet holds no other numbers")]
        DataRef::Int(number) => Some(Raw::Number(number as f64)),
        DataRef::Float(number) => Some(Raw::Number(number)),
        DataRef::Bool(yes) => Some(Raw::YesNo(yes)),
        DataRef::DateTime(moment) => Some(Raw::Moment(of_serial(moment))),
        DataRef::Error(error) => Some(Raw::Error(error.to_string())),
    }
}

fn of_serial(serial: ExcelDateTime) -> Moment {
    let (year, month, day, hour, minute, second, _) = serial.to_ymd_hms_milli();
    Moment {
        year: year.into(),
        month: month.into(),
        day: day.into(),
        hour: hour.into(),
        minute: minute.into(),
        has_time: (hour, minute, second) != (0, 0, 0),
        is_time_only: serial.as_f64() < 1.0,
    }
}

/// The holding that the first tab names.
fn holding(words: &Words, rows: &[RawRow]) -> Option<String> {
    let (_, cells) = rows.iter().find(|(number, _)| *number == 1)?;
    let at = |wanted: u32| cells.iter().find(|(index, _)| *index == wanted).map(|(_, raw)| raw.in_words());
    at(0).filter(|label| label == words.label(Label::SheetHolding))?;
    at(1).filter(|name| !name.is_empty())
}

/// Such as `A1:B2`.
fn range(cells: &Dimensions) -> String {
    let cell = |(row, column): (u32, u32)| format!("{}{}", letters(column), row.saturating_add(1));
    format!("{}:{}", cell(cells.start), cell(cells.end))
}

fn unreadable(error: &XlsxError) -> Unfit {
    Unfit::NotASpreadsheet { why: error.to_string() }
}
