//! One thing to do in one colony or with one lot, before the same tasks are grouped.

use std::cmp::Ordering;
use std::collections::BTreeSet;

use super::kind::{DueKind, Weight};
use super::to_do::ToDo;
use crate::basics::calendar::Day;
use crate::basics::words::{ApiaryName, ColonyName, LotName};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// One thing to do.
#[derive(Debug, Clone)]
pub(super) struct Task {
    pub(super) kind: DueKind,
    /// The main entry that it comes from, by the first id of its chain of corrections.
    pub(super) anchor: EntryId,
    /// Distinguishes tasks of one kind on the same entry: the number of a dose, the missing entry.
    pub(super) part: String,
    pub(super) apiary: Option<ApiaryName>,
    /// `None` for a task with a lot.
    pub(super) colony: Option<ColonyName>,
    pub(super) days: Days,
    pub(super) weight: Weight,
    pub(super) to_do: ToDo,
    pub(super) grounds: Vec<EntryId>,
}

/// The days for a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Days {
    /// The first day. Absent if not stated.
    pub(super) from: Option<Day>,
    pub(super) by: Option<Day>,
    /// The first day without brood and with brood, if it depends on brood and none was seen.
    pub(super) by_brood: Option<(Day, Day)>,
}

impl Days {
    pub(super) const fn new(from: Day, by: Option<Day>) -> Days {
        Days::perhaps(Some(from), by)
    }

    /// From a day that may not be stated.
    pub(super) const fn perhaps(from: Option<Day>, by: Option<Day>) -> Days {
        Days { from, by, by_brood: None }
    }

    /// A single day.
    pub(super) const fn on(day: Day) -> Days {
        Days::new(day, Some(day))
    }
}

impl Task {
    /// Whether two tasks of one colony are the same. Of several lines of one course, the strictest is kept.
    pub(super) fn same(&self, other: &Task) -> bool {
        self.kind == other.kind && self.anchor == other.anchor && self.part == other.part
    }

    /// Orders by strictness, strictest first: with a last day before without, an earlier last day before a later;
    /// then without a first day before with, a later first day before an earlier.
    pub(super) fn stricter(&self, other: &Task) -> Ordering {
        let first = match (self.days.from, other.days.from) {
            (Some(one), Some(two)) => two.cmp(&one),
            (one, two) => one.is_some().cmp(&two.is_some()),
        };
        earlier_or_open(self.days.by, other.days.by).then(first)
    }
}

/// Orders last days; an open one comes last.
pub(super) fn earlier_or_open(one: Option<Day>, two: Option<Day>) -> Ordering {
    match (one, two) {
        (Some(one), Some(two)) => one.cmp(&two),
        (one, two) => one.is_none().cmp(&two.is_none()),
    }
}

/// The lots from which a colony was given these doses, in order.
pub(super) fn lots_of(
    holding: &Holding,
    doses: impl Iterator<Item = EntryId>,
    colony: &ColonyName,
) -> Vec<LotName> {
    let mut here: BTreeSet<LotName> = BTreeSet::new();
    let mut all: BTreeSet<LotName> = BTreeSet::new();
    for record in doses.filter_map(|dose| holding.entry(dose)) {
        let Event::Administration(body) = &record.event else { continue };
        for given in &body.given {
            all.insert(given.lot.clone());
            if given.colonies.contains(colony) {
                here.insert(given.lot.clone());
            }
        }
    }
    // A course that came with a split was given to another colony.
    if here.is_empty() { all.into_iter().collect() } else { here.into_iter().collect() }
}
