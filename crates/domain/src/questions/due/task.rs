//! One thing to do in one colony or with one lot, before tasks that are the same are taken together.

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
    /// The entry it rests on first of all, by the first id it ever had.
    pub(super) anchor: EntryId,
    /// What tells it from other tasks of its kind on the same entry: the number of a dose, the entry that is missing.
    pub(super) part: String,
    pub(super) apiary: Option<ApiaryName>,
    /// None for a task with a lot.
    pub(super) colony: Option<ColonyName>,
    pub(super) days: Days,
    pub(super) weight: Weight,
    pub(super) to_do: ToDo,
    pub(super) grounds: Vec<EntryId>,
}

/// The days for a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Days {
    /// The first; absent where nobody has stated it.
    pub(super) from: Option<Day>,
    pub(super) by: Option<Day>,
    /// The first day, if it turned out that there is no brood, and if there is; absent unless it turns on brood nobody saw.
    pub(super) by_brood: Option<(Day, Day)>,
}

impl Days {
    pub(super) const fn new(from: Day, by: Option<Day>) -> Days {
        Days::perhaps(Some(from), by)
    }

    /// The same where the first may not be stated.
    pub(super) const fn perhaps(from: Option<Day>, by: Option<Day>) -> Days {
        Days { from, by, by_brood: None }
    }

    /// One day.
    pub(super) const fn on(day: Day) -> Days {
        Days::new(day, Some(day))
    }
}

impl Task {
    /// What makes two tasks of one colony the same: of several lines of one course, the strictest speaks.
    pub(super) fn same(&self, other: &Task) -> bool {
        self.kind == other.kind && self.anchor == other.anchor && self.part == other.part
    }

    /// Which of two is stricter: one with a last day before one without, the earlier last day first; then one whose first day
    /// nobody stated, then the later first day.
    pub(super) fn stricter(&self, other: &Task) -> Ordering {
        let first = match (self.days.from, other.days.from) {
            (Some(one), Some(two)) => two.cmp(&one),
            (one, two) => one.is_some().cmp(&two.is_some()),
        };
        earlier_or_open(self.days.by, other.days.by).then(first)
    }
}

/// Last days in order: an open one stands behind all others.
pub(super) fn earlier_or_open(one: Option<Day>, two: Option<Day>) -> Ordering {
    match (one, two) {
        (Some(one), Some(two)) => one.cmp(&two),
        (one, two) => one.is_none().cmp(&two.is_none()),
    }
}

/// The lots that a colony was given from in these doses, in order.
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
    // A course that came by a split was given to another colony.
    if here.is_empty() { all.into_iter().collect() } else { here.into_iter().collect() }
}
