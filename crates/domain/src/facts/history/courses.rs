//! The courses of a colony: given to it, or brought by a split or uniting.

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use super::by_doses::{ByDoses, Known};
use super::stated::GivenDose;
use super::{Course, Dose, End, flows};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::words::{ColonyName, StripsAtSplit, StripsAtUniting};
use crate::facts::GENERATIONS;
use crate::facts::holding::{Holding, Record, of_day};
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, ColonySplit, ColonyUnited, Event};

/// The courses of a colony, ordered by day of the first dose, then by entry.
pub(super) fn of<'h>(holding: &'h Holding, known: &mut Known<'h>, colony: &ColonyName) -> Vec<Course> {
    let mut lines = Lines { holding, before: BTreeMap::new() };
    let traces = lines.traces(colony, Day::LAST, GENERATIONS, None);
    let mut courses: Vec<Course> = Vec::with_capacity(traces.all.len());
    for trace in &traces.all {
        trace.add_courses(colony, holding, known, &mut courses);
    }
    courses.sort_by_key(|course| course.placed);
    courses
}

/// A course in a colony before its terms are worked out.
#[derive(Clone)]
struct Trace<'h> {
    first: &'h Arc<Record>,
    given: &'h Administration,
    doses: Vec<GivenDose<'h>>,
    end: End,
    in_doubt: Option<(Day, EntryId)>,
    here_from: Day,
    /// The day from which another line of the course replaces this one.
    until: Option<Day>,
    /// The dose that began this line, if this colony was given it.
    begun_by: Option<Dose>,
    /// How many of the doses came from another colony.
    brought: usize,
    came_by: Option<EntryId>,
    /// The colonies it was in before they were united into another, each with the day of the uniting.
    united_from: Vec<(&'h ColonyName, Day)>,
}

/// The lines of all courses of a colony, in order of arrival. Indexed by first dose, because a colony may have had
/// hundreds of courses.
#[derive(Default)]
struct Traces<'h> {
    all: Vec<Trace<'h>>,
    /// Indices into `all`, by the first dose of the course.
    places: HashMap<EntryId, Vec<usize>>,
}

impl<'h> Traces<'h> {
    fn push(&mut self, trace: Trace<'h>) {
        self.places.entry(trace.first.id).or_default().push(self.all.len());
        self.all.push(trace);
    }

    fn extend(&mut self, traces: impl IntoIterator<Item = Trace<'h>>) {
        traces.into_iter().for_each(|trace| self.push(trace));
    }

    /// The lines of one course, in order.
    fn of(&self, first: Option<EntryId>) -> impl DoubleEndedIterator<Item = &Trace<'h>> {
        let places = first.and_then(|first| self.places.get(&first)).into_iter().flatten();
        places.filter_map(|place| self.all.get(*place))
    }

    /// Applies `change` to each line of one course, in order.
    fn each_of(&mut self, first: Option<EntryId>, mut change: impl FnMut(&mut Trace<'h>)) {
        for place in first.and_then(|first| self.places.get(&first)).into_iter().flatten() {
            if let Some(trace) = self.all.get_mut(*place) {
                change(trace);
            }
        }
    }

    /// Whether this entry is the first dose of a course of this colony.
    fn has(&self, first: EntryId) -> bool {
        self.places.contains_key(&first)
    }
}

/// Follows the lines of a colony back through its descent. The result before each event is cached: otherwise lines
/// that part and meet again would be walked repeatedly.
struct Lines<'h> {
    holding: &'h Holding,
    before: BTreeMap<(&'h ColonyName, u64), Vec<Trace<'h>>>,
}

impl<'h> Lines<'h> {
    /// The courses of a colony by the end of a day, ignoring one event.
    fn traces(
        &mut self,
        colony: &ColonyName,
        by: Day,
        generations: u8,
        without: Option<EntryId>,
    ) -> Traces<'h> {
        let holding = self.holding;
        let mut traces = Traces::default();
        let (file, life) = (holding.colony_file(colony), holding.life_file(colony));
        // Later doses that stand before their first dose in the order of the day.
        let mut waiting: Vec<&'h Arc<Record>> = Vec::new();
        let give = |traces: &mut Traces<'h>, record: &'h Arc<Record>| {
            let Some(given) = record.body::<Administration>() else { return };
            let doubt = parted_about(life, colony, record, without);
            dose(holding, traces, record, given, colony, doubt);
        };
        for record in file.iter().filter(|record| record.on <= by && Some(record.id) != without) {
            match &record.event {
                Event::Administration(given) => {
                    let first = holding.goes_on_with(given);
                    if first.is_some_and(|first| !traces.has(first) && follows(file, record, first)) {
                        waiting.push(record);
                        continue;
                    }
                    give(&mut traces, record);
                    let goes_on = |later: &&Arc<Record>| {
                        let given = later.body::<Administration>();
                        given.and_then(|given| holding.goes_on_with(given)) == Some(record.id)
                    };
                    for later in waiting.extract_if(.., |later| goes_on(later)) {
                        give(&mut traces, later);
                    }
                }
                // A removal is filed only under the colonies that it names.
                Event::Removal(removal) => {
                    let first = holding.effective(removal.administration).map(|first| first.id);
                    if removal.left_inside > 0 {
                        found_inside(&mut traces, first, record);
                        continue;
                    }
                    // On a day with a removal and a later dose, the previous carrier came out, whichever was recorded
                    // first.
                    if !renewed_about(holding, file, first, record, &traces) {
                        take_out(&mut traces, first, record);
                    }
                }
                Event::ColonySplit(split) if split.colony == *colony => {
                    let stay = matches!(split.strips, Some(StripsAtSplit::Stayed | StripsAtSplit::Both));
                    part_old(&mut traces.all, parting(split.strips.is_some(), stay), record);
                }
                Event::ColonySplit(split) if split.into == *colony => {
                    let went = matches!(split.strips, Some(StripsAtSplit::Went | StripsAtSplit::Both));
                    let before = self.before(&split.colony, record, generations);
                    bring(
                        holding,
                        colony,
                        &mut traces,
                        before,
                        parting(split.strips.is_some(), went),
                        record,
                    );
                }
                Event::ColonyUnited(united) if united.into == *colony => {
                    let went = united.strips == Some(StripsAtUniting::WentAlong);
                    let before = self.before(&united.colony, record, generations);
                    bring(
                        holding,
                        colony,
                        &mut traces,
                        before,
                        parting(united.strips.is_some(), went),
                        record,
                    );
                }
                Event::HoldingDetails(_)
                | Event::ApiaryDetails(_)
                | Event::SiteConditions(_)
                | Event::NectarFlow(_)
                | Event::Temperature(_)
                | Event::TemperatureNormals(_)
                | Event::ColonyEstablished(_)
                | Event::ColonyMoved(_)
                | Event::ColonySplit(_)
                | Event::ColonyUnited(_)
                | Event::ColonyEnded(_)
                | Event::SupersOn(_)
                | Event::SupersOff(_)
                | Event::Inspection(_)
                | Event::MiteCount(_)
                | Event::MedicineDescribed(_)
                | Event::LotAcquired(_)
                | Event::VetLot(_)
                | Event::LotOpened(_)
                | Event::DocumentAttached(_)
                | Event::LeafletReading(_)
                | Event::Prescription(_)
                | Event::Disposal(_)
                | Event::Harvest(_)
                | Event::StrikeOut(_)
                | Event::Archived(_)
                | Event::InArchive(_) => {}
            }
        }
        // No accepted journal leaves one over, and a dose is never lost.
        for record in waiting {
            give(&mut traces, record);
        }
        traces
    }

    /// The courses of `colony` at the end of the day of `event`, before `event` itself changed them.
    fn before(&mut self, colony: &'h ColonyName, event: &Record, generations: u8) -> Vec<Trace<'h>> {
        let key = (colony, event.seq);
        if let Some(known) = self.before.get(&key) {
            return known.clone();
        }
        // Stops the recursion for a colony that was split off and reunited on one day: it brings nothing new.
        self.before.insert(key, Vec::new());
        // Beyond this many generations the colony counts as unknown: see `Holding::unknown_since`.
        let Some(older) = generations.checked_sub(1) else { return Vec::new() };
        let mut traces = self.traces(colony, event.on, older, Some(event.id)).all;
        // A dose with a later time than the event was not in yet.
        let later = |on: Day, at: Option<TimeOfDay>| {
            on == event.on && at.zip(event.at).is_some_and(|(given, event)| given > event)
        };
        traces.retain(|trace| {
            trace.until.is_none_or(|until| event.on < until)
                && !later(trace.first.on, trace.first.at)
                && !trace.begun_by.is_some_and(|dose| later(dose.on, dose.at))
        });
        for trace in &mut traces {
            // A removal on the same day counts as later than the event, unless the times show otherwise.
            if let End::Out { on, entry } = trace.end
                && on == event.on
            {
                let at = self.holding.entry(entry).and_then(|record| record.at);
                if at.zip(event.at).is_none_or(|(ended, event)| ended >= event) {
                    trace.end = End::Open;
                }
            }
        }
        self.before.insert(key, traces.clone());
        traces
    }
}

/// What a split or uniting does to an open course in one of the two colonies.
#[derive(Clone, Copy)]
enum Parting {
    /// The strips are in this colony.
    Here,
    /// The strips are not in this colony.
    Gone,
    /// The entry does not say where the strips are.
    NotSaid,
}

fn parting(said: bool, here: bool) -> Parting {
    match (said, here) {
        (false, _) => Parting::NotSaid,
        (true, true) => Parting::Here,
        (true, false) => Parting::Gone,
    }
}

/// Applies a split to every open course of the old colony, except those with a dose on the same day that may have
/// come before or after it: `dose` has dealt with those.
fn part_old(traces: &mut [Trace<'_>], parting: Parting, split: &Record) {
    for trace in traces.iter_mut().filter(|trace| trace.is_open() && !trace.dosed_about(split)) {
        trace.part(parting, split);
    }
}

/// Effect of a split in the new colony on a dose given to the old one on the same day, when the order is unknown: the
/// strips may have gone with it.
fn placed_on_the_day(strips: Option<StripsAtSplit>) -> Parting {
    match strips {
        Some(StripsAtSplit::Stayed) => Parting::Gone,
        Some(StripsAtSplit::Both | StripsAtSplit::Went) | None => Parting::NotSaid,
    }
}

/// Adds the courses of another colony. A course present in both keeps one line for each way it came, since each may
/// end on its own day. A line that adds nothing to an existing one is dropped.
fn bring<'h>(
    holding: &Holding,
    colony: &ColonyName,
    traces: &mut Traces<'h>,
    mut brought: Vec<Trace<'h>>,
    parting: Parting,
    by: &'h Record,
) {
    for trace in brought.iter_mut().filter(|trace| trace.is_open()) {
        let parting = match by.body::<ColonySplit>() {
            Some(split) if trace.begun_about(by) => placed_on_the_day(split.strips),
            Some(_) | None => parting,
        };
        trace.part(parting, by);
    }
    for mut trace in brought {
        trace.came_by = Some(by.id);
        trace.united_from.extend(by.body::<ColonyUnited>().map(|united| (&united.colony, by.on)));
        trace.here_from = by.on;
        trace.begun_by = None;
        trace.brought = trace.doses.len();
        if !traces.of(Some(trace.first.id)).any(|known| known.covers(&trace, colony, holding)) {
            traces.push(trace);
        }
    }
}

/// Pieces were seen inside: the course is in from that day, even if it was uncertain or out before.
fn found_inside(traces: &mut Traces<'_>, first: Option<EntryId>, removal: &Record) {
    let certain = |trace: &Trace<'_>| trace.is_open() && trace.in_doubt.is_none();
    if traces.of(first).any(certain) {
        return;
    }
    let open = traces.of(first).rfind(|trace| trace.is_open());
    // Pieces were found, so something is inside even if all was recorded as out.
    let last = open.or_else(|| traces.of(first).next_back()).cloned();
    traces.extend(last.map(|trace| Trace {
        begun_by: None,
        united_from: Vec::new(),
        ..trace.in_from(removal.on)
    }));
}

/// Takes a course out of a colony, in every line that is not out yet. If all lines were out, something was still
/// found: periods count from this day too, and earlier days keep their answer.
fn take_out(traces: &mut Traces<'_>, first: Option<EntryId>, removal: &Record) {
    let out = End::Out { on: removal.on, entry: removal.id };
    let mut certain: Vec<Trace<'_>> = Vec::new();
    let mut closed = false;
    traces.each_of(first, |trace| {
        if !trace.is_open() {
            return;
        }
        if trace.in_doubt.is_some() {
            // If it came out, it was in. That is certain from this day on; earlier days stay uncertain.
            certain.push(Trace { end: out, ..trace.clone().in_from(removal.on) });
            trace.until = Some(removal.on);
        } else {
            trace.end = out;
            closed = true;
        }
    });
    if certain.is_empty() && !closed {
        let last = traces.of(first).next_back().cloned();
        certain.extend(last.map(|trace| Trace { end: out, ..trace.in_from(removal.on) }));
    }
    traces.extend(certain);
}

fn dose<'h>(
    holding: &'h Holding,
    traces: &mut Traces<'h>,
    record: &'h Arc<Record>,
    given: &'h Administration,
    colony: &ColonyName,
    doubt: Option<(Day, EntryId)>,
) {
    // A single part belongs to this colony: the entry is in its file.
    let only = given.given.len() == 1;
    let lots = given.given.iter().filter(|part| only || part.colonies.contains(colony)).map(|part| &part.lot);
    let dose = Dose { on: record.on, at: record.at, entry: record.id };
    let part = GivenDose { dose, given, lots: lots.collect() };
    let first = holding.goes_on_with(given);
    let mut went_on = false;
    traces.each_of(first, |trace| {
        if trace.is_in_by(record.on) {
            trace.doses.push(part.clone());
            // The previous carrier came out on this day; a new one went in.
            trace.end = End::Open;
            trace.in_doubt = trace.in_doubt.or(doubt);
            went_on = true;
        }
    });
    if went_on {
        return;
    }
    let last = traces.of(first).next_back().cloned();
    let line = match last {
        // The previous carrier is out or uncertain; the new one is certainly in.
        Some(mut again) => {
            again.doses.push(part);
            again.in_from(record.on)
        }
        // A dose whose first dose cannot be found was still given: it begins a course of its own.
        None => Trace {
            first: record,
            given,
            doses: vec![part],
            end: End::Open,
            in_doubt: None,
            here_from: record.on,
            until: None,
            begun_by: None,
            brought: 0,
            came_by: None,
            united_from: Vec::new(),
        },
    };
    traces.push(Trace { in_doubt: doubt, begun_by: Some(dose), united_from: Vec::new(), ..line });
}

/// Whether the first dose of a course comes after a later one in the order of their day. If only the later one has a time of
/// day, it comes first, yet it continued the course.
fn follows(file: &[Arc<Record>], later: &Record, first: EntryId) -> bool {
    of_day(file, later.on).iter().any(|other| other.id == first && later.order() < other.order())
}

/// Whether the colony of this file got a later dose of the course on the day of a removal, and not clearly before it.
/// A dose that began its own course is not a later dose.
fn renewed_about(
    holding: &Holding,
    file: &[Arc<Record>],
    first: Option<EntryId>,
    removal: &Record,
    traces: &Traces<'_>,
) -> bool {
    first.is_some_and(|first| {
        let later = holding.later_doses(of_day(file, removal.on), first);
        later.into_iter().any(|dose| !traces.has(dose.id) && dose.renews(removal))
    })
}

/// The doubt about a dose if the colony was split on the same day and no time shows which came first: the carrier may
/// have gone to the new colony. `life` holds the colony's life events.
fn parted_about(
    life: &[Arc<Record>],
    colony: &ColonyName,
    given: &Record,
    without: Option<EntryId>,
) -> Option<(Day, EntryId)> {
    let dose = Dose { on: given.on, at: given.at, entry: given.id };
    let mut others = life.iter().filter(|other| Some(other.id) != without);
    let split = others.find(|other| {
        other.body::<ColonySplit>().is_some_and(|split| {
            split.colony == *colony
                && !matches!(split.strips, Some(StripsAtSplit::Stayed | StripsAtSplit::Both))
                && dose.may_be_before_or_after(other)
        })
    });
    split.map(|split| (split.on, split.id))
}

impl<'h> Trace<'h> {
    fn part(&mut self, parting: Parting, by: &Record) {
        match parting {
            Parting::Here => {}
            Parting::Gone => self.end = End::Out { on: by.on, entry: by.id },
            Parting::NotSaid => self.in_doubt = self.in_doubt.or(Some((by.on, by.id))),
        }
    }

    /// Whether a dose began this line on the day of a split and the order is unknown.
    fn begun_about(&self, split: &Record) -> bool {
        self.begun_by.is_some_and(|dose| dose.may_be_before_or_after(split))
    }

    /// Whether this colony was given a dose on the day of a split and the order is unknown.
    fn dosed_about(&self, split: &Record) -> bool {
        self.doses.iter().skip(self.brought).any(|given| given.dose.may_be_before_or_after(split))
    }

    /// Whether it is certainly in at the start of a day.
    fn is_in_by(&self, day: Day) -> bool {
        match self.end {
            End::Open => self.in_doubt.is_none() && self.until.is_none(),
            End::Out { on, .. } => on == day && self.in_doubt.is_none(),
        }
    }

    /// Whether it is certainly or possibly still in.
    fn is_open(&self) -> bool {
        self.end == End::Open && self.until.is_none()
    }

    /// The same course, certainly in again from this day.
    fn in_from(self, day: Day) -> Trace<'h> {
        Trace { here_from: day, until: None, end: End::Open, in_doubt: None, ..self }
    }

    /// Whether this line makes `other` redundant from the day `other` came.
    fn covers(&self, other: &Trace<'_>, colony: &ColonyName, holding: &Holding) -> bool {
        let same =
            self.first.id == other.first.id && other.doses.iter().all(|given| self.doses.contains(given));
        let ends_no_sooner = match (self.end, other.end) {
            // Both are open: the one that is certain for longer covers the other.
            (End::Open, End::Open) => match (self.in_doubt, other.in_doubt) {
                (None, _) => true,
                (Some(_), None) => false,
                (Some((here, _)), Some((brought, _))) => here >= brought,
            },
            // Both are out: a later day out blocks for longer. Bans on use before a flow depend on where the line has
            // been since.
            (End::Out { on: here, .. }, End::Out { on: brought, .. }) => {
                let stood = |united: &[_]| flows::stood_since(holding, colony, united, brought);
                let same_places = || stood(&self.united_from) == stood(&other.united_from);
                here >= brought && (self.united_from == other.united_from || same_places())
            }
            // An open line may still become uncertain, and the period that is already running would be lost.
            (End::Open, End::Out { .. }) | (End::Out { .. }, End::Open) => false,
        };
        same && ends_no_sooner && self.until.is_none()
    }

    /// Adds the course, as one line for each change of terms. A dose may bring the terms of its own lot or
    /// prescription; they apply from the day of that dose.
    fn add_courses(
        &self,
        colony: &ColonyName,
        holding: &'h Holding,
        known: &mut Known<'h>,
        courses: &mut Vec<Course>,
    ) {
        let begun = courses.len();
        for count in 1..=self.doses.len() {
            let doses = self.doses.get(..count).unwrap_or_default();
            let course = self.course(doses, colony, holding, known);
            let from = doses.last().map_or(self.here_from, |last| last.dose.on.max(self.here_from));
            match courses.get_mut(begun..).and_then(<[Course]>::last_mut) {
                Some(before) if before.terms == course.terms || from <= before.here_from => {
                    *before = Course { here_from: before.here_from, ..course };
                }
                Some(before) => {
                    before.until = Some(before.until.map_or(from, |until| until.min(from)));
                    courses.push(Course { here_from: from, ..course });
                }
                None => courses.push(course),
            }
        }
    }

    fn course(
        &self,
        doses: &[GivenDose<'h>],
        colony: &ColonyName,
        holding: &'h Holding,
        known: &mut Known<'h>,
    ) -> Course {
        let ByDoses { medicine, pack_name, terms } = known.of(self.first, self.given, doses);
        Course {
            entry: self.first.id,
            medicine,
            pack_name,
            placed: self.first.on,
            doses: doses.iter().map(|given| given.dose).collect(),
            end: self.end,
            in_doubt: self.in_doubt,
            here_from: self.here_from,
            until: self.until,
            came_by: self.came_by,
            flows: flows::of_line(holding, colony, &self.united_from),
            terms,
        }
    }
}
