//! The same sheets as PDF: A4 across, tagged, PDF/A-2a (ISO 19005-2), the same bytes for the same input.

use combclear_domain::{Day, Instant};
use serde::Serialize;
use typst::foundations::Datetime;

use crate::glyphs::{FAMILIES, Printable};
use crate::sheet::{Cell, Line, Paper, Piece, Sheet, code_point, visible};
use crate::typesetting;

/// A PDF, and what could not be printed in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// The signs that no built-in font has, by code point (`U+1F41D`). They stand in the pages as that, and a sentence
    /// at the end says so.
    pub missing: Vec<String>,
}

/// A paper that could not be set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the pages could not be set: {0}")]
pub struct NotSet(String);

/// Sets a paper.
///
/// `made` is the instant that the file names as its making; it comes as an argument so that the same input gives the
/// same bytes.
///
/// # Errors
/// What the typesetter said; no text of a register is known that brings it about.
pub fn pdf(paper: &Paper, made: Instant) -> Result<Pdf, NotSet> {
    let mut printable = Printable::default();
    let mut data = Data::of(paper, &mut printable);
    let missing: Vec<String> = printable.missing.iter().map(|sign| code_point(*sign)).collect();
    if !missing.is_empty() {
        let signs = missing.join(", ");
        data.missing =
            format!("Signs that the printing fonts lack are written by their code points: {signs}.");
    }
    let data = serde_json::to_vec(&data).map_err(|error| NotSet(error.to_string()))?;
    let ident = format!("{} {} {}", paper.title, paper.holding, paper.period);
    let bytes = typesetting::set(include_str!("paper.typ"), data, &ident, datetime(made)).map_err(NotSet)?;
    Ok(Pdf { bytes, missing })
}

/// What the template reads.
#[derive(Serialize)]
struct Data {
    title: String,
    author: String,
    heading: String,
    running: String,
    period: String,
    fonts: [&'static str; 3],
    facts: Vec<FactData>,
    notice: String,
    empty: &'static str,
    sheets: Vec<SheetData>,
    missing: String,
}

#[derive(Serialize)]
struct FactData {
    head: &'static str,
    says: String,
}

#[derive(Serialize)]
struct SheetData {
    title: &'static str,
    notes: Vec<String>,
    heads: Vec<&'static str>,
    widths: Vec<u8>,
    rows: Vec<RowData>,
}

#[derive(Serialize)]
struct RowData {
    /// Whether the row stays on one page. A row too long for that runs on, so that nothing falls off the page.
    whole: bool,
    cells: Vec<Vec<LineData>>,
}

#[derive(Serialize)]
struct LineData {
    label: Option<&'static str>,
    kind: &'static str,
    words: String,
}

/// A cell of more signs, or more lines, than this may run over the end of a page.
const WHOLE_ROW_SIGNS: usize = 400;
const WHOLE_ROW_LINES: usize = 20;
/// A word longer than this may be broken, wherever its column ends.
const LONG_WORD: usize = 16;

impl Data {
    fn of(paper: &Paper, printable: &mut Printable) -> Data {
        let mut print = |text: &str| breakable(&printable.print(&visible(text)));
        Data {
            title: visible(&format!("{}: {}, {}", paper.title, paper.holding, paper.period)),
            author: visible(&paper.keeper),
            heading: print(paper.title),
            running: print(&format!("{}, {}", paper.holding, paper.keeper)),
            period: print(&format!("{}, {}", paper.title, paper.period)),
            fonts: FAMILIES,
            facts: std::iter::once(FactData { head: "Holding", says: print(&paper.holding) })
                .chain(paper.facts.iter().map(|fact| FactData { head: fact.head, says: print(&fact.says) }))
                .collect(),
            notice: print(paper.notice),
            empty: Sheet::EMPTY,
            sheets: paper.sheets.iter().map(|sheet| SheetData::of(sheet, &mut print)).collect(),
            missing: String::new(),
        }
    }
}

impl SheetData {
    fn of(sheet: &Sheet, print: &mut impl FnMut(&str) -> String) -> SheetData {
        let row = |row: &Vec<Cell>, print: &mut dyn FnMut(&str) -> String| RowData {
            whole: row.iter().all(fits),
            cells: row
                .iter()
                .map(|cell| cell.0.iter().map(|line| LineData::of(line, print)).collect())
                .collect(),
        };
        SheetData {
            title: sheet.title,
            notes: sheet.notes.iter().map(|note| print(note)).collect(),
            heads: sheet.columns.iter().map(|column| column.head).collect(),
            widths: sheet.columns.iter().map(|column| column.width).collect(),
            rows: sheet.rows.iter().map(|cells| row(cells, print)).collect(),
        }
    }
}

impl LineData {
    fn of(line: &Line, print: &mut dyn FnMut(&str) -> String) -> LineData {
        let kind = match line.piece {
            Piece::Struck(_) => "struck",
            Piece::NotRecorded => "missing",
            _ => "text",
        };
        LineData { label: line.label, kind, words: print(&line.piece.words()) }
    }
}

fn fits(cell: &Cell) -> bool {
    let signs: usize = cell.0.iter().map(|line| line.plain().chars().count()).sum();
    signs <= WHOLE_ROW_SIGNS && cell.0.len() <= WHOLE_ROW_LINES
}

/// Marks in long words where a line may end, with the sign for that which takes no room (U+200B). Spaces and hyphens
/// let a line end without it.
fn breakable(text: &str) -> String {
    let mut marked = String::with_capacity(text.len());
    for word in text.split_inclusive([' ', '-']) {
        let long = word.chars().count() > LONG_WORD;
        for (place, sign) in word.chars().enumerate() {
            if long && place > 0 && place % 4 == 0 {
                marked.push('\u{200b}');
            }
            marked.push(sign);
        }
    }
    marked
}

/// An instant as the typesetter writes it.
fn datetime(made: Instant) -> Option<Datetime> {
    let text = made.to_string();
    let (date, time) = text.split_once('T')?;
    let day: Day = date.parse().ok()?;
    let mut parts = date.splitn(3, '-').skip(1).filter_map(|part| part.parse::<u8>().ok());
    let mut clock = time.get(..8)?.splitn(3, ':').filter_map(|part| part.parse::<u8>().ok());
    Datetime::from_ymd_hms(
        day.year(),
        parts.next()?,
        parts.next()?,
        clock.next()?,
        clock.next()?,
        clock.next()?,
    )
}
