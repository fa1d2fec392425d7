//! The morning's page: texts around the answers it takes together.

use combclear_domain::basics::words::HoldingName;

super::sentences! {
    /// The heading.
    TerminalTodayHead: head(holding: &HoldingName, day: &str);
    /// Colonies that are free from this day.
    TerminalTodayNew: new(colonies: &str);
    /// How many colonies may not be supered.
    TerminalTodayNotFree: not_free(count: usize);
    /// The number of gaps and irregularities in the record of the year.
    TerminalTodayIncomplete: incomplete(required: usize, irregular: usize);
    /// The law could not be checked.
    TerminalTodayNotChecked: not_checked();
    /// Nothing that the law requires is missing.
    TerminalTodayComplete: complete(irregular: usize);
}
