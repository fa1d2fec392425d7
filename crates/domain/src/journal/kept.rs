//! An entry as the fold takes it in.

use serde::Serialize;

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
    /// The length of the text of its body, in bytes, by which it is reckoned what it takes in memory.
    pub text_bytes: usize,
}

/// An entry that was recorded at an earlier time than the entry before it: the clock of the machine was wrong at one of the two.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct ClockSetBack {
    /// Its position in the journal.
    pub seq: u64,
    /// When it was recorded, by the clock of the machine.
    pub recorded_at: Instant,
    /// When the entry before it was recorded.
    pub before: Instant,
}

impl Kept {
    /// What the clock did between an entry, recorded at `before`, and this one, which follows it. Differences of up to a minute do
    /// not count; clocks are corrected by that much unasked.
    #[must_use]
    pub fn clock_set_back(&self, before: Instant) -> Option<ClockSetBack> {
        let Kept { seq, recorded_at, .. } = *self;
        before.is_set_back_by(recorded_at).then_some(ClockSetBack { seq, recorded_at, before })
    }
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
            text_bytes: draft.body.len(),
        }
    }
}
