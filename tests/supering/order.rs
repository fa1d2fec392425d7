//! Reordering entries of one day.

use std::collections::BTreeSet;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::journal::{Draft, Event, Kind};

use super::making::day;

/// Whether the order of two entries of one day may matter.
pub(super) fn depend(one: &Draft, two: &Draft) -> bool {
    let share_a_colony = named(&one.event).intersection(&named(&two.event)).next().is_some();
    let supers = |draft: &Draft| matches!(draft.kind(), Kind::SupersOn | Kind::SupersOff);
    let refers = |one: &Draft, two: &Draft| match &one.event {
        Event::Removal(body) => body.administration == two.id,
        Event::Administration(body) => body.continues == Some(two.id),
        _ => false,
    };
    let set_up = |draft: &Draft| draft.on < day(0);
    set_up(one)
        || refers(one, two)
        || refers(two, one)
        || (share_a_colony
            && (is_lineage(&one.event) || is_lineage(&two.event) || (supers(one) && supers(two))))
}

fn named(event: &Event) -> BTreeSet<&ColonyName> {
    match event {
        Event::ColonySplit(body) => [&body.colony, &body.into].into(),
        Event::ColonyUnited(body) => [&body.colony, &body.into].into(),
        Event::ColonyEnded(body) => [&body.colony].into(),
        Event::SupersOn(body) => body.colonies.iter().collect(),
        Event::SupersOff(body) => body.colonies.iter().collect(),
        Event::Removal(body) => body.colonies.iter().collect(),
        Event::Administration(body) => body.given.iter().flat_map(|given| &given.colonies).collect(),
        _ => BTreeSet::new(),
    }
}

fn is_lineage(event: &Event) -> bool {
    let kind = event.kind();
    matches!(kind, Kind::ColonyEstablished | Kind::ColonySplit | Kind::ColonyUnited | Kind::ColonyEnded)
}
