//! What the terms of a course mean for supers: while it is in, while a period runs after it, and after that.

use super::terms::Terms;
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::fact::Fact;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;

/// Whether supers may be on while it is in. An undocumented ban still bans; an undocumented permission permits nothing.
pub(crate) fn inside(terms: &Terms) -> Verdict {
    match &terms.supers_during {
        Fact::Known(fact) if fact.value == SupersDuring::Off => Verdict::No,
        Fact::Known(fact) if fact.is_documented() => Verdict::Yes,
        Fact::Known(_) | Fact::NotKnown(_) => Verdict::Unknown,
    }
}

/// The last day that is blocked by the periods that are known, once it is out on `out`; none if none of them blocks a day.
///
/// If the label allows supers during the treatment, the withdrawal period blocks the harvest and not the supers.
pub(crate) fn blocked_through(terms: &Terms, out: Day) -> Option<Day> {
    let withdrawal = terms.withdrawal.known().filter(|_| withdrawal_bars(terms) == Bars::Supers);
    let periods = [withdrawal, terms.wait.known()].into_iter().flatten();
    periods.filter_map(|fact| last_blocked_day(out, fact.value)).max()
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
