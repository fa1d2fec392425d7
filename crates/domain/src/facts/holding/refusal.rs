//! The refusal of an entry.

use super::Record;
use super::untrue::{Corrections, Untrue};

/// Why an entry cannot be true. The error text is for logs; users see a message from the message file.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{} at `{pointer}`", .why.as_str())]
pub struct Refusal {
    /// JSON pointer into the entry.
    pub pointer: String,
    /// The reason.
    pub why: Untrue,
}

impl Refusal {
    pub(super) fn at(pointer: impl Into<String>, why: impl Into<Untrue>) -> Refusal {
        Refusal { pointer: pointer.into(), why: why.into() }
    }

    /// The same refusal, if a correction makes another entry impossible.
    pub(super) fn because_of(self, other: &Record) -> Refusal {
        let (kind, on, entry) = (other.event.kind(), other.on, other.id);
        Refusal::at("/corrects", Corrections::OfAnother { kind, on, entry, why: Box::new(self.why) })
    }
}
