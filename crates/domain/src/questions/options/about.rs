//! What a condition is about.

use std::fmt;

use crate::basics::topic::Topic;
use crate::rules::leaflet::rule::Need;

/// What a condition is about: a kind of leaflet rule, or what else is looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum About {
    /// Whether the leaflet has directions for the day at all.
    Directions,
    /// Whether the apiary can be reached on the day of placing.
    Access,
    /// What giving it needs of the site.
    Need(Need),
    /// Whether the colony is here.
    Colony,
    /// Where the colony stands.
    Apiary,
    /// The same medicine, or another with the same active, in the colony already.
    AlreadyIn,
    /// Other varroa medicines in the colony.
    OtherMedicines,
    /// What the leaflet says on a topic.
    Topic(Topic),
}

impl About {
    /// The word for programs.
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

    /// The topic of the leaflet, if it is about one.
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
