//! The command line, as a bee farmer and as a script meet it: the real binary, in a temporary folder of its own, with
//! nothing from outside but its arguments. One module per command; `bench.rs` runs it.
//!
//! The disk that fills up stands among the tests of the store: from here it takes a file system of its own. What is asked
//! here is the same of a file that may not grow (`databases.rs`).
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod archive;
mod bench;
mod databases;
mod documents;
mod due;
mod export;
mod help;
mod import;
mod law;
mod laws;
mod leaflets;
mod options;
mod own_leaflets;
mod register;
mod retention;
mod round_trip;
mod serve;
mod stock;
mod supering;
mod verify;
