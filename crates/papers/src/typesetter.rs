//! The interface of the PDF typesetter. The typesetter itself is in a crate of its own, which a build may leave out.

use std::fmt::Debug;

use combclear_domain::Instant;

use crate::sheet::Paper;

/// Makes PDFs of papers.
pub trait Typesetter: Debug + Send + Sync {
    /// Makes a PDF of a paper.
    ///
    /// `made` is the creation time in the file; an argument, so that the same input gives the same bytes.
    ///
    /// # Errors
    /// The message of the typesetter. No text of a register is known to cause one.
    fn set(&self, paper: &Paper, made: Instant) -> Result<Pdf, NotSet>;
}

/// A PDF, with the characters that it cannot show.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pdf {
    /// The file.
    pub bytes: Vec<u8>,
    /// The characters that no built-in font has, as code points (`U+1F41D`). They are printed as such, and a sentence at the
    /// end says so.
    pub missing: Vec<String>,
}

/// A paper that could not be set.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("the pages could not be set: {0}")]
pub struct NotSet(pub String);
