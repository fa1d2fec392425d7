//! Whether a keeper's confirmation matches the value of a rule.

mod frozen_words;

use crate::basics::says::Says;
use crate::basics::words::Unit;
use crate::journal::event::Confirmed;

pub use frozen_words::in_words;

impl Confirmed {
    /// Whether it confirms exactly this value. `unit` is the leaflet's unit.
    #[must_use]
    pub fn is(&self, says: &Says, unit: Unit) -> bool {
        match self {
            Confirmed::Value(value) => value == says,
            Confirmed::InWords { topic, says: words } => {
                *topic == says.topic() && *words == in_words(says, unit)
            }
        }
    }
}
