//! The notice on every answer.

use crate::Words;
use crate::words::say;

/// The notice that the leaflet on the pack, the prescriber and local law decide.
#[must_use]
pub fn notice(words: &Words) -> String {
    say!(words, Notice)
}
