//! Outside temperatures of an apiary: measured, forecast, or of usual years.

use std::collections::BTreeMap;
use std::sync::Arc;

use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::basics::words::TemperatureStage;
use crate::facts::holding::Record;
use crate::journal::entry::EntryId;
use crate::journal::event::{DayTemperature, Temperature, TemperatureNormals};

/// Where a temperature comes from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Origin {
    /// Measured.
    Measured,
    /// Forecast.
    Forecast,
    /// What the month is like in usual years.
    UsualYears,
}

/// The temperatures of an apiary.
#[derive(Debug, Default)]
pub(crate) struct Weather {
    told: BTreeMap<Day, Told>,
    /// By month, January first.
    usual: [Option<(Celsius, Celsius)>; 12],
}

#[derive(Debug, Clone, Copy)]
struct Told {
    low: Celsius,
    high: Celsius,
    stage: TemperatureStage,
    entry: EntryId,
}

/// How many days ahead a forecast tells. Common practice, no source: forecasts day by day reach about two weeks.
const FORECAST_REACHES_DAYS: u16 = 16;

/// The temperatures of one day, as far as known.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sky {
    pub(crate) low: Celsius,
    pub(crate) high: Celsius,
    pub(crate) origin: Origin,
    /// The entry that tells of the day; none for a usual year.
    pub(crate) entry: Option<EntryId>,
}

impl Weather {
    /// What was measured goes before what was forecast; of two the one recorded for a later day, then the later entry.
    pub(super) fn of(file: &[Arc<Record>]) -> Weather {
        let mut weather = Weather::default();
        // Files are in the order in which things happened, so that the last one counts.
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

    /// Whether the day was told of, measured or forecast.
    pub(crate) fn is_told(&self, day: Day) -> bool {
        self.told.contains_key(&day)
    }

    /// The temperatures of a day; of a usual year if nobody told of the day itself.
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
