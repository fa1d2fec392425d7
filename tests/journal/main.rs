//! What a journal is written in: days and amounts, entries as they are read, lines, and the chain of hashes.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::string_slice,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

mod confirmed;
mod contents;
mod days;
mod documents;
mod drafts;
mod lines;
mod places;
mod quantities;
mod reading;
#[path = "../samples.rs"]
mod samples;
mod sealed;
mod ties;
mod told;
