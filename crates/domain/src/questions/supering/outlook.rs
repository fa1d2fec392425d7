//! The answer day by day, stored as the few days on which it changes.

use super::assess;
use crate::basics::calendar::{Day, last_blocked_day};
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, History, Line, RIGHT_BEFORE_DAYS, used_up};

/// The last blocked and the first free day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Blocked {
    /// If no day is known to be free, the last day that is certainly blocked. `None` if no day was ever blocked, or
    /// no end is recorded.
    pub(crate) last: Option<Day>,
    /// The first free day according to the record, if known.
    pub(crate) first_free: Option<Day>,
}

/// The answer for all days, as a list of the days on which it changes.
pub(crate) struct Outlook {
    /// The first day of each run with its answer, in order. The first run begins with [`Day::FIRST`].
    stretches: Vec<(Day, Verdict)>,
}

impl Outlook {
    /// The answer for a colony.
    pub(crate) fn of(history: &History) -> Outlook {
        let courses: Vec<&Course> = history.courses.iter().collect();
        Outlook::of_colony(history).and(&Outlook::of_lines(history, &courses))
    }

    /// The answer for the colony itself, apart from its courses.
    pub(super) fn of_colony(history: &History) -> Outlook {
        Outlook::at(changes_of_colony(history), |day| history.colony_verdict(day))
    }

    /// The combined answer of some lines of courses in a colony, recorded or planned, on the days they apply.
    ///
    /// Each line is judged only on the days on which its own answer may change, so that the cost grows with the lines.
    pub(crate) fn of_lines<L: Line>(history: &History, lines: &[&L]) -> Outlook {
        let mut all = AllLines { blocked: 0, open: 0 };
        let mut turns = vec![(Day::FIRST, Verdict::Yes, Verdict::Yes)];
        for line in lines {
            let mut days = vec![Day::FIRST];
            changes(history, *line, &mut days);
            let of_line = Outlook::at(days, |day| {
                if line.speaks_on(day) { assess::verdict(history, *line, day) } else { Verdict::Yes }
            });
            let mut before = Verdict::Yes;
            for (day, verdict) in of_line.stretches {
                turns.push((day, before, verdict));
                before = verdict;
            }
        }
        turns.sort_unstable_by_key(|(day, ..)| *day);
        let mut stretches = Vec::new();
        for of_day in turns.chunk_by(|(one, ..), (other, ..)| one == other) {
            for (_, before, after) in of_day {
                all.turn(*before, *after);
            }
            stretches.extend(of_day.first().map(|(day, ..)| (*day, all.verdict())));
        }
        stretches.dedup_by_key(|(_, verdict)| *verdict);
        Outlook { stretches }
    }

    /// The answer if both outlooks must allow supers.
    pub(crate) fn and(&self, other: &Outlook) -> Outlook {
        let days = self.stretches.iter().chain(&other.stretches).map(|(from, _)| *from).collect();
        Outlook::at(days, |day| self.on(day).and(other.on(day)))
    }

    /// The answer on a day.
    fn on(&self, day: Day) -> Verdict {
        let next = self.stretches.partition_point(|(from, _)| *from <= day);
        let stretch = next.checked_sub(1).and_then(|index| self.stretches.get(index));
        // Never reached: the first run begins with the first of all days.
        stretch.map_or(Verdict::Unknown, |(_, verdict)| *verdict)
    }

    /// Whether the answer for a course may change on any day after `day`.
    pub(crate) fn may_change_after(history: &History, line: &impl Line, day: Day) -> bool {
        let mut days = Vec::new();
        changes(history, line, &mut days);
        days.into_iter().any(|change| day < change)
    }

    fn at(mut days: Vec<Day>, verdict: impl Fn(Day) -> Verdict) -> Outlook {
        days.sort_unstable();
        days.dedup();
        let mut stretches: Vec<(Day, Verdict)> = days.into_iter().map(|day| (day, verdict(day))).collect();
        stretches.dedup_by_key(|(_, verdict)| *verdict);
        Outlook { stretches }
    }

    /// The last blocked and first free day as seen from `on`: around the free days that contain `on`, or the next
    /// ones. `begun` is the first day considered. `out` is the last day on which something came out: after a course
    /// that blocked no day, the colony is free from then.
    pub(crate) fn blocked(&self, on: Day, begun: Day, out: Option<Day>) -> Blocked {
        if let Some(since) = self.free_since(on) {
            let blocked = begun < since;
            return Blocked {
                last: blocked.then(|| since.before()),
                first_free: if blocked { Some(since) } else { Some(begun).max(out) },
            };
        }
        match self.next_free(on) {
            Some(free) => Blocked { last: (begun < free).then(|| free.before()), first_free: Some(free) },
            // The first free day is not known, but the last certainly blocked day may be.
            None => Blocked { last: self.last_no().filter(|last| *last >= begun), first_free: None },
        }
    }

    /// The first free day on or after a day.
    pub(crate) fn free_from(&self, day: Day) -> Option<Day> {
        if self.on(day) == Verdict::Yes { Some(day) } else { self.next_free(day) }
    }

    /// The first day from which every day is free; [`Day::FIRST`] if no day is ever blocked. `None` if the last days
    /// are not free.
    pub(crate) fn free_for_good(&self) -> Option<Day> {
        self.stretches.last().filter(|(_, verdict)| *verdict == Verdict::Yes).map(|(from, _)| *from)
    }

    /// The first of the free days around `on`. `None` if `on` is not free.
    fn free_since(&self, on: Day) -> Option<Day> {
        let (from, verdict) = self.stretches.iter().rfind(|(from, _)| *from <= on)?;
        (*verdict == Verdict::Yes).then_some(*from)
    }

    /// The first free day after a day.
    fn next_free(&self, on: Day) -> Option<Day> {
        self.stretches
            .iter()
            .find(|(from, verdict)| *from > on && *verdict == Verdict::Yes)
            .map(|(from, _)| *from)
    }

    /// The last day that is certainly blocked. `None` if there is none, or if the blocked days never end.
    pub(crate) fn last_no(&self) -> Option<Day> {
        let pairs = self.stretches.iter().zip(self.stretches.iter().skip(1));
        let mut ends =
            pairs.filter(|((_, verdict), _)| *verdict == Verdict::No).map(|(_, (next, _))| next.before());
        let last = self.stretches.last().filter(|(_, verdict)| *verdict != Verdict::No);
        last.and(ends.next_back())
    }

    /// The runs between two days (inclusive), clipped to them.
    pub(crate) fn between(&self, from: Day, to: Day) -> Vec<(Day, Day, Verdict)> {
        let ends = self.stretches.iter().skip(1).map(|(next, _)| next.before()).chain([to]);
        let spans = self
            .stretches
            .iter()
            .zip(ends)
            .map(|((first, verdict), last)| ((*first).max(from), last.min(to), *verdict));
        spans.filter(|(first, last, _)| first <= last).collect()
    }
}

/// How many lines block a day or leave it open.
struct AllLines {
    blocked: usize,
    open: usize,
}

impl AllLines {
    /// The answer of one line changes.
    fn turn(&mut self, before: Verdict, after: Verdict) {
        if let Some(count) = self.counted(before) {
            *count = count.saturating_sub(1);
        }
        if let Some(count) = self.counted(after) {
            *count = count.saturating_add(1);
        }
    }

    const fn counted(&mut self, verdict: Verdict) -> Option<&mut usize> {
        match verdict {
            Verdict::Yes => None,
            Verdict::No => Some(&mut self.blocked),
            Verdict::Unknown => Some(&mut self.open),
        }
    }

    /// The answer of all lines together.
    const fn verdict(&self) -> Verdict {
        match (self.blocked, self.open) {
            (0, 0) => Verdict::Yes,
            (0, _) => Verdict::Unknown,
            _ => Verdict::No,
        }
    }
}

/// The days on which the answer for the colony itself may change.
fn changes_of_colony(history: &History) -> Vec<Day> {
    let known = [history.begun, history.unknown_since, history.ended].into_iter().flatten().map(|(on, _)| on);
    let archived = history.archived_through.map(|(through, _)| through.next());
    std::iter::once(Day::FIRST).chain(known).chain(archived).collect()
}

/// Adds the days on which the answer of a line of a course may change.
fn changes(history: &History, line: &impl Line, days: &mut Vec<Day>) {
    let terms = line.terms();
    let (here_from, until) = line.days();
    // The days on which it, or one of its carriers, may have come out.
    let mut outs = vec![here_from];
    outs.extend(line.doses());
    if let Some((stay, _)) = used_up(terms) {
        outs.extend(line.doses().map(|dose| dose.plus(stay)));
    }
    outs.extend(line.in_doubt().map(|(since, _)| since));
    outs.extend(line.out());
    let periods = [terms.withdrawal.known(), terms.wait.known()];
    for period in periods.into_iter().flatten() {
        days.extend(outs.iter().filter_map(|out| last_blocked_day(*out, period.value)).map(Day::next));
    }
    if let Some(bar) = terms.flow_before {
        for flow in history.flows_of(line) {
            let before = bar.value.days().unwrap_or(RIGHT_BEFORE_DAYS);
            days.extend([flow.from, flow.from.minus(before), flow.last.next()]);
            // A leaflet without a number of days bars supers in the year of the flow, so the answer may change at new
            // year.
            days.extend(Day::new(flow.from.year(), 1, 1));
        }
        days.extend(outs.iter().filter_map(|out| Some(out.plus(bar.value.days()?).next())));
    }
    days.extend(outs);
    days.extend(until);
}
