//! Due tasks as an owned report in words, ready for JSON, a table or a calendar.

use combclear_domain::basics::calendar::{Day, POLICY};
use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::due::{Due, Item, Visit};
use serde::Serialize;

use super::sentences::{in_brief, text, title};
use crate::{Words, notice};

/// The tasks that are due: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueReport {
    /// The holding.
    pub holding: HoldingName,
    /// The first day asked about. Events after it are ignored.
    pub from: Day,
    /// The last day asked about.
    pub to: Day,
    /// The apiary asked about, if only one was.
    pub apiary: Option<ApiaryName>,
    /// The items, grouped by visits; overdue ones first.
    pub visits: Vec<DueVisit>,
    /// The entries that support them, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The counting policy.
    pub policy: &'static str,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// One visit: an apiary, and days on which all of these items can be done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueVisit {
    /// The apiary. Absent for tasks at home, with lots.
    pub apiary: Option<ApiaryName>,
    /// Whether these items are overdue.
    pub overdue: bool,
    /// The first day on which all of them can be done, not before the day asked about. Absent if not stated.
    pub from: Option<Day>,
    /// The last such day. Absent if open. For overdue items, the day asked about.
    pub by: Option<Day>,
    /// The items: musts first, then advice, then options.
    pub items: Vec<DueItem>,
}

/// Something that must or may be done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DueItem {
    /// The task, with its days.
    #[serde(flatten)]
    pub item: Item,
    /// The task in a few words.
    pub title: String,
    /// The task in a sentence, with its dates.
    pub text: String,
}

impl DueReport {
    /// Puts the answer into words. `holding` must be the one that was asked about.
    #[must_use]
    pub fn of(words: &Words, holding: &Holding, due: Due) -> DueReport {
        let grounds = due.items().flat_map(|item| item.grounds.iter().copied());
        let named_entries = NamedEntry::all(holding, grounds);
        let Due { holding, from, to, apiary, visits } = due;
        DueReport {
            holding,
            named_entries,
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
    /// One of its items in a line: what, in which colonies, and its days where they differ from those of the visit. `asked` is
    /// the first day asked about.
    #[must_use]
    pub fn in_brief(&self, words: &Words, due: &DueItem, asked: Day) -> String {
        let item = &due.item;
        let days = (item.from.map(|from| from.max(asked)), item.by);
        let days = (item.overdue || days != (self.from, self.by)).then_some(days);
        in_brief(words, item, &due.title, asked, days)
    }

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
