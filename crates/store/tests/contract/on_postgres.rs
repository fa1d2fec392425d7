//! The contract on a server.

use crate::postgres::Bench;

#[path = "both/append.rs"]
mod append;
#[path = "both/archive.rs"]
pub(crate) mod archive;
#[path = "both/documents.rs"]
mod documents;
#[path = "both/keys.rs"]
mod keys;
#[path = "both/memory.rs"]
mod memory;
#[path = "both/read.rs"]
mod read;
#[path = "both/verify.rs"]
mod verify;
