//! What must or may be done, from when, by when, apiary by apiary.
//!
//! Uses the same histories, steps and terms as the supering question, and the lots in stock. Events after the first
//! day asked about are ignored; readings and corrections always count.
//!
//! - `colony.rs`, `after.rs`, `missing.rs`, `lots.rs`, `legal.rs`: single tasks, each with its supporting entries
//! - `to_do.rs`: the facts of a task that the keeper sees
//! - `item.rs`: groups the same tasks of one apiary into items with stable keys
//! - `trail.rs`: the entries that affect an item, which give the sequence number in a calendar
//! - `visit.rs`: items that one visit can cover

mod after;
mod colony;
mod item;
mod kind;
mod legal;
mod lots;
mod missing;
mod task;
mod to_do;
mod trail;
mod visit;

use crate::basics::calendar::Day;
use crate::basics::words::{ApiaryName, HoldingName};
use crate::facts::holding::Holding;
use crate::questions::options::Span;
use crate::rules::law::Laws;
use crate::rules::leaflet::Leaflets;

pub use item::Item;
pub use kind::{DueKind, Weight};
pub use to_do::{CourseName, ToDo};
pub use visit::Visit;

/// The tasks that are due. The crate `combclear-wording` puts them into words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Due {
    /// The holding.
    pub holding: HoldingName,
    /// The first day asked about. Events after it are ignored.
    pub from: Day,
    /// The last day asked about.
    pub to: Day,
    /// The apiary asked about, if only one was.
    pub apiary: Option<ApiaryName>,
    /// The items, grouped by visits; overdue ones first.
    pub visits: Vec<Visit>,
}

impl Due {
    /// Answers the question for a holding. An item that begins after the span is left out, unless it is overdue or
    /// its first day is not known.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        laws: &Laws,
        span: Span,
        apiary: Option<&ApiaryName>,
    ) -> Due {
        let (as_of, to) = (span.from(), span.to());
        let mut tasks = colony::tasks(holding, leaflets, as_of);
        tasks.extend(lots::tasks(holding, leaflets, as_of));
        tasks.extend(legal::tasks(holding, leaflets, laws, as_of));
        let items = item::taken_together(holding, tasks, as_of);
        let nothing = Due {
            holding: holding.name().clone(),
            from: as_of,
            to,
            apiary: apiary.cloned(),
            visits: Vec::new(),
        };
        nothing.and(items)
    }

    /// The same with further items, grouped again.
    #[must_use]
    pub fn and(self, further: impl IntoIterator<Item = Item>) -> Due {
        let (as_of, to) = (self.from, self.to);
        let mut items: Vec<Item> = self.visits.into_iter().flat_map(|visit| visit.items).collect();
        let wanted = |item: &Item| {
            let here = self.apiary.is_none() || item.apiary == self.apiary;
            here && (item.overdue || item.first_possible().is_none_or(|first| first <= to))
        };
        items.extend(further.into_iter().filter(wanted));
        Due { visits: visit::planned(items, as_of), ..self }
    }

    /// Every item, in order.
    #[must_use = "iterators are lazy"]
    pub fn items(&self) -> impl Iterator<Item = &Item> {
        self.visits.iter().flat_map(|visit| &visit.items)
    }
}
