//! How a course would run from a given start: its doses, and when it may come out.

use super::stay::may_be_out;
use super::term::Term;
use super::terms::{Doses, Terms};
use super::whereabouts::used_up;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::words::RemovalNeed;
use crate::rules::leaflet::rule::BroodState;

/// How a treatment runs, in days from its start.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Plan {
    /// The earliest day of each dose, the first being day 0.
    pub(crate) doses: Fact<Vec<u16>, Term>,
    /// The latest day of each dose, if the greatest interval between doses is stated.
    doses_by: Option<Vec<u16>>,
    /// How its presence in the hive ends.
    pub(crate) ends: Ends,
    /// The number of doses.
    pub(crate) count: Fact<u8, Term>,
    /// The earliest day on which it may be out.
    pub(crate) least: Fact<u16, Term>,
    /// The stated stay. It is in for this many days, but perhaps for longer.
    pub(crate) stay: Fact<u16, Term>,
    /// `least` with brood at its lowest and with brood present, if brood makes a difference and was not seen.
    pub(crate) turns_on_brood: Option<(u16, u16)>,
    /// The day by which it must be out.
    pub(crate) most: Fact<u16, Term>,
    /// How well `least` is established.
    pub(crate) confidence: Fact<Confidence, Term>,
    /// The unstated terms that leave `least` or `ends` not known.
    pub(crate) lacks: Vec<Term>,
    /// The terms that are stated but not documented, so that `least` is not established.
    pub(crate) undocumented: Vec<Term>,
}

/// A dose of a course, in days from its start.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct DoseDays {
    /// The earliest day, if stated.
    pub(crate) from: Option<u16>,
    /// The latest day, if stated. The first dose is given on the day of the start.
    pub(crate) by: Option<u16>,
}

/// How a carrier's presence in the hive ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Ends {
    /// Nothing stays in the hive.
    AtOnce,
    /// The keeper must come back and take it out.
    TakenOut,
    /// Nobody has stated whether it must come out.
    NotStated,
    /// It is used up in the hive.
    UsedUp,
    /// It need not come out, but it is not documented when it is used up.
    PerhapsUsedUp,
}

impl Ends {
    /// Whether the keeper must come back to take it out, as far as is known.
    pub(crate) const fn in_a_visit(self) -> bool {
        matches!(self, Ends::TakenOut | Ends::NotStated)
    }
}

impl Plan {
    /// The plan for the brood that was seen. If none was seen, the least stay is the longer one.
    pub(crate) fn of(terms: &Terms, brood: Option<BroodState>) -> Plan {
        let stated = terms.doses.as_ref().map(|fact| fact.value);
        // The last dose has no day if a further dose has no stated day, or if there may be more doses.
        let doses = stated.and_then(|doses| doses.days_before_missing(1)).map(|days| {
            let mut on = 0_u16;
            let later = days.into_iter().map(|days| {
                on = on.saturating_add(days);
                on
            });
            std::iter::once(0).chain(later).collect::<Vec<_>>()
        });
        let last_dose = doses.as_ref().map(|doses| doses.iter().copied().fold(0, u16::max));
        let stay = terms.stay_min.least(brood).as_ref().map(|fact| fact.value);
        let removal = terms.removal.as_ref().map(|fact| fact.value);
        let spent = used_up(terms).filter(|_| removal == Fact::Known(RemovalNeed::NotNeeded));
        let ends = match (removal, spent) {
            _ if terms.nothing_stays() => Ends::AtOnce,
            (_, Some((_, true))) => Ends::UsedUp,
            (_, Some((_, false))) => Ends::PerhapsUsedUp,
            (Fact::Known(_), None) => Ends::TakenOut,
            (Fact::NotKnown(_), None) => Ends::NotStated,
        };
        let least = last_dose.and_then(|last| match (ends, spent) {
            (Ends::AtOnce, _) => Fact::Known(last),
            // Each carrier is used up on its own day; the last one counts.
            (Ends::UsedUp, Some((days, _))) => Fact::Known(last.saturating_add(days)),
            // The day on which it is used up is not documented. It works for at least the stated stay.
            (Ends::UsedUp | Ends::PerhapsUsedUp | Ends::TakenOut | Ends::NotStated, _) => {
                stay.map(|stay| may_be_out(stay, last.saturating_add(1)))
            }
        });
        let established = match ends {
            Ends::AtOnce | Ends::UsedUp => Fact::Known(Confidence::Document),
            Ends::PerhapsUsedUp => Fact::Known(Confidence::SecondHand),
            Ends::TakenOut | Ends::NotStated => {
                terms.stay_min.least(brood).as_ref().map(|fact| fact.confidence)
            }
        };
        let stays = terms.stay_min.bounds().filter(|(shorter, longer)| shorter != longer);
        Plan {
            lacks: lacks(ends, doses.missing(), stay.missing()),
            undocumented: undocumented(terms, ends),
            doses_by: stated.known().and_then(Doses::latest),
            doses,
            ends,
            count: stated.map(|doses| doses.count),
            least,
            stay,
            turns_on_brood: stays.filter(|_| brood.is_none()),
            most: terms.stay_max.most(brood),
            confidence: least.and_then(|_| established),
        }
    }

    /// How many days it is certainly in, including the day of placing, even if the least stay is not stated. At least
    /// 1.
    pub(crate) fn surely_in(&self) -> u16 {
        let last_dose = self.doses.known().and_then(|doses| doses.last()).map(|last| last.saturating_add(1));
        let stay = self.stay.known().filter(|_| self.ends != Ends::AtOnce).copied();
        // Unstated terms add no certain day.
        [self.least.known().copied(), stay, last_dose].into_iter().flatten().fold(1, u16::max)
    }

    /// Each dose with its days, in order: the first, and every further dose with a stated day.
    pub(crate) fn each_dose(&self) -> Vec<DoseDays> {
        let first = DoseDays { from: Some(0), by: Some(0) };
        let further = (1..self.count.known().copied().map_or(1, usize::from)).map(|dose| DoseDays {
            from: self.doses.known().and_then(|doses| doses.get(dose)).copied(),
            by: self.doses_by.as_ref().and_then(|by| by.get(dose)).copied(),
        });
        std::iter::once(first).chain(further).collect()
    }

    /// For each dose with a stated earliest day, the earliest and latest day. Both are the earliest if no latest is
    /// stated.
    pub(crate) fn dose_days(&self) -> Vec<(u16, u16)> {
        let days = self.each_dose().into_iter().filter_map(|dose| Some((dose.from?, dose.by)));
        days.map(|(from, by)| (from, by.map_or(from, |by| by.max(from)))).collect()
    }

    /// Whether further doses have no stated day, or the number of doses is not stated.
    pub(crate) fn later_doses_open(&self) -> bool {
        !self.doses.is_known()
    }

    /// The first and last day on which it may be in or out, because the least stay or the need for removal is not
    /// stated. There is no last day if the longest stay is not stated.
    pub(crate) fn perhaps_in(&self) -> Option<(u16, Option<u16>)> {
        let known = self.least.is_known() && self.ends != Ends::NotStated;
        (!known).then(|| (self.surely_in(), self.most.known().map(|days| days.saturating_sub(1))))
    }

    /// The last day on which it is in, if it comes out as early as allowed.
    pub(crate) fn in_through(&self, start: Day) -> Day {
        start.plus(self.surely_in() - 1)
    }
}

/// The unstated terms without which the last day of a course is not known.
fn lacks(ends: Ends, of_doses: Option<Term>, of_stay: Option<Term>) -> Vec<Term> {
    let removal = (ends == Ends::NotStated).then_some(Term::Removal);
    let stay = of_stay.filter(|_| !matches!(ends, Ends::AtOnce | Ends::UsedUp));
    [of_doses, removal, stay].into_iter().flatten().collect()
}

/// The terms about its stay that are stated but not documented.
fn undocumented(terms: &Terms, ends: Ends) -> Vec<Term> {
    if matches!(ends, Ends::AtOnce | Ends::UsedUp) {
        return Vec::new();
    }
    let mut list = Vec::new();
    let perhaps_used_up = ends == Ends::PerhapsUsedUp;
    if perhaps_used_up && terms.removal.known().is_some_and(|fact| !fact.is_documented()) {
        list.push(Term::Removal);
    }
    if !terms.stay_min.stated().all(Sourced::is_documented) {
        list.push(Term::StayMin);
    }
    let with_brood = terms.stay_min.present.known().filter(|_| terms.stay_min.depends_on_brood());
    if with_brood.is_some_and(|fact| !fact.is_documented()) {
        list.push(Term::StayMinWithBrood);
    }
    if perhaps_used_up && !terms.stay_max.stated().all(Sourced::is_documented) {
        list.push(Term::StayMax);
    }
    list
}
