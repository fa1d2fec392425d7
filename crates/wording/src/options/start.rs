//! What a start on a day would mean, in words.

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::questions::options::{FreeAfterwards, Margin, PlannedVisit, Start, Task, Usability};
use serde::Serialize;

use crate::Words;
use crate::words::say;

/// What a start on the first day of a range would mean.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StartReport {
    /// The start day.
    pub start: Day,
    /// The answer of that day.
    pub answer: Usability,
    /// The first day on which it may be out, or on which nothing of it is left.
    pub out_from: Option<Day>,
    /// The same with brood absent or at its lowest, where nobody has seen the brood and it matters; `out_from` is then that
    /// with brood.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub out_from_without_brood: Option<Day>,
    /// Where no brood was seen: the first day on which it may be out if brood is seen while it is in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub out_from_if_brood_is_seen: Option<Day>,
    /// The last day on which it must be out.
    pub out_by: Option<Day>,
    /// How well `out_from` is established; absent where that is.
    pub stay_confidence: Option<Confidence>,
    /// The last day that is blocked, if it comes out as early as it may; at the least, where a period is not established.
    pub last_blocked_day: Option<Day>,
    /// The first day on which supers may go on, if it comes out as early as it may.
    pub first_free_day: Option<Day>,
    /// What that means for supers, in a sentence.
    pub supers: String,
    /// The same in brief, where supers may be on although it is in.
    #[serde(skip)]
    pub supers_all_along: Option<String>,
    /// How that lies to the next nectar flow.
    pub before_flow: Vec<Margin>,
    /// The visits.
    pub visits: Vec<Visit>,
}

/// A visit to the hive.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Visit {
    /// The first day for it; absent where nobody has stated it.
    pub from: Option<Day>,
    /// The last day for it, if stated.
    pub by: Option<Day>,
    /// What is done.
    pub what: String,
    /// Whether the hive is opened, as far as the leaflet's needs tell.
    pub hive_opened: bool,
}

impl StartReport {
    pub(super) fn of(words: &Words, start: &Start) -> StartReport {
        let is_in = start.out_from.is_some_and(|out| start.start < out);
        let all_along = matches!(start.supers, FreeAfterwards::AllAlong { .. }) && is_in;
        StartReport {
            start: start.start,
            answer: start.answer,
            out_from: start.out_from,
            out_from_without_brood: start.out_from_without_brood,
            out_from_if_brood_is_seen: start.out_from_if_brood_is_seen,
            out_by: start.out_by,
            stay_confidence: start.stay_confidence,
            last_blocked_day: start.last_blocked_day,
            first_free_day: start.first_free_day,
            supers: supers(words, start),
            supers_all_along: all_along.then(|| say!(words, OptionsSupersAllAlong)),
            before_flow: start.before_flow.clone(),
            visits: start.visits.iter().map(|visit| Visit::of(words, visit)).collect(),
        }
    }
}

impl Visit {
    fn of(words: &Words, visit: &PlannedVisit) -> Visit {
        Visit {
            from: visit.from,
            by: visit.by,
            what: task(words, visit.task),
            hive_opened: visit.hive_opened,
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
