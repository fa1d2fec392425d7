//! A self-contained page for reading and printing: no scripts, nothing fetched, black and white.

use combclear_wording::visible::visible;
use combclear_wording::{Label, Words, paper};
use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::sheet::{Cell, Paper, PaperSize, Piece, Sheet, SheetLine};

/// The paper as an HTML document.
///
/// On paper: A4 or Letter, landscape. Table heads and the line with holding and keeper repeat on each page, rows stay whole, and pages
/// are numbered in browsers that support margin boxes (CSS Paged Media Module Level 3).
#[must_use]
pub fn page(paper: &Paper) -> String {
    let words = paper.words;
    let body = html! {
        h1 { (paper.title) }
        dl {
            div { dt { (words.label(Label::Holding)) } dd { (visible(&paper.holding)) } }
            @for fact in &paper.facts {
                div { dt { (fact.head) } dd { (visible(&fact.says)) } }
            }
        }
        p { strong { (visible(&paper.notice)) } }
        nav aria-label=(words.label(Label::Sheets)) {
            ul {
                @for sheet in &paper.sheets {
                    li { a href={ "#" (sheet.id) } { (sheet.title) } " (" (sheet.rows.len()) ")" }
                }
            }
        }
        @for sheet in &paper.sheets { (table(words, sheet, &running(paper))) }
    };
    let title = format!("{}: {}, {}", paper.title, visible(&paper.holding), paper.period);
    document(words, &title, &body, paper.size)
}

/// A whole document around a body.
pub(crate) fn document(words: &Words, title: &str, body: &Markup, size: PaperSize) -> String {
    let page = html! {
        (DOCTYPE)
        html lang=(words.language()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(STYLE.replace(PAGE, &page_number(words)).replace(SIZE, size.as_css()))) }
            }
            body { main { (body) } }
        }
    };
    page.into_string()
}

/// The page number as CSS content.
fn page_number(words: &Words) -> String {
    // The counters end the string before them and begin the one after.
    let said = paper::page(words, "\" counter(page) \"", "\" counter(pages) \"");
    let said = format!("\"{said}\"");
    said.strip_suffix(" \"\"").map_or_else(|| said.clone(), str::to_owned)
}

/// The running head of each printed page.
fn running(paper: &Paper) -> String {
    visible(&format!("{}, {}; {}, {}", paper.holding, paper.keeper, paper.title, paper.period))
}

fn table(words: &Words, sheet: &Sheet, running: &str) -> Markup {
    html! {
        section aria-labelledby=(sheet.id) {
            h2 id=(sheet.id) { (sheet.title) }
            @for note in &sheet.notes { p { (visible(note)) } }
            @if sheet.rows.is_empty() {
                p { (Sheet::empty(words)) }
            } @else {
                table {
                    caption { (sheet.title) }
                    colgroup {
                        @for column in &sheet.columns { col style={ "width:" (share(sheet, column.width)) "%" }; }
                    }
                    thead {
                        // A table head repeats on each page in every browser; few support margin boxes.
                        tr.running aria-hidden="true" { td colspan=(sheet.columns.len()) { (running) } }
                        tr { @for column in &sheet.columns { th scope="col" { (column.head) } } }
                    }
                    tbody { @for row in &sheet.rows { (tr(words, row)) } }
                }
            }
        }
    }
}

/// The share of a column in the width of its sheet, in whole percent.
fn share(sheet: &Sheet, width: u8) -> u32 {
    let all: u32 = sheet.columns.iter().map(|column| u32::from(column.width)).sum();
    (u32::from(width) * 100).checked_div(all).unwrap_or(0)
}

fn tr(words: &Words, row: &[Cell]) -> Markup {
    html! {
        tr {
            @for (index, cell) in row.iter().enumerate() {
                @if index == 0 { th scope="row" { (lines(words, cell)) } } @else { td { (lines(words, cell)) } }
            }
        }
    }
}

fn lines(words: &Words, cell: &Cell) -> Markup {
    html! { @for line in &cell.0 { div { (spoken(words, line)) } } }
}

fn spoken(words: &Words, line: &SheetLine) -> Markup {
    html! {
        @if let Some(label) = line.label { span.label { (label) ": " } }
        @match &line.piece {
            Piece::Struck(_) => { (words.label(Label::Struck)) ": " s { (line.piece.words(words)) } }
            Piece::Date(_) => { time { (line.piece.words(words)) } }
            Piece::NotRecorded => { em { (line.piece.words(words)) } }
            _ => { bdi { (line.piece.words(words)) } }
        }
    }
}

/// The placeholder for the page number in the style.
const PAGE: &str = "PAGE-NUMBER";
const SIZE: &str = "PAPER-SIZE";

const STYLE: &str = "
:root { color-scheme: light; }
body { background: #fff; color: #000; font: 0.9rem/1.35 serif; margin: 1rem; }
h1 { font-size: 1.5rem; margin: 0 0 0.5rem; }
h2 { font-size: 1.15rem; margin: 1.5rem 0 0.4rem; }
dl { margin: 0 0 0.5rem; }
dl div { display: flex; gap: 0.5rem; }
dt { flex: none; font-weight: bold; min-width: 11rem; }
dd { margin: 0; overflow-wrap: anywhere; }
table { border-collapse: collapse; table-layout: fixed; width: 100%; }
caption { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
th, td { border: 1px solid #000; padding: 0.2rem 0.3rem; text-align: left; vertical-align: top; overflow-wrap: anywhere; }
tbody th { font-weight: bold; }
.label { font-style: italic; }
em { font-style: italic; font-weight: bold; }
s { text-decoration: line-through; }
time { white-space: nowrap; }
a { color: #000; }
.running { display: none; }
@page {
  size: PAPER-SIZE landscape;
  margin: 14mm 10mm 16mm;
  @bottom-right { content: PAGE-NUMBER; font: 9pt serif; }
}
@media print {
  body { font-size: 9pt; margin: 0; }
  nav { display: none; }
  .running { display: table-row; }
  .running td { border: 0; font-style: italic; padding: 0 0 1mm; }
  thead { display: table-header-group; }
  tr { break-inside: avoid; }
  h2, h2 + p { break-after: avoid; }
}
";
