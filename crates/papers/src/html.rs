//! A page to read and to print, by itself: no scripts, nothing fetched, black and white.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::sheet::{Cell, Paper, Piece, Sheet, SheetLine, visible};

/// The paper as an HTML document.
///
/// On paper: A4 across, the heads of a table and the line with holding and keeper repeat on each page, rows stay whole,
/// and pages are numbered where the reader's program knows margin boxes (CSS Paged Media Module Level 3).
#[must_use]
pub fn page(paper: &Paper) -> String {
    let body = html! {
        h1 { (paper.title) }
        dl {
            div { dt { "Holding" } dd { (visible(&paper.holding)) } }
            @for fact in &paper.facts {
                div { dt { (fact.head) } dd { (visible(&fact.says)) } }
            }
        }
        p { strong { (visible(&paper.notice)) } }
        nav aria-label="Sheets" {
            ul {
                @for sheet in &paper.sheets {
                    li { a href={ "#" (sheet.id) } { (sheet.title) } " (" (sheet.rows.len()) ")" }
                }
            }
        }
        @for sheet in &paper.sheets { (table(sheet, &running(paper))) }
    };
    document(&format!("{}: {}, {}", paper.title, visible(&paper.holding), paper.period), &body)
}

/// A whole document around a body.
pub(crate) fn document(title: &str, body: &Markup) -> String {
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(STYLE)) }
            }
            body { main { (body) } }
        }
    };
    page.into_string()
}

/// What stands at the head of each printed page.
fn running(paper: &Paper) -> String {
    visible(&format!("{}, {}; {}, {}", paper.holding, paper.keeper, paper.title, paper.period))
}

fn table(sheet: &Sheet, running: &str) -> Markup {
    html! {
        section aria-labelledby=(sheet.id) {
            h2 id=(sheet.id) { (sheet.title) }
            @for note in &sheet.notes { p { (visible(note)) } }
            @if sheet.rows.is_empty() {
                p { (Sheet::EMPTY) }
            } @else {
                table {
                    caption { (sheet.title) }
                    colgroup {
                        @for column in &sheet.columns { col style={ "width:" (share(sheet, column.width)) "%" }; }
                    }
                    thead {
                        // Repeats on each page in every browser, where margin boxes do so in few.
                        tr.running aria-hidden="true" { td colspan=(sheet.columns.len()) { (running) } }
                        tr { @for column in &sheet.columns { th scope="col" { (column.head) } } }
                    }
                    tbody { @for row in &sheet.rows { (tr(row)) } }
                }
            }
        }
    }
}

/// How much of the width of its sheet a column takes, in whole percent.
fn share(sheet: &Sheet, width: u8) -> u32 {
    let all: u32 = sheet.columns.iter().map(|column| u32::from(column.width)).sum();
    (u32::from(width) * 100).checked_div(all).unwrap_or(0)
}

fn tr(row: &[Cell]) -> Markup {
    html! {
        tr {
            @for (index, cell) in row.iter().enumerate() {
                @if index == 0 { th scope="row" { (lines(cell)) } } @else { td { (lines(cell)) } }
            }
        }
    }
}

fn lines(cell: &Cell) -> Markup {
    html! { @for line in &cell.0 { div { (spoken(line)) } } }
}

fn spoken(line: &SheetLine) -> Markup {
    html! {
        @if let Some(label) = line.label { span.label { (label) ": " } }
        @match &line.piece {
            Piece::Struck(_) => { "struck: " s { (line.piece.words()) } }
            Piece::Date(_) => { time { (line.piece.words()) } }
            Piece::NotRecorded => { em { (line.piece.words()) } }
            _ => { bdi { (line.piece.words()) } }
        }
    }
}

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
  size: A4 landscape;
  margin: 14mm 10mm 16mm;
  @bottom-right { content: \"page \" counter(page) \" of \" counter(pages); font: 8pt serif; }
}
@media print {
  body { font-size: 7.5pt; margin: 0; }
  nav { display: none; }
  .running { display: table-row; }
  .running td { border: 0; font-style: italic; padding: 0 0 1mm; }
  thead { display: table-header-group; }
  tr { break-inside: avoid; }
  h2, h2 + p { break-after: avoid; }
}
";
