//! What the terminal says around its tables: heads with facts in them, sums, and lines of a list. What stands fixed is a
//! [`Label`].

pub mod archive;
pub mod documents;
pub mod due;
pub mod failures;
pub mod gaps;
pub mod import;
pub mod law;
pub mod options;
pub mod retention;
pub mod stock;
pub mod supering;
pub mod verify;

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::verdict::Verdict;

use crate::words::say;
use crate::{Label, Words};

/// A function for each of several messages, with what is put in.
macro_rules! sentences {
    ($($(#[$doc:meta])* $message:ident: $name:ident($($argument:ident: $kind:ty),* $(,)?);)+) => {$(
        $(#[$doc])*
        #[must_use]
        pub fn $name(words: &$crate::Words, $($argument: $kind),*) -> String {
            $crate::words::say!(words, $message $(, $argument = $argument)*)
        }
    )+};
}

use sentences;

/// A day with its name.
#[must_use]
pub fn day(words: &Words, day: Day) -> String {
    say!(words, TerminalDay, day = day, weekday = day.weekday())
}

sentences! {
    /// An amount or a day that may be more.
    TerminalAtLeast: at_least(what: &str);
    /// The revision of a label.
    TerminalLabelRevision: label_revision(revision: &str);
    /// A notice, and how days were counted.
    TerminalDaysCountedBy: days_counted_by(notice: &str, policy: &str);
}

/// An answer.
#[must_use]
pub fn verdict(words: &Words, verdict: Verdict) -> &str {
    words.label(match verdict {
        Verdict::Yes => Label::Yes,
        Verdict::No => Label::No,
        Verdict::Unknown => Label::Unknown,
    })
}

/// How well a value is established.
#[must_use]
pub fn confidence(words: &Words, confidence: Confidence) -> &str {
    words.label(match confidence {
        Confidence::Document => Label::ConfidenceDocument,
        Confidence::SecondHand => Label::ConfidenceSecondHand,
        Confidence::Unconfirmed => Label::ConfidenceUnconfirmed,
    })
}
