//! Access, power, ground and temperatures.

use super::rules;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
use crate::basics::topic::Topic;
use crate::basics::words::{Access, Ground, Power};
use crate::facts::history::Plan;
use crate::questions::options::about::About;
use crate::questions::options::choice::Choice;
use crate::questions::options::date_range::Span;
use crate::questions::options::place::Place;
use crate::questions::options::reason::{Because, both};
use crate::questions::options::state::{Condition, Finding, State};
use crate::questions::options::weather::{self, Limits};
use crate::rules::leaflet::Says;
use crate::rules::leaflet::rule::{Need, TemperatureWindow};

/// Whether the apiary can be reached on the day of placing.
pub(super) fn access(place: &Place<'_>, span: Span) -> Condition {
    Condition::by_day(About::Access, span, |day| reached(place, day))
}

fn reached(place: &Place<'_>, on: Day) -> Finding {
    let has = place.access(on);
    let because = Because::Access { has, on };
    match has {
        Fact::Known((Access::None, _)) => Finding::broken(because),
        Fact::Known(_) => Finding::met_anyway(because),
        Fact::NotKnown(_) => Finding::unknown(because),
    }
}

/// What the treatment requires of the site. These requirements apply whatever their source: they are physical. An
/// inferred requirement that the site meets never blocks an option.
pub(super) fn needs(choice: &Choice, place: &Place<'_>, span: Span) -> Vec<Condition> {
    let mut conditions = Vec::new();
    for (index, rule) in choice.rules_on(Topic::Needs) {
        let Says::Needs { list } = &rule.says else { continue };
        for need in list {
            let look = |day: Day| match need {
                _ if !rule.is_in_force(day) => Some(Finding::met_anyway(Because::NotInForce)),
                Need::MainsOrGenerator => Some(power(place, day, *need, &[Power::Mains, Power::Generator])),
                Need::Battery => {
                    Some(power(place, day, *need, &[Power::Battery, Power::Mains, Power::Generator]))
                }
                Need::DryGround => Some(ground(place, day)),
                Need::ReturnVisit => Some(return_visits(choice, place, day)),
                Need::CarryInKit | Need::HiveOpened => None,
            };
            if look(span.from()).is_none() {
                continue;
            }
            let condition = Condition::by_day(About::Need(*need), span, |day| {
                look(day).unwrap_or_else(|| Finding::met_anyway(Because::NotInForce))
            });
            conditions.push(Condition { rule: Some(index), ..condition });
        }
    }
    conditions
}

fn power(place: &Place<'_>, day: Day, need: Need, enough: &[Power]) -> Finding {
    let has = place.power(day);
    let because = Because::Power { need, has };
    match has {
        Fact::Known((power, _)) if enough.contains(&power) => Finding::met_anyway(because),
        Fact::Known(_) => Finding::broken(because),
        Fact::NotKnown(_) => Finding::unknown(because),
    }
}

fn ground(place: &Place<'_>, day: Day) -> Finding {
    let has = place.ground(day);
    let because = Because::Ground { has };
    match has {
        Fact::Known((Ground::Dry, _)) => Finding::met_anyway(because),
        Fact::Known((Ground::Wet | Ground::Flooded, _)) => Finding::broken(because),
        // No entry would help: the assumption replaces the record.
        Fact::NotKnown(_) if place.assumed_wet(day) => Finding::unknown(Because::GroundOnceAssumedWet),
        Fact::NotKnown(_) => Finding::unknown(because),
    }
}

/// Whether the apiary can be reached for every later dose, and on the earliest day out.
fn return_visits(choice: &Choice, place: &Place<'_>, start: Day) -> Finding {
    let plan = choice.plan(start, None);
    let mut visits: Vec<(u16, u16)> = plan.dose_days();
    visits.retain(|(from, _)| *from > 0);
    let on = |days: u16| reached(place, start.plus(days));
    // One reachable day for each visit is enough.
    let mut found: Vec<Finding> = visits.into_iter().map(|(from, by)| best((from..=by).map(on))).collect();
    if plan.ends.in_a_visit() {
        found.push(match (plan.least, plan.most) {
            (Fact::Known(least), Fact::Known(most)) => best((least..=most.max(least)).map(on)),
            (Fact::Known(least), Fact::NotKnown(_)) => on(least),
            // The earliest day out may be any of these days: the last day is certain only if all of them are
            // reachable.
            (Fact::NotKnown(_), Fact::Known(most)) => {
                worst((plan.surely_in()..=most.max(plan.surely_in())).map(on))
            }
            (Fact::NotKnown(_), Fact::NotKnown(_)) => stay_not_known(plan),
        });
    }
    if plan.later_doses_open() {
        found.push(stay_not_known(plan));
    }
    worst(found.into_iter())
}

/// The days that count are not known, because too little of the course is stated.
fn stay_not_known(plan: &Plan) -> Finding {
    Finding::unknown(Because::StayNotKnown { lacks: plan.lacks.clone() })
}

/// The best of several days: any one of them is enough.
fn best(days: impl Iterator<Item = Finding>) -> Finding {
    one_of(days, |best, next| rank(next) < rank(best))
}

/// The worst of several: all of them must hold.
fn worst(each: impl Iterator<Item = Finding>) -> Finding {
    one_of(each, |worst, next| rank(next) > rank(worst))
}

/// Picks one finding. If it is unknown for lack of temperatures, it also asks for those of all the others.
fn one_of(each: impl Iterator<Item = Finding>, better: impl Fn(&Finding, &Finding) -> bool) -> Finding {
    let mut untold = None;
    let one = each.reduce(|one, next| {
        untold = both(both(untold, one.because.untold()), next.because.untold());
        if better(&one, &next) { next } else { one }
    });
    // Without stated days, no day counts.
    let Some(mut one) = one else { return Finding::unknown(Because::StayNotKnown { lacks: Vec::new() }) };
    if one.state == State::Unknown {
        one.because.also_untold(untold);
    }
    one
}

/// Sort key: met, then expected to be met, then open, then not expected to be met, then broken.
fn rank(found: &Finding) -> (u8, Option<bool>) {
    (
        found.state.place(),
        found.expected.map(|holds| !holds).or_else(|| (found.state == State::Unknown).then_some(false)),
    )
}

/// Temperatures on the days that each rule names.
pub(super) fn temperatures(choice: &Choice, place: &Place<'_>, span: Span) -> Vec<Condition> {
    rules(choice, Topic::Temperature, span, |rule, start| {
        let Says::Temperature { window, first_days, min_tenths_c: min, max_tenths_c: max } = rule.says else {
            return None;
        };
        let limits = Limits { min, max };
        let sky = &place.apiary.weather;
        let first = |days: u16| (0..days).map(move |day| start.plus(day));
        // If the stay is not stated, the days on which it is certainly in may break the rule; only all days on which
        // it may be in can meet it.
        let over_stay = |look: &dyn Fn(u16) -> Finding| {
            let plan = choice.plan(start, None);
            if let Fact::Known(days) = plan.least {
                let found = look(days.max(1));
                // A stay that is not documented may be longer than the days that were checked.
                let weak = plan.confidence.known().filter(|confidence| **confidence != Confidence::Document);
                return match weak {
                    Some(&confidence) if found.state == State::Met => {
                        Finding::unknown(Because::MayStayLonger {
                            confidence,
                            lacks: plan.undocumented.clone(),
                        })
                    }
                    Some(_) | None => found,
                };
            }
            let sure = look(plan.surely_in());
            if sure.state == State::Broken {
                return sure;
            }
            let most =
                plan.most.known().filter(|_| !plan.later_doses_open()).map(|days| look((*days).max(1)));
            most.filter(|found| found.state == State::Met).unwrap_or_else(|| stay_not_known(plan))
        };
        Some(match window {
            TemperatureWindow::MaximumOnPlacingDay => weather::maxima(sky, first(1), limits),
            TemperatureWindow::MaximumInFirstDays => {
                weather::maxima(sky, first(first_days.unwrap_or(1)), limits)
            }
            TemperatureWindow::MaximumOverStay => {
                over_stay(&|days| weather::maxima(sky, first(days), limits))
            }
            // A mean over part of the stay says nothing about the whole stay.
            TemperatureWindow::MeanOverStay => {
                let plan = choice.plan(start, None);
                match plan.least {
                    Fact::Known(days) => weather::mean(sky, first(days.max(1)), limits),
                    Fact::NotKnown(_) => stay_not_known(plan),
                }
            }
            TemperatureWindow::AtUse => {
                let plan = choice.plan(start, None);
                // A later dose may be given on any day from its earliest to its latest.
                let each = plan.dose_days().into_iter().map(|(from, by)| {
                    best(
                        (from..=by)
                            .map(|day| weather::moments(sky, std::iter::once(start.plus(day)), limits)),
                    )
                });
                let open = plan.later_doses_open().then(|| stay_not_known(plan));
                worst(each.chain(open))
            }
            // The keeper sees to it when mixing: it is listed under `see_to`.
            TemperatureWindow::Product => return None,
        })
    })
}
