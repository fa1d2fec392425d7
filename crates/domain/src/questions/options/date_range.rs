//! The days that a question is about, and what may bear on them.

use serde::Serialize;

use super::place::WhatIf;
use crate::basics::calendar::Day;

/// Days from one to another, both included; at most [`Span::DAYS_MOST`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Span {
    from: Day,
    to: Day,
}

/// What is asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// The start days.
    pub span: Span,
    /// What happened after this day does not bear on the answer, so that a question about the past is answered as it would
    /// have been then. What people read on leaflets and corrections count whenever they were recorded.
    pub as_of: Day,
    /// What is assumed of the site.
    pub what_if: WhatIf,
}

impl Ask {
    /// Asks about a span as of its first day, with nothing assumed.
    #[must_use]
    pub fn about(span: Span) -> Ask {
        Ask { span, as_of: span.from, what_if: WhatIf::default() }
    }

    /// The day on which it is looked at where colonies stand.
    pub(super) fn stands_on(&self) -> Day {
        self.as_of.min(self.span.from)
    }
}

/// Days that cannot be asked about. Its error text is for logs; people are told by a sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum BadSpan {
    /// The last day lies before the first.
    #[error("days_are_backwards")]
    Backwards {
        /// The first day.
        from: Day,
        /// The last day.
        to: Day,
    },
    /// Too many days.
    #[error("too_many_days")]
    TooLong {
        /// How many.
        days: i64,
        /// How many can be asked about at once.
        most: i64,
    },
}

impl Span {
    /// Most days of one question.
    pub const DAYS_MOST: i64 = 400;

    /// The days from one to another, both included.
    ///
    /// # Errors
    /// A last day before the first, or more than [`Span::DAYS_MOST`] days.
    pub fn new(from: Day, to: Day) -> Result<Span, BadSpan> {
        let days = to.days_since(from) + 1;
        match days {
            ..=0 => Err(BadSpan::Backwards { from, to }),
            1..=Span::DAYS_MOST => Ok(Span { from, to }),
            _ => Err(BadSpan::TooLong { days, most: Span::DAYS_MOST }),
        }
    }

    /// The first day.
    #[must_use]
    pub const fn from(self) -> Day {
        self.from
    }

    /// The last day.
    #[must_use]
    pub const fn to(self) -> Day {
        self.to
    }

    /// Every day, in order.
    pub fn days(self) -> impl Iterator<Item = Day> {
        std::iter::successors(Some(self.from), |day| Some(day.next())).take(self.len())
    }

    /// How many days.
    pub(super) fn len(self) -> usize {
        usize::try_from(self.to.days_since(self.from) + 1).unwrap_or_default()
    }
}
