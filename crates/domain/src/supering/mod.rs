//! The question: may this colony be supered on this day?
//!
//! [`History::may_be_supered`] gives the bare verdict. [`History::supering`] gives the whole answer: every course with
//! what it says of the day, breaches that stand in the record, the last blocked and the first free day, and what must
//! happen first. [`SuperingReport`] is the same in words, for people and for JSON.
//!
//! A course says the same of a day whether asked for the verdict or for the grounds; a property test keeps the two in
//! step. Entries that happened after the day asked about do not bear on it.

mod around;
mod assess;
mod grounds;
mod report;
mod steps;
mod wording;
mod written;

use crate::calendar::Day;
use crate::history::{Course, History, Verdict, Window};
use crate::words::MedicinesInside;

pub use around::Surroundings;
pub use grounds::{Ground, Outcome, Reason, Topic};
pub use report::{CourseReport, DaySpan, GroundReport, MissingReport, StepReport, SuperingReport};
pub use steps::{EarliestOut, Step};

/// How many days ahead an answer looks, the day asked about included.
pub const DAYS_AHEAD: u16 = 120;

/// The answer for one colony and one day.
#[derive(Debug, Clone)]
pub struct Answer<'h> {
    /// The history it was drawn from.
    pub history: &'h History,
    /// The day asked about.
    pub on: Day,
    /// Yes, no or unknown.
    pub verdict: Verdict,
    /// Why: first what decides, course by course, each followed by what else stands in the record about it.
    pub grounds: Vec<Ground<'h>>,
}

/// From when on the colony is free, as far as the record tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FirstFree {
    /// From this day on, by what is recorded.
    OnRecord(Day),
    /// From `free` on, if everything that is in comes out on `out`, the earliest lawful day, and nothing else happens.
    OnceOut {
        /// The earliest day on which everything may be out.
        out: Day,
        /// The first free day after that.
        free: Day,
    },
    /// Something is missing to tell.
    NotKnown,
}

impl History {
    /// Yes, no or unknown, and nothing else.
    #[must_use]
    pub fn may_be_supered(&self, on: Day) -> Verdict {
        let colony = self.colony_verdict(on);
        if colony == Verdict::No {
            return colony;
        }
        self.windows.iter().fold(colony, |verdict, window| verdict.and(window.on(on)))
    }

    /// The answer with its grounds.
    #[must_use]
    pub fn supering(&self, on: Day) -> Answer<'_> {
        let mut grounds = Vec::with_capacity(4 + 3 * self.courses.len());
        assess::colony(self, on, &mut grounds);
        for course in self.courses.iter().filter(|course| course.here_from <= on) {
            assess::course(self, course, on, &mut grounds);
        }
        let verdict = grounds.iter().fold(Verdict::Yes, |verdict, ground| verdict.and(ground.verdict()));
        Answer { history: self, on, verdict, grounds }
    }

    /// The verdict for this and the following days, equal neighbours joined. Each span runs from its first to its last
    /// day, both included.
    #[must_use]
    pub fn supering_ahead(&self, on: Day, days: u16) -> Vec<(Day, Day, Verdict)> {
        let mut spans: Vec<(Day, Day, Verdict)> = Vec::new();
        for day in (0..days).map(|ahead| on.plus(ahead)) {
            let verdict = self.may_be_supered(day);
            match spans.last_mut() {
                Some((_, last, known)) if *known == verdict => *last = day,
                _ => spans.push((day, day, verdict)),
            }
        }
        spans
    }

    /// What the colony itself says, courses aside.
    fn colony_verdict(&self, on: Day) -> Verdict {
        match (self.begun, self.ended) {
            (_, Some((ended, _))) if ended <= on => Verdict::No,
            (Some((begun, _)), _) if begun <= on && self.medicines_inside == MedicinesInside::None => {
                Verdict::Yes
            }
            _ => Verdict::Unknown,
        }
    }
}

impl<'h> Answer<'h> {
    /// The last day on which something recorded by the day asked about bars supers or leaves it open; none if nothing
    /// ever did, or if no end is recorded.
    #[must_use]
    pub fn last_blocked_day(&self) -> Option<Day> {
        let last = self.windows().filter_map(Window::last_blocked).max();
        last.filter(|last| *last < Day::LAST.before())
    }

    /// From when on the colony is free.
    #[must_use]
    pub fn first_free(&self) -> FirstFree {
        let begun = self.history.begun.map_or(self.on, |(begun, _)| begun);
        if self.verdict == Verdict::Yes {
            let free = self.windows().filter_map(Window::first_free).max();
            return FirstFree::OnRecord(free.unwrap_or(begun));
        }
        if self.history.colony_verdict(self.on) != Verdict::Yes {
            return FirstFree::NotKnown;
        }
        let mut out = None;
        let mut free = begun;
        for window in self.windows().filter(|window| window.bars()) {
            if window.out < Day::LAST {
                if window.after != Verdict::Yes {
                    return FirstFree::NotKnown;
                }
                free = free.max(window.first_free().unwrap_or(free));
                continue;
            }
            let course = self.history.courses.get(window.course);
            let earliest = course
                .and_then(|course| steps::earliest_out(self.history, course, self.on).free_after(course));
            let Some((day, first)) = earliest else { return FirstFree::NotKnown };
            out = out.max(Some(day));
            free = free.max(first);
        }
        match out {
            Some(out) => FirstFree::OnceOut { out, free },
            None => FirstFree::OnRecord(free),
        }
    }

    fn windows(&self) -> impl Iterator<Item = &'h Window> + '_ {
        let on = self.on;
        self.history.windows.iter().filter(move |window| window.from <= on)
    }

    /// The courses that bear on the day.
    pub fn courses(&self) -> impl Iterator<Item = &'h Course> + '_ {
        let on = self.on;
        self.history.courses.iter().filter(move |course| course.here_from <= on)
    }

    /// What must happen first, in order of the latest day.
    #[must_use]
    pub fn steps(&self) -> Vec<Step<'h>> {
        steps::of(self)
    }
}
