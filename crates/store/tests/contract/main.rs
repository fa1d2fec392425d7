//! The guarantees of the store, through the trait [`combclear_store::Journal`] on a file in a temporary folder
//! and on a PostgreSQL of its own. The rooms of `both` run on each.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]
#![cfg_attr(
    postgres,
    expect(clippy::duplicate_mod, reason = "the rooms of `both` are built once for each database")
)]

mod archive;
mod changed_rows;
mod close;
mod damage;
mod documents;
mod guard;
mod kept;
mod making;
#[cfg(postgres)]
mod on_postgres;
mod on_sqlite;
mod open;
#[cfg(postgres)]
mod postgres;
mod read;
mod refused;
mod tamper;

/// Stands for all tests on PostgreSQL where they cannot run, so that the list of tests says what is missing.
#[cfg(not(postgres))]
#[test]
#[ignore = "PostgreSQL 15 or later is not on this machine: the contract of the store was tested on SQLite only"]
fn on_postgresql() {}
