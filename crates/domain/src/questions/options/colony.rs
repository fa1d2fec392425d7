//! A colony as treatments see it: its history, inspections and counts.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

use super::date_range::Ask;
use crate::basics::calendar::Day;
use crate::basics::words::{ApiaryName, ColonyName};
use crate::facts::history::{BROOD_TELLS_DAYS, BroodSeen, Course, History, Presence};
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, Inspection};
use crate::questions::supering::Ahead;
use crate::rules::leaflet::rule::BroodState;
use crate::rules::leaflet::{Leaflet, Leaflets};

/// How many days a brood inspection shows whether a colony has capped brood.
///
/// Source: published tables of brood development: worker cells are capped about day 8. Eggs laid on the day of the
/// inspection are not capped before.
pub const BROOD_NEED_TELLS_DAYS: u16 = 8;

/// How many days a count of bees or boxes is valid. Common practice, no source.
pub const COUNT_TELLS_DAYS: u16 = 30;

/// How many days an observation of the feeder is valid. Common practice, no source.
pub(super) const FEEDER_TELLS_DAYS: u16 = 8;

/// A colony prepared for questions about days.
pub(super) struct Colony<'h> {
    pub(super) name: ColonyName,
    pub(super) apiary: Option<ApiaryName>,
    /// When it was moved to another apiary within the days asked about, and by which entry.
    pub(super) moved_on: Option<(Day, EntryId)>,
    pub(super) history: History,
    file: &'h [Arc<Record>],
    /// Indices of its courses in the history, each by its last line, in order.
    courses: Vec<usize>,
    /// When it is free, by start day.
    ahead: EachDay<Ahead>,
    /// The lines of courses that are in or may be in, by index in the history, on each start day.
    inside: EachDay<Vec<(usize, Presence)>>,
}

/// What was worked out for a day: every choice asks for it.
struct EachDay<T>(RefCell<BTreeMap<Day, Rc<T>>>);

impl<T> Default for EachDay<T> {
    fn default() -> EachDay<T> {
        EachDay(RefCell::default())
    }
}

impl<T> EachDay<T> {
    fn get(&self, day: Day, work_out: impl FnOnce() -> T) -> Rc<T> {
        let known = self.0.borrow().get(&day).map(Rc::clone);
        known.unwrap_or_else(|| {
            let worked_out = Rc::new(work_out());
            self.0.borrow_mut().insert(day, Rc::clone(&worked_out));
            worked_out
        })
    }
}

/// A count from an inspection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Count {
    pub(super) number: u32,
    pub(super) on: Day,
    pub(super) entry: EntryId,
}

impl<'h> Colony<'h> {
    pub(super) fn of(holding: &'h Holding, leaflets: &Leaflets, name: &ColonyName, ask: &Ask) -> Colony<'h> {
        let file = holding.colony_file(name);
        let known = file.iter().take_while(|record| record.on <= ask.as_of).count();
        let history = History::of(holding, leaflets, name).up_to(ask.as_of);
        let mut courses: Vec<usize> = Vec::new();
        for (index, course) in history.courses.iter().enumerate() {
            courses
                .retain(|known| history.courses.get(*known).is_some_and(|known| known.entry != course.entry));
            courses.push(index);
        }
        let file = file.get(..known).unwrap_or_default();
        let moved = file
            .iter()
            .find(|record| record.on > ask.stands_on() && matches!(record.event, Event::ColonyMoved(_)));
        Colony {
            moved_on: moved.map(|record| (record.on, record.id)),
            courses,
            name: name.clone(),
            apiary: holding.apiary_of(name, ask.stands_on()).cloned(),
            history,
            file,
            ahead: EachDay::default(),
            inside: EachDay::default(),
        }
    }

    /// Whether it is in the holding at the end of a day.
    pub(super) fn is_here(&self, on: Day) -> bool {
        self.history.begun.is_some_and(|(begun, _)| begun <= on)
            && self.history.ended.is_none_or(|(ended, _)| on < ended)
    }

    /// When it is free of the medicines already in, as of a day.
    pub(super) fn ahead(&self, start: Day) -> Rc<Ahead> {
        self.ahead.get(start, || Ahead::of(&self.history, start))
    }

    /// Calls `look` with each line of a course that is in or may be in on a day, in order, until it returns `false`.
    pub(super) fn look_inside(&self, day: Day, mut look: impl FnMut(&Course, Presence) -> bool) {
        let inside = self.inside.get(day, || {
            let lines = self.history.courses.iter().enumerate().filter(|(_, line)| line.speaks_on(day));
            let lines = lines.map(|(index, line)| (index, self.history.presence(line, day)));
            lines.filter(|(_, presence)| *presence != Presence::Out).collect()
        });
        for (index, presence) in inside.iter() {
            if self.history.courses.get(*index).is_some_and(|line| !look(line, *presence)) {
                break;
            }
        }
    }

    /// The last brood inspection by the end of a day, unless the colony was split or united since.
    pub(super) fn brood(&self, on: Day) -> Option<&BroodSeen> {
        let seen = self.history.broods.iter().rfind(|seen| seen.on <= on);
        seen.filter(|seen| self.is_the_same_since(seen.on, on))
    }

    /// The day since which it is on record.
    pub(super) fn since(&self) -> Option<Day> {
        self.history.begun.map(|(begun, _)| begun)
    }

    /// The first day whose inspections describe the colony as it is at the end of `by`: after it arrived, and after
    /// it was last split or united.
    pub(super) fn since_parted(&self, by: Day) -> Option<Day> {
        let parted = self.file.iter().filter(|record| {
            record.on <= by && matches!(record.event, Event::ColonySplit(_) | Event::ColonyUnited(_))
        });
        parted.map(|record| record.on.next()).chain(self.since()).max()
    }

    /// Whether it was neither split nor united from an inspection on. Inspections from before a split or uniting are
    /// ignored afterwards.
    fn is_the_same_since(&self, seen: Day, on: Day) -> bool {
        let later = self.file.iter().filter(|record| seen <= record.on && record.on <= on);
        !later.clone().any(|record| matches!(record.event, Event::ColonySplit(_) | Event::ColonyUnited(_)))
    }

    /// The state of brood that sets the stay of a course that starts on a day, if the brood was inspected shortly
    /// before.
    pub(super) fn brood_state(&self, on: Day) -> Option<BroodState> {
        self.brood(on).filter(|seen| seen.on >= on.minus(BROOD_TELLS_DAYS)).map(BroodSeen::state)
    }

    /// The last count by the end of a day.
    pub(super) fn counted(&self, on: Day, pick: impl Fn(&Inspection) -> Option<u32>) -> Option<Count> {
        self.file
            .iter()
            .filter(|record| record.on <= on)
            .rev()
            .find_map(|record| Some(Count { number: pick(record.body()?)?, on: record.on, entry: record.id }))
    }

    /// The last count by the end of a day, if it is still valid.
    pub(super) fn counts(&self, on: Day, pick: impl Fn(&Inspection) -> Option<u32>) -> Option<Count> {
        let recent = self.counted(on, pick).filter(|count| count.on >= on.minus(COUNT_TELLS_DAYS));
        recent.filter(|count| self.is_the_same_since(count.on, on))
    }

    /// The courses of a leaflet, each once, in order.
    pub(super) fn courses_of(&self, leaflet: &Leaflet) -> Vec<&Course> {
        let same =
            |course: &&Course| course.terms.leaflet.as_ref().is_some_and(|known| known.id == leaflet.id);
        self.courses().filter(same).collect()
    }

    /// Its courses, each once, in order.
    pub(super) fn courses(&self) -> impl DoubleEndedIterator<Item = &Course> {
        self.courses.iter().filter_map(|index| self.history.courses.get(*index))
    }
}
