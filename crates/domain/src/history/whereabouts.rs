//! Where the carriers and doses of a course are on a day: in, out since a day, or nobody knows.

use super::terms::{Fact, Terms};
use super::{Course, Dose};
use crate::calendar::Day;
use crate::journal::entry::EntryId;
use crate::leaflet::Release;
use crate::words::RemovalNeed;

/// Where one carrier, or one dose, is on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Whereabouts {
    /// A carrier is in.
    In,
    /// It is out, or was given, or used up, since this day. Where several days are possible, the latest: a period counted from it
    /// is over in any case.
    Out(Day),
    /// It may be in, or out.
    InOrOut {
        /// The first day since which it may be out.
        first: Day,
        /// The last such day, if it is not the day looked at.
        last: Option<Day>,
        /// Why that is not known.
        doubt: Doubt,
    },
}

/// Why it is not known whether a carrier is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// A split or a uniting did not say where it went.
    NotSaid {
        /// On this day.
        since: Day,
        /// By this entry.
        entry: EntryId,
    },
    /// Nobody has established whether it must come out, or when it is used up.
    UsedUp,
}

impl Course {
    /// Where each carrier of the course is on a day, in the order of the doses; of doses that leave nothing inside, and of carriers
    /// that must come out, only the last counts.
    pub(crate) fn whereabouts(&self, on: Day) -> impl DoubleEndedIterator<Item = Whereabouts> + '_ {
        let each = match self.terms.release() {
            Some(Release::Single) => None,
            Some(Release::Slow) | None => used_up(&self.terms),
        };
        let given = self.doses_by(on).count();
        let first = if each.is_some() { 0 } else { given.saturating_sub(1) };
        // Doses stand in the order in which they were given.
        self.doses.get(first..given).unwrap_or_default().iter().map(move |dose| {
            match (each, self.terms.release()) {
                (Some((days, sure)), _) => self.spent_carrier(dose, days, sure, on),
                (None, Some(Release::Single)) => Whereabouts::Out(dose.on),
                (None, Some(Release::Slow) | None) => self.carrier_to_take_out(on),
            }
        })
    }

    /// A carrier that is in until it is taken out.
    fn carrier_to_take_out(&self, on: Day) -> Whereabouts {
        match (self.out_by(on), self.in_doubt.filter(|(since, _)| *since <= on)) {
            (Some(out), _) => Whereabouts::Out(out),
            (None, Some((since, entry))) => Whereabouts::InOrOut {
                first: since,
                last: Some(since),
                doubt: Doubt::NotSaid { since, entry },
            },
            (None, None) => Whereabouts::In,
        }
    }

    /// A carrier that need not come out, and is used up some days after its dose.
    fn spent_carrier(&self, dose: &Dose, days: u16, sure: bool, on: Day) -> Whereabouts {
        let spent = dose.on.plus(days);
        let used_up = Some(spent).filter(|spent| sure && *spent <= on);
        let gone = match (self.out_by(on), used_up) {
            (Some(out), Some(spent)) => Some(out.min(spent)),
            (out, spent) => out.or(spent),
        };
        if let Some(gone) = gone {
            return Whereabouts::Out(gone);
        }
        let perhaps_spent = Some(spent).filter(|spent| *spent <= on);
        match self.in_doubt.filter(|(since, _)| *since <= on) {
            Some((since, entry)) => Whereabouts::InOrOut {
                first: perhaps_spent.map_or(since, |spent| spent.min(since)),
                last: None,
                doubt: Doubt::NotSaid { since, entry },
            },
            None => match perhaps_spent {
                Some(first) => Whereabouts::InOrOut { first, last: None, doubt: Doubt::UsedUp },
                None => Whereabouts::In,
            },
        }
    }
}

/// After how many days a carrier is used up, if it need not come out, and whether both are documented; none if it must come out.
///
/// Where nobody has said whether it must come out, nothing may have stayed inside from the first day on, unless the leaflet says
/// that it works on slowly. Where it need not come out but no stay is stated, it may be gone from the next day on.
pub(crate) fn used_up(terms: &Terms) -> Option<(u16, bool)> {
    let stays = [&terms.stay_max, &terms.stay_min]
        .into_iter()
        .flat_map(|stay| [&stay.absent_or_lowest, &stay.present]);
    let stays = stays.flatten();
    let longest = stays.clone().map(|fact| fact.value).max();
    let documented = longest.is_some() && stays.clone().all(Fact::is_documented);
    // The next day, if no stay is stated.
    let days = longest.unwrap_or(1);
    match &terms.removal {
        Some(fact) if fact.value == RemovalNeed::Needed => None,
        Some(fact) => Some((days, documented && fact.is_documented())),
        None if terms.release() == Some(Release::Slow) => Some((days, false)),
        None => Some((0, false)),
    }
}
