//! Papers as PDF: A4 landscape, tagged, PDF/A-2a (ISO 19005-2), the same bytes for the same input.
#![deny(missing_docs)]

mod glyphs;
mod page_data;
mod typesetting;

use combclear_domain::Instant;
use combclear_papers::{NotSet, Paper, Pdf, Typesetter};

/// The built-in typesetter, with its template and fonts.
#[derive(Debug, Clone, Copy, Default)]
pub struct BuiltIn;

impl Typesetter for BuiltIn {
    fn set(&self, paper: &Paper, made: Instant) -> Result<Pdf, NotSet> {
        page_data::set(paper, made)
    }
}
