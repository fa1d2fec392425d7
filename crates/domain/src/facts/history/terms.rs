//! The terms that apply to one course, each with its source and confidence.
//!
//! Authority, highest first: a vet's prescription; the keeper's reading of the lot's leaflet, or of the pack when
//! giving it; the built-in leaflet; terms the keeper declared for a medicine. For each topic, the highest authority
//! that states anything applies; lower ones never override it. Among equals the stricter value applies.

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
    /// Forbidden, without a stated number of days.
    Barred,
    /// Forbidden for this many days before a flow; 0 allows it.
    BarredDays(u16),
}

impl FlowBefore {
    /// The number of days, if stated.
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
    /// Fewest days between doses, if stated.
    pub interval_min_days: Option<u16>,
    /// Most days between doses, if stated.
    pub interval_max_days: Option<u16>,
}

impl Doses {
    /// The least interval before each missing dose, in days, after `given` doses.
    pub(super) fn days_before_missing(self, given: usize) -> Fact<Vec<u16>, Term> {
        match usize::from(self.count).saturating_sub(given) {
            0 => Fact::Known(Vec::new()),
            missing => {
                Fact::stated(self.interval_min_days, Term::DoseInterval).map(|days| vec![days; missing])
            }
        }
    }

    /// The latest day of each dose, counted from the first, if the greatest interval is stated.
    pub(super) fn latest(&self) -> Option<Vec<u16>> {
        let days = self.interval_max_days?;
        Some((0..u16::from(self.count)).map(|dose| dose.saturating_mul(days)).collect())
    }
}

/// A term: the value with its source, or the term that is missing.
pub type TermValue<T> = Fact<Sourced<T>, Term>;

/// The terms that apply to one course. An unstated term is not known, never zero.
#[derive(Debug, Clone, PartialEq)]
pub struct Terms {
    /// The built-in leaflet of the medicine, if it has one.
    pub leaflet: Option<Arc<Leaflet>>,
    /// Whether honey supers may be on while it is in.
    pub supers_during: TermValue<SupersDuring>,
    /// Whether it may be used during a nectar flow.
    pub flow_during: TermValue<Permission>,
    /// Whether it may be used right before a nectar flow. `None`: not forbidden.
    pub flow_before: Option<Sourced<FlowBefore>>,
    /// Withdrawal period for honey, in days; 0 if the label has none.
    pub withdrawal: TermValue<u16>,
    /// Whether the zero in `withdrawal` means that the label has no withdrawal period.
    pub no_withdrawal_by_label: bool,
    /// Days between removal and supers.
    pub wait: TermValue<u16>,
    /// Whether `wait` derives from a stated withdrawal period, which covers the whole time after the treatment.
    pub wait_within_withdrawal: bool,
    /// Whether it must be taken out.
    pub removal: TermValue<RemovalNeed>,
    /// The statement that nothing stays in the hive, if a least stay is known as well. One of the two is wrong, so
    /// `removal` is not known until one of them is corrected.
    pub asked_back: Option<Sourced<RemovalNeed>>,
    /// Fewest days it must stay.
    pub stay_min: Stay,
    /// Most days it may stay: the least of several statements.
    pub stay_max: Stay,
    /// The greatest of several statements of the longest stay: only after that is a carrier certainly used up.
    pub stay_max_longest: Stay,
    /// Number and interval of doses.
    pub doses: TermValue<Doses>,
}

/// People's statements about one course.
pub(super) struct Stated<'h> {
    /// The prescriptions of its doses.
    pub(super) prescriptions: Vec<(EntryId, &'h StatedTerms)>,
    /// Whether every dose had a prescription.
    pub(super) all_prescribed: bool,
    /// The lots given, each with the statements about it.
    pub(super) lots: Vec<LotSaid<'h>>,
    /// The terms declared for the medicine.
    pub(super) declared: Option<(EntryId, &'h StatedTerms)>,
}

/// People's statements about one lot.
#[derive(Default)]
pub(super) struct LotSaid<'h> {
    /// The label revision on its pack, if recorded.
    pub(super) revision: Option<&'h str>,
    /// Readings of its leaflet, in the order they were made.
    pub(super) readings: Vec<(&'h Record, &'h StatedTerms)>,
    /// Withdrawal periods read on its pack when giving a dose, in days, each with the entry and day of that dose.
    pub(super) packs: Vec<(EntryId, Day, u16)>,
    /// The day on which some of it was first given in the course, if any was.
    pub(super) first_given: Option<Day>,
}

/// The built-in leaflet named for a medicine, as far as known.
pub(super) enum Named {
    /// The medicine names no leaflet.
    None {
        /// Whether the leaflets of the holding's jurisdiction state withdrawal periods.
        knows_withdrawal: bool,
    },
    /// It names an unknown leaflet, or the holding's jurisdiction is not known.
    NotFound,
    /// The leaflet.
    Found(Arc<Leaflet>),
}

impl Terms {
    /// Works out the terms of a course, using the leaflet rules in force on the day of placing.
    ///
    /// Where the law has withdrawal periods, the period runs from the last administration until honey may be taken.
    /// So a documented period (stated by a person with the pack in hand, or by the leaflet) also covers the wait,
    /// unless a longer wait is known: a keeper with a complete statutory record is asked for nothing more. A leaflet
    /// without a withdrawal rule in days comes from a country whose labels state a wait instead: there the wait
    /// itself must be read. A ban on use right before a nectar flow is a separate rule; no withdrawal period lifts
    /// it.
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
        // "Nothing stays" contradicts a least stay of some days, and a leaflet of a carrier, so one was misread.
        let nothing_stays = said.filter(|fact| fact.value == RemovalNeed::NothingStays);
        let is_carrier = leaflet.is_some_and(|leaflet| leaflet.release == Release::Slow);
        let asked_back = nothing_stays.filter(|_| is_carrier || stay_min.bounds().is_some());
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

    /// Whether the medicine keeps working inside the hive, as far as stated. People take precedence over the leaflet.
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

    /// Whether it is known that nothing of it stays in the hive: it is then given, not placed, and never taken out.
    #[must_use]
    pub fn nothing_stays(&self) -> bool {
        self.release() == Fact::Known(Release::Single)
    }

    /// The leaflet rule behind a fact, if the fact comes from the leaflet.
    #[must_use]
    pub fn rule<T>(&self, fact: &Sourced<T>) -> Option<&Rule> {
        self.leaflet.as_ref()?.rules.get(fact.authority.rule()?)
    }
}

/// A wait of zero days derived from a documented withdrawal period, if that period covers the wait.
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
        // The leaflet was not found, so it may state a wait.
        Named::NotFound => false,
        Named::Found(leaflet) => leaflet.states_withdrawal_days(),
    };
    (in_days && no_longer_wait && knows_withdrawal)
        .then(|| Sourced { looser_than: None, ..withdrawal.map(|_| 0) })
}

/// Picks the days stated for a state of brood.
type DaysStated = fn(&StatedTerms, BroodState) -> Option<u16>;
/// Orders days by strictness: the greater one is stricter.
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
