//! Texts around the tables in the terminal: headings with facts, totals, and list items. Fixed texts are [`Label`]s.

pub mod archive;
pub mod care;
pub mod documents;
pub mod due;
pub mod failures;
pub mod gaps;
pub mod import;
pub mod keys;
pub mod law;
pub mod leaflets;
pub mod options;
pub mod record;
pub mod retention;
pub mod sheet;
pub mod stock;
pub mod supering;
pub mod today;
pub mod verify;

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::{EntryId, Kind};
use combclear_domain::rules::leaflet::Force;

use crate::words::say;
use crate::{Label, Words};

/// Defines a function for each message, with its arguments.
macro_rules! sentences {
    ($($(#[$doc:meta])* $message:ident: $name:ident($($argument:ident: $kind:ty),* $(,)?);)+) => {$(
        $(#[$doc])*
        #[must_use]
        pub fn $name(words: &$crate::Words, $($argument: $kind),*) -> String {
            $crate::words::say!(words, $message $(, $argument = $argument)*)
        }
    )+};
}

pub(crate) use sentences;

/// A day with its name.
#[must_use]
pub fn day(words: &Words, day: Day) -> String {
    say!(words, TerminalDay, day = day, weekday = day.weekday())
}

sentences! {
    /// A file of the register that was written.
    TerminalRegisterWritten: register_written(file: &str, holding: &HoldingName, from: Day, to: Day);
    /// An amount or a day that is a lower bound.
    TerminalAtLeast: at_least(what: &str);
    /// A label revision.
    TerminalLabelRevision: label_revision(revision: &str);
    /// The subject of a condition, by its identifier.
    About: about(about: &str);
    /// The kind of a gap, by its identifier.
    GapSort: gap_sort(sort: &str);
    /// The source of a value, by its identifier, and the entry that states it.
    SaidIn: said_in(by: &str, entry: EntryId);
    /// The source of a value, by its identifier, and where it was read.
    SaidWith: said_with(by: &str, sources: &str);
    /// A notice, with the counting policy.
    TerminalDaysCountedBy: days_counted_by(notice: &str, policy: &str);
}

/// A kind of entry.
#[must_use]
pub fn kind(words: &Words, kind: Kind) -> String {
    say!(words, Kind, kind = kind.as_str())
}

/// How binding a rule is.
#[must_use]
pub fn force(words: &Words, force: Force) -> &str {
    words.label(match force {
        Force::Law => Label::ForceLaw,
        Force::Label => Label::ForceLabel,
        Force::Advice => Label::ForceAdvice,
    })
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
