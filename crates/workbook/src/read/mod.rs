//! What is written in a sheet, row by row, and every cell that cannot be read.

mod cell;
mod delimited;
mod xlsx;

use std::collections::{BTreeMap, BTreeSet};

use combclear_domain::basics::misread::Misread;
use combclear_domain::basics::words::Person;
use combclear_domain::journal::Kind;
use combclear_domain::recording::{Wrong, WrongWith};
use combclear_domain::{Day, TimeOfDay};
use combclear_wording::{Label, Words};

use crate::columns::{AT, COPIED_FROM, Column, ON, RECORDED_BY, WRITTEN_ON, columns};
use crate::faults::{CellFault, Fault, Unfit, What};
use cell::Raw;

pub use delimited::csv;
pub use xlsx::xlsx;

/// Most rows of a sheet. A season of a thousand colonies has fewer.
pub const ROWS_MOST: usize = 10_000;
/// Most MB of a file.
pub const FILE_MOST_MB: u64 = 20;

/// A sheet as it was filled in.
#[derive(Debug, Default)]
pub struct Sheet {
    /// The holding that it says it is for.
    pub holding: Option<String>,
    /// The rows with something in them, in the order of the file.
    pub rows: Vec<Row>,
    /// What cannot be read.
    pub faults: Vec<Fault>,
}

/// A row that is filled in.
#[derive(Debug, Clone)]
pub struct Row {
    /// What kind of entry it records.
    pub kind: Kind,
    /// The name of its tab.
    pub tab: String,
    /// The place of the tab in the file, from 0.
    pub tab_index: usize,
    /// Its number as the spreadsheet shows it, from 1.
    pub number: u32,
    /// The day on which it happened. Absent if that cannot be read, which is then a fault.
    pub on: Option<Day>,
    /// The time of day, if noted.
    pub at: Option<TimeOfDay>,
    /// Who records it, if stated.
    pub recorded_by: Option<Person>,
    /// What it is copied from, if a paper register is taken over.
    pub copied_from: Option<String>,
    /// The day on which it was written there.
    pub written_on: Option<Day>,
    /// What is written in each other column, by its key.
    pub texts: BTreeMap<String, String>,
    /// The keys of the columns whose cells cannot be read.
    pub unread: BTreeSet<String>,
    /// The index of each column, by its key.
    pub columns: BTreeMap<String, u32>,
}

impl Row {
    /// A fault in this row, at the column of a key if there is one.
    pub(crate) fn fault(&self, key: &str, what: What) -> Fault {
        Fault {
            kind: Some(self.kind),
            tab: self.tab.clone(),
            tab_index: self.tab_index,
            row: Some(self.number),
            column: self.columns.get(key).copied(),
            what,
        }
    }
}

/// A row as it is in the file: its number, and what is in its cells by the index of their columns.
type RawRow = (u32, Vec<(u32, Raw)>);

impl Sheet {
    /// Refuses more rows than are looked at.
    fn checked(self) -> Result<Sheet, Unfit> {
        if self.rows.len() > ROWS_MOST { Err(too_many_rows()) } else { Ok(self) }
    }

    /// Reads a tab. Its first row has the headings.
    fn add_tab(&mut self, words: &Words, kind: Kind, tab: &str, tab_index: usize, rows: Vec<RawRow>) {
        let mut rows = rows.into_iter();
        let at = |row, column, what| Fault {
            kind: Some(kind),
            tab: tab.to_owned(),
            tab_index,
            row,
            column: Some(column),
            what,
        };
        let mut headed: Vec<(u32, Column)> = Vec::new();
        let mut known = columns(words, kind);
        let day_label = known.iter().find(|column| column.key == ON).map(|column| column.label);
        let Some((first, headings)) = rows.next() else { return };
        for (index, raw) in headings {
            let heading = raw.in_words();
            match known.iter().position(|column| column.is_headed(&heading)) {
                Some(found) => headed.push((index, known.remove(found))),
                None if headed.iter().any(|(_, column)| column.is_headed(&heading)) => {
                    self.faults.push(at(Some(first), index, What::ColumnTwice { heading }));
                }
                None => self.faults.push(at(Some(first), index, What::NoSuchColumn { heading })),
            }
        }
        let columns: BTreeMap<String, u32> =
            headed.iter().map(|(index, column)| (column.key.clone(), *index)).collect();
        for (number, cells) in rows {
            if is_of_hints(words, &headed, &cells) {
                continue;
            }
            let mut row = Row {
                kind,
                tab: tab.to_owned(),
                tab_index,
                number,
                on: None,
                at: None,
                recorded_by: None,
                copied_from: None,
                written_on: None,
                texts: BTreeMap::new(),
                unread: BTreeSet::new(),
                columns: columns.clone(),
            };
            let mut day_is_read = false;
            for (index, raw) in cells {
                let Some((_, column)) = headed.iter().find(|(headed, _)| *headed == index) else {
                    // A heading that is not known is a fault by itself.
                    if !self.faults.iter().any(|fault| fault.is_of_column(tab_index, index)) {
                        self.faults.push(at(Some(number), index, What::NoHeading));
                    }
                    continue;
                };
                day_is_read |= column.key == ON;
                let read = raw.text(words, column).and_then(|text| row.fill_in(column, text));
                if let Err(what) = read {
                    row.unread.insert(column.key.clone());
                    self.faults.push(at(Some(number), index, what));
                }
            }
            if !day_is_read {
                row.unread.insert(ON.to_owned());
                let field = day_label.unwrap_or_default();
                self.faults.push(row.fault(ON, What::Cell { field, why: CellFault::NoDay }));
            }
            self.rows.push(row);
        }
    }
}

impl Row {
    fn fill_in(&mut self, column: &Column, text: String) -> Result<(), What> {
        let misread =
            |why: Misread| What::Wrong(Wrong { key: column.key.clone(), with: WrongWith::Misread(why) });
        let day = || -> Result<Day, What> {
            let why = |_| What::Cell { field: column.label, why: CellFault::NoSuchDay(text.clone()) };
            text.parse().map_err(why)
        };
        match column.key.as_str() {
            ON => self.on = Some(day()?),
            WRITTEN_ON => self.written_on = Some(day()?),
            COPIED_FROM => self.copied_from = Some(text),
            AT => self.at = Some(text.parse().map_err(|fault| misread(Misread::Date(fault)))?),
            RECORDED_BY => {
                self.recorded_by = Some(text.parse::<Person>().map_err(|fault| misread(fault.into()))?);
            }
            _ => {
                self.texts.insert(column.key.clone(), text);
            }
        }
        Ok(())
    }
}

impl Fault {
    fn is_of_column(&self, tab_index: usize, column: u32) -> bool {
        self.tab_index == tab_index
            && self.column == Some(column)
            && matches!(self.what, What::NoSuchColumn { .. } | What::ColumnTwice { .. } | What::NoHeading)
    }
}

/// Whether this is the row that says what to fill in: it has the hint of the day in the column of the day.
fn is_of_hints(words: &Words, headed: &[(u32, Column)], cells: &[(u32, Raw)]) -> bool {
    let day = headed.iter().find(|(_, column)| column.key == ON).map(|(index, _)| *index);
    let said = cells.iter().find(|(index, _)| Some(*index) == day);
    said.is_some_and(|(_, raw)| raw.in_words() == words.label(Label::SheetDayHint))
}

/// Rows of a file that are not entries, at most: headings and hints of each tab, and those of the first.
const OTHER_ROWS_MOST: usize = 100;

/// Whether so many rows cannot be within the limit.
fn is_too_long(rows: usize) -> bool {
    rows > ROWS_MOST + OTHER_ROWS_MOST
}

fn too_many_rows() -> Unfit {
    Unfit::TooManyRows { most: ROWS_MOST }
}
