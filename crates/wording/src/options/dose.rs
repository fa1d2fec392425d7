//! Doses in words: what a colony gets and how it was worked out, what to mix, and why a dose is not known.

use combclear_domain::Quantity;
use combclear_domain::questions::options::{
    Base, DoseForColony, DoseWhen, Mixture, NoDose, Portion, Rounding, StockOfMedicine, Sum,
};
use combclear_domain::rules::leaflet::{Leaflet, Says};
use serde::Serialize;

use super::because::counting_word;
use super::missing::Missing;
use super::rules;
use crate::Words;
use crate::amounts::amount_of;
use crate::leaflet;
use crate::words::say;

/// What one colony gets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DoseSum {
    /// The dose.
    #[serde(flatten)]
    pub portion: Portion,
    /// How it was worked out, with what was rounded.
    pub sum: String,
    /// Doses that hold under another condition, in words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub otherwise: Vec<String>,
}

/// What has to be mixed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Solution {
    /// How much of what.
    #[serde(flatten)]
    pub mixture: Mixture,
    /// The recipe of the leaflet.
    pub recipe: String,
    /// The order of mixing and its dangers.
    pub how: String,
}

/// What a colony would get, and what is in stock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DoseOfColony {
    /// The dose; none if something must be counted first.
    pub dose: Option<DoseSum>,
    /// What must be known first about the dose or the number of doses, and what would supply it.
    pub missing: Vec<Missing>,
    /// What has to be mixed for one dose.
    pub solution: Option<Solution>,
    /// What is in stock of it.
    pub stock: StockOfMedicine,
}

impl DoseOfColony {
    pub(super) fn of(words: &Words, leaflet: &Leaflet, dose: DoseForColony) -> DoseOfColony {
        let DoseForColony { dose, mixture, stock } = dose;
        let missing = match &dose {
            Ok(dose) => dose.doses.is_none().then_some(&NoDose::CountNotStated),
            Err(missing) => Some(missing),
        };
        DoseOfColony {
            missing: missing.into_iter().map(|missing| Missing::of_dose(words, missing)).collect(),
            dose: dose.ok().map(|dose| DoseSum::of(words, leaflet, dose)),
            solution: mixture.map(|mixture| Solution::of(words, leaflet, mixture)),
            stock,
        }
    }
}

impl DoseSum {
    fn of(words: &Words, leaflet: &Leaflet, portion: Portion) -> DoseSum {
        let otherwise = rules(leaflet, &portion.otherwise);
        DoseSum {
            sum: sum(words, &portion.sum, &portion),
            otherwise: otherwise.map(|rule| leaflet::says(words, &rule.says, leaflet.unit)).collect(),
            portion,
        }
    }
}

impl Solution {
    pub(super) fn of(words: &Words, leaflet: &Leaflet, mixture: Mixture) -> Solution {
        let recipe = leaflet.rules.get(mixture.rule).map(|rule| &rule.says);
        let how = recipe.and_then(|says| {
            let Says::Recipe { text, .. } = says else { return None };
            Some(text.clone())
        });
        Solution {
            mixture,
            recipe: recipe.map(|says| leaflet::says(words, says, leaflet.unit)).unwrap_or_default(),
            how: how.unwrap_or_default(),
        }
    }
}

/// How a dose was worked out.
fn sum(words: &Words, sum: &Sum, dose: &Portion) -> String {
    let amount = |amount: Quantity| amount_of(words, amount, &dose.unit);
    let mut said = say!(words, OptionsDoseSum, amount = amount(sum.amount), base = base(words, sum.base));
    if sum.times != 1 {
        said = say!(words, OptionsDoseSumComesTo, sum = said, exact = amount(sum.exact));
    }
    said = match sum.rounding {
        Rounding::None => said,
        Rounding::Capped => say!(words, OptionsDoseSumCapped, sum = said, each = amount(dose.each)),
        Rounding::Up => say!(words, OptionsDoseSumRoundedUp, sum = said, each = amount(dose.each)),
    };
    match &sum.when {
        Some(when) => say!(words, OptionsUnderCondition, what = said, condition = when),
        None => said,
    }
}

/// What the leaflet states the amount for.
fn base(words: &Words, base: Base) -> String {
    let seams_of_bees = |seams: u32| say!(words, OptionsSeams, count = seams);
    match base {
        Base::Hive => say!(words, OptionsBaseHive),
        Base::Bees(bees) => say!(words, OptionsBaseBees, count = bees),
        Base::BroodBoxes(boxes) => say!(words, OptionsBaseBroodBoxes, count = boxes),
        Base::Seams(seams) => say!(words, OptionsBaseSeams, seams = seams_of_bees(seams)),
        Base::Frames { seams, frames } => {
            say!(words, OptionsBaseFrames, seams = seams_of_bees(seams), frames = frames)
        }
        Base::CombSides(seams) => say!(words, OptionsBaseCombSides, seams = seams_of_bees(seams)),
        Base::Litres(litres) => say!(words, OptionsBaseLitres, count = litres),
    }
}

/// What is not known of a dose.
pub(crate) fn fact(words: &Words, missing: &NoDose) -> String {
    match missing {
        NoDose::NotCounted(what) => say!(words, OptionsDoseNotCounted, what = counting_word(*what)),
        NoDose::NotStated => say!(words, OptionsDoseNotStated),
        NoDose::NotForThisSize => say!(words, OptionsDoseNotForThisSize),
        NoDose::OneOf(several) => {
            let each = several.iter().map(|dose| dose_when(words, dose));
            say!(words, OptionsDoseOneOf, doses = each.collect::<Vec<_>>().join("; "))
        }
        NoDose::OtherUnit { unit, counted_in } => {
            say!(words, OptionsDoseOtherUnit, unit = unit.as_str(), counted_in = counted_in)
        }
        NoDose::CountNotStated => say!(words, OptionsDoseCountNotStated),
    }
}

fn dose_when(words: &Words, dose: &DoseWhen) -> String {
    let what = match dose.each_at_most {
        Some(most) => {
            let most = amount_of(words, most, &dose.unit);
            say!(words, OptionsFromTo, from = dose.each, to = most)
        }
        None => amount_of(words, dose.each, &dose.unit),
    };
    say!(words, OptionsUnderCondition, what = what, condition = &dose.when)
}

/// How to supply it.
pub(crate) fn how(words: &Words, missing: &NoDose) -> String {
    match missing {
        NoDose::NotCounted(_) => say!(words, OptionsHowCount),
        NoDose::NotStated | NoDose::NotForThisSize | NoDose::OneOf(_) | NoDose::OtherUnit { .. } => {
            say!(words, OptionsHowReadAmount)
        }
        NoDose::CountNotStated => say!(words, OptionsHowReadDoses),
    }
}
