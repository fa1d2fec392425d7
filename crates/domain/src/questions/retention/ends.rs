//! When each lot was last used or disposed of, and whether its use is still running.

use std::collections::{BTreeMap, BTreeSet};

use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ColonyName, LotName, RemovalNeed};
use crate::facts::history::{End, History};
use crate::facts::holding::Holding;
use crate::facts::{Lot, Overdrawn};
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Disposal, Removal};
use crate::rules::leaflet::Leaflets;

/// The end of use of a lot, as far as it is known.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LotEnd {
    /// The last day on which some of it was given, taken out of a hive or disposed of; the day of acquisition if none
    /// was.
    pub last: Day,
    /// Every day on which some of it was acquired, given, taken out, disposed of, or was in a colony that ended. The
    /// law of each of these days applies, even if the entry of that day belongs to no lot.
    pub days: BTreeSet<Day>,
    /// Why the end may still move. Empty if everything is accounted for.
    pub runs: Vec<StillRuns>,
}

/// Why the last use of a lot is not known yet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum StillRuns {
    /// Stock is left according to the journal.
    Left(Quantity),
    /// More is gone than was acquired, so an amount is wrong.
    MoreGone(Quantity),
    /// A course is in colonies and not recorded as out.
    InHive {
        /// The colonies, by name.
        colonies: Vec<ColonyName>,
        /// The first dose.
        administration: EntryId,
        /// Whether it is known that it must come out.
        must_come_out: bool,
    },
}

impl LotEnd {
    /// Adds a colony in which a course still is.
    fn is_in(&mut self, colony: &ColonyName, first: EntryId, needed: bool) {
        for runs in &mut self.runs {
            if let StillRuns::InHive { colonies, administration, must_come_out } = runs
                && (*administration, *must_come_out) == (first, needed)
            {
                if !colonies.contains(colony) {
                    colonies.push(colony.clone());
                }
                return;
            }
        }
        let colonies = vec![colony.clone()];
        self.runs.push(StillRuns::InHive { colonies, administration: first, must_come_out: needed });
    }
}

/// The end of use of every lot of a holding.
#[must_use]
pub fn of_holding(holding: &Holding, leaflets: &Leaflets) -> BTreeMap<LotName, LotEnd> {
    let mut ends: BTreeMap<LotName, LotEnd> = BTreeMap::new();
    let mut lots_of: BTreeMap<EntryId, BTreeSet<LotName>> = BTreeMap::new();
    for lot in holding.lots() {
        let mut days: BTreeSet<Day> = BTreeSet::new();
        for record in holding.lot_file(lot) {
            if let Some(given) = record.body::<Administration>() {
                let first = holding.original(given.continues.unwrap_or(record.id));
                lots_of.entry(first).or_default().insert(lot.clone());
            } else if Lot::of(&record.event).is_none() && record.body::<Disposal>().is_none() {
                continue;
            }
            days.insert(record.on);
        }
        // A lot with leaflet readings only has no end of use.
        let Some(last) = days.last().copied() else { continue };
        ends.insert(lot.clone(), LotEnd { last, days, runs: balance(holding, lot) });
    }
    for colony in holding.colonies() {
        add_courses(holding, leaflets, colony, &lots_of, &mut ends);
    }
    // A removal counts as use even if its course is not found.
    for record in holding.in_order() {
        let Some(removal) = record.body::<Removal>() else { continue };
        if holding.superseded_by(record.id).is_some() {
            continue;
        }
        for lot in lots_of.get(&holding.original(removal.administration)).into_iter().flatten() {
            used(&mut ends, lot, record.on);
        }
    }
    ends
}

fn used(ends: &mut BTreeMap<LotName, LotEnd>, lot: &LotName, on: Day) {
    if let Some(end) = ends.get_mut(lot) {
        end.last = end.last.max(on);
        end.days.insert(on);
    }
}

/// The stock left of a lot, or the excess that is gone.
fn balance(holding: &Holding, lot: &LotName) -> Vec<StillRuns> {
    if holding.lot(lot).is_none() {
        return Vec::new();
    }
    match holding.balance(lot).left() {
        Fact::Known(left) if left.is_zero() => Vec::new(),
        Fact::Known(left) => vec![StillRuns::Left(left)],
        Fact::NotKnown(Overdrawn { by }) => vec![StillRuns::MoreGone(by)],
    }
}

/// Adds the uses of lots in the courses of a colony.
fn add_courses(
    holding: &Holding,
    leaflets: &Leaflets,
    colony: &ColonyName,
    lots_of: &BTreeMap<EntryId, BTreeSet<LotName>>,
    ends: &mut BTreeMap<LotName, LotEnd>,
) {
    let history = History::of(holding, leaflets, colony);
    for course in history.courses.iter().filter(|course| course.until.is_none()) {
        let lots = lots_of.get(&holding.original(course.entry));
        // Nothing of a single dose stays, whatever the source.
        let need = if course.terms.nothing_stays() {
            Some(RemovalNeed::NothingStays)
        } else {
            course.terms.removal.known().map(|fact| fact.value)
        };
        for lot in lots.into_iter().flatten() {
            match (course.end, history.ended, need) {
                (_, _, Some(RemovalNeed::NothingStays)) | (End::Open, _, Some(RemovalNeed::NotNeeded)) => {}
                // An open course ends with its colony. If the colony was united into another, that colony has the
                // course too.
                (End::Out { on, .. }, ..) | (End::Open, Some((on, _)), _) => used(ends, lot, on),
                (End::Open, None, need) => {
                    if let Some(end) = ends.get_mut(lot) {
                        end.is_in(colony, course.entry, need.is_some());
                    }
                }
            }
        }
    }
}
