//! The notice on every answer.

use crate::Words;
use crate::words::say;

/// What an answer is not: given with every answer.
#[must_use]
pub fn notice(words: &Words) -> String {
    say!(words, Notice)
}
