//! The mite count after a course.

use super::colony::Subject;
use super::kind::{DueKind, Weight};
use super::task::{Days, Task};
use super::to_do::{CourseName, ToDo};
use crate::basics::calendar::Day;
use crate::facts::history::{Course, DoseDue, End};
use crate::journal::event::Event;

/// Mites are counted from this many days after the end of a course.
///
/// Source: a trade guide repeats the wash 10 to 14 days after the treatment. It is advice.
pub(crate) const COUNT_FROM_DAYS: u16 = 10;
/// Mites are counted until this many days after the end of a course. Later counts include mites that came in since,
/// so the task is no longer due.
pub(crate) const COUNT_TO_DAYS: u16 = 14;

/// The count after the course that ended last, unless a medicine is in, a dose is still to come, or it was counted.
pub(super) fn count_mites(subject: &Subject<'_>) -> Option<Task> {
    let as_of = subject.as_of;
    let mut last: Option<(Day, &Course)> = None;
    for course in subject.history.courses_on(as_of) {
        let out = course.out_since(as_of)?;
        let end = course.doses.last().map_or(out, |dose| out.max(dose.on));
        if last.is_none_or(|(day, _)| day <= end) {
            last = Some((end, course));
        }
    }
    let (end, course) = last?;
    if dose_to_come(course, as_of) {
        return None;
    }
    let (from, by) = (end.plus(COUNT_FROM_DAYS), end.plus(COUNT_TO_DAYS));
    let counted = subject.holding.colony_file(subject.colony).iter().any(|record| {
        let within = from <= record.on && record.on <= by && record.on <= as_of;
        within && matches!(&record.event, Event::MiteCount(_))
    });
    if counted || by < as_of {
        return None;
    }
    let to_do = ToDo::CountMites { course: CourseName::of(course), ended: end, from, by };
    let days = Days::new(from, Some(by));
    let task = subject.task(DueKind::CountMites, course.entry, days, Weight::Advice, to_do);
    Some(Task { grounds: course.entries().collect(), ..task })
}

/// Whether a further dose may still be given in time.
fn dose_to_come(course: &Course, as_of: Day) -> bool {
    let in_time = |dose: DoseDue| dose.by.or(dose.from).is_none_or(|last| as_of <= last);
    course.end == End::Open && course.next_dose(as_of).is_some_and(in_time)
}
