//! What must happen before a colony may be supered, and by when.

use super::Answer;
use super::assess::{self, Standing, spent_on};
use super::grounds::Outcome;
use crate::basics::calendar::Day;
use crate::basics::words::RemovalNeed;
use crate::facts::history::{BroodSeen, Course, End, History, blocked_through};
use crate::rules::leaflet::rule::BroodState;

/// Something that must happen, or may happen, before supers go on.
#[derive(Debug, Clone, Copy)]
pub enum Step<'h> {
    /// Harvest supers are on while they must be off.
    TakeSupersOff {
        /// Since this day.
        since: Day,
    },
    /// The next dose of a course.
    GiveDose {
        /// The course.
        course: &'h Course,
        /// Which dose it is, counted from 1.
        number: u8,
        /// Of how many.
        of: u8,
        /// First day for it, if stated.
        from: Option<Day>,
        /// Last day for it, if stated.
        by: Option<Day>,
    },
    /// Take out what is in.
    TakeOut {
        /// The course.
        course: &'h Course,
        /// From when on it may come out.
        earliest: EarliestOut,
        /// By when it must be out, if stated.
        latest: Option<Day>,
    },
    /// Wait until it is used up; nothing has to be taken out.
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
        /// Since this day.
        since: Day,
    },
    /// Nothing but waiting.
    WaitThrough {
        /// The course.
        course: &'h Course,
        /// The last blocked day.
        last: Day,
    },
}

/// From when on a course may come out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EarliestOut {
    /// The day; where it turns on brood and none was seen, the later one. Absent if no least stay is stated.
    pub day: Option<Day>,
    /// With brood absent or at its lowest; absent unless brood makes a difference.
    pub brood_absent_or_lowest: Option<Day>,
    /// With brood present; absent unless brood makes a difference.
    pub brood_present: Option<Day>,
    /// The brood last seen, where it makes a difference.
    pub brood_seen: Option<BroodSeen>,
}

/// From when on a course may come out, as the record stood on a day: after the least stay, and after the day of
/// its last dose: what is given on a day does not come out on it.
pub(super) fn earliest_out(history: &History, course: &Course, on: Day) -> EarliestOut {
    let stay = &course.terms.stay_min;
    let last_dose = last_dose_due(course, on);
    let day = |days: u16| {
        let stayed = course.placed.plus(days);
        last_dose.map_or(stayed, |last| stayed.max(last.next()))
    };
    if !stay.depends_on_brood() {
        let least = stay.bounds().map(|(_, longer)| day(longer));
        return EarliestOut {
            day: least,
            brood_absent_or_lowest: None,
            brood_present: None,
            brood_seen: None,
        };
    }
    let under = |brood: BroodState| stay.under(brood).map(|fact| day(fact.value));
    let seen = history.brood_for(course, on).copied();
    let (absent, present) = (under(BroodState::AbsentOrLowest), under(BroodState::Present));
    EarliestOut {
        day: seen.and_then(|seen| under(seen.state())).or(absent.max(present)),
        brood_absent_or_lowest: absent,
        brood_present: present,
        brood_seen: seen,
    }
}

/// The first day for the last dose of a course that lacks some, if the days between doses are stated.
fn last_dose_due(course: &Course, on: Day) -> Option<Day> {
    doses_due(course, on)?.last().copied()
}

/// The first day for each dose that a course lacks, none of them in the past; none if the days between doses are not stated.
/// Without a stated number of doses nothing is known to be lacking.
pub(super) fn doses_due(course: &Course, on: Day) -> Option<Vec<Day>> {
    let Some(doses) = course.terms.doses.map(|fact| fact.value) else { return Some(Vec::new()) };
    let given = course.doses_by(on).count();
    let lacking = usize::from(doses.count).saturating_sub(given);
    let mut due = Vec::with_capacity(lacking);
    let mut last = course.doses_by(on).next_back()?.on;
    for _ in 0..lacking {
        last = last.plus(doses.interval_min_days?).max(on);
        due.push(last);
    }
    Some(due)
}

/// The day by which a course must be out, if stated; where it turns on brood and none was seen, the earlier one. What need not
/// come out has no such day.
fn latest_out(history: &History, course: &Course, on: Day) -> Option<Day> {
    if course.terms.removal.is_some_and(|fact| fact.value != RemovalNeed::Needed) {
        return None;
    }
    let stay = &course.terms.stay_max;
    let days = match history.brood_for(course, on) {
        Some(seen) => stay.under(seen.state()).map(|fact| fact.value),
        None => stay.bounds().map(|(shorter, _)| shorter),
    };
    days.map(|days| course.placed.plus(days))
}

/// Everything that must happen first.
pub(super) fn of<'h>(answer: &Answer<'h>) -> Vec<Step<'h>> {
    let (history, on) = (answer.history, answer.on);
    let mut steps = Vec::new();
    if history.ended.is_some_and(|(ended, _)| ended <= on) {
        return steps;
    }
    for course in answer.courses() {
        match Standing::of(course, on) {
            Standing::In | Standing::PerhapsSpent => {
                steps.extend(next_dose(course, on));
                let earliest = earliest_out(history, course, on);
                let latest = latest_out(history, course, on);
                let take_out = Step::TakeOut { course, earliest, latest };
                steps.push(
                    spent_on(course, on).map_or(take_out, |spent| Step::WaitUntilSpent { course, spent }),
                );
            }
            Standing::NotSaid(since, _) => steps.push(Step::RecordWhereabouts { course, since }),
            Standing::Out(out) => {
                steps.extend(next_dose(course, on).filter(|_| course.end == End::Open));
                let running = blocked_through(&course.terms, out);
                let flow = assess::barred_by_flow(history, course, out, on);
                let last = Some(running).filter(|_| out <= running).max(flow);
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
    steps.sort_by_key(Step::urgency);
    steps
}

fn next_dose(course: &Course, on: Day) -> Option<Step<'_>> {
    let doses = course.terms.doses.as_ref()?.value;
    let given = u8::try_from(course.doses_by(on).count()).ok()?;
    let last = course.doses_by(on).next_back()?.on;
    (given < doses.count).then(|| Step::GiveDose {
        course,
        number: given.saturating_add(1),
        of: doses.count,
        from: doses.interval_min_days.map(|days| last.plus(days)),
        by: doses.interval_max_days.map(|days| last.plus(days)),
    })
}

impl Step<'_> {
    /// Supers first, then what must be found out, then doses, then the rest: by the latest day, then by the earliest.
    fn urgency(&self) -> (u8, Day, Day) {
        let or_last = |day: Option<Day>| day.unwrap_or(Day::LAST);
        match self {
            Step::TakeSupersOff { since } => (0, *since, *since),
            Step::RecordWhereabouts { since, .. } => (1, *since, *since),
            Step::GiveDose { from, by, .. } => (2, or_last(*by), or_last(*from)),
            Step::TakeOut { earliest, latest, .. } => (3, or_last(*latest), or_last(earliest.day)),
            Step::WaitUntilSpent { spent: day, .. } | Step::WaitThrough { last: day, .. } => (3, *day, *day),
        }
    }
}
