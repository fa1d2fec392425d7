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
use crate::questions::options::reason::{Because, ToldBy, both};
use crate::questions::options::state::{Condition, Finding, State};
use crate::questions::options::weather::{self, Limits};
use crate::rules::leaflet::Says;
use crate::rules::leaflet::rule::{Need, TemperatureWindow};

/// Whether the apiary can be reached on the day of placing.
pub(super) fn access(place: &Place<'_>, span: Span) -> Condition {
    Condition::by_day(About::Access, span, |day| reached(place, day))
}

fn reached(place: &Place<'_>, on: Day) -> Finding {
    match place.access(on) {
        Some((Access::None, by)) => {
            Finding::broken(Because::Access { has: Some(Access::None), by: Some(by), on })
        }
        Some((access, by)) => Finding::met_anyway(Because::Access { has: Some(access), by: Some(by), on }),
        None => Finding::unknown(Because::Access { has: None, by: None, on }),
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
    let told = place.power(day);
    let (has, by): (Option<Power>, Option<ToldBy>) = told.unzip();
    let because = Because::Power { need, has, by };
    match has {
        None => Finding::unknown(because),
        Some(power) if enough.contains(&power) => Finding::met_anyway(because),
        Some(_) => Finding::broken(because),
    }
}

fn ground(place: &Place<'_>, day: Day) -> Finding {
    let (has, by) = place.ground(day).unzip();
    // What was assumed in the question is not told by any entry.
    let assumed = has.is_none() && place.assumed_wet(day);
    let because = Because::Ground { has, by: by.or(assumed.then_some(ToldBy::Question)) };
    match has {
        None => Finding::unknown(because),
        Some(Ground::Dry) => Finding::met_anyway(because),
        Some(Ground::Wet | Ground::Flooded) => Finding::broken(because),
    }
}

/// Whether the apiary can be reached for every later dose, and on the day it may come out at the earliest.
fn return_visits(choice: &Choice, place: &Place<'_>, start: Day) -> Finding {
    let plan = choice.plan(start, None);
    let mut visits: Vec<(u16, u16)> = plan.dose_days();
    visits.retain(|(from, _)| *from > 0);
    let on = |days: u16| reached(place, start.plus(days));
    // One day on which the apiary can be reached is enough.
    let mut found: Vec<Finding> = visits.into_iter().map(|(from, by)| best((from..=by).map(on))).collect();
    if plan.ends.in_a_visit() {
        found.push(match (plan.least, plan.most) {
            (Fact::Known(least), Fact::Known(most)) => best((least..=most.max(least)).map(on)),
            (Fact::Known(least), Fact::NotKnown(_)) => on(least),
            // Any of these days may be too early: only if all of them will do is the last one sure.
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

/// Which days count is not known, since so much is not stated of how the course runs.
fn stay_not_known(plan: &Plan) -> Finding {
    Finding::unknown(Because::StayNotKnown { lacks: plan.lacks.clone() })
}

/// The best of several days, any of which will do.
fn best(days: impl Iterator<Item = Finding>) -> Finding {
    one_of(days, |best, next| rank(next) < rank(best))
}

/// The worst of several, all of which must do.
fn worst(each: impl Iterator<Item = Finding>) -> Finding {
    one_of(each, |worst, next| rank(next) > rank(worst))
}

/// One of several; where that is not known for want of temperatures, it asks for those of all the others too.
fn one_of(each: impl Iterator<Item = Finding>, better: impl Fn(&Finding, &Finding) -> bool) -> Finding {
    let mut untold = None;
    let one = each.reduce(|one, next| {
        untold = both(both(untold, one.because.untold()), next.because.untold());
        if better(&one, &next) { next } else { one }
    });
    // No day counts where nobody stated which do.
    let Some(mut one) = one else { return Finding::unknown(Because::StayNotKnown { lacks: Vec::new() }) };
    if one.state == State::Unknown {
        one.because.also_untold(untold);
    }
    one
}

/// Met before expected, before open, before not expected, before broken.
fn rank(found: &Finding) -> (u8, Option<bool>) {
    (
        found.state.place(),
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
        let sky = &place.apiary.weather;
        let first = |days: u16| (0..days).map(move |day| start.plus(day));
        // Where the stay is not stated, the days that are sure may break the rule; only all on which it may be in keep it.
        let over_stay = |look: &dyn Fn(u16) -> Finding| {
            let plan = choice.plan(start, None);
            if let Fact::Known(days) = plan.least {
                let found = look(days.max(1));
                // A stay that no document carries may be longer than the days that were looked at.
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
            // A mean over a part of the stay says nothing of the whole.
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
            // The keeper sees to it when mixing: it is told among the things to do.
            TemperatureWindow::Product => return None,
        })
    })
}
