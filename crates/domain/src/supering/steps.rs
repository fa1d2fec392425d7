//! What must happen before a colony may be supered, and by when.

use super::Answer;
use super::assess::Standing;
use crate::calendar::{Day, first_free_day};
use crate::history::{BroodSeen, Course, Fact, History, Verdict};
use crate::leaflet::rule::BroodState;
use crate::words::SupersDuring;

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
    on: Day,
}

impl EarliestOut {
    /// The earliest day from the day asked about on which it may be out, and the first free day after that; none if
    /// a period is not established.
    pub(super) fn free_after(&self, course: &Course) -> Option<(Day, Day)> {
        let documented = |fact: &Option<Fact<u16>>| {
            fact.as_ref().filter(|fact| fact.is_documented()).map(|fact| fact.value)
        };
        let withdrawal = documented(&course.terms.withdrawal)?;
        let wait = documented(&course.terms.wait)?;
        let out = self.day.unwrap_or(self.on).max(self.on);
        Some((out, first_free_day(out, withdrawal.max(wait))))
    }
}

/// From when on a course may come out, as the record stood on a day.
pub(super) fn earliest_out(history: &History, course: &Course, on: Day) -> EarliestOut {
    let stay = &course.terms.stay_min;
    let day = |days: u16| course.placed.plus(days);
    if !stay.depends_on_brood() {
        let least = stay.bounds().map(|(_, longer)| day(longer));
        return EarliestOut {
            day: least,
            brood_absent_or_lowest: None,
            brood_present: None,
            brood_seen: None,
            on,
        };
    }
    let under = |brood: BroodState| stay.under(brood).map(|fact| day(fact.value));
    let seen = history.brood_on(on).copied();
    let (absent, present) = (under(BroodState::AbsentOrLowest), under(BroodState::Present));
    EarliestOut {
        day: seen.and_then(|seen| under(seen.state())).or(absent.max(present)),
        brood_absent_or_lowest: absent,
        brood_present: present,
        brood_seen: seen,
        on,
    }
}

/// The day by which a course must be out, if stated; where it turns on brood and none was seen, the earlier one.
fn latest_out(history: &History, course: &Course, on: Day) -> Option<Day> {
    let stay = &course.terms.stay_max;
    let days = match history.brood_on(on) {
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
                steps.push(Step::TakeOut { course, earliest, latest: latest_out(history, course, on) });
                let off =
                    course.terms.supers_during.as_ref().is_some_and(|fact| fact.value == SupersDuring::Off);
                if let Some(span) = history.supers_on(on).filter(|_| off)
                    && !steps.iter().any(|step| matches!(step, Step::TakeSupersOff { .. }))
                {
                    steps.push(Step::TakeSupersOff { since: span.from });
                }
            }
            Standing::NotSaid(since, _) => steps.push(Step::RecordWhereabouts { course, since }),
            Standing::Out(out) => {
                steps.extend(next_dose(course, on).filter(|_| course.end == crate::history::End::Open));
                let window = history.windows.iter().rfind(|window| {
                    history.courses.get(window.course).is_some_and(|of| of.entry == course.entry)
                        && window.out == out
                        && window.on(on) == Verdict::No
                });
                steps.extend(window.map(|window| Step::WaitThrough { course, last: window.blocked_through }));
            }
        }
    }
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
    /// Supers first; then by the latest day, by the earliest, and what has no day last.
    fn urgency(&self) -> (u8, Day, Day) {
        let or_last = |day: Option<Day>| day.unwrap_or(Day::LAST);
        match self {
            Step::TakeSupersOff { since } => (0, *since, *since),
            Step::RecordWhereabouts { since, .. } => (1, *since, *since),
            Step::GiveDose { from, by, .. } => (2, or_last(*by), or_last(*from)),
            Step::TakeOut { earliest, latest, .. } => (2, or_last(*latest), or_last(earliest.day)),
            Step::WaitThrough { last, .. } => (2, *last, *last),
        }
    }
}
