//! The days that a question is about, and its assumptions.

use serde::Serialize;

use super::place::WhatIf;
use crate::basics::calendar::Day;

/// The days from one to another (inclusive); at most [`Span::DAYS_MOST`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Span {
    from: Day,
    to: Day,
}

/// A question.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Ask {
    /// The start days.
    pub span: Span,
    /// Events after this day are ignored, so a question about the past is answered as it would have been then.
    /// Leaflet readings and corrections always count.
    pub as_of: Day,
    /// Assumed site conditions.
    pub what_if: WhatIf,
}

impl Ask {
    /// A question about a span as of its first day, without assumptions.
    #[must_use]
    pub fn about(span: Span) -> Ask {
        Ask { span, as_of: span.from, what_if: WhatIf::default() }
    }

    /// The day that decides at which apiary each colony is.
    pub(super) fn stands_on(&self) -> Day {
        self.as_of.min(self.span.from)
    }
}

/// Days that cannot be asked about. The error text is for logs; users see a message from the message file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum BadSpan {
    /// The last day is before the first.
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
        /// The number of days.
        days: i64,
        /// The limit.
        most: i64,
    },
}

impl Span {
    /// Most days in one question.
    pub const DAYS_MOST: i64 = 400;

    /// The days from one to another (inclusive).
    ///
    /// # Errors
    /// The last day is before the first, or there are more than [`Span::DAYS_MOST`] days.
    pub fn new(from: Day, to: Day) -> Result<Span, BadSpan> {
        let days = to.days_since(from) + 1;
        match days {
            ..=0 => Err(BadSpan::Backwards { from, to }),
            1..=Span::DAYS_MOST => Ok(Span { from, to }),
            _ => Err(BadSpan::TooLong { days, most: Span::DAYS_MOST }),
        }
    }

    /// One day.
    #[must_use]
    pub const fn day(on: Day) -> Span {
        Span { from: on, to: on }
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

    /// The number of days.
    pub(super) fn len(self) -> usize {
        usize::try_from(self.to.days_since(self.from) + 1).unwrap_or_default()
    }
}
