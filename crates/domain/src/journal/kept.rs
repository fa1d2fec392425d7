//! An entry as the fold takes it in.

use crate::basics::calendar::{Day, Instant, TimeOfDay};
use crate::basics::words::Person;
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::{Correction, Entry, EntryId};
use crate::journal::event::Event;
use crate::journal::seal::Hash;

/// An entry of the journal, understood, without what only the hash covers: the text of its body and the hash before it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Its id.
    pub id: EntryId,
    /// Its place in the journal.
    pub seq: u64,
    /// The civil day on which it happened.
    pub on: Day,
    /// The time of day, if it was noted.
    pub at: Option<TimeOfDay>,
    /// When it was recorded.
    pub recorded_at: Instant,
    /// Who recorded it.
    pub recorded_by: Person,
    /// What happened.
    pub event: Event,
    /// The record on paper from which it was copied, if it was.
    pub copied_from: Option<Box<CopiedFrom>>,
    /// What it corrects.
    pub correction: Option<Box<Correction>>,
    /// Its hash, for sealing the next one.
    pub hash: Hash,
}

impl From<&Entry> for Kept {
    fn from(entry: &Entry) -> Kept {
        let draft = &entry.draft;
        Kept {
            id: draft.id,
            seq: entry.seq,
            on: draft.on,
            at: draft.at,
            recorded_at: entry.recorded_at,
            recorded_by: draft.recorded_by.clone(),
            event: draft.event.clone(),
            copied_from: draft.copied_from.clone(),
            correction: draft.correction.clone(),
            hash: entry.hash,
        }
    }
}
