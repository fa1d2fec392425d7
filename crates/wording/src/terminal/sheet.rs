//! The template of a sheet, and what is wrong with a filled-in one.

use combclear_domain::basics::words::HoldingName;

use crate::Words;
use crate::words::say;

use super::sentences;

sentences! {
    /// A template was written.
    SheetWritten: written(file: &str, tabs: usize);
    /// A template for one kind of entry was written.
    SheetWrittenCsv: written_csv(file: &str, tab: &str);
    /// The heading of a column that must be filled in.
    SheetNeeded: needed(label: &str);
    /// A file that is no spreadsheet.
    SheetCannotRead: cannot_read(file: &str, why: &str);
    /// A file of another format.
    SheetOtherFormat: other_format(file: &str);
    /// A file that is too large.
    SheetTooLarge: too_large(file: &str, most: u64);
    /// A file with too many rows.
    SheetTooManyRows: too_many_rows(file: &str, most: usize);
    /// A CSV file in another encoding.
    SheetNotUtf8: not_utf8(file: &str, line: u64);
    /// A CSV file that does not say what its rows are.
    SheetNoKind: no_kind(file: &str, column: &str);
    /// What such a file may say.
    SheetNoKindHelp: no_kind_help(tabs: &str);
    /// A CSV file with an unknown kind of entry.
    SheetOtherKind: other_kind(file: &str, column: &str, kind: &str);
    /// A CSV file with two kinds of entry.
    SheetTwoKinds: two_kinds(file: &str, one: &str, other: &str);
    /// A sheet of another holding.
    SheetOtherHolding: other_holding(file: &str, holding: &HoldingName, wanted: &HoldingName);
    /// A sheet that names no holding.
    SheetNoHolding: no_holding(file: &str);
    /// A kind of entry that there is not.
    SheetUnknownKind: unknown_kind(kind: &str, kinds: &str);
    /// How many more faults there are.
    SheetAndMore: and_more(more: usize);
    /// A tab that there is not.
    SheetNoSuchTab: no_such_tab(tab: &str);
    /// The tabs that there are.
    SheetNoSuchTabHelp: no_such_tab_help(tabs: &str);
    /// A column that there is not.
    SheetNoSuchColumn: no_such_column(heading: &str);
    /// The columns that there are.
    SheetNoSuchColumnHelp: no_such_column_help(columns: &str);
    /// A name that is written much like the one found.
    SheetDidYouMean: did_you_mean(near: &str);
    /// A tab that is named much like the one found.
    SheetDidYouMeanTab: did_you_mean_tab(near: &str);
    /// A day that there is not.
    SheetNoSuchDay: no_such_day(field: &str, text: &str);
    /// A row without a day.
    SheetNoDay: no_day(field: &str);
    /// A column that is there twice.
    SheetColumnTwice: column_twice(heading: &str);
    /// Merged cells.
    SheetMerged: merged(range: &str);
    /// A formula.
    SheetFormula: formula(field: &str);
    /// An error in place of a value.
    SheetError: error(field: &str, text: &str);
    /// A text that is not a day.
    SheetNotADay: not_a_day(field: &str, text: &str);
    /// A number in place of a day.
    SheetDayOfNumber: day_of_number(field: &str, text: &str);
    /// A day with a time of day.
    SheetDayWithTime: day_with_time(field: &str, text: &str);
    /// A day that may stand for a month.
    SheetPrintedFirst: printed_first(field: &str, text: &str);
    /// A date where none belongs.
    SheetDateInText: date_in_text(field: &str, text: &str);
    /// A text that is not a time of day.
    SheetNotATime: not_a_time(field: &str, text: &str);
    /// The same row twice.
    SheetSameRow: same_row(row: u32);
    /// The number of entries of a kind.
    SheetByTab: by_tab(tab: &str, entries: usize);
    /// The numbers of entries of all kinds.
    SheetAllTabs: all_tabs(tabs: &str);
    /// How many rows were recorded before.
    SheetRowKnown: rows_known(rows: usize);
    /// A colony of a range that is left out.
    SheetLeftOut: left_out(tab: &str, row: u32, left_out: &str);
}

/// A fault with its place: a tab, and a row and a column of it as far as they are known.
#[must_use]
pub fn at(words: &Words, tab: &str, row: Option<u32>, column: Option<&str>, message: &str) -> String {
    match (row, column) {
        _ if tab.is_empty() => message.to_owned(),
        (Some(row), Some(column)) => {
            say!(words, SheetAtCell, tab = tab, row = row, column = column, message = message)
        }
        (Some(row), None) => say!(words, SheetAtRow, tab = tab, row = row, message = message),
        (None, Some(column)) => say!(words, SheetAtColumn, tab = tab, column = column, message = message),
        (None, None) => say!(words, SheetAtTab, tab = tab, message = message),
    }
}

/// A fault with how to fix it.
#[must_use]
pub fn fault(words: &Words, message: &str, help: &str) -> String {
    say!(words, SheetFault, message = message, help = help)
}
