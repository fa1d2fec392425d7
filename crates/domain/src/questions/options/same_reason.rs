//! Whether two reasons read the same, so that the colonies sharing one are named together.

use super::reason::{Because, Measure, Told, ToldBy};
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::words::{Access, SupersDuring};
use crate::facts::apiary::SiteFact;
use crate::rules::leaflet::rule::Need;

impl Because {
    /// Whether both reasons read the same, whichever entry or colony they come from.
    #[must_use]
    pub fn is_the_same_reason(&self, other: &Because) -> bool {
        use Because as B;
        match (self, other) {
            (B::NotDocumented { confidence }, B::NotDocumented { confidence: theirs }) => {
                (*confidence == Confidence::SecondHand) == (*theirs == Confidence::SecondHand)
            }
            (B::StayNotDocumented { lacks, .. }, B::StayNotDocumented { lacks: theirs, .. })
            | (B::MayStayLonger { lacks, .. }, B::MayStayLonger { lacks: theirs, .. }) => lacks == theirs,
            (B::Moved { on: day, .. }, B::Moved { on: theirs, .. })
            | (B::InFlow { from: day, .. }, B::InFlow { from: theirs, .. })
            | (B::FlowStillToCome { from: day, .. }, B::FlowStillToCome { from: theirs, .. })
            | (B::CameWithUnknown { since: day, .. }, B::CameWithUnknown { since: theirs, .. })
            | (B::RecordsInArchive { through: day, .. }, B::RecordsInArchive { through: theirs, .. })
            | (B::Feeder { seen: day, .. }, B::Feeder { seen: theirs, .. })
            | (B::NoFeeder { seen: day, .. }, B::NoFeeder { seen: theirs, .. })
            | (B::LastNotEnded { placed: day, .. }, B::LastNotEnded { placed: theirs, .. })
            | (B::NoTemperature { first: day, .. }, B::NoTemperature { first: theirs, .. })
            | (
                B::Access { has: Fact::NotKnown(_), on: day },
                B::Access { has: Fact::NotKnown(_), on: theirs },
            ) => day == theirs,
            (
                B::SupersOn { since, value, .. },
                B::SupersOn { since: their_since, value: their_value, .. },
            ) => {
                let may_be_on = |value: SupersDuring| value != SupersDuring::Off;
                since == their_since && may_be_on(*value) == may_be_on(*their_value)
            }
            (B::NoFlow { next }, B::NoFlow { next: theirs }) => {
                next.map(|(begins, _)| begins) == theirs.map(|(begins, _)| begins)
            }
            (
                B::PerhapsInFlow { early: one, late: two, .. },
                B::PerhapsInFlow { early: their_one, late: their_two, .. },
            )
            | (
                B::FlowTurnsOnBrood { without: one, with: two, .. },
                B::FlowTurnsOnBrood { without: their_one, with: their_two, .. },
            )
            | (
                B::RightBeforeFlow { out: one, from: two, .. },
                B::RightBeforeFlow { out: their_one, from: their_two, .. },
            )
            | (
                B::PerhapsBeforeFlow { out: one, from: two, .. },
                B::PerhapsBeforeFlow { out: their_one, from: their_two, .. },
            ) => (one, two) == (their_one, their_two),
            (
                B::FlowBeforeStayIsKnown { from, lacks, .. },
                B::FlowBeforeStayIsKnown { from: their_from, lacks: their_lacks, .. },
            ) => (from, lacks) == (their_from, their_lacks),
            (
                B::AlreadyIn { medicine, placed, .. },
                B::AlreadyIn { medicine: their_medicine, placed: their_placed, .. },
            )
            | (
                B::BesideIsNotStated { medicine, placed, .. },
                B::BesideIsNotStated { medicine: their_medicine, placed: their_placed, .. },
            ) => (medicine, placed) == (their_medicine, their_placed),
            (
                B::PerhapsIn { medicine, placed, stays, .. },
                B::PerhapsIn { medicine: their_medicine, placed: their_placed, stays: theirs, .. },
            ) => (medicine, placed, stays) == (their_medicine, their_placed, theirs),
            (B::BroodSeen { brood, on, .. }, B::BroodSeen { brood: their_brood, on: theirs, .. }) => {
                (brood, on) == (their_brood, theirs)
            }
            (
                B::Counted { what, count, on, .. },
                B::Counted { what: their_what, count: their_count, on: theirs, .. },
            ) => (what, count, on) == (their_what, their_count, theirs),
            (
                B::SinceLast { ended, least, .. },
                B::SinceLast { ended: their_ended, least: their_least, .. },
            ) => (ended, least) == (their_ended, their_least),
            _ => is_the_same_of_the_site(self, other),
        }
    }
}

/// The same, for the site and its temperatures.
fn is_the_same_of_the_site(one: &Because, two: &Because) -> bool {
    use Because as B;
    match (one, two) {
        (B::Power { need, has }, B::Power { need: their_need, has: theirs }) => {
            let of_battery = |need: Need| need == Need::Battery;
            of_battery(*need) == of_battery(*their_need) && told(*has) == told(*theirs)
        }
        (B::Access { has, on }, B::Access { has: theirs, on: their_on }) => {
            // If the apiary can be reached, the day does not matter.
            let same_day = !matches!(has, Fact::Known((Access::None, _))) || on == their_on;
            told(*has) == told(*theirs) && same_day
        }
        (B::Ground { has }, B::Ground { has: theirs }) => told(*has) == told(*theirs),
        (
            B::Warm { measure, lowest, highest, origin, .. },
            B::Warm {
                measure: their_measure,
                lowest: their_lowest,
                highest: their_highest,
                origin: theirs,
                ..
            },
        ) => (measure, lowest, highest, origin) == (their_measure, their_lowest, their_highest, theirs),
        (
            B::OutOfBounds { measure, on, value, origin, .. },
            B::OutOfBounds {
                measure: their_measure, on: their_on, value: their_value, origin: theirs, ..
            },
        ) => {
            // A mean covers all days, so the day does not matter.
            let same_day = *measure == Measure::Mean || on == their_on;
            (measure, value, origin) == (their_measure, their_value, theirs) && same_day
        }
        _ => one == two,
    }
}

/// A fact about the site, and whether it was assumed in the question.
fn told<T>(has: Told<T>) -> Fact<(T, bool), SiteFact> {
    has.map(|(fact, by)| (fact, by == ToldBy::Question))
}
