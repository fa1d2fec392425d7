//! The consequences of a start, in words.

use combclear_domain::questions::options::{FreeAfterwards, PlannedVisit, Start, Task};
use serde::Serialize;

use crate::Words;
use crate::words::say;

/// The consequences of starting on the first day of a range.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StartReport {
    /// The start, with its days.
    #[serde(flatten)]
    pub start: Start,
    /// When supers may go on, in a sentence.
    pub supers: String,
    /// The same in brief, if supers may stay on while it is in.
    #[serde(skip)]
    pub supers_all_along: Option<String>,
    /// The visits.
    pub visits: Vec<Visit>,
}

/// A visit to the hive.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Visit {
    /// The visit, with its days.
    #[serde(flatten)]
    pub visit: PlannedVisit,
    /// The task.
    pub what: String,
}

impl StartReport {
    pub(super) fn of(words: &Words, start: Start) -> StartReport {
        let is_in = start.out_from.is_some_and(|out| start.start < out);
        let all_along = matches!(start.supers, FreeAfterwards::AllAlong { .. }) && is_in;
        let visits = start.visits.iter().map(|visit| Visit { visit: *visit, what: task(words, visit.task) });
        StartReport {
            supers: supers(words, &start),
            supers_all_along: all_along.then(|| say!(words, OptionsSupersAllAlong)),
            visits: visits.collect(),
            start,
        }
    }
}

fn supers(words: &Words, start: &Start) -> String {
    match start.supers {
        FreeAfterwards::AllAlong { no_harvest: false } => say!(words, OptionsSupersAllAlong),
        FreeAfterwards::AllAlong { no_harvest: true } => say!(words, OptionsSupersAllAlongNoHarvest),
        FreeAfterwards::From(day) if start.is_taken_out => {
            say!(words, OptionsSupersFromIfOutEarly, day = day)
        }
        FreeAfterwards::From(day) => say!(words, OptionsSupersFrom, day = day),
        FreeAfterwards::OthersNotKnown => say!(words, OptionsSupersOthersNotKnown),
        FreeAfterwards::StayNotKnown => say!(words, OptionsSupersStayNotKnown),
        FreeAfterwards::PeriodsNotKnown => say!(words, OptionsSupersPeriodsNotKnown),
    }
}

fn task(words: &Words, task: Task) -> String {
    match task {
        Task::Dose { number, is_placed, wait_is_stated } => {
            let placed = if is_placed { "yes" } else { "no" };
            let what = match number {
                Some(number) => say!(words, OptionsVisitDose, placed = placed, number = number),
                None => say!(words, OptionsVisitOnlyDose, placed = placed),
            };
            if wait_is_stated { what } else { say!(words, OptionsVisitWaitNotStated, what = what) }
        }
        Task::SeeFurtherDoses => say!(words, OptionsVisitSeeFurtherDoses),
        Task::TakeOut => say!(words, OptionsVisitTakeOut),
        Task::TakeOutAtSomeTime => say!(words, OptionsVisitTakeOutAtSomeTime),
        Task::TakeOutAfterLastDose => say!(words, OptionsVisitTakeOutAfterLastDose),
        Task::SeeRemoval => say!(words, OptionsVisitSeeRemoval),
    }
}
