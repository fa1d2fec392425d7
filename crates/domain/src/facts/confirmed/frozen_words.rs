//! The words in which journals confirm a leaflet value. **They must never change.**
//!
//! Older entries confirm a value in words, not as data, and count only for a value with exactly these words. If the
//! words changed, journals sealed years ago would confirm nothing, and a yes would become unknown. Texts shown to
//! people may use other words. A new kind of rule gets its words here, once.

use crate::basics::rule_words::{BroodState, DosePer, TemperatureWindow};
use crate::basics::says::{Says, WithdrawalPeriod};
use crate::basics::words::{Permission, SupersDuring, Unit};

/// The words in which journals confirm this value. `unit` is the leaflet's unit.
#[must_use]
#[expect(clippy::too_many_lines, reason = "one arm for each kind of rule")]
pub fn in_words(says: &Says, unit: Unit) -> String {
    match says {
        Says::SupersDuring { value } => match value {
            SupersDuring::Off => "supers off while it is in".to_owned(),
            SupersDuring::On => "supers may be on while it is in".to_owned(),
            SupersDuring::OnNoHarvest => {
                "supers may be on while it is in, no honey taken meanwhile".to_owned()
            }
        },
        Says::FlowDuring { value: Permission::Forbidden } => "not in a nectar flow".to_owned(),
        Says::FlowDuring { value: Permission::Allowed } => "may be used in a nectar flow".to_owned(),
        Says::HarvestDuring { value: Permission::Forbidden } => "no honey taken while it is in".to_owned(),
        Says::HarvestDuring { value: Permission::Allowed } => "honey may be taken while it is in".to_owned(),
        Says::FlowBefore { value: _, days: None } => "not right before a nectar flow".to_owned(),
        Says::FlowBefore { value: _, days: Some(days) } => {
            format!("not in the {} before a nectar flow", days_of(*days))
        }
        Says::Withdrawal { days: WithdrawalPeriod::None(_) } => {
            "no withdrawal period by the label".to_owned()
        }
        Says::Withdrawal { days: WithdrawalPeriod::Days(days) } => {
            format!("withdrawal period {}", days_of(*days))
        }
        Says::WaitAfterRemoval { days } => format!("{} from removal to supers", days_of(*days)),
        Says::Removal { value } => format!("removal {}", value.as_str().replace('_', " ")),
        Says::StayMin { days, brood } => match brood {
            None => format!("at least {}", days_of(*days)),
            Some(brood) => format!("at least {}, {}", days_of(*days), brood_words(*brood)),
        },
        Says::StayMax { days, brood } => match brood {
            None => format!("at most {}", days_of(*days)),
            Some(brood) => format!("at most {}, {}", days_of(*days), brood_words(*brood)),
        },
        Says::Doses { count, count_max, interval_min_days, interval_max_days } => {
            let doses = match count_max {
                Some(most) => format!("{count} to {most} doses"),
                None if *count == 1 => "1 dose".to_owned(),
                None => format!("{count} doses"),
            };
            match (interval_min_days, interval_max_days) {
                (Some(least), Some(most)) if least == most => format!("{doses}, {} apart", days_of(*least)),
                (Some(least), Some(most)) => format!("{doses}, {least} to {} apart", days_of(*most)),
                (Some(least), None) => format!("{doses}, at least {} apart", days_of(*least)),
                (None, Some(most)) => format!("{doses}, at most {} apart", days_of(*most)),
                (None, None) => doses,
            }
        }
        Says::CoursesPerYear { count, counted } => {
            let year =
                counted.map_or_else(|| "year".to_owned(), |counted| counted.as_str().replace('_', " "));
            format!("at most {} in a {year}", courses(*count))
        }
        Says::CoursesPerBroodlessPeriod { count } => {
            format!("at most {} in one time without brood", courses(*count))
        }
        Says::GapBetweenCourses { days } => format!("at least {} between courses", days_of(*days)),
        Says::Season { from_day, to_day } => format!("only from {from_day} to {to_day} of a year"),
        Says::Timing { .. } => "only after the last harvest of the year".to_owned(),
        Says::Temperature { window, first_days, min_tenths_c, max_tenths_c } => {
            let bounds = bounds(*min_tenths_c, *max_tenths_c);
            let of = match window {
                TemperatureWindow::MaximumOnPlacingDay => {
                    "highest temperature of the day of placing".to_owned()
                }
                TemperatureWindow::MaximumInFirstDays => {
                    format!(
                        "highest temperature of each of the first {} days",
                        first_days.unwrap_or_default()
                    )
                }
                TemperatureWindow::MaximumOverStay => {
                    "highest temperature of every day of the stay".to_owned()
                }
                TemperatureWindow::MeanOverStay => "mean temperature over the stay".to_owned(),
                TemperatureWindow::AtUse => "outside temperature at the moment of use".to_owned(),
                TemperatureWindow::Product => "temperature of the product".to_owned(),
            };
            format!("{of} {bounds}")
        }
        Says::BroodNeed { value } => format!("brood {value}"),
        Says::ColonySize { min_brood_frames, min_bees, text } => {
            let frames = min_brood_frames.map(|frames| format!("at least {frames} brood frames covered"));
            let bees = min_bees.map(|bees| format!("at least {bees} bees"));
            let counted: Vec<String> = frames.into_iter().chain(bees).collect();
            if counted.is_empty() { text.clone().unwrap_or_default() } else { counted.join(", ") }
        }
        Says::BroodBoxes { max: 1 } => "on one brood box only".to_owned(),
        Says::BroodBoxes { max } => format!("on at most {max} brood boxes"),
        Says::Dose { amount, amount_max, per, frames, min_bees, max_bees, unit: other, when } => {
            let unit = other.as_deref().unwrap_or(unit.as_str());
            let amount = amount_max.map_or_else(|| amount.to_string(), |most| format!("{amount} to {most}"));
            let per = per_words(*per, *frames, *min_bees, *max_bees);
            let when = when.as_ref().map(|when| format!(" ({when})")).unwrap_or_default();
            let many = amount != "1" && !matches!(unit, "g" | "ml");
            format!("{amount} {unit}{} {per}{when}", if many { "s" } else { "" })
        }
        Says::DoseCap { amount, unit: other, when } => {
            let when = when.as_ref().map(|when| format!(" ({when})")).unwrap_or_default();
            format!("at most {amount} {} in one colony{when}", other.as_deref().unwrap_or(unit.as_str()))
        }
        Says::Recipe { amount, unit: other, water_ml, sugar_g, makes_ml, .. } => {
            let mut parts = vec![format!("{amount} {}", other.as_deref().unwrap_or(unit.as_str()))];
            parts.extend(water_ml.map(|ml| format!("{ml} ml water")));
            parts.extend(sugar_g.map(|g| format!("{g} g sugar")));
            format!("{} make {makes_ml} ml", parts.join(", "))
        }
        Says::Needs { list } => {
            list.iter().map(|need| need.as_str().replace('_', " ")).collect::<Vec<_>>().join(", ")
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

fn brood_words(brood: BroodState) -> &'static str {
    match brood {
        BroodState::AbsentOrLowest => "brood absent or at its lowest",
        BroodState::Present => "brood present",
    }
}

fn days_of(days: u16) -> String {
    if days == 1 { "1 day".to_owned() } else { format!("{days} days") }
}

fn courses(count: u8) -> String {
    if count == 1 { "1 course".to_owned() } else { format!("{count} courses") }
}

/// Bounds in degrees Celsius.
fn bounds(min: Option<i16>, max: Option<i16>) -> String {
    match (min, max) {
        (Some(min), Some(max)) => format!("{} to {} °C", degrees(min), degrees(max)),
        (Some(min), None) => format!("{} °C or more", degrees(min)),
        (None, Some(max)) => format!("at most {} °C", degrees(max)),
        (None, None) => "without bounds".to_owned(),
    }
}

fn degrees(tenths: i16) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let tenths = tenths.unsigned_abs();
    if tenths.is_multiple_of(10) {
        format!("{sign}{}", tenths / 10)
    } else {
        format!("{sign}{}.{}", tenths / 10, tenths % 10)
    }
}

fn per_words(per: DosePer, frames: Option<u8>, min_bees: Option<u32>, max_bees: Option<u32>) -> String {
    match per {
        DosePer::Hive => "for a hive".to_owned(),
        DosePer::BroodBox => "for each brood box".to_owned(),
        DosePer::FramesOfBees => format!("for every {} frames of bees or part", frames.unwrap_or(1)),
        DosePer::Seam => "for each seam of bees".to_owned(),
        DosePer::SmallColony => "for a small colony".to_owned(),
        DosePer::CombSide => "for each side of an occupied comb".to_owned(),
        DosePer::LitreOfHive => "for each litre of hive".to_owned(),
        DosePer::Bees => match (min_bees, max_bees) {
            (Some(least), Some(most)) => format!("for {least} to {most} bees"),
            (Some(least), None) => format!("for {least} bees or more"),
            (None, Some(most)) => format!("for at most {most} bees"),
            (None, None) => "for a colony".to_owned(),
        },
    }
}
