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
use crate::history::{Course, History, Verdict, blocked_through, free_from, free_in_or_out, inside};
use crate::journal::EntryId;

pub use around::Surroundings;
pub(crate) use assess::Standing;
pub use grounds::{Ground, Outcome, Reason, Topic};
pub(crate) use report::supply;
pub use report::{
    CourseReport, DaySpan, GroundReport, MissingReport, StepReport, SuperingReport, ValueReport,
    WholeApiaryReport,
};
pub use steps::{EarliestOut, Step};
pub use wording::NOTICE;
pub(crate) use wording::{named, topic_words};

/// The day since which all of a course is out, or was given or used up, by the end of a day; none while it is in or in doubt.
pub(crate) fn out_since(course: &Course, on: Day) -> Option<Day> {
    match Standing::of(course, on) {
        Standing::Out(out) => Some(out),
        Standing::In | Standing::PerhapsSpent | Standing::NotSaid(..) => None,
    }
}

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
        for course in self.courses_on(on) {
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

    /// The entry since which it is not known what is inside, if that is so on this day.
    fn unknown_on(&self, on: Day) -> Option<EntryId> {
        self.unknown_since.filter(|(since, _)| *since <= on).map(|(_, entry)| entry)
    }

    /// What the colony itself says, courses aside.
    fn colony_verdict(&self, on: Day) -> Verdict {
        match (self.begun, self.ended) {
            (_, Some((ended, _))) if ended <= on => Verdict::No,
            (Some((begun, _)), _) if begun <= on && self.unknown_on(on).is_none() => Verdict::Yes,
            _ => Verdict::Unknown,
        }
    }
}

impl<'h> Answer<'h> {
    /// The last day on which something recorded by the day asked about bars supers or leaves it open; none if nothing
    /// ever did, or if no end is recorded.
    #[must_use]
    pub fn last_blocked_day(&self) -> Option<Day> {
        let mut last = None;
        for course in self.courses() {
            let terms = &course.terms;
            let out = match Standing::of(course, self.on) {
                _ if free_in_or_out(terms) => continue,
                Standing::Out(out) => out,
                Standing::In if inside(terms) == Verdict::Yes => match assess::earlier_spent(course, self.on)
                {
                    None => continue,
                    Some((spent, true)) => spent,
                    Some((_, false)) => return None,
                },
                Standing::In => assess::spent_on(course, self.on)?,
                Standing::PerhapsSpent | Standing::NotSaid(..) => return None,
            };
            let was_in = inside(terms) != Verdict::Yes && course.here_from < out;
            let through = free_from(terms, out).map_or_else(|| blocked_through(terms, out), Day::before);
            last = last.max((was_in || through >= out).then_some(through));
        }
        last
    }

    /// From when on the colony is free, as the record stood on the day asked about.
    #[must_use]
    pub fn first_free(&self) -> FirstFree {
        if self.verdict != Verdict::Yes && self.history.colony_verdict(self.on) != Verdict::Yes {
            return FirstFree::NotKnown;
        }
        let mut out = None;
        let begun = self.history.begun.map_or(self.on, |(begun, _)| begun);
        let mut free = begun;
        for course in self.courses() {
            let terms = &course.terms;
            let first = match Standing::of(course, self.on) {
                _ if free_in_or_out(terms) => continue,
                Standing::In if inside(terms) == Verdict::Yes => match assess::earlier_spent(course, self.on)
                {
                    None => continue,
                    Some((spent, true)) => free_from(terms, spent),
                    Some((_, false)) => None,
                },
                Standing::Out(out) => free_from(terms, out),
                Standing::NotSaid(..) => None,
                Standing::In | Standing::PerhapsSpent => {
                    let spent = assess::spent_on(course, self.on);
                    let day = spent.unwrap_or_else(|| {
                        let earliest = steps::earliest_out(self.history, course, self.on).day;
                        let day = earliest.map_or(self.on, |earliest| earliest.max(self.on));
                        out = out.max(Some(day));
                        day
                    });
                    free_from(terms, day)
                }
            };
            let Some(first) = first else { return FirstFree::NotKnown };
            free = free.max(first);
        }
        match out {
            Some(out) => FirstFree::OnceOut { out, free },
            // After several courses, free since the last blocked day; after a dose that blocks no day, since that dose.
            None if self.verdict == Verdict::Yes => {
                FirstFree::OnRecord(self.last_blocked_day().map_or(free, Day::next).max(begun))
            }
            None => self.not_barred_again(free).map_or(FirstFree::NotKnown, FirstFree::OnRecord),
        }
    }

    /// The first day from `day` on that is not barred by the wait after a carrier which may lie under supers: it bars them
    /// only once it is used up, and so may bar again what another course has just set free.
    fn not_barred_again(&self, mut day: Day) -> Option<Day> {
        let waits = self.courses().filter_map(|course| {
            let may_lie_under =
                Standing::of(course, self.on) == Standing::In && inside(&course.terms) == Verdict::Yes;
            let (spent, sure) = assess::last_spent(course, self.on).filter(|_| may_lie_under)?;
            // Not known from then on, unless it does not matter whether it is in or out.
            let free = if sure { free_from(&course.terms, spent) } else { None };
            (!free_in_or_out(&course.terms)).then_some((spent, free))
        });
        let mut waits: Vec<(Day, Option<Day>)> = waits.collect();
        waits.sort_unstable();
        for (spent, free) in waits {
            if spent <= day {
                day = day.max(free?);
            }
        }
        Some(day)
    }

    /// The courses that bear on the day.
    #[must_use = "iterators are lazy"]
    pub fn courses(&self) -> impl DoubleEndedIterator<Item = &'h Course> + use<'h> {
        self.history.courses_on(self.on)
    }

    /// What must happen first, in order of the latest day.
    #[must_use]
    pub fn steps(&self) -> Vec<Step<'h>> {
        steps::of(self)
    }
}
