//! The register on paper and in files, and what is due as a calendar, held against readers that this project did not write:
//! Python's `csv` and `zipfile`, a JSON Schema validator, a reader of iCalendar, and (in `.ci/run`, on the files written here) a
//! reader of PDF.
#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

mod calendar;
mod exchange;
mod files;
mod flat;
mod look;
mod making;
#[path = "../one_line.rs"]
mod one_line;
mod pages;
mod picture;
