//! One file: its text, its places, its faults.

use std::ops::Range;

use toml::de::{DeTable, Error};

use crate::basics::diagnostic::Diagnostic;

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
    pub(crate) fn fault(
        &mut self,
        at: impl Into<Option<usize>>,
        message: impl Into<String>,
        help: impl Into<String>,
    ) {
        let (line, column) = at.into().map_or((0, 0), |offset| self.place(offset));
        let (file, message, help) = (self.path.to_owned(), message.into(), help.into());
        self.faults.push(Diagnostic { file, line, column, message, help });
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
        errors.sort_by_key(|error| error.span().map_or(0, |span| span.start));
        for error in errors {
            if !self.can_read_past(&error) {
                return None;
            }
        }
        Some(table.into_inner())
    }

    /// Reports an error of the TOML parser. False if later errors may only follow from it.
    fn can_read_past(&mut self, error: &Error) -> bool {
        let span = error.span();
        let at = span.as_ref().map(|span| span.start);
        let written = span.map_or("", |span| self.written(&span));
        let said = error.message().lines().next().unwrap_or_default().replace(", expected nothing", "");
        if said.starts_with("invalid date") || said.starts_with("invalid time") {
            // The reader of the value reports it, with the name of its key.
            return true;
        }
        if said.starts_with("duplicate key") {
            self.fault(at, format!("`{written}` is written twice in one table"), "keep one of the two");
            return true;
        }
        if said.starts_with("string values must be quoted") {
            if written.is_empty() {
                self.fault(at, "the key has no value", "write a value after the `=`, or drop the line");
                return false;
            }
            self.fault(at, format!("`{written}` is not in quotes"), format!("write \"{written}\""));
            return true;
        }
        if said == "invalid basic string, expected `\"`" {
            self.fault(at, "the text is not closed", "end it with a double quote on the same line");
            return false;
        }
        let help = if said.contains("array") {
            "close the list with `]`, and put a comma between its texts"
        } else {
            "write each line as `key = value`, with text in double quotes and dates such as 2026-04-11"
        };
        self.fault(at, format!("not TOML: {said}"), help);
        false
    }
}
