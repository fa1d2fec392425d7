//! The law in words.

use crate::words::{Words, say};

/// What every answer about the law says of itself.
#[must_use]
pub fn notice(words: &Words) -> String {
    say!(words, LawNotice)
}
