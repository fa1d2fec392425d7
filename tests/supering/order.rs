//! Reordering entries of one day.

use std::collections::BTreeSet;

use combclear_domain::basics::words::ColonyName;
use combclear_domain::journal::{Draft, Event, Kind};

use super::making::{Journal, day};

/// The same entries, with those of one day in another order; an entry stays after those of its day that it depends on.
pub(super) fn shuffled_within_days(journal: &Journal, keys: &[u16]) -> Journal {
    let mut left: Vec<(u16, &Draft)> = keys.iter().cycle().copied().zip(&journal.0).collect();
    let mut shuffled: Vec<Draft> = Vec::new();
    while let Some((_, next)) = left.first() {
        let of_day = left.iter().take_while(|(_, draft)| draft.on == next.on).count();
        let free = (0..of_day)
            .filter(|index| !left[..*index].iter().any(|(_, before)| depend(before, left[*index].1)));
        let chosen = free.min_by_key(|index| left[*index].0).unwrap();
        shuffled.push(left.remove(chosen).1.clone());
    }
    Journal(shuffled)
}

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
