//! Fills in a template as a keeper does: its tabs and headings are read from the file, and cells are written below.

use std::collections::BTreeMap;
use std::io::Cursor;

use calamine::{Data, DataType, Range, Reader, Xlsx};
use rust_xlsxwriter::{ExcelDateTime, Format, Formula, Workbook, Worksheet};

use crate::bench::Bench;

/// What is written into a cell.
#[derive(Debug, Clone, Copy)]
pub(super) enum Cell {
    Text(&'static str),
    Number(f64),
    /// A day, with a time after it if there is one.
    Date(&'static str),
    Time(&'static str),
    Formula(&'static str),
    YesNo(bool),
    /// Merged with the cells up to this one.
    MergedTo(&'static str),
}

/// The tabs of a file with their cells, in order.
pub(super) fn tabs(bench: &Bench, file: &str) -> Vec<(String, Range<Data>)> {
    let bytes = std::fs::read(bench.path(file)).unwrap();
    let mut workbook: Xlsx<_> = Xlsx::new(Cursor::new(bytes)).unwrap();
    let names = workbook.sheet_names();
    names.into_iter().map(|name| (name.clone(), workbook.worksheet_range(&name).unwrap())).collect()
}

/// Row and column of a cell such as `B3`, from 0.
pub(super) fn place(cell: &str) -> (u32, u16) {
    let (letters, digits) = cell.split_at(cell.find(|letter: char| letter.is_ascii_digit()).unwrap());
    let column = letters.bytes().fold(0_u16, |column, letter| column * 26 + u16::from(letter - b'A') + 1);
    (digits.parse::<u32>().unwrap() - 1, column - 1)
}

/// Copies a template and writes cells, each named like `Inspections!A3`.
pub(super) fn fill(bench: &Bench, template: &str, file: &str, cells: &[(&str, Cell)]) {
    let mut written: BTreeMap<&str, Vec<(&str, Cell)>> = BTreeMap::new();
    for (at, cell) in cells {
        let (tab, at) = at.split_once('!').unwrap();
        written.entry(tab).or_default().push((at, *cell));
    }
    let mut workbook = Workbook::new();
    for (name, range) in tabs(bench, template) {
        let sheet = workbook.add_worksheet().set_name(&name).unwrap();
        copy(sheet, &range);
        for (at, cell) in written.remove(name.as_str()).unwrap_or_default() {
            write(sheet, at, cell);
        }
    }
    for (name, cells) in written {
        let sheet = workbook.add_worksheet().set_name(name).unwrap();
        for (at, cell) in cells {
            write(sheet, at, cell);
        }
    }
    workbook.save(bench.path(file)).unwrap();
}

/// Copies a template and fills in rows, each a tab and the texts below its headings. Texts that look like a day are written as a
/// real one, and numbers as numbers, as a spreadsheet program does; an expiry stays text, as the template formats it.
pub(super) fn fill_rows(bench: &Bench, template: &str, file: &str, rows: &[(String, Vec<(String, String)>)]) {
    let mut workbook = Workbook::new();
    for (name, range) in tabs(bench, template) {
        let sheet = workbook.add_worksheet().set_name(&name).unwrap();
        copy(sheet, &range);
        let of_tab = rows.iter().filter(|(tab, _)| *tab == name);
        for (row, (_, values)) in (2_u32..).zip(of_tab) {
            for (heading, text) in values {
                let headings = range.rows().next().unwrap();
                let is_it = |cell: &Data| cell.as_string().unwrap().trim_end_matches(" *") == heading;
                let column = u16::try_from(headings.iter().position(is_it).unwrap()).unwrap();
                if let Ok(day) = ExcelDateTime::parse_from_str(text)
                    && text.len() == 10
                {
                    sheet
                        .write_with_format(row, column, &day, &Format::new().set_num_format("dd/mm/yy"))
                        .unwrap();
                } else if let Ok(number) = text.parse::<f64>() {
                    sheet.write(row, column, number).unwrap();
                } else {
                    sheet.write(row, column, text).unwrap();
                }
            }
        }
    }
    workbook.save(bench.path(file)).unwrap();
}

fn copy(sheet: &mut Worksheet, range: &Range<Data>) {
    for (row, column, cell) in range.used_cells() {
        let (row, column) = (u32::try_from(row).unwrap(), u16::try_from(column).unwrap());
        sheet.write(row, column, cell.as_string().unwrap()).unwrap();
    }
}

fn write(sheet: &mut Worksheet, at: &str, cell: Cell) {
    let (row, column) = place(at);
    let date = |text: &str| ExcelDateTime::parse_from_str(text).unwrap();
    let shown = |format: &str| Format::new().set_num_format(format);
    match cell {
        Cell::Text(text) => sheet.write(row, column, text),
        Cell::Number(number) => sheet.write(row, column, number),
        Cell::Date(text) => sheet.write_with_format(row, column, date(text), &shown("dd/mm/yyyy hh:mm")),
        Cell::Time(text) => sheet.write_with_format(row, column, date(text), &shown("hh:mm")),
        Cell::Formula(text) => sheet.write(row, column, Formula::new(text).set_result("7")),
        Cell::YesNo(yes) => sheet.write(row, column, yes),
        Cell::MergedTo(last) => {
            let (last_row, last_column) = place(last);
            sheet.merge_range(row, column, last_row, last_column, "A1", &Format::new())
        }
    }
    .unwrap();
}
