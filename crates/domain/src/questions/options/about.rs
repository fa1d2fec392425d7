//! The subject of a condition.

use std::fmt;

use crate::basics::topic::Topic;
use crate::rules::leaflet::rule::Need;

/// The subject of a condition: a kind of leaflet rule, or another fact that is checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    /// Whether the leaflet has directions in force on the day.
    Directions,
    /// Whether the apiary can be reached on the day of placing.
    Access,
    /// A requirement of the treatment on the site.
    Need(Need),
    /// Whether the colony is in the holding.
    Colony,
    /// The apiary where the colony is.
    Apiary,
    /// Whether the same medicine, or another with the same active substance, is in the colony.
    AlreadyIn,
    /// Other varroa medicines in the colony.
    OtherMedicines,
    /// A topic of the leaflet.
    Topic(Topic),
}

impl About {
    /// The identifier used on the wire.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            About::Directions => "leaflet",
            About::Access => "access",
            About::Need(Need::MainsOrGenerator | Need::Battery) => "power",
            About::Need(Need::DryGround) => "ground",
            About::Need(Need::ReturnVisit) => "return_visits",
            About::Need(Need::CarryInKit) => "carry_in_kit",
            About::Need(Need::HiveOpened) => "hive_opened",
            About::Colony => "colony",
            About::Apiary => "apiary",
            About::AlreadyIn => "already_in",
            About::OtherMedicines => "other_medicines",
            About::Topic(topic) => topic.as_str(),
        }
    }

    /// The leaflet topic, if the subject is one.
    pub(super) const fn topic(self) -> Option<Topic> {
        match self {
            About::Topic(topic) => Some(topic),
            About::Need(_) => Some(Topic::Needs),
            About::Directions
            | About::Access
            | About::Colony
            | About::Apiary
            | About::AlreadyIn
            | About::OtherMedicines => None,
        }
    }
}

impl fmt::Display for About {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}
