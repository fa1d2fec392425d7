//! The command line as bee farmers and scripts use it: the real binary, in a temporary folder of its own, isolated from the
//! environment. One module per command; `bench.rs` runs it.
//!
//! A full disk is tested in the store, since it would take a file system of its own here. The same is tested here with a
//! limit on file size (`databases.rs`).
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod against;
mod archive;
mod backup;
mod bench;
mod databases;
mod doctor;
mod documents;
mod due;
mod export;
mod help;
mod import;
mod keys;
mod killed;
mod killed_rounds;
mod law;
mod laws;
mod leaflets;
mod on_a_server;
mod options;
mod own_leaflets;
mod record;
mod register;
mod retention;
mod round_trip;
mod serve;
mod server;
mod sheet;
mod stock;
mod supering;
mod today;
mod verify;
mod width;
