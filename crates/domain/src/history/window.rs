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
    /// From this day on it says nothing any more: a later dose brought other terms. [`Day::LAST`] if none did.
    pub(crate) until: Day,
}

impl Window {
    #[inline]
    pub(crate) fn on(&self, day: Day) -> Verdict {
        if day < self.from || (day >= self.until && self.until < Day::LAST) {
            Verdict::Yes
        } else if day < self.out || self.out == Day::LAST {
            self.inside
        } else if day <= self.blocked_through {
            Verdict::No
        } else {
            self.after
        }
    }
}

/// The windows of a course: for carriers, from placing to the end; for doses that leave nothing inside, one each.
pub(super) fn of(course: &Course) -> Vec<Window> {
    let terms = &course.terms;
    let out = match course.end {
        End::Out { on, .. } => Some(on),
        End::Open => None,
    };
    let until = course.until.unwrap_or(Day::LAST);
    let carrier = Carrier { terms, out, doubt: course.in_doubt.map(|(since, _)| since), until };
    let since = |given: Day| given.max(course.here_from);
    if terms.release() == Some(Release::Single) {
        return course.doses.iter().flat_map(|dose| carrier.ended(since(dose.on), dose.on)).collect();
    }
    if let Some((days, sure)) = used_up(terms) {
        // Each carrier is used up in its own time.
        let each = course.doses.iter().map(|dose| (since(dose.on), dose.on.plus(days)));
        return each.flat_map(|(from, spent)| carrier.until_used_up(from, spent, sure)).collect();
    }
    carrier.until_out(course.here_from)
}

/// What one carrier says of each day.
struct Carrier<'c> {
    terms: &'c Terms,
    /// The day it came out.
    out: Option<Day>,
    /// The day from which on it is in doubt whether it is in.
    doubt: Option<Day>,
    until: Day,
}

impl Carrier<'_> {
    fn window(&self, from: Day, out: Day) -> Window {
        Window {
            from,
            out,
            blocked_through: blocked_through(self.terms, out),
            inside: inside(self.terms),
            after: after(self.terms),
            until: self.until,
        }
    }

    /// Inside until `out`, and nothing said from then on: another window goes on from there.
    fn inside_until(&self, from: Day, out: Day) -> Window {
        Window { blocked_through: out.before(), after: Verdict::Yes, ..self.window(from, out) }
    }

    /// In or out, nobody knows, until `out`.
    fn in_doubt(&self, from: Day, out: Day) -> Window {
        let inside = if free_in_or_out(self.terms) { Verdict::Yes } else { Verdict::Unknown };
        Window { inside, ..self.window(from, out) }
    }

    /// In until a day, and what runs after it.
    fn ended(&self, from: Day, out: Day) -> Vec<Window> {
        let runs = self.perhaps_blocked(from, out);
        std::iter::once(self.window(from, out)).chain(runs).collect()
    }

    /// In or out, nobody knows, until a day; then what runs after it.
    fn doubted(&self, from: Day, out: Day) -> Vec<Window> {
        let runs = self.perhaps_blocked(from, out);
        std::iter::once(self.in_doubt(from, out)).chain(runs).collect()
    }

    /// A withdrawal period of which nobody knows whether it bars the supers or the harvest only.
    fn perhaps_blocked(&self, from: Day, out: Day) -> Option<Window> {
        let days =
            self.terms.withdrawal.as_ref().filter(|_| withdrawal_bars(self.terms) == Bars::NotKnown)?.value;
        let last = last_blocked_day(out, days).filter(|_| out < Day::LAST)?;
        Some(Window { inside: Verdict::Unknown, ..self.inside_until(out.max(from), last.next()) })
    }

    /// In until it comes out; from the day of doubt on, in or out.
    fn until_out(&self, from: Day) -> Vec<Window> {
        let out = self.out.unwrap_or(Day::LAST);
        match self.doubt.filter(|since| *since < out) {
            Some(since) => then(self.inside_until(from, since), self.doubted(since.max(from), out)),
            None => self.ended(from, out),
        }
    }

    /// A carrier that need not come out. If the time of its being used up is documented, it is out from that day on,
    /// whatever becomes of the remains; if that is only said, then from that day on nobody knows.
    fn until_used_up(&self, from: Day, spent: Day, sure: bool) -> Vec<Window> {
        let out = self.out.unwrap_or(Day::LAST);
        let doubt = self.doubt.map_or(spent, |since| since.min(spent));
        let before = self.inside_until(from, doubt);
        match (sure, out <= doubt) {
            (_, true) => self.ended(from, out),
            (true, false) if doubt == spent => self.ended(from, spent),
            // It is gone by then, but since when is in doubt, and so is when the periods after it end.
            (true, false) => then(before, vec![self.in_doubt_through(doubt.max(from), out.min(spent))]),
            (false, false) => then(before, vec![self.in_doubt_through(doubt.max(from), out)]),
        }
    }

    /// In or out, nobody knows, until `out` and until every period counted from then is over.
    fn in_doubt_through(&self, from: Day, out: Day) -> Window {
        let over = if out < Day::LAST { last_running(self.terms, out).next().max(out) } else { out };
        Window { blocked_through: over.before(), ..self.in_doubt(from, over) }
    }
}

fn then(before: Window, mut after: Vec<Window>) -> Vec<Window> {
    after.insert(0, before);
    after
}

/// After how many days a carrier is used up, if it need not come out, and whether both are documented.
///
/// Where nobody has said whether it must come out, nothing may have stayed inside from the first day on. Where it need not
/// come out but no stay is stated, it may be gone from the next day on.
pub(crate) fn used_up(terms: &Terms) -> Option<(u16, bool)> {
    let stays = [&terms.stay_max, &terms.stay_min]
        .into_iter()
        .flat_map(|stay| [&stay.absent_or_lowest, &stay.present]);
    let stays = stays.flatten();
    let longest = stays.clone().map(|fact| fact.value).max();
    let documented = longest.is_some() && stays.clone().all(Fact::is_documented);
    let days = longest.unwrap_or(1);
    match &terms.removal {
        Some(fact) if fact.value == RemovalNeed::Needed => None,
        Some(fact) => Some((days, documented && fact.is_documented())),
        None => Some((0, false)),
    }
}

/// May supers be on while it is in. An undocumented ban still bans; an undocumented permission permits nothing.
pub(crate) fn inside(terms: &Terms) -> Verdict {
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
pub(crate) fn blocked_through(terms: &Terms, out: Day) -> Day {
    let wait = terms.wait.as_ref().map_or(0, |fact| fact.value);
    let withdrawal = terms.withdrawal.as_ref().map_or(0, |fact| fact.value);
    let days = if withdrawal_bars(terms) == Bars::Supers { wait.max(withdrawal) } else { wait };
    last_blocked_day(out, days).unwrap_or_else(|| out.before())
}

/// The last day on which any period may bar supers once it is out on `out`, the day before `out` if none does.
fn last_running(terms: &Terms, out: Day) -> Day {
    let withdrawal = terms.withdrawal.as_ref().filter(|_| withdrawal_bars(terms) != Bars::HarvestOnly);
    let last = withdrawal.and_then(|fact| last_blocked_day(out, fact.value));
    blocked_through(terms, out).max(last.unwrap_or(Day::FIRST))
}

/// The first free day after a course is out on `out`; none while a period is not established.
pub(crate) fn free_from(terms: &Terms, out: Day) -> Option<Day> {
    (after(terms) == Verdict::Yes).then(|| last_running(terms, out).next().max(out))
}

/// What a withdrawal period bars.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Bars {
    /// Supers: they had to be off during the treatment.
    Supers,
    /// Only the taking of honey: supers may be on during the treatment, so they may after it.
    HarvestOnly,
    /// One or the other.
    NotKnown,
}

/// What the withdrawal period bars, by what is said of supers during the treatment.
pub(crate) fn withdrawal_bars(terms: &Terms) -> Bars {
    match inside(terms) {
        Verdict::No => Bars::Supers,
        Verdict::Yes => Bars::HarvestOnly,
        Verdict::Unknown => Bars::NotKnown,
    }
}
