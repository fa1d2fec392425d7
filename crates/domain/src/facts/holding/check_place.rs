//! Checks of flows, temperatures and confirmations.

use super::check::Checked;
use super::refusal::Refusal;
use super::untrue::{Places, Terms, Weather};
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::basics::words::{FlowStage, TemperatureStage};
use crate::journal::event::{Confirmed, NectarFlow, Temperature, TemperatureNormals};

/// Most days in one entry.
const DAYS_MOST: usize = 400;

/// An early year begins no later than a usual one, a late year no sooner; a seen flow began on one day.
pub(super) fn check_flow(on: Day, flow: &NectarFlow) -> Checked {
    if flow.stage == FlowStage::Seen && flow.from > on {
        return Err(Refusal::at("/body/from", Places::FlowNotYetSeen { from: flow.from, on }));
    }
    for (pointer, day) in [("/body/from_early", flow.from_early), ("/body/from_late", flow.from_late)] {
        if day.is_some() && flow.stage == FlowStage::Seen {
            return Err(Refusal::at(pointer, Places::SeenFlowHasOneDay));
        }
    }
    if let Some(early) = flow.from_early.filter(|early| *early > flow.from) {
        return Err(Refusal::at("/body/from_early", Places::EarlyAfterUsual { early, usual: flow.from }));
    }
    if let Some(late) = flow.from_late.filter(|late| *late < flow.from) {
        return Err(Refusal::at("/body/from_late", Places::LateBeforeUsual { late, usual: flow.from }));
    }
    if let Some((late, to)) = flow.from_late.zip(flow.to).filter(|(late, to)| late > to) {
        return Err(Refusal::at("/body/from_late", Places::LateAfterEnd { late, to }));
    }
    Ok(())
}

/// Each day once, lowest not above highest, no measurements of future days.
pub(super) fn check_temperatures(on: Day, body: &Temperature) -> Checked {
    if body.days.is_empty() || body.days.len() > DAYS_MOST {
        let why = Weather::NumberOfDays { days: body.days.len(), most: DAYS_MOST };
        return Err(Refusal::at("/body/days", why));
    }
    for (index, day) in body.days.iter().enumerate() {
        let at = |field: &str| format!("/body/days/{index}/{field}");
        check_order(&at("min_c"), day.min_c, day.max_c)?;
        if body.days.iter().take(index).any(|earlier| earlier.day == day.day) {
            return Err(Refusal::at(at("day"), Weather::DayTwice { day: day.day }));
        }
        if body.stage == TemperatureStage::Measured && day.day > on {
            return Err(Refusal::at(at("day"), Weather::NotYetMeasured { day: day.day, on }));
        }
    }
    Ok(())
}

/// Each month once, lowest not above highest.
pub(super) fn check_normals(body: &TemperatureNormals) -> Checked {
    if body.months.is_empty() {
        return Err(Refusal::at("/body/months", Weather::NoMonths));
    }
    for (index, normal) in body.months.iter().enumerate() {
        let at = |field: &str| format!("/body/months/{index}/{field}");
        let month = normal.month;
        if !(1..=12).contains(&month) {
            return Err(Refusal::at(at("month"), Weather::NoSuchMonth { month }));
        }
        check_order(&at("min_c"), normal.min_c, normal.max_c)?;
        if body.months.iter().take(index).any(|earlier| earlier.month == month) {
            return Err(Refusal::at(at("month"), Weather::MonthTwice { month }));
        }
    }
    Ok(())
}

fn check_order(pointer: &str, min: Celsius, max: Celsius) -> Checked {
    if min > max {
        return Err(Refusal::at(pointer, Weather::LowestAboveHighest { min, max }));
    }
    Ok(())
}

/// Values that decide about supers must be stated, not confirmed: the record must contain them whatever becomes of
/// the built-in leaflet.
pub(super) fn check_confirmed(confirmed: &[Confirmed]) -> Checked {
    for (index, confirmed) in confirmed.iter().enumerate() {
        let pointer = format!("/body/confirms/{index}");
        if let Confirmed::InWords { says, .. } = confirmed
            && says.trim().is_empty()
        {
            return Err(Refusal::at(format!("{pointer}/says"), Terms::NothingIsConfirmed));
        }
        let topic = confirmed.topic();
        if topic.is_stated() {
            return Err(Refusal::at(format!("{pointer}/topic"), Terms::StatedNotConfirmed { topic }));
        }
    }
    Ok(())
}
