//! Where the carriers and doses of a course are on a day: in, out since a day, or not known.

use super::line::Line;
use super::stay::Stay;
use super::terms::Terms;
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::words::RemovalNeed;
use crate::journal::entry::EntryId;
use crate::rules::leaflet::Release;

/// Where one carrier, or one dose, is on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Whereabouts {
    /// A carrier is in.
    In,
    /// Out, given or used up since this day.
    Out(Day),
    /// Out since an unknown day, or perhaps still in.
    NotKnown {
        /// Whether it may still be in.
        may_be_in: bool,
        /// The earliest day since which it may be out.
        first: Day,
        /// The latest day since which it may be out.
        last: Day,
        /// The reason for the doubt.
        doubt: Doubt,
    },
}

/// Why it is not known whether a carrier is in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Doubt {
    /// A split or uniting did not say where it went.
    NotSaid {
        /// The day of the split or uniting.
        since: Day,
        /// The entry of the split or uniting.
        entry: EntryId,
    },
    /// Whether it must come out, or when it is used up, is not established.
    UsedUp,
}

/// Where each carrier of a line is on a day, in order of the doses. If doses leave nothing inside, or carriers must
/// come out, only the last one is listed.
pub(crate) fn whereabouts<L: Line>(line: &L, on: Day) -> impl DoubleEndedIterator<Item = Whereabouts> {
    let release = line.terms().release();
    let each = match release {
        Fact::Known(Release::Single) => None,
        Fact::Known(Release::Slow) | Fact::NotKnown(_) => used_up(line.terms()),
    };
    // Doses are in the order they were given.
    let given = line.doses().filter(|dose| *dose <= on).count();
    let first = if each.is_some() { 0 } else { given.saturating_sub(1) };
    line.doses().take(given).skip(first).map(move |dose| match (each, release) {
        (Some((days, sure)), _) => spent_carrier(line, dose.plus(days), sure, on),
        (None, Fact::Known(Release::Single)) => Whereabouts::Out(dose),
        (None, Fact::Known(Release::Slow) | Fact::NotKnown(_)) => carrier_to_take_out(line, on),
    })
}

/// A carrier that stays in until it is taken out.
fn carrier_to_take_out(line: &impl Line, on: Day) -> Whereabouts {
    let out = line.out().filter(|out| *out <= on);
    match (out, line.in_doubt().filter(|(since, _)| *since <= on)) {
        (Some(out), _) => Whereabouts::Out(out),
        (None, Some((since, entry))) => Whereabouts::NotKnown {
            may_be_in: true,
            first: since,
            last: since,
            doubt: Doubt::NotSaid { since, entry },
        },
        (None, None) => Whereabouts::In,
    }
}

/// A carrier that need not come out and is used up on day `spent`; `sure` if that is documented.
fn spent_carrier(line: &impl Line, spent: Day, sure: bool, on: Day) -> Whereabouts {
    let out = line.out().filter(|out| *out <= on);
    let surely_spent = Some(spent).filter(|spent| sure && *spent <= on);
    let gone = match (out, surely_spent) {
        (Some(out), Some(spent)) => Some(out.min(spent)),
        (out, spent) => out.or(spent),
    };
    let not_said = line.in_doubt().filter(|(since, _)| *since <= on);
    let perhaps_spent = Some(spent).filter(|spent| *spent <= on);
    // The possible first days out, each with the reason.
    let doubts = [
        not_said.map(|(since, entry)| (since, Doubt::NotSaid { since, entry })),
        perhaps_spent.map(|spent| (spent, Doubt::UsedUp)),
    ];
    let first = doubts.into_iter().flatten().min_by_key(|(first, _)| *first);
    match (gone, first) {
        (None, None) => Whereabouts::In,
        (None, Some((first, doubt))) => Whereabouts::NotKnown { may_be_in: true, first, last: on, doubt },
        (Some(gone), Some((first, doubt))) if first < gone => {
            Whereabouts::NotKnown { may_be_in: false, first, last: gone, doubt }
        }
        (Some(gone), _) => Whereabouts::Out(gone),
    }
}

/// After how many days a carrier that need not come out is used up, and whether that is documented. `None` if it must
/// come out.
///
/// If nobody has stated whether it must come out, the medicine may be gone from the first day on, unless the leaflet
/// says that it works slowly. If it need not come out but no stay is stated, it may be gone from the next day on.
pub(crate) fn used_up(terms: &Terms) -> Option<(u16, bool)> {
    let stays = [&terms.stay_max_longest, &terms.stay_min].into_iter().flat_map(Stay::stated);
    let longest = stays.clone().map(|fact| fact.value).max();
    let documented = longest.is_some() && stays.clone().all(Sourced::is_documented);
    let days = longest.unwrap_or(SPENT_AT_THE_EARLIEST_DAYS);
    match &terms.removal {
        Fact::Known(fact) if fact.value == RemovalNeed::Needed => None,
        Fact::Known(fact) => Some((days, documented && fact.is_documented())),
        Fact::NotKnown(_) if terms.release() == Fact::Known(Release::Slow) => Some((days, false)),
        Fact::NotKnown(_) => Some((0, false)),
    }
}

/// Days after which a carrier that need not come out may be gone, if no stay is stated.
const SPENT_AT_THE_EARLIEST_DAYS: u16 = 1;
