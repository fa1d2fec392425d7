//! Rules of one leaflet checked against each other: no two of one kind in force on one day, bounds that can be met.

use super::load::PlacedRule;
use super::rule::{BroodState, DosePer, Force, Says, TemperatureWindow, Topic};
use super::table::File;
use super::{Release, Rule};

/// Notes every pair of rules that cannot hold at the same time, and rules that do not fit the way of release.
pub(super) fn check(file: &mut File<'_>, release: Release, rules: &[PlacedRule]) {
    for (index, later) in rules.iter().enumerate() {
        for earlier in rules.iter().take(index) {
            if share_a_day(&earlier.rule, &later.rule) && methods_meet(&earlier.rule, &later.rule) {
                pair(file, earlier, later);
            }
        }
        let topic = later.rule.says.topic();
        if release == Release::Single && matches!(topic, Topic::Removal | Topic::StayMin | Topic::StayMax) {
            let message =
                format!("a single dose leaves nothing in the hive, so `{}` means nothing", topic.as_str());
            file.fault(later.offset, message, "set `release = \"slow\"`, or drop the rule");
        }
    }
}

fn pair(file: &mut File<'_>, earlier: &PlacedRule, later: &PlacedRule) {
    let line = file.line(earlier.offset);
    let topic = later.rule.says.topic().as_str();
    if let (Some(one), Some(two)) = (slot(&earlier.rule), slot(&later.rule)) {
        if one == two {
            let message =
                format!("two values of `{topic}` are in force on one day; the other is in line {line}");
            file.fault(later.offset, message, "give the older one an `until` before the newer one's `from`");
        } else if one.topic == two.topic && (one.brood.is_none() != two.brood.is_none()) {
            let message =
                format!("`{topic}` holds for any brood in line {line}, but for one state of brood here");
            file.fault(later.offset, message, "give both a `brood`, or neither");
        }
    }
    let bounds = match (&earlier.rule.says, &later.rule.says) {
        (Says::StayMin { days: least, brood: a }, Says::StayMax { days: most, brood: b })
        | (Says::StayMax { days: most, brood: a }, Says::StayMin { days: least, brood: b }) => {
            (a.is_none() || b.is_none() || a == b).then_some((*least, *most))
        }
        _ => None,
    };
    if let Some((least, most)) = bounds.filter(|(least, most)| most < least) {
        let message = format!(
            "it must stay at least {least} days and at most {most}; the other rule is in line {line}"
        );
        file.fault(later.offset, message, "correct the one that is wrong");
    }
}

fn share_a_day(one: &Rule, two: &Rule) -> bool {
    let starts_in_time = |a: &Rule, b: &Rule| b.until.is_none_or(|until| a.from <= until);
    starts_in_time(one, two) && starts_in_time(two, one)
}

fn methods_meet(one: &Rule, two: &Rule) -> bool {
    one.method.is_none() || two.method.is_none() || one.method == two.method
}

/// What only one rule may fill at a time.
#[derive(PartialEq, Eq)]
struct Slot {
    topic: Topic,
    advice: bool,
    brood: Option<BroodState>,
    window: Option<TemperatureWindow>,
    per: Option<DosePer>,
}

/// The slot of a rule; none for rules in words only, of which there may be several.
fn slot(rule: &Rule) -> Option<Slot> {
    let mut slot = Slot {
        topic: rule.says.topic(),
        advice: rule.force == Force::Advice,
        brood: None,
        window: None,
        per: None,
    };
    match &rule.says {
        Says::StayMin { brood, .. } | Says::StayMax { brood, .. } => slot.brood = *brood,
        Says::Temperature { window, .. } => slot.window = Some(*window),
        Says::Dose { per, .. } => slot.per = Some(*per),
        Says::CombRule { .. }
        | Says::Entrance { .. }
        | Says::NotWith { .. }
        | Says::WholeApiary { .. }
        | Says::UserSafety { .. }
        | Says::AfterOpening { .. }
        | Says::Storage { .. }
        | Says::Disposal { .. } => return None,
        _ => {}
    }
    Some(slot)
}
