//! The steps before a colony may be supered, each with its latest day.

use super::Answer;
use super::assess;
use super::grounds::Outcome;
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::facts::history::{Course, DoseDue, EarliestOut, End, Standing, blocked_through};

/// A step that must or may happen before supers go on.
#[derive(Debug, Clone, Copy)]
pub enum Step<'h> {
    /// Take harvest supers off: they are on while they must be off.
    TakeSupersOff {
        /// The day since which they are on.
        since: Day,
    },
    /// Give the next dose of a course.
    GiveDose {
        /// The course.
        course: &'h Course,
        /// Number of the dose, counted from 1.
        number: u8,
        /// Number of doses in the course.
        of: u8,
        /// First day for it, if stated.
        from: Option<Day>,
        /// Last day for it, if stated.
        by: Option<Day>,
    },
    /// Take a course out.
    TakeOut {
        /// The course.
        course: &'h Course,
        /// The earliest day on which it may come out.
        earliest: EarliestOut,
        /// The day by which it must be out, if stated.
        latest: Option<Day>,
    },
    /// Wait until it is used up; nothing needs to be taken out.
    WaitUntilSpent {
        /// The course.
        course: &'h Course,
        /// The day on which it is used up.
        spent: Day,
    },
    /// Find out and record where the strips of a course went.
    RecordWhereabouts {
        /// The course.
        course: &'h Course,
        /// The day since which that is not known.
        since: Day,
    },
    /// Wait; nothing else is needed.
    WaitThrough {
        /// The course.
        course: &'h Course,
        /// The last blocked day.
        last: Day,
    },
}

/// All steps, the most urgent first.
pub(super) fn of<'h>(answer: &Answer<'h>) -> Vec<Step<'h>> {
    let (history, on) = (answer.history, answer.on);
    let mut steps = Vec::new();
    if history.ended.is_some_and(|(ended, _)| ended <= on) {
        return steps;
    }
    for course in answer.courses() {
        match course.standing(on) {
            Standing::In | Standing::PerhapsSpent(_) => {
                steps.extend(next_dose(course, on));
                let earliest = history.earliest_out(course, on);
                let latest = history.latest_out(course, on);
                let take_out = Step::TakeOut { course, earliest, latest };
                steps.push(
                    course.spent_on(on).map_or(take_out, |spent| Step::WaitUntilSpent { course, spent }),
                );
            }
            Standing::NotSaid(since, _) => steps.push(Step::RecordWhereabouts { course, since }),
            Standing::Out(out) => {
                steps.extend(next_dose(course, on).filter(|_| course.end == End::Open));
                let running = blocked_through(&course.terms, out);
                let flow = assess::barred_by_flow(history, course, out, on);
                let last = running.max(flow);
                if let Some(last) = last.filter(|last| on <= *last) {
                    steps.push(Step::WaitThrough { course, last });
                }
            }
        }
    }
    let barred = answer.grounds.iter().any(|ground| ground.decides && ground.outcome == Outcome::Broken);
    steps.extend(
        history.supers_on(on).filter(|_| barred).map(|span| Step::TakeSupersOff { since: span.from }),
    );
    let bars = |course: &Course| assess::verdict(history, course, on) != Verdict::Yes;
    steps.sort_by_key(|step| step.urgency(bars));
    steps
}

fn next_dose(course: &Course, on: Day) -> Option<Step<'_>> {
    let DoseDue { number, of, from, by } = course.next_dose(on)?;
    Some(Step::GiveDose { course, number, of, from, by })
}

impl Step<'_> {
    /// Sort key: supers first, then facts to find out, then doses, then what bars supers, then the rest; each by latest day,
    /// then by earliest.
    fn urgency(&self, bars: impl Fn(&Course) -> bool) -> (u8, Day, Day) {
        let or_last = |day: Option<Day>| day.unwrap_or(Day::LAST);
        match self {
            Step::TakeSupersOff { since } => (0, *since, *since),
            Step::RecordWhereabouts { since, .. } => (1, *since, *since),
            Step::GiveDose { from, by, .. } => (2, or_last(*by), or_last(*from)),
            Step::TakeOut { course, earliest, latest } => {
                (if bars(course) { 3 } else { 4 }, or_last(*latest), or_last(earliest.day.known().copied()))
            }
            Step::WaitUntilSpent { spent: day, .. } | Step::WaitThrough { last: day, .. } => (3, *day, *day),
        }
    }
}
