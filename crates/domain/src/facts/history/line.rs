//! A line of a course, recorded or planned, as the supering question sees it.
//!
//! Both are judged alike. A recorded line ([`Course`]) also has entries and a medicine; a planned one ([`Planned`])
//! has neither.

use super::plan::Plan;
use super::terms::Terms;
use super::{Course, FlowSpan};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::journal::entry::EntryId;

/// Everything the supering question needs from a line of a course.
pub(crate) trait Line {
    /// The terms that apply to it.
    fn terms(&self) -> &Terms;
    /// The day of each dose, in order.
    fn doses(&self) -> impl DoubleEndedIterator<Item = Day> + ExactSizeIterator;
    /// The day by which everything had come out, if it has.
    fn out(&self) -> Option<Day>;
    /// Since when it is uncertain whether it is in, and the split or uniting that left it open.
    fn in_doubt(&self) -> Option<(Day, EntryId)>;
    /// Its first day in the colony, and the day from which another line replaces it.
    fn days(&self) -> (Day, Option<Day>);
    /// The flows at its former sites, if they differ from those of its colony.
    fn own_flows(&self) -> Option<&[FlowSpan]>;

    /// Whether it applies on a day: it had arrived, and no other line had replaced it.
    fn speaks_on(&self, day: Day) -> bool {
        let (from, until) = self.days();
        from <= day && until.is_none_or(|until| day < until)
    }
}

impl Line for Course {
    fn terms(&self) -> &Terms {
        &self.terms
    }

    fn doses(&self) -> impl DoubleEndedIterator<Item = Day> + ExactSizeIterator {
        self.doses.iter().map(|dose| dose.on)
    }

    fn out(&self) -> Option<Day> {
        Course::out(self)
    }

    fn in_doubt(&self) -> Option<(Day, EntryId)> {
        self.in_doubt
    }

    fn days(&self) -> (Day, Option<Day>) {
        (self.here_from, self.until)
    }

    fn own_flows(&self) -> Option<&[FlowSpan]> {
        self.flows.as_deref()
    }
}

/// A line that is planned, entirely or from some day on.
#[derive(Debug, Clone)]
pub(crate) struct Planned<'t> {
    terms: &'t Terms,
    doses: Vec<Day>,
    out: Option<Day>,
    in_doubt: Option<(Day, EntryId)>,
    days: (Day, Option<Day>),
    flows: Option<&'t [FlowSpan]>,
}

impl Line for Planned<'_> {
    fn terms(&self) -> &Terms {
        self.terms
    }

    fn doses(&self) -> impl DoubleEndedIterator<Item = Day> + ExactSizeIterator {
        self.doses.iter().copied()
    }

    fn out(&self) -> Option<Day> {
        self.out
    }

    fn in_doubt(&self) -> Option<(Day, EntryId)> {
        self.in_doubt
    }

    fn days(&self) -> (Day, Option<Day>) {
        self.days
    }

    fn own_flows(&self) -> Option<&[FlowSpan]> {
        self.flows
    }
}

impl Plan {
    /// The course as it would run from `start` at a place with these flows: each stated dose on its earliest day, and
    /// out as early as allowed. A carrier that is used up in the hive is not taken out.
    ///
    /// If the least stay is not stated, it comes out after the days on which it is certainly in. Callers must not
    /// derive a free day from that.
    pub(crate) fn starting<'t>(&self, terms: &'t Terms, start: Day, flows: &'t [FlowSpan]) -> Planned<'t> {
        let doses = match &self.doses {
            Fact::Known(doses) => doses.iter().map(|days| start.plus(*days)).collect(),
            Fact::NotKnown(_) => vec![start],
        };
        let out = match self.least {
            Fact::Known(days) => start.plus(days),
            Fact::NotKnown(_) => start.plus(self.surely_in()),
        };
        Planned {
            terms,
            doses,
            out: self.ends.in_a_visit().then_some(out),
            in_doubt: None,
            days: (start, None),
            flows: Some(flows),
        }
    }
}

impl Course {
    /// The course as it would continue if these further doses were given and everything came out on `out`.
    pub(crate) fn gone_on_with(&self, further: Vec<Day>, out: Day) -> Planned<'_> {
        Planned {
            terms: &self.terms,
            doses: Line::doses(self).chain(further).collect(),
            out: Some(out),
            in_doubt: self.in_doubt,
            days: self.days(),
            flows: self.own_flows(),
        }
    }
}
