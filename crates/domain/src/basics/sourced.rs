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
    /// The built-in leaflet; the index of the rule in it.
    Leaflet(usize),
    /// The keeper, declaring terms for a medicine.
    Declared(EntryId),
}

impl Authority {
    /// The entry that says it; none for the built-in leaflet.
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

    /// The index of the rule in the built-in leaflet; none if a person says it.
    #[must_use]
    pub const fn rule(self) -> Option<usize> {
        match self {
            Authority::Leaflet(index) => Some(index),
            Authority::Prescription(_)
            | Authority::Reading(_)
            | Authority::Pack(_)
            | Authority::Declared(_) => None,
        }
    }
}

/// A value that applies: who said it, and whether it can support a yes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sourced<T> {
    /// The value that applies.
    pub value: T,
    /// Who said it.
    pub authority: Authority,
    /// How well it is established. Statements in entries count as a document.
    pub confidence: Confidence,
    /// A stricter documented value of the built-in leaflet, which this value overrules.
    pub looser_than: Option<T>,
    /// The entry that states a looser value, read after the treatment and therefore not used.
    pub set_aside: Option<EntryId>,
}

impl<T> Sourced<T> {
    /// The same with another value.
    pub(crate) fn map<U>(self, value: impl Fn(T) -> U) -> Sourced<U> {
        let Sourced { value: known, authority, confidence, looser_than, set_aside } = self;
        Sourced { value: value(known), authority, confidence, looser_than: looser_than.map(value), set_aside }
    }

    /// Whether it rests on a document, and so can support a yes.
    #[must_use]
    pub fn is_documented(&self) -> bool {
        self.confidence == Confidence::Document
    }
}
