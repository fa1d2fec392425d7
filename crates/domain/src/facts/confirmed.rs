//! Whether what a keeper confirmed is the value of a rule.

mod frozen_words;

use crate::basics::says::Says;
use crate::basics::words::Unit;
use crate::journal::event::Confirmed;

pub use frozen_words::in_words;

impl Confirmed {
    /// Whether it confirms this value of a leaflet that counts in `unit`, and not another on the same topic.
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
