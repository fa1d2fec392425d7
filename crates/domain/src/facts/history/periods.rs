//! What the terms of a course mean for supers: while it is in, while a period runs after it, and after that.

use super::terms::Terms;
use crate::basics::calendar::{Day, last_blocked_day};
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

/// The last blocked day once it is out on `out`: the later end of the withdrawal period and the wait.
///
/// If the label allows supers during the treatment, the withdrawal period blocks the harvest and not the supers.
pub(crate) fn blocked_through(terms: &Terms, out: Day) -> Day {
    let wait = terms.wait.as_ref().map_or(0, |fact| fact.value);
    let withdrawal = terms.withdrawal.as_ref().map_or(0, |fact| fact.value);
    let days = if withdrawal_bars(terms) == Bars::Supers { wait.max(withdrawal) } else { wait };
    last_blocked_day(out, days).unwrap_or_else(|| out.before())
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
