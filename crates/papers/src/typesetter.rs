//! What sets a paper as PDF. The typesetter itself is in a crate of its own, which a build may leave out.

use std::fmt::Debug;

use combclear_domain::Instant;

use crate::sheet::Paper;

/// Sets papers as PDF.
pub trait Typesetter: Debug + Send + Sync {
    /// Sets a paper.
    ///
    /// `made` is the instant that the file names as its making; it comes as an argument so that the same input gives the
    /// same bytes.
    ///
    /// # Errors
    /// What the typesetter said; no text of a register is known that brings it about.
    fn set(&self, paper: &Paper, made: Instant) -> Result<Pdf, NotSet>;
}

/// A PDF, and what could not be printed in it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// The signs that no built-in font has, by code point (`U+1F41D`). They stand in the pages as that, and a sentence
    /// at the end says so.
    pub missing: Vec<String>,
}

/// A paper that could not be set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the pages could not be set: {0}")]
pub struct NotSet(pub String);
