//! One rule of a leaflet: its dates, its sources, how well it is established. What it says is in `says.rs`.

use std::fmt;

use serde::Serialize;

use crate::calendar::Day;
use crate::words::{Brood, Method};

pub use super::says::{Says, Topic};

/// One dated, sourced statement of a leaflet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Rule {
    /// What it says.
    #[serde(flatten)]
    pub says: Says,
    /// The method it is limited to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<Method>,
    /// First day on which it is in force.
    pub from: Day,
    /// Last day on which it is in force; open-ended if absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Day>,
    /// How much it binds.
    pub force: Force,
    /// Keys of the sources in which it was read.
    pub source: Vec<String>,
    /// How well it is established.
    pub confidence: Confidence,
    /// The day on which somebody last checked that it still holds.
    pub checked_on: Day,
    /// Anything a reader must know about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Its line in the leaflet file.
    pub line: u32,
}

impl Rule {
    /// Whether it is in force on a day.
    #[must_use]
    pub fn is_in_force(&self, on: Day) -> bool {
        self.from <= on && self.until.is_none_or(|until| on <= until)
    }
}

/// How much a rule binds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Force {
    /// Law.
    Law,
    /// The label or leaflet.
    Label,
    /// Advice only.
    Advice,
}

/// How well a value is established. Only a `document` can carry a yes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Confidence {
    /// Read in the authority's document for this jurisdiction, or a faithful copy of it.
    Document,
    /// Read in another text that reports it, or in another country's document.
    SecondHand,
    /// From memory or inferred.
    Unconfirmed,
}

/// The brood under which a length of stay holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum BroodState {
    /// No brood, or brood at its lowest.
    AbsentOrLowest,
    /// Brood present.
    Present,
}

impl BroodState {
    /// The state that an inspection shows.
    #[must_use]
    pub const fn seen(brood: Brood) -> BroodState {
        match brood {
            Brood::Absent | Brood::Lowest => BroodState::AbsentOrLowest,
            Brood::Present => BroodState::Present,
        }
    }
}

impl fmt::Display for BroodState {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            BroodState::AbsentOrLowest => "brood absent or at its lowest",
            BroodState::Present => "brood present",
        })
    }
}

/// Which temperature a limit speaks of, and when.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum TemperatureWindow {
    /// Outside daily maximum on the day of placing.
    MaximumOnPlacingDay,
    /// Outside daily maximum in the first days.
    MaximumInFirstDays,
    /// Outside daily maximum over the whole stay.
    MaximumOverStay,
    /// Outside daily mean over the stay.
    MeanOverStay,
    /// Outside, at the moment of use.
    AtUse,
    /// Of the product itself.
    Product,
}

/// What a dose is counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum DosePer {
    /// Per hive.
    Hive,
    /// Per brood box.
    BroodBox,
    /// Per so many frames of bees.
    FramesOfBees,
    /// Per seam of bees.
    Seam,
    /// Per small colony or nucleus.
    SmallColony,
}

/// Something that giving a medicine needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Need {
    /// Mains or a generator.
    MainsOrGenerator,
    /// A 12 V battery.
    Battery,
    /// A kit that can be carried in.
    CarryInKit,
    /// The hive is opened.
    HiveOpened,
    /// A second visit.
    ReturnVisit,
    /// Dry ground at the stand.
    DryGround,
}
