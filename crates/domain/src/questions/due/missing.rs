//! Missing facts that leave the supering question open.

use super::colony::Subject;
use super::kind::{DueKind, Weight};
use super::task::{Days, Task, lots_of};
use super::to_do::{CourseName, ToDo};
use crate::journal::event::Kind;
use crate::questions::supering::{Answer, AskedFor, Ground, Outcome, Reason, Remedy, remedy_of};

pub(super) fn of(subject: &Subject<'_>, answer: &Answer<'_>) -> Vec<Task> {
    let mut lacks: Vec<Task> = Vec::new();
    let open = answer.grounds.iter().filter(|ground| ground.decides && ground.outcome == Outcome::Unknown);
    for lack in open.filter_map(|ground| one(subject, ground)) {
        match lacks.iter_mut().find(|known| known.same(&lack)) {
            // One look at the leaflet answers several questions.
            Some(known) => read_too(&mut known.to_do, lack.to_do),
            None => lacks.push(lack),
        }
    }
    lacks
}

/// Adds the terms to read for one task to those of another.
fn read_too(known: &mut ToDo, further: ToDo) {
    if let (
        ToDo::ReadLeaflet { terms, .. } | ToDo::RecordMissing { terms, .. },
        ToDo::ReadLeaflet { terms: further, .. },
    ) = (known, further)
    {
        terms.extend(further);
        terms.dedup();
    }
}

fn one(subject: &Subject<'_>, ground: &Ground<'_>) -> Option<Task> {
    // A step covers this already.
    if matches!(ground.reason, Reason::WhereaboutsNotSaid { .. }) {
        return None;
    }
    let remedy = remedy_of(subject.holding, subject.leaflets, ground)?;
    let (kind, weight, part) = (DueKind::RecordMissing, Weight::Must, remedy.kind.as_str().to_owned());
    if let (Reason::CameWithUnknown { entry }, None) = (&ground.reason, ground.course) {
        let since = subject.holding.entry(*entry)?.on;
        let to_do = ToDo::AskFormerKeeper { since };
        let task = subject.task(kind, *entry, Days::new(since, None), weight, to_do);
        return Some(Task { part, ..task });
    }
    let course = ground.course?;
    let Remedy { kind: supplied_by, asks_for, lots: lots_asked, .. } = remedy;
    // A leaflet reading names the lots that this colony was given from; other remedies name no lots.
    let lots = if supplied_by == Kind::LeafletReading {
        lots_of(subject.holding, course.doses.iter().map(|dose| dose.entry), subject.colony)
    } else {
        Vec::new()
    };
    let name = CourseName::of(course);
    let to_do = if let AskedFor::Term(term) = asks_for {
        ToDo::ReadLeaflet { course: name, lots, terms: vec![term] }
    } else {
        let lots_asked = if asks_for.names_lots() { lots_asked } else { Vec::new() };
        ToDo::RecordMissing { course: name, supplied_by, lots, asks_for, lots_asked, terms: Vec::new() }
    };
    let task = subject.task(kind, course.entry, Days::new(course.placed, None), weight, to_do);
    Some(Task { part, grounds: course.entries().collect(), ..task })
}
