//! The law: texts around its tables.

use combclear_domain::basics::words::Jurisdiction;
use combclear_domain::rules::law::{KeepingForce, LawStanding};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// The heading.
    TerminalLawHead: head(jurisdiction: &Jurisdiction, day: &str);
}

/// Whether a law is in force.
#[must_use]
pub fn standing(words: &Words, standing: LawStanding) -> String {
    match standing {
        LawStanding::InForce => words.label(Label::LawInForce).to_owned(),
        LawStanding::NotYet { from } => say!(words, TerminalLawNotYet, day = from),
        LawStanding::Over { until } => say!(words, TerminalLawOver, day = until),
    }
}

/// Within how many days something must be recorded.
#[must_use]
pub fn within(words: &Words, days: u16) -> String {
    if days == 0 {
        return words.label(Label::LawAtTheTime).to_owned();
    }
    say!(words, TerminalLawWithin, days = days)
}

/// For how many years records are kept; `from` is in words.
#[must_use]
pub fn keep(words: &Words, years: u8, from: &str, force: KeepingForce) -> String {
    match force {
        KeepingForce::Scheme => say!(words, TerminalLawKeepScheme, years = years, from = from),
        KeepingForce::Law => say!(words, TerminalLawKeep, years = years, from = from),
    }
}
