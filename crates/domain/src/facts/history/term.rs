//! The terms of a course by name: each must be stated before the course can be judged.

use crate::basics::topic::Topic;

/// A term of a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Term {
    /// Whether supers may be on while it is in.
    SupersDuring,
    /// Whether it may be used during a nectar flow.
    FlowDuring,
    /// Whether it may be used right before a nectar flow.
    FlowBefore,
    /// The withdrawal period, in days.
    Withdrawal,
    /// The wait between removal and supers, in days.
    Wait,
    /// Whether it must be taken out.
    Removal,
    /// When it is used up.
    UsedUp,
    /// How long it must stay, in days, without brood or regardless of brood.
    StayMin,
    /// How long it must stay with brood, in days.
    StayMinWithBrood,
    /// How long it may stay, in days.
    StayMax,
    /// The number of doses in a course.
    Doses,
    /// The number of days between doses.
    DoseInterval,
}

impl Term {
    /// The kind of leaflet rule that states it.
    #[must_use]
    pub const fn topic(self) -> Topic {
        match self {
            Term::SupersDuring => Topic::SupersDuring,
            Term::FlowDuring => Topic::FlowDuring,
            Term::FlowBefore => Topic::FlowBefore,
            Term::Withdrawal => Topic::Withdrawal,
            Term::Wait => Topic::WaitAfterRemoval,
            Term::Removal | Term::UsedUp => Topic::Removal,
            Term::StayMin | Term::StayMinWithBrood => Topic::StayMin,
            Term::StayMax => Topic::StayMax,
            Term::Doses | Term::DoseInterval => Topic::Doses,
        }
    }
}

macro_rules! fields {
    ($($term:ident = $field:literal),+; none: $none:pat) => {
        impl Term {
            /// The field that states it, in the stated terms of a reading. `None` if no reading can state it, or only
            /// several fields together.
            #[must_use]
            pub(crate) const fn field(self) -> Option<&'static str> {
                match self {
                    $(Term::$term => Some($field),)+
                    $none => None,
                }
            }

            /// The path of that field in the body of a reading.
            #[must_use]
            pub(crate) const fn field_of_reading(self) -> Option<&'static str> {
                match self {
                    $(Term::$term => Some(concat!("terms.", $field)),)+
                    $none => None,
                }
            }
        }
    };
}

fields! {
    SupersDuring = "supers_during",
    FlowDuring = "flow_during",
    FlowBefore = "flow_before_days",
    Withdrawal = "withdrawal_days",
    Wait = "wait_after_removal_days",
    Removal = "removal",
    StayMin = "stay_min_days",
    StayMinWithBrood = "stay_min_days_with_brood",
    StayMax = "stay_max_days",
    Doses = "doses";
    none: Term::UsedUp | Term::DoseInterval
}
