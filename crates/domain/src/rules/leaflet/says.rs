//! The kinds of rule that a leaflet holds, and what each one says.

use crate::basics::topic::Topic;
use serde::Serialize;

use super::rule::{BroodState, DosePer, Need, Other, TemperatureWindow, Timing, YearCounting};
use crate::basics::calendar::YearDay;
use crate::basics::quantity::Quantity;
use crate::basics::words::{Brood, NoWithdrawal, Permission, RemovalNeed, SupersDuring};

/// A withdrawal period as a label states it.
///
/// A label that knows no withdrawal period is not one that states 0 days: in the United States labels state a wait before
/// supers instead.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(untagged)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum WithdrawalPeriod {
    /// The label knows none.
    None(NoWithdrawal),
    /// So many days, 0 included.
    Days(u16),
}

impl WithdrawalPeriod {
    /// The label knows none.
    pub const NONE_BY_LABEL: WithdrawalPeriod = WithdrawalPeriod::None(NoWithdrawal::NoneByLabel);

    /// The days it bars honey for: none if the label knows no period.
    #[must_use]
    pub const fn days(self) -> u16 {
        match self {
            WithdrawalPeriod::None(NoWithdrawal::NoneByLabel) => 0,
            WithdrawalPeriod::Days(days) => days,
        }
    }
}

/// What a rule says.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum Says {
    /// May honey supers be on while it is in.
    SupersDuring {
        /// Off, on, or on without harvest.
        value: SupersDuring,
    },
    /// May it be used in a nectar flow.
    FlowDuring {
        /// Forbidden or allowed.
        value: Permission,
    },
    /// It must not be used right before a nectar flow.
    FlowBefore {
        /// Forbidden; nothing else is stated.
        value: Permission,
        /// How many days the time before a flow is, where the leaflet says it.
        #[serde(skip_serializing_if = "Option::is_none")]
        days: Option<u16>,
    },
    /// Withdrawal period for honey.
    Withdrawal {
        /// Days, 0 included; or that the label knows no withdrawal period.
        days: WithdrawalPeriod,
    },
    /// Wait between removal and supers.
    WaitAfterRemoval {
        /// Days, 0 included.
        days: u16,
    },
    /// May honey be taken while it is in.
    HarvestDuring {
        /// Forbidden or allowed.
        value: Permission,
    },
    /// What may become of combs.
    CombRule {
        /// The rule in words, with its end.
        text: String,
    },
    /// Whether it has to be taken out.
    Removal {
        /// Needed or not.
        value: RemovalNeed,
    },
    /// Fewest days it must stay.
    StayMin {
        /// Days after placing.
        days: u16,
        /// The brood under which this holds.
        #[serde(skip_serializing_if = "Option::is_none")]
        brood: Option<BroodState>,
    },
    /// Most days it may stay.
    StayMax {
        /// Days after placing.
        days: u16,
        /// The brood under which this holds.
        #[serde(skip_serializing_if = "Option::is_none")]
        brood: Option<BroodState>,
    },
    /// Doses of a course.
    Doses {
        /// How many, at least.
        count: u8,
        /// How many at most, where the leaflet lets the number vary.
        #[serde(skip_serializing_if = "Option::is_none")]
        count_max: Option<u8>,
        /// Fewest days from one to the next.
        #[serde(skip_serializing_if = "Option::is_none")]
        interval_min_days: Option<u16>,
        /// Most days from one to the next.
        #[serde(skip_serializing_if = "Option::is_none")]
        interval_max_days: Option<u16>,
    },
    /// Courses in a year.
    CoursesPerYear {
        /// At most so many.
        count: u8,
        /// How the year is counted, where the leaflet says it.
        #[serde(skip_serializing_if = "Option::is_none")]
        counted: Option<YearCounting>,
    },
    /// Courses while a colony is without brood.
    CoursesPerBroodlessPeriod {
        /// At most so many.
        count: u8,
    },
    /// Days between courses.
    GapBetweenCourses {
        /// At least so many.
        days: u16,
    },
    /// The time of year in which it may be given. It may run over the new year.
    Season {
        /// First day of the year.
        from_day: YearDay,
        /// Last day of the year.
        to_day: YearDay,
    },
    /// The time in the honey year in which it may be given.
    Timing {
        /// When.
        value: Timing,
    },
    /// Temperature limits in degrees Celsius.
    Temperature {
        /// Which temperature, and when.
        window: TemperatureWindow,
        /// In `maximum_in_first_days`: how many days.
        #[serde(skip_serializing_if = "Option::is_none")]
        first_days: Option<u16>,
        /// At least, in tenths of a degree.
        #[serde(skip_serializing_if = "Option::is_none")]
        min_tenths_c: Option<i16>,
        /// At most, in tenths of a degree.
        #[serde(skip_serializing_if = "Option::is_none")]
        max_tenths_c: Option<i16>,
    },
    /// The brood under which it may be used.
    #[serde(rename = "brood")]
    BroodNeed {
        /// Absent, at its lowest, or present.
        value: Brood,
    },
    /// Strength of the colony.
    ColonySize {
        /// At least so many frames of brood.
        #[serde(skip_serializing_if = "Option::is_none")]
        min_brood_frames: Option<u8>,
        /// At least so many bees.
        #[serde(skip_serializing_if = "Option::is_none")]
        min_bees: Option<u32>,
        /// In words.
        #[serde(skip_serializing_if = "Option::is_none")]
        text: Option<String>,
    },
    /// Number of brood boxes.
    BroodBoxes {
        /// At most so many.
        max: u8,
    },
    /// The entrance.
    Entrance {
        /// In words.
        text: String,
    },
    /// How much.
    Dose {
        /// In the unit of the leaflet.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        amount: Quantity,
        /// The most, where the leaflet gives a range.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
        amount_max: Option<Quantity>,
        /// Per what.
        per: DosePer,
        /// In `frames_of_bees`: per how many.
        #[serde(skip_serializing_if = "Option::is_none")]
        frames: Option<u8>,
        /// In `bees`: for a colony of at least so many.
        #[serde(skip_serializing_if = "Option::is_none")]
        min_bees: Option<u32>,
        /// In `bees`: for a colony of at most so many.
        #[serde(skip_serializing_if = "Option::is_none")]
        max_bees: Option<u32>,
        /// The unit where it is not that of the leaflet, such as ml of a mixed solution.
        #[serde(skip_serializing_if = "Option::is_none")]
        unit: Option<String>,
        /// When this dose holds, in words, where the leaflet has several.
        #[serde(skip_serializing_if = "Option::is_none")]
        when: Option<String>,
    },
    /// Most that one colony may get.
    DoseCap {
        /// In `unit`.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
        amount: Quantity,
        /// The unit where it is not that of the leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        unit: Option<String>,
        /// When this cap holds, in words, where the leaflet has several.
        #[serde(skip_serializing_if = "Option::is_none")]
        when: Option<String>,
    },
    /// How a solution is mixed.
    Recipe {
        /// How much of the medicine.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 35))]
        amount: Quantity,
        /// The unit where it is not that of the leaflet.
        #[serde(skip_serializing_if = "Option::is_none")]
        unit: Option<String>,
        /// Millilitres of water.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
        water_ml: Option<Quantity>,
        /// Grams of sugar.
        #[serde(skip_serializing_if = "Option::is_none")]
        #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000))]
        sugar_g: Option<Quantity>,
        /// Millilitres that come of it.
        #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 500))]
        makes_ml: Quantity,
        /// The order of mixing, and what is dangerous about it.
        text: String,
    },
    /// What giving it needs.
    Needs {
        /// All of these.
        list: Vec<Need>,
    },
    /// What must not be in at the same time.
    NotWith {
        /// In words.
        text: String,
        /// What of it can be told from the record.
        #[serde(skip_serializing_if = "Vec::is_empty")]
        others: Vec<Other>,
    },
    /// In which cases it must not be used.
    Contraindication {
        /// In words.
        text: String,
    },
    /// Chemical class, for rotation.
    Class {
        /// The class.
        name: String,
    },
    /// All colonies of the apiary at the same time.
    WholeApiary {
        /// In words.
        text: String,
    },
    /// Cautions for the user.
    UserSafety {
        /// In words.
        text: String,
    },
    /// How long it may be used once opened.
    AfterOpening {
        /// In words.
        text: String,
        /// How many days after the day on which a pack was opened the rest of it may be used; 0 for that day only.
        #[serde(skip_serializing_if = "Option::is_none")]
        days: Option<u16>,
    },
    /// How to store it.
    Storage {
        /// In words.
        text: String,
    },
    /// How to dispose of it.
    Disposal {
        /// In words.
        text: String,
    },
}

impl Says {
    /// What it speaks of.
    #[must_use]
    pub const fn topic(&self) -> Topic {
        match self {
            Says::SupersDuring { .. } => Topic::SupersDuring,
            Says::FlowDuring { .. } => Topic::FlowDuring,
            Says::FlowBefore { .. } => Topic::FlowBefore,
            Says::Withdrawal { .. } => Topic::Withdrawal,
            Says::WaitAfterRemoval { .. } => Topic::WaitAfterRemoval,
            Says::HarvestDuring { .. } => Topic::HarvestDuring,
            Says::CombRule { .. } => Topic::CombRule,
            Says::Removal { .. } => Topic::Removal,
            Says::StayMin { .. } => Topic::StayMin,
            Says::StayMax { .. } => Topic::StayMax,
            Says::Doses { .. } => Topic::Doses,
            Says::CoursesPerYear { .. } => Topic::CoursesPerYear,
            Says::CoursesPerBroodlessPeriod { .. } => Topic::CoursesPerBroodlessPeriod,
            Says::GapBetweenCourses { .. } => Topic::GapBetweenCourses,
            Says::Season { .. } => Topic::Season,
            Says::Timing { .. } => Topic::Timing,
            Says::Temperature { .. } => Topic::Temperature,
            Says::BroodNeed { .. } => Topic::BroodNeed,
            Says::ColonySize { .. } => Topic::ColonySize,
            Says::BroodBoxes { .. } => Topic::BroodBoxes,
            Says::Entrance { .. } => Topic::Entrance,
            Says::Dose { .. } => Topic::Dose,
            Says::DoseCap { .. } => Topic::DoseCap,
            Says::Recipe { .. } => Topic::Recipe,
            Says::Needs { .. } => Topic::Needs,
            Says::NotWith { .. } => Topic::NotWith,
            Says::Contraindication { .. } => Topic::Contraindication,
            Says::Class { .. } => Topic::Class,
            Says::WholeApiary { .. } => Topic::WholeApiary,
            Says::UserSafety { .. } => Topic::UserSafety,
            Says::AfterOpening { .. } => Topic::AfterOpening,
            Says::Storage { .. } => Topic::Storage,
            Says::Disposal { .. } => Topic::Disposal,
        }
    }
}
