//! The terms that apply to one course, each with who said it and how well it is established.
//!
//! Authority, highest first: a vet's prescription; what the keeper read on the leaflet of the lot, or on the pack when giving
//! it; the built-in leaflet; terms the keeper declared for a medicine. On each topic the highest authority that says anything
//! applies, and lower ones never overrule it. Among equals the stricter value applies.

use std::cmp::Ordering;
use std::sync::Arc;

use serde::Serialize;

use super::resolve::{BuiltIn, Reading, Resolver};
use super::topics::{doses, flow_before, flow_during, removal, supers_during, wait, withdrawal};
use crate::basics::calendar::Day;
use crate::basics::sourced::{Authority, Sourced};
use crate::basics::topic::Topic;
use crate::basics::words::{Method, Permission, RemovalNeed, SupersDuring};
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::StatedTerms;
use crate::rules::leaflet::rule::BroodState;
use crate::rules::leaflet::{Leaflet, Release, Rule, Says, WithdrawalPeriod};

/// Whether use right before a nectar flow is forbidden.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FlowBefore {
    /// It is, without a stated number of days.
    Barred,
    /// It is for this many days before a flow; for none if 0.
    BarredDays(u16),
}

impl FlowBefore {
    /// How many days, if stated.
    #[must_use]
    pub const fn days(self) -> Option<u16> {
        match self {
            FlowBefore::Barred => None,
            FlowBefore::BarredDays(days) => Some(days),
        }
    }
}

/// Doses in a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = DosesReport))]
pub struct Doses {
    /// Number of doses.
    pub count: u8,
    /// Least number of days between doses.
    pub interval_min_days: Option<u16>,
    /// Greatest number of days between doses.
    pub interval_max_days: Option<u16>,
}

/// A length of stay that may depend on brood.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Stay {
    /// With brood absent or at its lowest.
    pub absent_or_lowest: Option<Sourced<u16>>,
    /// With brood present.
    pub present: Option<Sourced<u16>>,
}

impl Stay {
    /// The length under a state of brood.
    #[must_use]
    pub fn under(&self, brood: BroodState) -> Option<&Sourced<u16>> {
        match brood {
            BroodState::AbsentOrLowest => self.absent_or_lowest.as_ref(),
            BroodState::Present => self.present.as_ref(),
        }
    }

    /// The same, with a length under brood no shorter than without: more brood never shortens the stay.
    fn no_shorter_with_brood(self) -> Stay {
        let shorter = |(absent, present): &(Sourced<u16>, Sourced<u16>)| present.value < absent.value;
        let both = self.absent_or_lowest.zip(self.present).filter(shorter);
        Stay { present: both.map(|(absent, _)| absent).or(self.present), ..self }
    }

    /// The shorter and the longer length, whatever the brood.
    #[must_use]
    pub fn bounds(&self) -> Option<(u16, u16)> {
        let lengths = [self.absent_or_lowest, self.present];
        let lengths = lengths.iter().flatten().map(|fact| fact.value);
        lengths.clone().min().zip(lengths.max())
    }

    /// The length for the brood that was seen; the shorter one if none was.
    #[must_use]
    pub(crate) fn most(&self, seen: Option<BroodState>) -> Option<u16> {
        match seen {
            Some(brood) => self.under(brood).map(|fact| fact.value),
            None => self.bounds().map(|(shorter, _)| shorter),
        }
    }

    /// Whether brood makes a difference.
    #[must_use]
    pub fn depends_on_brood(&self) -> bool {
        self.bounds().is_some_and(|(shorter, longer)| shorter != longer)
            || self.absent_or_lowest.is_some() != self.present.is_some()
    }
}

/// The terms that apply to one course. What nobody stated is none: not known, never zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// The built-in leaflet of the medicine, if it has one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// Whether honey supers may be on while it is in.
    pub supers_during: Option<Sourced<SupersDuring>>,
    /// Whether it may be used in a nectar flow.
    pub flow_during: Option<Sourced<Permission>>,
    /// Whether it may be used right before a nectar flow. None: nobody forbids it.
    pub flow_before: Option<Sourced<FlowBefore>>,
    /// Withdrawal period for honey, in days; 0 if the label has none.
    pub withdrawal: Option<Sourced<u16>>,
    /// Whether `withdrawal` says that the label has no withdrawal period.
    pub no_withdrawal_by_label: bool,
    /// Days between removal and supers.
    pub wait: Option<Sourced<u16>>,
    /// Whether `wait` rests on a stated withdrawal period, which is the whole time after the treatment.
    pub wait_within_withdrawal: bool,
    /// Whether it has to be taken out.
    pub removal: Option<Sourced<RemovalNeed>>,
    /// The statement that nothing stays in the hive, although a least stay is known. One of the two is wrong, so
    /// `removal` is not known until one of them is corrected.
    pub asked_back: Option<Sourced<RemovalNeed>>,
    /// Fewest days it must stay.
    pub stay_min: Stay,
    /// Most days it may stay; of several statements the fewest.
    pub stay_max: Stay,
    /// The same, but the most of several statements: only then is a carrier that is used up by itself certainly used
    /// up.
    pub stay_max_longest: Stay,
    /// Doses of a course.
    pub doses: Option<Sourced<Doses>>,
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
    /// Withdrawal periods read on its pack when giving a dose, with the day of that dose.
    pub(super) packs: Vec<(EntryId, Day, u16)>,
    /// The day on which some of it was first given in the course; none if none was.
    pub(super) first_given: Option<Day>,
}

/// The built-in leaflet of a medicine, as far as known.
pub(super) enum Named {
    /// The medicine names none.
    None {
        /// Whether the leaflets of the holding's jurisdiction state withdrawal periods.
        knows_withdrawal: bool,
    },
    /// It names one that is not known here, or the holding's jurisdiction is not known.
    NotFound,
    /// This one.
    Found(Arc<Leaflet>),
}

impl Terms {
    /// Works out the terms of a course. The leaflet rules are those in force on the day of placing.
    ///
    /// Where the law has withdrawal periods, the period is the whole time between the last administration and taking honey. So
    /// if it is documented, by a person with the pack in hand or by the leaflet, and no longer wait is known from anywhere, it
    /// covers the wait too: a keeper with a complete statutory record is asked for nothing more. A leaflet without a withdrawal
    /// rule in days comes from a country whose labels state a wait instead: there the wait itself must be read. A ban on use right
    /// before a nectar flow is a rule of its own, which no withdrawal period lifts.
    pub(super) fn of(named: &Named, placed: Day, method: Option<&Method>, stated: &Stated<'_>) -> Terms {
        let leaflet = match named {
            Named::Found(leaflet) => Some(leaflet),
            Named::None { .. } | Named::NotFound => None,
        };
        let built_in = BuiltIn::of(leaflet.map(AsRef::as_ref), placed, method);
        let resolver = Resolver { stated, built_in: &built_in };
        let stay = |topic: Topic, brood: BroodState, days: DaysStated, order: DaysOrder| {
            let stated = |terms: &StatedTerms| days(terms, brood);
            let rule = |rule: &Rule| {
                let (Says::StayMin { days, brood: of } | Says::StayMax { days, brood: of }) = rule.says
                else {
                    return None;
                };
                of.is_none_or(|of| of == brood).then_some(days)
            };
            Reading { topic, stated, rule, order }.resolve(&resolver)
        };
        let withdrawal = withdrawal().resolve_with(&resolver, |lot| {
            let said = |(entry, on, days): &(EntryId, Day, u16)| {
                (*on, WithdrawalPeriod::Days(*days), Authority::Pack(*entry))
            };
            lot.packs.iter().map(said).collect()
        });
        let wait = wait().resolve(&resolver);
        let covering = covering_wait(named, withdrawal.as_ref(), wait.as_ref());
        let intervals = doses(None).built_in(&built_in, None).map(|fact| fact.value);
        let stay_min = Stay {
            absent_or_lowest: stay(Topic::StayMin, BroodState::AbsentOrLowest, least, longer),
            present: stay(Topic::StayMin, BroodState::Present, least_any, longer),
        }
        .no_shorter_with_brood();
        let said = removal().resolve(&resolver);
        // Nothing stays, and it must stay for some days: both cannot be right, so one was misread.
        let nothing_stays = said.filter(|fact| fact.value == RemovalNeed::NothingStays);
        let asked_back = nothing_stays.filter(|_| stay_min.bounds().is_some());
        // A statement about some doses says nothing about the others.
        let removal = said.filter(|fact| fact.value != RemovalNeed::NothingStays || fact.is_documented());
        Terms {
            supers_during: supers_during().resolve(&resolver),
            flow_during: flow_during().resolve(&resolver),
            flow_before: flow_before().resolve(&resolver),
            no_withdrawal_by_label: withdrawal
                .is_some_and(|fact| fact.value == WithdrawalPeriod::NONE_BY_LABEL),
            withdrawal: withdrawal.map(|fact| fact.map(WithdrawalPeriod::days)),
            wait_within_withdrawal: covering.is_some(),
            wait: covering.or(wait),
            removal: removal.filter(|_| asked_back.is_none()),
            asked_back,
            stay_min,
            stay_max: Stay {
                absent_or_lowest: stay(Topic::StayMax, BroodState::AbsentOrLowest, most, shorter),
                present: stay(Topic::StayMax, BroodState::Present, most, shorter),
            },
            stay_max_longest: Stay {
                absent_or_lowest: stay(Topic::StayMax, BroodState::AbsentOrLowest, most, longer),
                present: stay(Topic::StayMax, BroodState::Present, most, longer),
            },
            doses: doses(intervals).resolve(&resolver),
            leaflet: leaflet.cloned(),
        }
    }

    /// Whether the medicine works on inside the hive, as far as anybody stated. People take precedence over the
    /// leaflet.
    #[must_use]
    pub fn release(&self) -> Option<Release> {
        match &self.removal {
            Some(fact) if fact.value == RemovalNeed::NothingStays => Some(Release::Single),
            Some(fact) if !matches!(fact.authority, Authority::Leaflet(_)) => Some(Release::Slow),
            None if self.asked_back.is_some() => None,
            _ => self.leaflet.as_ref().map(|leaflet| leaflet.release),
        }
    }

    /// The leaflet rule behind a fact, if the leaflet said it.
    #[must_use]
    pub fn rule<T>(&self, fact: &Sourced<T>) -> Option<&Rule> {
        let Authority::Leaflet(index) = fact.authority else { return None };
        self.leaflet.as_ref()?.rules.get(index)
    }
}

/// A wait of zero days that rests on a documented withdrawal period, if it may.
fn covering_wait(
    named: &Named,
    withdrawal: Option<&Sourced<WithdrawalPeriod>>,
    wait: Option<&Sourced<u16>>,
) -> Option<Sourced<u16>> {
    let withdrawal = withdrawal.filter(|fact| fact.is_documented())?;
    let in_days = matches!(withdrawal.value, WithdrawalPeriod::Days(_));
    let no_longer_wait = wait.is_none_or(|fact| fact.value == 0 && !fact.is_documented());
    let knows_withdrawal = match named {
        Named::None { knows_withdrawal } => *knows_withdrawal,
        // A leaflet that is not found may state a wait.
        Named::NotFound => false,
        Named::Found(leaflet) => leaflet.states_withdrawal_days(),
    };
    (in_days && no_longer_wait && knows_withdrawal)
        .then(|| Sourced { looser_than: None, ..withdrawal.map(|_| 0) })
}

/// Picks the days stated for a state of brood.
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
