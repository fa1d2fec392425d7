//! Due tasks: texts around the visits. Days include their names.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::questions::due::Weight;

use crate::{Label, Words};

super::sentences! {
    /// The heading.
    TerminalDueHead: head(holding: &HoldingName, from: &str, to: &str);
    /// The number of items by weight.
    TerminalDueSums: sums(items: usize, overdue: usize, must: usize, advice: usize, may: usize);
    /// Tasks to complete the record, taken together.
    TerminalDueEntriesLack: entries_lack(count: usize);
    /// A visit of one day.
    TerminalDueOn: on(day: &str);
    /// A visit between two days.
    TerminalDueBetween: between(from: &str, to: &str);
    /// A visit without a last day.
    TerminalDueFrom: from(day: &str);
    /// A visit without a stated first day.
    TerminalDueBy: by(day: &str);
}

/// How important an item is.
#[must_use]
pub fn weight(words: &Words, weight: Weight) -> &str {
    words.label(match weight {
        Weight::Must => Label::Must,
        Weight::Advice => Label::Advice,
        Weight::May => Label::May,
    })
}
