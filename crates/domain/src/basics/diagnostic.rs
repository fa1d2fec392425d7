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

/// Everything that is wrong with some files, in their order. Never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Faults(Vec<Diagnostic>);

impl Faults {
    /// The result of `made`, if there are no faults.
    ///
    /// # Errors
    /// The faults, if there are any.
    pub(crate) fn none_of<T>(faults: Vec<Diagnostic>, made: impl FnOnce() -> T) -> Result<T, Faults> {
        if faults.is_empty() { Ok(made()) } else { Err(Faults(faults)) }
    }

    /// Each fault.
    pub fn iter(&self) -> impl Iterator<Item = &Diagnostic> {
        self.0.iter()
    }
}

impl IntoIterator for Faults {
    type Item = Diagnostic;
    type IntoIter = std::vec::IntoIter<Diagnostic>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.0.iter().enumerate() {
            if index > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl std::error::Error for Faults {}

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
