//! How a course would run if it was started on a day: its doses, when it may come out, when supers may go on.

use super::reason::Lack;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::verdict::Verdict;
use crate::basics::words::{RemovalNeed, SupersDuring};
use crate::facts::history::{
    BeforeFlow, Fact, FlowBefore, FlowSpan, Terms, before_flow, blocked_through, free_from, free_in_or_out,
    inside, used_up,
};
use crate::rules::leaflet::Release;
use crate::rules::leaflet::rule::BroodState;

/// The course of a treatment, in days from its start.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Plan {
    /// The earliest day of each dose; none if it is not stated how many there are, or how many days lie between them.
    pub(super) doses: Option<Vec<u16>>,
    /// The latest day of each dose, where the most days between doses are stated.
    pub(super) doses_by: Option<Vec<u16>>,
    /// What becomes of it in the end.
    pub(super) ends: Ends,
    /// How many doses, if stated.
    pub(super) count: Option<u8>,
    /// After how many days it may be out, at the earliest; none if that is not stated.
    pub(super) least: Option<u16>,
    /// The stay that is stated: it is in for so many days, even where it is not known whether that is all.
    pub(super) stay: Option<u16>,
    /// The same with brood at its lowest and with brood present, where nobody knows which holds and it matters.
    pub(super) turns_on_brood: Option<(u16, u16)>,
    /// After how many days it must be out.
    pub(super) most: Option<u16>,
    /// How well `least` is established; none where that is none.
    pub(super) confidence: Option<Confidence>,
    /// What is not stated, so that `least` or what becomes of it is not known.
    pub(super) lacks: Vec<Lack>,
    /// What is stated and was not read in a document, so that `least` is not established.
    pub(super) undocumented: Vec<Lack>,
}

/// A dose of a course, in days from its start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct DoseDays {
    /// The earliest day, if it is stated.
    pub(super) from: Option<u16>,
    /// The latest day, if it is stated; the first dose is given on the day of the start.
    pub(super) by: Option<u16>,
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
        // With further doses on days that nobody states, or perhaps with further doses, the last one has no day.
        let last_dose = doses.as_ref().and_then(|doses| doses.last().copied());
        let single = terms.release() == Some(Release::Single);
        let (stay, turns_on_brood) = least_stay(terms, brood);
        let removal = terms.removal.as_ref().map(|fact| fact.value);
        let spent = used_up(terms).filter(|_| removal == Some(RemovalNeed::NotNeeded));
        let ends = match (removal, spent) {
            _ if single => Ends::AtOnce,
            (_, Some((_, true))) => Ends::UsedUp,
            (_, Some((_, false))) => Ends::PerhapsUsedUp,
            (Some(_), None) => Ends::TakenOut,
            (None, None) => Ends::NotStated,
        };
        let least = last_dose.and_then(|last| match (ends, spent) {
            (Ends::AtOnce, _) => Some(last),
            // Each carrier is used up in its own time: the last one counts.
            (Ends::UsedUp, Some((days, _))) => Some(last.saturating_add(days)),
            // When it is used up is not established: the stay that is stated tells at least until when it works.
            (Ends::UsedUp | Ends::PerhapsUsedUp | Ends::TakenOut | Ends::NotStated, _) => {
                stay.map(|fact| fact.value.max(last))
            }
        });
        let established = match ends {
            Ends::AtOnce | Ends::UsedUp => Some(Confidence::Document),
            Ends::PerhapsUsedUp => Some(Confidence::SecondHand),
            Ends::TakenOut | Ends::NotStated => stay.map(|fact| fact.confidence),
        };
        Plan {
            lacks: lacks(terms, ends, stay.as_ref(), count, doses.is_some()),
            undocumented: undocumented(terms, ends),
            doses,
            doses_by,
            ends,
            count,
            least,
            stay: stay.map(|fact| fact.value),
            turns_on_brood,
            most: most_stay(terms, brood),
            confidence: established.filter(|_| least.is_some()),
        }
    }

    /// How many days from the start it is in for certain, the day of placing included, even if the least stay is not stated.
    pub(super) fn surely_in(&self) -> u16 {
        let last_dose = self.doses.as_ref().and_then(|doses| doses.last().copied());
        // What nobody states adds no day that would be sure.
        let sure =
            [self.least, self.stay.filter(|_| self.ends != Ends::AtOnce), last_dose.map(|last| last + 1)];
        sure.into_iter().flatten().fold(1, u16::max)
    }

    /// Each dose with its days, in order: the first, and the further ones as far as it is stated that there are any.
    pub(super) fn each_dose(&self) -> Vec<DoseDays> {
        let first = DoseDays { from: Some(0), by: Some(0) };
        let further = (1..usize::from(self.count.map_or(1, |count| count.max(1)))).map(|dose| DoseDays {
            from: self.doses.as_ref().and_then(|doses| doses.get(dose)).copied(),
            by: self.doses_by.as_ref().and_then(|by| by.get(dose)).copied(),
        });
        std::iter::once(first).chain(further).collect()
    }

    /// The days from a dose's earliest to its latest, of those whose earliest is stated; the earliest only where the latest is
    /// not.
    pub(super) fn dose_days(&self) -> Vec<(u16, u16)> {
        let days = self.each_dose().into_iter().filter_map(|dose| Some((dose.from?, dose.by)));
        days.map(|(from, by)| (from, by.map_or(from, |by| by.max(from)))).collect()
    }

    /// Whether further doses follow on days that nobody states, or nobody states whether any do.
    pub(super) fn later_doses_open(&self) -> bool {
        self.doses.is_none()
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

/// What is not stated, without which nobody can say when the last of a course is out.
fn lacks(
    terms: &Terms,
    ends: Ends,
    stay: Option<&Fact<u16>>,
    count: Option<u8>,
    days_of_doses: bool,
) -> Vec<Lack> {
    let mut lacks = Vec::new();
    if count.is_none() {
        lacks.push(Lack::Doses);
    } else if !days_of_doses {
        lacks.push(Lack::DoseInterval);
    }
    if ends == Ends::NotStated {
        lacks.push(Lack::Removal);
    }
    if stay.is_none() && !matches!(ends, Ends::AtOnce | Ends::UsedUp) {
        let without = terms.stay_min.absent_or_lowest.is_some();
        lacks.push(if without { Lack::StayMinWithBrood } else { Lack::StayMin });
    }
    lacks
}

/// What is stated of how long it stays, and was not read in a document.
fn undocumented(terms: &Terms, ends: Ends) -> Vec<Lack> {
    if matches!(ends, Ends::AtOnce | Ends::UsedUp) {
        return Vec::new();
    }
    let unread = |fact: Option<&Fact<u16>>| fact.is_some_and(|fact| !fact.is_documented());
    let mut list = Vec::new();
    let perhaps_used_up = ends == Ends::PerhapsUsedUp;
    if perhaps_used_up && terms.removal.as_ref().is_some_and(|fact| !fact.is_documented()) {
        list.push(Lack::Removal);
    }
    if unread(terms.stay_min.absent_or_lowest.as_ref()) || unread(terms.stay_min.present.as_ref()) {
        list.push(Lack::StayMin);
    }
    if terms.stay_min.depends_on_brood() && unread(terms.stay_min.present.as_ref()) {
        list.push(Lack::StayMinWithBrood);
    }
    let most = [terms.stay_max.absent_or_lowest.as_ref(), terms.stay_max.present.as_ref()];
    if perhaps_used_up && most.into_iter().any(unread) {
        list.push(Lack::StayMax);
    }
    list
}

/// The least stay under the brood that was seen. Where none was, the longer of both counts, if both or that with brood are
/// stated: of one that is stated without brood alone nobody knows how long it is with brood.
fn least_stay(terms: &Terms, brood: Option<BroodState>) -> (Option<Fact<u16>>, Option<(u16, u16)>) {
    let (absent, present) = (terms.stay_min.absent_or_lowest, terms.stay_min.present);
    if let Some(brood) = brood {
        return (terms.stay_min.under(brood).copied(), None);
    }
    let longer = present.map(|present| match absent {
        Some(absent) if absent.value > present.value => absent,
        Some(_) | None => present,
    });
    (longer, terms.stay_min.bounds().filter(|(shorter, longer)| shorter != longer))
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
    pub(super) free: FreeAfterwards,
}

/// When supers may go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FreeAfterwards {
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

impl FreeAfterwards {
    /// The first day, if known: of what may be on all along, the day of placing.
    pub(super) fn day(self, start: Day) -> Option<Day> {
        match self {
            FreeAfterwards::AllAlong { .. } => Some(start),
            FreeAfterwards::From(day) => Some(day),
            FreeAfterwards::StayNotKnown
            | FreeAfterwards::PeriodsNotKnown
            | FreeAfterwards::OthersNotKnown => None,
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
                FreeAfterwards::AllAlong { no_harvest: value == Some(SupersDuring::OnNoHarvest) }
            }
            None => FreeAfterwards::StayNotKnown,
            Some(_) if plan.ends == Ends::PerhapsUsedUp => FreeAfterwards::PeriodsNotKnown,
            Some(out) => free_from(terms, out).map_or(FreeAfterwards::PeriodsNotKnown, FreeAfterwards::From),
        };
        Effect { out, out_by, free }
    }

    /// The same where the time right before a flow is barred. Without an apiary its flows are not known.
    pub(super) fn before_flow(self, bar: FlowBefore, flows: Option<Vec<FlowSpan>>) -> Effect {
        let (FreeAfterwards::From(day), Some(out)) = (self.free, self.out) else { return self };
        let free = match flows.map(|flows| before_flow(&flows, bar, out, day)) {
            Some(BeforeFlow::Free) => self.free,
            Some(BeforeFlow::Barred(flow)) => FreeAfterwards::From(flow.last.next()),
            Some(BeforeFlow::Perhaps(_) | BeforeFlow::NoFlowOnRecord) | None => {
                FreeAfterwards::PeriodsNotKnown
            }
        };
        Effect { free, ..self }
    }

    /// The same beside what is in already: supers wait for the later of the two.
    pub(super) fn beside(self, others: Option<Day>, start: Day) -> Effect {
        let free = match (self.free, others) {
            (FreeAfterwards::StayNotKnown | FreeAfterwards::PeriodsNotKnown, _) => self.free,
            (FreeAfterwards::OthersNotKnown, _) | (_, None) => FreeAfterwards::OthersNotKnown,
            (FreeAfterwards::AllAlong { .. }, Some(other)) if other <= start => self.free,
            (FreeAfterwards::AllAlong { .. }, Some(other)) => FreeAfterwards::From(other),
            (FreeAfterwards::From(own), Some(other)) => FreeAfterwards::From(own.max(other)),
        };
        Effect { free, ..self }
    }

    /// The last day that is blocked, if it comes out as early as it may; where a period is not established, the last day that
    /// is blocked at the least.
    pub(super) fn last_blocked(&self, terms: &Terms, start: Day) -> Option<Day> {
        match self.free {
            FreeAfterwards::From(day) if day > start => Some(day.before()),
            FreeAfterwards::PeriodsNotKnown => {
                let through = self.out.map(|out| (out, blocked_through(terms, out)));
                let off = inside(terms) == Verdict::No;
                through.filter(|(out, through)| off || through >= out).map(|(_, through)| through)
            }
            FreeAfterwards::From(_)
            | FreeAfterwards::AllAlong { .. }
            | FreeAfterwards::StayNotKnown
            | FreeAfterwards::OthersNotKnown => None,
        }
    }
}
