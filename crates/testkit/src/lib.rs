//! What the tests of several crates share. `.ci/run` checks that nothing else depends on it.
//!
//! It knows `domain` alone, so it serves the integration tests of every crate. Unit tests within `domain` cannot use it:
//! they see a second copy of the types.
#![expect(
    clippy::indexing_slicing,
    clippy::expect_used,
    clippy::missing_errors_doc,
    clippy::missing_panics_doc,
    clippy::must_use_candidate,
    clippy::panic,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

pub mod cases;
pub mod corpus;
pub mod documents;
pub mod entries;
pub mod files;
mod find_postgres;
pub mod postgres;
