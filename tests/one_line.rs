//! A substitute for the typesetter, which has tests of its own: makes a PDF of one line.

use combclear_domain::Instant;
use combclear_papers::{NotSet, Paper, Pdf, Typesetter};

#[derive(Debug)]
pub(crate) struct OneLine;

impl Typesetter for OneLine {
    fn set(&self, paper: &Paper, _: Instant) -> Result<Pdf, NotSet> {
        Ok(Pdf { bytes: format!("%PDF-1.7 {}", paper.title).into_bytes(), missing: Vec::new() })
    }
}
