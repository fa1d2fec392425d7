//! What would have to change for a broken condition to hold.

use super::reason::{Because, Counting, Measure, Within};
use crate::basics::calendar::{Day, YearDay};
use crate::basics::words::{Brood, MedicineName};
use crate::rules::leaflet::rule::Need;

/// What would have to change.
#[derive(Debug, Clone, PartialEq)]
pub enum Change {
    /// The colony would have to be in the holding.
    Here,
    /// Honey supers that are on since this day come off.
    SupersOff {
        /// Since when they are on.
        since: Day,
    },
    /// It starts so early that it is out long before the flow, or after it.
    LongBeforeFlow {
        /// The first day on which the flow may begin.
        from: Day,
    },
    /// It starts so early that it is out before the flow, or after it.
    BeforeFlow {
        /// The first day on which the flow may begin.
        from: Day,
    },
    /// The harvest of a flow is over.
    AfterHarvest {
        /// The first day of the flow.
        from: Day,
    },
    /// What is in comes out.
    TakenOut {
        /// The medicine.
        medicine: MedicineName,
        /// The day of its placing.
        placed: Day,
    },
    /// The feeder comes off.
    FeederOff,
    /// There is brood.
    Brood,
    /// There is no brood.
    NoBrood,
    /// Brood boxes come off.
    FewerBroodBoxes,
    /// The colony is strengthened or united.
    Stronger,
    /// The next time within which courses are counted comes.
    Next {
        /// Which.
        within: Within,
    },
    /// Days have passed since the last course.
    After {
        /// The last of them.
        last: Day,
    },
    /// A day of the year comes.
    Season {
        /// The first day.
        from: YearDay,
    },
    /// Somebody brings what it needs of power.
    Power {
        /// What it needs.
        need: Need,
    },
    /// The apiary can be reached on a day.
    Reached {
        /// The day.
        on: Day,
    },
    /// The ground is dry.
    DryGround,
    /// Other weather.
    Weather {
        /// Than that of this day; of a mean, no day alone.
        than_on: Option<Day>,
    },
    /// What is told of it says what would have to change.
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
            Because::Ground { .. } => Change::DryGround,
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
