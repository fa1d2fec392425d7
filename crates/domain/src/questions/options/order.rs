//! The order of the options, and the reasons for it: they are shown, and there is no other.

use super::about::About;
use super::board::Judged;
use super::starts::Starting;
use super::state::{State, Usability};
use crate::basics::topic::Topic;

/// What an option is ordered by, in this order: the answer; not out before the next flow last; another class than the last two
/// courses, since mites grow resistant to what is given again and again; known to be out before the flow; fewer visits.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rank {
    pub(super) answer: Usability,
    pub(super) before_flow: OutBeforeFlow,
    /// Another class than the last courses: yes, not known, no.
    pub(super) class: State,
    pub(super) visits: Visits,
}

/// How many visits a start takes. Fewer come first, and of two alike the one that is known to be all.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Visits {
    /// So many are stated.
    Stated {
        /// How many.
        count: usize,
        /// Whether there may be more: it is not stated how many doses there are.
        perhaps_more: bool,
    },
    /// Nothing is known of them.
    NotKnown,
}

/// Whether it is out before the next flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OutBeforeFlow {
    /// No flow is on record: the same for all.
    NoFlow,
    /// It is.
    Yes,
    /// Nobody can tell.
    NotKnown,
    /// It is not.
    No,
}

/// A reason for the place of an option.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OrderReason {
    /// The best answer of any start day.
    Answer(Usability),
    /// Whether it is out before the next flow, if it is started on the first day of that answer.
    BeforeFlow(OutBeforeFlow),
    /// Whether it is of another class than the last two courses.
    Class(State),
    /// How many visits it takes.
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
            // A leaflet that names no class leaves it open.
            class: class
                .zip(start)
                .and_then(|(class, start)| class.on(start))
                .map_or(State::Unknown, |run| run.state),
            visits: start.map_or(Visits::NotKnown, |start| {
                let plan = starting.plan(start);
                let perhaps_more = !plan.count.is_known();
                // What is told of further doses that nobody has stated is no visit.
                let count = starting.visits(plan, start).len().saturating_sub(usize::from(perhaps_more));
                Visits::Stated { count, perhaps_more }
            }),
        }
    }

    /// Smaller comes first.
    pub(super) fn key(&self) -> (u8, bool, u8, bool, Visits) {
        let (missed, open) = match self.before_flow {
            OutBeforeFlow::NoFlow | OutBeforeFlow::Yes => (false, false),
            OutBeforeFlow::NotKnown => (false, true),
            OutBeforeFlow::No => (true, false),
        };
        (self.answer.place(), missed, self.class.place(), open, self.visits)
    }

    /// The reasons for its place, in the order in which they count.
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
