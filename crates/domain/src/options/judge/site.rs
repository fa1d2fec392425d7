//! Access, power, ground and temperatures.

use super::rules;
use crate::calendar::Day;
use crate::leaflet::rule::{Need, TemperatureWindow};
use crate::leaflet::{Says, Topic};
use crate::options::because::{Because, ToldBy};
use crate::options::choice::Choice;
use crate::options::place::Place;
use crate::options::plan::Plan;
use crate::options::span::Span;
use crate::options::state::{Condition, Found, State};
use crate::options::weather::Limits;
use crate::words::{Access, Ground, Power};

/// Whether the apiary can be reached on the day of placing.
pub(super) fn access(place: &Place<'_>, span: Span) -> Condition {
    Condition::by_day("access", span, |day| reached(place, day))
}

fn reached(place: &Place<'_>, on: Day) -> Found {
    match place.access(on) {
        Some((Access::None, by)) => {
            Found::broken(Because::Access { has: Some(Access::None), by: Some(by), on })
        }
        Some((access, by)) => Found::met_anyway(Because::Access { has: Some(access), by: Some(by), on }),
        None => Found::unknown(Because::Access { has: None, by: None, on }),
    }
}

/// What giving it needs of the site. That is in the nature of the thing, so it binds whoever says it, and an inferred need
/// that the site meets stands in nobody's way.
pub(super) fn needs(choice: &Choice, place: &Place<'_>, span: Span) -> Vec<Condition> {
    let mut conditions = Vec::new();
    for (index, rule) in choice.rules_on(Topic::Needs) {
        let Says::Needs { list } = &rule.says else { continue };
        for need in list {
            let look = |day: Day| match need {
                _ if !rule.is_in_force(day) => Some(Found::met_anyway(Because::NotInForce)),
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
            let condition = Condition::by_day(about(*need), span, |day| {
                look(day).unwrap_or_else(|| Found::met_anyway(Because::NotInForce))
            });
            conditions.push(Condition { rule: Some(index), ..condition });
        }
    }
    conditions
}

const fn about(need: Need) -> &'static str {
    match need {
        Need::MainsOrGenerator | Need::Battery => "power",
        Need::DryGround => "ground",
        Need::ReturnVisit => "return_visits",
        Need::CarryInKit => "carry_in_kit",
        Need::HiveOpened => "hive_opened",
    }
}

fn power(place: &Place<'_>, day: Day, need: Need, enough: &[Power]) -> Found {
    let told = place.power(day);
    let (has, by): (Option<Power>, Option<ToldBy>) = told.unzip();
    let because = Because::Power { need, has, by };
    match has {
        None => Found::unknown(because),
        Some(power) if enough.contains(&power) => Found::met_anyway(because),
        Some(_) => Found::broken(because),
    }
}

fn ground(place: &Place<'_>, day: Day) -> Found {
    let (has, by) = place.ground(day).unzip();
    let because = Because::Ground { has, by };
    match has {
        None => Found::unknown(because),
        Some(Ground::Dry) => Found::met_anyway(because),
        Some(Ground::Wet | Ground::Flooded) => Found::broken(because),
    }
}

/// Whether the apiary can be reached for every later dose, and on the day it may come out at the earliest.
fn return_visits(choice: &Choice, place: &Place<'_>, start: Day) -> Found {
    let Some(plan) = choice.plan(start, None) else { return Found::unknown(Because::StayNotKnown) };
    let mut visits: Vec<(u16, u16)> = plan.dose_days();
    visits.retain(|(from, _)| *from > 0);
    let on = |days: u16| reached(place, start.plus(days));
    // One day on which the apiary can be reached is enough.
    let mut found: Vec<Found> = visits.into_iter().map(|(from, by)| best((from..=by).map(on))).collect();
    if plan.ends.in_a_visit() {
        found.push(match (plan.least, plan.most) {
            (Some(least), most) => best((least..=most.unwrap_or(least).max(least)).map(on)),
            // Any of these days may be too early: only if all of them will do is the last one sure.
            (None, Some(most)) => worst((plan.surely_in()..=most.max(plan.surely_in())).map(on)),
            (None, None) => Found::unknown(Because::StayNotKnown),
        });
    }
    if plan.later_doses_open() {
        found.push(Found::unknown(Because::StayNotKnown));
    }
    worst(found.into_iter())
}

/// The best of several days, any of which will do.
fn best(days: impl Iterator<Item = Found>) -> Found {
    let best = days.reduce(|best, next| if rank(&next) < rank(&best) { next } else { best });
    best.unwrap_or_else(|| Found::unknown(Because::StayNotKnown))
}

/// The worst of several, all of which must do.
fn worst(each: impl Iterator<Item = Found>) -> Found {
    let worst = each.reduce(|worst, next| if rank(&next) > rank(&worst) { next } else { worst });
    worst.unwrap_or_else(|| Found::unknown(Because::StayNotKnown))
}

/// Met before expected, before open, before not expected, before broken.
fn rank(found: &Found) -> (State, Option<bool>) {
    (
        found.state,
        found.expected.map(|holds| !holds).or_else(|| (found.state == State::Unknown).then_some(false)),
    )
}

/// Temperatures, each by the days that its rule speaks of.
pub(super) fn temperatures(choice: &Choice, place: &Place<'_>, span: Span) -> Vec<Condition> {
    rules(choice, Topic::Temperature, span, |rule, start| {
        let Says::Temperature { window, first_days, min_tenths_c: min, max_tenths_c: max } = rule.says else {
            return None;
        };
        let limits = Limits { min, max };
        let weather = &place.weather;
        let first = |days: u16| (0..days).map(move |day| start.plus(day));
        // Where the stay is not stated, the days that are sure may break the rule; only all on which it may be in keep it.
        let over_stay = |look: &dyn Fn(u16) -> Found| {
            let Some(plan) = choice.plan(start, None) else { return Found::unknown(Because::StayNotKnown) };
            if let Some(days) = plan.least {
                return look(days.max(1));
            }
            let sure = look(plan.surely_in());
            if sure.state == State::Broken {
                return sure;
            }
            let most = plan.most.filter(|_| !plan.later_doses_open()).map(|days| look(days.max(1)));
            most.filter(|found| found.state == State::Met)
                .unwrap_or_else(|| Found::unknown(Because::StayNotKnown))
        };
        Some(match window {
            TemperatureWindow::MaximumOnPlacingDay => weather.maxima(first(1), limits),
            TemperatureWindow::MaximumInFirstDays => weather.maxima(first(first_days.unwrap_or(1)), limits),
            TemperatureWindow::MaximumOverStay => over_stay(&|days| weather.maxima(first(days), limits)),
            // A mean over a part of the stay says nothing of the whole.
            TemperatureWindow::MeanOverStay => match choice.plan(start, None).and_then(|plan| plan.least) {
                Some(days) => weather.mean(first(days.max(1)), limits),
                None => Found::unknown(Because::StayNotKnown),
            },
            TemperatureWindow::AtUse => {
                let doses = choice.plan(start, None).map_or_else(|| vec![(0, 0)], Plan::dose_days);
                // A later dose may be given on any day from its earliest to its latest.
                let each = doses.into_iter().map(|(from, by)| {
                    best((from..=by).map(|day| weather.moments(std::iter::once(start.plus(day)), limits)))
                });
                let later = choice.plan(start, None).is_some_and(Plan::later_doses_open);
                let open = later.then(|| Found::unknown(Because::StayNotKnown));
                worst(each.chain(open))
            }
            // The keeper sees to it when mixing: it is told among the things to do.
            TemperatureWindow::Product => return None,
        })
    })
}
