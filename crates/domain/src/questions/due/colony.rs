//! Tasks of one colony: the steps before supers, and the first free day.

use super::kind::{DueKind, Weight};
use super::task::{Days, Task};
use super::to_do::{CourseName, ToDo};
use super::{after, missing};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::words::{ApiaryName, ColonyName, RemovalNeed};
use crate::facts::history::{Course, EarliestOut, Histories, History, Standing, Stay};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::questions::supering::{Answer, FirstFree, Outcome, Step};
use crate::rules::leaflet::Leaflets;

/// How many days a missed dose stays overdue, unless another course began before.
///
/// Common practice, no source: after a season a missed dose is a breach in the record, and no longer a task.
pub(crate) const MISSED_DOSE_STANDS_DAYS: u16 = 90;

/// A colony on the day asked about.
pub(super) struct Subject<'a> {
    pub(super) holding: &'a Holding,
    pub(super) leaflets: &'a Leaflets,
    pub(super) colony: &'a ColonyName,
    pub(super) apiary: Option<&'a ApiaryName>,
    pub(super) history: &'a History,
    pub(super) as_of: Day,
}

/// The tasks of every colony that is alive at the end of a day, and the unrecorded ends in colonies that are not.
pub(super) fn tasks(holding: &Holding, leaflets: &Leaflets, as_of: Day) -> Vec<Task> {
    let mut tasks = Vec::new();
    let mut histories = Histories::new(holding, leaflets);
    for colony in holding.colonies() {
        let history = histories.of(colony).up_to(as_of);
        if history.begun.is_none() {
            continue;
        }
        let apiary = holding.apiary_of(colony, as_of);
        let subject = Subject { holding, leaflets, colony, apiary, history: &history, as_of };
        match history.ended {
            Some((ended, entry)) => tasks.extend(subject.went_with_it(ended, entry)),
            None => tasks.extend(subject.tasks()),
        }
    }
    tasks
}

impl Subject<'_> {
    fn tasks(&self) -> Vec<Task> {
        let answer = self.history.supering(self.as_of);
        let steps = answer.steps();
        let mut all: Vec<Task> = steps.iter().filter_map(|step| self.of_step(&answer, step)).collect();
        all.extend(self.supers_off_for_dose(&answer, &steps));
        all.extend(self.supers_free(&answer));
        all.extend(after::count_mites(self));
        all.extend(missing::of(self, &answer));
        // Several lines of one course may yield the same task; the strictest is kept.
        all.sort_by(Task::stricter);
        let mut tasks: Vec<Task> = Vec::new();
        for task in all {
            if !tasks.iter().any(|known| known.same(&task)) {
                tasks.push(task);
            }
        }
        tasks
    }

    /// Courses that were in when the colony ended and whose end is not recorded. If the colony was united into
    /// another, the course belongs to the history of that colony, which yields the task.
    fn went_with_it(&self, ended: Day, entry: EntryId) -> Vec<Task> {
        let died = self.holding.entry(entry);
        if !died.is_some_and(|record| matches!(&record.event, Event::ColonyEnded(_))) {
            return Vec::new();
        }
        let open = self.history.courses_on(ended).filter_map(|course| {
            let removal = course.terms.removal.as_ref().map(|need| need.value);
            let weight = match (course.standing(ended), removal) {
                (Standing::Out(_), _) => return None,
                (Standing::NotSaid(..), _) | (_, Fact::Known(RemovalNeed::Needed)) => Weight::Must,
                (_, Fact::NotKnown(_)) => Weight::Advice,
                (_, Fact::Known(RemovalNeed::NotNeeded | RemovalNeed::NothingStays)) => return None,
            };
            let days = Days::new(ended, None);
            let to_do = ToDo::RecordEnd { course: CourseName::of(course), ended };
            let task = self.task(DueKind::RecordWhereabouts, course.entry, days, weight, to_do);
            Some(Task { grounds: course.entries().chain([entry]).collect(), ..task })
        });
        let mut tasks: Vec<Task> = Vec::new();
        for task in open {
            // Several lines of one course yield the same task.
            if !tasks.iter().any(|known| known.same(&task)) {
                tasks.push(task);
            }
        }
        tasks
    }

    /// Builds a task in this colony.
    pub(super) fn task(
        &self,
        kind: DueKind,
        anchor: EntryId,
        days: Days,
        weight: Weight,
        to_do: ToDo,
    ) -> Task {
        Task {
            kind,
            anchor: self.holding.original(anchor),
            part: String::new(),
            apiary: self.apiary.cloned(),
            colony: Some(self.colony.clone()),
            days,
            weight,
            to_do,
            grounds: vec![anchor],
        }
    }

    fn of_step(&self, answer: &Answer<'_>, step: &Step<'_>) -> Option<Task> {
        Some(match step {
            Step::TakeSupersOff { since } => return self.take_supers_off(answer, *since),
            Step::RecordWhereabouts { course, since } => {
                let days = Days::new(*since, None);
                let to_do = ToDo::FindCarriers { course: CourseName::of(course), since: *since };
                let task = self.task(DueKind::RecordWhereabouts, course.entry, days, Weight::Must, to_do);
                let parting = course.in_doubt.map(|(_, entry)| entry);
                Task { grounds: course.entries().chain(parting).collect(), ..task }
            }
            Step::GiveDose { course, number, of, from, by } => {
                let last = course.doses.last()?.on;
                let days = Days::perhaps(*from, *by);
                if self.missed_for_good(course, days, last) {
                    return None;
                }
                let to_do = ToDo::GiveDose { course: CourseName::of(course), number: *number, of: *of };
                let task = self.task(DueKind::GiveDose, course.entry, days, Weight::Must, to_do);
                Task {
                    part: number.to_string(),
                    grounds: course.entries().chain(course.terms.doses.known().and_then(said)).collect(),
                    ..task
                }
            }
            Step::TakeOut { course, earliest, latest } => self.take_out(course, earliest, *latest),
            Step::WaitUntilSpent { course, spent } => {
                let to_do = ToDo::UsedUp { course: CourseName::of(course), on: *spent };
                let days = Days::new(*spent, None);
                let task = self.task(DueKind::UsedUp, course.entry, days, Weight::May, to_do);
                Task { grounds: course.entries().collect(), ..task }
            }
            // The first free day covers this.
            Step::WaitThrough { .. } => return None,
        })
    }

    /// Counts from the latest known day: the last day for the dose, else the first, else the day of the previous
    /// dose.
    fn missed_for_good(&self, course: &Course, days: Days, last: Day) -> bool {
        let known = days.by.or(days.from).unwrap_or(last);
        let late = known.plus(MISSED_DOSE_STANDS_DAYS) < self.as_of;
        late || self.history.courses.iter().any(|other| other.entry != course.entry && other.placed > last)
    }

    fn take_supers_off(&self, answer: &Answer<'_>, since: Day) -> Option<Task> {
        let entry = self.history.supers_on(self.as_of)?.entry;
        let barring: Vec<&Course> = answer
            .grounds
            .iter()
            .filter(|ground| ground.decides && ground.outcome == Outcome::Broken)
            .filter_map(|ground| ground.course)
            .collect();
        // The supers had to be off from the day on which both were there.
        let day = barring.iter().map(|course| course.here_from.max(since)).min().unwrap_or(since);
        let mut names: Vec<CourseName> = barring.iter().map(|course| CourseName::of(course)).collect();
        names.dedup();
        let to_do = ToDo::TakeSupersOff { since, barring: names };
        let task = self.task(DueKind::TakeSupersOff, entry, Days::on(day), Weight::Must, to_do);
        let grounds = std::iter::once(entry).chain(barring.iter().flat_map(|course| course.entries()));
        Some(Task { grounds: grounds.collect(), ..task })
    }

    /// Supers that may be on today, and must be off before the next dose is given.
    fn supers_off_for_dose(&self, answer: &Answer<'_>, steps: &[Step<'_>]) -> Option<Task> {
        let span = self.history.supers_on(self.as_of)?;
        if steps.iter().any(|step| matches!(step, Step::TakeSupersOff { .. })) {
            return None;
        }
        steps.iter().find_map(|step| {
            let Step::GiveDose { course, number, from, by, .. } = *step else { return None };
            let days = Days::perhaps(from, by);
            let last = course.doses.last()?.on;
            if !answer.must_be_off_for_next_dose(course) || self.missed_for_good(course, days, last) {
                return None;
            }
            let to_do = ToDo::TakeSupersOffForDose { course: CourseName::of(course), number };
            let task = self.task(DueKind::TakeSupersOff, span.entry, days, Weight::Must, to_do);
            let grounds = std::iter::once(span.entry).chain(course.entries());
            Some(Task { grounds: grounds.collect(), ..task })
        })
    }

    fn take_out(&self, course: &Course, earliest: &EarliestOut, latest: Option<Day>) -> Task {
        let by_brood = earliest.both_days().filter(|_| earliest.brood_seen().is_none());
        let days = Days { by_brood, ..Days::perhaps(earliest.day.known().copied(), latest) };
        // If it is not stated whether it must come out, taking it out is advice. If it need not come out, it may
        // stay.
        let weight = match (latest, course.terms.removal.as_ref().map(|need| need.value)) {
            (Some(_), _) | (None, Fact::Known(RemovalNeed::Needed)) => Weight::Must,
            (None, Fact::NotKnown(_)) => Weight::Advice,
            (None, Fact::Known(RemovalNeed::NotNeeded | RemovalNeed::NothingStays)) => Weight::May,
        };
        let seen = earliest.brood_seen().map(|seen| seen.entry);
        let stays = [&course.terms.stay_min, &course.terms.stay_max];
        let told = stays.into_iter().flat_map(Stay::stated).filter_map(said).chain(seen);
        let to_do = ToDo::TakeOut { course: CourseName::of(course), earliest: earliest.day };
        let task = self.task(DueKind::TakeOut, course.entry, days, weight, to_do);
        Task { grounds: course.entries().chain(told).collect(), ..task }
    }

    /// The first free day, if it is ahead and does not move on with each day.
    fn supers_free(&self, answer: &Answer<'_>) -> Option<Task> {
        let (free, if_out_on) = match answer.first_free() {
            FirstFree::OnRecord(free) => (free, None),
            FirstFree::OnceOut { out, free } if out > self.as_of => (free, Some(out)),
            FirstFree::OnceOut { .. } | FirstFree::NotKnown => return None,
        };
        if free <= self.as_of {
            return None;
        }
        let latest = answer.courses().next_back()?;
        let to_do = ToDo::PutSupersOn { course: CourseName::of(latest), free, if_out_on };
        let days = Days::new(free, None);
        let task = self.task(DueKind::SupersFree, latest.entry, days, Weight::May, to_do);
        Some(Task { grounds: answer.courses().flat_map(Course::entries).collect(), ..task })
    }
}

/// The entry that stated a term, if a person stated it.
fn said<T>(fact: &Sourced<T>) -> Option<EntryId> {
    fact.authority.entry()
}
