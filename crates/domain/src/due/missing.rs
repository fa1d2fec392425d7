//! What is not recorded, as far as the supering question has no answer without it.

use super::colony::{Subject, course_entries};
use super::kind::{DueKind, Weight};
use super::task::{Days, Task, lots_of};
use super::wording;
use crate::supering::{Answer, Ground, Outcome, Reason, supply};

pub(super) fn of(subject: &Subject<'_>, answer: &Answer<'_>) -> Vec<Task> {
    let mut tasks: Vec<Task> = Vec::new();
    let open = answer.grounds.iter().filter(|ground| ground.decides && ground.outcome == Outcome::Unknown);
    for task in open.filter_map(|ground| one(subject, ground)) {
        match tasks.iter_mut().find(|known| known.same(&task)) {
            // One look at the pack answers several questions.
            Some(known) if !known.text.contains(&task.text) => known.text = format!("{}; {}", known.text, task.text),
            Some(_) => {}
            None => tasks.push(task),
        }
    }
    tasks
}

fn one(subject: &Subject<'_>, ground: &Ground<'_>) -> Option<Task> {
    // The step says the same.
    if matches!(ground.reason, Reason::WhereaboutsNotSaid { .. }) {
        return None;
    }
    let (supplied_by, how) = supply(subject.holding, subject.leaflets, ground)?;
    let (entry, since) = match (&ground.reason, ground.course) {
        (_, Some(course)) => (course.entry, course.placed),
        (Reason::CameWithUnknown { entry }, None) => (*entry, subject.holding.record(*entry)?.on),
        _ => return None,
    };
    let task = subject.task(DueKind::RecordMissing, entry, Days::new(since, None), Weight::Must);
    let course = ground.course;
    let lots = course.map(|course| {
        lots_of(subject.holding, course.doses.iter().map(|dose| dose.entry), subject.colony)
    });
    Some(Task {
        part: supplied_by.to_owned(),
        title: wording::missing_title(supplied_by, lots.as_deref().unwrap_or_default()),
        text: wording::missing(course, &how),
        grounds: course.map_or_else(|| vec![entry], |course| course_entries(course).collect()),
        ..task
    })
}
