//! The timeline of a course: where it stands on a day, what is still to be done with it, and when.

use super::line::Line;
use super::plan::Plan;
use super::whereabouts::{Doubt, Whereabouts, used_up, whereabouts};
use super::{BroodSeen, Course, End, History};
use crate::basics::calendar::Day;
use crate::basics::words::RemovalNeed;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::Release;
use crate::rules::leaflet::rule::BroodState;

/// How many days a course goes on if its further doses have no last day. Common practice, no source.
const UNFINISHED_DAYS: u16 = 30;

/// Where a course stands on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Standing {
    /// A carrier is in.
    In,
    /// All of it is out, or was given, or is used up, since this day.
    Out(Day),
    /// It may be used up since this day, but that is not documented.
    PerhapsSpent(Day),
    /// A split or uniting did not say where it went: the day and the entry.
    NotSaid(Day, EntryId),
}

/// Whether a course is in, allowing for a removal that nobody has recorded yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Presence {
    /// It is.
    In,
    /// It may be.
    Perhaps,
    /// It is not.
    Out,
}

/// A dose still to be given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct DoseDue {
    /// Which dose it is, counted from 1.
    pub number: u8,
    /// Of how many.
    pub of: u8,
    /// First day for it, if stated.
    pub from: Option<Day>,
    /// Last day for it, if stated.
    pub by: Option<Day>,
}

/// From when a course may come out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EarliestOut {
    /// The day; the later one if it depends on brood and none was seen. None if no least stay is stated.
    pub day: Option<Day>,
    /// With brood absent or at its lowest; none unless brood makes a difference.
    pub brood_absent_or_lowest: Option<Day>,
    /// With brood present; none unless brood makes a difference.
    pub brood_present: Option<Day>,
    /// The brood last seen, if brood makes a difference.
    pub brood_seen: Option<BroodSeen>,
}

impl Course {
    /// Whether this line of the course applies on a day: it was here, and no other line has taken over.
    #[must_use]
    pub fn speaks_on(&self, day: Day) -> bool {
        Line::speaks_on(self, day)
    }

    /// Where it stands at the end of a day. Of several carriers the last one counts.
    #[must_use]
    pub fn standing(&self, on: Day) -> Standing {
        match whereabouts(self, on).next_back() {
            Some(Whereabouts::Out(out)) => Standing::Out(out),
            Some(Whereabouts::NotKnown { may_be_in: false, last, .. }) => Standing::Out(last),
            Some(Whereabouts::NotKnown { doubt: Doubt::NotSaid { since, entry }, .. }) => {
                Standing::NotSaid(since, entry)
            }
            Some(Whereabouts::NotKnown { doubt: Doubt::UsedUp, first, .. }) => Standing::PerhapsSpent(first),
            // Nobody asks about a course on a day before its first dose.
            Some(Whereabouts::In) | None => Standing::In,
        }
    }

    /// The day since which all of it is out, given or used up, as of the end of a day; none while it is in or
    /// uncertain.
    #[must_use]
    pub fn out_since(&self, on: Day) -> Option<Day> {
        match self.standing(on) {
            Standing::Out(out) => Some(out),
            Standing::In | Standing::PerhapsSpent(_) | Standing::NotSaid(..) => None,
        }
    }

    /// The day on which it ended by everything on record, if that is known. A carrier that was used up and taken out
    /// afterwards ended when it was taken out.
    #[must_use]
    pub fn ended(&self) -> Option<Day> {
        let since = self.out_since(Day::LAST)?;
        Some(self.out().map_or(since, |out| out.max(since)))
    }

    /// The day on which a carrier that need not come out is used up, if that is documented.
    #[must_use]
    pub fn spent_on(&self, on: Day) -> Option<Day> {
        let (days, sure) = used_up(&self.terms)?;
        sure.then(|| self.last_dose(on).plus(days))
    }

    /// Whether it is in on a day. A carrier that must be taken out is in until it may come out; from then on it may be
    /// out.
    #[must_use]
    pub fn presence(&self, on: Day, brood: Option<BroodState>) -> Presence {
        if self.terms.release() == Some(Release::Single) {
            return self.presence_of_doses(on);
        }
        // What was taken out later was in before.
        let doubted = self.in_doubt.is_some_and(|(since, _)| since <= on);
        if self.out().is_some_and(|out| on < out) && !doubted {
            return Presence::In;
        }
        match self.standing(on) {
            Standing::Out(_) => Presence::Out,
            Standing::PerhapsSpent(_) | Standing::NotSaid(..) => Presence::Perhaps,
            Standing::In if used_up(&self.terms).is_some() => Presence::In,
            Standing::In => {
                let plan = Plan::of(&self.terms, brood);
                let earliest = plan.least.or(plan.stay).map(|days| self.placed.plus(days));
                if earliest.is_some_and(|earliest| on < earliest) { Presence::In } else { Presence::Perhaps }
            }
        }
    }

    /// For a medicine that leaves nothing inside: it is in on the day of a dose, and the course goes on until the last
    /// dose could have been given.
    fn presence_of_doses(&self, on: Day) -> Presence {
        if self.doses.iter().any(|dose| dose.on == on) {
            return Presence::In;
        }
        let next_by = self
            .next_dose(on)
            .map(|next| next.by.unwrap_or_else(|| self.last_dose(on).plus(UNFINISHED_DAYS)));
        if next_by.is_some_and(|by| on <= by) { Presence::Perhaps } else { Presence::Out }
    }

    /// The day of the last dose by the end of a day; the day of placing before the first.
    #[must_use]
    pub fn last_dose(&self, on: Day) -> Day {
        self.doses_by(on).next_back().map_or(self.placed, |dose| dose.on)
    }

    /// The next dose, if more are stated than were given by the end of a day.
    #[must_use]
    pub fn next_dose(&self, on: Day) -> Option<DoseDue> {
        let doses = self.terms.doses.as_ref()?.value;
        let given = u8::try_from(self.doses_by(on).count()).ok()?;
        let last = self.last_dose(on);
        (given < doses.count).then(|| DoseDue {
            number: given.saturating_add(1),
            of: doses.count,
            from: doses.interval_min_days.map(|days| last.plus(days)),
            by: doses.interval_max_days.map(|days| last.plus(days)),
        })
    }

    /// The first day for each missing dose, none of them in the past; none if the days between doses are not stated.
    /// Without a stated number of doses no dose counts as missing.
    #[must_use]
    pub fn doses_due(&self, on: Day) -> Option<Vec<Day>> {
        let Some(doses) = self.terms.doses.map(|fact| fact.value) else { return Some(Vec::new()) };
        let given = self.doses_by(on).count();
        let lacking = usize::from(doses.count).saturating_sub(given);
        let mut due = Vec::with_capacity(lacking);
        let mut last = self.doses_by(on).next_back()?.on;
        for _ in 0..lacking {
            last = last.plus(doses.interval_min_days?).max(on);
            due.push(last);
        }
        Some(due)
    }

    /// The entries it rests on: its doses, how it came here, its end.
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
    /// From when a course may come out, as the record stood on a day: after the least stay, and after the day of its
    /// last dose, since a carrier does not come out on the day it goes in.
    #[must_use]
    pub fn earliest_out(&self, course: &Course, on: Day) -> EarliestOut {
        let stay = &course.terms.stay_min;
        let last_dose = course.doses_due(on).and_then(|due| due.last().copied());
        let day = |days: u16| {
            let stayed = course.placed.plus(days);
            last_dose.map_or(stayed, |last| stayed.max(last.next()))
        };
        if !stay.depends_on_brood() {
            let least = stay.bounds().map(|(_, longer)| day(longer));
            return EarliestOut {
                day: least,
                brood_absent_or_lowest: None,
                brood_present: None,
                brood_seen: None,
            };
        }
        let under = |brood: BroodState| stay.under(brood).map(|fact| day(fact.value));
        let seen = self.brood_for(course, on).copied();
        let (absent, present) = (under(BroodState::AbsentOrLowest), under(BroodState::Present));
        EarliestOut {
            day: seen.and_then(|seen| under(seen.state())).or(absent.max(present)),
            brood_absent_or_lowest: absent,
            brood_present: present,
            brood_seen: seen,
        }
    }

    /// The day by which a course must be out, if stated; the earlier one if it depends on brood and none was seen. None
    /// for a carrier that need not come out.
    #[must_use]
    pub fn latest_out(&self, course: &Course, on: Day) -> Option<Day> {
        if course.terms.removal.is_some_and(|fact| fact.value != RemovalNeed::Needed) {
            return None;
        }
        let seen = self.brood_for(course, on).map(BroodSeen::state);
        course.terms.stay_max.most(seen).map(|days| course.placed.plus(days))
    }
}
