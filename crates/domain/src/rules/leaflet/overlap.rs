//! Checks the rules of a leaflet against each other: no two of one kind in force on one day, and satisfiable bounds.

use super::kinds;
use super::load::PlacedRule;
use super::rule::{BroodState, Force, Says};
use super::{Release, Rule};
use crate::basics::topic::Topic;
use crate::rules::fault::{KeepApart, RuleFault, ValueOf};
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
            file.fault(later.places.of("kind"), RuleFault::NothingStays { topic });
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
    let topic = one.says.topic();
    // Advice may stand beside a binding rule.
    let bind_alike = (one.force == Force::Advice) == (two.force == Force::Advice);
    if fields == others && bind_alike {
        let fault = RuleFault::TwoInForce {
            of: ValueOf::Topic(topic),
            on: one.from.max(two.from),
            line: file.line(earlier.places.of("kind")),
            apart: keep_apart(one, two),
        };
        file.fault(later.places.of("kind"), fault);
    } else if brood(&one.says).is_none() != brood(&two.says).is_none() {
        let (without, with) = if brood(&one.says).is_none() { (earlier, later) } else { (later, earlier) };
        let line = file.line(with.places.of("brood"));
        file.fault(without.places.of("kind"), RuleFault::AnyBrood { topic, line });
    }
}

/// How two rules of one kind that overlap are kept apart.
fn keep_apart(earlier: &Rule, later: &Rule) -> KeepApart {
    if earlier.revision != later.revision {
        return KeepApart::EveryRevision;
    }
    if earlier.method != later.method {
        return KeepApart::EveryMethod;
    }
    let apart = KeepApart::by_days(earlier.from, later.from);
    if apart == KeepApart::OneOfTwo && later.says.topic() == Topic::Temperature {
        return KeepApart::OneWindow;
    }
    apart
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
    file.fault(later.places.of("days"), RuleFault::StayBounds { least, most, line });
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
