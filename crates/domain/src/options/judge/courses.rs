//! What is in the colony already, and the courses before: how many, how long ago, of what class.

use super::rules;
use crate::calendar::Day;
use crate::history::{Course, End, used_up};
use crate::journal::event::Inspection;
use crate::leaflet::rule::{Other, YearCounting};
use crate::leaflet::{Leaflet, Release, Says, Topic};
use crate::options::because::Because;
use crate::options::choice::Choice;
use crate::options::colony::Colony;
use crate::options::plan::Plan;
use crate::options::span::Span;
use crate::options::state::{Condition, Found, State};
use crate::words::Brood;

/// After so many days without a course no broodless time of before goes on. Common practice, no source.
const NO_BROODLESS_TIME_DAYS: u16 = 180;

/// What is in: the same medicine, others that must not be beside it, a feeder.
pub(super) fn inside(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let same =
        |course: &Course| course.terms.leaflet.as_ref().is_some_and(|known| known.id == choice.leaflet.id);
    let mut conditions = vec![Condition::by_day("already_in", span, |day| is_in(colony, day, same))];
    let not_with = |other: Other| {
        rules(choice, Topic::NotWith, span, move |rule, day| {
            let Says::NotWith { others, .. } = &rule.says else { return None };
            others.contains(&other).then(|| match other {
                Other::VarroaMedicines => is_in(colony, day, |course| !same(course)),
                Other::Feeding | Other::NosemaMedicines => feeding(colony, day),
            })
        })
    };
    let others = not_with(Other::VarroaMedicines);
    if !others.iter().any(|condition| condition.binds) {
        // What is in may forbid it in turn.
        let banned = |course: &Course, day: Day| !same(course) && bans_beside(course, day);
        conditions.push(Condition::by_day("other_medicines", span, |day| {
            is_in(colony, day, |course| banned(course, day))
        }));
        let beside = Condition::by_day("other_medicines", span, |day| {
            is_in(colony, day, |course| !same(course) && !banned(course, day))
        });
        if others.is_empty() {
            conditions.push(beside.advice());
        }
    }
    conditions.extend(others);
    conditions.extend(not_with(Other::Feeding));
    conditions
}

/// Whether the leaflet of what is in forbids other varroa medicines beside it.
fn bans_beside(course: &Course, day: Day) -> bool {
    let Some(leaflet) = &course.terms.leaflet else { return false };
    leaflet.in_force(Topic::NotWith, day, None).any(|rule| match &rule.says {
        Says::NotWith { others, .. } => others.contains(&Other::VarroaMedicines),
        _ => false,
    })
}

/// Whether one of these courses is in on a day. Until it may come out it is; from then on that is not known.
fn is_in(colony: &Colony<'_>, day: Day, which: impl Fn(&Course) -> bool) -> Found {
    let mut perhaps: Option<Because> = None;
    for course in colony.history.courses_on(day).filter(|course| which(course)) {
        let in_until = match standing(colony, course, day) {
            Standing::Out => continue,
            Standing::In => true,
            Standing::Perhaps => false,
        };
        let (medicine, placed, entry) = (course.medicine.clone(), course.placed, course.entry);
        if in_until {
            return Found::broken(Because::AlreadyIn { medicine, placed, entry });
        }
        perhaps = perhaps.or(Some(Because::PerhapsIn { medicine, placed, entry }));
    }
    match perhaps.or_else(|| came_with_unknown(colony, day)) {
        Some(because) => Found::unknown(because),
        None => Found::met_anyway(Because::NothingIn),
    }
}

/// What is found of the past of a colony whose past is not all known holds only if it is broken already.
fn known_past(colony: &Colony<'_>, day: Day, found: Found) -> Found {
    match came_with_unknown(colony, day) {
        Some(because) if found.state == State::Met => Found::unknown(because),
        _ => found,
    }
}

fn came_with_unknown(colony: &Colony<'_>, day: Day) -> Option<Because> {
    let (since, entry) = colony.history.unknown_since.filter(|(since, _)| *since <= day)?;
    Some(Because::CameWithUnknown { since, entry })
}

enum Standing {
    In,
    Perhaps,
    Out,
}

fn standing(colony: &Colony<'_>, course: &Course, day: Day) -> Standing {
    if course.terms.release() == Some(Release::Single) {
        let given = course.doses.iter().any(|dose| dose.on == day);
        return if given { Standing::In } else { Standing::Out };
    }
    match course.end {
        End::Out { on, .. } if on <= day => return Standing::Out,
        End::Out { .. } if course.in_doubt.is_none_or(|(since, _)| day < since) => return Standing::In,
        End::Out { .. } | End::Open => {}
    }
    if course.in_doubt.is_some_and(|(since, _)| since <= day) {
        return Standing::Perhaps;
    }
    let last = course.doses_by(day).next_back().map_or(course.placed, |dose| dose.on);
    if let Some((days, sure)) = used_up(&course.terms) {
        return match (day < last.plus(days), sure) {
            (true, _) => Standing::In,
            (false, true) => Standing::Out,
            (false, false) => Standing::Perhaps,
        };
    }
    let brood = colony.history.brood_for(course, day).map(crate::history::BroodSeen::state);
    let earliest = Plan::of(&course.terms, None, brood).least.map(|days| course.placed.plus(days));
    if earliest.is_some_and(|earliest| day < earliest) { Standing::In } else { Standing::Perhaps }
}

fn feeding(colony: &Colony<'_>, day: Day) -> Found {
    let feeder = |seen: &Inspection| seen.feeder.map(u32::from);
    match colony.counts(day, feeder) {
        Some(count) if count.number > 0 => {
            Found::broken(Because::Feeder { seen: count.on, entry: count.entry })
        }
        Some(count) => Found::met(Because::NoFeeder { seen: count.on, entry: count.entry }),
        None => Found::unknown(Because::FeederNotSeen),
    }
}

/// What came before: number, gap, broodless time, class.
pub(super) fn before(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let leaflet: &Leaflet = &choice.leaflet;
    let mut conditions = rules(choice, Topic::CoursesPerYear, span, |rule, day| {
        let Says::CoursesPerYear { count, counted } = rule.says else { return None };
        Some(known_past(colony, day, per_year(colony.courses_of(leaflet, day), day, count, counted)))
    });
    conditions.extend(rules(choice, Topic::CoursesPerBroodlessPeriod, span, |rule, day| {
        let Says::CoursesPerBroodlessPeriod { count } = rule.says else { return None };
        Some(known_past(colony, day, broodless(colony, colony.courses_of(leaflet, day), day, count)))
    }));
    conditions.extend(rules(choice, Topic::GapBetweenCourses, span, |rule, day| {
        let Says::GapBetweenCourses { days } = rule.says else { return None };
        Some(known_past(colony, day, gap(colony.courses_of(leaflet, day).next_back(), day, days)))
    }));
    for condition in rules(choice, Topic::Class, span, |rule, day| {
        let Says::Class { name } = &rule.says else { return None };
        Some(class(colony, day, name))
    }) {
        // To change the class is advice: it does not promise that mites stay without resistance.
        conditions.push(condition.advice());
    }
    conditions
}

/// A year may be the calendar's or any twelve months. Where the leaflet does not say which, both must agree.
#[expect(clippy::needless_pass_by_value, reason = "an iterator is cheap to clone and reads best by value")]
fn per_year<'c>(
    courses: impl DoubleEndedIterator<Item = &'c Course> + Clone,
    day: Day,
    most: u8,
    counted: Option<YearCounting>,
) -> Found {
    let count = |within: &dyn Fn(Day) -> bool| {
        u8::try_from(courses.clone().filter(|course| within(course.placed)).count()).unwrap_or(u8::MAX)
    };
    let calendar = count(&|placed| placed.year() == day.year());
    let year_ago = day.a_year_before();
    let twelve = count(&|placed| placed >= year_ago);
    let last = courses.clone().next_back().map(|course| course.placed);
    let found = |given: u8, year: &'static str| {
        let because = Because::Courses { given, most, year, last };
        match given {
            0 => Found::met_anyway(because),
            _ if given < most => Found::met(because),
            _ => Found::broken(because),
        }
    };
    match counted {
        Some(YearCounting::CalendarYear) => found(calendar, "calendar year"),
        Some(YearCounting::TwelveMonths) => found(twelve, "twelve months"),
        None if (calendar < most) == (twelve < most) => found(twelve.max(calendar), "year"),
        None => Found::unknown(Because::CoursesTurnOnYear {
            in_calendar_year: calendar,
            in_twelve_months: twelve,
            most,
        }),
    }
}

/// How many courses were given since brood was last seen. Whether a time without brood goes on is told by what was seen since
/// the last of them: none, or the least, or nobody looked.
fn broodless<'c>(
    colony: &Colony<'_>,
    courses: impl DoubleEndedIterator<Item = &'c Course>,
    day: Day,
    most: u8,
) -> Found {
    let mut seen = colony.history.broods.iter().filter(|seen| seen.on <= day);
    let present = seen.clone().rfind(|seen| seen.brood == Brood::Present).map(|seen| seen.on);
    let earliest = day.minus(NO_BROODLESS_TIME_DAYS);
    let placed: Vec<Day> = courses.map(|course| course.placed).filter(|placed| earliest <= *placed).collect();
    let Some(last) = placed.last().copied() else { return Found::met_anyway(Because::NoCourseBefore) };
    if let Some(seen) = present.filter(|present| *present > last) {
        return Found::met_anyway(Because::BroodSince { last, seen });
    }
    let since = placed.iter().filter(|placed| present.is_none_or(|present| present < **placed)).count();
    let given = u8::try_from(since).unwrap_or(u8::MAX);
    if given < most {
        return Found::met(Because::Courses { given, most, year: "time without brood", last: Some(last) });
    }
    match seen.rfind(|seen| seen.on > last).map(|seen| seen.brood) {
        Some(Brood::Absent) => Found::broken(Because::SameBroodlessPeriod { last, seen_absent: true }),
        _ => Found::unknown(Because::SameBroodlessPeriod { last, seen_absent: false }),
    }
}

/// Days between the end of the last course and the start of this one: the day of the end is not counted.
fn gap(last: Option<&Course>, day: Day, least: u16) -> Found {
    let Some(course) = last else { return Found::met_anyway(Because::NoCourseBefore) };
    let last_dose = course.doses.last().map_or(course.placed, |dose| dose.on);
    let ended = match course.end {
        End::Out { on, .. } => Some(on),
        End::Open if course.terms.release() == Some(Release::Single) => Some(last_dose),
        End::Open => used_up(&course.terms).filter(|(_, sure)| *sure).map(|(days, _)| last_dose.plus(days)),
    };
    let Some(ended) = ended.filter(|ended| *ended <= day) else {
        return Found::unknown(Because::LastNotEnded { placed: course.placed, entry: course.entry });
    };
    let days = day.days_since(ended);
    let because = Because::SinceLast { ended, days, least };
    if days > i64::from(least) { Found::met(because) } else { Found::broken(because) }
}

fn class(colony: &Colony<'_>, day: Day, class: &str) -> Found {
    let mut not_known = None;
    for course in colony.courses(day).rev().take(2) {
        let (medicine, placed) = (course.medicine.clone(), course.placed);
        let leaflet = course.terms.leaflet.as_ref();
        let of = leaflet.and_then(|leaflet| {
            leaflet.in_force(Topic::Class, placed, None).find_map(|rule| match &rule.says {
                Says::Class { name } => Some(name.clone()),
                _ => None,
            })
        });
        match of {
            Some(of) if of == class => {
                return Found::broken(Because::ClassRepeats { class: of, medicine, placed });
            }
            Some(_) => {}
            None => not_known = not_known.or(Some(Because::ClassNotKnown { medicine, placed })),
        }
    }
    match not_known {
        Some(because) => Found::unknown(because),
        None => Found::met_anyway(Because::ClassDiffers { class: class.to_owned() }),
    }
}
