//! What does not fit about an entry of a journal, or a row of a database that keeps one. The sentences are made elsewhere.

use crate::basics::misread::Misread;
use crate::journal::event::BodyError;
use crate::journal::places::Places;
use crate::journal::seal::Hash;

/// What does not fit about an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Misfit {
    /// It does not stand next to the entry before it.
    OutOfPlace {
        /// The place of the entry before it.
        last: u64,
        /// The place that it would have to have.
        next: u64,
    },
    /// Its `prev` is not the hash of the entry before it.
    OtherPrev,
    /// Its content does not give its hash.
    Changed,
    /// Its body is not there, and no entry says that it was moved into an archive.
    BodyGone,
    /// It tells of an archive, but names more or fewer entries than it promises.
    NumberDiffers,
    /// It tells of an archive that this entry does not bear out.
    NotBorneOut {
        /// The place of that entry.
        seq: u64,
    },
    /// It tells of an archive, and what stays of the entries does not give its digest.
    DigestDiffers {
        /// The places of the entries.
        places: Places,
    },
    /// It would tell of an archive, but its body does not.
    NoArchive,
    /// Another entry is recorded in its place.
    OtherEntry,
    /// The text of its body says something else than the entry.
    OtherMeaning,
    /// It would move entries into an archive, but says nothing of one.
    MovesNothing,
    /// It promises more or fewer contents of documents than go.
    ContentsDiffer,
    /// There is no entry at this place before it.
    NothingToMove {
        /// The place.
        seq: u64,
    },
    /// Its body went before.
    WentBefore,
    /// There is no document of this hash to move.
    NoDocument {
        /// The hash.
        hash: Hash,
    },
    /// A column of its row that would be left out is empty.
    EmptyColumn {
        /// The column.
        column: OptionalColumn,
    },
    /// Of `corrects` and `reason` it has one without the other.
    HalfACorrection,
    /// Its role is none that this program knows.
    UnknownRole {
        /// The role.
        role: String,
    },
    /// It has one of the columns that say what it was copied from without the other.
    HalfCopied,
    /// A column has another number of bytes.
    Bytes {
        /// The column.
        column: &'static str,
        /// How many it has.
        found: usize,
        /// How many it would have.
        wanted: usize,
    },
    /// A column is not text.
    NotText {
        /// The column.
        column: &'static str,
    },
    /// A column cannot be read.
    Misread {
        /// The column.
        column: &'static str,
        /// Why.
        why: Misread,
    },
    /// Its kind is none that this program knows.
    UnknownKind {
        /// The kind.
        kind: String,
    },
    /// Its body does not fit its kind.
    Body(BodyError),
    /// Its place cannot be one.
    Place {
        /// The place.
        seq: i64,
    },
}

/// A column that is left out where nothing was noted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OptionalColumn {
    /// The time of day.
    HappenedAt,
    /// The entry that is corrected.
    Corrects,
}
