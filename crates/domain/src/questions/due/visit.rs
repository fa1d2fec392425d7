//! Items that one visit to an apiary can do.

use super::item::Item;
use super::kind::Weight;
use super::task::earlier_or_open;
use crate::basics::calendar::Day;
use crate::basics::words::ApiaryName;

/// One visit: an apiary, and days on which all of these items can be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Visit {
    /// The apiary; absent for what is done at home, with lots.
    pub apiary: Option<ApiaryName>,
    /// Whether the last day of these items is over.
    pub overdue: bool,
    /// The first day on which all of them can be done, the day asked about at the earliest; absent where nobody has stated
    /// from when on.
    pub from: Option<Day>,
    /// The last such day; absent if it is open. Of what is overdue, the day asked about.
    pub by: Option<Day>,
    /// What can be done then: what must be done first, then advice, then what may be.
    pub items: Vec<Item>,
}

/// Takes items together into as few visits as they fit into, in order: what is overdue first, then by the first day.
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
    // Of what is not overdue, what has no first day on record may be due already: it stands before what has one.
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
        // A day that nobody stated is no day on which something else could be done as well.
        let (Some(from), Some(begins)) = (from, self.from) else { return from == self.from };
        let overlap = |by: Option<Day>, from: Day| by.is_none_or(|by| from <= by);
        let fits = overlap(self.by, from) && overlap(item.by, begins);
        // What has no last day is not put off, and what nobody has to do moves nothing that must be done.
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
