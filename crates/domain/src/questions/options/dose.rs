//! Dose sums: what each colony gets, by the base that the leaflet counts by, rounded up to what can be given; and the
//! solution that has to be mixed for all of them.

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

/// What one colony gets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Portion {
    /// At each dose; where the leaflet gives a range, the least.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 2))]
    pub each: Quantity,
    /// Where the leaflet gives a range, the most.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub each_at_most: Option<Quantity>,
    /// In what.
    pub unit: String,
    /// How many doses make the course, at least; absent where nobody has stated it.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// What the whole course takes, at least; where the leaflet gives a range, of the least of it. Absent where the number of
    /// doses is not known.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 4))]
    pub course: Option<Quantity>,
    /// How it was worked out.
    #[serde(skip)]
    pub sum: Sum,
    /// How well the dose of the leaflet is established.
    pub confidence: Confidence,
    /// The rules whose doses hold under another condition, by their index in the leaflet.
    #[serde(skip)]
    pub otherwise: Vec<usize>,
}

/// How a dose was worked out, and what was rounded.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sum {
    /// What the leaflet states, in the unit of the dose; where it gives a range, the least.
    pub amount: Quantity,
    /// For what it states that.
    pub base: Base,
    /// How many times the colony has that.
    pub times: u32,
    /// The amount so many times.
    pub exact: Quantity,
    /// What became of it.
    pub rounding: Rounding,
    /// The condition under which the leaflet states it, in its words.
    pub when: Option<String>,
}

/// For what a leaflet states an amount, with what was counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Base {
    /// The hive.
    Hive,
    /// A colony of so many bees.
    Bees(u32),
    /// So many brood boxes.
    BroodBoxes(u32),
    /// So many seams of bees.
    Seams(u32),
    /// So many frames of bees, or part of them.
    Frames {
        /// Seams of bees, as counted.
        seams: u32,
        /// Frames for which the leaflet states the amount.
        frames: u32,
    },
    /// Two comb sides for each of so many seams of bees.
    CombSides(u32),
    /// So many litres of hive.
    Litres(u32),
}

/// What becomes of an amount that cannot or must not be given as it comes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounding {
    /// It is given as it comes out.
    None,
    /// It is more than one colony may get.
    Capped,
    /// It is rounded up to what can be given.
    Up,
}

/// Why a dose, or the amount for a course, cannot be worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoDose {
    /// This must be counted first.
    NotCounted(Counting),
    /// The leaflet states none.
    NotStated,
    /// The leaflet states none for a colony of this size.
    NotForThisSize,
    /// The leaflet states several, each under a condition that the record does not tell.
    OneOf(Vec<DoseWhen>),
    /// The leaflet counts the dose in something else than the medicine.
    OtherUnit {
        /// What the medicine is counted in.
        unit: Unit,
        /// What the leaflet counts it in.
        counted_in: String,
    },
    /// Nobody has stated how many doses make the course.
    CountNotStated,
}

/// A dose that holds under a condition.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DoseWhen {
    /// At each dose; where the leaflet gives a range, the least.
    pub each: Quantity,
    /// Where the leaflet gives a range, the most.
    pub each_at_most: Option<Quantity>,
    /// In what.
    pub unit: String,
    /// The condition, in the words of the leaflet.
    pub when: String,
}

impl NoDose {
    /// The kind of entry that would supply it; none where no entry can.
    #[must_use]
    pub const fn supplied_by(&self) -> Option<Kind> {
        match self {
            NoDose::NotCounted(_) => Some(Kind::Inspection),
            NoDose::NotStated | NoDose::NotForThisSize | NoDose::OneOf(_) | NoDose::OtherUnit { .. } => None,
            NoDose::CountNotStated => Some(Kind::LeafletReading),
        }
    }
}

/// What has to be mixed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Mixture {
    /// Millilitres that are needed.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 250))]
    pub millilitres: Quantity,
    /// How much of the medicine.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 17.5))]
    pub medicine: Quantity,
    /// In what.
    pub unit: String,
    /// Millilitres of water.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub water_ml: Option<Quantity>,
    /// Grams of sugar.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub sugar_g: Option<Quantity>,
    /// The rule with the recipe, by its index in the leaflet.
    #[serde(skip)]
    pub rule: usize,
}

/// The dose of a colony on a day.
pub(super) fn of(choice: &Choice, colony: &Colony<'_>, on: Day) -> Result<Portion, NoDose> {
    let in_force =
        |topic| choice.rules_on(topic).filter(move |(_, rule): &(usize, &Rule)| rule.is_in_force(on));
    let mut rules: Vec<(usize, &Rule)> = in_force(Topic::Dose).collect();
    // The label goes before advice; a dose for small colonies stands beside the one for full ones.
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
    let doses = choice.doses(on);
    let conditional = |rule: &Rule| matches!(&rule.says, Says::Dose { when: Some(_), .. });
    let (under_condition, always): (Vec<(usize, &Rule)>, Vec<_>) =
        candidates.iter().copied().partition(|(_, rule)| conditional(rule));
    let mut worked: Option<Portion> = None;
    let mut otherwise: Vec<usize> = Vec::new();
    let index = |rules: &[(usize, &Rule)]| -> Vec<usize> { rules.iter().map(|(index, _)| *index).collect() };
    // What holds always goes first. Which of several conditions holds the record cannot tell.
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
        // The first that speaks of a colony of this size counts; if what it counts by was not counted, no other stands in.
        match (worked_out(rule, unit, colony, on, &caps)?, &worked) {
            (Some(dose), None) => {
                let doses = doses.known().copied();
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

/// The sum of one rule; none where it speaks of colonies of another size.
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
            // A seam of bees is counted as a frame of bees. Common practice, no source.
            let seams = seams()?;
            let frames = u32::from(frames.unwrap_or(1)).max(1);
            (seams.div_ceil(frames), Base::Frames { seams, frames })
        }
        DosePer::CombSide => {
            // A seam of bees sits on two comb sides that face each other.
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
        // The caller knows how many there are.
        doses: None,
        course: None,
        sum: Sum { amount: *amount, base, times, exact, rounding, when: when.clone() },
        confidence: Confidence::Unconfirmed,
        otherwise: Vec::new(),
    }))
}

/// Most that one colony may get, in a unit, in a region if it is limited to one.
struct Cap<'r> {
    amount: Quantity,
    unit: &'r str,
    region: Option<Region>,
}

/// The cap that holds for a dose: the smallest in its unit, but for those of another region than the dose. A cap under any other
/// condition may hold, so it counts.
fn cap_for(caps: &[Cap<'_>], unit: &str, region: Option<Region>) -> Option<Quantity> {
    let elsewhere = |cap: &Cap<'_>| cap.region.zip(region).is_some_and(|(of, here)| of != here);
    caps.iter().filter(|cap| cap.unit == unit && !elsewhere(cap)).map(|cap| cap.amount).min()
}

/// The smallest part that can be given: a whole piece, half a piece where the leaflet itself halves it, a tenth of a gram, a
/// millilitre.
fn step(unit: &str, amount: Quantity) -> Quantity {
    let halves = !amount.thousandths().is_multiple_of(1_000) && amount.thousandths().is_multiple_of(500);
    match unit {
        "g" => Quantity::from_thousandths(100),
        "ml" => Quantity::whole(1),
        _ if halves => Quantity::from_thousandths(500),
        _ => Quantity::whole(1),
    }
}

/// What is mixed for so many millilitres; none where nothing is mixed.
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
