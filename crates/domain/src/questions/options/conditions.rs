//! The conditions of one choice: those of the apiary, worked out once for all its colonies, and those of the colony.

mod colony;
mod courses;
mod site;

use super::about::About;
use super::choice::Choice;
use super::colony::Colony;
use super::date_range::Span;
use super::place::Place;
use super::reason::Because;
use super::state::{Condition, Finding, State};
use crate::basics::calendar::Day;
use crate::basics::topic::Topic;
use crate::rules::leaflet::rule::BroodState;
use crate::rules::leaflet::{Force, Rule, Says};

/// The conditions that depend only on the apiary.
pub(super) fn of_place(choice: &Choice, place: &Place<'_>, span: Span) -> Vec<Condition> {
    let mut conditions = vec![directions(choice, span), site::access(place, span)];
    conditions.extend(site::needs(choice, place, span));
    conditions.extend(site::temperatures(choice, place, span));
    conditions.extend(rules(choice, Topic::Season, span, |rule, day| {
        let Says::Season { from_day, to_day } = rule.says else { return None };
        // Each dose needs one suitable day within its range.
        let plan = choice.plan(day, None);
        let inside = plan
            .dose_days()
            .into_iter()
            .all(|(from, by)| (from..=by).any(|later| from_day.to_covers(to_day, day.plus(later))));
        let because = Because::InSeason { from: from_day, to: to_day, inside };
        Some(match (inside, plan.later_doses_open()) {
            (false, _) => Finding::broken(because),
            (true, false) => Finding::met(because),
            (true, true) => Finding::unknown(Because::StayNotKnown { lacks: plan.lacks.clone() }),
        })
    }));
    conditions
}

/// The conditions that depend on the nectar flows of the apiary and, of the colony, only on the brood that sets the stay
/// of a course from each start day.
pub(super) fn of_flows(
    choice: &Choice,
    brood: &[Option<BroodState>],
    place: &Place<'_>,
    span: Span,
) -> Vec<Condition> {
    let mut conditions = colony::flow(choice, brood, place, span);
    conditions.extend(colony::before_flow(choice, place, span));
    conditions
}

/// The conditions that depend on the colony. The place comes with its conditions of flows.
pub(super) fn of_colony(
    choice: &Choice,
    colony: &Colony<'_>,
    place: Option<(&Place<'_>, &[Condition])>,
    span: Span,
) -> Vec<Condition> {
    let mut conditions = vec![colony::alive(colony, span)];
    if let Some((place, of_flows)) = place {
        conditions.extend_from_slice(of_flows);
        conditions.extend(colony::timing(choice, colony, place, span));
    } else {
        let found = Finding::unknown(Because::ApiaryNotKnown);
        conditions.push(Condition::throughout(About::Apiary, span, found));
    }
    conditions.extend(colony::stands(colony, span));
    conditions.extend(colony::supers(choice, colony, span));
    conditions.extend(colony::brood(choice, colony, span));
    conditions.extend(colony::strength(choice, colony, span));
    conditions.extend(courses::inside(choice, colony, span));
    conditions.extend(courses::before(choice, colony, span));
    conditions
}

/// Whether the leaflet has directions in force on the day.
fn directions(choice: &Choice, span: Span) -> Condition {
    let rules = || choice.rules.iter().filter_map(|index| choice.leaflet.rules.get(*index));
    Condition::by_day(About::Directions, span, |day| {
        if rules().any(|rule| rule.force != Force::Advice && rule.is_in_force(day)) {
            Finding::met_anyway(Because::HasDirections)
        } else {
            Finding::unknown(Because::NoDirections)
        }
    })
}

/// One condition for each rule on a topic. A value that was not read in a document for this country never supports a
/// yes.
fn rules(
    choice: &Choice,
    topic: Topic,
    span: Span,
    look: impl Fn(&Rule, Day) -> Option<Finding>,
) -> Vec<Condition> {
    let conditions = choice.rules_on(topic).filter_map(|(index, rule)| {
        // A rule with nothing to check makes no condition.
        look(rule, span.from())?;
        let documented = choice.is_documented(rule);
        let condition = Condition::by_day(About::Topic(topic), span, |day| {
            if !rule.is_in_force(day) {
                return Finding::met_anyway(Because::NotInForce);
            }
            let Some(found) = look(rule, day) else { return Finding::met_anyway(Because::NotInForce) };
            // Advice never decides, so it need not be documented.
            let decides = rule.force != Force::Advice;
            if decides && found.leans && found.state == State::Met && !documented {
                return Finding::unknown(Because::NotDocumented { confidence: rule.confidence });
            }
            found
        });
        let condition = Condition { rule: Some(index), ..condition };
        Some(if rule.force == Force::Advice { condition.advice() } else { condition })
    });
    conditions.collect()
}
