//! A period from one day to another (inclusive).

use crate::basics::calendar::Day;

/// A period from one day to another (inclusive).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Period {
    from: Day,
    to: Day,
}

/// A period that ends before it begins. The error text is for logs; users see a message from the message file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
#[error("days_are_backwards")]
pub struct BadPeriod {
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
}

impl Period {
    /// The period from one day to another (inclusive).
    ///
    /// # Errors
    /// The last day is before the first.
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

    /// Whether a day is in the period.
    #[must_use]
    pub fn holds(self, day: Day) -> bool {
        self.from <= day && day <= self.to
    }
}
