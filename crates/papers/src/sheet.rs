//! The neutral model: titled sheets of rows and cells, which every format writes in the same words.

use combclear_domain::Day;
use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::Unit;
use combclear_wording::amounts::{amount_of, days};
use combclear_wording::visible::visible;
use combclear_wording::{Label, Words, paper};

/// A register or a list of gaps, ready to be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paper {
    /// The words in which it is written.
    pub words: &'static Words,
    /// Its title.
    pub title: &'static str,
    /// The holding.
    pub holding: String,
    /// The keeper, for the head of every page.
    pub keeper: String,
    /// The period, in words.
    pub period: String,
    /// The lines above the sheets: keepers with addresses, days, the journal it was read from.
    pub facts: Vec<Fact>,
    /// The sheets, in order.
    pub sheets: Vec<Sheet>,
    /// The limits of this paper.
    pub notice: String,
    /// The paper it is printed on.
    pub size: PaperSize,
}

/// The paper that an office of the holding's country files.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PaperSize {
    /// 210 by 297 mm (ISO 216).
    A4,
    /// 8.5 by 11 inches.
    Letter,
}

impl PaperSize {
    /// Its name in CSS Paged Media Module Level 3.
    #[must_use]
    pub const fn as_css(self) -> &'static str {
        match self {
            PaperSize::A4 => "A4",
            PaperSize::Letter => "letter",
        }
    }
}

/// A statement about the whole paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fact {
    /// Its label.
    pub head: &'static str,
    /// Its text.
    pub says: String,
}

/// One table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sheet {
    /// The anchor for links within a page.
    pub id: &'static str,
    /// Its title.
    pub title: &'static str,
    /// Sentences above the table.
    pub notes: Vec<String>,
    /// The columns.
    pub columns: Vec<Column>,
    /// The rows, each with one cell for every column.
    pub rows: Vec<Vec<Cell>>,
}

impl Sheet {
    /// The text shown instead of a table without rows.
    #[must_use]
    pub fn empty(words: &Words) -> &str {
        words.label(Label::NothingRecorded)
    }
}

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub head: &'static str,
    /// Its width on paper, relative to the other columns.
    pub width: u8,
}

/// A cell: one or more lines.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cell(pub Vec<SheetLine>);

/// A line of a cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetLine {
    /// Its label, if the head of the column is not enough.
    pub label: Option<&'static str>,
    /// Its content.
    pub piece: Piece,
}

/// The content of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Piece {
    /// Words.
    Text(String),
    /// A civil date, always written like 2026-04-11.
    Date(Day),
    /// An amount of a medicine.
    Amount(Quantity, Option<Unit>),
    /// A number of days, 0 included.
    Days(u32),
    /// A struck value, which stays readable.
    Struck(String),
    /// Not recorded. Never shown as blank or zero.
    NotRecorded,
}

impl Piece {
    /// The words, with invisible characters made visible. Struck text comes without its mark.
    #[must_use]
    pub fn words(&self, words: &Words) -> String {
        match self {
            Piece::Text(text) | Piece::Struck(text) => visible(text),
            Piece::Date(day) => day.to_string(),
            Piece::Amount(quantity, Some(unit)) => amount_of(words, *quantity, unit.as_str()),
            Piece::Amount(quantity, None) => paper::amount_without_unit(words, *quantity),
            Piece::Days(number) => days(words, *number),
            Piece::NotRecorded => words.label(Label::NotRecorded).to_owned(),
        }
    }
}

impl SheetLine {
    /// The line as plain text.
    #[must_use]
    pub fn plain(&self, words: &Words) -> String {
        let struck = matches!(self.piece, Piece::Struck(_)).then(|| words.label(Label::Struck));
        let before = |label: Option<&str>| label.map(|label| format!("{label}: ")).unwrap_or_default();
        format!("{}{}{}", before(self.label), before(struck), self.piece.words(words))
    }
}

impl Cell {
    /// A cell of one line.
    #[must_use]
    pub fn of(piece: Piece) -> Cell {
        Cell(vec![SheetLine { label: None, piece }])
    }

    /// A cell of words.
    #[must_use]
    pub fn text(text: impl Into<String>) -> Cell {
        Cell::of(Piece::Text(text.into()))
    }

    /// The same with another line.
    #[must_use]
    pub fn and(mut self, label: &'static str, piece: Piece) -> Cell {
        self.0.push(SheetLine { label: Some(label), piece });
        self
    }

    /// The same with another line of words.
    #[must_use]
    pub fn and_text(mut self, text: impl Into<String>) -> Cell {
        self.0.push(SheetLine { label: None, piece: Piece::Text(text.into()) });
        self
    }

    /// The cell as plain text, line by line.
    #[must_use]
    pub fn plain(&self, words: &Words) -> String {
        self.0.iter().map(|line| line.plain(words)).collect::<Vec<_>>().join("\n")
    }
}

impl<T: ToString> From<Option<T>> for Piece {
    fn from(value: Option<T>) -> Piece {
        match value.map(|value| value.to_string()) {
            Some(text) if is_written(&text) => Piece::Text(text),
            _ => Piece::NotRecorded,
        }
    }
}

/// Whether a text has content. Spaces alone count as not recorded: they would print as an empty cell.
pub(crate) fn is_written(text: &str) -> bool {
    !text.trim().is_empty()
}

/// A text with content.
pub(crate) fn written(text: Option<&String>) -> Option<&str> {
    text.map(String::as_str).filter(|text| is_written(text))
}

impl Piece {
    /// A date, or `NotRecorded`.
    pub(crate) fn date(day: Option<Day>) -> Piece {
        day.map_or(Piece::NotRecorded, Piece::Date)
    }

    /// Days, or `NotRecorded`.
    pub(crate) fn days(days: Option<impl Into<u32>>) -> Piece {
        days.map_or(Piece::NotRecorded, |days| Piece::Days(days.into()))
    }

    /// Words.
    #[expect(clippy::needless_pass_by_value, reason = "values and references alike are written as text")]
    pub(crate) fn text(text: impl ToString) -> Piece {
        Piece::Text(text.to_string())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spaces_alone_are_nothing_written_down() {
        for text in ["", " ", "\t\n", "\u{a0}"] {
            assert_eq!(Piece::from(Some(text)), Piece::NotRecorded, "{text:?}");
        }
        assert_eq!(
            Piece::from(Some(" X8 ")),
            Piece::Text(" X8 ".to_owned()),
            "what was written stays as it is"
        );
    }

    #[test]
    fn missing_is_not_zero_and_zero_is_printed() {
        assert_eq!(Piece::days(Some(0_u16)).words(Words::english()), "0 days");
        assert_eq!(Piece::days(None::<u16>).words(Words::english()), "not recorded");
        assert_eq!(Piece::Amount(Quantity::ZERO, Some(Unit::Strip)).words(Words::english()), "0 strips");
        assert_eq!(Piece::Amount(Quantity::whole(1), Some(Unit::Strip)).words(Words::english()), "1 strip");
        assert_eq!(Piece::Amount(Quantity::whole(2), Some(Unit::Gram)).words(Words::english()), "2 g");
        assert_eq!(Piece::Amount(Quantity::whole(2), None).words(Words::english()), "2 (unit not recorded)");
    }
}
