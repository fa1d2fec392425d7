//! The nectar flows at the sites of a colony, and the days right before them.

use std::cmp::Reverse;

use super::terms::FlowBefore;
use crate::basics::calendar::Day;
use crate::basics::words::{ApiaryName, ColonyName};
use crate::facts::apiary::{Flow, FlowSpan};
use crate::facts::holding::Holding;

/// How many days count as "right before" a flow if a leaflet gives no number.
///
/// Common practice, no source: two weeks. This never permits supers: a later flow in the same year leaves the answer
/// open.
pub const RIGHT_BEFORE_DAYS: u16 = 14;

/// Effect of a ban on use right before a flow, on one day.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum BeforeFlow {
    /// The ban does not apply.
    Free,
    /// Used right before this flow, so supers are banned.
    Barred(FlowSpan),
    /// This flow began later in the same year and the leaflet gives no number of days, so the ban may apply.
    Perhaps(FlowSpan),
    /// No flow has been recorded since it came out, so the ban may apply.
    NoFlowOnRecord,
}

/// The flows at the sites of a colony, by first day.
pub(super) fn of(holding: &Holding, colony: &ColonyName) -> Vec<FlowSpan> {
    within(holding, &stays(holding, colony))
}

/// The flows for a line that was in other colonies before they were united into this one, each with the day of the
/// uniting. `None` if no colonies were united.
pub(super) fn of_line(
    holding: &Holding,
    colony: &ColonyName,
    united_from: &[(&ColonyName, Day)],
) -> Option<Vec<FlowSpan>> {
    (!united_from.is_empty()).then(|| within(holding, &stays_of_line(holding, colony, united_from)))
}

/// Where a line of a course was from a day on: each apiary, with its first day there.
pub(super) fn stood_since<'h>(
    holding: &'h Holding,
    colony: &ColonyName,
    united_from: &[(&ColonyName, Day)],
    day: Day,
) -> Vec<(Day, &'h ApiaryName)> {
    let stays = stays_of_line(holding, colony, united_from);
    let left = stays.iter().skip(1).map(|(next, _)| Some(*next)).chain([None]);
    let after = stays.iter().zip(left).filter(|(_, left)| left.is_none_or(|left| left >= day));
    after.map(|((from, apiary), _)| ((*from).max(day), *apiary)).collect()
}

fn stays_of_line<'h>(
    holding: &'h Holding,
    colony: &ColonyName,
    united_from: &[(&ColonyName, Day)],
) -> Vec<(Day, &'h ApiaryName)> {
    let first = united_from.first().map_or(colony, |(first, _)| *first);
    let mut line = stays(holding, first);
    let into = united_from.iter().skip(1).map(|(colony, _)| *colony).chain([colony]);
    for ((_, on), into) in united_from.iter().zip(into) {
        let then = stays(holding, into);
        line.retain(|(from, _)| *from < *on);
        // Where the other colony was on the day of the uniting, and from then on.
        let stood = then.iter().rfind(|(from, _)| *from <= *on).map(|(_, apiary)| (*on, *apiary));
        for (from, apiary) in stood.into_iter().chain(then.iter().copied().filter(|(from, _)| *from > *on)) {
            if line.last().is_none_or(|(_, last)| *last != apiary) {
                line.push((from, apiary));
            }
        }
    }
    line
}

/// The flows during each of these stays. A stay ends when the next begins.
fn within(holding: &Holding, stays: &[(Day, &ApiaryName)]) -> Vec<FlowSpan> {
    let mut spans: Vec<FlowSpan> = Vec::new();
    for (index, (from, apiary)) in stays.iter().enumerate() {
        // On the day of a move it was at both apiaries.
        let left = stays.get(index.saturating_add(1)).map(|(next, _)| *next);
        for flow in Flow::all(holding.apiary_file(apiary)) {
            let whole = flow.span();
            let last = left.map_or(whole.last, |left| whole.last.min(left));
            let span = FlowSpan { from: whole.from.max(*from), last, ..whole };
            spans.extend(Some(span).filter(|span| span.from <= span.last));
        }
    }
    spans.sort_by_key(|span| (span.from, span.last, span.entry));
    spans
}

/// Where the colony was and since when, including the stays of the colonies it was split off from.
fn stays<'h>(holding: &'h Holding, colony: &ColonyName) -> Vec<(Day, &'h ApiaryName)> {
    let mut stays = holding.stays(colony);
    stays.dedup_by_key(|(_, apiary)| *apiary);
    stays
}

/// Effect of the ban on day `on`, for a course that is out since `out`.
pub(crate) fn before_flow(flows: &[FlowSpan], bar: FlowBefore, out: Day, on: Day) -> BeforeFlow {
    let (days, named) = match bar {
        FlowBefore::BarredDays(0) => return BeforeFlow::Free,
        FlowBefore::Barred => (RIGHT_BEFORE_DAYS, false),
        FlowBefore::BarredDays(days) => (days, true),
    };
    let coming = || flows.iter().filter(|flow| flow.last >= out);
    let begins = |flow: &FlowSpan| flow.from.max(out);
    // If it was used right before several flows, the flow that ends last applies: it blocks for longest.
    let near = coming().filter(|flow| begins(flow) <= out.plus(days)).max_by_key(|flow| flow.last);
    let next = coming().min_by_key(|flow| (begins(flow), Reverse(flow.last)));
    match (near, next) {
        (Some(flow), _) if on <= flow.last => BeforeFlow::Barred(*flow),
        (None, None) if !named || on <= out.plus(days) => BeforeFlow::NoFlowOnRecord,
        (None, Some(flow)) if !named && on <= flow.last && begins(flow).year() == out.year() => {
            BeforeFlow::Perhaps(*flow)
        }
        (Some(_) | None, _) => BeforeFlow::Free,
    }
}
