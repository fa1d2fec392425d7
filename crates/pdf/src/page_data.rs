//! The sheets of a paper as data for the template.

use combclear_domain::{Day, Instant};
use combclear_papers::{Cell, Column, NotSet, Paper, PaperSize, Pdf, Piece, Sheet, SheetLine};
use combclear_wording::visible::{code_point, visible};
use combclear_wording::{Label, Words};
use serde::Serialize;
use typst::foundations::Datetime;

use crate::glyphs::{FAMILIES, Printable, joins};
use crate::typesetting;

/// Makes a PDF of a paper: see [`Typesetter::set`](combclear_papers::Typesetter::set).
pub(crate) fn set(paper: &Paper, made: Instant) -> Result<Pdf, NotSet> {
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

/// The data for the template.
#[derive(Serialize)]
struct Data {
    title: String,
    author: String,
    heading: Vec<String>,
    running: Vec<String>,
    period: Vec<String>,
    /// As the typesetter calls it.
    paper: &'static str,
    fonts: [&'static str; 3],
    facts: Vec<FactData>,
    notice: Vec<String>,
    empty: &'static str,
    sheets: Vec<SheetData>,
    missing: String,
}

#[derive(Serialize)]
struct FactData {
    head: &'static str,
    says: Vec<String>,
}

#[derive(Serialize)]
struct SheetData {
    title: &'static str,
    notes: Vec<Vec<String>>,
    heads: Vec<&'static str>,
    widths: Vec<u8>,
    rows: Vec<RowData>,
}

#[derive(Serialize)]
struct RowData {
    /// Whether the row stays on one page. A longer row may break, so that nothing falls off the page.
    whole: bool,
    cells: Vec<Vec<LineData>>,
}

#[derive(Serialize)]
struct LineData {
    label: Option<&'static str>,
    kind: &'static str,
    words: Vec<String>,
}

/// A cell with more characters or lines than this may break across pages.
const WHOLE_ROW_SIGNS: usize = 400;
const WHOLE_ROW_LINES: usize = 20;
/// The margins of a page, left and right, in tenths of a millimetre.
const MARGINS: u32 = 200;
/// The room between the text of a cell and its borders, likewise.
const INSETS: u32 = 20;
/// How much wider than its characters a word may be, in percent.
const WIDER: u32 = 103;
/// The size of the font, in hundredths of a millimetre: 9 pt.
const FONT_SIZE: u32 = 318;

/// The room for text on a page on its side, in tenths of a millimetre.
const fn room_of_page(size: PaperSize) -> u32 {
    match size {
        PaperSize::A4 => 2970 - MARGINS,
        PaperSize::Letter => 2794 - MARGINS,
    }
}

/// Tenths of a millimetre in hundredths of the font size.
const fn in_font_sizes(tenths: u32) -> u32 {
    tenths * 1_000 / FONT_SIZE
}

impl Data {
    fn of(paper: &Paper, printable: &mut Printable) -> Data {
        let page = room_of_page(paper.size);
        let mut of_cell = |text: &str, room: u32| pieces(&printable.print(&visible(text)), room);
        let sheets =
            paper.sheets.iter().map(|sheet| SheetData::of(paper.words, sheet, page, &mut of_cell)).collect();
        let mut print = |text: &str| of_cell(text, in_font_sizes(page));
        Data {
            title: visible(&format!("{}: {}, {}", paper.title, paper.holding, paper.period)),
            author: visible(&paper.keeper),
            heading: print(paper.title),
            running: print(&format!("{}, {}", paper.holding, paper.keeper)),
            period: print(&format!("{}, {}", paper.title, paper.period)),
            paper: match paper.size {
                PaperSize::A4 => "a4",
                PaperSize::Letter => "us-letter",
            },
            fonts: FAMILIES,
            facts: std::iter::once(FactData {
                head: paper.words.label(Label::Holding),
                says: print(&paper.holding),
            })
            .chain(paper.facts.iter().map(|fact| FactData { head: fact.head, says: print(&fact.says) }))
            .collect(),
            notice: print(&paper.notice),
            empty: Sheet::empty(paper.words),
            sheets,
            missing: String::new(),
        }
    }
}

impl SheetData {
    fn of(
        words: &Words,
        sheet: &Sheet,
        page: u32,
        print: &mut impl FnMut(&str, u32) -> Vec<String>,
    ) -> SheetData {
        let all: u32 = sheet.columns.iter().map(|column| u32::from(column.width)).sum();
        let room_of = |column: &Column| {
            let own = page * u32::from(column.width) / all.max(1);
            in_font_sizes(own.saturating_sub(INSETS))
        };
        let rooms: Vec<u32> = sheet.columns.iter().map(room_of).collect();
        let row = |row: &Vec<Cell>, print: &mut dyn FnMut(&str, u32) -> Vec<String>| RowData {
            whole: row.iter().all(|cell| fits(words, cell)),
            cells: row
                .iter()
                .zip(&rooms)
                .map(|(cell, room)| {
                    cell.0.iter().map(|line| LineData::of(words, line, *room, print)).collect()
                })
                .collect(),
        };
        SheetData {
            title: sheet.title,
            notes: sheet.notes.iter().map(|note| print(note, in_font_sizes(page))).collect(),
            heads: sheet.columns.iter().map(|column| column.head).collect(),
            widths: sheet.columns.iter().map(|column| column.width).collect(),
            rows: sheet.rows.iter().map(|cells| row(cells, print)).collect(),
        }
    }
}

impl LineData {
    fn of(
        words: &Words,
        line: &SheetLine,
        room: u32,
        print: &mut dyn FnMut(&str, u32) -> Vec<String>,
    ) -> LineData {
        let kind = match line.piece {
            Piece::Struck(_) => "struck",
            Piece::NotRecorded => "missing",
            _ => "text",
        };
        LineData { label: line.label, kind, words: print(&line.piece.words(words), room) }
    }
}

fn fits(words: &Words, cell: &Cell) -> bool {
    let signs: usize = cell.0.iter().map(|line| line.plain(words).chars().count()).sum();
    signs <= WHOLE_ROW_SIGNS && cell.0.len() <= WHOLE_ROW_LINES
}

/// Splits a text where a line may break other than at spaces. The template joins the pieces without a hyphen, so that a
/// number copied from the page is the number recorded.
///
/// Only a word too wide for this room has more than one piece: it may break after every hyphen and slash, even
/// between digits, and within a part that is still too wide after every fourth character.
fn pieces(text: &str, room_for_it: u32) -> Vec<String> {
    let fits = |word: &str| room(word.trim_end()) * WIDER / 100 <= room_for_it;
    let mut pieces = vec![String::new()];
    for word in text.split_inclusive(' ') {
        if fits(word) {
            push(&mut pieces, word);
            continue;
        }
        for part in word.split_inclusive(['-', '/']) {
            let wide = !fits(part);
            for (place, sign) in part.chars().enumerate() {
                if wide && place > 0 && place % 4 == 0 && !joins(sign) && sign != ' ' {
                    pieces.push(String::new());
                }
                push(&mut pieces, sign.encode_utf8(&mut [0; 4]));
            }
            if part.ends_with(['-', '/']) {
                pieces.push(String::new());
            }
        }
    }
    pieces.retain(|piece| !piece.is_empty());
    pieces
}

fn push(pieces: &mut [String], text: &str) {
    if let Some(piece) = pieces.last_mut() {
        piece.push_str(text);
    }
}

/// The width of a word, in hundredths of the font size, by classes of characters. None is narrower than in the built-in font for
/// text (test).
fn room(word: &str) -> u32 {
    word.chars().map(sign_room).sum()
}

fn sign_room(sign: char) -> u32 {
    match sign {
        '.' | ',' | ';' | ':' | '\'' => 24,
        'i' | 'j' | 'l' | 'I' => 30,
        'f' | 't' | 'r' | '(' | ')' | '/' | '-' => 37,
        's' | 'c' | 'J' => 43,
        'e' | 'z' | 'F' | 'S' | '0'..='9' => 48,
        'm' => 79,
        'w' => 75,
        'M' => 84,
        'W' => 95,
        'E' | 'Y' | 'B' | 'R' | 'T' | 'Z' => 60,
        'K' | 'C' | 'V' | 'U' | 'X' | 'G' => 68,
        'a'..='z' | 'L' | 'P' => 54,
        'A'..='Z' => 73,
        _ => 100,
    }
}

/// An instant as a date-time of the typesetter.
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

#[cfg(test)]
mod tests {
    use typst::layout::Abs;
    use typst::text::{FontVariations, FontWeight};

    use super::*;
    use crate::glyphs::FONTS;

    #[test]
    fn a_line_may_end_within_a_wide_word_only_and_nothing_is_added() {
        let cases: [(&str, &str, &[&str]); 9] = [
            ("plain words stay whole", "Hollin Bee Stores", &["Hollin Bee Stores"]),
            ("a date stays whole", "from 2026-04-11, twice", &["from 2026-04-11, twice"]),
            ("a short batch stays whole", "X8-114", &["X8-114"]),
            (
                "an id ends lines after its hyphens",
                "019a0f10-7e57-7000-8000-00000000aaaa",
                &["019a0f10-", "7e57-", "7000-", "8000-", "0000", "0000", "aaaa"],
            ),
            (
                "hyphens between digits",
                "no. 2025-114-2025-07-11 here",
                &["no. 2025-", "114-", "2025-", "07-", "11 here"],
            ),
            ("slashes", "2025/1146/998/22", &["2025/", "1146/", "998/", "22"]),
            ("a hash, every fourth sign", "0123456789abcdef", &["0123", "4567", "89ab", "cdef"]),
            ("wide letters", "WWWWWWWWWW", &["WWWW", "WWWW", "WW"]),
            ("nothing", "", &[]),
        ];
        for (name, text, expected) in cases {
            assert_eq!(pieces(text, 513), expected, "{name}");
            assert_eq!(pieces(text, 513).concat(), text, "{name}");
        }
    }

    /// Against the advances in the fonts themselves, upright and italic.
    #[test]
    fn no_sign_is_wider_than_it_is_taken_for() {
        let signs = ('a'..='z').chain('A'..='Z').chain('0'..='9').chain(".,;:'-/()".chars());
        let mut measured = 0;
        let text = FONTS.fonts.iter().filter(|font| {
            let info = font.info();
            info.family == FAMILIES[0] && info.variant.weight <= FontWeight::REGULAR
        });
        for font in text {
            let face =
                font.clone().instantiate(font.info().variant, Abs::pt(9.0), &FontVariations::default());
            for sign in signs.clone() {
                let glyph = face.ttf().glyph_index(sign).unwrap();
                let width = face.x_advance(glyph.0).unwrap().get() * 100.0;
                let taken_for = f64::from(sign_room(sign)) + 0.5;
                assert!(width <= taken_for, "`{sign}` is {width} wide in {:?}", font.info());
                measured += 1;
            }
        }
        assert!(measured >= 2 * 71, "{measured}");
    }
}
