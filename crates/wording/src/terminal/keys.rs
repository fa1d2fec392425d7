//! Keys that were made, listed or ended.

use combclear_domain::Day;
use combclear_domain::journal::key::{Key, KeyId};

use crate::words::say;
use crate::{Label, Words};

super::sentences! {
    /// A last day that has passed.
    KeyOverAlready: over_already(until: Day, today: Day);
    /// An id that no key has.
    KeyNoSuch: no_such(id: KeyId);
    /// The system gives no random numbers.
    KeyNoChance: no_chance(why: &str);
}

/// A key was made.
#[must_use]
pub fn made(words: &Words, key: &Key) -> String {
    say!(words, KeyMade, id = key.id, whose = whose(words, key))
}

/// A key was ended.
#[must_use]
pub fn ended(words: &Words, key: &Key) -> String {
    say!(words, KeyEnded, id = key.id, whose = whose(words, key))
}

/// A key had ended before.
#[must_use]
pub fn ended_before(words: &Words, key: &Key) -> String {
    say!(words, KeyEndedBefore, id = key.id, whose = whose(words, key))
}

/// Whether it holds on a day, and for how long.
#[must_use]
pub fn holds(words: &Words, key: &Key, today: Day) -> String {
    match (key.ended_at, key.until) {
        (Some(_), _) => words.label(Label::KeyIsEnded).to_owned(),
        (None, Some(until)) if until < today => say!(words, KeyRanOut, until = until),
        (None, Some(until)) => say!(words, KeyHoldsUntil, until = until),
        (None, None) => words.label(Label::KeyHolds).to_owned(),
    }
}

/// Who holds it, and of what.
fn whose(words: &Words, key: &Key) -> String {
    let role = key.role.as_str();
    match &key.holding {
        Some(holding) => say!(words, KeyWhose, holder = &key.holder, role = role, holding = holding),
        None => say!(words, KeyWhoseOperator, holder = &key.holder, role = role),
    }
}
