//! Whether two reasons are one to a reader, so that colonies which share it are named together.

use super::reason::{Because, Measure, ToldBy};
use crate::basics::confidence::Confidence;
use crate::basics::words::{Access, SupersDuring};
use crate::rules::leaflet::rule::Need;

impl Because {
    /// Whether both are the same reason, whichever entry of whichever colony tells it: all that is told of one is told of the
    /// other.
    #[must_use]
    pub fn is_the_same_reason(&self, other: &Because) -> bool {
        use Because as B;
        match (self, other) {
            (B::NotDocumented { confidence: a }, B::NotDocumented { confidence: b }) => {
                (*a == Confidence::SecondHand) == (*b == Confidence::SecondHand)
            }
            (B::StayNotDocumented { lacks: a, .. }, B::StayNotDocumented { lacks: b, .. })
            | (B::MayStayLonger { lacks: a, .. }, B::MayStayLonger { lacks: b, .. }) => a == b,
            (B::Moved { on: a, .. }, B::Moved { on: b, .. })
            | (B::InFlow { from: a, .. }, B::InFlow { from: b, .. })
            | (B::FlowStillToCome { from: a, .. }, B::FlowStillToCome { from: b, .. })
            | (B::CameWithUnknown { since: a, .. }, B::CameWithUnknown { since: b, .. })
            | (B::Feeder { seen: a, .. }, B::Feeder { seen: b, .. })
            | (B::NoFeeder { seen: a, .. }, B::NoFeeder { seen: b, .. })
            | (B::LastNotEnded { placed: a, .. }, B::LastNotEnded { placed: b, .. })
            | (B::NoTemperature { first: a, .. }, B::NoTemperature { first: b, .. }) => a == b,
            (B::SupersOn { since: a, value: v, .. }, B::SupersOn { since: b, value: w, .. }) => {
                a == b && (*v == SupersDuring::Off) == (*w == SupersDuring::Off)
            }
            (B::NoFlow { next: a }, B::NoFlow { next: b }) => {
                a.map(|(begins, _)| begins) == b.map(|(begins, _)| begins)
            }
            (B::PerhapsInFlow { early: a, late: x, .. }, B::PerhapsInFlow { early: b, late: y, .. })
            | (
                B::FlowTurnsOnBrood { without: a, with: x, .. },
                B::FlowTurnsOnBrood { without: b, with: y, .. },
            )
            | (B::RightBeforeFlow { out: a, from: x, .. }, B::RightBeforeFlow { out: b, from: y, .. })
            | (B::PerhapsBeforeFlow { out: a, from: x, .. }, B::PerhapsBeforeFlow { out: b, from: y, .. }) => {
                (a, x) == (b, y)
            }
            (
                B::FlowBeforeStayIsKnown { from: a, lacks: x, .. },
                B::FlowBeforeStayIsKnown { from: b, lacks: y, .. },
            ) => (a, x) == (b, y),
            (B::AlreadyIn { medicine: a, placed: x, .. }, B::AlreadyIn { medicine: b, placed: y, .. })
            | (
                B::BesideIsNotStated { medicine: a, placed: x, .. },
                B::BesideIsNotStated { medicine: b, placed: y, .. },
            ) => (a, x) == (b, y),
            (
                B::PerhapsIn { medicine: a, placed: x, stays: s, .. },
                B::PerhapsIn { medicine: b, placed: y, stays: t, .. },
            ) => (a, x, s) == (b, y, t),
            (B::BroodSeen { brood: a, on: x, .. }, B::BroodSeen { brood: b, on: y, .. }) => (a, x) == (b, y),
            (B::Counted { what: a, count: n, on: x, .. }, B::Counted { what: b, count: m, on: y, .. }) => {
                (a, n, x) == (b, m, y)
            }
            (B::SinceLast { ended: a, least: x, .. }, B::SinceLast { ended: b, least: y, .. }) => {
                (a, x) == (b, y)
            }
            (B::Power { need: a, has: x, by: s }, B::Power { need: b, has: y, by: t }) => {
                let battery = |need: Need| need == Need::Battery;
                battery(*a) == battery(*b) && x == y && (x.is_none() || assumed(*s) == assumed(*t))
            }
            (B::Access { has: None, on: a, .. }, B::Access { has: None, on: b, .. }) => a == b,
            (B::Access { has: a, by: s, on: x }, B::Access { has: b, by: t, on: y }) => {
                a == b && assumed(*s) == assumed(*t) && (*a != Some(Access::None) || x == y)
            }
            (B::Ground { has: a, by: s }, B::Ground { has: b, by: t }) => {
                a == b && (a.is_none() || assumed(*s) == assumed(*t))
            }
            (
                B::Warm { measure: a, lowest: l, highest: h, origin: o, .. },
                B::Warm { measure: b, lowest: m, highest: i, origin: p, .. },
            ) => (a, l, h, o) == (b, m, i, p),
            (
                B::OutOfBounds { measure: a, on: x, value: v, origin: o, .. },
                B::OutOfBounds { measure: b, on: y, value: w, origin: p, .. },
            ) => (a, v, o) == (b, w, p) && (*a == Measure::Mean || x == y),
            _ => self == other,
        }
    }
}

/// Whether it was assumed in the question.
fn assumed(by: Option<ToldBy>) -> bool {
    by == Some(ToldBy::Question)
}
