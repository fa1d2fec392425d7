//! The tests of `combclear-leaflets`, one room each: `cargo test -p combclear-leaflets published::`.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

mod coverage;
mod law;
mod published;
mod schema;
