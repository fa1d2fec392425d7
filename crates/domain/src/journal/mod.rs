//! The journal of a holding: what happened, in the order of recording. Nothing is edited or deleted.
//!
//! - [`entry`]: the envelope of an entry, before and after it is sealed into the chain
//! - [`event`]: the kinds of entry and their bodies
//! - [`form`]: each kind as a form to fill in
//! - [`kept`]: an entry as the fold takes it in
//! - [`seal`]: the hash chain, which detects later changes
//! - [`key`]: who may read and record where others can reach the service
//! - [`lines`]: the journal as JSON Lines, for import and export
//! - [`content`]: the contents of documents, which travel in such a file after the entries
//! - [`copied`]: where an entry was copied from, if a paper register is taken over
//! - [`fault`]: why an entry cannot be read; [`misfit`]: what does not fit about one that was recorded
//! - [`keeping`]: what can be wrong with a journal where it is kept
//! - [`places`]: places in a journal as compact text
//! - [`archive`]: entries whose bodies were moved into an archive file, and that file
//! - [`document`]: the type of a document, read from its content, and whether it is complete

pub mod archive;
mod body_types;
mod confirmed;
pub mod content;
pub mod copied;
pub mod document;
pub mod entry;
pub mod event;
pub mod fault;
pub mod form;
pub mod keeping;
pub mod kept;
pub mod key;
pub mod lines;
pub mod misfit;
pub mod places;
mod read;
pub mod seal;

pub use content::Content;
pub use entry::{Draft, Entry, EntryId};
pub use event::{Event, Kind};
pub use kept::{ClockSetBack, Kept};
pub use key::KeyId;
pub use seal::{Checkpoint, Hash};
