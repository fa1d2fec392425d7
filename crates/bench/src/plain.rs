//! The yardstick: the supering question written by hand over a list of courses, without grounds and sources.

use combclear_domain::basics::calendar::{Day, last_blocked_day};
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::SupersDuring;
use combclear_domain::facts::history::{Course, End, History};

/// A course as a program would store it that only answers yes, no or unknown.
#[derive(Debug, Clone, Copy)]
pub struct PlainCourse {
    /// The day it was given.
    pub placed: Day,
    /// The day it came out, if it did; for a single dose, its day.
    pub out: Option<Day>,
    /// Withdrawal period in days.
    pub withdrawal: u16,
    /// Days between removal and supers.
    pub wait: u16,
    /// Whether supers must be off while it is in.
    pub supers_off: bool,
    /// Whether all of this is documented.
    pub documented: bool,
}

/// The answer for the courses of one colony.
#[must_use]
pub fn may_be_supered(courses: &[PlainCourse], on: Day) -> Verdict {
    let mut answer = Verdict::Yes;
    for course in courses {
        if on < course.placed {
            continue;
        }
        match course.out {
            Some(out) if out <= on => {
                let days = if course.supers_off { course.withdrawal.max(course.wait) } else { course.wait };
                if last_blocked_day(out, days).is_some_and(|last| on <= last) {
                    return Verdict::No;
                }
            }
            _ if course.supers_off => return Verdict::No,
            _ => {}
        }
        if !course.documented {
            answer = Verdict::Unknown;
        }
    }
    answer
}

/// The verdict, and the last blocked day as of a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PlainAnswer {
    /// Yes, no or unknown.
    pub verdict: Verdict,
    /// The last day that any course blocks. `None` if none ever does, or if one is in and its end is not known.
    pub last_blocked: Option<Day>,
}

/// The answer for the courses of one colony, with the last blocked day.
#[must_use]
pub fn answer(courses: &[PlainCourse], on: Day) -> PlainAnswer {
    let mut last: Option<Day> = None;
    let mut open_ended = false;
    for course in courses.iter().filter(|course| course.placed <= on) {
        match course.out {
            Some(out) => {
                let days = if course.supers_off { course.withdrawal.max(course.wait) } else { course.wait };
                let while_in = (course.supers_off && course.placed < out).then(|| out.before());
                last = last.max(last_blocked_day(out, days).or(while_in));
            }
            None => open_ended |= course.supers_off,
        }
    }
    PlainAnswer { verdict: may_be_supered(courses, on), last_blocked: last.filter(|_| !open_ended) }
}

/// The same course with its last blocked day precomputed: the fastest version that is still readable.
#[derive(Debug, Clone, Copy)]
pub struct WorkedOut {
    /// The day it was given.
    pub placed: Day,
    /// The day it came out; `Day::LAST` while it is in.
    pub out: Day,
    /// The last day blocked after removal; the day before `out` if none.
    pub last_blocked: Day,
    /// Whether supers must be off while it is in.
    pub supers_off: bool,
    /// Whether all of this is documented.
    pub documented: bool,
}

impl WorkedOut {
    /// Precomputes the days of a course.
    #[must_use]
    pub fn of(course: &PlainCourse) -> WorkedOut {
        let PlainCourse { placed, supers_off, documented, .. } = *course;
        let days = if supers_off { course.withdrawal.max(course.wait) } else { course.wait };
        let out = course.out.unwrap_or(Day::LAST);
        let last_blocked = last_blocked_day(out, days).unwrap_or(out.before());
        WorkedOut { placed, out, last_blocked, supers_off, documented }
    }
}

/// The answer for precomputed courses.
#[must_use]
pub fn free_of_all(courses: &[WorkedOut], on: Day) -> Verdict {
    let mut answer = Verdict::Yes;
    for course in courses.iter().filter(|course| course.placed <= on) {
        let blocked = if on < course.out { course.supers_off } else { on <= course.last_blocked };
        if blocked {
            return Verdict::No;
        }
        if !course.documented {
            answer = Verdict::Unknown;
        }
    }
    answer
}

/// The courses of a history in this form. Only for scenes in which every course is out, or is in and must come out.
#[must_use]
pub fn of(history: &History) -> Vec<PlainCourse> {
    history.courses.iter().map(boiled_down).collect()
}

fn boiled_down(course: &Course) -> PlainCourse {
    let terms = &course.terms;
    let (Some(withdrawal), Some(wait), Some(supers)) =
        (terms.withdrawal.known(), terms.wait.known(), terms.supers_during.known())
    else {
        panic!("the scene leaves a term of {} open", course.entry);
    };
    let out = match course.end {
        End::Out { on, .. } => Some(on),
        _ if terms.nothing_stays() => Some(course.placed),
        End::Open => None,
    };
    PlainCourse {
        placed: course.placed,
        out,
        withdrawal: withdrawal.value,
        wait: wait.value,
        supers_off: supers.value == SupersDuring::Off,
        documented: withdrawal.is_documented() && wait.is_documented(),
    }
}
