//! A time from one day to another, both included.

use crate::basics::calendar::Day;

/// From one day to another, both included.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Period {
    from: Day,
    to: Day,
}

/// A time that would end before it begins. Its error text is for logs; people are told by a sentence.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("days_are_backwards")]
pub struct BadPeriod {
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
}

impl Period {
    /// From one day to another.
    ///
    /// # Errors
    /// A last day that lies before the first.
    pub fn new(from: Day, to: Day) -> Result<Period, BadPeriod> {
        if to < from { Err(BadPeriod { from, to }) } else { Ok(Period { from, to }) }
    }

    /// The first day.
    #[must_use]
    pub fn from(self) -> Day {
        self.from
    }

    /// The last day.
    #[must_use]
    pub fn to(self) -> Day {
        self.to
    }

    /// Whether a day lies in it.
    #[must_use]
    pub fn holds(self, day: Day) -> bool {
        self.from <= day && day <= self.to
    }
}
