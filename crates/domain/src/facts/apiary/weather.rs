//! Outside temperatures of an apiary: measured, forecast, or usual for the month.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::basics::words::TemperatureStage;
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::{DayTemperature, Temperature, TemperatureNormals};

/// The source of a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Origin {
    /// Measured.
    Measured,
    /// Forecast.
    Forecast,
    /// Usual for the month.
    UsualYears,
}

/// The temperatures of an apiary.
#[derive(Debug, Default)]
pub(crate) struct Weather {
    told: BTreeMap<Day, Told>,
    /// Lowest and highest by month, January first.
    usual: [Option<(Celsius, Celsius)>; 12],
}

#[derive(Debug, Clone, Copy)]
struct Told {
    low: Celsius,
    high: Celsius,
    stage: TemperatureStage,
    entry: EntryId,
}

/// How many days ahead a forecast is used. Common practice, no source: daily forecasts reach about two weeks.
const FORECAST_REACHES_DAYS: u16 = 16;

/// The temperatures of one day, as far as known.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sky {
    pub(crate) low: Celsius,
    pub(crate) high: Celsius,
    pub(crate) origin: Origin,
    /// The entry with the temperature. `None` for a usual year.
    pub(crate) entry: Option<EntryId>,
}

impl Weather {
    /// Measured temperatures replace forecasts. Of two of a kind, the one recorded for a later day counts, then the
    /// later entry.
    pub(super) fn of(file: &[Arc<Record>]) -> Weather {
        let mut weather = Weather::default();
        // Files are in order of the events, so the last entry counts.
        for record in file {
            if let Some(body) = record.body::<Temperature>() {
                let reaches = record.on.plus(FORECAST_REACHES_DAYS);
                let told_of =
                    |day: &&DayTemperature| body.stage == TemperatureStage::Measured || day.day <= reaches;
                for day in body.days.iter().filter(told_of) {
                    let told = Told { low: day.min_c, high: day.max_c, stage: body.stage, entry: record.id };
                    let measured = weather
                        .told
                        .get(&day.day)
                        .is_some_and(|known| known.stage == TemperatureStage::Measured);
                    if body.stage == TemperatureStage::Measured || !measured {
                        weather.told.insert(day.day, told);
                    }
                }
            }
            if let Some(body) = record.body::<TemperatureNormals>() {
                for normal in &body.months {
                    let month = usize::from(normal.month.saturating_sub(1));
                    if let Some(usual) = weather.usual.get_mut(month) {
                        *usual = Some((normal.min_c, normal.max_c));
                    }
                }
            }
        }
        weather
    }

    /// Whether the day was measured or forecast.
    pub(crate) fn is_told(&self, day: Day) -> bool {
        self.told.contains_key(&day)
    }

    /// The temperatures of a day; the usual ones if the day was neither measured nor forecast.
    pub(crate) fn sky(&self, on: Day) -> Option<Sky> {
        if let Some(told) = self.told.get(&on) {
            let origin = match told.stage {
                TemperatureStage::Measured => Origin::Measured,
                TemperatureStage::Forecast => Origin::Forecast,
            };
            return Some(Sky { low: told.low, high: told.high, origin, entry: Some(told.entry) });
        }
        let (low, high) = (*self.usual.get(on.month0())?)?;
        Some(Sky { low, high, origin: Origin::UsualYears, entry: None })
    }
}
