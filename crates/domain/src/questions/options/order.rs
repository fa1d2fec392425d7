//! The ranking of the options, and the reasons for it. All reasons are shown.

use super::about::About;
use super::board::Judged;
use super::starts::Starting;
use super::state::{State, Usability};
use crate::basics::topic::Topic;

/// The sort key of an option, most important first: the answer; whether it is out before the next flow (not out comes
/// last); whether its class differs from that of the last two courses, since repeating a class makes mites resistant;
/// whether it is known to be out before the flow; the number of visits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rank {
    pub(super) answer: Usability,
    pub(super) before_flow: OutBeforeFlow,
    /// Whether its class differs from that of the last courses: yes, not known, no.
    pub(super) class: State,
    pub(super) visits: Visits,
}

/// The number of visits that a start takes. Fewer come first; among equals, a number that is certain to be complete.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Visits {
    /// A stated number.
    Stated {
        /// The number.
        count: usize,
        /// Whether there may be more, because the number of doses is not stated.
        perhaps_more: bool,
    },
    /// Not known.
    NotKnown,
}

/// Whether it is out before the next flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutBeforeFlow {
    /// No flow is on record; the same for all options.
    NoFlow,
    /// It is out before the flow.
    Yes,
    /// Not known.
    NotKnown,
    /// It is not out before the flow.
    No,
}

/// A reason for the rank of an option.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderReason {
    /// The best answer of any start day.
    Answer(Usability),
    /// Whether it is out before the next flow, if started on the first day of that answer.
    BeforeFlow(OutBeforeFlow),
    /// Whether its class differs from that of the last two courses.
    Class(State),
    /// The number of visits.
    Visits(Visits),
}

impl Rank {
    pub(super) fn of(judged: &Judged<'_>, starting: &Starting<'_>) -> Rank {
        let first =
            judged.days.iter().filter(|days| days.answer == judged.answer()).map(|days| days.from).next();
        let start = first.or_else(|| judged.days.first().map(|days| days.from));
        let class = judged.conditions().find(|condition| condition.about == About::Topic(Topic::Class));
        Rank {
            answer: judged.answer(),
            before_flow: match start.and_then(|start| starting.out_before_flow(start)) {
                _ if starting.flow.is_none() => OutBeforeFlow::NoFlow,
                Some(true) => OutBeforeFlow::Yes,
                Some(false) => OutBeforeFlow::No,
                None => OutBeforeFlow::NotKnown,
            },
            // A leaflet without a class leaves it open.
            class: class
                .zip(start)
                .and_then(|(class, start)| class.on(start))
                .map_or(State::Unknown, |run| run.state),
            visits: start.map_or(Visits::NotKnown, |start| {
                let plan = starting.plan(start);
                let perhaps_more = !plan.count.is_known();
                // The reminder to look up further doses is not a visit.
                let count = starting.visits(plan, start).len().saturating_sub(usize::from(perhaps_more));
                Visits::Stated { count, perhaps_more }
            }),
        }
    }

    /// The sort key; smaller comes first.
    pub(super) fn key(&self) -> (u8, bool, u8, bool, Visits) {
        let (missed, open) = match self.before_flow {
            OutBeforeFlow::NoFlow | OutBeforeFlow::Yes => (false, false),
            OutBeforeFlow::NotKnown => (false, true),
            OutBeforeFlow::No => (true, false),
        };
        (self.answer.place(), missed, self.class.place(), open, self.visits)
    }

    /// The reasons for its rank, most important first.
    pub(super) fn reasons(&self) -> Vec<OrderReason> {
        let (class, visits) = (OrderReason::Class(self.class), OrderReason::Visits(self.visits));
        let before_flow = OrderReason::BeforeFlow(self.before_flow);
        let mut reasons = vec![OrderReason::Answer(self.answer)];
        reasons.extend(match self.before_flow {
            OutBeforeFlow::NoFlow => vec![class],
            OutBeforeFlow::Yes | OutBeforeFlow::No => vec![before_flow, class],
            OutBeforeFlow::NotKnown => vec![class, before_flow],
        });
        reasons.push(visits);
        reasons
    }
}
