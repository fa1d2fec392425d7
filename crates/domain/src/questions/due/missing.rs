//! What is not recorded, as far as the supering question has no answer without it.

use super::colony::Subject;
use super::kind::{DueKind, Weight};
use super::task::{Days, Task, lots_of};
use super::wording;
use crate::questions::supering::{Answer, Ground, Outcome, Reason, remedy_of};

/// A task, and what has to be read on the leaflet for it, if that is all.
struct MissingFact {
    task: Task,
    to_read: Vec<&'static str>,
}

pub(super) fn of(subject: &Subject<'_>, answer: &Answer<'_>) -> Vec<Task> {
    let mut lacks: Vec<MissingFact> = Vec::new();
    let open = answer.grounds.iter().filter(|ground| ground.decides && ground.outcome == Outcome::Unknown);
    for lack in open.filter_map(|ground| one(subject, ground)) {
        match lacks.iter_mut().find(|known| known.task.same(&lack.task)) {
            // One look at the leaflet answers several questions.
            Some(known) => known.to_read.extend(lack.to_read),
            None => lacks.push(lack),
        }
    }
    let read = lacks.into_iter().map(|MissingFact { mut task, mut to_read }| {
        to_read.dedup();
        if !to_read.is_empty() {
            task.text = wording::to_read(&task.text, &to_read);
        }
        task
    });
    read.collect()
}

fn one(subject: &Subject<'_>, ground: &Ground<'_>) -> Option<MissingFact> {
    // The step says the same.
    if matches!(ground.reason, Reason::WhereaboutsNotSaid { .. }) {
        return None;
    }
    let remedy = remedy_of(subject.holding, subject.leaflets, ground)?;
    let (supplied_by, how) = (remedy.kind.as_str(), remedy.how);
    if let (Reason::CameWithUnknown { entry }, None) = (&ground.reason, ground.course) {
        let since = subject.holding.record(*entry)?.on;
        let task = subject.task(DueKind::RecordMissing, *entry, Days::new(since, None), Weight::Must);
        let title = "Find out what medicine was in it".to_owned();
        let task =
            Task { part: supplied_by.to_owned(), title, text: wording::ask_who_kept_it(since), ..task };
        return Some(MissingFact { task, to_read: Vec::new() });
    }
    let course = ground.course?;
    let task =
        subject.task(DueKind::RecordMissing, course.entry, Days::new(course.placed, None), Weight::Must);
    let lots = lots_of(subject.holding, course.doses.iter().map(|dose| dose.entry), subject.colony);
    let to_read = wording::on_the_leaflet(&ground.reason, &how);
    let text =
        if to_read.is_empty() { wording::missing(course, &how) } else { wording::leaflet_of(course, &lots) };
    let task = Task {
        part: supplied_by.to_owned(),
        title: wording::missing_title(supplied_by, &lots),
        text,
        grounds: course.entries().collect(),
        ..task
    };
    Some(MissingFact { task, to_read })
}
