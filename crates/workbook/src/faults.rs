//! What is wrong with a filled-in sheet, with its place.

use combclear_domain::basics::spelling::nearest;
use combclear_domain::facts::holding::Refusal;
use combclear_domain::journal::Kind;
use combclear_domain::recording::{Wrong, WrongWith};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::sheet as say;
use combclear_wording::{Label, Words, forms, recording};

use crate::columns::{TABS, columns, letters, tab_names};

/// A file that is not read any further.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unfit {
    /// It is no spreadsheet.
    NotASpreadsheet {
        /// What the reader says.
        why: String,
    },
    /// It is too large to be looked at.
    TooLarge {
        /// The limit in MB.
        most: u64,
    },
    /// It has too many rows.
    TooManyRows {
        /// The limit.
        most: usize,
    },
    /// It is not UTF-8.
    NotUtf8 {
        /// The first line that is not.
        line: u64,
    },
    /// It does not say which kind of entry it has.
    NoKind,
    /// It says a kind of entry that there is not.
    OtherKind {
        /// What it says.
        kind: String,
    },
    /// It has two kinds of entry.
    TwoKinds {
        /// The tab of one.
        one: String,
        /// The tab of the other.
        other: String,
    },
}

impl Unfit {
    /// Why the file is not read, and how to fix it.
    #[must_use]
    pub fn said(&self, words: &Words, file: &str) -> Refused {
        let label = |label: Label| words.label(label).to_owned();
        let kind = words.label(Label::SheetKind);
        let (message, help) = match self {
            Unfit::NotASpreadsheet { why } => {
                (say::cannot_read(words, file, why), label(Label::SheetCannotReadHelp))
            }
            Unfit::TooLarge { most } => (say::too_large(words, file, *most), label(Label::SheetTooLargeHelp)),
            Unfit::TooManyRows { most } => {
                (say::too_many_rows(words, file, *most), label(Label::SheetTooManyRowsHelp))
            }
            Unfit::NotUtf8 { line } => (say::not_utf8(words, file, *line), label(Label::SheetNotUtf8Help)),
            Unfit::NoKind => (say::no_kind(words, file, kind), say::no_kind_help(words, &tab_names(words))),
            Unfit::OtherKind { kind: found } => {
                (say::other_kind(words, file, kind, found), say::no_kind_help(words, &tab_names(words)))
            }
            Unfit::TwoKinds { one, other } => {
                (say::two_kinds(words, file, one, other), label(Label::SheetTwoKindsHelp))
            }
        };
        Refused { message, help }
    }
}

/// Something that is wrong with a sheet, and where.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The kind of entry of the tab, if the tab has one.
    pub kind: Option<Kind>,
    /// The name of the tab.
    pub tab: String,
    /// The place of the tab in the file, from 0.
    pub tab_index: usize,
    /// The row as the spreadsheet numbers it, from 1.
    pub row: Option<u32>,
    /// The index of the column, from 0.
    pub column: Option<u32>,
    /// The fault.
    pub what: What,
}

/// What is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum What {
    /// No kind of entry has a tab of this name.
    NoSuchTab,
    /// There is no column with this heading.
    NoSuchColumn {
        /// The heading.
        heading: String,
    },
    /// Two columns have this heading.
    ColumnTwice {
        /// The heading.
        heading: String,
    },
    /// Something is written below no heading.
    NoHeading,
    /// Cells are merged.
    Merged {
        /// Such as `A1:B2`.
        range: String,
    },
    /// A cell cannot be read.
    Cell {
        /// The label of its column.
        field: &'static str,
        /// Why.
        why: CellFault,
    },
    /// Another row of the tab says the same.
    SameRow {
        /// The other row.
        row: u32,
    },
    /// A form is not filled in as it should be.
    Wrong(Wrong),
    /// The entry cannot be true.
    Refused(Refusal),
}

/// Why a cell cannot be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CellFault {
    /// It is empty, and a day belongs there.
    NoDay,
    /// There is no such day.
    NoSuchDay(String),
    /// It is a formula.
    Formula,
    /// It is an error such as `#REF!`.
    Error(String),
    /// It is not a day written as year-month-day.
    NotADay(String),
    /// It is neither a day nor a month as printed on a pack.
    NotPrinted(String),
    /// It is a number where a day belongs.
    DayOfNumber(String),
    /// It is a day with a time of day.
    DayWithTime(String),
    /// It is the first of a month, and may have been typed as a month.
    PrintedFirst(String),
    /// It is a date where none belongs.
    DateInText(String),
    /// It is not a time of day.
    NotATime(String),
}

impl Fault {
    /// Whether it depends on what is on record, or on other rows. Such faults are told once every row can be read: many of them
    /// follow from the others.
    #[must_use]
    pub fn depends_on_the_record(&self) -> bool {
        match &self.what {
            What::Refused(_) => true,
            What::Wrong(wrong) => match wrong.with {
                WrongWith::RangeEndNotOnRecord { .. }
                | WrongWith::NobodyInRange { .. }
                | WrongWith::NobodyThere(_)
                | WrongWith::NobodyYet
                | WrongWith::NoLotInStock
                | WrongWith::SeveralLots { .. }
                | WrongWith::NoSuchEntry { .. }
                | WrongWith::NothingInside { .. }
                | WrongWith::SeveralInside { .. } => true,
                WrongWith::Missing
                | WrongWith::NoSuchField
                | WrongWith::Misread(_)
                | WrongWith::OneOnly { .. }
                | WrongWith::RangeIsBackwards { .. }
                | WrongWith::RangeTooLong { .. } => false,
            },
            What::NoSuchTab
            | What::NoSuchColumn { .. }
            | What::ColumnTwice { .. }
            | What::NoHeading
            | What::Merged { .. }
            | What::Cell { .. }
            | What::SameRow { .. } => false,
        }
    }

    /// The fault in words, with its place and how to fix it.
    #[must_use]
    pub fn said(&self, words: &Words) -> String {
        let Refused { message, help } = self.without_place(words);
        let column = self.column.map(letters);
        let message = say::at(words, &self.tab, self.row, column.as_deref(), &message);
        say::fault(words, &message, &help)
    }

    fn without_place(&self, words: &Words) -> Refused {
        let label = |label: Label| words.label(label).to_owned();
        let (message, help) = match &self.what {
            What::NoSuchTab => {
                let near = nearest(&self.tab, TABS.map(|kind| forms::tab(words, kind)));
                let help = near.map_or_else(
                    || say::no_such_tab_help(words, &tab_names(words)),
                    |near| say::did_you_mean_tab(words, near),
                );
                (say::no_such_tab(words, &self.tab), help)
            }
            What::NoSuchColumn { heading } => {
                let known = self.kind.map(|kind| columns(words, kind)).unwrap_or_default();
                let known: Vec<&str> = known.iter().map(|column| column.label).collect();
                let help = nearest(heading, known.iter().copied()).map_or_else(
                    || say::no_such_column_help(words, &known.join(", ")),
                    |near| say::did_you_mean(words, near),
                );
                (say::no_such_column(words, heading), help)
            }
            What::ColumnTwice { heading } => {
                (say::column_twice(words, heading), label(Label::SheetColumnTwiceHelp))
            }
            What::NoHeading => (label(Label::SheetNoHeading), label(Label::SheetNoHeadingHelp)),
            What::Merged { range } => (say::merged(words, range), label(Label::SheetMergedHelp)),
            What::Cell { field, why } => return why.said(words, field),
            What::SameRow { row } => (say::same_row(words, *row), label(Label::SheetSameRowHelp)),
            What::Wrong(wrong) => match self.kind {
                Some(kind) => return recording::wrong(words, kind, wrong),
                None => (String::new(), String::new()),
            },
            What::Refused(refusal) => return Refused::of(words, refusal),
        };
        Refused { message, help }
    }
}

impl CellFault {
    fn said(&self, words: &Words, field: &str) -> Refused {
        let (message, help) = match self {
            CellFault::NoDay => (say::no_day(words, field), Label::SheetNoDayHelp),
            CellFault::NoSuchDay(text) => (say::no_such_day(words, field, text), Label::SheetNoDayHelp),
            CellFault::Formula => (say::formula(words, field), Label::SheetFormulaHelp),
            CellFault::Error(text) => (say::error(words, field, text), Label::SheetFormulaHelp),
            CellFault::NotADay(text) => (say::not_a_day(words, field, text), Label::SheetNotADayHelp),
            CellFault::NotPrinted(text) => (say::not_a_day(words, field, text), Label::SheetNotPrintedHelp),
            CellFault::DayOfNumber(text) => (say::day_of_number(words, field, text), Label::SheetNotADayHelp),
            CellFault::DayWithTime(text) => {
                (say::day_with_time(words, field, text), Label::SheetDayWithTimeHelp)
            }
            CellFault::PrintedFirst(text) => {
                (say::printed_first(words, field, text), Label::SheetPrintedFirstHelp)
            }
            CellFault::DateInText(text) => {
                (say::date_in_text(words, field, text), Label::SheetDateInTextHelp)
            }
            CellFault::NotATime(text) => (say::not_a_time(words, field, text), Label::SheetNotATimeHelp),
        };
        Refused { message, help: words.label(help).to_owned() }
    }
}
