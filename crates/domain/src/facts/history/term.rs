//! The terms of a course, by name: what somebody must have stated before it can be judged.

use crate::basics::topic::Topic;

/// A term of a course.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Term {
    /// Whether supers may be on while it is in.
    SupersDuring,
    /// Whether it may be used in a nectar flow.
    FlowDuring,
    /// Whether it may be used right before a nectar flow.
    FlowBefore,
    /// The withdrawal period.
    Withdrawal,
    /// The wait between removal and supers.
    Wait,
    /// Whether it has to be taken out.
    Removal,
    /// When it is used up.
    UsedUp,
    /// How long it must stay, without brood or whatever the brood.
    StayMin,
    /// How long it must stay with brood.
    StayMinWithBrood,
    /// How long it may stay.
    StayMax,
    /// How many doses a course has.
    Doses,
    /// How many days lie between doses.
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
            /// The field of stated terms that states it; none if no reading does, or only several together.
            #[must_use]
            pub const fn field(self) -> Option<&'static str> {
                match self {
                    $(Term::$term => Some($field),)+
                    $none => None,
                }
            }

            /// The same field from the body of a reading on.
            #[must_use]
            pub const fn field_of_reading(self) -> Option<&'static str> {
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
