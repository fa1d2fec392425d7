//! The result of one condition for each start day, and how conditions combine.

use serde::Serialize;

use super::about::About;
use super::date_range::Span;
use super::reason::Because;
use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;

/// Whether a condition is met.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum State {
    /// It is met, on documented facts.
    Met,
    /// Not known.
    Unknown,
    /// It is not met.
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

    /// Sort key: met first.
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
    /// No condition is broken, but some are unknown.
    Unknown,
    /// A condition is broken.
    RuledOut,
}

impl Usability {
    /// The answer if both colonies, or both conditions, must allow it.
    #[must_use]
    pub const fn and(self, other: Usability) -> Usability {
        match self.verdict().and(other.verdict()) {
            Verdict::Yes => Usability::Usable,
            Verdict::Unknown => Usability::Unknown,
            Verdict::No => Usability::RuledOut,
        }
    }

    /// The best of several days. Ruled out if there are none.
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

    /// Sort key: usable first.
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

/// The result of one condition on one start day.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Finding {
    pub(super) state: State,
    /// If unknown: whether it would be met in a usual year.
    pub(super) expected: Option<bool>,
    pub(super) because: Because,
    /// Whether `Met` depends on the leaflet's value; it would not be met whatever the value.
    pub(super) leans: bool,
}

impl Finding {
    /// Met because of the leaflet's value.
    pub(super) fn met(because: Because) -> Finding {
        Finding { state: State::Met, expected: None, because, leans: true }
    }

    /// Met whatever the leaflet's value.
    pub(super) fn met_anyway(because: Because) -> Finding {
        Finding { leans: false, ..Finding::met(because) }
    }

    pub(super) fn broken(because: Because) -> Finding {
        Finding { state: State::Broken, expected: None, because, leans: false }
    }

    pub(super) fn unknown(because: Because) -> Finding {
        Finding { state: State::Unknown, expected: None, because, leans: false }
    }

    /// Unknown, but `holds` in a usual year.
    pub(super) fn expected(holds: bool, because: Because) -> Finding {
        Finding { expected: Some(holds), ..Finding::unknown(because) }
    }
}

/// Consecutive start days with the same result of a condition.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The first start day.
    pub from: Day,
    /// The last start day.
    pub to: Day,
    /// The result.
    pub state: State,
    /// If unknown: whether it would be met in a usual year.
    pub expected: Option<bool>,
    /// The reason.
    pub because: Because,
}

/// A condition over the start days of a span.
#[derive(Debug, Clone, PartialEq)]
pub struct Condition {
    /// Its subject.
    pub about: About,
    /// Whether the answer depends on it. Advice never decides.
    pub binds: bool,
    /// The leaflet rule, by index.
    pub rule: Option<usize>,
    /// The results for the start days, in order.
    pub runs: Vec<Run>,
}

impl Condition {
    /// Checks every start day separately.
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

    /// The same result for every start day.
    pub(super) fn throughout(about: About, span: Span, found: Finding) -> Condition {
        let Finding { state, expected, because, .. } = found;
        let run = Run { from: span.from(), to: span.to(), state, expected, because };
        Condition { about, binds: true, rule: None, runs: vec![run] }
    }

    /// The same condition as advice: it is shown but never decides.
    pub(super) fn advice(self) -> Condition {
        Condition { binds: false, ..self }
    }

    /// The result for a start day.
    #[must_use]
    pub fn on(&self, day: Day) -> Option<&Run> {
        self.runs.iter().find(|run| run.from <= day && day <= run.to)
    }
}

/// Consecutive start days with the same answer.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StartDays {
    /// The first start day.
    pub from: Day,
    /// The last start day.
    pub to: Day,
    /// The answer.
    pub answer: Usability,
    /// If the answer is unknown: whether it would be usable in a usual year, by the apiary's temperatures then.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_a_usual_year: Option<bool>,
}

/// Combines conditions day by day. A broken one outweighs all; an unknown one outweighs those that are met.
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
