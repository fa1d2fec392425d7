//! The terms that apply to one course, each with who said it and how well it is established.
//!
//! Authority, highest first: a vet's prescription; what the keeper read on the leaflet of the lot, or on the pack when giving
//! it; the built-in leaflet; terms the keeper declared for a medicine. On each topic the highest authority that says anything
//! applies, and lower ones never overrule it. Among equals the stricter value applies.

use std::cmp::Ordering;
use std::sync::Arc;

use serde::Serialize;

use super::resolve::{BuiltIn, Reading, Resolver};
use super::stay::Stay;
use super::term::Term;
use super::topics::{doses, flow_before, flow_during, removal, supers_during, wait, withdrawal};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
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

impl Doses {
    /// The least days before each dose that is missing after so many.
    pub(super) fn days_before_missing(self, given: usize) -> Fact<Vec<u16>, Term> {
        match usize::from(self.count).saturating_sub(given) {
            0 => Fact::Known(Vec::new()),
            missing => {
                Fact::stated(self.interval_min_days, Term::DoseInterval).map(|days| vec![days; missing])
            }
        }
    }

    /// The latest day of each dose, in days from the first, if the most days between doses are stated.
    pub(super) fn latest(&self) -> Option<Vec<u16>> {
        let days = self.interval_max_days?;
        Some((0..u16::from(self.count)).map(|dose| dose.saturating_mul(days)).collect())
    }
}

/// A term as it is known: who said it, or which term is missing.
pub type TermValue<T> = Fact<Sourced<T>, Term>;

/// The terms that apply to one course. What nobody stated is not known, never zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// The built-in leaflet of the medicine, if it has one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// Whether honey supers may be on while it is in.
    pub supers_during: TermValue<SupersDuring>,
    /// Whether it may be used in a nectar flow.
    pub flow_during: TermValue<Permission>,
    /// Whether it may be used right before a nectar flow. None: nobody forbids it.
    pub flow_before: Option<Sourced<FlowBefore>>,
    /// Withdrawal period for honey, in days; 0 if the label has none.
    pub withdrawal: TermValue<u16>,
    /// Whether `withdrawal` says that the label has no withdrawal period.
    pub no_withdrawal_by_label: bool,
    /// Days between removal and supers.
    pub wait: TermValue<u16>,
    /// Whether `wait` rests on a stated withdrawal period, which is the whole time after the treatment.
    pub wait_within_withdrawal: bool,
    /// Whether it has to be taken out.
    pub removal: TermValue<RemovalNeed>,
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
    pub doses: TermValue<Doses>,
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
        let built_in = BuiltIn { leaflet: leaflet.map(AsRef::as_ref), placed, method };
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
        let stay_min = Stay::least_of(
            stay(Topic::StayMin, BroodState::AbsentOrLowest, least, longer),
            stay(Topic::StayMin, BroodState::Present, least_any, longer),
        );
        let longest = |order: DaysOrder| {
            let under = |brood| stay(Topic::StayMax, brood, most, order);
            Stay::longest_of(under(BroodState::AbsentOrLowest), under(BroodState::Present))
        };
        let said = removal().resolve(&resolver);
        // Nothing stays, and it must stay for some days: both cannot be right, so one was misread.
        let nothing_stays = said.filter(|fact| fact.value == RemovalNeed::NothingStays);
        let asked_back = nothing_stays.filter(|_| stay_min.bounds().is_some());
        // A statement about some doses says nothing about the others.
        let removal = said.filter(|fact| fact.value != RemovalNeed::NothingStays || fact.is_documented());
        Terms {
            supers_during: Fact::stated(supers_during().resolve(&resolver), Term::SupersDuring),
            flow_during: Fact::stated(flow_during().resolve(&resolver), Term::FlowDuring),
            flow_before: flow_before().resolve(&resolver),
            no_withdrawal_by_label: withdrawal
                .is_some_and(|fact| fact.value == WithdrawalPeriod::NONE_BY_LABEL),
            withdrawal: Fact::stated(
                withdrawal.map(|fact| fact.map(WithdrawalPeriod::days)),
                Term::Withdrawal,
            ),
            wait_within_withdrawal: covering.is_some(),
            wait: Fact::stated(covering.or(wait), Term::Wait),
            removal: Fact::stated(removal.filter(|_| asked_back.is_none()), Term::Removal),
            asked_back,
            stay_min,
            stay_max: longest(shorter),
            stay_max_longest: longest(longer),
            doses: Fact::stated(doses(intervals).resolve(&resolver), Term::Doses),
            leaflet: leaflet.cloned(),
        }
    }

    /// Whether the medicine works on inside the hive, as far as anybody stated. People take precedence over the
    /// leaflet.
    #[must_use]
    pub fn release(&self) -> Fact<Release, Term> {
        match &self.removal {
            Fact::Known(fact) if fact.value == RemovalNeed::NothingStays => Fact::Known(Release::Single),
            Fact::Known(fact) if !matches!(fact.authority, Authority::Leaflet(_)) => {
                Fact::Known(Release::Slow)
            }
            Fact::NotKnown(term) if self.asked_back.is_some() => Fact::NotKnown(*term),
            Fact::Known(_) | Fact::NotKnown(_) => {
                Fact::stated(self.leaflet.as_ref().map(|leaflet| leaflet.release), Term::Removal)
            }
        }
    }

    /// Whether it is known that nothing of it stays in the hive: then it is given, not placed, and never taken out.
    #[must_use]
    pub fn nothing_stays(&self) -> bool {
        self.release() == Fact::Known(Release::Single)
    }

    /// The leaflet rule behind a fact, if the leaflet said it.
    #[must_use]
    pub fn rule<T>(&self, fact: &Sourced<T>) -> Option<&Rule> {
        self.leaflet.as_ref()?.rules.get(fact.authority.rule()?)
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
