//! One module per command.

pub(crate) mod archive;
pub(crate) mod attach;
pub(crate) mod backup;
pub(crate) mod copies;
pub(crate) mod doctor;
pub(crate) mod documents;
pub(crate) mod due;
pub(crate) mod export;
pub(crate) mod gaps;
pub(crate) mod import;
pub(crate) mod key;
pub(crate) mod kinds;
pub(crate) mod law;
pub(crate) mod leaflets;
pub(crate) mod manual;
pub(crate) mod options;
pub(crate) mod output;
pub(crate) mod pack;
pub(crate) mod progress;
pub(crate) mod record;
pub(crate) mod register;
pub(crate) mod retention;
pub(crate) mod serve;
pub(crate) mod sheet;
pub(crate) mod stock;
pub(crate) mod supering;
pub(crate) mod today;
pub(crate) mod verify;

use std::io::Write;

use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words};
use serde::Serialize;

use crate::Outcome;
use crate::failure::{Failure, why};
use crate::layout::{width, wrapped};

/// Prints text for people, wrapped to the width of the terminal. Invisible characters are written as code points.
pub(crate) fn print(text: &str) -> Result<(), Failure> {
    print_as_is(&wrapped(&seen(text), width()))
}

/// A text in which every character that is invisible or controls a terminal is written as its code point. Line breaks stay.
pub(crate) fn seen(text: &str) -> String {
    text.split('\n').map(combclear_wording::visible::visible).collect::<Vec<_>>().join("\n")
}

/// Prints output for programs. A closed pipe (`| head`) is no failure.
pub(crate) fn print_as_is(text: &str) -> Result<(), Failure> {
    match writeln!(std::io::stdout(), "{text}") {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            Err(Failure::new(say::cannot_write_out(Words::english(), &why(&error)), Label::OutputLook))
        }
        _ => Ok(()),
    }
}

/// Prints a value as JSON.
pub(crate) fn print_json(value: &impl Serialize) -> Result<(), Failure> {
    let text = serde_json::to_string_pretty(value).map_err(|error| {
        Failure::new(say::not_json(Words::english(), &error.to_string()), Label::OutputLeaveJsonOut)
    })?;
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
