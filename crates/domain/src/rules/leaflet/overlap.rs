//! Checks the rules of a leaflet against each other: no two of one kind in force on one day, and satisfiable bounds.

use super::kinds;
use super::load::PlacedRule;
use super::rule::{BroodState, Force, Says};
use super::{Release, Rule};
use crate::basics::topic::Topic;
use crate::rules::table::DataFile;

/// Reports every pair of rules that cannot both apply, and rules that do not fit the release.
pub(super) fn check(file: &mut DataFile<'_>, release: Option<Release>, rules: &[PlacedRule]) {
    for (index, later) in rules.iter().enumerate() {
        for earlier in rules.iter().take(index) {
            if share_a_day(&earlier.rule, &later.rule) && meet(&earlier.rule, &later.rule) {
                one_slot(file, earlier, later);
                stay_bounds(file, earlier, later);
            }
        }
        let topic = later.rule.says.topic();
        if release == Some(Release::Single)
            && matches!(topic, Topic::Removal | Topic::StayMin | Topic::StayMax)
        {
            let message =
                format!("a single dose leaves nothing in the hive, so `{}` means nothing", topic.as_str());
            let help = "drop the rule, or write `release = \"slow\"` at the head of the leaflet";
            file.fault(later.places.of("kind"), message, help);
        }
    }
}

/// Reports two rules of one kind that are in force on one day.
fn one_slot(file: &mut DataFile<'_>, earlier: &PlacedRule, later: &PlacedRule) {
    let (one, two) = (&earlier.rule, &later.rule);
    if one.says.topic() != two.says.topic() {
        return;
    }
    let Some((fields, others)) = kinds::apart(&one.says).zip(kinds::apart(&two.says)) else { return };
    let topic = one.says.topic().as_str();
    // Advice may stand beside a binding rule.
    let bind_alike = (one.force == Force::Advice) == (two.force == Force::Advice);
    if fields == others && bind_alike {
        let line = file.line(earlier.places.of("kind"));
        let when = match earlier.rule.from.max(later.rule.from) {
            Some(on) => format!("on {on}"),
            None => "from the first day on".to_owned(),
        };
        let message =
            format!("two values of `{topic}` are in force {when}: this one and that of line {line}");
        file.fault(later.places.of("kind"), message, keep_apart(&earlier.rule, &later.rule));
    } else if brood(&one.says).is_none() != brood(&two.says).is_none() {
        let (without, with) = if brood(&one.says).is_none() { (earlier, later) } else { (later, earlier) };
        let line = file.line(with.places.of("brood"));
        let message =
            format!("this `{topic}` holds for any brood, but that of line {line} for one state of it");
        file.fault(without.places.of("kind"), message, "give both rules a `brood`, or neither");
    }
}

/// The help for two rules of one kind that overlap.
fn keep_apart(earlier: &Rule, later: &Rule) -> String {
    if earlier.revision != later.revision {
        return "a rule without `revision` holds for every revision: name the one it is for, or drop it"
            .to_owned();
    }
    if earlier.method != later.method {
        return "a rule without `method` holds for every method: name the one it is for, or drop it"
            .to_owned();
    }
    // An unknown start counts as the earliest.
    let (older, newer) = if earlier.from <= later.from { (earlier, later) } else { (later, earlier) };
    let Some(newer_from) = newer.from.filter(|_| older.from != newer.from) else {
        return if let Says::Temperature { .. } = later.says {
            "write `min_c` and `max_c` of one window in one rule, or keep one of the two"
        } else {
            "keep one of the two; or, if one replaced the other, give it a later `from`"
        }
        .to_owned();
    };
    let which =
        older.from.map_or("that has no `from`".to_owned(), |from| format!("that is in force from {from}"));
    format!("write `until = {}` in the one {which}", newer_from.before())
}

/// Reports a least stay that exceeds the longest stay.
fn stay_bounds(file: &mut DataFile<'_>, earlier: &PlacedRule, later: &PlacedRule) {
    let bounds = match (&earlier.rule.says, &later.rule.says) {
        (Says::StayMin { days: least, brood: a }, Says::StayMax { days: most, brood: b })
        | (Says::StayMax { days: most, brood: a }, Says::StayMin { days: least, brood: b }) => {
            (a.is_none() || b.is_none() || a == b).then_some((*least, *most))
        }
        _ => None,
    };
    let Some((least, most)) = bounds.filter(|(least, most)| most < least) else { return };
    let line = file.line(earlier.places.of("days"));
    let message =
        format!("it must stay at least {least} days but at most {most}; the other number is in line {line}");
    file.fault(later.places.of("days"), message, "correct the one that is wrong");
}

fn share_a_day(one: &Rule, two: &Rule) -> bool {
    let starts_in_time =
        |a: &Rule, b: &Rule| b.until.is_none_or(|until| a.from.is_none_or(|from| from <= until));
    starts_in_time(one, two) && starts_in_time(two, one)
}

/// Whether two rules can apply to the same lot and method.
fn meet(one: &Rule, two: &Rule) -> bool {
    let methods = one.method.is_none() || two.method.is_none() || one.method == two.method;
    methods && (one.revision.is_none() || two.revision.is_none() || one.revision == two.revision)
}

/// The brood state to which a stay is limited; `None` if it applies to any, or the rule is of another kind.
fn brood(says: &Says) -> Option<BroodState> {
    let (Says::StayMin { brood, .. } | Says::StayMax { brood, .. }) = says else { return None };
    *brood
}
