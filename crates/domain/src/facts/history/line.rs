//! A line of a course as far as supers turn on it: recorded, or only planned.
//!
//! Both are judged alike. A recorded one ([`Course`]) also has its entries and its medicine; a planned one ([`Planned`]) has
//! neither.

use super::plan::Plan;
use super::terms::Terms;
use super::{Course, FlowSpan};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::journal::entry::EntryId;

/// All that the answer about supers asks of a line of a course.
pub(crate) trait Line {
    /// The terms that apply to it.
    fn terms(&self) -> &Terms;
    /// The day of each dose, in order.
    fn doses(&self) -> impl DoubleEndedIterator<Item = Day> + ExactSizeIterator;
    /// The day by which all of it had come out, if it has.
    fn out(&self) -> Option<Day>;
    /// The day since which it is uncertain whether it is in, and the entry that did not say.
    fn in_doubt(&self) -> Option<(Day, EntryId)>;
    /// Its first day in the colony, and the day from which another line takes over.
    fn days(&self) -> (Day, Option<Day>);
    /// The flows it stood in, if those of its colony do not apply.
    fn own_flows(&self) -> Option<&[FlowSpan]>;

    /// Whether it applies on a day: it was here, and no other line has taken over.
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

/// A line that is only planned, in whole or from some day on.
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
    /// The course as it would run from a day on, at a place with these flows: each stated dose on its earliest day, and out
    /// as early as it may be. What is used up by itself is not taken out.
    ///
    /// If the least stay is not stated, it is out after the days on which it is surely in: nobody may rest a free day on
    /// that.
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
    /// The course as it would go on if these further doses were given and all came out on a day.
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
