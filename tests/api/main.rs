//! The API, asked as a client would ask it: through the whole router, on a real store in a temporary folder, with a
//! clock and ids that are given. The modules mirror the paths; `document.rs` looks at what is said of them, `layers.rs` at
//! what lies around them. Every answer is held against the document on its way (see `bench.rs`).
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod bench;
mod docs;
mod document;
mod faulty;
mod health;
mod holdings;
mod laws;
mod layers;
mod leaflets;
#[path = "../one_line.rs"]
mod one_line;
mod paths;
mod problems;
mod schema;
mod seed;
mod serving;
