//! The closed word lists of the kinds of rule.

use std::fmt;

use serde::{Deserialize, Serialize};

use super::words::{Brood, Word, word_lists};

/// The brood under which a length of stay holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum BroodState {
    /// No brood, or brood at its lowest.
    AbsentOrLowest,
    /// Brood present.
    Present,
}

impl BroodState {
    /// Both states.
    pub const ALL: [BroodState; 2] = [BroodState::AbsentOrLowest, BroodState::Present];

    /// The state as it is written in leaflets.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            BroodState::AbsentOrLowest => "absent_or_lowest",
            BroodState::Present => "present",
        }
    }

    /// The state shown by an inspection.
    #[must_use]
    pub const fn seen(brood: Brood) -> BroodState {
        match brood {
            Brood::Absent | Brood::Lowest => BroodState::AbsentOrLowest,
            Brood::Present => BroodState::Present,
        }
    }
}

impl Word for BroodState {
    const LIST: &'static [BroodState] = &BroodState::ALL;

    fn word(self) -> &'static str {
        self.as_str()
    }
}

word_lists! {
    /// Which temperature a limit speaks of, and when.
    TemperatureWindow {
        /// Outside daily maximum on the day of placing.
        MaximumOnPlacingDay = "maximum_on_placing_day",
        /// Outside daily maximum in the first days.
        MaximumInFirstDays = "maximum_in_first_days",
        /// Outside daily maximum over the whole stay.
        MaximumOverStay = "maximum_over_stay",
        /// Outside daily mean over the stay.
        MeanOverStay = "mean_over_stay",
        /// Outside, at the moment of use.
        AtUse = "at_use",
        /// Of the product itself.
        Product = "product",
    }

    /// What a dose is counted by.
    DosePer {
        /// Per hive.
        Hive = "hive",
        /// Per brood box.
        BroodBox = "brood_box",
        /// Per so many frames of bees.
        FramesOfBees = "frames_of_bees",
        /// Per seam of bees.
        Seam = "seam",
        /// Per small colony or nucleus.
        SmallColony = "small_colony",
        /// Per side of an occupied comb.
        CombSide = "comb_side",
        /// Per litre of hive.
        LitreOfHive = "litre_of_hive",
        /// Per colony of so many bees.
        Bees = "bees",
    }

    /// Something that giving a medicine needs.
    Need {
        /// Mains or a generator.
        MainsOrGenerator = "mains_or_generator",
        /// A 12 V battery.
        Battery = "battery",
        /// A kit that can be carried in.
        CarryInKit = "carry_in_kit",
        /// The hive is opened.
        HiveOpened = "hive_opened",
        /// A second visit.
        ReturnVisit = "return_visit",
        /// Dry ground at the stand.
        DryGround = "dry_ground",
    }

    /// Something that must not go on at the same time.
    Other {
        /// Another varroa medicine.
        VarroaMedicines = "varroa_medicines",
        /// A medicine against nosema.
        NosemaMedicines = "nosema_medicines",
        /// Feeding.
        Feeding = "feeding",
    }

    /// How a leaflet counts a year.
    YearCounting {
        /// From January to December.
        CalendarYear = "calendar_year",
        /// Any twelve months on end.
        TwelveMonths = "twelve_months",
    }

    /// A part of the Union for which a leaflet has directions of its own.
    Region {
        /// Western and central Europe.
        WesternAndCentralEurope = "western_and_central_europe",
        /// Southern Europe.
        SouthernEurope = "southern_europe",
    }

    /// When in the honey year it may be given.
    Timing {
        /// Only after the last harvest of the year.
        AfterLastHarvest = "after_last_harvest",
    }
}
