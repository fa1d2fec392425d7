//! How long a carrier must or may stay, which may depend on brood.

use super::term::Term;
use super::terms::TermValue;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::rules::leaflet::rule::BroodState;

/// A length of stay, in days, that may depend on brood.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stay {
    /// The stay with brood absent or at its lowest.
    pub absent_or_lowest: TermValue<u16>,
    /// The stay with brood present.
    pub present: TermValue<u16>,
}

impl Stay {
    /// The least stay from the statements for each state of brood. More brood never shortens it.
    pub(super) fn least_of(absent: Option<Sourced<u16>>, present: Option<Sourced<u16>>) -> Stay {
        let shorter = |(absent, present): &(Sourced<u16>, Sourced<u16>)| present.value < absent.value;
        let both = absent.zip(present).filter(shorter);
        let with_brood = if absent.is_some() { Term::StayMinWithBrood } else { Term::StayMin };
        Stay {
            absent_or_lowest: Fact::stated(absent, Term::StayMin),
            present: Fact::stated(both.map(|(absent, _)| absent).or(present), with_brood),
        }
    }

    /// The longest stay from the statements for each state of brood.
    pub(super) fn longest_of(absent: Option<Sourced<u16>>, present: Option<Sourced<u16>>) -> Stay {
        let stated = |stay| Fact::stated(stay, Term::StayMax);
        Stay { absent_or_lowest: stated(absent), present: stated(present) }
    }

    /// The length for a state of brood.
    #[must_use]
    pub const fn under(&self, brood: BroodState) -> &TermValue<u16> {
        match brood {
            BroodState::AbsentOrLowest => &self.absent_or_lowest,
            BroodState::Present => &self.present,
        }
    }

    /// The stated lengths, for any state of brood.
    pub fn stated(&self) -> impl Iterator<Item = &Sourced<u16>> + Clone {
        [self.absent_or_lowest.known(), self.present.known()].into_iter().flatten()
    }

    /// The shorter and the longer length.
    #[must_use]
    pub fn bounds(&self) -> Option<(u16, u16)> {
        let lengths = self.stated().map(|fact| fact.value);
        lengths.clone().min().zip(lengths.max())
    }

    /// The length for the brood that was seen. If none was seen, the length with brood present, which is the longer
    /// one: a length stated only without brood says nothing about the length with brood.
    #[must_use]
    pub const fn least(&self, seen: Option<BroodState>) -> &TermValue<u16> {
        match seen {
            Some(brood) => self.under(brood),
            None => &self.present,
        }
    }

    /// The length for the brood that was seen; the shorter one if none was seen.
    #[must_use]
    pub fn most(&self, seen: Option<BroodState>) -> Fact<u16, Term> {
        let stated = match seen {
            Some(brood) => self.under(brood).known().map(|fact| fact.value),
            None => self.bounds().map(|(shorter, _)| shorter),
        };
        Fact::stated(stated, Term::StayMax)
    }

    /// The length for the brood that was seen; the longer one if none was seen or none is stated for it. A longer stay is too
    /// long in any case.
    #[must_use]
    pub(crate) fn most_in_any_case(&self, seen: Option<BroodState>) -> Option<&Sourced<u16>> {
        let longest = || self.stated().max_by_key(|fact| fact.value);
        seen.and_then(|brood| self.under(brood).known()).or_else(longest)
    }

    /// Whether different things are stated with brood and without: another length, or the same one from another source.
    #[must_use]
    pub(super) fn may_turn_on_brood(&self) -> bool {
        self.absent_or_lowest != self.present
    }

    /// Whether the length depends on brood.
    #[must_use]
    pub(crate) fn depends_on_brood(&self) -> bool {
        self.bounds().is_some_and(|(shorter, longer)| shorter != longer)
            || self.absent_or_lowest.is_known() != self.present.is_known()
    }
}

/// When a carrier may be out: after its least stay, and no earlier than the day after its last dose, since a carrier
/// never comes out on the day it goes in.
pub(super) fn may_be_out<T: Ord>(stayed: T, after_last_dose: T) -> T {
    stayed.max(after_last_dose)
}
