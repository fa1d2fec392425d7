//! What cannot be true of flows, temperatures and confirmations.

use super::check::{Checked, Refusal};
use crate::basics::calendar::Day;
use crate::basics::degrees::Celsius;
use crate::basics::words::{FlowStage, TemperatureStage};
use crate::journal::event::{Confirmed, NectarFlow, Temperature, TemperatureNormals};

/// Most days in one entry.
const DAYS_MOST: usize = 400;

/// An early year begins no later than a usual one, a late year no sooner; a flow that was seen began on one day.
pub(super) fn check_flow(on: Day, flow: &NectarFlow) -> Checked {
    if flow.stage == FlowStage::Seen && flow.from > on {
        let message = format!("the flow would begin on {}, after {on}, so nobody has seen it", flow.from);
        return Err(Refusal::at("/body/from", message, "record it as expected, or correct the day"));
    }
    for (pointer, day) in [("/body/from_early", flow.from_early), ("/body/from_late", flow.from_late)] {
        if day.is_some() && flow.stage == FlowStage::Seen {
            let help = "leave it out: a flow that was seen began on one day";
            return Err(Refusal::at(pointer, "only an expected flow has early and late years", help));
        }
    }
    if let Some(early) = flow.from_early.filter(|early| *early > flow.from) {
        let message = format!("an early year would begin on {early}, after a usual one on {}", flow.from);
        return Err(Refusal::at("/body/from_early", message, "check both dates"));
    }
    if let Some(late) = flow.from_late.filter(|late| *late < flow.from) {
        let message = format!("a late year would begin on {late}, before a usual one on {}", flow.from);
        return Err(Refusal::at("/body/from_late", message, "check both dates"));
    }
    if let Some((late, to)) = flow.from_late.zip(flow.to).filter(|(late, to)| late > to) {
        let message = format!("a late year would begin on {late}, after the end of the flow on {to}");
        return Err(Refusal::at("/body/from_late", message, "check both dates"));
    }
    Ok(())
}

/// Each day once, lowest below highest, nothing measured that has not been yet.
pub(super) fn check_temperatures(on: Day, body: &Temperature) -> Checked {
    if body.days.is_empty() || body.days.len() > DAYS_MOST {
        let message = format!("{} days are in the list", body.days.len());
        return Err(Refusal::at("/body/days", message, format!("give 1 to {DAYS_MOST} days in one entry")));
    }
    for (index, day) in body.days.iter().enumerate() {
        let at = |field: &str| format!("/body/days/{index}/{field}");
        check_order(&at("min_c"), day.min_c, day.max_c)?;
        if body.days.iter().take(index).any(|earlier| earlier.day == day.day) {
            let message = format!("{} stands twice in the list", day.day);
            return Err(Refusal::at(&at("day"), message, "keep one of the two"));
        }
        if body.stage == TemperatureStage::Measured && day.day > on {
            let message = format!("{} lies after {on}, so nobody has measured it", day.day);
            return Err(Refusal::at(&at("day"), message, "record a forecast, or correct the day"));
        }
    }
    Ok(())
}

/// Each month once, lowest below highest.
pub(super) fn check_normals(body: &TemperatureNormals) -> Checked {
    if body.months.is_empty() {
        return Err(Refusal::at("/body/months", "no month is in the list", "give 1 to 12 months"));
    }
    for (index, normal) in body.months.iter().enumerate() {
        let at = |field: &str| format!("/body/months/{index}/{field}");
        if !(1..=12).contains(&normal.month) {
            let message = format!("there is no month {}", normal.month);
            return Err(Refusal::at(&at("month"), message, "write 1 for January to 12 for December"));
        }
        check_order(&at("min_c"), normal.min_c, normal.max_c)?;
        if body.months.iter().take(index).any(|earlier| earlier.month == normal.month) {
            let message = format!("month {} stands twice in the list", normal.month);
            return Err(Refusal::at(&at("month"), message, "keep one of the two"));
        }
    }
    Ok(())
}

fn check_order(pointer: &str, min: Celsius, max: Celsius) -> Checked {
    if min > max {
        let message = format!("the lowest temperature {min} is above the highest, {max}");
        return Err(Refusal::at(pointer, message, "swap or correct them"));
    }
    Ok(())
}

/// What the supers turn on is stated and not confirmed: it must stand in the record whatever becomes of the built-in leaflet.
pub(super) fn check_confirmed(confirmed: &[Confirmed]) -> Checked {
    for (index, confirmed) in confirmed.iter().enumerate() {
        let pointer = format!("/body/confirms/{index}");
        if let Confirmed::InWords { says, .. } = confirmed
            && says.trim().is_empty()
        {
            let help = "write the value in the words that the program shows for it";
            return Err(Refusal::at(&format!("{pointer}/says"), "nothing is confirmed", help));
        }
        let topic = confirmed.topic();
        if topic.is_stated() {
            let message = format!("`{}` is not confirmed but stated", topic.as_str());
            return Err(Refusal::at(
                &format!("{pointer}/topic"),
                message,
                "write the value that you read in `terms`",
            ));
        }
    }
    Ok(())
}
