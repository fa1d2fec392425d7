//! One thing to do in one colony or with one lot, before tasks that are the same are taken together.

use std::collections::BTreeSet;

use super::kind::{DueKind, Weight};
use crate::calendar::Day;
use crate::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::words::{ApiaryName, ColonyName, LotName};

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
    pub(super) title: String,
    pub(super) text: String,
    pub(super) grounds: Vec<EntryId>,
}

/// The days for a task.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Days {
    pub(super) from: Day,
    pub(super) by: Option<Day>,
    /// The first day, if it turned out that there is no brood, and if there is; absent unless it turns on brood nobody saw.
    pub(super) by_brood: Option<(Day, Day)>,
}

impl Days {
    pub(super) const fn new(from: Day, by: Option<Day>) -> Days {
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

    /// The days as they are compared for strictness: the earlier last day first, then the later first day.
    pub(super) fn strictness(&self) -> (Day, std::cmp::Reverse<Day>) {
        (self.days.by.unwrap_or(Day::LAST), std::cmp::Reverse(self.days.from))
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
    for record in doses.filter_map(|dose| holding.record(dose)) {
        let Event::Administration(body) = &*record.event else { continue };
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
