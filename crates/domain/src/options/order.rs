//! The order of the options, and the reasons for it: they are shown, and there is no other.

use super::board::Judged;
use super::starts::Starting;
use super::state::{Answer, State};

/// What an option is ordered by.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Rank {
    pub(super) answer: Answer,
    /// Out before the flow: yes, not known, no. The same for all where no flow is expected.
    pub(super) before_flow: Option<Option<bool>>,
    /// Another class than the last courses: yes, not known, no.
    pub(super) class: Option<State>,
    pub(super) visits: usize,
}

impl Rank {
    pub(super) fn of(judged: &Judged<'_>, starting: &Starting<'_>) -> Rank {
        let first =
            judged.days.iter().filter(|days| days.answer == judged.answer()).map(|days| days.from).next();
        let start = first.or_else(|| judged.days.first().map(|days| days.from));
        let class = judged.conditions().find(|condition| condition.about == "class");
        Rank {
            answer: judged.answer(),
            before_flow: starting.flow.map(|_| start.and_then(|start| starting.out_before_flow(start))),
            class: class.zip(start).and_then(|(class, start)| class.on(start)).map(|run| run.state),
            visits: start
                .map_or(0, |start| starting.plan(start).map_or(0, |plan| starting.visits(plan, start).len())),
        }
    }

    /// Smaller comes first.
    pub(super) fn key(&self) -> (Answer, u8, u8, usize) {
        let before_flow = match self.before_flow {
            None | Some(Some(true)) => 0,
            Some(None) => 1,
            Some(Some(false)) => 2,
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
        reasons.extend(self.before_flow.map(|before| {
            match before {
                Some(true) => "out before the next flow, if started on its first day",
                Some(false) => "not out before the next flow, if started on its first day",
                None => "not known whether it is out before the next flow",
            }
            .to_owned()
        }));
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
