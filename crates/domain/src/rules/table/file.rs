//! One file: its text, its places, its faults.

use std::ops::Range;

use toml::de::{DeTable, Error};

use crate::rules::fault::{Diagnostic, Fault, TomlFault};

/// A file being read, with the faults found so far.
pub(crate) struct DataFile<'a> {
    path: &'a str,
    text: &'a str,
    faults: &'a mut Vec<Diagnostic>,
}

impl<'a> DataFile<'a> {
    pub(crate) fn new(path: &'a str, text: &'a str, faults: &'a mut Vec<Diagnostic>) -> DataFile<'a> {
        DataFile { path, text, faults }
    }

    pub(crate) fn path(&self) -> &'a str {
        self.path
    }

    /// Reports a fault at a byte offset, or in the file as a whole.
    pub(crate) fn fault(&mut self, at: impl Into<Option<usize>>, what: impl Into<Fault>) {
        let (line, column) = at.into().map_or((0, 0), |offset| self.place(offset));
        self.faults.push(Diagnostic { file: self.path.to_owned(), line, column, what: what.into() });
    }

    /// The line of a byte offset, from 1; 0 for the file as a whole.
    pub(crate) fn line(&self, at: Option<usize>) -> u32 {
        at.map_or(0, |offset| self.place(offset).0)
    }

    /// Line and column of a byte offset, both from 1.
    pub(crate) fn place(&self, offset: usize) -> (u32, u32) {
        let before = self.text.get(..offset).unwrap_or(self.text);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        (u32::try_from(line).unwrap_or(u32::MAX), u32::try_from(column).unwrap_or(u32::MAX))
    }

    /// A span of the file as written.
    pub(crate) fn written(&self, span: &Range<usize>) -> &'a str {
        self.text.get(span.clone()).unwrap_or_default()
    }

    /// Parses the file as TOML. `None` if reading on would only produce follow-up faults.
    pub(crate) fn parse(&mut self) -> Option<DeTable<'a>> {
        let (table, mut errors) = DeTable::parse_recoverable(self.text);
        // One without a place, such as keys nested too deep, hides none that has one.
        errors.sort_by_key(|error| error.span().map_or(usize::MAX, |span| span.start));
        for error in errors {
            let span = error.span();
            let written = span.as_ref().map_or("", |span| self.written(span));
            let Some(fault) = found(&error, written) else { continue };
            let can_read_on = match fault {
                TomlFault::KeyTwice { .. } | TomlFault::NotInQuotes { .. } => true,
                TomlFault::NoValue | TomlFault::NotClosed | TomlFault::NotToml { .. } => false,
            };
            self.fault(span.map(|span| span.start), fault);
            if !can_read_on {
                return None;
            }
        }
        Some(table.into_inner())
    }
}

/// What the parser found. It hands its errors out as text alone, in fixed words; only here they become facts. `None` for a date
/// or a time: the reader of the value reports it, with the name of its key.
fn found(error: &Error, written: &str) -> Option<TomlFault> {
    let says = error.message().lines().next().unwrap_or_default().replace(", expected nothing", "");
    let begins = |words: &str| says.starts_with(words);
    let written = || written.to_owned();
    if begins("invalid date") || begins("invalid time") {
        None
    } else if begins("duplicate key") {
        Some(TomlFault::KeyTwice { key: written() })
    } else if begins("string values must be quoted") {
        let written = written();
        Some(if written.is_empty() { TomlFault::NoValue } else { TomlFault::NotInQuotes { written } })
    } else if says == "invalid basic string, expected `\"`" {
        Some(TomlFault::NotClosed)
    } else {
        Some(TomlFault::NotToml { in_a_list: says.contains("array"), says })
    }
}
