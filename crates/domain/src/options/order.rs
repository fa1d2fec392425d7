//! The order of the options, and the reasons for it: they are shown, and there is no other.

use super::board::Judged;
use super::starts::Starting;
use super::state::{Answer, State};

/// What an option is ordered by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rank {
    pub(super) answer: Answer,
    pub(super) before_flow: BeforeFlow,
    /// Another class than the last courses: yes, not known, no.
    pub(super) class: Option<State>,
    pub(super) visits: usize,
}

/// Whether it is out before the next flow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum BeforeFlow {
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
                _ if starting.flow.is_none() => BeforeFlow::NoFlow,
                Some(true) => BeforeFlow::Yes,
                Some(false) => BeforeFlow::No,
                None => BeforeFlow::NotKnown,
            },
            class: class.zip(start).and_then(|(class, start)| class.on(start)).map(|run| run.state),
            visits: start
                .map_or(0, |start| starting.plan(start).map_or(0, |plan| starting.visits(plan, start).len())),
        }
    }

    /// Smaller comes first.
    pub(super) fn key(&self) -> (Answer, u8, u8, usize) {
        let before_flow = match self.before_flow {
            BeforeFlow::NoFlow | BeforeFlow::Yes => 0,
            BeforeFlow::NotKnown => 1,
            BeforeFlow::No => 2,
        };
        let class = match self.class {
            Some(State::Met) => 0,
            None | Some(State::Unknown) => 1,
            Some(State::Broken) => 2,
        };
        (self.answer, before_flow, class, self.visits)
    }

    /// The same in words, in the order in which it counts.
    pub(super) fn reasons(&self) -> Vec<String> {
        let mut reasons = vec![
            match self.answer {
                Answer::Usable => "usable on some day",
                Answer::Unknown => "not known to be usable on any day",
                Answer::RuledOut => "ruled out on every day",
            }
            .to_owned(),
        ];
        let before_flow = match self.before_flow {
            BeforeFlow::NoFlow => None,
            BeforeFlow::Yes => Some("out before the next flow, if started on its first day"),
            BeforeFlow::No => Some("not out before the next flow, if started on its first day"),
            BeforeFlow::NotKnown => Some("not known whether it is out before the next flow"),
        };
        reasons.extend(before_flow.map(str::to_owned));
        reasons.push(
            match self.class {
                Some(State::Met) => "of another class than the last two courses",
                Some(State::Broken) => "of the same class as one of the last two courses",
                None | Some(State::Unknown) => {
                    "not known whether its class differs from the last two courses"
                }
            }
            .to_owned(),
        );
        reasons.push(if self.visits == 1 { "1 visit".to_owned() } else { format!("{} visits", self.visits) });
        reasons
    }
}
