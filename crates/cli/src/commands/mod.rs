//! One module per command.

pub(crate) mod archive;
pub(crate) mod attach;
pub(crate) mod documents;
pub(crate) mod due;
pub(crate) mod export;
pub(crate) mod gaps;
pub(crate) mod import;
pub(crate) mod law;
pub(crate) mod leaflets;
pub(crate) mod options;
pub(crate) mod output;
pub(crate) mod pack;
pub(crate) mod register;
pub(crate) mod retention;
pub(crate) mod serve;
pub(crate) mod stock;
pub(crate) mod supering;
pub(crate) mod verify;

use std::fmt::Display;
use std::io::Write;

use combclear_wording::{Label, Words};
use comfy_table::{ContentArrangement, ContentLineStyle, LineStyle, Table, TableStyle};
use serde::Serialize;

use crate::Outcome;
use crate::failure::{Failure, why};

/// Writes words for people to standard output. What cannot be seen is written as its code point.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    print_as_is(&seen(text))
}

/// A text with every sign in it that cannot be seen, or that a terminal would obey, written as its code point. Only the
/// ends of lines stay.
pub(crate) fn seen(text: &str) -> String {
    text.split('\n').map(combclear_papers::visible).collect::<Vec<_>>().join("\n")
}

/// Writes what is for programs to standard output; a reader that has gone away (`| head`) is no failure.
pub(crate) fn print_as_is(text: &str) -> Result<(), Failure> {
    match writeln!(std::io::stdout(), "{text}") {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(Failure::new(
            format!("cannot write to standard output: {}", why(&error)),
            "look where it is sent",
        )),
        _ => Ok(()),
    }
}

/// Writes a value as JSON.
pub(crate) fn print_json(value: &impl Serialize) -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(value)
        .map_err(|error| Failure::new(format!("cannot write this as JSON: {error}"), "leave --json out"))?;
    print_as_is(&text)
}

/// Writes a report for programs or for people.
pub(crate) fn show<R: Serialize>(
    json: bool,
    report: &R,
    text: impl FnOnce(&R) -> String,
) -> Result<Outcome, Failure> {
    if json {
        print_json(report)?;
    } else {
        print(&text(report))?;
    }
    Ok(Outcome::Done)
}

/// A number with its noun.
pub(crate) fn counted<N: Copy + Display + PartialEq + From<u8>>(number: N, one: &str, more: &str) -> String {
    let noun = if number == N::from(1) { one } else { more };
    format!("{number} {noun}")
}

/// A table with these labels for heads.
pub(crate) fn headed<const N: usize>(words: &Words, heads: [Label; N]) -> Table {
    table(heads.map(|head| words.label(head)))
}

/// A table in the manner of this program: one rule below the heads, wrapped to the width of the terminal.
pub(crate) fn table<'h>(heads: impl IntoIterator<Item = &'h str>) -> Table {
    let mut table = Table::new();
    table.load_style(STYLE).set_content_arrangement(ContentArrangement::Dynamic);
    if table.width().is_none() {
        table.set_width(WIDTH_ELSEWHERE);
    }
    table.set_header(heads.into_iter().collect::<Vec<_>>());
    table
}

/// How wide a table is when it goes to a file or another program.
const WIDTH_ELSEWHERE: u16 = 140;

const STYLE: TableStyle = TableStyle::new()
    .header_lines(ContentLineStyle::new(' ', ' ', ' '))
    .header_separator(LineStyle::new(' ', '─', '─', ' '))
    .content_lines(ContentLineStyle::new(' ', ' ', ' '));
