//! Checks the temperature rules of leaflets for the days of a course, with the temperatures of the apiary.

use super::reason::{Because, Measure, Untold, both};
use super::state::Finding;
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::facts::apiary::{Origin, Sky, Weather};

/// The temperature limits of a rule.
#[derive(Debug, Clone, Copy)]
pub(super) struct Limits {
    pub(super) min: Option<i16>,
    pub(super) max: Option<i16>,
}

impl Limits {
    fn hold(self, tenths: i16) -> bool {
        self.min.is_none_or(|min| min <= tenths) && self.max.is_none_or(|max| tenths <= max)
    }
}

/// Checks the maximum of each day.
pub(super) fn maxima(weather: &Weather, days: impl Iterator<Item = Day>, limits: Limits) -> Finding {
    each(weather, days, Measure::Maximum, |sky| (limits.hold(sky.high.tenths()), sky.high))
}

/// Checks that each day is within the limits at some time: the temperature passes through everything between minimum
/// and maximum.
pub(super) fn moments(weather: &Weather, days: impl Iterator<Item = Day>, limits: Limits) -> Finding {
    each(weather, days, Measure::SomeMoment, |sky| {
        let (low, high) = (sky.low.tenths(), sky.high.tenths());
        let warm_enough = limits.min.is_none_or(|min| min <= high);
        let cool_enough = limits.max.is_none_or(|max| low <= max);
        (warm_enough && cool_enough, if cool_enough { sky.high } else { sky.low })
    })
}

fn each(
    weather: &Weather,
    days: impl Iterator<Item = Day>,
    measure: Measure,
    look: impl Fn(&Sky) -> (bool, Celsius),
) -> Finding {
    let mut seen: Option<(Celsius, Celsius, Origin)> = None;
    let mut entry = None;
    let mut missing = None;
    let mut unusual = None;
    let mut untold: Untold = None;
    for day in days {
        if !weather.is_told(day) {
            untold = both(untold, Some((day, day)));
        }
        let Some(sky) = weather.sky(day) else {
            missing = missing.or(Some(day));
            continue;
        };
        let (holds, value) = look(&sky);
        entry = entry.or(sky.entry);
        if !holds {
            let out = Because::OutOfBounds {
                measure,
                on: day,
                value,
                origin: sky.origin,
                entry: sky.entry,
                untold: None,
            };
            if sky.origin != Origin::UsualYears {
                return Finding::broken(out);
            }
            unusual = unusual.or(Some(out));
        }
        seen = Some(seen.map_or((value, value, sky.origin), |(lowest, highest, origin)| {
            (lowest.min(value), highest.max(value), origin.max(sky.origin))
        }));
    }
    match (unusual, missing, seen) {
        (Some(mut out), _, _) => {
            out.also_untold(untold);
            Finding::expected(false, out)
        }
        (None, Some(first), _) => Finding::unknown(Because::NoTemperature { measure, first, untold }),
        (None, None, Some((lowest, highest, origin))) => {
            told(Because::Warm { measure, lowest, highest, origin, entry, untold }, origin)
        }
        (None, None, None) => Finding::unknown(Because::StayNotKnown { lacks: Vec::new() }),
    }
}

/// Checks the mean of all days, each taken as the mean of minimum and maximum.
///
/// Common practice, no source: leaflets that mention a daily mean do not define it.
pub(super) fn mean(weather: &Weather, days: impl Iterator<Item = Day>, limits: Limits) -> Finding {
    let measure = Measure::Mean;
    let (mut sum, mut count) = (0_i32, 0_i32);
    let (mut last, mut missing) = (None, None);
    let mut untold: Untold = None;
    let mut origin = Origin::Measured;
    for day in days {
        if !weather.is_told(day) {
            untold = both(untold, Some((day, day)));
        }
        let Some(sky) = weather.sky(day) else {
            missing = missing.or(Some(day));
            continue;
        };
        sum += i32::from(sky.low.tenths()) + i32::from(sky.high.tenths());
        count += 1;
        origin = origin.max(sky.origin);
        last = Some((day, sky.entry));
    }
    if let Some(first) = missing {
        return Finding::unknown(Because::NoTemperature { measure, first, untold });
    }
    let not_known = || Finding::unknown(Because::StayNotKnown { lacks: Vec::new() });
    let Some((on, entry)) = last else { return not_known() };
    let holds = limits.min.is_none_or(|min| sum >= i32::from(min) * 2 * count)
        && limits.max.is_none_or(|max| sum <= i32::from(max) * 2 * count);
    // Rounded to the nearest tenth, for display only.
    let mean = (sum + count).div_euclid(2 * count);
    let Some(value) = i16::try_from(mean).ok().and_then(Celsius::from_tenths) else {
        return not_known();
    };
    let warm = Because::Warm { measure, lowest: value, highest: value, origin, entry, untold };
    match (holds, origin) {
        (true, _) => told(warm, origin),
        (false, Origin::UsualYears) => {
            Finding::expected(false, Because::OutOfBounds { measure, on, value, origin, entry, untold })
        }
        (false, _) => Finding::broken(Because::OutOfBounds { measure, on, value, origin, entry, untold }),
    }
}

/// Met if measured or forecast; from usual years it is only expected.
fn told(because: Because, origin: Origin) -> Finding {
    if origin == Origin::UsualYears { Finding::expected(true, because) } else { Finding::met(because) }
}
