//! The set of a lot: all entries that are kept or archived together.
//!
//! Sets are **closed**: no entry outside a set refers to one inside it, so archiving a whole set leaves no
//! dangling reference. Lots used in one administration share a set, and so do a dose and the entries that build on
//! it, and an entry and its corrections.

use std::collections::BTreeMap;

use crate::basics::words::{LotName, PrescriptionName};
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// The references of an entry, used to build sets.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Told {
    /// The entry.
    pub entry: EntryId,
    /// The lots it names.
    pub lots: Vec<LotName>,
    /// The entries it names: the dose it builds on, the entry it corrects.
    pub entries: Vec<EntryId>,
    /// The prescription it records.
    pub prescription: Option<PrescriptionName>,
    /// The prescription it was given under.
    pub given_under: Option<PrescriptionName>,
}

/// Entries that belong together, each list in the order of the journal.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct RecordSet {
    /// The lots, by name.
    pub lots: Vec<LotName>,
    /// The entries.
    pub entries: Vec<EntryId>,
    /// Prescriptions used in the set but recorded outside it, because others use them too.
    pub shared_prescriptions: Vec<PrescriptionName>,
}

/// The sets of a holding, in the order of their first entries.
#[must_use]
pub fn of_holding(holding: &Holding) -> Vec<RecordSet> {
    let told: Vec<Told> = holding.in_order().into_iter().filter_map(|record| told(record)).collect();
    // A strike-out names only the entry it strikes out, and belongs to the same set, if any.
    sets(&told)
}

/// The references of an entry. `None` for entries that belong to no set.
fn told(record: &Record) -> Option<Told> {
    let mut told = Told {
        entry: record.id,
        lots: Vec::new(),
        entries: record.correction.iter().map(|correction| correction.of).collect(),
        prescription: None,
        given_under: None,
    };
    match &record.event {
        Event::LotAcquired(body) => told.lots.push(body.lot.clone()),
        Event::VetLot(body) => told.lots.push(body.lot.clone()),
        Event::LeafletReading(body) => told.lots.push(body.lot.clone()),
        Event::Disposal(body) => told.lots.push(body.lot.clone()),
        Event::Administration(body) => {
            told.lots.extend(body.given.iter().map(|given| given.lot.clone()));
            told.entries.extend(body.continues);
            told.given_under.clone_from(&body.prescription);
        }
        Event::Removal(body) => told.entries.push(body.administration),
        Event::Prescription(body) => told.prescription = Some(body.prescription.clone()),
        Event::StrikeOut(_) => {}
        Event::LotOpened(body) => told.lots.push(body.lot.clone()),
        Event::DocumentAttached(body) => {
            told.lots.extend(body.lot.clone());
            told.prescription.clone_from(&body.prescription);
        }
        Event::HoldingDetails(_)
        | Event::ApiaryDetails(_)
        | Event::SiteConditions(_)
        | Event::NectarFlow(_)
        | Event::Temperature(_)
        | Event::TemperatureNormals(_)
        | Event::ColonyEstablished(_)
        | Event::ColonyMoved(_)
        | Event::ColonySplit(_)
        | Event::ColonyUnited(_)
        | Event::ColonyEnded(_)
        | Event::SupersOn(_)
        | Event::SupersOff(_)
        | Event::Inspection(_)
        | Event::MiteCount(_)
        | Event::MedicineDescribed(_)
        | Event::Harvest(_)
        | Event::Archived(_)
        | Event::InArchive(_) => return None,
    }
    Some(told)
}

/// Groups entries into sets, in their order. An entry that leads to no lot and records no prescription is in none.
#[must_use]
pub fn sets(told: &[Told]) -> Vec<RecordSet> {
    let mut groups = Groups::default();
    for one in told {
        groups.root(&Key::Entry(one.entry));
        let lots = one.lots.iter().map(|lot| Key::Lot(lot.clone()));
        let entries = one.entries.iter().map(|entry| Key::Entry(*entry));
        let recorded = one.prescription.iter().map(|number| Key::Prescription(number.clone()));
        for named in lots.chain(entries).chain(recorded) {
            groups.join(&Key::Entry(one.entry), &named);
        }
    }
    join_prescriptions(told, &mut groups);
    let mut sets: Vec<(RecordSet, bool)> = Vec::new();
    let mut places: BTreeMap<Key, usize> = BTreeMap::new();
    for one in told {
        let root = groups.root(&Key::Entry(one.entry));
        let at = *places.entry(root.clone()).or_insert(sets.len());
        if at == sets.len() {
            sets.push((RecordSet::default(), false));
        }
        let Some((set, counts)) = sets.get_mut(at) else { continue };
        *counts |= !one.lots.is_empty() || one.prescription.is_some();
        set.entries.push(one.entry);
        for lot in &one.lots {
            if !set.lots.contains(lot) {
                set.lots.push(lot.clone());
            }
        }
        let shared = one.given_under.iter().filter(|number| groups.root(&Key::of(number)) != root);
        for number in shared {
            if !set.shared_prescriptions.contains(number) {
                set.shared_prescriptions.push(number.clone());
            }
        }
    }
    let mut sets: Vec<RecordSet> =
        sets.into_iter().filter(|(_, counts)| *counts).map(|(set, _)| set).collect();
    for set in &mut sets {
        set.lots.sort_unstable();
    }
    sets
}

/// Adds each prescription to the set that used it, if only one did.
fn join_prescriptions(told: &[Told], groups: &mut Groups) {
    let mut used_in: BTreeMap<&PrescriptionName, Vec<Key>> = BTreeMap::new();
    for one in told {
        let Some(number) = &one.given_under else { continue };
        let root = groups.root(&Key::Entry(one.entry));
        let roots = used_in.entry(number).or_default();
        if !roots.contains(&root) {
            roots.push(root);
        }
    }
    for (number, roots) in used_in {
        if let [only] = roots.as_slice() {
            groups.join(&Key::of(number), only);
        }
    }
}

/// The keys that link entries of one set.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
enum Key {
    Entry(EntryId),
    Lot(LotName),
    Prescription(PrescriptionName),
}

impl Key {
    fn of(number: &PrescriptionName) -> Key {
        Key::Prescription(number.clone())
    }
}

/// Disjoint sets: each key points to another of its set, or to itself if it represents the set.
#[derive(Default)]
struct Groups {
    above: BTreeMap<Key, Key>,
}

impl Groups {
    /// The key that represents the set of this one.
    fn root(&mut self, key: &Key) -> Key {
        let mut walked = vec![key.clone()];
        let mut at = key.clone();
        while let Some(above) = self.above.get(&at).filter(|above| **above != at) {
            at = above.clone();
            walked.push(at.clone());
        }
        // Path compression: the next walk from here takes one step.
        for passed in walked {
            self.above.insert(passed, at.clone());
        }
        at
    }

    fn join(&mut self, one: &Key, other: &Key) {
        let (one, other) = (self.root(one), self.root(other));
        self.above.insert(one, other);
    }
}
