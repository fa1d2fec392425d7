//! The value of a leaflet rule in a few words.

use combclear_domain::Quantity;
use combclear_domain::basics::words::Unit;
use combclear_domain::rules::leaflet::rule::{BroodState, DosePer, YearCounting};
use combclear_domain::rules::leaflet::{Says, WithdrawalPeriod};

use crate::Words;
use crate::amounts::{Number, counted};
use crate::words::say;

/// The value of a rule in a few words. `unit` is the leaflet's unit.
#[must_use]
pub fn says(words: &Words, says: &Says, unit: Unit) -> String {
    match says {
        Says::SupersDuring { value } => say!(words, LeafletSupersDuring, value = value.as_str()),
        Says::FlowDuring { value } => say!(words, LeafletFlowDuring, value = value.as_str()),
        Says::HarvestDuring { value } => say!(words, LeafletHarvestDuring, value = value.as_str()),
        Says::FlowBefore { value: _, days: None } => say!(words, LeafletFlowBefore),
        Says::FlowBefore { value: _, days: Some(days) } => {
            say!(words, LeafletFlowBeforeDays, days = in_days(words, *days))
        }
        Says::Withdrawal { days: WithdrawalPeriod::None(_) } => say!(words, LeafletNoWithdrawal),
        Says::Withdrawal { days: WithdrawalPeriod::Days(days) } => {
            say!(words, LeafletWithdrawal, days = in_days(words, *days))
        }
        Says::WaitAfterRemoval { days } => say!(words, LeafletWaitAfterRemoval, days = in_days(words, *days)),
        Says::Removal { value } => say!(words, LeafletRemoval, value = value.as_str()),
        Says::StayMin { days, brood } => {
            say!(
                words,
                LeafletStayMin,
                days = in_days(words, *days),
                brood = brood.map_or("any", BroodState::as_str)
            )
        }
        Says::StayMax { days, brood } => {
            say!(
                words,
                LeafletStayMax,
                days = in_days(words, *days),
                brood = brood.map_or("any", BroodState::as_str)
            )
        }
        Says::Doses { count, count_max, interval_min_days, interval_max_days } => {
            let doses = match count_max {
                Some(most) => say!(words, LeafletDosesRange, count = *count, most = *most),
                None => say!(words, LeafletDoses, count = *count),
            };
            apart(words, doses, *interval_min_days, *interval_max_days)
        }
        Says::CoursesPerYear { count, counted } => {
            let counted = counted.map_or("not_said", YearCounting::as_str);
            say!(words, LeafletCoursesPerYear, courses = courses(words, *count), counted = counted)
        }
        Says::CoursesPerBroodlessPeriod { count } => {
            say!(words, LeafletCoursesPerBroodlessPeriod, courses = courses(words, *count))
        }
        Says::GapBetweenCourses { days } => {
            say!(words, LeafletGapBetweenCourses, days = in_days(words, *days))
        }
        Says::Season { from_day, to_day } => {
            say!(words, LeafletSeason, from = from_day.to_string(), to = to_day.to_string())
        }
        Says::Timing { value: _ } => say!(words, LeafletTiming),
        Says::Temperature { window, first_days, min_tenths_c, max_tenths_c } => {
            let bounds = bounds(words, *min_tenths_c, *max_tenths_c);
            let days = first_days.unwrap_or_default();
            say!(words, LeafletTemperature, window = window.as_str(), days = days, bounds = bounds)
        }
        Says::BroodNeed { value } => say!(words, LeafletBrood, value = value.as_str()),
        Says::ColonySize { min_brood_frames, min_bees, text } => {
            let frames = min_brood_frames.map(|frames| say!(words, LeafletBroodFrames, frames = frames));
            let bees = min_bees.map(|bees| say!(words, LeafletBees, bees = bees));
            let counted: Vec<String> = frames.into_iter().chain(bees).collect();
            if counted.is_empty() { text.clone().unwrap_or_default() } else { counted.join(", ") }
        }
        Says::BroodBoxes { max } => say!(words, LeafletBroodBoxes, max = *max),
        Says::Dose { .. } => dose(words, says, unit),
        Says::DoseCap { amount, unit: other, when } => {
            let unit = other.as_deref().unwrap_or(unit.as_str());
            under(words, say!(words, LeafletDoseCap, amount = amount, unit = unit), when.as_deref())
        }
        Says::Recipe { amount, unit: other, water_ml, sugar_g, makes_ml, text: _ } => {
            let unit = other.as_deref().unwrap_or(unit.as_str());
            let mut parts = vec![say!(words, LeafletRecipeMedicine, amount = amount, unit = unit)];
            parts.extend(water_ml.map(|ml| say!(words, LeafletRecipeWater, ml = ml)));
            parts.extend(sugar_g.map(|g| say!(words, LeafletRecipeSugar, g = g)));
            say!(words, LeafletRecipe, parts = parts.join(", "), ml = makes_ml)
        }
        Says::Needs { list } => {
            let each = list.iter().map(|need| say!(words, LeafletNeed, need = need.as_str()));
            each.collect::<Vec<_>>().join(", ")
        }
        Says::Class { name } => name.clone(),
        Says::CombRule { text }
        | Says::Entrance { text }
        | Says::NotWith { text, .. }
        | Says::Contraindication { text }
        | Says::WholeApiary { text }
        | Says::UserSafety { text }
        | Says::AfterOpening { text, .. }
        | Says::Storage { text }
        | Says::Disposal { text } => text.clone(),
    }
}

fn in_days(words: &Words, days: u16) -> String {
    say!(words, Days, days = days)
}

fn courses(words: &Words, count: u8) -> String {
    say!(words, LeafletCourses, count = count)
}

/// Doses with the days between them.
fn apart(words: &Words, doses: String, least: Option<u16>, most: Option<u16>) -> String {
    match (least, most) {
        (Some(least), Some(most)) if least == most => {
            say!(words, LeafletDosesApart, doses = doses, days = in_days(words, least))
        }
        (Some(least), Some(most)) => {
            say!(words, LeafletDosesApartRange, doses = doses, least = least, days = in_days(words, most))
        }
        (Some(least), None) => {
            say!(words, LeafletDosesApartAtLeast, doses = doses, days = in_days(words, least))
        }
        (None, Some(most)) => {
            say!(words, LeafletDosesApartAtMost, doses = doses, days = in_days(words, most))
        }
        (None, None) => doses,
    }
}

fn dose(words: &Words, says: &Says, unit: Unit) -> String {
    let Says::Dose { amount, amount_max, per, frames, min_bees, max_bees, unit: other, when } = says else {
        return String::new();
    };
    let number =
        if amount_max.is_none() && *amount == Quantity::whole(1) { Number::One } else { Number::Several };
    let amount = amount_max
        .map_or_else(|| amount.to_string(), |most| say!(words, LeafletRange, least = amount, most = most));
    let amount = counted(words, &amount, number, other.as_deref().unwrap_or(unit.as_str()));
    let per = match (per, min_bees, max_bees) {
        (DosePer::Bees, Some(least), Some(most)) => {
            say!(words, LeafletPerBees, least = *least, most = *most)
        }
        (DosePer::Bees, Some(least), None) => say!(words, LeafletPerBeesAtLeast, least = *least),
        (DosePer::Bees, None, Some(most)) => say!(words, LeafletPerBeesAtMost, most = *most),
        (DosePer::Bees, None, None) => say!(words, LeafletPerColony),
        _ => say!(words, LeafletPer, per = per.as_str(), frames = frames.unwrap_or(1)),
    };
    under(words, say!(words, LeafletDose, amount = amount, per = per), when.as_deref())
}

/// A value that applies under a condition.
fn under(words: &Words, says: String, when: Option<&str>) -> String {
    match when {
        Some(when) => say!(words, LeafletWhen, says = says, when = when),
        None => says,
    }
}

/// Bounds in tenths of a degree Celsius.
fn bounds(words: &Words, min: Option<i16>, max: Option<i16>) -> String {
    let degrees = |tenths| words.decimal(&degrees(tenths)).into_owned();
    match (min.map(degrees), max.map(degrees)) {
        (Some(min), Some(max)) => say!(words, LeafletBoundsBoth, min = min, max = max),
        (Some(min), None) => say!(words, LeafletBoundsMin, min = min),
        (None, Some(max)) => say!(words, LeafletBoundsMax, max = max),
        (None, None) => say!(words, LeafletBoundsNone),
    }
}

/// Tenths of a degree as text; whole degrees without a decimal.
fn degrees(tenths: i16) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let tenths = tenths.unsigned_abs();
    if tenths.is_multiple_of(10) {
        format!("{sign}{}", tenths / 10)
    } else {
        format!("{sign}{}.{}", tenths / 10, tenths % 10)
    }
}
