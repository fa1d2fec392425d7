//! What is wrong with files of leaflets and laws, in words, and how to mend it.

mod keys;
mod law;
mod leaflet;
mod rules;
mod sources;
mod values;

use combclear_domain::rules::fault::{Diagnostic, Fault, Faults};
use serde::Serialize;

use crate::words::{Words, say};

/// One fault of a file in words: place, message, help.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Diagnosed {
    /// The file as it was named by whoever gave it.
    pub file: String,
    /// Line, counted from 1; 0 when the whole file is meant.
    pub line: u32,
    /// Column in characters, counted from 1; 0 when the whole line is meant.
    pub column: u32,
    /// What is wrong: lower-case, no full stop, what was read in backticks.
    pub message: String,
    /// How to mend it.
    pub help: String,
}

impl Diagnosed {
    /// Says what is wrong with a file.
    #[must_use]
    pub fn of(words: &Words, Diagnostic { file, line, column, what }: &Diagnostic) -> Diagnosed {
        let (message, help) = match what {
            Fault::Toml(fault) => keys::toml(words, fault),
            Fault::Keys(fault) => keys::keys(words, fault),
            Fault::Values(fault) => values::values(words, fault),
            Fault::Sources(fault) => sources::sources(words, fault),
            Fault::Rules(fault) => rules::rules(words, fault),
            Fault::Leaflet(fault) => leaflet::leaflet(words, fault),
            Fault::Law(fault) => law::law(words, fault),
        };
        Diagnosed { file: file.clone(), line: *line, column: *column, message, help }
    }

    /// Place and message in a line, the help in another.
    #[must_use]
    pub fn said(&self, words: &Words) -> String {
        let Diagnosed { file, line, column, message, help } = self;
        let mut said = file.clone();
        for place in [line, column].into_iter().filter(|place| **place > 0) {
            said += &format!(":{place}");
        }
        said + &format!(": {message}\n  {}", say!(words, FailureHelp, help = help))
    }
}

/// Each fault of some files, one below the other.
#[must_use]
pub fn listed(words: &Words, faults: &Faults) -> String {
    let said: Vec<String> = faults.iter().map(|fault| Diagnosed::of(words, fault).said(words)).collect();
    said.join("\n")
}
