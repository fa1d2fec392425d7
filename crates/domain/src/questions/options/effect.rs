//! What a course that is started on a day means for honey supers.

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::basics::words::SupersDuring;
use crate::facts::history::{
    BeforeFlow, Ends, FlowBefore, FlowSpan, Plan, Terms, before_flow, blocked_through, free_from,
    free_in_or_out, inside,
};

/// What a course that is started on a day means for honey supers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Effect {
    /// The first day on which it may be out.
    pub(super) out: Option<Day>,
    /// The last day on which it must be out.
    pub(super) out_by: Option<Day>,
    /// The first day on which supers may go on.
    pub(super) free: FreeAfterwards,
}

/// When supers may go on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FreeAfterwards {
    /// They may be on all along.
    AllAlong {
        /// But no honey may be taken while it is in.
        no_harvest: bool,
    },
    /// From this day on, if it comes out as early as it may.
    From(Day),
    /// How long it has to stay is not stated.
    StayNotKnown,
    /// The withdrawal period or the wait is not established.
    PeriodsNotKnown,
    /// What is in already, or was given before, leaves it open.
    OthersNotKnown,
}

impl FreeAfterwards {
    /// The first day, if known: of what may be on all along, the day of placing.
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
    pub(super) fn of(terms: &Terms, plan: &Plan, start: Day) -> Effect {
        let out = plan.least.map(|days| start.plus(days));
        let out_by = plan.most.map(|days| start.plus(days));
        let free = match out {
            _ if free_in_or_out(terms) => {
                let value = terms.supers_during.as_ref().map(|fact| fact.value);
                FreeAfterwards::AllAlong { no_harvest: value == Some(SupersDuring::OnNoHarvest) }
            }
            None => FreeAfterwards::StayNotKnown,
            Some(_) if plan.ends == Ends::PerhapsUsedUp => FreeAfterwards::PeriodsNotKnown,
            Some(out) => free_from(terms, out).map_or(FreeAfterwards::PeriodsNotKnown, FreeAfterwards::From),
        };
        Effect { out, out_by, free }
    }

    /// The same where the time right before a flow is barred. Without an apiary its flows are not known.
    pub(super) fn before_flow(self, bar: FlowBefore, flows: Option<Vec<FlowSpan>>) -> Effect {
        let (FreeAfterwards::From(day), Some(out)) = (self.free, self.out) else { return self };
        let free = match flows.map(|flows| before_flow(&flows, bar, out, day)) {
            Some(BeforeFlow::Free) => self.free,
            Some(BeforeFlow::Barred(flow)) => FreeAfterwards::From(flow.last.next()),
            Some(BeforeFlow::Perhaps(_) | BeforeFlow::NoFlowOnRecord) | None => {
                FreeAfterwards::PeriodsNotKnown
            }
        };
        Effect { free, ..self }
    }

    /// The same beside what is in already: supers wait for the later of the two.
    pub(super) fn beside(self, others: Option<Day>, start: Day) -> Effect {
        let free = match (self.free, others) {
            (FreeAfterwards::StayNotKnown | FreeAfterwards::PeriodsNotKnown, _) => self.free,
            (FreeAfterwards::OthersNotKnown, _) | (_, None) => FreeAfterwards::OthersNotKnown,
            (FreeAfterwards::AllAlong { .. }, Some(other)) if other <= start => self.free,
            (FreeAfterwards::AllAlong { .. }, Some(other)) => FreeAfterwards::From(other),
            (FreeAfterwards::From(own), Some(other)) => FreeAfterwards::From(own.max(other)),
        };
        Effect { free, ..self }
    }

    /// The last day that is blocked, if it comes out as early as it may; where a period is not established, the last day that
    /// is blocked at the least.
    pub(super) fn last_blocked(&self, terms: &Terms, start: Day) -> Option<Day> {
        match self.free {
            FreeAfterwards::From(day) if day > start => Some(day.before()),
            FreeAfterwards::PeriodsNotKnown => {
                let through = self.out.map(|out| (out, blocked_through(terms, out)));
                let off = inside(terms) == Verdict::No;
                through.filter(|(out, through)| off || through >= out).map(|(_, through)| through)
            }
            FreeAfterwards::From(_)
            | FreeAfterwards::AllAlong { .. }
            | FreeAfterwards::StayNotKnown
            | FreeAfterwards::OthersNotKnown => None,
        }
    }
}
