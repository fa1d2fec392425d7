//! The tests of `combclear-wording`, one room each: `cargo test -p combclear-wording options::`.
#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::string_slice,
    clippy::unwrap_used,
    reason = "a test stops at the first surprise"
)]

use proptest::prelude::ProptestConfig;

mod colonies;
mod corpus;
mod due;
mod errors;
mod journal;
mod options;
#[expect(unreachable_pub, reason = "the fuzz targets take them from another crate")]
mod readers;
mod refusals;
mod register;
mod retention;
mod rules;
mod supering;

/// As many random holdings, or `PROPTEST_CASES` of them.
fn some(cases: u32) -> ProptestConfig {
    let cases = std::env::var("PROPTEST_CASES").ok().and_then(|cases| cases.parse().ok()).unwrap_or(cases);
    ProptestConfig {
        cases,
        failure_persistence: None,
        max_global_rejects: 100_000,
        ..ProptestConfig::default()
    }
}
