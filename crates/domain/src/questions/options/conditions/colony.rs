//! Supers, flow, brood and strength of one colony.

use super::rules;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::sourced::Sourced;
use crate::basics::topic::Topic;
use crate::basics::words::{Brood, Permission, SupersDuring};
use crate::facts::apiary::{Flow, Meets};
use crate::facts::history::Ends;
use crate::facts::history::{self, BeforeFlow};
use crate::journal::event::Inspection;
use crate::questions::options::about::About;
use crate::questions::options::choice::Choice;
use crate::questions::options::colony::{BROOD_NEED_TELLS_DAYS, Colony, Count};
use crate::questions::options::date_range::Span;
use crate::questions::options::place::Place;
use crate::questions::options::reason::{Because, Counting};
use crate::questions::options::state::{Condition, Finding, State};
use crate::rules::leaflet::rule::BroodState;
use crate::rules::leaflet::{Force, Says};

/// Most bees on a frame. Source: older photo scale, 3,000 bees on a full frame; a deep frame fully covered holds
/// 2,430.
const BEES_IN_A_SEAM_MOST: u32 = 3_000;
/// Fewest bees in a seam: half of a fully covered deep frame. Common practice, no source.
const BEES_IN_A_SEAM_LEAST: u32 = 1_200;

/// Whether the colony is in the holding.
pub(super) fn alive(colony: &Colony<'_>, span: Span) -> Condition {
    Condition::by_day(About::Colony, span, |day| {
        if colony.is_here(day) {
            Finding::met_anyway(Because::Here)
        } else {
            Finding::broken(Because::NotHere)
        }
    })
}

/// Whether the colony stays at its apiary of the first day, whose conditions were checked.
pub(super) fn stands(colony: &Colony<'_>, span: Span) -> Option<Condition> {
    colony.moved_on?;
    Some(Condition::by_day(About::Apiary, span, |day| match colony.moved_on {
        Some((on, entry)) if on <= day => Finding::unknown(Because::Moved { on, entry }),
        _ => Finding::met_anyway(Because::Here),
    }))
}

/// Harvest supers that are on. Without supers, the leaflet's rules on them do not apply.
pub(super) fn supers(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let topic = Topic::SupersDuring;
    let condition = Condition::by_day(About::Topic(topic), span, |day| {
        let Some(on) = colony.history.supers_on(day) else { return Finding::met_anyway(Because::NoSupersOn) };
        match choice.terms(day).supers_during {
            Fact::NotKnown(term) => Finding::unknown(Because::NotStated { topic: term.topic() }),
            Fact::Known(Sourced { value, confidence, .. }) => {
                let because = Because::SupersOn { since: on.from, entry: on.entry, value };
                match (value, confidence) {
                    (SupersDuring::Off, _) => Finding::broken(because),
                    (_, Confidence::Document) => Finding::met_anyway(because),
                    _ => Finding::unknown(Because::NotDocumented { confidence }),
                }
            }
        }
    });
    let rule = choice.terms(span.from()).supers_during.known().and_then(|fact| fact.authority.rule());
    vec![Condition { rule, ..condition }]
}

/// A nectar flow while it is in. Without a flow, rules on flows do not apply. Advice is a separate condition beside
/// the label's rules.
///
/// Of the colony, it depends only on the brood that sets the stay of a course from each start day.
pub(super) fn flow(
    choice: &Choice,
    brood: &[Option<BroodState>],
    place: &Place<'_>,
    span: Span,
) -> Vec<Condition> {
    let brood = |start: Day| {
        let day = usize::try_from(start.days_since(span.from())).ok();
        day.and_then(|day| brood.get(day)).copied().flatten()
    };
    let topic = Topic::FlowDuring;
    let label = Condition::by_day(About::Topic(topic), span, |day| {
        let said = &choice.terms(day).flow_during;
        let documented = said.known().is_some_and(Sourced::is_documented);
        let found =
            in_flow(choice, brood(day), place, day, (said.known().map(|fact| fact.value), documented));
        match (found, said) {
            (Finding { state: State::Met, leans: true, .. }, said) if !documented => match said {
                Fact::Known(said) => Finding::unknown(Because::NotDocumented { confidence: said.confidence }),
                Fact::NotKnown(term) => Finding::unknown(Because::NotStated { topic: term.topic() }),
            },
            (found, _) => found,
        }
    });
    let rule = choice.terms(span.from()).flow_during.known().and_then(|fact| fact.authority.rule());
    let advice = rules(choice, topic, span, |rule, day| {
        let Says::FlowDuring { value } = rule.says else { return None };
        (rule.force == Force::Advice).then(|| in_flow(choice, brood(day), place, day, (Some(value), true)))
    });
    std::iter::once(Condition { rule, ..label }).chain(advice).collect()
}

/// The time right before a nectar flow, if the leaflet bans it.
pub(super) fn before_flow(choice: &Choice, place: &Place<'_>, span: Span) -> Option<Condition> {
    let bar = |day| choice.terms(day).flow_before;
    let fact = bar(span.from())?;
    let spans = &place.apiary.flow_spans;
    let condition = Condition::by_day(About::Topic(Topic::FlowBefore), span, |start| {
        let Some(bar) = bar(start) else { return Finding::met(Because::NoFlow { next: None }) };
        // The earliest day out, for the more favourable state of brood.
        let plan = choice.plan(start, None);
        let Fact::Known(out) = plan.least.map(|days| start.plus(days)) else {
            return Finding::unknown(Because::StayNotKnown { lacks: plan.lacks.clone() });
        };
        // It may come out on any day up to the last day allowed.
        let latest = plan.most.known().map_or(out, |days| start.plus(*days).max(out));
        let later = history::before_flow(spans, bar.value, latest, latest);
        match (history::before_flow(spans, bar.value, out, out), later) {
            (BeforeFlow::Barred(flow), _) => {
                Finding::broken(Because::RightBeforeFlow { out, from: flow.from, entry: flow.entry })
            }
            (BeforeFlow::Perhaps(flow), _)
            | (BeforeFlow::Free, BeforeFlow::Barred(flow) | BeforeFlow::Perhaps(flow)) => {
                Finding::unknown(Because::PerhapsBeforeFlow { out, from: flow.from, entry: flow.entry })
            }
            (BeforeFlow::NoFlowOnRecord, _) => Finding::unknown(Because::NoFlowOnRecordSince { out }),
            (BeforeFlow::Free, BeforeFlow::NoFlowOnRecord) => {
                Finding::unknown(Because::NoFlowOnRecordSince { out: latest })
            }
            (BeforeFlow::Free, BeforeFlow::Free) => Finding::met_anyway(Because::NoFlow { next: None }),
        }
    });
    Some(Condition { rule: fact.authority.rule(), ..condition })
}

/// Whether a course that starts on a day is in during a flow. If it would be out in time without brood but not with
/// brood, that is not known at the start.
fn in_flow(
    choice: &Choice,
    brood: Option<BroodState>,
    place: &Place<'_>,
    start: Day,
    (said, documented): (Option<Permission>, bool),
) -> Finding {
    let allowed = said == Some(Permission::Allowed) && documented;
    let through = |brood| choice.plan(start, brood).in_through(start);
    // Without an inspection, both states of brood are possible; and brood may appear while it is in.
    let shortest = match brood {
        Some(BroodState::Present) => BroodState::Present,
        Some(BroodState::AbsentOrLowest) | None => BroodState::AbsentOrLowest,
    };
    let long = through(None);
    let short = through(Some(shortest)).min(long);
    let meets =
        (Flow::meeting(&place.apiary.flows, start, short), Flow::meeting(&place.apiary.flows, start, long));
    if !allowed
        && matches!(meets, (Meets::None, Meets::None))
        && let Some(because) = perhaps_in_flow(choice, place, start)
    {
        return Finding::unknown(because);
    }
    if !allowed
        && matches!(meets, (Meets::None, Meets::None))
        && let Some(because) = stay_is_open(choice, place, start)
    {
        return Finding::unknown(because);
    }
    match meets {
        (Meets::None, Meets::None) => {
            let next = Flow::next_from(&place.apiary.flows, start).map(|flow| (flow.earliest(), flow.entry));
            Finding::met_anyway(Because::NoFlow { next })
        }
        _ if said == Some(Permission::Allowed) => Finding::met(Because::FlowAllowed),
        (Meets::NotRecorded(year), _) => Finding::unknown(Because::FlowsNotRecorded { year }),
        _ if said.is_none() => Finding::unknown(Because::NotStated { topic: Topic::FlowDuring }),
        (Meets::Surely(flow), _) => Finding::broken(Because::InFlow {
            early: flow.earliest(),
            from: flow.latest(),
            entry: flow.entry,
        }),
        (Meets::Perhaps(flow), _) => Finding::unknown(perhaps_meets(flow)),
        (Meets::None, Meets::Surely(flow) | Meets::Perhaps(flow)) => {
            Finding::unknown(Because::FlowTurnsOnBrood {
                without: short.next(),
                with: long.next(),
                entry: flow.entry,
            })
        }
        (Meets::None, Meets::NotRecorded(year)) => Finding::unknown(Because::FlowsNotRecorded { year }),
    }
}

fn perhaps_meets(flow: &Flow) -> Because {
    let (early, late) = (flow.earliest(), flow.latest());
    Because::PerhapsInFlow { early, late, forage: flow.forage.clone(), entry: flow.entry }
}

/// The confidence of the stay, if it is undocumented and a flow is near enough to matter. An unstated stay has been
/// handled before.
fn stay_is_open(choice: &Choice, place: &Place<'_>, start: Day) -> Option<Because> {
    let plan = Some(choice.plan(start, None)).filter(|plan| plan.ends != Ends::AtOnce)?;
    let confidence =
        plan.confidence.known().copied().filter(|confidence| *confidence != Confidence::Document)?;
    let near = place
        .apiary
        .flows
        .iter()
        .any(|flow| start <= flow.last() && flow.earliest() <= start.plus(STAY_MOST_DAYS));
    near.then(|| Because::StayNotDocumented { confidence, lacks: plan.undocumented.clone() })
}

/// Longer than any leaflet read allows a carrier to stay: four months. Common practice, no source.
const STAY_MOST_DAYS: u16 = 120;

/// A flow while it may still be in, if no least stay is stated: it is not known whether it is out by then.
fn perhaps_in_flow(choice: &Choice, place: &Place<'_>, start: Day) -> Option<Because> {
    let plan = choice.plan(start, None);
    let (first, last) = plan.perhaps_in()?;
    let first = start.plus(first);
    let last = last.map_or_else(|| start.plus(365), |days| start.plus(days));
    match Flow::meeting(&place.apiary.flows, first.min(last), last) {
        Meets::Surely(flow) | Meets::Perhaps(flow) => {
            let (from, entry, lacks) = (flow.earliest(), flow.entry, plan.lacks.clone());
            Some(Because::FlowBeforeStayIsKnown { from, entry, lacks })
        }
        Meets::NotRecorded(year) => Some(Because::FlowsNotRecorded { year }),
        Meets::None => None,
    }
}

/// The rule to treat only after the last harvest of the year.
pub(super) fn timing(choice: &Choice, colony: &Colony<'_>, place: &Place<'_>, span: Span) -> Vec<Condition> {
    rules(choice, Topic::Timing, span, |rule, day| {
        let Says::Timing { .. } = rule.says else { return None };
        if let Some(on) = colony.history.supers_on(day) {
            let because = Because::SupersOn { since: on.from, entry: on.entry, value: SupersDuring::Off };
            return Some(Finding::broken(because));
        }
        let year = day.year();
        let of_year = place.apiary.flows.iter().filter(|flow| flow.year == year);
        // The end of the flow is not recorded, or is only expected and may come later.
        let no_end = |flow: &&Flow| match flow.to {
            None => flow.latest() <= day,
            Some(to) => to < day && day <= flow.last(),
        };
        if let Some(flow) = of_year.clone().find(no_end) {
            return Some(Finding::unknown(perhaps_meets(flow)));
        }
        if let Some(flow) = of_year.clone().find(|flow| day <= flow.last()) {
            return Some(Finding::broken(Because::FlowStillToCome { from: flow.usual, entry: flow.entry }));
        }
        Some(match of_year.map(Flow::last).max() {
            Some(last) => Finding::met(Because::AfterLastFlow { last }),
            None => Finding::unknown(Because::FlowsNotRecorded { year }),
        })
    })
}

/// The required state of brood.
pub(super) fn brood(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    rules(choice, Topic::BroodNeed, span, |rule, day| {
        let Says::BroodNeed { value } = rule.says else { return None };
        let Some(seen) = colony.brood(day) else {
            return Some(Finding::unknown(Because::BroodNotSeen { last: None }));
        };
        if seen.on < day.minus(BROOD_NEED_TELLS_DAYS) {
            return Some(Finding::unknown(Because::BroodNotSeen { last: Some(seen.on) }));
        }
        let because = Because::BroodSeen { brood: seen.brood, on: seen.on, entry: seen.entry };
        let fits = match value {
            Brood::Absent => seen.brood == Brood::Absent,
            Brood::Lowest => seen.brood != Brood::Present,
            Brood::Present => seen.brood != Brood::Absent,
        };
        Some(if fits { Finding::met(because) } else { Finding::broken(because) })
    })
}

/// The required strength of the colony, and its boxes.
pub(super) fn strength(choice: &Choice, colony: &Colony<'_>, span: Span) -> Vec<Condition> {
    let mut conditions = rules(choice, Topic::ColonySize, span, |rule, day| {
        let Says::ColonySize { min_brood_frames, min_bees, .. } = rule.says else { return None };
        size(colony, day, min_brood_frames, min_bees)
    });
    conditions.extend(rules(choice, Topic::BroodBoxes, span, |rule, day| {
        let Says::BroodBoxes { max } = rule.says else { return None };
        let boxes = |seen: &Inspection| seen.brood_boxes.map(u32::from);
        Some(match colony.counts(day, boxes) {
            None => not_counted(colony, day, Counting::BroodBoxes, boxes),
            Some(count) if count.number <= u32::from(max) => {
                Finding::met(counted(Counting::BroodBoxes, count))
            }
            Some(count) => Finding::broken(counted(Counting::BroodBoxes, count)),
        })
    }));
    conditions
}

/// Checks frames covered, or else the number of bees. Without an estimate of the bees, seams give wide bounds. `None`
/// if the rule is in words only.
fn size(colony: &Colony<'_>, day: Day, frames: Option<u8>, bees: Option<u32>) -> Option<Finding> {
    let seams = |seen: &Inspection| seen.seams.map(u32::from);
    let estimate = |seen: &Inspection| seen.bees;
    let by = |count: Count, what, enough: bool| {
        if enough { Finding::met(counted(what, count)) } else { Finding::broken(counted(what, count)) }
    };
    let of_seams = colony.counts(day, seams);
    if let Some((least, count)) = frames.zip(of_seams) {
        return Some(by(count, Counting::SeamsOfBees, count.number >= u32::from(least)));
    }
    // Only frames can meet or break a rule on frames, so that counting them later never reverses an answer.
    if frames.is_some() {
        return Some(not_counted(colony, day, Counting::SeamsOfBees, seams));
    }
    if let Some((least, count)) = bees.zip(colony.counts(day, estimate)) {
        return Some(by(count, Counting::Bees, count.number >= least));
    }
    if let Some((least, count)) = bees.zip(of_seams) {
        if count.number.saturating_mul(BEES_IN_A_SEAM_LEAST) >= least {
            return Some(Finding::met(counted(Counting::SeamsOfBees, count)));
        }
        if count.number.saturating_mul(BEES_IN_A_SEAM_MOST) < least {
            return Some(Finding::broken(counted(Counting::SeamsOfBees, count)));
        }
    }
    bees.map(|_| not_counted(colony, day, Counting::Bees, estimate))
}

fn counted(what: Counting, count: Count) -> Because {
    Because::Counted { what, count: count.number, on: count.on, entry: count.entry }
}

fn not_counted(
    colony: &Colony<'_>,
    day: Day,
    what: Counting,
    pick: impl Fn(&Inspection) -> Option<u32>,
) -> Finding {
    let last = colony.counted(day, pick).map(|count| (count.number, count.on));
    Finding::unknown(Because::NotCounted { what, last })
}
