//! The register on paper and in files. Pure: no clock, no files, no network; days and instants come in as arguments.
//!
//! - [`Paper`]: the register (or its gaps) as titled sheets in the words of the trade, made once for every writer
//! - [`html`]: pages to read and to print, [`Typesetter`]: whatever sets them as PDF; [`flat`]: one CSV file; [`exchange`]: JSON
//!   for other programs
//! - [`calendar`]: what is due, for calendars
//! - [`pack`]: all of them in one ZIP file, with the proofs and the sums to check it by
#![deny(missing_docs)]

pub mod calendar;
pub mod exchange;
mod fields;
pub mod flat;
pub mod html;
pub mod pack;
mod rows;
mod shares;
mod sheet;
mod sheets;
mod sheets_gaps;
mod typesetter;

pub use sheet::{Cell, Column, Fact, Paper, Piece, Sheet, SheetLine, code_point, visible};
pub use typesetter::{NotSet, Pdf, Typesetter};
