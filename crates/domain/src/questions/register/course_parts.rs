//! The outcome of a course, grouped by colonies with the same outcome: when it ended, where they were, which periods
//! run.

use crate::basics::sourced::Sourced;
use std::collections::BTreeMap;
use std::rc::Rc;

use super::View;
use super::rows::{ApiaryStay, CoursePart, SaidBy, WithdrawalPart};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::words::ColonyName;
use crate::facts::history::{Course, End, Histories, History, Standing, TermValue};
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::Administration;
use crate::questions::supering::{Blocked, Outlook, harvest};

/// The courses of every colony of a holding, indexed by their first dose.
pub(super) struct Courses {
    by_first_dose: BTreeMap<EntryId, Vec<InColony>>,
}

/// One course in one colony: each of its lines is a course of the history.
struct InColony {
    history: Rc<History>,
    /// Indices of its lines in the history.
    lines: Vec<usize>,
}

impl InColony {
    fn courses(&self) -> impl Iterator<Item = &Course> {
        self.lines.iter().filter_map(|line| self.history.courses.get(*line))
    }
}

impl Courses {
    pub(super) fn of(view: &View<'_>) -> Courses {
        let mut by_first_dose: BTreeMap<EntryId, Vec<InColony>> = BTreeMap::new();
        let mut histories = Histories::new(view.holding, view.leaflets);
        for colony in view.holding.colonies() {
            let history = Rc::new(histories.of(colony).up_to(view.as_of));
            for (line, course) in history.courses.iter().enumerate() {
                let of_course = by_first_dose.entry(course.entry).or_default();
                match of_course.last_mut().filter(|last| Rc::ptr_eq(&last.history, &history)) {
                    Some(here) => here.lines.push(line),
                    None => of_course.push(InColony { history: Rc::clone(&history), lines: vec![line] }),
                }
            }
        }
        Courses { by_first_dose }
    }

    /// The number of a dose within its course, counted from 1.
    pub(super) fn dose(&self, first: EntryId, entry: EntryId) -> u8 {
        let courses = self.by_first_dose.get(&first).into_iter().flatten().flat_map(InColony::courses);
        let places = courses
            .filter_map(|course| course.doses.iter().position(|dose| dose.entry == entry))
            .filter_map(|place| u8::try_from(place).ok());
        places.max().unwrap_or(0).saturating_add(1)
    }

    /// Whether a course may be in, or one of its periods may run, during the register's period. A quick check: it may
    /// wrongly say yes, never wrongly no.
    pub(super) fn may_run_into(&self, view: &View<'_>, first: EntryId) -> bool {
        let from = view.period.from();
        self.by_first_dose.get(&first).into_iter().flatten().any(|here| {
            let fate = Fate::of(view, here);
            let bars_honey = here.courses().filter_map(|course| harvest::last_day(course, view.as_of)).max();
            fate.still_in
                || fate.not_known_since.is_some()
                || fate.last.max(bars_honey).is_some_and(|last| from <= last)
                || here.courses().any(|course| Outlook::may_change_after(&here.history, course, from))
        })
    }

    /// The outcome of a dose, in the colonies that got it and in those that it reached by a split or uniting.
    pub(super) fn parts(
        &self,
        view: &View<'_>,
        first: EntryId,
        dose: &Record,
        given: &Administration,
    ) -> Vec<CoursePart> {
        // Colonies with the same outcome share a part. They are collected separately until all are known.
        let mut parts: Vec<(Vec<ColonyName>, CoursePart)> = Vec::new();
        for here in self.by_first_dose.get(&first).into_iter().flatten() {
            let colony = &here.history.colony;
            let got_it = given.given.iter().any(|part| part.colonies.contains(colony));
            let carried = here.courses().find(|course| has(course, dose.id) && course.came_by.is_some());
            let came =
                carried.filter(|_| !got_it).and_then(|course| Some((course.came_by?, course.here_from)));
            if !got_it && came.is_none() {
                continue;
            }
            let mut next = part(view, here, dose, came);
            if came.is_some_and(|(_, came_on)| was_over(&next, came_on)) {
                continue;
            }
            let named = std::mem::take(&mut next.colonies);
            match parts.iter_mut().find(|(_, part)| *part == next) {
                Some((colonies, _)) => colonies.extend(named),
                None => parts.push((named, next)),
            }
        }
        // Those that were given it come first, in the order of the entry.
        let named: Vec<&ColonyName> = given.given.iter().flat_map(|part| &part.colonies).collect();
        let place = |colony: &ColonyName| named.iter().position(|name| *name == colony).unwrap_or(usize::MAX);
        let whole = parts.into_iter().map(|(mut colonies, part)| {
            colonies.sort_by_key(place);
            CoursePart { colonies, ..part }
        });
        let mut parts: Vec<CoursePart> = whole.collect();
        parts.sort_by_key(|part| (part.came_by.is_some(), part.colonies.first().map(place)));
        parts
    }
}

fn has(course: &Course, dose: EntryId) -> bool {
    course.doses.iter().any(|given| given.entry == dose)
}

/// Whether a course was out and none of its periods ran any more when a colony got it: then it does not concern that
/// colony.
fn was_over(part: &CoursePart, came_on: Day) -> bool {
    part.first_free_day.is_some_and(|free| free <= came_on && part.last.is_some_and(|last| last < came_on))
}

/// The state of the treatment in one colony on the as-of day.
#[derive(Default)]
struct Fate {
    last: Option<Day>,
    /// The times of day of whatever ended on that last day.
    last_at: Vec<Option<TimeOfDay>>,
    still_in: bool,
    not_known_since: Option<Day>,
}

impl Fate {
    fn of(view: &View<'_>, here: &InColony) -> Fate {
        let as_of = view.as_of;
        let mut fate = Fate::default();
        // A line that a later line has replaced no longer counts.
        for course in here.courses().filter(|course| course.until.is_none()) {
            match course.standing(as_of) {
                Standing::In => fate.still_in = true,
                Standing::Out(day) => {
                    if fate.last < Some(day) {
                        fate.last = Some(day);
                        fate.last_at.clear();
                    }
                    if fate.last == Some(day) {
                        fate.last_at.push(time_of_end(view, course, day));
                    }
                }
                Standing::PerhapsSpent(since) | Standing::NotSaid(since, _) => {
                    fate.not_known_since = fate.not_known_since.or(Some(since));
                }
            }
        }
        if fate.still_in || fate.not_known_since.is_some() {
            fate.last = None;
        }
        fate
    }
}

/// The time of day of the removal or the last dose on a day.
fn time_of_end(view: &View<'_>, course: &Course, day: Day) -> Option<TimeOfDay> {
    match course.end {
        End::Out { on, entry } if on == day => view.holding.entry(entry)?.at,
        End::Out { .. } | End::Open => course.doses.iter().rev().find(|dose| dose.on == day)?.at,
    }
}

fn part(view: &View<'_>, here: &InColony, dose: &Record, came: Option<(EntryId, Day)>) -> CoursePart {
    let colony = &here.history.colony;
    let fate = Fate::of(view, here);
    // There is a part only if the course has a line.
    let placed = here.courses().map(|course| course.placed).min().unwrap_or(dose.on);
    // The terms of the newest line apply. If several run side by side, the longest of each applies, and a term that
    // one of them lacks is not known for the whole.
    let lines = || here.courses().filter(|course| course.until.is_none());
    let withdrawal =
        lines().filter_map(|course| course.terms.withdrawal.known()).max_by_key(|fact| fact.value);
    let wait = lines().filter_map(|course| course.terms.wait.known()).max_by_key(|fact| fact.value);
    let every_wait = lines().all(|course| course.terms.wait.is_known());
    let every_withdrawal = lines().all(|course| course.terms.withdrawal.is_known());
    let single = lines().all(|course| course.terms.nothing_stays());
    // The same computation as for the colony, for this course alone. Honey that is barred under supers counts too.
    let of_course: Vec<&Course> = here.courses().collect();
    let Blocked { last: bars_supers, first_free } =
        Outlook::of_lines(&here.history, &of_course).blocked(view.as_of, Day::FIRST, fate.last);
    let bars_honey = lines().filter_map(|course| harvest::last_day(course, view.as_of)).max();
    let last_blocked_day = bars_supers.max(bars_honey);
    let documented = |value: &TermValue<u16>| value.known().is_some_and(Sourced::is_documented);
    let known = lines().all(|course| documented(&course.terms.withdrawal) && documented(&course.terms.wait));
    // A harvest that is barred may put the day off; it never names a day where supers have none.
    let first_free_day = first_free
        .filter(|_| known && fate.last.is_some())
        .map(|free| bars_honey.map_or(free, |honey| free.max(honey.next())));
    // While its first free day is not known, every move counts.
    let until = first_free_day.map_or(view.as_of, |free| free.before().max(dose.on)).min(view.as_of);
    let here_from = came.map_or(dose.on, |(_, on)| on);
    let stood = view.holding.stood_at(colony, here_from, dose.at.filter(|_| came.is_none()));
    let moved = view.holding.moved_on_from(colony, stood, (here_from, dose.at), until);
    let open = || lines().filter(|course| course.standing(view.as_of) == Standing::In);
    // Everything may come out once the last line may, and must be out by the earliest latest day of any line.
    let earliest = open().map(|course| here.history.earliest_out(course, view.as_of).day);
    let overdue_after = |course: &Course| {
        let longest = here.history.most_in_any_case(course, view.as_of)?;
        Some(course.placed.plus(longest.value))
    };
    let may_come_out = earliest.reduce(|one, other| one.and_then(|one| other.map(|other| one.max(other))));
    CoursePart {
        colonies: vec![colony.clone()],
        came_by: came.map(|(entry, _)| entry),
        came_on: came.map(|(_, on)| on),
        apiary: stood.cloned(),
        later_apiaries: moved
            .into_iter()
            .map(|(from, apiary)| ApiaryStay { from, apiary: apiary.clone() })
            .collect(),
        first: placed,
        last: fate.last,
        // The latest of several, if all are known.
        last_at: fate
            .last_at
            .iter()
            .copied()
            .collect::<Option<Vec<TimeOfDay>>>()
            .and_then(|times| times.into_iter().max())
            .filter(|_| fate.last.is_some()),
        still_in: fate.still_in,
        may_come_out_from: may_come_out.and_then(|day| day.known().copied()),
        must_be_out_by: open().filter_map(overdue_after).min(),
        not_known_since: fate.not_known_since,
        duration_days: fate.last.and_then(|last| duration(placed, last, single)),
        withdrawal: withdrawal.filter(|_| every_withdrawal).map(|fact| {
            let (said_by, entry) = SaidBy::of(fact.authority);
            WithdrawalPart { days: fact.value, said_by, entry, confidence: fact.confidence }
        }),
        wait_days: wait.filter(|_| every_wait).map(|fact| fact.value),
        last_blocked_day,
        first_free_day,
        free_at: None,
    }
}

/// Days from placing to removal, or from the first dose to the last (inclusive): a single dose is a treatment of one
/// day.
fn duration(placed: Day, last: Day, single: bool) -> Option<u32> {
    let days = last.days_since(placed).saturating_add(i64::from(single));
    u32::try_from(days).ok()
}
