//! The register on paper and in files, checked with independent readers: Python's `csv` and `zipfile`, a JSON Schema
//! validator, and (in `.ci/run`, on the files written here) a PDF reader.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod exchange;
mod files;
mod flat;
mod making;
#[path = "../one_line.rs"]
mod one_line;
mod pages;
