//! How a course would run if it started on a given day: its doses, and when it may come out.

use super::terms::Terms;
use super::whereabouts::used_up;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::sourced::Sourced;
use crate::basics::words::RemovalNeed;
use crate::rules::leaflet::Release;
use crate::rules::leaflet::rule::BroodState;

/// What is not known about how a course runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Lack {
    /// How many doses a course has.
    Doses,
    /// How many days lie between doses.
    DoseInterval,
    /// Whether it has to be taken out.
    Removal,
    /// How long it must stay, without brood or whatever the brood.
    StayMin,
    /// How long it must stay with brood.
    StayMinWithBrood,
    /// How long it may stay.
    StayMax,
}

/// The course of a treatment, in days from its start.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Plan {
    /// The earliest day of each dose; none if the number of doses or the days between them are not stated.
    pub(crate) doses: Option<Vec<u16>>,
    /// The latest day of each dose, if the most days between doses are stated.
    pub(crate) doses_by: Option<Vec<u16>>,
    /// What becomes of it in the end.
    pub(crate) ends: Ends,
    /// How many doses, if stated.
    pub(crate) count: Option<u8>,
    /// The earliest number of days after which it may be out; none if not stated.
    pub(crate) least: Option<u16>,
    /// The stated stay: it is in for this many days, even if that may not be all.
    pub(crate) stay: Option<u16>,
    /// The same with brood at its lowest and with brood present, if nobody knows which applies and it matters.
    pub(crate) turns_on_brood: Option<(u16, u16)>,
    /// After how many days it must be out.
    pub(crate) most: Option<u16>,
    /// How well `least` is established; none if `least` is none.
    pub(crate) confidence: Option<Confidence>,
    /// What is not stated, so that `least` or `ends` is not known.
    pub(crate) lacks: Vec<Lack>,
    /// What is stated but was not read in a document, so that `least` is not established.
    pub(crate) undocumented: Vec<Lack>,
}

/// A dose of a course, in days from its start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct DoseDays {
    /// The earliest day, if it is stated.
    pub(crate) from: Option<u16>,
    /// The latest day, if it is stated; the first dose is given on the day of the start.
    pub(crate) by: Option<u16>,
}

/// What becomes of a carrier in the end.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ends {
    /// Nothing stays in the hive.
    AtOnce,
    /// Somebody must come back and take it out.
    TakenOut,
    /// It is not stated whether it must come out.
    NotStated,
    /// It is used up in the hive.
    UsedUp,
    /// It need not come out, but it is not established when it is used up.
    PerhapsUsedUp,
}

impl Ends {
    /// Whether somebody must come back to take it out, as far as is known.
    pub(crate) const fn in_a_visit(self) -> bool {
        matches!(self, Ends::TakenOut | Ends::NotStated)
    }
}

impl Plan {
    /// The plan for the brood that was seen; if none was seen, with the longer least stay.
    pub(crate) fn of(terms: &Terms, brood: Option<BroodState>) -> Plan {
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
        // If further doses have no stated day, or there may be further doses, the last one has no day.
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
            // Each carrier is used up in its own time; the last one counts.
            (Ends::UsedUp, Some((days, _))) => Some(last.saturating_add(days)),
            // It is not established when it is used up. By the stated stay it works at least until then. A carrier does not
            // come out on the day it goes in.
            (Ends::UsedUp | Ends::PerhapsUsedUp | Ends::TakenOut | Ends::NotStated, _) => {
                stay.map(|fact| fact.value.max(last + 1))
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
            most: terms.stay_max.most(brood),
            confidence: established.filter(|_| least.is_some()),
        }
    }

    /// How many days from the start it is certainly in, including the day of placing, even if the least stay is not
    /// stated.
    pub(crate) fn surely_in(&self) -> u16 {
        let last_dose = self.doses.as_ref().and_then(|doses| doses.last().copied());
        // Nothing unstated adds a certain day.
        let sure =
            [self.least, self.stay.filter(|_| self.ends != Ends::AtOnce), last_dose.map(|last| last + 1)];
        sure.into_iter().flatten().fold(1, u16::max)
    }

    /// Each dose with its days, in order: the first, and those further ones that are stated.
    pub(crate) fn each_dose(&self) -> Vec<DoseDays> {
        let first = DoseDays { from: Some(0), by: Some(0) };
        let further = (1..usize::from(self.count.map_or(1, |count| count.max(1)))).map(|dose| DoseDays {
            from: self.doses.as_ref().and_then(|doses| doses.get(dose)).copied(),
            by: self.doses_by.as_ref().and_then(|by| by.get(dose)).copied(),
        });
        std::iter::once(first).chain(further).collect()
    }

    /// For each dose with a stated earliest day, the days from its earliest to its latest; only the earliest if no
    /// latest is stated.
    pub(crate) fn dose_days(&self) -> Vec<(u16, u16)> {
        let days = self.each_dose().into_iter().filter_map(|dose| Some((dose.from?, dose.by)));
        days.map(|(from, by)| (from, by.map_or(from, |by| by.max(from)))).collect()
    }

    /// Whether further doses follow on unstated days, or it is not stated whether any do.
    pub(crate) fn later_doses_open(&self) -> bool {
        self.doses.is_none()
    }

    /// Days from the start on which it may be in or out, because no least stay is stated or it is not stated whether it
    /// must come out: the first and, if the most is stated, the last.
    pub(crate) fn perhaps_in(&self) -> Option<(u16, Option<u16>)> {
        let known = self.least.is_some() && self.ends != Ends::NotStated;
        (!known).then(|| (self.surely_in(), self.most.map(|days| days.saturating_sub(1))))
    }

    /// The last day on which it is still in, if it comes out as early as it may.
    pub(crate) fn in_through(&self, start: Day) -> Day {
        start.plus(self.surely_in() - 1)
    }
}

/// What is not stated, without which nobody can say when the last of a course is out.
fn lacks(
    terms: &Terms,
    ends: Ends,
    stay: Option<&Sourced<u16>>,
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

/// What is stated about how long it stays, but was not read in a document.
fn undocumented(terms: &Terms, ends: Ends) -> Vec<Lack> {
    if matches!(ends, Ends::AtOnce | Ends::UsedUp) {
        return Vec::new();
    }
    let unread = |fact: Option<&Sourced<u16>>| fact.is_some_and(|fact| !fact.is_documented());
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

/// The least stay for the brood that was seen. If none was seen, the longer of both, provided that the one with brood
/// is stated: a stay stated only without brood does not tell how long it is with brood.
fn least_stay(terms: &Terms, brood: Option<BroodState>) -> (Option<Sourced<u16>>, Option<(u16, u16)>) {
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
