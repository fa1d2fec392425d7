//! How a course started on a day affects honey supers.
//!
//! The course is planned, added to the medicines already in the colony, and judged like a recorded one: [`Outlook`]
//! gives the day on which supers may go on.

use super::colony::Colony;
use super::place::Place;
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;
use crate::facts::history::{FlowBefore, Plan, Terms, inside};
use crate::questions::supering::Outlook;

/// How a course started on a day affects honey supers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Effect {
    /// The earliest day out.
    pub(super) out: Option<Day>,
    /// The day by which it must be out.
    pub(super) out_by: Option<Day>,
    /// When supers may go on.
    pub(super) free: FreeAfterwards,
    /// The last blocked day if it comes out on the earliest day. A lower bound if a period is not established.
    pub(super) last_blocked: Option<Day>,
}

/// When supers may go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FreeAfterwards {
    /// They may stay on throughout.
    AllAlong {
        /// Whether honey may not be taken while it is in.
        no_harvest: bool,
    },
    /// From this day on, if it comes out on the earliest day.
    From(Day),
    /// The least stay is not stated.
    StayNotKnown,
    /// The withdrawal period or the wait is not established.
    PeriodsNotKnown,
    /// A medicine already in, or given before, leaves it open.
    OthersNotKnown,
}

impl FreeAfterwards {
    /// The first day, if known. If supers may stay on throughout, the day of placing.
    pub(super) fn day(self, start: Day) -> Option<Day> {
        match self {
            FreeAfterwards::AllAlong { .. } => Some(start),
            FreeAfterwards::From(day) => Some(day),
            FreeAfterwards::StayNotKnown
            | FreeAfterwards::PeriodsNotKnown
            | FreeAfterwards::OthersNotKnown => None,
        }
    }
}

impl Effect {
    /// The effect of a start in a colony. Without a place, the flows are not known.
    pub(super) fn of(
        terms: &Terms,
        plan: &Plan,
        start: Day,
        colony: &Colony<'_>,
        place: Option<&Place<'_>>,
    ) -> Effect {
        let out = plan.least.known().map(|days| start.plus(*days));
        let planned = plan.starting(terms, start, place.map_or(&[], |place| &place.apiary.flow_spans));
        let alone = Outlook::of_lines(&colony.history, &[&planned]);
        let free = free(terms, out, start, &alone, colony, place);
        let last_blocked = match free {
            FreeAfterwards::From(day) if day > start => Some(day.before()),
            FreeAfterwards::PeriodsNotKnown => {
                // If supers must be off, they stay off between doses too.
                let off = out.filter(|_| inside(terms) == Verdict::No).map(Day::before);
                alone.last_no().max(off)
            }
            FreeAfterwards::From(_)
            | FreeAfterwards::AllAlong { .. }
            | FreeAfterwards::StayNotKnown
            | FreeAfterwards::OthersNotKnown => None,
        };
        Effect { out, out_by: plan.most.known().map(|days| start.plus(*days)), free, last_blocked }
    }
}

/// When supers may go on. If they must be off for the course, that is never before its last dose, and only once
/// neither the course nor any earlier medicine bars them again. `alone` is the outlook of the planned course by
/// itself.
fn free(
    terms: &Terms,
    out: Option<Day>,
    start: Day,
    alone: &Outlook,
    colony: &Colony<'_>,
    place: Option<&Place<'_>>,
) -> FreeAfterwards {
    let bars_before_flow = terms.flow_before.is_some_and(|bar| bar.value != FlowBefore::BarredDays(0));
    let own = alone.free_for_good().filter(|_| place.is_some() || !bars_before_flow);
    let on_all_along = inside(terms) == Verdict::Yes && own.is_some_and(|own| own <= start);
    let from = match out {
        _ if on_all_along && (out.is_some() || !bars_before_flow) => start,
        Some(out) => out,
        None => return FreeAfterwards::StayNotKnown,
    };
    if own.is_none() {
        return FreeAfterwards::PeriodsNotKnown;
    }
    let together = colony.ahead(start).outlook.as_ref().and_then(|others| others.and(alone).free_for_good());
    match together {
        None => FreeAfterwards::OthersNotKnown,
        Some(day) if on_all_along && day <= start => {
            let value = terms.supers_during.known().map(|fact| fact.value);
            FreeAfterwards::AllAlong { no_harvest: value == Some(SupersDuring::OnNoHarvest) }
        }
        Some(day) => FreeAfterwards::From(day.max(from)),
    }
}
