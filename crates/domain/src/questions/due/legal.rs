//! Entries missing from the legal record: each is due until it is supplied.

use super::kind::{DueKind, Weight};
use super::task::{Days, Task};
use super::to_do::ToDo;
use crate::basics::calendar::Day;
use crate::facts::holding::Holding;
use crate::questions::gaps::{Gap, GapWeight, Gaps};
use crate::questions::register::Period;
use crate::rules::law::Laws;
use crate::rules::leaflet::Leaflets;

/// A task for each requirement of a law that the record does not meet, whatever the day of the entry.
pub(super) fn tasks(holding: &Holding, leaflets: &Leaflets, laws: &Laws, as_of: Day) -> Vec<Task> {
    let Ok(all) = Period::new(Day::FIRST, as_of) else { return Vec::new() };
    let found = Gaps::of(holding, leaflets, laws, all, as_of, &[]);
    let required = found.gaps.into_iter().filter(|gap| gap.weight == GapWeight::Required);
    required.map(|gap| task(holding, gap)).collect()
}

fn task(holding: &Holding, gap: Gap) -> Task {
    Task {
        kind: DueKind::LegalGap,
        anchor: holding.original(gap.entry),
        part: gap.finding.as_str().to_owned(),
        apiary: None,
        colony: None,
        days: Days::new(gap.on, None),
        weight: Weight::Must,
        grounds: vec![gap.entry],
        to_do: ToDo::CompleteRecord { gap: Box::new(gap) },
    }
}
