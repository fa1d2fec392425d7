//! The guarantees of the store, through the trait [`combclear_store::Journal`] on a file in a temporary folder.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops at the first surprise"
)]

mod append;
mod archive;
mod close;
mod damage;
mod documents;
mod guard;
mod making;
mod open;
mod read;
mod refused;
mod tamper;
mod verify;
