//! Tables, which turn into lists where they do not fit.

use std::fmt;

use combclear_wording::{Label, Words};
use textwrap::core::display_width;

use super::{in_lines, width};

/// A table with one rule below its heads.
#[derive(Debug)]
pub(crate) struct Table {
    heads: Vec<String>,
    rows: Vec<Vec<String>>,
}

/// Blanks before a row.
const MARGIN: usize = 2;

/// Blanks between two columns.
const GAP: usize = 3;

/// The same where there is little room.
const NARROW_GAP: usize = 2;

/// A cell with sentences is at least this wide; where there is less room, the table becomes a list.
const COMFORTABLE: usize = 24;

impl Table {
    /// An empty table with these heads.
    pub(crate) fn new<'h>(heads: impl IntoIterator<Item = &'h str>) -> Table {
        Table { heads: heads.into_iter().map(ToOwned::to_owned).collect(), rows: Vec::new() }
    }

    /// An empty table with these labels for heads.
    pub(crate) fn headed<const N: usize>(words: &Words, heads: [Label; N]) -> Table {
        Table::new(heads.map(|head| words.label(head)))
    }

    /// Adds a row with a cell for each head. A cell may have several lines.
    pub(crate) fn row(&mut self, cells: impl IntoIterator<Item = String>) {
        self.rows.push(cells.into_iter().collect());
    }

    /// The table in this width; as a list, row by row, if there is no room to read its columns.
    fn said(&self, width: usize) -> String {
        let fits = [GAP, NARROW_GAP].into_iter().find_map(|gap| Some((self.widths(width, gap)?, gap)));
        fits.map_or_else(|| self.listed(), |(widths, gap)| self.drawn(&widths, gap))
    }

    /// The width of each column, with so many blanks between them. The widest columns give way first.
    fn widths(&self, width: usize, gap: usize) -> Option<Vec<usize>> {
        let columns: Vec<Column> = (0..self.heads.len()).map(|index| self.column(index)).collect();
        // The rule goes on for one beyond the last column.
        let room = width.checked_sub(MARGIN + gap * columns.len().saturating_sub(1) + 1)?;
        let at_most =
            |level: usize| columns.iter().map(move |column| column.natural.min(column.least.max(level)));
        let widest = columns.iter().map(|column| column.natural).max()?;
        let level = (0..=widest).rev().find(|level| at_most(*level).sum::<usize>() <= room)?;
        Some(at_most(level).collect())
    }

    fn column(&self, index: usize) -> Column {
        let cells = || self.rows.iter().filter_map(move |row| row.get(index)).chain(self.heads.get(index));
        let longest =
            |parts: &mut dyn Iterator<Item = &str>| parts.map(display_width).max().unwrap_or_default();
        let natural = longest(&mut cells().flat_map(|cell| cell.lines()));
        let word = longest(&mut cells().flat_map(|cell| cell.split_whitespace()));
        let least = if natural > COMFORTABLE { word.max(COMFORTABLE) } else { word };
        Column { natural, least }
    }

    fn drawn(&self, widths: &[usize], gap: usize) -> String {
        let rule = widths.iter().sum::<usize>() + gap * widths.len().saturating_sub(1) + 2;
        let mut text = drawn_row(&self.heads, widths, gap);
        text.push_str(&format!(" {}\n", "─".repeat(rule)));
        for row in &self.rows {
            text.push_str(&drawn_row(row, widths, gap));
        }
        text.pop();
        text
    }

    /// Each row as a heading, with the other cells below it.
    fn listed(&self) -> String {
        let mut text = String::new();
        for row in &self.rows {
            let mut cells = self.heads.iter().zip(row).filter(|(_, cell)| !cell.is_empty() && *cell != "-");
            // A number or a word of weight stands before what it belongs to.
            let mut heading: Vec<String> = Vec::new();
            for (head, cell) in cells.by_ref() {
                heading.push(cell.replace('\n', "; "));
                if !head.is_empty() {
                    break;
                }
            }
            text.push_str(&format!("  {}\n", heading.join("  ")));
            for (head, cell) in cells {
                let colon = if head.is_empty() { "" } else { ": " };
                let mut lines = cell.lines();
                text.push_str(&format!("    {head}{colon}{}\n", lines.next().unwrap_or_default()));
                lines.for_each(|line| text.push_str(&format!("      {line}\n")));
            }
        }
        text.pop();
        text
    }
}

/// The table as wide as the terminal.
impl fmt::Display for Table {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.said(width()))
    }
}

/// The widths that a column may have.
struct Column {
    /// That of its longest line.
    natural: usize,
    /// The smallest in which it can be read.
    least: usize,
}

fn drawn_row(cells: &[String], widths: &[usize], gap: usize) -> String {
    let wrap = |(cell, width): (&String, &usize)| -> Vec<String> {
        cell.lines().flat_map(|line| in_lines(line, *width, "", "")).collect()
    };
    let cells: Vec<Vec<String>> = cells.iter().zip(widths).map(wrap).collect();
    let height = cells.iter().map(Vec::len).max().unwrap_or_default();
    let mut text = String::new();
    for line in 0..height {
        let mut drawn = " ".repeat(MARGIN);
        for (cell, width) in cells.iter().zip(widths) {
            let said = cell.get(line).map(String::as_str).unwrap_or_default();
            drawn.push_str(said);
            drawn.push_str(&" ".repeat((width + gap).saturating_sub(display_width(said))));
        }
        text.push_str(drawn.trim_end());
        text.push('\n');
    }
    text
}
