//! Medicines already in the colony, and earlier courses: number, interval and class.

use ecow::EcoString;

use super::rules;
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::basics::words::Brood;
use crate::facts::history::{Course, Presence};
use crate::journal::event::Inspection;
use crate::questions::options::about::About;
use crate::questions::options::choice::Choice;
use crate::questions::options::colony::{Colony, FEEDER_TELLS_DAYS};
use crate::questions::options::date_range::Span;
use crate::questions::options::reason::{Because, Within};
use crate::questions::options::state::{Condition, Finding, State};
use crate::rules::leaflet::Says;
use crate::rules::leaflet::rule::{Other, YearCounting};

/// After this many days without a course, an earlier broodless period is certainly over. Common practice, no source.
const NO_BROODLESS_TIME_DAYS: u16 = 180;

/// Days from egg to bee. Source: published tables of brood development, worker 21 days.
const BROOD_TAKES_DAYS: i64 = 21;

/// Whatever is in: the same medicine, others that must not be combined with it, a feeder.
pub(super) fn inside(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let same = |course: &Course| same_active(course, choice);
    let mut conditions = vec![Condition::by_day(About::AlreadyIn, span, |day| is_in(colony, day, same))];
    let not_with = |other: Other| {
        rules(choice, Topic::NotWith, span, move |rule, day| {
            let Says::NotWith { others, .. } = &rule.says else { return None };
            others.contains(&other).then(|| match other {
                Other::VarroaMedicines => is_in(colony, day, |course| !same(course)),
                Other::Feeding | Other::NosemaMedicines => feeding(colony, day),
            })
        })
    };
    // The leaflet of a medicine that is in may also forbid others. If neither leaflet says whether the two may be
    // combined, that is not known.
    conditions.push(Condition::by_day(About::OtherMedicines, span, |day| {
        let banned = is_in(colony, day, |course| !same(course) && bans_beside(course, day));
        if banned.state == State::Broken {
            return banned;
        }
        match is_in(colony, day, |course| !same(course)) {
            Finding {
                state: State::Broken,
                because: Because::AlreadyIn { medicine, placed, entry, stays },
                ..
            } => Finding::unknown(Because::BesideIsNotStated { medicine, placed, entry, stays }),
            found => found,
        }
    }));
    conditions.extend(not_with(Other::VarroaMedicines));
    conditions.extend(not_with(Other::Feeding));
    conditions
}

/// Whether a course is of the same medicine, or of another with the same active substance: two would be a double
/// dose.
fn same_active(course: &Course, choice: &Choice) -> bool {
    course.terms.leaflet.as_ref().is_some_and(|known| {
        known.id == choice.leaflet.id
            || known.actives.iter().any(|active| choice.leaflet.actives.contains(active))
    })
}

/// Whether the leaflet of the course forbids other varroa medicines at the same time.
fn bans_beside(course: &Course, day: Day) -> bool {
    let Some(leaflet) = &course.terms.leaflet else { return false };
    leaflet.in_force(Topic::NotWith, day, None).any(
        |rule| matches!(&rule.says, Says::NotWith { others, .. } if others.contains(&Other::VarroaMedicines)),
    )
}

/// Whether one of these courses is in on a day. It is in until its earliest day out; from then on that is not known.
fn is_in(colony: &Colony<'_>, day: Day, which: impl Fn(&Course) -> bool) -> Finding {
    let mut surely: Option<Because> = None;
    let mut perhaps: Option<Because> = None;
    colony.look_inside(day, |course, presence| {
        if !which(course) {
            return true;
        }
        let (medicine, placed, entry) = (course.medicine.clone(), course.placed, course.entry);
        let stays = !course.terms.nothing_stays();
        match presence {
            Presence::In => surely = Some(Because::AlreadyIn { medicine, placed, entry, stays }),
            Presence::Perhaps if perhaps.is_none() => {
                perhaps = Some(Because::PerhapsIn { medicine, placed, entry, stays });
            }
            Presence::Perhaps | Presence::Out => {}
        }
        surely.is_none()
    });
    if let Some(because) = surely {
        return Finding::broken(because);
    }
    match perhaps.or_else(|| past_not_known(colony, day)) {
        Some(because) => Finding::unknown(because),
        None => Finding::met_anyway(Because::NothingIn),
    }
}

/// If the past of the colony is not fully known, only a broken finding about it stands.
fn known_past(colony: &Colony<'_>, day: Day, found: Finding) -> Finding {
    match past_not_known(colony, day) {
        Some(because) if found.state == State::Met => Finding::unknown(because),
        _ => found,
    }
}

fn past_not_known(colony: &Colony<'_>, day: Day) -> Option<Because> {
    let came = colony.history.unknown_since.filter(|(since, _)| *since <= day);
    let came = came.map(|(since, entry)| Because::CameWithUnknown { since, entry });
    came.or_else(|| {
        let (through, entry) = colony.history.archived_on(day)?;
        Some(Because::RecordsInArchive { through, entry })
    })
}

fn feeding(colony: &Colony<'_>, day: Day) -> Finding {
    let feeder = |seen: &Inspection| seen.feeder.map(u32::from);
    let told = colony.counts(day, feeder).filter(|count| count.on >= day.minus(FEEDER_TELLS_DAYS));
    match told {
        Some(count) if count.number > 0 => {
            Finding::broken(Because::Feeder { seen: count.on, entry: count.entry })
        }
        Some(count) => Finding::met(Because::NoFeeder { seen: count.on, entry: count.entry }),
        None => Finding::unknown(Because::FeederNotSeen),
    }
}

/// Earlier courses: number, interval, broodless period, class.
pub(super) fn before(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let courses = colony.courses_of(&choice.leaflet);
    let by = |day: Day| courses.iter().copied().filter(move |course| course.placed <= day);
    let mut conditions = rules(choice, Topic::CoursesPerYear, span, |rule, day| {
        let Says::CoursesPerYear { count, counted } = rule.says else { return None };
        Some(known_past(colony, day, per_year(by(day), day, count, counted)))
    });
    conditions.extend(rules(choice, Topic::CoursesPerBroodlessPeriod, span, |rule, day| {
        let Says::CoursesPerBroodlessPeriod { count } = rule.says else { return None };
        Some(known_past(colony, day, broodless(colony, by(day), day, count)))
    }));
    conditions.extend(rules(choice, Topic::GapBetweenCourses, span, |rule, day| {
        let Says::GapBetweenCourses { days } = rule.says else { return None };
        Some(known_past(colony, day, gap(colony, by(day).next_back(), day, days)))
    }));
    let classes: Vec<_> = colony.courses().rev().map(|course| (course, class_of(course))).collect();
    for condition in rules(choice, Topic::Class, span, |rule, day| {
        let Says::Class { name } = &rule.says else { return None };
        Some(class(colony, &classes, day, name))
    }) {
        // Changing the class is advice: it never promises that resistance is avoided.
        conditions.push(condition.advice());
    }
    conditions
}

/// `courses` are those placed by the end of the day. A year may be the calendar year or any twelve months. If the leaflet does not say which, both must agree.
#[expect(clippy::needless_pass_by_value, reason = "an iterator is cheap to clone and reads best by value")]
fn per_year<'c>(
    courses: impl DoubleEndedIterator<Item = &'c Course> + Clone,
    day: Day,
    most: u8,
    counted: Option<YearCounting>,
) -> Finding {
    let last = courses.clone().next_back().map(|course| course.placed);
    let count = |from: Day| {
        let within = courses.clone().filter(|course| from <= course.placed);
        u8::try_from(within.count()).unwrap_or(u8::MAX)
    };
    let calendar = last.map_or(0, |_| count(day.first_of_year()));
    let twelve = last.map_or(0, |_| count(day.a_year_before()));
    let found = |given: u8, within: Within| {
        let because = Because::Courses { given, most, within, last };
        match given {
            0 => Finding::met_anyway(because),
            _ if given < most => Finding::met(because),
            _ => Finding::broken(because),
        }
    };
    match counted {
        Some(YearCounting::CalendarYear) => found(calendar, Within::CalendarYear),
        Some(YearCounting::TwelveMonths) => found(twelve, Within::TwelveMonths),
        None if (calendar < most) == (twelve < most) => found(twelve.max(calendar), Within::Year),
        None => Finding::unknown(Because::CoursesTurnOnYear {
            in_calendar_year: calendar,
            in_twelve_months: twelve,
            most,
        }),
    }
}

/// How many courses were given in the current broodless period. Inspections since the last course decide whether it
/// goes on: no brood, the least brood, or no inspection.
fn broodless<'c>(
    colony: &Colony<'_>,
    courses: impl DoubleEndedIterator<Item = &'c Course>,
    day: Day,
    most: u8,
) -> Finding {
    let seen = colony.history.broods.iter().filter(|seen| seen.on <= day);
    let present = seen.clone().rfind(|seen| seen.brood == Brood::Present).map(|seen| seen.on);
    let earliest = day.minus(NO_BROODLESS_TIME_DAYS);
    let placed: Vec<Day> = courses.map(|course| course.placed).filter(|placed| earliest <= *placed).collect();
    let Some(last) = placed.last().copied() else { return Finding::met_anyway(Because::NoCourseBefore) };
    if let Some(seen) = present.filter(|present| *present > last) {
        return Finding::met_anyway(Because::BroodSince { last, seen });
    }
    let since = placed.iter().filter(|placed| present.is_none_or(|present| present < **placed)).count();
    let given = u8::try_from(since).unwrap_or(u8::MAX);
    if given < most {
        return Finding::met(Because::Courses {
            given,
            most,
            within: Within::TimeWithoutBrood,
            last: Some(last),
        });
    }
    // Brood takes three weeks to emerge: if inspections are closer together, none was missed.
    let mut without_since = last;
    for seen in seen.filter(|seen| seen.on > last) {
        if seen.brood == Brood::Absent && seen.on.days_since(without_since) < BROOD_TAKES_DAYS {
            without_since = seen.on;
        }
    }
    let seen_absent = without_since > last && day.days_since(without_since) < BROOD_TAKES_DAYS;
    let because = Because::SameBroodlessPeriod { last, seen_absent };
    if seen_absent { Finding::broken(because) } else { Finding::unknown(because) }
}

/// Days between the end of the last course and the start of this one, not counting the day of the end.
fn gap(colony: &Colony<'_>, last: Option<&Course>, day: Day, least: u16) -> Finding {
    let Some(course) = last else { return Finding::met_anyway(Because::NoCourseBefore) };
    // A course may have several lines after a split or uniting: it ends when all of them have ended.
    let lines = colony.history.courses_on(day).filter(|line| line.entry == course.entry);
    let ended = lines.map(Course::ended).try_fold(course.placed, |known, end| Some(known.max(end?)));
    let Some(ended) = ended.filter(|ended| *ended <= day) else {
        return Finding::unknown(Because::LastNotEnded { placed: course.placed, entry: course.entry });
    };
    let days = day.days_since(ended);
    let because = Because::SinceLast { ended, days, least };
    if days > i64::from(least) { Finding::met(because) } else { Finding::broken(because) }
}

/// The class of a course, by the leaflet in force when it was placed.
fn class_of(course: &Course) -> Option<EcoString> {
    let mut rules = course.terms.leaflet.as_ref()?.in_force(Topic::Class, course.placed, None);
    rules.find_map(|rule| {
        let Says::Class { name } = &rule.says else { return None };
        Some(name.as_str().into())
    })
}

/// Compares a class with that of the last two courses. `courses` are those of the colony, the latest first.
fn class(colony: &Colony<'_>, courses: &[(&Course, Option<EcoString>)], day: Day, class: &str) -> Finding {
    let mut not_known = None;
    for (course, of) in courses.iter().filter(|(course, _)| course.placed <= day).take(2) {
        let (medicine, placed) = (course.medicine.clone(), course.placed);
        match of {
            Some(of) if of == class => {
                return Finding::broken(Because::ClassRepeats { class: of.clone(), medicine, placed });
            }
            Some(_) => {}
            None => not_known = not_known.or(Some(Because::ClassNotKnown { medicine, placed })),
        }
    }
    match not_known.or_else(|| past_not_known(colony, day)) {
        Some(because) => Finding::unknown(because),
        None => Finding::met_anyway(Because::ClassDiffers { class: class.into() }),
    }
}
