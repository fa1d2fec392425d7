//! How the terms of a course affect supers: while it is in, during the periods after it, and later.

use super::terms::Terms;
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::fact::Fact;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;

/// Whether supers may be on while it is in. An undocumented ban counts; an undocumented permission does not.
pub(crate) fn inside(terms: &Terms) -> Verdict {
    match &terms.supers_during {
        Fact::Known(fact) if fact.value == SupersDuring::Off => Verdict::No,
        Fact::Known(fact) if fact.is_documented() => Verdict::Yes,
        Fact::Known(_) | Fact::NotKnown(_) => Verdict::Unknown,
    }
}

/// The last day blocked by the known periods after a course that is out on `out`. `None` if they block no day.
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
    /// Supers: the label requires them off during the treatment.
    Supers,
    /// Only the harvest: the label allows supers during the treatment, and so after it.
    HarvestOnly,
    /// Supers or only the harvest; the label's rule for supers is not known.
    NotKnown,
}

/// What the withdrawal period blocks, given the stated rule for supers during the treatment.
pub(crate) fn withdrawal_bars(terms: &Terms) -> Bars {
    match inside(terms) {
        Verdict::No => Bars::Supers,
        Verdict::Yes => Bars::HarvestOnly,
        Verdict::Unknown => Bars::NotKnown,
    }
}
