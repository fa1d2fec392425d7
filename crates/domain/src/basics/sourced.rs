//! A value with its origin: who says it, and how well it is established.

use super::confidence::Confidence;
use super::entry_id::EntryId;

/// Who said it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Authority {
    /// A vet's prescription.
    Prescription(EntryId),
    /// The keeper, reading the leaflet of the lot.
    Reading(EntryId),
    /// The keeper, reading the pack when giving it.
    Pack(EntryId),
    /// The built-in leaflet: the index of the rule in it.
    Leaflet(usize),
    /// The keeper, declaring terms for a medicine.
    Declared(EntryId),
}

impl Authority {
    /// The entry in which it was said; none for the built-in leaflet.
    #[must_use]
    pub const fn entry(self) -> Option<EntryId> {
        match self {
            Authority::Prescription(entry)
            | Authority::Reading(entry)
            | Authority::Pack(entry)
            | Authority::Declared(entry) => Some(entry),
            Authority::Leaflet(_) => None,
        }
    }
}

/// A term in use: its value, who said it, and whether it can carry a yes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sourced<T> {
    /// The value in use.
    pub value: T,
    /// Who said it.
    pub authority: Authority,
    /// How well it is established; what people state in entries counts as a document.
    pub confidence: Confidence,
    /// A stricter value that stands documented in the built-in leaflet and was overruled. It is used all the same.
    pub looser_than: Option<T>,
    /// A looser value that was read after the treatment and is not used: the entry that states it.
    pub set_aside: Option<EntryId>,
}

impl<T> Sourced<T> {
    /// The same fact with another value.
    pub(crate) fn map<U>(self, value: impl Fn(T) -> U) -> Sourced<U> {
        let Sourced { value: known, authority, confidence, looser_than, set_aside } = self;
        Sourced { value: value(known), authority, confidence, looser_than: looser_than.map(value), set_aside }
    }

    /// Whether it rests on a document and so can carry a yes.
    #[must_use]
    pub fn is_documented(&self) -> bool {
        self.confidence == Confidence::Document
    }
}
