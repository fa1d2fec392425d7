//! The register on paper and in files. Pure: no clock, no files, no network; days and instants are arguments.
//!
//! - [`Paper`]: the register (or its gaps) as titled sheets in words, made once for every format
//! - [`html`]: pages for reading and printing; [`Typesetter`]: makes PDFs of them; [`flat`]: one CSV file; [`exchange`]:
//!   JSON for other programs
//! - [`calendar`]: due items for calendars
//! - [`pack`]: all of them in one ZIP file, with the proofs and checksums
#![deny(missing_docs)]

pub mod calendar;
pub mod exchange;
mod fields;
pub mod flat;
pub mod html;
pub mod look;
mod office_copy;
pub mod pack;
mod rows;
mod shares;
mod sheet;
mod sheets;
mod sheets_gaps;
mod typesetter;

pub use sheet::{Cell, Column, Fact, Paper, PaperSize, Piece, Sheet, SheetLine};
pub use typesetter::{NotSet, Pdf, Typesetter};
