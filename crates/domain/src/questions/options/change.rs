//! What would have to change to meet a broken condition.

use super::reason::{Because, Counting, Measure, Within};
use crate::basics::calendar::{Day, YearDay};
use crate::basics::words::Brood;
use crate::facts::MedicineGiven;
use crate::rules::leaflet::rule::Need;

/// A change that would meet a broken condition.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// The colony must be in the holding.
    Here,
    /// Harvest supers must come off.
    SupersOff {
        /// The day since which they are on.
        since: Day,
    },
    /// It must start early enough to be out long before the flow, or start after the flow.
    LongBeforeFlow {
        /// The first day on which the flow may begin.
        from: Day,
    },
    /// It must start early enough to be out before the flow, or start after the flow.
    BeforeFlow {
        /// The first day on which the flow may begin.
        from: Day,
    },
    /// The harvest of a flow must be over.
    AfterHarvest {
        /// The first day of the flow.
        from: Day,
    },
    /// A medicine that is in must come out.
    TakenOut {
        /// The medicine.
        medicine: MedicineGiven,
        /// The day it was placed.
        placed: Day,
    },
    /// The feeder must come off.
    FeederOff,
    /// The colony must have brood.
    Brood,
    /// The colony must have no brood.
    NoBrood,
    /// Brood boxes must come off.
    FewerBroodBoxes,
    /// The colony must be strengthened or united with another.
    Stronger,
    /// The period in which courses are counted must end.
    Next {
        /// The period.
        within: Within,
    },
    /// More days must pass since the last course.
    After {
        /// The day on which the last course ended.
        last: Day,
    },
    /// The season must begin.
    Season {
        /// The first day of the season.
        from: YearDay,
    },
    /// The required power must be brought.
    Power {
        /// The requirement.
        need: Need,
    },
    /// The apiary must be reachable on a day.
    Reached {
        /// The day.
        on: Day,
    },
    /// The ground must be dry.
    DryGround,
    /// The weather must be different.
    Weather {
        /// The day with unsuitable weather. Absent for a mean, which belongs to no single day.
        than_on: Option<Day>,
    },
    /// The reason itself says what must change.
    Other(Because),
}

impl Change {
    pub(super) fn of(because: &Because) -> Change {
        match because {
            Because::NotHere => Change::Here,
            Because::SupersOn { since, .. } => Change::SupersOff { since: *since },
            Because::RightBeforeFlow { from, .. } => Change::LongBeforeFlow { from: *from },
            Because::InFlow { early, .. } => Change::BeforeFlow { from: *early },
            Because::FlowStillToCome { from, .. } => Change::AfterHarvest { from: *from },
            Because::AlreadyIn { medicine, placed, .. } => {
                Change::TakenOut { medicine: medicine.clone(), placed: *placed }
            }
            Because::Feeder { .. } => Change::FeederOff,
            Because::BroodSeen { brood: Brood::Absent, .. } => Change::Brood,
            Because::BroodSeen { brood: Brood::Lowest | Brood::Present, .. } => Change::NoBrood,
            Because::Counted { what: Counting::BroodBoxes, .. } => Change::FewerBroodBoxes,
            Because::Counted {
                what: Counting::SeamsOfBees | Counting::Bees | Counting::LitresOfHive,
                ..
            } => Change::Stronger,
            Because::Courses { within, .. } => Change::Next { within: *within },
            Because::SameBroodlessPeriod { .. } => Change::Next { within: Within::TimeWithoutBrood },
            Because::SinceLast { ended, least, .. } => Change::After { last: ended.plus(*least) },
            Because::InSeason { from, .. } => Change::Season { from: *from },
            Because::Power { need, .. } => Change::Power { need: *need },
            Because::Access { on, .. } => Change::Reached { on: *on },
            Because::Ground { .. } | Because::GroundOnceAssumedWet => Change::DryGround,
            Because::OutOfBounds { on, measure, .. } => match measure {
                Measure::Mean => Change::Weather { than_on: None },
                Measure::Maximum | Measure::SomeMoment => Change::Weather { than_on: Some(*on) },
            },
            Because::Here
            | Because::ApiaryNotKnown
            | Because::Moved { .. }
            | Because::HasDirections
            | Because::NoDirections
            | Because::NotStated { .. }
            | Because::NotDocumented { .. }
            | Because::StayNotDocumented { .. }
            | Because::MayStayLonger { .. }
            | Because::NotInForce
            | Because::NoSupersOn
            | Because::NoFlow { .. }
            | Because::PerhapsInFlow { .. }
            | Because::FlowTurnsOnBrood { .. }
            | Because::FlowBeforeStayIsKnown { .. }
            | Because::PerhapsBeforeFlow { .. }
            | Because::NoFlowOnRecordSince { .. }
            | Because::FlowsNotRecorded { .. }
            | Because::FlowAllowed
            | Because::AfterLastFlow { .. }
            | Because::BesideIsNotStated { .. }
            | Because::PerhapsIn { .. }
            | Because::CameWithUnknown { .. }
            | Because::RecordsInArchive { .. }
            | Because::NothingIn
            | Because::NoFeeder { .. }
            | Because::FeederNotSeen
            | Because::BroodNotSeen { .. }
            | Because::NotCounted { .. }
            | Because::CoursesTurnOnYear { .. }
            | Because::BroodSince { .. }
            | Because::NoCourseBefore
            | Because::LastNotEnded { .. }
            | Because::ClassRepeats { .. }
            | Because::ClassDiffers { .. }
            | Because::ClassNotKnown { .. }
            | Because::Warm { .. }
            | Because::NoTemperature { .. }
            | Because::StayNotKnown { .. } => Change::Other(because.clone()),
        }
    }
}
