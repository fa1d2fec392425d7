//! Items that one visit to an apiary can cover.

use super::item::Item;
use super::kind::Weight;
use super::task::earlier_or_open;
use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;

/// One visit: an apiary, and days on which all of these items can be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Visit {
    /// The apiary. Absent for tasks at home, with lots.
    pub apiary: Option<ApiaryName>,
    /// Whether these items are overdue.
    pub overdue: bool,
    /// The first day on which all of them can be done, not before the day asked about. Absent if not stated.
    pub from: Option<Day>,
    /// The last such day. Absent if open. For overdue items, the day asked about.
    pub by: Option<Day>,
    /// The items: musts first, then advice, then options.
    pub items: Vec<Item>,
}

/// Groups items into as few visits as possible, in order: overdue ones first, then by first day.
pub(super) fn planned(mut items: Vec<Item>, as_of: Day) -> Vec<Visit> {
    items.sort_by(|one, other| {
        let further = |item: &Item| (item.from, item.kind, item.key.clone());
        let by = earlier_or_open(one.by, other.by);
        one.weight.cmp(&other.weight).then(by).then_with(|| further(one).cmp(&further(other)))
    });
    let mut visits: Vec<Visit> = Vec::new();
    for item in items {
        match visits.iter_mut().find(|visit| visit.can_take(&item, as_of)) {
            Some(visit) => visit.take(item, as_of),
            None => visits.push(Visit::for_one(item, as_of)),
        }
    }
    // An item without a first day may be due already, so it comes before those with one. Overdue items still come
    // first.
    visits.sort_by(|one, other| {
        let first = |visit: &Visit| (!visit.overdue, visit.from);
        let place = |visit: &Visit| (visit.apiary.is_none(), visit.apiary.clone());
        let by = earlier_or_open(one.by, other.by);
        first(one).cmp(&first(other)).then(by).then_with(|| place(one).cmp(&place(other)))
    });
    visits
}

impl Visit {
    fn for_one(item: Item, as_of: Day) -> Visit {
        let overdue = item.overdue;
        let (from, by) = if overdue {
            (Some(as_of), Some(as_of))
        } else {
            (item.from.map(|from| from.max(as_of)), item.by)
        };
        Visit { apiary: item.apiary.clone(), overdue, from, by, items: vec![item] }
    }

    fn can_take(&self, item: &Item, as_of: Day) -> bool {
        if self.apiary != item.apiary || self.overdue != item.overdue {
            return false;
        }
        if self.overdue {
            return true;
        }
        let from = item.from.map(|from| from.max(as_of));
        // An item without a stated first day cannot share a visit with one that has a first day.
        let (Some(from), Some(begins)) = (from, self.from) else { return from == self.from };
        let overlap = |by: Option<Day>, from: Day| by.is_none_or(|by| from <= by);
        let fits = overlap(self.by, from) && overlap(item.by, begins);
        // An item without a last day is not postponed, and an optional item never moves one that must be done.
        let put_off = item.by.is_none() && begins > from;
        let later = from > begins;
        let sooner = item.by.is_some_and(|by| self.by.is_none_or(|visit| by < visit));
        let moves = match item.weight {
            Weight::Must => false,
            Weight::Advice => later,
            Weight::May => later || sooner,
        };
        fits && !put_off && !moves
    }

    fn take(&mut self, item: Item, as_of: Day) {
        if !self.overdue {
            self.from = self.from.max(item.from.map(|from| from.max(as_of)));
            self.by = match (self.by, item.by) {
                (Some(one), Some(other)) => Some(one.min(other)),
                (one, other) => one.or(other),
            };
        }
        self.items.push(item);
    }
}
