//! What one condition says of each start day, and how conditions are taken together.

use serde::Serialize;

use super::about::About;
use super::date_range::Span;
use super::reason::Because;
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;

/// Whether a condition holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum State {
    /// It holds, on documented facts.
    Met,
    /// Not known.
    Unknown,
    /// It does not hold.
    Broken,
}

impl State {
    /// Both must hold.
    #[must_use]
    pub const fn and(self, other: State) -> State {
        match self.verdict().and(other.verdict()) {
            Verdict::Yes => State::Met,
            Verdict::Unknown => State::Unknown,
            Verdict::No => State::Broken,
        }
    }

    const fn verdict(self) -> Verdict {
        match self {
            State::Met => Verdict::Yes,
            State::Unknown => Verdict::Unknown,
            State::Broken => Verdict::No,
        }
    }

    /// Its place where what holds comes first.
    pub(super) const fn place(self) -> u8 {
        place(self.verdict())
    }
}

/// Whether a treatment may be started on a day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Usability {
    /// Every condition holds.
    Usable,
    /// No condition is broken, but not all are known to hold.
    Unknown,
    /// A condition is broken.
    RuledOut,
}

impl Usability {
    /// In both of two colonies, or under both of two conditions.
    #[must_use]
    pub const fn and(self, other: Usability) -> Usability {
        match self.verdict().and(other.verdict()) {
            Verdict::Yes => Usability::Usable,
            Verdict::Unknown => Usability::Unknown,
            Verdict::No => Usability::RuledOut,
        }
    }

    /// On one of several days: the best of them. Ruled out if there is none.
    #[must_use]
    pub fn on_one_of(days: impl IntoIterator<Item = Usability>) -> Usability {
        days.into_iter().min_by_key(|answer| answer.place()).unwrap_or(Usability::RuledOut)
    }

    const fn verdict(self) -> Verdict {
        match self {
            Usability::Usable => Verdict::Yes,
            Usability::Unknown => Verdict::Unknown,
            Usability::RuledOut => Verdict::No,
        }
    }

    /// Its place where what can be used comes first.
    pub(super) const fn place(self) -> u8 {
        place(self.verdict())
    }
}

const fn place(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::Yes => 0,
        Verdict::Unknown => 1,
        Verdict::No => 2,
    }
}

/// What is found of one condition on one start day.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Finding {
    pub(super) state: State,
    /// Of what is not known: whether it would hold in a usual year.
    pub(super) expected: Option<bool>,
    pub(super) because: Because,
    /// Whether a `Met` rests on the value of the leaflet, and would not hold whatever the value is.
    pub(super) leans: bool,
}

impl Finding {
    /// Holds, because of the value that the leaflet states.
    pub(super) fn met(because: Because) -> Finding {
        Finding { state: State::Met, expected: None, because, leans: true }
    }

    /// Holds whatever value the leaflet may state.
    pub(super) fn met_anyway(because: Because) -> Finding {
        Finding { leans: false, ..Finding::met(because) }
    }

    pub(super) fn broken(because: Because) -> Finding {
        Finding { state: State::Broken, expected: None, because, leans: false }
    }

    pub(super) fn unknown(because: Because) -> Finding {
        Finding { state: State::Unknown, expected: None, because, leans: false }
    }

    /// Not known, but in a usual year it would hold, or not.
    pub(super) fn expected(holds: bool, because: Because) -> Finding {
        Finding { expected: Some(holds), ..Finding::unknown(because) }
    }
}

/// Start days of which a condition says the same.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The first of them.
    pub from: Day,
    /// The last of them.
    pub to: Day,
    /// What it says.
    pub state: State,
    /// Of what is not known: whether it would hold in a usual year.
    pub expected: Option<bool>,
    /// Why.
    pub because: Because,
}

/// A condition over the start days of a span.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// What it is about.
    pub about: About,
    /// Whether the answer turns on it. Advice does not decide.
    pub binds: bool,
    /// The rule of the leaflet, by its index.
    pub rule: Option<usize>,
    /// What it says of the start days, in order.
    pub runs: Vec<Run>,
}

impl Condition {
    /// Looks at every start day.
    pub(super) fn by_day(about: About, span: Span, mut look: impl FnMut(Day) -> Finding) -> Condition {
        let mut runs: Vec<Run> = Vec::new();
        for day in span.days() {
            let Finding { state, expected, because, .. } = look(day);
            match runs.last_mut() {
                Some(run)
                    if run.state == state
                        && run.expected == expected
                        && run.because.goes_on_with(&because) =>
                {
                    run.to = day;
                    run.because.widen(&because);
                }
                _ => runs.push(Run { from: day, to: day, state, expected, because }),
            }
        }
        Condition { about, binds: true, rule: None, runs }
    }

    /// The same for every start day.
    pub(super) fn throughout(about: About, span: Span, found: Finding) -> Condition {
        let Finding { state, expected, because, .. } = found;
        let run = Run { from: span.from(), to: span.to(), state, expected, because };
        Condition { about, binds: true, rule: None, runs: vec![run] }
    }

    /// As advice: it is shown, and decides nothing.
    pub(super) fn advice(self) -> Condition {
        Condition { binds: false, ..self }
    }

    /// What it says of a start day.
    #[must_use]
    pub fn on(&self, day: Day) -> Option<&Run> {
        self.runs.iter().find(|run| run.from <= day && day <= run.to)
    }
}

/// Start days with one answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StartDays {
    /// The first of them.
    pub from: Day,
    /// The last of them.
    pub to: Day,
    /// The answer.
    pub answer: Usability,
    /// Where the answer is unknown: whether it would be usable in a usual year, by the temperatures that the apiary has then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_a_usual_year: Option<bool>,
}

/// Takes conditions together, day by day. A broken one outweighs all; an unknown one outweighs those that hold.
pub(super) fn together<'c>(
    conditions: impl Iterator<Item = &'c Condition> + Clone,
    span: Span,
) -> Vec<StartDays> {
    let binding: Vec<&Condition> = conditions.filter(|condition| condition.binds).collect();
    let mut at = vec![0_usize; binding.len()];
    let mut ranges: Vec<StartDays> = Vec::new();
    let mut day = span.from();
    while day <= span.to() {
        let mut answer = Usability::Usable;
        let mut expected = None;
        let mut open = false;
        let mut through = span.to();
        for (condition, at) in binding.iter().zip(&mut at) {
            while condition.runs.get(*at).is_some_and(|run| run.to < day) {
                *at += 1;
            }
            let Some(run) = condition.runs.get(*at) else { continue };
            through = through.min(run.to);
            match run.state {
                State::Met => {}
                State::Unknown => {
                    answer = answer.and(Usability::Unknown);
                    match run.expected {
                        None => open = true,
                        Some(holds) => expected = Some(expected.unwrap_or(true) && holds),
                    }
                }
                State::Broken => answer = Usability::RuledOut,
            }
        }
        let in_a_usual_year = match (answer, expected) {
            (Usability::Unknown, Some(false)) => Some(false),
            (Usability::Unknown, Some(true)) if !open => Some(true),
            _ => None,
        };
        match ranges.last_mut() {
            Some(last) if last.answer == answer && last.in_a_usual_year == in_a_usual_year => {
                last.to = through;
            }
            _ => ranges.push(StartDays { from: day, to: through, answer, in_a_usual_year }),
        }
        if through == Day::LAST {
            break;
        }
        day = through.next();
    }
    ranges
}
