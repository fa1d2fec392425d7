//! Texts of a calendar besides its items.

use combclear_domain::basics::words::{ColonyName, HoldingName};

use crate::Words;
use crate::colonies::runs;
use crate::words::say;

/// The name of a holding's calendar.
#[must_use]
pub fn name(words: &Words, holding: &HoldingName) -> String {
    say!(words, CalendarName, holding = holding)
}

/// An item in one line, that should have been done before.
#[must_use]
pub fn overdue(words: &Words, summary: &str) -> String {
    say!(words, CalendarOverdue, summary = summary)
}

/// An item in one line, with its colonies.
#[must_use]
pub fn summary(words: &Words, title: &str, colonies: &[ColonyName]) -> String {
    if colonies.is_empty() {
        return title.to_owned();
    }
    say!(words, CalendarSummary, title = title, colonies = runs(words, colonies))
}
