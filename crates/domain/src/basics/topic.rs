//! The topics on which leaflets speak and people state or confirm something.

use serde::{Deserialize, Serialize};

macro_rules! topics {
    ($($(#[$doc:meta])+ $topic:ident = $text:literal,)+) => {
        /// What a rule speaks of.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
        // The derive does not see a word that comes through this macro: it is named by rule, and by hand where it differs.
        #[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(rename_all = "snake_case"))]
        pub enum Topic {
            $($(#[$doc])+ #[serde(rename = $text)] $topic,)+
        }

        impl Topic {
            /// Every topic.
            pub const ALL: &[Topic] = &[$(Topic::$topic),+];

            /// The topic as it is written in leaflets.
            #[must_use]
            pub const fn as_str(self) -> &'static str {
                match self { $(Topic::$topic => $text,)+ }
            }

            /// Whether a keeper who reads it on a leaflet states its value, since the supers turn on it; what else is read
            /// is confirmed in words.
            #[must_use]
            pub const fn is_stated(self) -> bool {
                matches!(
                    self,
                    Topic::SupersDuring
                        | Topic::FlowDuring
                    | Topic::FlowBefore
                        | Topic::Withdrawal
                        | Topic::WaitAfterRemoval
                        | Topic::Removal
                        | Topic::StayMin
                        | Topic::StayMax
                        | Topic::Doses
                )
            }
        }
    };
}

topics! {
    /// May honey supers be on while it is in.
    SupersDuring = "supers_during",
    /// May it be used in a nectar flow.
    FlowDuring = "flow_during",
    /// May it be used right before a nectar flow.
    FlowBefore = "flow_before",
    /// Withdrawal period for honey.
    Withdrawal = "withdrawal",
    /// Wait between removal and supers.
    WaitAfterRemoval = "wait_after_removal",
    /// May honey be taken while it is in.
    HarvestDuring = "harvest_during",
    /// What may become of combs.
    CombRule = "comb_rule",
    /// Whether it has to be taken out.
    Removal = "removal",
    /// Fewest days it must stay.
    StayMin = "stay_min",
    /// Most days it may stay.
    StayMax = "stay_max",
    /// Doses of a course and the days between them.
    Doses = "doses",
    /// Courses in a year.
    CoursesPerYear = "courses_per_year",
    /// Courses while a colony is without brood.
    CoursesPerBroodlessPeriod = "courses_per_broodless_period",
    /// Days between courses.
    GapBetweenCourses = "gap_between_courses",
    /// The time of year.
    Season = "season",
    /// The time in the honey year.
    Timing = "timing",
    /// Temperature limits.
    Temperature = "temperature",
    /// The brood under which it may be used.
    #[cfg_attr(feature = "openapi", schema(rename = "brood"))]
    BroodNeed = "brood",
    /// Strength of the colony.
    ColonySize = "colony_size",
    /// Number of brood boxes.
    BroodBoxes = "brood_boxes",
    /// The entrance.
    Entrance = "entrance",
    /// How much.
    Dose = "dose",
    /// Most that one colony may get.
    DoseCap = "dose_cap",
    /// How a solution is mixed.
    Recipe = "recipe",
    /// What giving it needs.
    Needs = "needs",
    /// What must not be in at the same time.
    NotWith = "not_with",
    /// In which cases it must not be used.
    Contraindication = "contraindication",
    /// Chemical class, for rotation.
    Class = "class",
    /// All colonies of the apiary at the same time.
    WholeApiary = "whole_apiary",
    /// Cautions for the user.
    UserSafety = "user_safety",
    /// How long it may be used once opened.
    AfterOpening = "after_opening",
    /// How to store it.
    Storage = "storage",
    /// How to dispose of it.
    Disposal = "disposal",
}
