//! The tests of `combclear-domain`, one room each: `cargo test -p combclear-domain weather::`.
#![expect(
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

mod dates;
mod placeholders;
mod second_reading;
mod weather;
