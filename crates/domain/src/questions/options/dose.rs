//! Dose sums: what each colony gets, by the base that the leaflet counts by, rounded up to what can be given; and the
//! solution that has to be mixed for all of them.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use super::choice::Choice;
use super::colony::Colony;
use super::report::Missing;
use super::short::{self, amount_of};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::Unit;
use crate::journal::event::{Inspection, Kind};
use crate::rules::leaflet::rule::DosePer;
use crate::rules::leaflet::{Force, Rule, Says};

/// What one colony gets.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DoseSum {
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
    /// How it was worked out, with what was rounded.
    pub sum: String,
    /// How well the dose of the leaflet is established.
    pub confidence: Confidence,
    /// Doses that hold under another condition, in words.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub otherwise: Vec<String>,
}

/// Why a dose, or the amount for a course, cannot be worked out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum NoDose {
    /// This must be counted first.
    NotCounted(&'static str),
    /// The leaflet says nothing of the amount, or nothing that would tell it for this colony, in words.
    NotToldApart(String),
    /// Nobody has stated how many doses make the course.
    CountNotStated,
}

impl NoDose {
    /// What is not known.
    pub(super) fn fact(&self) -> String {
        match self {
            NoDose::NotCounted(what) => (*what).to_owned(),
            NoDose::NotToldApart(fact) => fact.clone(),
            NoDose::CountNotStated => "the course: how many doses make it is not stated".to_owned(),
        }
    }

    /// The entry that would supply it, and how.
    pub(super) fn missing(&self) -> Missing {
        let (supplied_by, how) = match self {
            NoDose::NotCounted(_) => (Some(Kind::Inspection), "count them and record it"),
            NoDose::NotToldApart(_) => {
                (None, "no entry can carry it: read the amount on the pack, or ask the supplier or the vet")
            }
            NoDose::CountNotStated => (
                Some(Kind::LeafletReading),
                "read the doses of a course on the leaflet of the lot and record it",
            ),
        };
        let supplied_by = supplied_by.map(Kind::as_str);
        Missing { supplied_by, how: how.to_owned(), ..Missing::new("dose", self.fact()) }
    }
}

/// What has to be mixed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Solution {
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
    /// The recipe of the leaflet.
    pub recipe: String,
    /// The order of mixing and its dangers.
    pub how: String,
}

/// The dose of a colony on a day.
pub(super) fn of(choice: &Choice, colony: &Colony<'_>, on: Day) -> Result<DoseSum, NoDose> {
    let in_force =
        |topic| choice.rules_on(topic).filter(move |(_, rule): &(usize, &Rule)| rule.is_in_force(on));
    let mut rules: Vec<&Rule> = in_force(Topic::Dose).map(|(_, rule)| rule).collect();
    // The label goes before advice; a dose for small colonies stands beside the one for full ones.
    if rules.iter().any(|rule| rule.force != Force::Advice) {
        rules.retain(|rule| rule.force != Force::Advice);
    }
    let small = |rule: &&Rule| matches!(rule.says, Says::Dose { per: DosePer::SmallColony, .. });
    let (small, full): (Vec<&Rule>, Vec<&Rule>) = rules.iter().partition(|rule| small(rule));
    let candidates = if full.is_empty() { &small } else { &full };
    let unit = choice.leaflet.unit;
    let caps: Vec<Cap<'_>> = in_force(Topic::DoseCap)
        .filter(|(_, rule)| rule.force != Force::Advice)
        .filter_map(|(_, rule)| {
            let Says::DoseCap { amount, unit: of, when } = &rule.says else { return None };
            let of = of.as_deref().unwrap_or(unit.as_str());
            Some(Cap { amount: *amount, unit: of, when: when.as_deref() })
        })
        .collect();
    let doses = choice.doses(on);
    let conditional = |rule: &&&Rule| matches!(&rule.says, Says::Dose { when: Some(_), .. });
    let (under_condition, always): (Vec<&Rule>, Vec<&Rule>) =
        candidates.iter().copied().partition(|rule| conditional(&rule));
    let mut worked: Option<DoseSum> = None;
    let mut otherwise: Vec<String> = Vec::new();
    // What holds always goes first. Which of several conditions holds the record cannot tell.
    let meant = match (always.as_slice(), under_condition.as_slice()) {
        ([], []) => {
            return Err(NoDose::NotToldApart("the dose: the leaflet here states none".to_owned()));
        }
        ([], [only]) => vec![*only],
        ([], several) => {
            let mut each: Vec<String> = Vec::new();
            for rule in several {
                let Some(dose) = worked_out(&rule.says, unit, colony, on, &caps)? else { continue };
                let least = dose.each_at_most.map(|_| format!("{} to ", dose.each)).unwrap_or_default();
                let most = amount_of(dose.each_at_most.unwrap_or(dose.each), &dose.unit);
                let Says::Dose { when, .. } = &rule.says else { continue };
                each.push(format!("{least}{most} ({})", when.as_deref().unwrap_or_default()));
            }
            let fact =
                format!("the dose: which of these holds the record does not tell: {}", each.join("; "));
            return Err(NoDose::NotToldApart(fact));
        }
        (always, _) => {
            otherwise.extend(under_condition.iter().map(|rule| short::says(&rule.says, unit)));
            always.to_vec()
        }
    };
    for rule in meant {
        // The first that speaks of a colony of this size counts; if what it counts by was not counted, no other stands in.
        match (worked_out(&rule.says, unit, colony, on, &caps)?, &worked) {
            (Some(dose), None) => {
                let course = doses.map(|doses| dose.each.times(u64::from(doses)));
                worked = Some(DoseSum { doses, course, confidence: rule.confidence, ..dose });
            }
            (Some(_), Some(_)) => otherwise.push(short::says(&rule.says, unit)),
            (None, _) => {}
        }
    }
    let fault = || {
        NoDose::NotToldApart("the dose: the leaflet here states none for a colony of this size".to_owned())
    };
    if !full.is_empty() {
        otherwise.extend(small.iter().map(|rule| short::says(&rule.says, unit)));
    }
    otherwise.extend(
        in_force(Topic::DoseCap)
            .filter(|&(_, rule)| matches!(rule.says, Says::DoseCap { when: Some(_), .. }))
            .map(|(_, rule)| short::says(&rule.says, unit)),
    );
    worked.map(|dose| DoseSum { otherwise, ..dose }).ok_or_else(fault)
}

/// The sum of one rule; none where it speaks of colonies of another size.
fn worked_out(
    says: &Says,
    leaflet_unit: Unit,
    colony: &Colony<'_>,
    on: Day,
    caps: &[Cap<'_>],
) -> Result<Option<DoseSum>, NoDose> {
    let Says::Dose { amount, amount_max, per, frames, min_bees, max_bees, unit, when } = says else {
        return Ok(None);
    };
    let unit = unit.as_deref().unwrap_or(leaflet_unit.as_str());
    let cap = cap_for(caps, unit, when.as_deref());
    let count = |what, fact: &'static str, pick: &dyn Fn(&Inspection) -> Option<u32>| {
        let some = colony.counts(on, pick).filter(|count| count.number > 0);
        some.map(|count| (count.number, what)).ok_or(NoDose::NotCounted(fact))
    };
    let seams = || {
        let pick = |seen: &Inspection| seen.seams.map(u32::from);
        count("seams of bees", "the dose: how many seams of bees there are", &pick)
    };
    let (times, of) = match per {
        DosePer::Hive | DosePer::SmallColony => (1, "the hive".to_owned()),
        DosePer::BroodBox => {
            let pick = |seen: &Inspection| seen.brood_boxes.map(u32::from);
            let (boxes, what) = count("brood boxes", "the dose: how many brood boxes there are", &pick)?;
            (boxes, counted(boxes, what))
        }
        DosePer::Seam => {
            let (seams, what) = seams()?;
            (seams, counted(seams, what))
        }
        DosePer::FramesOfBees => {
            // A seam of bees is counted as a frame of bees. Common practice, no source.
            let (seams, what) = seams()?;
            let frames = u32::from(frames.unwrap_or(1)).max(1);
            (seams.div_ceil(frames), format!("{}, for every {frames} or part", counted(seams, what)))
        }
        DosePer::CombSide => {
            // A seam of bees sits on two comb sides that face each other.
            let (seams, what) = seams()?;
            (seams.saturating_mul(2), format!("2 comb sides for each of {}", counted(seams, what)))
        }
        DosePer::LitreOfHive => {
            let pick = |seen: &Inspection| seen.hive_litres.map(u32::from);
            let (litres, what) = count("litres of hive", "the dose: how many litres the hive holds", &pick)?;
            (litres, counted(litres, what))
        }
        DosePer::Bees => {
            let pick = |seen: &Inspection| seen.bees;
            let (bees, what) = count("bees", "the dose: how many bees there are, as estimated", &pick)?;
            let within =
                min_bees.is_none_or(|least| least <= bees) && max_bees.is_none_or(|most| bees <= most);
            if !within {
                return Ok(None);
            }
            (1, counted(bees, what))
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
    let mut sum = if matches!(per, DosePer::Hive | DosePer::SmallColony | DosePer::Bees) {
        format!("{} for {of}", amount_of(*amount, unit))
    } else {
        format!("{} x {of}", amount_of(*amount, unit))
    };
    if times != 1 || *amount != exact {
        sum += &format!(" = {}", amount_of(exact, unit));
    }
    if cap.is_some_and(|cap| exact > cap) {
        sum += &format!(", capped at {}", amount_of(each, unit));
    } else if each != exact {
        sum += &format!(", rounded up to {}", amount_of(each, unit));
    }
    if let Some(when) = when {
        sum += &format!(" ({when})");
    }
    let unit = unit.to_owned();
    Ok(Some(DoseSum {
        each,
        each_at_most: most,
        unit,
        // The caller knows how many there are.
        doses: None,
        course: None,
        sum,
        confidence: Confidence::Unconfirmed,
        otherwise: Vec::new(),
    }))
}

/// A count with what was counted, in the singular where it is one.
fn counted(count: u32, what: &str) -> String {
    let one = match what {
        "brood boxes" => "brood box",
        "seams of bees" => "seam of bees",
        "litres of hive" => "litre of hive",
        other => other,
    };
    format!("{count} {}", if count == 1 { one } else { what })
}

/// Most that one colony may get, in a unit, under a condition.
struct Cap<'r> {
    amount: Quantity,
    unit: &'r str,
    when: Option<&'r str>,
}

/// The cap that holds for a dose: the smallest of those that hold always or under its condition; where none says so, the
/// smallest of all in its unit.
fn cap_for(caps: &[Cap<'_>], unit: &str, when: Option<&str>) -> Option<Quantity> {
    let in_unit = || caps.iter().filter(|cap| cap.unit == unit);
    let holds = |cap: &&Cap<'_>| {
        cap.when.is_none_or(|of| when.is_some_and(|when| when.contains(of) || of.contains(when)))
    };
    let held = in_unit().filter(holds).map(|cap| cap.amount).min();
    held.or_else(|| in_unit().map(|cap| cap.amount).min())
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
pub(super) fn solution(choice: &Choice, on: Day, millilitres: Quantity) -> Option<Solution> {
    let mut recipes = choice.rules_on(Topic::Recipe).filter(|(_, rule)| rule.is_in_force(on));
    recipes.find_map(|(_, rule)| {
        let Says::Recipe { amount, unit, water_ml, sugar_g, makes_ml, text } = &rule.says else {
            return None;
        };
        let tenth = Quantity::from_thousandths(100);
        let share = |of: Quantity| of.scaled(millilitres, *makes_ml).nearest(tenth);
        let whole = |of: Quantity| of.scaled(millilitres, *makes_ml).nearest(Quantity::whole(1));
        Some(Solution {
            millilitres,
            medicine: share(*amount),
            unit: unit.clone().unwrap_or_else(|| choice.leaflet.unit.to_string()),
            water_ml: water_ml.map(whole),
            sugar_g: sugar_g.map(whole),
            recipe: short::says(&rule.says, choice.leaflet.unit),
            how: text.clone(),
        })
    })
}
