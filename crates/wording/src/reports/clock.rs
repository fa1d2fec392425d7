//! The clock by which "today" is said, where it is behind the journal: an answer about today then says so.
//!
//! It is not refused, since the clock may have been ahead when the entry was recorded. Who names the day is not warned.

use combclear_domain::facts::holding::Holding;
use combclear_domain::{Day, Instant};
use serde::Serialize;

use crate::terminal::failures::clock_is_behind;
use crate::{Label, Words};

/// That the clock of the machine is behind the journal, so that "today" may be another day.
#[derive(Debug, Clone, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ClockBehind {
    /// The day that the clock says it is.
    pub today: Day,
    /// The place of the entry that was recorded later.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// When it was recorded.
    pub recorded_at: Instant,
    /// The same in a sentence.
    pub said: String,
    /// What to do.
    pub help: String,
}

/// A report, with the warning beside its fields if there is one.
#[derive(Debug, Serialize)]
pub struct Dated<T> {
    #[serde(flatten)]
    report: T,
    #[serde(skip_serializing_if = "Option::is_none")]
    clock_behind: Option<ClockBehind>,
}

impl ClockBehind {
    /// What an answer about today must say of the clock, if anything.
    #[must_use]
    pub fn of(words: &Words, holding: &Holding, today: Day) -> Option<ClockBehind> {
        let newest = holding.recorded_after(today)?;
        let (seq, recorded_at) = (newest.seq, newest.recorded_at);
        let said = clock_is_behind(words, today, seq, recorded_at);
        let help = words.label(Label::ClockIsBehindHelp).to_owned();
        Some(ClockBehind { today, seq, recorded_at, said, help })
    }

    /// The report with the warning, if there is one.
    pub fn beside<T>(clock_behind: Option<ClockBehind>, report: T) -> Dated<T> {
        Dated { report, clock_behind }
    }
}
