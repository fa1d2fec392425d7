//! The terms that rule one course, each with who said it and how well it is established.
//!
//! Authority, highest first: a vet's prescription; what the keeper read on the leaflet of the lot, or on the pack when
//! giving it; the built-in leaflet; terms the keeper declared for a medicine. Topic by topic, the highest one that
//! speaks is used, and lower ones never overrule it. Among equals the stricter one is used.

use std::cmp::Ordering;
use std::sync::Arc;

use super::resolve::{BuiltIn, Resolver};
use crate::calendar::Day;
use crate::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::StatedTerms;
use crate::leaflet::rule::BroodState;
use crate::leaflet::{Confidence, Leaflet, Release, Rule, Says, Topic};
use crate::words::{Method, RemovalNeed, SupersDuring};

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

/// A term in use: its value, who said it, and whether it can carry a yes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fact<T> {
    /// The value in use.
    pub value: T,
    /// Who said it.
    pub authority: Authority,
    /// How well it is established; what people state in entries counts as a document.
    pub confidence: Confidence,
    /// A stricter value that stands documented in the built-in leaflet and was overruled. It is used all the same.
    pub looser_than: Option<T>,
}

impl<T> Fact<T> {
    /// Whether it rests on a document and so can carry a yes.
    #[must_use]
    pub fn is_documented(&self) -> bool {
        self.confidence == Confidence::Document
    }
}

/// Doses of a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Doses {
    /// How many.
    pub count: u8,
    /// Fewest days from one to the next.
    pub interval_min_days: Option<u16>,
    /// Most days from one to the next.
    pub interval_max_days: Option<u16>,
}

/// A length of stay that may depend on brood.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Stay {
    /// With brood absent or at its lowest.
    pub absent_or_lowest: Option<Fact<u16>>,
    /// With brood present.
    pub present: Option<Fact<u16>>,
}

impl Stay {
    /// The length under a state of brood.
    #[must_use]
    pub fn under(&self, brood: BroodState) -> Option<&Fact<u16>> {
        match brood {
            BroodState::AbsentOrLowest => self.absent_or_lowest.as_ref(),
            BroodState::Present => self.present.as_ref(),
        }
    }

    /// The shorter and the longer length, without regard to brood.
    #[must_use]
    pub fn bounds(&self) -> Option<(u16, u16)> {
        let lengths = [self.absent_or_lowest, self.present];
        let lengths = lengths.iter().flatten().map(|fact| fact.value);
        lengths.clone().min().zip(lengths.max())
    }

    /// Whether brood makes a difference.
    #[must_use]
    pub fn depends_on_brood(&self) -> bool {
        self.bounds().is_some_and(|(shorter, longer)| shorter != longer)
            || self.absent_or_lowest.is_some() != self.present.is_some()
    }
}

/// The terms that rule one course. What is absent nobody has stated: it is not known, and never taken for zero.
#[derive(Debug, Clone)]
pub struct Terms {
    /// The built-in leaflet of the medicine, if it has one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// May honey supers be on while it is in.
    pub supers_during: Option<Fact<SupersDuring>>,
    /// Withdrawal period for honey, in days.
    pub withdrawal: Option<Fact<u16>>,
    /// Days between removal and supers.
    pub wait: Option<Fact<u16>>,
    /// Whether `wait` was taken from a stated withdrawal period; see [`Terms::of`].
    pub wait_within_withdrawal: bool,
    /// Whether it has to be taken out.
    pub removal: Option<Fact<RemovalNeed>>,
    /// Fewest days it must stay.
    pub stay_min: Stay,
    /// Most days it may stay.
    pub stay_max: Stay,
    /// Doses of a course.
    pub doses: Option<Fact<Doses>>,
}

/// What people stated about one course, highest authority first.
pub(super) struct Stated<'h> {
    pub(super) prescription: Option<(EntryId, &'h StatedTerms)>,
    /// Leaflet readings of the lots given, oldest first.
    pub(super) readings: Vec<(&'h Record, &'h StatedTerms)>,
    /// Withdrawal periods read on the pack when giving a dose.
    pub(super) packs: Vec<(EntryId, u16)>,
    pub(super) declared: Option<(EntryId, &'h StatedTerms)>,
}

impl Terms {
    /// Works the terms of a course out. Leaflet rules are those in force on the day of placing.
    ///
    /// Where the law knows a withdrawal period, that period is the whole time between the last administration and the
    /// taking of honey. So when a person with the pack in hand states it, and no longer wait is known from anywhere,
    /// the stated period covers the wait too: a keeper whose statutory record is complete is asked for nothing more.
    /// A leaflet without any withdrawal rule comes from a country whose labels state a wait instead: there the wait
    /// itself must be read.
    pub(super) fn of(
        leaflet: Option<Arc<Leaflet>>,
        placed: Day,
        method: Option<&Method>,
        stated: &Stated<'_>,
    ) -> Terms {
        let built_in = BuiltIn { leaflet: leaflet.as_deref(), placed, method };
        let resolve = Resolver { stated, built_in: &built_in };
        let withdrawal_on_packs: Vec<_> =
            stated.packs.iter().map(|(entry, days)| (*days, Authority::Pack(*entry))).collect();
        let stay = |topic: Topic, brood: BroodState, from_entry: DaysStated, stricter: DaysOrder| {
            resolve.topic(
                |terms| from_entry(terms, brood),
                &[],
                |rule| match &rule.says {
                    Says::StayMin { days, brood: of } | Says::StayMax { days, brood: of } => {
                        of.is_none_or(|of| of == brood).then_some(*days)
                    }
                    _ => None,
                },
                topic,
                stricter,
            )
        };
        let mut stay_min = Stay {
            absent_or_lowest: stay(Topic::StayMin, BroodState::AbsentOrLowest, least, longer),
            present: stay(Topic::StayMin, BroodState::Present, least, longer),
        };
        // A stated minimum without a word on brood holds with brood too, where nothing says otherwise.
        stay_min.present = stay_min.present.or(stay_min.absent_or_lowest);
        let withdrawal = resolve.topic(
            |terms| terms.withdrawal_days,
            &withdrawal_on_packs,
            |rule| match rule.says {
                Says::Withdrawal { days } => Some(days),
                _ => None,
            },
            Topic::Withdrawal,
            longer,
        );
        let wait = resolve.topic(
            |terms| terms.wait_after_removal_days,
            &[],
            |rule| match rule.says {
                Says::WaitAfterRemoval { days } => Some(days),
                _ => None,
            },
            Topic::WaitAfterRemoval,
            longer,
        );
        let covering = covering_wait(leaflet.as_deref(), withdrawal.as_ref(), wait.as_ref());
        Terms {
            supers_during: resolve.topic(
                |terms| terms.supers_during,
                &[],
                |rule| match rule.says {
                    Says::SupersDuring { value } => Some(value),
                    _ => None,
                },
                Topic::SupersDuring,
                |a, b| freedom(*b).cmp(&freedom(*a)),
            ),
            withdrawal,
            wait_within_withdrawal: covering.is_some(),
            wait: covering.or(wait),
            removal: resolve.topic(
                |terms| terms.removal,
                &[],
                |rule| match rule.says {
                    Says::Removal { value } => Some(value),
                    _ => None,
                },
                Topic::Removal,
                |a, b| (*a == RemovalNeed::Needed).cmp(&(*b == RemovalNeed::Needed)),
            ),
            stay_max: Stay {
                absent_or_lowest: stay(Topic::StayMax, BroodState::AbsentOrLowest, most, shorter),
                present: stay(Topic::StayMax, BroodState::Present, most, shorter),
            },
            stay_min,
            doses: resolve.topic(
                |terms| {
                    terms.doses.map(|count| Doses { count, interval_min_days: None, interval_max_days: None })
                },
                &[],
                |rule| match rule.says {
                    Says::Doses { count, interval_min_days, interval_max_days } => {
                        Some(Doses { count, interval_min_days, interval_max_days })
                    }
                    _ => None,
                },
                Topic::Doses,
                |a, b| a.count.cmp(&b.count),
            ),
            leaflet,
        }
    }

    /// Whether the medicine works on from inside the hive, as far as anybody has said.
    #[must_use]
    pub fn release(&self) -> Option<Release> {
        if let Some(leaflet) = &self.leaflet {
            return Some(leaflet.release);
        }
        let spent_at_once = self.removal.as_ref().is_some_and(|fact| fact.value == RemovalNeed::NotNeeded)
            && self.stay_min.bounds().is_none()
            && self.stay_max.bounds().is_none();
        match (spent_at_once, &self.removal) {
            (true, _) => Some(Release::Single),
            (false, Some(_)) => Some(Release::Slow),
            (false, None) => None,
        }
    }

    /// The leaflet rule behind a fact, if the leaflet said it.
    #[must_use]
    pub fn rule<T>(&self, fact: &Fact<T>) -> Option<&Rule> {
        match fact.authority {
            Authority::Leaflet(index) => self.leaflet.as_ref()?.rules.get(index),
            _ => None,
        }
    }
}

/// A wait of zero days that rests on a stated withdrawal period, where that may be.
fn covering_wait(
    leaflet: Option<&Leaflet>,
    withdrawal: Option<&Fact<u16>>,
    wait: Option<&Fact<u16>>,
) -> Option<Fact<u16>> {
    let stated = withdrawal.filter(|fact| !matches!(fact.authority, Authority::Leaflet(_)))?;
    let no_longer_wait = wait.is_none_or(|fact| fact.value == 0 && !fact.is_documented());
    let has_withdrawal_rule =
        |leaflet: &Leaflet| leaflet.rules.iter().any(|rule| rule.says.topic() == Topic::Withdrawal);
    (no_longer_wait && leaflet.is_none_or(has_withdrawal_rule)).then_some(Fact {
        value: 0,
        looser_than: None,
        ..*stated
    })
}

/// Picks the days that somebody stated for a state of brood.
type DaysStated = fn(&StatedTerms, BroodState) -> Option<u16>;
/// Orders days by strictness.
type DaysOrder = fn(&u16, &u16) -> Ordering;

#[expect(clippy::trivially_copy_pass_by_ref, reason = "fits the order of every other topic")]
fn longer(a: &u16, b: &u16) -> Ordering {
    a.cmp(b)
}

#[expect(clippy::trivially_copy_pass_by_ref, reason = "fits the order of every other topic")]
fn shorter(a: &u16, b: &u16) -> Ordering {
    b.cmp(a)
}

fn least(terms: &StatedTerms, brood: BroodState) -> Option<u16> {
    match brood {
        BroodState::AbsentOrLowest => terms.stay_min_days,
        BroodState::Present => terms.stay_min_days_with_brood,
    }
}

fn most(terms: &StatedTerms, _: BroodState) -> Option<u16> {
    terms.stay_max_days
}

/// How much freedom a statement on supers leaves.
const fn freedom(value: SupersDuring) -> u8 {
    match value {
        SupersDuring::Off => 0,
        SupersDuring::OnNoHarvest => 1,
        SupersDuring::On => 2,
    }
}
