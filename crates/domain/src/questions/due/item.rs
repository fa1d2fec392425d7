//! Groups the same tasks of one apiary into items with stable keys.

use serde::Serialize;

use super::kind::{DueKind, Weight};
use super::task::Task;
use super::to_do::ToDo;
use super::trail::Trails;
use crate::basics::calendar::{Day, Instant};
use crate::basics::words::{ApiaryName, ColonyName};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::seal::derived_id;

/// A task to do, for one or more colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = DueTask))]
pub struct Item {
    /// The kind of task.
    pub kind: DueKind,
    /// Identifies the task. It is made from the kind, the entry that the task comes from and the first of its
    /// colonies, so the task keeps its key when its dates move.
    pub key: String,
    /// The key as a UUID that differs between holdings.
    #[cfg_attr(feature = "openapi", schema(value_type = String, format = Uuid))]
    pub uid: EntryId,
    /// The apiary. Absent for a task at home, with a lot.
    pub apiary: Option<ApiaryName>,
    /// The colonies. Empty for a task with a lot.
    pub colonies: Vec<ColonyName>,
    /// The first day. Absent if not stated.
    pub from: Option<Day>,
    /// The last day. Absent if open.
    pub by: Option<Day>,
    /// The first day without brood, if it depends on brood and none is on record.
    pub from_without_brood: Option<Day>,
    /// The first day with brood, if it depends on brood and none is on record.
    pub from_with_brood: Option<Day>,
    /// Whether it must be done, is advised or is optional.
    pub weight: Weight,
    /// Whether its last day is past.
    pub overdue: bool,
    /// The task with the facts shown to the keeper.
    #[serde(skip)]
    pub to_do: ToDo,
    /// The entry that it comes from, by the first id of its chain of corrections.
    #[serde(skip)]
    pub anchor: EntryId,
    /// The entries that support it.
    pub grounds: Vec<EntryId>,
    /// Journal position of the last entry that affects it. It never falls while the item keeps its key.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub sequence: u64,
    /// When that entry was recorded.
    pub recorded_at: Instant,
}

impl Item {
    /// The first day on which it may turn out to be possible. Absent if not known.
    #[must_use]
    pub(crate) fn first_possible(&self) -> Option<Day> {
        self.from_without_brood.into_iter().chain(self.from).min()
    }
}

/// Groups tasks of one apiary with the same kind, entry, dates and facts.
pub(super) fn taken_together(holding: &Holding, tasks: Vec<Task>, as_of: Day) -> Vec<Item> {
    let mut groups: Vec<Vec<Task>> = Vec::new();
    for task in tasks {
        let same = |group: &&mut Vec<Task>| group.first().is_some_and(|first| together(first, &task));
        match groups.iter_mut().find(same) {
            Some(group) => group.push(task),
            None => groups.push(vec![task]),
        }
    }
    let mut trails = Trails::of(holding, as_of);
    groups.iter().filter_map(|group| item(holding, &mut trails, group, as_of)).collect()
}

fn together(one: &Task, other: &Task) -> bool {
    one.same(other)
        && one.apiary == other.apiary
        && one.days == other.days
        && one.weight == other.weight
        && one.to_do == other.to_do
}

fn item(holding: &Holding, trails: &mut Trails<'_>, group: &[Task], as_of: Day) -> Option<Item> {
    let first = group.first()?;
    let colonies: Vec<ColonyName> = group.iter().filter_map(|task| task.colony.clone()).collect();
    let mut grounds: Vec<EntryId> = group.iter().flat_map(|task| task.grounds.iter().copied()).collect();
    let place = |entry: &EntryId| holding.entry(*entry).map(|record| record.seq);
    grounds.sort_unstable_by_key(place);
    grounds.dedup();
    let mut parts = vec![first.kind.as_str().to_owned(), first.anchor.to_string()];
    parts.extend(Some(&first.part).filter(|part| !part.is_empty()).cloned());
    parts.extend(colonies.first().map(ToString::to_string));
    let key = parts.join(":");
    // Every task comes from an entry of this holding, so there is a last one.
    let last = trails.last(first.kind, first.anchor, &colonies, &grounds)?;
    Some(Item {
        kind: first.kind,
        uid: derived_id(&[holding.name().as_str(), "due", &key]),
        key,
        apiary: first.apiary.clone(),
        colonies,
        from: first.days.from,
        by: first.days.by,
        from_without_brood: first.days.by_brood.map(|(without, _)| without),
        from_with_brood: first.days.by_brood.map(|(_, with)| with),
        weight: first.weight,
        overdue: first.days.by.is_some_and(|by| by < as_of),
        to_do: first.to_do.clone(),
        anchor: first.anchor,
        grounds,
        sequence: last.seq,
        recorded_at: last.recorded_at,
    })
}
