//! What one course says of each day, as a step function: before it, while it is in, while a period runs, after that.

use super::terms::{Fact, Terms};
use super::{Course, End};
use crate::calendar::{Day, last_blocked_day};
use crate::leaflet::Release;
use crate::words::{RemovalNeed, SupersDuring};

/// The answer to a yes-or-no question when not everything is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Verdict {
    /// Yes, on documented facts.
    Yes,
    /// Not known.
    Unknown,
    /// No.
    No,
}

impl Verdict {
    /// Both must be yes: a no outweighs all, an unknown outweighs a yes.
    #[must_use]
    pub fn and(self, other: Verdict) -> Verdict {
        self.max(other)
    }

    /// The word for it.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Verdict::Yes => "yes",
            Verdict::Unknown => "unknown",
            Verdict::No => "no",
        }
    }
}

/// What one exposure says of each day: nothing before `from`; `inside` until `out`; no up to and including
/// `blocked_through`; `after` from then on.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Window {
    pub(crate) from: Day,
    /// The day on which it is out; [`Day::LAST`] when no such day is known.
    pub(crate) out: Day,
    /// The last day that a withdrawal period or wait blocks; the day before `out` when none does.
    pub(crate) blocked_through: Day,
    pub(crate) inside: Verdict,
    pub(crate) after: Verdict,
    /// Which course of the history it belongs to.
    pub(crate) course: usize,
}

impl Window {
    #[inline]
    pub(crate) fn on(&self, day: Day) -> Verdict {
        if day < self.from {
            Verdict::Yes
        } else if day < self.out {
            self.inside
        } else if day <= self.blocked_through {
            Verdict::No
        } else {
            self.after
        }
    }

    /// Whether it ever says anything but yes.
    pub(crate) fn bars(&self) -> bool {
        (self.inside != Verdict::Yes && self.from < self.out)
            || self.blocked_through >= self.out
            || self.after != Verdict::Yes
    }

    /// The last day of which it says no, or not known while inside.
    pub(crate) fn last_blocked(&self) -> Option<Day> {
        if self.blocked_through >= self.out {
            return Some(self.blocked_through);
        }
        (self.inside != Verdict::Yes && self.from < self.out).then(|| self.out.before())
    }

    /// The first day after everything it bars; for a dose with nothing after it, the day of the dose itself.
    pub(crate) fn first_free(&self) -> Option<Day> {
        if self.out == Day::LAST {
            return None;
        }
        let ends = self.blocked_through >= self.out || self.inside != Verdict::Yes;
        ends.then(|| self.blocked_through.next().max(self.out))
    }
}

/// The windows of a course: one for what stays inside, one per dose for what does not.
pub(super) fn of(index: usize, course: &Course) -> Vec<Window> {
    let terms = &course.terms;
    let inside = inside(terms);
    let after = after(terms);
    let window = |from: Day, out: Day| Window {
        from,
        out,
        blocked_through: blocked_through(terms, out),
        inside,
        after,
        course: index,
    };
    if terms.release() == Some(Release::Single) {
        return course.doses.iter().map(|dose| window(dose.on.max(course.here_from), dose.on)).collect();
    }
    match course.end {
        End::Out { on, .. } => vec![window(course.here_from, on)],
        End::NotSaid { since, .. } => {
            let in_doubt = Window {
                from: since,
                out: Day::LAST,
                blocked_through: Day::LAST,
                inside: if free_in_or_out(terms) { Verdict::Yes } else { Verdict::Unknown },
                after: Verdict::Unknown,
                course: index,
            };
            let before = Window {
                blocked_through: since.before(),
                after: Verdict::Yes,
                ..window(course.here_from, since)
            };
            vec![before, in_doubt]
        }
        End::Open => open(course, window),
    }
}

/// A carrier of which no removal is recorded. If it is documented to be used up in a known time, it is out after that
/// time; if that is only said, not documented, then from that day on nobody knows.
fn open(course: &Course, window: impl Fn(Day, Day) -> Window) -> Vec<Window> {
    let not_needed = course.terms.removal.as_ref().filter(|fact| fact.value == RemovalNeed::NotNeeded);
    let (Some(not_needed), Some((days, documented))) = (not_needed, spent_after(&course.terms)) else {
        return vec![window(course.here_from, Day::LAST)];
    };
    let sure = documented && not_needed.is_documented();
    let one = |given: Day| {
        let spent = window(given.max(course.here_from), given.plus(days));
        if sure {
            return spent;
        }
        Window { blocked_through: spent.out.before(), after: Verdict::Unknown, ..spent }
    };
    course.doses.iter().map(|dose| one(dose.on)).collect()
}

/// After how many days a carrier that need not come out is used up, and whether that is documented.
pub(crate) fn spent_after(terms: &Terms) -> Option<(u16, bool)> {
    let stays = [
        terms.stay_max.absent_or_lowest,
        terms.stay_max.present,
        terms.stay_min.absent_or_lowest,
        terms.stay_min.present,
    ];
    let longest = stays.iter().flatten().max_by_key(|fact| fact.value)?;
    Some((longest.value, stays.iter().flatten().all(Fact::is_documented)))
}

/// May supers be on while it is in. An undocumented ban still bans; an undocumented permission permits nothing.
fn inside(terms: &Terms) -> Verdict {
    match &terms.supers_during {
        Some(fact) if fact.value == SupersDuring::Off => Verdict::No,
        Some(fact) if fact.is_documented() => Verdict::Yes,
        _ => Verdict::Unknown,
    }
}

/// May supers be on once it is out and every stated period is over. Both periods must be documented for a yes.
fn after(terms: &Terms) -> Verdict {
    let documented = |fact: &Option<Fact<u16>>| fact.as_ref().is_some_and(Fact::is_documented);
    if documented(&terms.withdrawal) && documented(&terms.wait) { Verdict::Yes } else { Verdict::Unknown }
}

/// Whether supers may be on both while it is in and from the day it is out, so that it does not matter which it is.
pub(crate) fn free_in_or_out(terms: &Terms) -> bool {
    let no_wait = terms.wait.as_ref().is_some_and(|fact| fact.value == 0);
    inside(terms) == Verdict::Yes && after(terms) == Verdict::Yes && no_wait
}

/// The last day blocked once it is out on `out`: the later end of withdrawal period and wait.
///
/// Where the label allows supers during the treatment, the withdrawal period bars the harvest and not the supers.
fn blocked_through(terms: &Terms, out: Day) -> Day {
    let wait = terms.wait.as_ref().map_or(0, |fact| fact.value);
    let withdrawal = terms.withdrawal.as_ref().map_or(0, |fact| fact.value);
    let days = if withdrawal_bars_supers(terms) { wait.max(withdrawal) } else { wait };
    last_blocked_day(out, days).unwrap_or_else(|| out.before())
}

/// Whether the withdrawal period bars supers, and not only the harvest.
pub(crate) fn withdrawal_bars_supers(terms: &Terms) -> bool {
    inside(terms) != Verdict::Yes
}
