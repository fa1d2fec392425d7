//! What must or may be done, from when, by when, apiary by apiary.
//!
//! Drawn from the same histories, steps and terms as the supering question, and from the lots in stock. What happened after
//! the first day asked about does not bear; readings and corrections count whenever they were recorded.
//!
//! - `colony.rs`, `after.rs`, `missing.rs`, `lots.rs`, `legal.rs`: single tasks, each with what it rests on
//! - `item.rs`: tasks of one apiary that are the same, taken together, with a key that stays
//! - `trail.rs`: which entries bear on an item, for the number by which a calendar tells a newer state from an older
//! - `visit.rs`: items that one visit can do

mod after;
mod colony;
mod item;
mod kind;
mod legal;
mod lots;
mod missing;
mod of_gaps;
mod of_lots;
mod task;
mod trail;
mod visit;
mod wording;

use serde::Serialize;

use crate::basics::calendar::{Day, POLICY};
use crate::basics::words::{ApiaryName, HoldingName};
use crate::facts::holding::Holding;
use crate::questions::options::Span;
use crate::questions::supering::NOTICE;
use crate::rules::law::Laws;
use crate::rules::leaflet::Leaflets;

pub use after::{COUNT_FROM_DAYS, COUNT_TO_DAYS};
pub use colony::MISSED_DOSE_STANDS_DAYS;
pub use item::DueItem;
pub use kind::{DueKind, Weight};
pub use visit::DueVisit;

/// What is due: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueReport {
    /// The holding.
    pub holding: HoldingName,
    /// The first day asked about. What happened after it does not bear on the answer.
    pub from: Day,
    /// The last day asked about.
    pub to: Day,
    /// The only apiary asked about.
    pub apiary: Option<ApiaryName>,
    /// The items, taken together by visits; what is overdue first.
    pub visits: Vec<DueVisit>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: &'static str,
}

impl DueReport {
    /// Asks the question of a holding and writes the answer out. An item whose days lie wholly after the span is left out;
    /// one that is overdue, or whose first day is not known, never is.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        laws: &Laws,
        span: Span,
        apiary: Option<&ApiaryName>,
    ) -> DueReport {
        let (as_of, to) = (span.from(), span.to());
        let mut tasks = colony::tasks(holding, leaflets, as_of);
        tasks.extend(lots::tasks(holding, leaflets, as_of));
        tasks.extend(legal::tasks(holding, leaflets, laws, as_of));
        let items = item::taken_together(holding, tasks, as_of);
        let report = DueReport {
            holding: holding.name().clone(),
            from: as_of,
            to,
            apiary: apiary.cloned(),
            visits: Vec::new(),
            policy: POLICY,
            notice: NOTICE,
        };
        report.and(items)
    }

    /// The same with further items. They are taken together anew.
    #[must_use]
    pub fn and(self, further: impl IntoIterator<Item = DueItem>) -> DueReport {
        let (as_of, to) = (self.from, self.to);
        let mut items: Vec<DueItem> = self.visits.into_iter().flat_map(|visit| visit.items).collect();
        let wanted = |item: &DueItem| {
            let here = self.apiary.is_none() || item.apiary == self.apiary;
            here && (item.overdue || item.first_possible().is_none_or(|first| first <= to))
        };
        items.extend(further.into_iter().filter(wanted));
        DueReport { visits: visit::planned(items, as_of), ..self }
    }

    /// Every item, in order.
    #[must_use = "iterators are lazy"]
    pub fn items(&self) -> impl Iterator<Item = &DueItem> {
        self.visits.iter().flat_map(|visit| &visit.items)
    }
}
