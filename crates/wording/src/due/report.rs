//! What is due, as an owned report in words, ready for JSON, a table or a calendar.

use combclear_domain::basics::calendar::{Day, POLICY};
use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::questions::due::{Due, Item, Visit};
use serde::Serialize;

use super::sentences::{text, title};
use crate::{Words, notice};

/// What is due: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueReport {
    /// The holding.
    pub holding: HoldingName,
    /// The first day asked about. Events after it are ignored.
    pub from: Day,
    /// The last day asked about.
    pub to: Day,
    /// The only apiary asked about.
    pub apiary: Option<ApiaryName>,
    /// The items, grouped into visits; overdue items first.
    pub visits: Vec<DueVisit>,
    /// The counting policy.
    pub policy: &'static str,
    /// The limits of this answer.
    pub notice: String,
}

/// One visit: an apiary, and days on which all of these items can be done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueVisit {
    /// The apiary; absent for what is done at home, with lots.
    pub apiary: Option<ApiaryName>,
    /// Whether the last day of these items is over.
    pub overdue: bool,
    /// The first day on which all of them can be done, the day asked about at the earliest; absent where nobody has stated
    /// the earliest day.
    pub from: Option<Day>,
    /// The last such day; absent if it is open. For overdue items, the day asked about.
    pub by: Option<Day>,
    /// What can be done then: required items first, then advised, then optional ones.
    pub items: Vec<DueItem>,
}

/// Something that must or may be done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueItem {
    /// The task, with its days.
    #[serde(flatten)]
    pub item: Item,
    /// What is to be done, in a few words.
    pub title: String,
    /// The same in a sentence, with its dates.
    pub text: String,
}

impl DueReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, due: Due) -> DueReport {
        let Due { holding, from, to, apiary, visits } = due;
        DueReport {
            holding,
            from,
            to,
            apiary,
            visits: visits.into_iter().map(|visit| DueVisit::of(words, visit)).collect(),
            policy: POLICY,
            notice: notice(words),
        }
    }

    /// Every item, in order.
    #[must_use = "iterators are lazy"]
    pub fn items(&self) -> impl Iterator<Item = &DueItem> {
        self.visits.iter().flat_map(|visit| &visit.items)
    }
}

impl DueVisit {
    fn of(words: &Words, visit: Visit) -> DueVisit {
        let Visit { apiary, overdue, from, by, items } = visit;
        let items = items.into_iter().map(|item| DueItem::of(words, item)).collect();
        DueVisit { apiary, overdue, from, by, items }
    }
}

impl DueItem {
    fn of(words: &Words, item: Item) -> DueItem {
        DueItem { title: title(words, &item.to_do), text: text(words, &item), item }
    }
}
