//! The timeline of a course: where it stands on a day, what remains to be done, and when.

use super::line::Line;
use super::stay::{Stay, may_be_out};
use super::term::Term;
use super::whereabouts::{Doubt, Whereabouts, used_up, whereabouts};
use super::{BroodSeen, Course, End, History};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::words::RemovalNeed;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::rule::BroodState;

/// How many days a course goes on if its further doses have no last day. Common practice, no source.
const UNFINISHED_DAYS: u16 = 30;

/// Where a course stands on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// A carrier is in.
    In,
    /// Since this day all of it is out, given or used up.
    Out(Day),
    /// It may be used up since this day, but that is not documented.
    PerhapsSpent(Day),
    /// Since this day its whereabouts are not known: this split or uniting did not say where it went.
    NotSaid(Day, EntryId),
}

/// Whether a course is in, allowing for a removal that nobody has recorded yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Presence {
    /// It is in.
    In,
    /// It may be in.
    Perhaps,
    /// It is not in.
    Out,
}

/// A dose still to be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DoseDue {
    /// Number of the dose, counted from 1.
    pub number: u8,
    /// Number of doses in the course.
    pub of: u8,
    /// First day for it, if stated.
    pub from: Option<Day>,
    /// Last day for it, if stated.
    pub by: Option<Day>,
}

/// The earliest day on which a course may come out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EarliestOut {
    /// The day. The later one if it depends on brood and none was seen.
    pub day: Fact<Day, Term>,
    /// The days by state of brood. `None` if brood makes no difference.
    pub by_brood: Option<OutByBrood>,
}

/// The earliest days out by state of brood, where they differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct OutByBrood {
    /// The day with brood absent or at its lowest.
    pub absent_or_lowest: Fact<Day, Term>,
    /// The day with brood present.
    pub present: Fact<Day, Term>,
    /// The last brood inspection that counts, if any.
    pub seen: Option<BroodSeen>,
}

impl Standing {
    /// Where a course stands whose latest carrier is there.
    pub(crate) fn of_latest(carrier: Option<Whereabouts>) -> Standing {
        match carrier {
            Some(Whereabouts::Out(out)) => Standing::Out(out),
            Some(Whereabouts::NotKnown { may_be_in: false, last, .. }) => Standing::Out(last),
            Some(Whereabouts::NotKnown { doubt: Doubt::NotSaid { since, entry }, .. }) => {
                Standing::NotSaid(since, entry)
            }
            Some(Whereabouts::NotKnown { doubt: Doubt::UsedUp, first, .. }) => Standing::PerhapsSpent(first),
            // There is no carrier before the first dose, and no caller asks about such a day.
            Some(Whereabouts::In) | None => Standing::In,
        }
    }
}

impl EarliestOut {
    /// The last brood inspection that counts, if brood makes a difference.
    #[must_use]
    pub fn brood_seen(&self) -> Option<BroodSeen> {
        self.by_brood.and_then(|by_brood| by_brood.seen)
    }

    /// The days with brood absent or lowest and with brood present, if brood makes a difference and both are known.
    #[must_use]
    pub fn both_days(&self) -> Option<(Day, Day)> {
        let by_brood = self.by_brood?;
        by_brood.absent_or_lowest.known().copied().zip(by_brood.present.known().copied())
    }
}

impl Course {
    /// Whether this line of the course applies on a day: it had arrived, and no other line had replaced it.
    #[must_use]
    pub(crate) fn speaks_on(&self, day: Day) -> bool {
        Line::speaks_on(self, day)
    }

    /// Where it stands at the end of a day. The last of several carriers counts.
    #[must_use]
    pub fn standing(&self, on: Day) -> Standing {
        Standing::of_latest(whereabouts(self, on).next_back())
    }

    /// The day since which all of it is out, given or used up, as of the end of a day. `None` while it is in or
    /// uncertain.
    #[must_use]
    pub fn out_since(&self, on: Day) -> Option<Day> {
        match self.standing(on) {
            Standing::Out(out) => Some(out),
            Standing::In | Standing::PerhapsSpent(_) | Standing::NotSaid(..) => None,
        }
    }

    /// The day it ended according to the whole record, if known. A carrier that was used up and taken out later ended
    /// when it was taken out.
    #[must_use]
    pub fn ended(&self) -> Option<Day> {
        let since = self.out_since(Day::LAST)?;
        Some(self.out().map_or(since, |out| out.max(since)))
    }

    /// The day on which a carrier that need not come out is used up, if documented.
    #[must_use]
    pub(crate) fn spent_on(&self, on: Day) -> Option<Day> {
        let (days, sure) = used_up(&self.terms)?;
        sure.then(|| self.last_dose(on).plus(days))
    }

    /// The earliest day out for a state of brood, as of a day: after the least stay, and after the last dose.
    fn may_come_out_from(&self, brood: Option<BroodState>, on: Day) -> Fact<Day, Term> {
        let due = self.doses_due(on).map(|due| due.last().copied().unwrap_or_else(|| self.last_dose(on)));
        due.and_then(|last| self.may_come_out_after(brood, last))
    }

    /// The earliest day out for a state of brood if the last dose is given on `last_dose`.
    fn may_come_out_after(&self, brood: Option<BroodState>, last_dose: Day) -> Fact<Day, Term> {
        let stay = self.terms.stay_min.least(brood).as_ref();
        stay.map(|stay| may_be_out(self.placed.plus(stay.value), last_dose.next()))
    }

    /// Presence of a medicine that leaves nothing inside: it is in on the day of each dose, and the course goes on
    /// until the latest day for the last dose.
    fn presence_of_doses(&self, on: Day) -> Presence {
        if self.doses.iter().any(|dose| dose.on == on) {
            return Presence::In;
        }
        let next_by = self
            .next_dose(on)
            .map(|next| next.by.unwrap_or_else(|| self.last_dose(on).plus(UNFINISHED_DAYS)));
        if next_by.is_some_and(|by| on <= by) { Presence::Perhaps } else { Presence::Out }
    }

    /// The day of the last dose by the end of a day; the day of placing before the first dose.
    #[must_use]
    pub fn last_dose(&self, on: Day) -> Day {
        self.doses_by(on).next_back().map_or(self.placed, |dose| dose.on)
    }

    /// The next dose, if more are stated than were given by the end of a day.
    #[must_use]
    pub(crate) fn next_dose(&self, on: Day) -> Option<DoseDue> {
        let doses = self.terms.doses.known()?.value;
        let given = u8::try_from(self.doses_by(on).count()).ok()?;
        let last = self.last_dose(on);
        (given < doses.count).then(|| DoseDue {
            number: given.saturating_add(1),
            of: doses.count,
            from: doses.interval_min_days.map(|days| last.plus(days)),
            by: doses.interval_max_days.map(|days| last.plus(days)),
        })
    }

    /// The first day for each missing dose, none of them in the past. If the number of doses is not stated, no dose
    /// is missing.
    pub(crate) fn doses_due(&self, on: Day) -> Fact<Vec<Day>, Term> {
        let Fact::Known(doses) = &self.terms.doses else { return Fact::Known(Vec::new()) };
        let before_each = doses.value.days_before_missing(self.doses_by(on).count());
        before_each.map(|days| {
            let mut last = self.last_dose(on);
            let due = days.into_iter().map(|days| {
                last = last.plus(days).max(on);
                last
            });
            due.collect()
        })
    }

    /// The entries that support it: its doses, how it came here, and how it ended.
    pub fn entries(&self) -> impl Iterator<Item = EntryId> + use<> {
        let end = match self.end {
            End::Out { entry, .. } => Some(entry),
            End::Open => None,
        };
        let doses: Vec<EntryId> = self.doses.iter().map(|dose| dose.entry).collect();
        doses.into_iter().chain(self.came_by).chain(end)
    }
}

impl History {
    /// The earliest day out of a course, as of a day.
    #[must_use]
    pub fn earliest_out(&self, course: &Course, on: Day) -> EarliestOut {
        if !course.terms.stay_min.depends_on_brood() {
            return EarliestOut { day: course.may_come_out_from(None, on), by_brood: None };
        }
        let by_brood = OutByBrood {
            absent_or_lowest: course.may_come_out_from(Some(BroodState::AbsentOrLowest), on),
            present: course.may_come_out_from(Some(BroodState::Present), on),
            seen: self.brood_for(course, on).copied(),
        };
        let day = match by_brood.seen.map(|seen| seen.state()) {
            Some(BroodState::AbsentOrLowest) => by_brood.absent_or_lowest,
            // Without an inspection there may be brood.
            Some(BroodState::Present) | None => by_brood.present,
        };
        EarliestOut { day, by_brood: Some(by_brood) }
    }

    /// The day by which a course must be out; the earlier one if it depends on brood and none was seen. `None` if the
    /// carrier need not come out, or no longest stay is stated.
    #[must_use]
    pub(crate) fn latest_out(&self, course: &Course, on: Day) -> Option<Day> {
        let (stay, seen) = self.longest_stay(course, on)?;
        stay.most(seen).known().map(|days| course.placed.plus(*days))
    }

    /// The longest stay that a course may have, whatever the brood that nobody saw. `None` if the carrier need not come out, or
    /// no longest stay is stated.
    #[must_use]
    pub(crate) fn most_in_any_case<'c>(&self, course: &'c Course, on: Day) -> Option<&'c Sourced<u16>> {
        let (stay, seen) = self.longest_stay(course, on)?;
        stay.most_in_any_case(seen)
    }

    /// The longest stay of a course that must come out, and the brood seen that decides it.
    fn longest_stay<'c>(&self, course: &'c Course, on: Day) -> Option<(&'c Stay, Option<BroodState>)> {
        let need_not = course.terms.removal.known().is_some_and(|fact| fact.value != RemovalNeed::Needed);
        let stay = &course.terms.stay_max;
        let seen = || stay.may_turn_on_brood().then(|| self.brood_for(course, on).map(BroodSeen::state));
        (!need_not).then(|| (stay, seen().flatten()))
    }

    /// Whether a course is in on a day, allowing for an unrecorded removal. A carrier that must be taken out is in
    /// until the earliest day out; from then on it may be out.
    #[must_use]
    pub(crate) fn presence(&self, course: &Course, on: Day) -> Presence {
        if course.terms.nothing_stays() {
            return course.presence_of_doses(on);
        }
        // If it was taken out later, it was in before.
        let doubted = course.in_doubt.is_some_and(|(since, _)| since <= on);
        if course.out().is_some_and(|out| on < out) && !doubted {
            return Presence::In;
        }
        match course.standing(on) {
            Standing::Out(_) => Presence::Out,
            Standing::PerhapsSpent(_) | Standing::NotSaid(..) => Presence::Perhaps,
            Standing::In if used_up(&course.terms).is_some() => Presence::In,
            Standing::In => {
                let seen = self.brood_for(course, on).map(BroodSeen::state);
                // A missing dose may never be given: it counts on its first day, or not at all if it has none.
                let last = course.doses_due(course.last_dose(on)).known().and_then(|due| due.last().copied());
                let last = last.unwrap_or_else(|| course.last_dose(on));
                match course.may_come_out_after(seen, last) {
                    Fact::Known(earliest) if on < earliest => Presence::In,
                    Fact::Known(_) | Fact::NotKnown(_) => Presence::Perhaps,
                }
            }
        }
    }
}
