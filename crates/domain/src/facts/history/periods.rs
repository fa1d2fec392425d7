//! What the terms of a course mean for supers: while it is in, while a period runs after it, and after that.

use super::terms::Terms;
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::sourced::Sourced;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;

/// Whether supers may be on while it is in. An undocumented ban still bans; an undocumented permission permits nothing.
pub(crate) fn inside(terms: &Terms) -> Verdict {
    match &terms.supers_during {
        Some(fact) if fact.value == SupersDuring::Off => Verdict::No,
        Some(fact) if fact.is_documented() => Verdict::Yes,
        _ => Verdict::Unknown,
    }
}

/// Whether supers may be on once it is out and every stated period is over. Both periods must be documented for a yes.
fn after(terms: &Terms) -> Verdict {
    let documented = |fact: &Option<Sourced<u16>>| fact.as_ref().is_some_and(Sourced::is_documented);
    if documented(&terms.withdrawal) && documented(&terms.wait) { Verdict::Yes } else { Verdict::Unknown }
}

/// Whether supers may be on both while it is in and from the day it is out, so that it does not matter which is the
/// case.
pub(crate) fn free_in_or_out(terms: &Terms) -> bool {
    let no_wait = terms.wait.as_ref().is_some_and(|fact| fact.value == 0);
    inside(terms) == Verdict::Yes && after(terms) == Verdict::Yes && no_wait
}

/// The last blocked day once it is out on `out`: the later end of the withdrawal period and the wait.
///
/// If the label allows supers during the treatment, the withdrawal period blocks the harvest and not the supers.
pub(crate) fn blocked_through(terms: &Terms, out: Day) -> Day {
    let wait = terms.wait.as_ref().map_or(0, |fact| fact.value);
    let withdrawal = terms.withdrawal.as_ref().map_or(0, |fact| fact.value);
    let days = if withdrawal_bars(terms) == Bars::Supers { wait.max(withdrawal) } else { wait };
    last_blocked_day(out, days).unwrap_or_else(|| out.before())
}

/// The last day on which any period may block supers once it is out on `out`; the day before `out` if none does.
fn last_running(terms: &Terms, out: Day) -> Day {
    let withdrawal = terms.withdrawal.as_ref().filter(|_| withdrawal_bars(terms) != Bars::HarvestOnly);
    let last = withdrawal.and_then(|fact| last_blocked_day(out, fact.value));
    blocked_through(terms, out).max(last.unwrap_or(Day::FIRST))
}

/// The first free day once a course is out on `out`; none if a period is not established.
pub(crate) fn free_from(terms: &Terms, out: Day) -> Option<Day> {
    (after(terms) == Verdict::Yes).then(|| last_running(terms, out).next().max(out))
}

/// What a withdrawal period blocks.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Bars {
    /// Supers: they had to be off during the treatment.
    Supers,
    /// Only the harvest: supers may be on during the treatment, and so after it.
    HarvestOnly,
    /// One or the other.
    NotKnown,
}

/// What the withdrawal period blocks, given what is stated about supers during the treatment.
pub(crate) fn withdrawal_bars(terms: &Terms) -> Bars {
    match inside(terms) {
        Verdict::No => Bars::Supers,
        Verdict::Yes => Bars::HarvestOnly,
        Verdict::Unknown => Bars::NotKnown,
    }
}
