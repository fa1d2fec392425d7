//! What no answer is.

use crate::Words;
use crate::words::say;

/// Said wherever an answer is given: what it is not.
#[must_use]
pub fn notice(words: &Words) -> String {
    say!(words, Notice)
}
