//! What is wrong with a file, where, and how to fix it.

use std::fmt;

use serde::Serialize;

/// One fault found in a file: place, message, help. Several are reported together, never only the first.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Diagnostic {
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

impl fmt::Display for Diagnostic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.file)?;
        if self.line > 0 {
            write!(f, ":{}", self.line)?;
        }
        if self.column > 0 {
            write!(f, ":{}", self.column)?;
        }
        write!(f, ": {}\n  help: {}", self.message, self.help)
    }
}

/// The candidate nearest in spelling, if one is near enough to be meant.
#[must_use]
pub fn nearest<'a>(written: &str, candidates: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    candidates
        .into_iter()
        .map(|candidate| {
            (strsim::damerau_levenshtein(&written.to_lowercase(), &candidate.to_lowercase()), candidate)
        })
        .filter(|(distance, candidate)| *distance <= 1 + candidate.chars().count() / 4)
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, candidate)| candidate)
}
