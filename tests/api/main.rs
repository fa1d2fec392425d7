//! The API as a client sees it: through the whole router, on a real store in a temporary folder, with a fixed clock and
//! fixed ids. The modules mirror the paths; `document.rs` checks the document, `layers.rs` everything around the paths.
//! Every answer is checked against the document on its way (see `bench.rs`).
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod answers;
mod bench;
mod bodies;
mod busy;
mod clock;
mod docs;
mod document;
mod faulty;
mod freshness;
mod health;
mod holdings;
mod keys;
mod languages;
mod laws;
mod layers;
mod leaflets;
mod long;
mod metrics;
mod numbered;
#[path = "../one_line.rs"]
mod one_line;
mod origins;
mod page;
mod paths;
mod problems;
mod schema;
mod seed;
mod serving;
