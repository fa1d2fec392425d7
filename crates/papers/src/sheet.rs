//! The neutral model: titled sheets with columns and rows of cells, which every writer puts out in the same words.

use combclear_domain::Day;
use combclear_domain::basics::quantity::Quantity;
use combclear_domain::basics::words::Unit;
use combclear_wording::amounts::{amount_of, days};
use combclear_wording::{Label, Words, paper};

/// A register or a list of gaps, ready to be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Paper {
    /// What it is.
    pub title: &'static str,
    /// The holding.
    pub holding: String,
    /// Who keeps it, for the head of every page.
    pub keeper: String,
    /// From which day to which, in words.
    pub period: String,
    /// What stands above the sheets: keepers with their addresses, days, the journal it was read from.
    pub facts: Vec<Fact>,
    /// The sheets, in order.
    pub sheets: Vec<Sheet>,
    /// What this is not.
    pub notice: String,
}

/// A statement about the whole paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fact {
    /// What it is about.
    pub head: &'static str,
    /// What it says.
    pub says: String,
}

/// One table.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sheet {
    /// A word for links within a page.
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
    /// What stands instead of a table without rows.
    #[must_use]
    pub fn empty() -> &'static str {
        Words::english().label(Label::NothingRecorded)
    }
}

/// A column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Column {
    /// Its head.
    pub head: &'static str,
    /// How wide it is on paper, against the others of its sheet.
    pub width: u8,
}

/// A cell: one or more lines.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cell(pub Vec<SheetLine>);

/// A line of a cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetLine {
    /// What it is, where the head of the column does not say so.
    pub label: Option<&'static str>,
    /// What it says.
    pub piece: Piece,
}

/// What a line says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Piece {
    /// Words.
    Text(String),
    /// A civil date, written like 2026-04-11 everywhere.
    Date(Day),
    /// An amount of a medicine.
    Amount(Quantity, Option<Unit>),
    /// A number of days, 0 included.
    Days(u32),
    /// A value that was struck and stays readable.
    Struck(String),
    /// Nobody wrote it down. Never blank, never zero.
    NotRecorded,
}

impl Piece {
    /// The words, with signs that cannot be seen made visible. Struck text comes without its mark.
    #[must_use]
    pub fn words(&self) -> String {
        let words = Words::english();
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
    pub fn plain(&self) -> String {
        let struck = matches!(self.piece, Piece::Struck(_)).then(|| Words::english().label(Label::Struck));
        let before = |label: Option<&str>| label.map(|label| format!("{label}: ")).unwrap_or_default();
        format!("{}{}{}", before(self.label), before(struck), self.piece.words())
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

    /// The same with one more line.
    #[must_use]
    pub fn and(mut self, label: &'static str, piece: Piece) -> Cell {
        self.0.push(SheetLine { label: Some(label), piece });
        self
    }

    /// The same with one more line of words.
    #[must_use]
    pub fn and_text(mut self, text: impl Into<String>) -> Cell {
        self.0.push(SheetLine { label: None, piece: Piece::Text(text.into()) });
        self
    }

    /// The cell as plain text, line by line.
    #[must_use]
    pub fn plain(&self) -> String {
        self.0.iter().map(SheetLine::plain).collect::<Vec<_>>().join("\n")
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

/// Whether a text says anything: spaces alone are nothing written down, and would be printed as an empty cell.
pub(crate) fn is_written(text: &str) -> bool {
    !text.trim().is_empty()
}

/// A text that says something.
pub(crate) fn written(text: Option<&String>) -> Option<&str> {
    text.map(String::as_str).filter(|text| is_written(text))
}

impl Piece {
    /// A date that may be missing.
    pub(crate) fn date(day: Option<Day>) -> Piece {
        day.map_or(Piece::NotRecorded, Piece::Date)
    }

    /// Days that may be missing.
    pub(crate) fn days(days: Option<impl Into<u32>>) -> Piece {
        days.map_or(Piece::NotRecorded, |days| Piece::Days(days.into()))
    }

    /// Words.
    #[expect(clippy::needless_pass_by_value, reason = "values and references alike are written as text")]
    pub(crate) fn text(text: impl ToString) -> Piece {
        Piece::Text(text.to_string())
    }
}

/// A text with every sign that cannot be seen written as its code point: control characters, and those that turn the
/// direction of what follows (Unicode Standard Annex 9), with which a name could make a line read as another.
#[must_use]
pub fn visible(text: &str) -> String {
    let mut seen = String::with_capacity(text.len());
    for sign in text.chars() {
        if sign.is_control() || is_hidden(sign) {
            seen.push_str(&code_point(sign));
        } else {
            seen.push(sign);
        }
    }
    seen
}

/// `U+202E` and the like.
#[must_use]
pub fn code_point(sign: char) -> String {
    format!("U+{:04X}", u32::from(sign))
}

/// Signs without a shape of their own: zero-width ones, direction marks, tags, and the line and paragraph separators.
fn is_hidden(sign: char) -> bool {
    matches!(
        u32::from(sign),
        0xAD | 0x61C
            | 0x180E
            | 0x200B..=0x200F
            | 0x2028..=0x202E
            | 0x2060..=0x206F
            | 0xFEFF
            | 0xFFF9..=0xFFFB
            | 0xE0000..=0xE007F
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_cannot_be_seen_is_written_as_its_code_point() {
        let cases = [
            ("a plain name stays", "Nordhang 3", "Nordhang 3"),
            ("letters with marks stay", "Öhrli, Łąka", "Öhrli, Łąka"),
            ("a turned direction is named", "A\u{202e}B", "AU+202EB"),
            ("a line break is named", "A\nB", "AU+000AB"),
            ("a byte order mark is named", "\u{feff}A", "U+FEFFA"),
        ];
        for (name, text, expected) in cases {
            assert_eq!(visible(text), expected, "{name}");
        }
    }

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
        assert_eq!(Piece::days(Some(0_u16)).words(), "0 days");
        assert_eq!(Piece::days(None::<u16>).words(), "not recorded");
        assert_eq!(Piece::Amount(Quantity::ZERO, Some(Unit::Strip)).words(), "0 strips");
        assert_eq!(Piece::Amount(Quantity::whole(1), Some(Unit::Strip)).words(), "1 strip");
        assert_eq!(Piece::Amount(Quantity::whole(2), Some(Unit::Gram)).words(), "2 g");
        assert_eq!(Piece::Amount(Quantity::whole(2), None).words(), "2 (unit not recorded)");
    }
}
