//! The terms that rule one course, each with who said it and how well it is established.
//!
//! Authority, highest first: a vet's prescription; what the keeper read on the leaflet of the lot, or on the pack when
//! giving it; the built-in leaflet; terms the keeper declared for a medicine. Topic by topic, the highest one that
//! speaks is used, and lower ones never overrule it. Among equals the stricter one is used.

use std::cmp::Ordering;
use std::sync::Arc;

use super::resolve::{BuiltIn, Reading, Resolver};
use super::topics::{doses, flow_during, removal, supers_during, wait, withdrawal};
use crate::calendar::Day;
use crate::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::StatedTerms;
use crate::leaflet::rule::BroodState;
use crate::leaflet::{Confidence, Leaflet, Release, Rule, Says, Topic};
use crate::words::{Method, Permission, RemovalNeed, SupersDuring};

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
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// The built-in leaflet of the medicine, if it has one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// May honey supers be on while it is in.
    pub supers_during: Option<Fact<SupersDuring>>,
    /// May it be used in a nectar flow.
    pub flow_during: Option<Fact<Permission>>,
    /// Withdrawal period for honey, in days.
    pub withdrawal: Option<Fact<u16>>,
    /// Days between removal and supers.
    pub wait: Option<Fact<u16>>,
    /// Whether `wait` rests on a stated withdrawal period, which is the whole time after the treatment.
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

/// What people stated about one course.
pub(super) struct Stated<'h> {
    /// The prescriptions that doses were given under.
    pub(super) prescriptions: Vec<(EntryId, &'h StatedTerms)>,
    /// Whether every dose was given under one.
    pub(super) all_prescribed: bool,
    /// The lots given, each with what was read of it.
    pub(super) lots: Vec<LotSaid<'h>>,
    /// The terms declared for the medicine.
    pub(super) declared: Option<(EntryId, &'h StatedTerms)>,
}

/// What people read of one lot.
#[derive(Default)]
pub(super) struct LotSaid<'h> {
    /// The revision of the label on its pack, if it was noted.
    pub(super) revision: Option<&'h str>,
    /// Readings of its leaflet, in the order in which they were made.
    pub(super) readings: Vec<(&'h Record, &'h StatedTerms)>,
    /// Withdrawal periods read on its pack when giving a dose.
    pub(super) packs: Vec<(EntryId, u16)>,
}

/// The built-in leaflet of a medicine, as far as it is known.
pub(super) enum Named {
    /// The medicine names none. Whether the holding's jurisdiction knows withdrawal periods, as its leaflets show.
    None {
        /// Its leaflets state them.
        knows_withdrawal: bool,
    },
    /// It names one that is not known here, or the holding's jurisdiction is not known.
    NotFound,
    /// This one.
    Found(Arc<Leaflet>),
}

impl Terms {
    /// Works the terms of a course out. Leaflet rules are those in force on the day of placing.
    ///
    /// Where the law knows a withdrawal period, that period is the whole time between the last administration and the
    /// taking of honey. So when a person with the pack in hand states it, and no longer wait is known from anywhere,
    /// the stated period covers the wait too: a keeper whose statutory record is complete is asked for nothing more.
    /// A leaflet without any withdrawal rule comes from a country whose labels state a wait instead: there the wait
    /// itself must be read.
    pub(super) fn of(named: &Named, placed: Day, method: Option<&Method>, stated: &Stated<'_>) -> Terms {
        let leaflet = match named {
            Named::Found(leaflet) => Some(leaflet),
            Named::None { .. } | Named::NotFound => None,
        };
        let built_in = BuiltIn { leaflet: leaflet.map(AsRef::as_ref), placed, method };
        let resolver = Resolver { stated, built_in: &built_in };
        let stay = |topic: Topic, brood: BroodState, days: DaysStated, order: DaysOrder| {
            let stated = |terms: &StatedTerms| days(terms, brood);
            let rule = |rule: &Rule| match &rule.says {
                Says::StayMin { days, brood: of } | Says::StayMax { days, brood: of } => {
                    of.is_none_or(|of| of == brood).then_some(*days)
                }
                _ => None,
            };
            Reading { topic, stated, rule, order }.resolve(&resolver)
        };
        // A stated minimum without a word on brood holds with brood too, unless the leaflet makes a difference there.
        let with_brood: DaysStated = if built_in.distinguishes_brood() { least } else { least_any };
        let withdrawal = withdrawal().resolve_with(&resolver, |lot| {
            lot.packs.iter().map(|(entry, days)| (*days, Authority::Pack(*entry))).collect()
        });
        let wait = wait().resolve(&resolver);
        let covering = covering_wait(named, stated, withdrawal.as_ref(), wait.as_ref());
        let intervals = doses(None).built_in(&built_in, None).map(|fact| fact.value);
        Terms {
            supers_during: supers_during().resolve(&resolver),
            flow_during: flow_during().resolve(&resolver),
            withdrawal,
            wait_within_withdrawal: covering.is_some(),
            wait: covering.or(wait),
            removal: removal().resolve(&resolver),
            stay_min: Stay {
                absent_or_lowest: stay(Topic::StayMin, BroodState::AbsentOrLowest, least, longer),
                present: stay(Topic::StayMin, BroodState::Present, with_brood, longer),
            },
            stay_max: Stay {
                absent_or_lowest: stay(Topic::StayMax, BroodState::AbsentOrLowest, most, shorter),
                present: stay(Topic::StayMax, BroodState::Present, most, shorter),
            },
            doses: doses(intervals).resolve(&resolver),
            leaflet: leaflet.cloned(),
        }
    }

    /// Whether the medicine works on from inside the hive, as far as anybody has said. People go before the leaflet.
    #[must_use]
    pub fn release(&self) -> Option<Release> {
        match &self.removal {
            Some(fact) if fact.value == RemovalNeed::NothingStays => Some(Release::Single),
            Some(fact) if !matches!(fact.authority, Authority::Leaflet(_)) => Some(Release::Slow),
            _ => self.leaflet.as_ref().map(|leaflet| leaflet.release),
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
    named: &Named,
    stated: &Stated<'_>,
    withdrawal: Option<&Fact<u16>>,
    wait: Option<&Fact<u16>>,
) -> Option<Fact<u16>> {
    let withdrawal = withdrawal.filter(|fact| !matches!(fact.authority, Authority::Leaflet(_)))?;
    let states_it = |terms: &StatedTerms| terms.withdrawal_days.is_some();
    let prescribed = stated.all_prescribed && stated.prescriptions.iter().all(|(_, terms)| states_it(terms));
    let read =
        |lot: &LotSaid<'_>| !lot.packs.is_empty() || lot.readings.iter().any(|(_, terms)| states_it(terms));
    let declared = || stated.declared.is_some_and(|(_, terms)| states_it(terms));
    let by_people = prescribed || stated.lots.iter().all(|lot| read(lot) || declared());
    let no_longer_wait = wait.is_none_or(|fact| fact.value == 0 && !fact.is_documented());
    let knows_withdrawal = match named {
        Named::None { knows_withdrawal } => *knows_withdrawal,
        // What is not found may state a wait.
        Named::NotFound => false,
        Named::Found(leaflet) => leaflet.rules.iter().any(|rule| rule.says.topic() == Topic::Withdrawal),
    };
    (by_people && no_longer_wait && knows_withdrawal).then_some(Fact {
        value: 0,
        looser_than: None,
        ..*withdrawal
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

fn least_any(terms: &StatedTerms, brood: BroodState) -> Option<u16> {
    least(terms, brood).or(terms.stay_min_days)
}

fn most(terms: &StatedTerms, _: BroodState) -> Option<u16> {
    terms.stay_max_days
}
