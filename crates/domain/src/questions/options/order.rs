//! The order of the options, and the reasons for it: they are shown, and there is no other.

use super::board::Judged;
use super::starts::Starting;
use super::state::{State, Usability};

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
pub(super) enum Visits {
    /// So many, and whether there may be more: it is not stated how many doses there are.
    Stated { count: usize, perhaps_more: bool },
    /// Nothing is known of them.
    NotKnown,
}

/// Whether it is out before the next flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum OutBeforeFlow {
    /// No flow is on record: the same for all.
    NoFlow,
    Yes,
    NotKnown,
    No,
}

impl Rank {
    pub(super) fn of(judged: &Judged<'_>, starting: &Starting<'_>) -> Rank {
        let first =
            judged.days.iter().filter(|days| days.answer == judged.answer()).map(|days| days.from).next();
        let start = first.or_else(|| judged.days.first().map(|days| days.from));
        let class = judged.conditions().find(|condition| condition.about == "class");
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
            visits: start.and_then(|start| Some((start, starting.plan(start)?))).map_or(
                Visits::NotKnown,
                |(start, plan)| {
                    let perhaps_more = plan.count.is_none();
                    // What is told of further doses that nobody has stated is no visit.
                    let count = starting.visits(plan, start).len().saturating_sub(usize::from(perhaps_more));
                    Visits::Stated { count, perhaps_more }
                },
            ),
        }
    }

    /// Smaller comes first.
    pub(super) fn key(&self) -> (Usability, bool, State, bool, Visits) {
        let (missed, open) = match self.before_flow {
            OutBeforeFlow::NoFlow | OutBeforeFlow::Yes => (false, false),
            OutBeforeFlow::NotKnown => (false, true),
            OutBeforeFlow::No => (true, false),
        };
        (self.answer, missed, self.class, open, self.visits)
    }

    /// The same in words, in the order in which it counts.
    pub(super) fn reasons(&self) -> Vec<String> {
        let mut reasons = vec![
            match self.answer {
                Usability::Usable => "usable on some day",
                Usability::Unknown => "not known to be usable on any day",
                Usability::RuledOut => "ruled out on every day",
            }
            .to_owned(),
        ];
        let class = match self.class {
            State::Met => "of another class than the last two courses",
            State::Broken => "of the same class as one of the last two courses",
            State::Unknown => "not known whether its class differs from the last two courses",
        };
        match self.before_flow {
            OutBeforeFlow::NoFlow => reasons.push(class.to_owned()),
            OutBeforeFlow::Yes => reasons
                .extend(["out before the next flow, if started on its first day", class].map(str::to_owned)),
            OutBeforeFlow::No => reasons.extend(
                ["not out before the next flow, if started on its first day", class].map(str::to_owned),
            ),
            OutBeforeFlow::NotKnown => {
                let open = [class, "not known whether it is out before the next flow"];
                reasons.extend(open.map(str::to_owned));
            }
        }
        reasons.push(match self.visits {
            Visits::Stated { count, perhaps_more: true } => {
                format!("how many visits is not known, at least {count}")
            }
            Visits::Stated { count: 1, perhaps_more: false } => "1 visit".to_owned(),
            Visits::Stated { count, perhaps_more: false } => format!("{count} visits"),
            Visits::NotKnown => "how many visits is not known".to_owned(),
        });
        reasons
    }
}
