//! How a course would run if it was started on a day: its doses, when it may come out, when supers may go on.

use crate::calendar::Day;
use crate::history::{Fact, Terms, Verdict, blocked_through, free_from, free_in_or_out, inside, used_up};
use crate::leaflet::rule::BroodState;
use crate::leaflet::{Confidence, Release};
use crate::words::{RemovalNeed, SupersDuring};

/// The course of a treatment, in days from its start.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Plan {
    /// The earliest day of each dose; none if the days between doses are not stated.
    pub(super) doses: Option<Vec<u16>>,
    /// The latest day of each dose, where the most days between doses are stated.
    pub(super) doses_by: Option<Vec<u16>>,
    /// What becomes of it in the end.
    pub(super) ends: Ends,
    /// How many doses, if stated.
    pub(super) count: Option<u8>,
    /// After how many days it may be out, at the earliest; none if that is not stated.
    pub(super) least: Option<u16>,
    /// The same with brood at its lowest and with brood present, where nobody knows which holds and it matters.
    pub(super) turns_on_brood: Option<(u16, u16)>,
    /// After how many days it must be out.
    pub(super) most: Option<u16>,
    /// How well the least stay is established.
    pub(super) confidence: Confidence,
}

/// What becomes of a carrier in the end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Ends {
    /// Nothing stays in the hive.
    AtOnce,
    /// Somebody must come back and take it out.
    TakenOut,
    /// It is not stated whether it must come out.
    NotStated,
    /// It is used up in the hive.
    UsedUp,
    /// It need not come out, but when it is used up is not established.
    PerhapsUsedUp,
}

impl Ends {
    /// Whether somebody must come back to take it out, as far as is known.
    pub(super) const fn in_a_visit(self) -> bool {
        matches!(self, Ends::TakenOut | Ends::NotStated)
    }
}

impl Plan {
    /// The plan under the brood that was seen. If none was, the longer least stay rules.
    pub(super) fn of(terms: &Terms, brood: Option<BroodState>) -> Plan {
        let count = terms.doses.as_ref().map(|fact| fact.value.count);
        let interval = terms.doses.as_ref().and_then(|fact| fact.value.interval_min_days);
        let doses = match (count, interval) {
            (Some(0 | 1), _) => Some(vec![0]),
            (Some(count), Some(days)) => Some((0..u16::from(count)).map(|dose| dose * days).collect()),
            _ => None,
        };
        let most_between = terms.doses.as_ref().and_then(|fact| fact.value.interval_max_days);
        let doses_by = most_between
            .zip(count)
            .map(|(days, count)| (0..u16::from(count)).map(|dose| dose * days).collect());
        let last_dose = doses.as_ref().and_then(|doses| doses.last().copied());
        let single = terms.release() == Some(Release::Single);
        let (stay, turns_on_brood) = least_stay(terms, brood);
        let least = match (single, stay) {
            // With further doses on days that nobody states, the last day is not known.
            (true, _) if count.is_some_and(|count| count > 1) => last_dose,
            (true, _) => Some(0),
            (false, Some(fact)) => Some(fact.value.max(last_dose.unwrap_or_default())),
            (false, None) => None,
        };
        let removal = terms.removal.as_ref().map(|fact| fact.value);
        let spent = used_up(terms).filter(|_| removal == Some(RemovalNeed::NotNeeded));
        let ends = match (removal, spent) {
            _ if single => Ends::AtOnce,
            (_, Some((_, true))) => Ends::UsedUp,
            (_, Some((_, false))) => Ends::PerhapsUsedUp,
            (Some(_), None) => Ends::TakenOut,
            (None, None) => Ends::NotStated,
        };
        Plan {
            doses,
            doses_by,
            ends,
            count,
            // Each carrier is used up in its own time: the last one counts.
            least: match spent.filter(|_| !single) {
                Some((days, true)) => last_dose.map(|last| days.saturating_add(last)),
                // When it is used up is not established: the stay that is stated tells at least until when it works.
                Some((_, false)) | None => least,
            },
            turns_on_brood,
            most: most_stay(terms, brood),
            confidence: match spent {
                Some((_, false)) if !single => Confidence::SecondHand,
                _ => stay.map_or(Confidence::Document, |fact| fact.confidence),
            },
        }
    }

    /// How many days from the start it is looked at in the hive, for temperatures of the stay.
    pub(super) fn stay(&self) -> Option<u16> {
        self.least.or(self.most).map(|days| days.max(1))
    }

    /// How many days from the start it is in for certain, the day of placing included, even if the least stay is not stated.
    pub(super) fn surely_in(&self) -> u16 {
        let last_dose = self.doses.as_ref().and_then(|doses| doses.last().copied()).unwrap_or_default();
        self.least.unwrap_or_default().max(last_dose + 1)
    }

    /// The days from a dose's earliest to its latest, in order; the earliest only where the latest is not stated.
    pub(super) fn dose_days(&self) -> Vec<(u16, u16)> {
        let earliest = self.doses.clone().unwrap_or_else(|| vec![0]);
        let latest = self.doses_by.as_deref().unwrap_or_default();
        let each = earliest.into_iter().enumerate();
        each.map(|(dose, from)| (from, latest.get(dose).copied().unwrap_or(from).max(from))).collect()
    }

    /// Whether further doses follow on days that nobody states.
    pub(super) fn later_doses_open(&self) -> bool {
        self.doses.is_none() && self.count.is_some_and(|count| count > 1)
    }

    /// Days from the start on which it may be in or out, since no least stay is stated, or not whether it must come out: the
    /// first and, if the most is stated, the last.
    pub(super) fn perhaps_in(&self) -> Option<(u16, Option<u16>)> {
        let known = self.least.is_some() && self.ends != Ends::NotStated;
        (!known).then(|| (self.surely_in(), self.most.map(|days| days.saturating_sub(1))))
    }

    /// The last day on which it is still in, at the earliest.
    pub(super) fn in_through(&self, start: Day) -> Day {
        start.plus(self.surely_in() - 1)
    }
}

fn least_stay(terms: &Terms, brood: Option<BroodState>) -> (Option<Fact<u16>>, Option<(u16, u16)>) {
    let longer = [terms.stay_min.absent_or_lowest, terms.stay_min.present];
    let longer = longer.into_iter().flatten().max_by_key(|fact| fact.value);
    match brood {
        Some(brood) => (terms.stay_min.under(brood).copied().or(longer), None),
        None => (longer, terms.stay_min.bounds().filter(|(shorter, longer)| shorter != longer)),
    }
}

fn most_stay(terms: &Terms, brood: Option<BroodState>) -> Option<u16> {
    match brood {
        Some(brood) => terms.stay_max.under(brood).map(|fact| fact.value),
        None => terms.stay_max.bounds().map(|(shorter, _)| shorter),
    }
}

/// What a course that is started on a day means for honey supers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Effect {
    /// The first day on which it may be out.
    pub(super) out: Option<Day>,
    /// The last day on which it must be out.
    pub(super) out_by: Option<Day>,
    /// The first day on which supers may go on.
    pub(super) free: FirstFree,
}

/// When supers may go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum FirstFree {
    /// They may be on all along.
    AllAlong {
        /// But no honey may be taken while it is in.
        no_harvest: bool,
    },
    /// From this day on, if it comes out as early as it may.
    From(Day),
    /// How long it has to stay is not stated.
    StayNotKnown,
    /// The withdrawal period or the wait is not established.
    PeriodsNotKnown,
    /// What is in already, or was given before, leaves it open.
    OthersNotKnown,
}

impl FirstFree {
    /// The first day, if known: of what may be on all along, the day of placing.
    pub(super) fn day(self, start: Day) -> Option<Day> {
        match self {
            FirstFree::AllAlong { .. } => Some(start),
            FirstFree::From(day) => Some(day),
            FirstFree::StayNotKnown | FirstFree::PeriodsNotKnown | FirstFree::OthersNotKnown => None,
        }
    }
}

impl Effect {
    pub(super) fn of(terms: &Terms, plan: &Plan, start: Day) -> Effect {
        let out = plan.least.map(|days| start.plus(days));
        let out_by = plan.most.map(|days| start.plus(days));
        let free = match out {
            _ if free_in_or_out(terms) => {
                let value = terms.supers_during.as_ref().map(|fact| fact.value);
                FirstFree::AllAlong { no_harvest: value == Some(SupersDuring::OnNoHarvest) }
            }
            None => FirstFree::StayNotKnown,
            Some(_) if plan.ends == Ends::PerhapsUsedUp => FirstFree::PeriodsNotKnown,
            Some(out) => free_from(terms, out).map_or(FirstFree::PeriodsNotKnown, FirstFree::From),
        };
        Effect { out, out_by, free }
    }

    /// The same beside what is in already: supers wait for the later of the two.
    pub(super) fn beside(self, others: Option<Day>, start: Day) -> Effect {
        let free = match (self.free, others) {
            (FirstFree::StayNotKnown | FirstFree::PeriodsNotKnown, _) => self.free,
            (FirstFree::OthersNotKnown, _) | (_, None) => FirstFree::OthersNotKnown,
            (FirstFree::AllAlong { .. }, Some(other)) if other <= start => self.free,
            (FirstFree::AllAlong { .. }, Some(other)) => FirstFree::From(other),
            (FirstFree::From(own), Some(other)) => FirstFree::From(own.max(other)),
        };
        Effect { free, ..self }
    }

    /// The last day that is blocked, if it comes out as early as it may; where a period is not established, the last day that
    /// is blocked at the least.
    pub(super) fn last_blocked(&self, terms: &Terms, start: Day) -> Option<Day> {
        match self.free {
            FirstFree::From(day) if day > start => Some(day.before()),
            FirstFree::PeriodsNotKnown => {
                let through = self.out.map(|out| (out, blocked_through(terms, out)));
                let off = inside(terms) == Verdict::No;
                through.filter(|(out, through)| off || through >= out).map(|(_, through)| through)
            }
            _ => None,
        }
    }
}
