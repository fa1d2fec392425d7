//! Why an entry, or a line of a file with entries, cannot be read. The sentences are made elsewhere.

use super::event::Kind;
use super::seal::Hash;
use crate::basics::misread::Misread;
use crate::basics::node::Reading;

/// What is wrong with an entry that cannot be read, and where.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{pointer}: {what:?}")]
pub struct EntryFault {
    /// JSON pointer into the entry; empty for the entry as a whole.
    pub pointer: String,
    /// What is wrong.
    pub what: Unreadable,
}

/// What is wrong with an entry or a line that cannot be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unreadable {
    /// It is not UTF-8.
    NotText,
    /// What stands around the body cannot be read.
    Envelope {
        /// Why.
        why: Misread,
        /// The character near which that was found, counted from 1; absent where none is known.
        near: Option<usize>,
    },
    /// The body cannot be read.
    Body {
        /// The kind of entry.
        kind: Kind,
        /// Why.
        why: Misread,
    },
    /// There is no such kind of entry.
    UnknownKind {
        /// The kind as it is written.
        written: String,
        /// The kind that is written much like it.
        near: Option<Kind>,
    },
    /// It has no id.
    NoId,
    /// It corrects another, but gives no reason.
    NoReason,
    /// A text contains U+0000.
    NullCharacter,
    /// It gives a reason, but corrects none.
    NothingCorrected,
    /// It was copied, but from what is not said.
    CopiedFromNothing,
    /// It was copied, but when it was written there is not said.
    NotSaidWhenWritten,
    /// It strikes out, but does not name what.
    NothingStruckOut,
    /// It names an entry by its number where no journal is at hand in which to look it up.
    NumberedNowhere,
    /// The journal has no entry with the number by which it names one.
    NoEntryNumbered {
        /// The number.
        number: u64,
        /// The number of the last entry.
        last: u64,
    },
    /// It is not written as it was sealed.
    OtherSpelling,
    /// The first line of a file.
    Header {
        /// Of which file.
        of: FileKind,
        /// What is wrong with it.
        what: HeaderFault,
    },
    /// A line with the content of a document.
    Content(ContentFault),
}

/// A file of entries.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FileKind {
    /// A journal file.
    Journal,
    /// An archive file.
    Archive,
}

/// What is wrong with the first line of a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum HeaderFault {
    /// It is no such line.
    NotAHeader,
    /// It has another version of the format.
    Version {
        /// The version.
        found: u32,
        /// The version that this program reads.
        known: u32,
    },
    /// It cannot be read.
    Misread {
        /// Why.
        why: Misread,
        /// The character near which that was found, counted from 1; absent where none is known.
        near: Option<usize>,
    },
    /// It is sealed, but does not say how many entries follow.
    NoNumber,
    /// It is of drafts, but promises documents.
    ContentsInDrafts,
}

/// What is wrong with a line with the content of a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ContentFault {
    /// It cannot be read.
    Misread {
        /// Why.
        why: Misread,
        /// The character near which that was found, counted from 1; absent where none is known.
        near: Option<usize>,
    },
    /// The bytes are not base64.
    NotBase64,
    /// It has more or fewer bytes than are promised.
    OtherLength {
        /// How many it has.
        found: usize,
        /// How many are promised.
        promised: u64,
    },
    /// It is empty, or too large.
    Size {
        /// How many bytes it has.
        bytes: u64,
    },
    /// The bytes do not give the hash.
    OtherHash {
        /// The hash that is promised.
        promised: Hash,
    },
    /// It is not written as it was exported.
    OtherSpelling,
}

impl EntryFault {
    pub(super) fn at(pointer: &str, what: Unreadable) -> EntryFault {
        EntryFault { pointer: pointer.to_owned(), what }
    }

    /// Whether another fault is about the same place, or says the same of the whole. Two readers may say it otherwise.
    pub(super) fn is_the_same(&self, other: &EntryFault) -> bool {
        let same = match (&self.what, &other.what) {
            (Unreadable::Envelope { why, .. }, Unreadable::Envelope { why: other, .. }) => why == other,
            (one, other) => one == other,
        };
        self.pointer == other.pointer && (same || !self.pointer.is_empty())
    }
}

/// A fault in a text that is read as a whole, and the character near which it was found.
pub(super) struct TextFault {
    pub(super) found: Reading,
    pub(super) near: Option<usize>,
}

impl From<TextFault> for EntryFault {
    fn from(TextFault { found, near }: TextFault) -> EntryFault {
        EntryFault { pointer: found.pointer, what: Unreadable::Envelope { why: found.what, near } }
    }
}
