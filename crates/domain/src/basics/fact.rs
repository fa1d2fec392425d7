//! A fact, or what is missing to know it.

use serde::{Serialize, Serializer};

/// Something that is known, or what is missing to know it.
// Neither `Default` nor an order: what is not known is no number and no day, and neither more nor less than what is known.
// Whoever reads one names both arms, or says with `known` that a blank is shown as a blank.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fact<T, Missing> {
    /// This is known.
    Known(T),
    /// It is not known, for want of this.
    NotKnown(Missing),
}

impl<T, Missing: Copy> Fact<T, Missing> {
    /// What somebody stated, if anybody did.
    pub(crate) fn stated(stated: Option<T>, missing: Missing) -> Fact<T, Missing> {
        match stated {
            Some(value) => Fact::Known(value),
            None => Fact::NotKnown(missing),
        }
    }

    /// What is known, for a reader who shows a blank where nothing is.
    #[must_use]
    pub const fn known(&self) -> Option<&T> {
        match self {
            Fact::Known(value) => Some(value),
            Fact::NotKnown(_) => None,
        }
    }

    /// Writes what is known, or null where nothing is, for a reader of data who has no words for what is missing.
    ///
    /// # Errors
    /// What the serializer fails with.
    pub fn or_null<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error>
    where
        T: Serialize,
    {
        self.known().serialize(to)
    }

    /// What is missing.
    #[must_use]
    pub const fn missing(&self) -> Option<Missing> {
        match self {
            Fact::Known(_) => None,
            Fact::NotKnown(missing) => Some(*missing),
        }
    }

    /// Whether it is known.
    #[must_use]
    pub const fn is_known(&self) -> bool {
        self.known().is_some()
    }

    /// The same of something that follows from it.
    pub fn map<U>(self, follows: impl FnOnce(T) -> U) -> Fact<U, Missing> {
        match self {
            Fact::Known(value) => Fact::Known(follows(value)),
            Fact::NotKnown(missing) => Fact::NotKnown(missing),
        }
    }

    /// Something that follows from it and from what may not be known in turn.
    pub fn and_then<U>(self, follows: impl FnOnce(T) -> Fact<U, Missing>) -> Fact<U, Missing> {
        match self {
            Fact::Known(value) => follows(value),
            Fact::NotKnown(missing) => Fact::NotKnown(missing),
        }
    }

    /// It, or else what another source says of the same.
    pub(crate) fn or_else(self, other: impl FnOnce() -> Fact<T, Missing>) -> Fact<T, Missing> {
        match self {
            Fact::Known(value) => Fact::Known(value),
            Fact::NotKnown(_) => other(),
        }
    }

    /// The same, with what is known borrowed.
    pub const fn as_ref(&self) -> Fact<&T, Missing> {
        match self {
            Fact::Known(value) => Fact::Known(value),
            Fact::NotKnown(missing) => Fact::NotKnown(*missing),
        }
    }
}
