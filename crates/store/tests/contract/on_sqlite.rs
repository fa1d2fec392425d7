//! The contract on a file.

use crate::making::Bench;

#[path = "both/append.rs"]
mod append;
#[path = "both/archive.rs"]
pub(crate) mod archive;
#[path = "both/documents.rs"]
pub(crate) mod documents;
#[path = "both/keys.rs"]
mod keys;
#[path = "both/memory.rs"]
mod memory;
#[path = "both/read.rs"]
mod read;
#[path = "both/verify.rs"]
pub(crate) mod verify;
