//! What would have to change, in words.

use combclear_domain::questions::options::Change;

use super::because::{because, mains_or_battery, within};
use crate::Words;
use crate::pieces;
use crate::words::say;

/// What would have to change to meet a broken condition.
pub(super) fn change(words: &Words, change: &Change) -> String {
    match change {
        Change::Here => say!(words, OptionsChangeHere),
        Change::SupersOff { since } => say!(words, OptionsChangeSupersOff, since = since),
        Change::LongBeforeFlow { from } => say!(words, OptionsChangeLongBeforeFlow, from = from),
        Change::BeforeFlow { from } => say!(words, OptionsChangeBeforeFlow, from = from),
        Change::AfterHarvest { from } => say!(words, OptionsChangeAfterHarvest, from = from),
        Change::TakenOut { medicine, placed } => {
            say!(
                words,
                OptionsChangeTakenOut,
                medicine = &*pieces::medicine(words, medicine),
                placed = placed
            )
        }
        Change::FeederOff => say!(words, OptionsChangeFeederOff),
        Change::Brood => say!(words, OptionsChangeBrood),
        Change::NoBrood => say!(words, OptionsChangeNoBrood),
        Change::FewerBroodBoxes => say!(words, OptionsChangeFewerBoxes),
        Change::Stronger => say!(words, OptionsChangeStronger),
        Change::Next { within: of } => say!(words, OptionsChangeNext, within = within(words, *of)),
        Change::After { last } => say!(words, OptionsChangeAfter, last = last),
        Change::Season { from } => say!(words, OptionsChangeSeason, from = from.to_string()),
        Change::Power { need } => say!(words, OptionsChangePower, need = mains_or_battery(*need)),
        Change::Reached { on } => say!(words, OptionsChangeReached, on = on),
        Change::DryGround => say!(words, OptionsChangeDryGround),
        Change::Weather { than_on: None } => say!(words, OptionsChangeWeather),
        Change::Weather { than_on: Some(on) } => say!(words, OptionsChangeWeatherThanOn, on = on),
        Change::Other(reason) => because(words, reason),
    }
}
