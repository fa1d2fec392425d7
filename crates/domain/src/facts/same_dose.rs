//! A dose that may be on record twice: a slip of the pen, a row of a sheet that was changed and imported again, or given
//! twice on one day.

use std::collections::BTreeSet;

use super::holding::{Holding, Record, of_day};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::words::ColonyName;
use crate::journal::event::Administration;

/// The entries that may record the same dose: of the same lot, to some of the same colonies, on the same day, whatever the amount.
/// Times of day that differ tell two doses apart. Each comes with those colonies; in the order of the journal.
#[must_use]
pub fn same_doses<'h>(
    holding: &'h Holding,
    given: &Administration,
    on: Day,
    at: Option<TimeOfDay>,
) -> Vec<(&'h Record, BTreeSet<ColonyName>)> {
    let mut same: Vec<(&Record, BTreeSet<ColonyName>)> = Vec::new();
    for part in &given.given {
        for record in of_day(holding.lot_file(&part.lot), on) {
            let Some(other) = record.body::<Administration>() else { continue };
            if at.zip(record.at).is_some_and(|(one, other)| one != other) {
                continue;
            }
            let alike = other.given.iter().filter(|of| of.lot == part.lot);
            let colonies: BTreeSet<ColonyName> = alike
                .flat_map(|of| &of.colonies)
                .filter(|colony| part.colonies.contains(colony))
                .cloned()
                .collect();
            if colonies.is_empty() {
                continue;
            }
            match same.iter_mut().find(|(known, _)| known.id == record.id) {
                Some((_, known)) => known.extend(colonies),
                None => same.push((record, colonies)),
            }
        }
    }
    same.sort_unstable_by_key(|(record, _)| record.seq);
    same
}
