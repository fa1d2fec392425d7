//! Doses: the amount for each colony, by the base that the leaflet uses, rounded up to a part that can be given; and
//! the solution to mix for all of them.

use serde::Serialize;

use super::choice::Choice;
use super::colony::Colony;
use super::reason::Counting;
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;
use crate::basics::quantity::Quantity;
use crate::basics::topic::Topic;
use crate::basics::words::Unit;
use crate::journal::event::{Inspection, Kind};
use crate::rules::leaflet::rule::{DosePer, Region};
use crate::rules::leaflet::{Force, Rule, Says};

/// The dose for one colony.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Portion {
    /// The amount of each dose; the least if the leaflet gives a range.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 2))]
    pub each: Quantity,
    /// The most for each dose, if the leaflet gives a range.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub each_at_most: Option<Quantity>,
    /// The unit of the amounts.
    pub unit: String,
    /// Number of doses in the course, at least. Absent if not stated.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// The amount for the whole course, at least; of a range, the least. Absent if the number of doses is not known.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 4))]
    pub course: Option<Quantity>,
    /// How it was worked out.
    #[serde(skip)]
    pub sum: Sum,
    /// The confidence of the leaflet's dose.
    pub confidence: Confidence,
    /// Rules with other doses under a condition, by index in the leaflet.
    #[serde(skip)]
    pub otherwise: Vec<usize>,
}

/// How a dose was worked out and rounded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// The leaflet's amount, in the unit of the dose; the least of a range.
    pub amount: Quantity,
    /// The base that the amount refers to.
    pub base: Base,
    /// How many times the colony gets that amount.
    pub times: u32,
    /// The amount times `times`.
    pub exact: Quantity,
    /// How the result was rounded.
    pub rounding: Rounding,
    /// The leaflet's condition for this amount, in its words.
    pub when: Option<String>,
}

/// The base of a leaflet's amount, with the count.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Base {
    /// One hive.
    Hive,
    /// A colony with this many bees.
    Bees(u32),
    /// This many brood boxes.
    BroodBoxes(u32),
    /// This many seams of bees.
    Seams(u32),
    /// A number of frames of bees, or part of it.
    Frames {
        /// Seams of bees counted.
        seams: u32,
        /// Frames for which the leaflet states the amount.
        frames: u32,
    },
    /// Two comb sides for each of this many seams of bees.
    CombSides(u32),
    /// This many litres of hive volume.
    Litres(u32),
}

/// How an amount was changed that cannot or must not be given exactly.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounding {
    /// Not changed.
    None,
    /// Reduced to the most that one colony may get.
    Capped,
    /// Rounded up to the next part that can be given.
    Up,
}

/// Why a dose, or the amount for a course, cannot be worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoDose {
    /// This must be counted first.
    NotCounted(Counting),
    /// The leaflet states no dose.
    NotStated,
    /// The leaflet states no dose for a colony of this size.
    NotForThisSize,
    /// The leaflet states several doses, each under a condition that the record does not decide.
    OneOf(Vec<DoseWhen>),
    /// The leaflet gives the dose in another unit than the medicine is counted in.
    OtherUnit {
        /// The unit of the medicine.
        unit: Unit,
        /// The unit of the leaflet.
        counted_in: String,
    },
    /// The number of doses is not stated.
    CountNotStated,
}

/// A dose that applies under a condition.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoseWhen {
    /// The amount of each dose; the least if the leaflet gives a range.
    pub each: Quantity,
    /// The most for each dose, if the leaflet gives a range.
    pub each_at_most: Option<Quantity>,
    /// The unit of the amounts.
    pub unit: String,
    /// The condition, in the leaflet's words.
    pub when: String,
}

impl NoDose {
    /// The kind of entry that would supply the missing fact. `None` if no entry can.
    #[must_use]
    pub const fn supplied_by(&self) -> Option<Kind> {
        match self {
            NoDose::NotCounted(_) => Some(Kind::Inspection),
            NoDose::NotStated | NoDose::NotForThisSize | NoDose::OneOf(_) | NoDose::OtherUnit { .. } => None,
            NoDose::CountNotStated => Some(Kind::LeafletReading),
        }
    }
}

/// The solution to mix.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Mixture {
    /// Volume of the solution, in millilitres.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 250))]
    pub millilitres: Quantity,
    /// Amount of the medicine.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 17.5))]
    pub medicine: Quantity,
    /// The unit of that amount.
    pub unit: String,
    /// Water, in millilitres.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub water_ml: Option<Quantity>,
    /// Sugar, in grams.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub sugar_g: Option<Quantity>,
    /// The rule with the recipe, by index in the leaflet.
    #[serde(skip)]
    pub rule: usize,
}

/// The dose for a colony on a day.
pub(super) fn of(choice: &Choice, colony: &Colony<'_>, on: Day) -> Result<Portion, NoDose> {
    let in_force =
        |topic| choice.rules_on(topic).filter(move |(_, rule): &(usize, &Rule)| rule.is_in_force(on));
    let mut rules: Vec<(usize, &Rule)> = in_force(Topic::Dose).collect();
    // Label rules come before advice. A dose for small colonies is an alternative to the one for full colonies.
    if rules.iter().any(|(_, rule)| rule.force != Force::Advice) {
        rules.retain(|(_, rule)| rule.force != Force::Advice);
    }
    let small = |rule: &Rule| matches!(rule.says, Says::Dose { per: DosePer::SmallColony, .. });
    let (small, full): (Vec<(usize, &Rule)>, Vec<_>) = rules.into_iter().partition(|(_, rule)| small(rule));
    let candidates = if full.is_empty() { &small } else { &full };
    let unit = choice.leaflet.unit;
    let caps: Vec<Cap<'_>> = in_force(Topic::DoseCap)
        .filter(|(_, rule)| rule.force != Force::Advice)
        .filter_map(|(_, rule)| {
            let Says::DoseCap { amount, unit: of, .. } = &rule.says else { return None };
            Some(Cap { amount: *amount, unit: of.as_deref().unwrap_or(unit.as_str()), region: rule.region })
        })
        .collect();
    let doses = choice.doses(on).known().copied();
    let conditional = |rule: &Rule| matches!(&rule.says, Says::Dose { when: Some(_), .. });
    let (under_condition, always): (Vec<(usize, &Rule)>, Vec<_>) =
        candidates.iter().copied().partition(|(_, rule)| conditional(rule));
    let mut worked: Option<Portion> = None;
    let mut otherwise: Vec<usize> = Vec::new();
    let index = |rules: &[(usize, &Rule)]| -> Vec<usize> { rules.iter().map(|(index, _)| *index).collect() };
    // A dose without a condition comes first. The record cannot decide between several conditions.
    let meant = match (always.as_slice(), under_condition.as_slice()) {
        ([], []) => return Err(NoDose::NotStated),
        ([], [only]) => vec![*only],
        ([], several) => {
            let mut each: Vec<DoseWhen> = Vec::new();
            for (_, rule) in several {
                let Some(dose) = worked_out(rule, unit, colony, on, &caps)? else { continue };
                let when = dose.sum.when.unwrap_or_default();
                let Portion { each: least, each_at_most, unit, .. } = dose;
                each.push(DoseWhen { each: least, each_at_most, unit, when });
            }
            return Err(NoDose::OneOf(each));
        }
        (always, under_condition) => {
            otherwise.extend(index(under_condition));
            always.to_vec()
        }
    };
    for (index, rule) in meant {
        // The first rule for a colony of this size applies. If its base was not counted, no other rule replaces it.
        match (worked_out(rule, unit, colony, on, &caps)?, &worked) {
            (Some(dose), None) => {
                let course = doses.map(|doses| dose.each.times(u64::from(doses)));
                worked = Some(Portion { doses, course, confidence: rule.confidence, ..dose });
            }
            (Some(_), Some(_)) => otherwise.push(index),
            (None, _) => {}
        }
    }
    if !full.is_empty() {
        otherwise.extend(index(&small));
    }
    otherwise.extend(
        in_force(Topic::DoseCap)
            .filter(|&(_, rule)| matches!(rule.says, Says::DoseCap { when: Some(_), .. }))
            .map(|(index, _)| index),
    );
    worked.map(|dose| Portion { otherwise, ..dose }).ok_or(NoDose::NotForThisSize)
}

/// Works out one rule. `None` if the rule is for colonies of another size.
fn worked_out(
    rule: &Rule,
    leaflet_unit: Unit,
    colony: &Colony<'_>,
    on: Day,
    caps: &[Cap<'_>],
) -> Result<Option<Portion>, NoDose> {
    let Says::Dose { amount, amount_max, per, frames, min_bees, max_bees, unit, when } = &rule.says else {
        return Ok(None);
    };
    let unit = unit.as_deref().unwrap_or(leaflet_unit.as_str());
    let cap = cap_for(caps, unit, rule.region);
    let count = |what: Counting, pick: &dyn Fn(&Inspection) -> Option<u32>| {
        let some = colony.counts(on, pick).filter(|count| count.number > 0);
        some.map(|count| count.number).ok_or(NoDose::NotCounted(what))
    };
    let seams = || count(Counting::SeamsOfBees, &|seen| seen.seams.map(u32::from));
    let (times, base) = match per {
        DosePer::Hive | DosePer::SmallColony => (1, Base::Hive),
        DosePer::BroodBox => {
            let boxes = count(Counting::BroodBoxes, &|seen| seen.brood_boxes.map(u32::from))?;
            (boxes, Base::BroodBoxes(boxes))
        }
        DosePer::Seam => {
            let seams = seams()?;
            (seams, Base::Seams(seams))
        }
        DosePer::FramesOfBees => {
            // One seam of bees counts as one frame of bees. Common practice, no source.
            let seams = seams()?;
            let frames = u32::from(frames.unwrap_or(1)).max(1);
            (seams.div_ceil(frames), Base::Frames { seams, frames })
        }
        DosePer::CombSide => {
            // A seam of bees covers two comb sides that face each other.
            let seams = seams()?;
            (seams.saturating_mul(2), Base::CombSides(seams))
        }
        DosePer::LitreOfHive => {
            let litres = count(Counting::LitresOfHive, &|seen| seen.hive_litres.map(u32::from))?;
            (litres, Base::Litres(litres))
        }
        DosePer::Bees => {
            let bees = count(Counting::Bees, &|seen| seen.bees)?;
            let within =
                min_bees.is_none_or(|least| least <= bees) && max_bees.is_none_or(|most| bees <= most);
            if !within {
                return Ok(None);
            }
            (1, Base::Bees(bees))
        }
    };
    let step = step(unit, *amount);
    let rounded = |amount: Quantity| {
        let exact = amount.times(u64::from(times));
        let whole = exact.up_to(step);
        (exact, cap.map_or(whole, |cap| whole.min(cap)))
    };
    let (exact, each) = rounded(*amount);
    let most = amount_max.map(|most| rounded(most).1).filter(|most| *most > each);
    let rounding = if cap.is_some_and(|cap| exact > cap) {
        Rounding::Capped
    } else if each == exact {
        Rounding::None
    } else {
        Rounding::Up
    };
    Ok(Some(Portion {
        each,
        each_at_most: most,
        unit: unit.to_owned(),
        // The caller fills in the number of doses.
        doses: None,
        course: None,
        sum: Sum { amount: *amount, base, times, exact, rounding, when: when.clone() },
        confidence: Confidence::Unconfirmed,
        otherwise: Vec::new(),
    }))
}

/// The most that one colony may get, in a unit, perhaps only in one region.
struct Cap<'r> {
    amount: Quantity,
    unit: &'r str,
    region: Option<Region>,
}

/// The cap on a dose: the smallest in its unit. Caps for another region than the dose are ignored. A cap under any
/// other condition may apply, so it counts.
fn cap_for(caps: &[Cap<'_>], unit: &str, region: Option<Region>) -> Option<Quantity> {
    let elsewhere = |cap: &Cap<'_>| cap.region.zip(region).is_some_and(|(of, here)| of != here);
    caps.iter().filter(|cap| cap.unit == unit && !elsewhere(cap)).map(|cap| cap.amount).min()
}

/// The smallest part that can be given: a whole piece, half a piece if the leaflet itself halves it, a tenth of a
/// gram, a millilitre.
fn step(unit: &str, amount: Quantity) -> Quantity {
    let halves = !amount.thousandths().is_multiple_of(1_000) && amount.thousandths().is_multiple_of(500);
    match unit {
        "g" => Quantity::from_thousandths(100),
        "ml" => Quantity::whole(1),
        _ if halves => Quantity::from_thousandths(500),
        _ => Quantity::whole(1),
    }
}

/// The recipe for this volume. `None` if nothing is mixed.
pub(super) fn mixture(choice: &Choice, on: Day, millilitres: Quantity) -> Option<Mixture> {
    let mut recipes = choice.rules_on(Topic::Recipe).filter(|(_, rule)| rule.is_in_force(on));
    recipes.find_map(|(index, rule)| {
        let Says::Recipe { amount, unit, water_ml, sugar_g, makes_ml, .. } = &rule.says else {
            return None;
        };
        let tenth = Quantity::from_thousandths(100);
        let share = |of: Quantity| of.scaled(millilitres, *makes_ml).nearest(tenth);
        let whole = |of: Quantity| of.scaled(millilitres, *makes_ml).nearest(Quantity::whole(1));
        Some(Mixture {
            millilitres,
            medicine: share(*amount),
            unit: unit.clone().unwrap_or_else(|| choice.leaflet.unit.to_string()),
            water_ml: water_ml.map(whole),
            sugar_g: sugar_g.map(whole),
            rule: index,
        })
    })
}
