//! What to carry, what to check, and cautions, in words.

use combclear_domain::rules::leaflet::rule::Need;
use combclear_domain::rules::leaflet::{Force, Leaflet};

use super::rules;
use crate::Words;
use crate::leaflet;
use crate::words::say;

/// What to carry, by the treatment's requirements. Amounts are part of the dose.
pub(super) fn carry(words: &Words, needs: &[Need]) -> Vec<String> {
    let mut carry = vec![say!(words, OptionsCarryMedicine)];
    carry.extend(needs.iter().filter_map(|need| match need {
        Need::CarryInKit => Some(say!(words, OptionsCarryKit)),
        Need::Battery => Some(say!(words, OptionsCarryBattery)),
        Need::MainsOrGenerator => Some(say!(words, OptionsCarryDevice)),
        Need::HiveOpened => Some(say!(words, OptionsCarryTools)),
        Need::ReturnVisit | Need::DryGround => None,
    }));
    carry
}

/// The leaflet's rules in words, and those on preparing the product.
pub(super) fn see_to(words: &Words, leaflet: &Leaflet, see_to: &[usize]) -> Vec<String> {
    let words_of = rules(leaflet, see_to).map(|rule| {
        let text = leaflet::says(words, &rule.says, leaflet.unit);
        if rule.force == Force::Advice { say!(words, OptionsAdvice, text = text) } else { text }
    });
    words_of.collect()
}

/// Cautions for the user.
pub(super) fn cautions(
    words: &Words,
    leaflet: &Leaflet,
    cautions: &[usize],
    is_flooded: bool,
) -> Vec<String> {
    let of_leaflet = rules(leaflet, cautions).map(|rule| leaflet::says(words, &rule.says, leaflet.unit));
    let mut said: Vec<String> = of_leaflet.collect();
    said.extend(is_flooded.then(|| say!(words, OptionsCautionFlooded)));
    if said.is_empty() {
        said.push(say!(words, OptionsCautionPack));
    }
    said
}
