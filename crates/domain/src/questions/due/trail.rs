//! The entries that affect an item, including those that were corrected or struck out. The position of the last one
//! is the sequence number: a calendar keeps the item with the higher number.
//!
//! The number must never fall while an item keeps its key, or calendars would keep an older state. So every entry
//! that may once have affected it counts: an inspection that was struck out moved a date, and so did the strike-out.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::kind::DueKind;
use crate::basics::calendar::Day;
use crate::basics::words::{ColonyName, LotName, MedicineName, PrescriptionName};
use crate::facts::holding::{Holding, Record, mentions};
use crate::journal::entry::EntryId;
use crate::journal::event::{Body, ColonySplit, ColonyUnited, Event, Kind};

/// An entry, with its event and the events that it corrects.
struct Step<'h> {
    record: &'h Arc<Record>,
    /// The event, and the one it corrects.
    events: Vec<&'h Event>,
}

/// All entries of a holding, by the names they mention.
pub(super) struct Trails<'h> {
    holding: &'h Holding,
    as_of: Day,
    steps: Vec<Step<'h>>,
    colonies: BTreeMap<&'h ColonyName, Vec<usize>>,
    lots: BTreeMap<&'h LotName, Vec<usize>>,
    medicines: BTreeMap<&'h MedicineName, Vec<usize>>,
    prescriptions: BTreeMap<&'h PrescriptionName, Vec<usize>>,
    /// Doses, removals and their corrections, by the first id of their first dose or of the lot's acquisition.
    anchors: BTreeMap<EntryId, Vec<usize>>,
    details: Vec<usize>,
    /// Cache: one course supports many items.
    known: BTreeMap<(DueKind, EntryId), Option<usize>>,
}

impl<'h> Trails<'h> {
    pub(super) fn of(holding: &'h Holding, as_of: Day) -> Trails<'h> {
        let mut trails = Trails {
            holding,
            as_of,
            steps: Vec::new(),
            colonies: BTreeMap::new(),
            lots: BTreeMap::new(),
            medicines: BTreeMap::new(),
            prescriptions: BTreeMap::new(),
            anchors: BTreeMap::new(),
            details: Vec::new(),
            known: BTreeMap::new(),
        };
        for record in holding.in_order() {
            trails.take_in(record);
        }
        trails
    }

    fn take_in(&mut self, record: &'h Arc<Record>) {
        let index = self.steps.len();
        let old = record.correction.as_ref().and_then(|correction| self.holding.entry(correction.of));
        let events: Vec<&Event> = std::iter::once(&record.event).chain(old.map(|old| &old.event)).collect();
        let mut anchors: BTreeSet<EntryId> = BTreeSet::from([self.holding.original(record.id)]);
        for event in &events {
            let names = mentions::of(event);
            names.colonies.iter().for_each(|name| self.colonies.entry(name).or_default().push(index));
            names.lots.iter().for_each(|name| self.lots.entry(name).or_default().push(index));
            names.medicines.iter().for_each(|name| self.medicines.entry(name).or_default().push(index));
            names
                .prescriptions
                .iter()
                .for_each(|name| self.prescriptions.entry(name).or_default().push(index));
            anchors.extend(names.builds_on.map(|first| self.holding.original(first)));
            if matches!(event, Event::HoldingDetails(_)) {
                self.details.push(index);
            }
        }
        for anchor in anchors {
            self.anchors.entry(anchor).or_default().push(index);
        }
        self.steps.push(Step { record, events });
    }

    /// The last entry that affects an item.
    pub(super) fn last(
        &mut self,
        kind: DueKind,
        anchor: EntryId,
        colonies: &[ColonyName],
        grounds: &[EntryId],
    ) -> Option<&'h Record> {
        let known = self.known.get(&(kind, anchor)).copied();
        let behind = known.unwrap_or_else(|| self.behind(kind, anchor));
        self.known.insert((kind, anchor), behind);
        // Whether supers may be on depends on every course of a colony.
        let courses = grounds.iter().filter(|_| matches!(kind, DueKind::SupersFree | DueKind::TakeSupersOff));
        let of_courses = courses.filter_map(|entry| self.behind(kind, self.holding.original(*entry))).max();
        let of_colonies = colonies.iter().filter_map(|colony| self.last_of_colony(kind, colony)).max();
        let behind = behind.max(of_courses).max(of_colonies).and_then(|index| self.steps.get(index));
        let behind = behind.map(|step| &**step.record);
        let grounds = grounds.iter().filter_map(|entry| self.holding.entry(*entry)).map(|record| &**record);
        behind.into_iter().chain(grounds).max_by_key(|record| record.seq)
    }

    /// The last entry that affects items coming from `anchor`: through the colonies that its course may have reached,
    /// its lots, and their medicine and prescriptions.
    fn behind(&self, kind: DueKind, anchor: EntryId) -> Option<usize> {
        let own = self.anchors.get(&anchor).map_or(&[][..], Vec::as_slice);
        let mut colonies: BTreeSet<&ColonyName> = BTreeSet::new();
        let mut lots: BTreeSet<&LotName> = BTreeSet::new();
        let mut medicines: BTreeSet<&MedicineName> = BTreeSet::new();
        let mut prescriptions: BTreeSet<&PrescriptionName> = BTreeSet::new();
        for event in own.iter().filter_map(|index| self.steps.get(*index)).flat_map(|step| &step.events) {
            let names = mentions::of(event);
            colonies.extend(names.colonies);
            lots.extend(names.lots);
            medicines.extend(names.medicines);
            prescriptions.extend(names.prescriptions);
        }
        self.follow_partings(&mut colonies);
        let last = |steps: Option<&Vec<usize>>, bears: &dyn Fn(&Event) -> bool| self.last_in(steps?, bears);
        let any = |_: &Event| true;
        let mut found = self.last_in(own, &any);
        for lot in lots {
            let told = |event: &Event| bears(kind, event).on_lots;
            found = found.max(last(self.lots.get(lot), &told));
            medicines.extend(self.holding.lot(lot).map(|(_, lot)| lot.medicine));
        }
        let described = |event: &Event| matches!(event, Event::MedicineDescribed(_));
        let prescribed = |event: &Event| matches!(event, Event::Prescription(_));
        let medicines = medicines.into_iter().map(|medicine| last(self.medicines.get(medicine), &described));
        let prescriptions = prescriptions.into_iter().map(|of| last(self.prescriptions.get(of), &prescribed));
        let colonies = colonies.into_iter().map(|colony| self.last_of_colony(kind, colony));
        let details = std::iter::once(self.last_in(&self.details, &any));
        found.max(medicines.chain(prescriptions).chain(colonies).chain(details).max().flatten())
    }

    /// Adds the colonies that were split off from these or united with them.
    fn follow_partings(&self, colonies: &mut BTreeSet<&'h ColonyName>) {
        let mut open: Vec<&ColonyName> = colonies.iter().copied().collect();
        while let Some(colony) = open.pop() {
            let steps =
                self.colonies.get(colony).into_iter().flatten().filter_map(|index| self.steps.get(*index));
            for event in steps.flat_map(|step| &step.events) {
                let split = ColonySplit::of(event).map(|body| (&body.colony, &body.into));
                let united = ColonyUnited::of(event).map(|body| (&body.colony, &body.into));
                let Some((one, other)) = split.or(united) else { continue };
                open.extend([one, other].into_iter().filter(|name| colonies.insert(name)));
            }
        }
    }

    fn last_of_colony(&self, kind: DueKind, colony: &ColonyName) -> Option<usize> {
        self.last_in(self.colonies.get(colony)?, &|event| bears(kind, event).on_colonies)
    }

    /// The last of these entries that is dated by the day and affects the item.
    fn last_in(&self, steps: &[usize], bears: &dyn Fn(&Event) -> bool) -> Option<usize> {
        steps.iter().rev().copied().find(|index| {
            self.steps.get(*index).is_some_and(|step| {
                let counts =
                    step.record.on <= self.as_of || step.record.correction.is_some() || is_knowledge(step);
                counts && step.events.iter().any(|event| bears(event))
            })
        })
    }
}

/// Readings and descriptions count whatever their day.
fn is_knowledge(step: &Step<'_>) -> bool {
    let kinds = [Kind::LeafletReading, Kind::MedicineDescribed, Kind::Prescription, Kind::HoldingDetails];
    kinds.contains(&step.record.event.kind())
}

/// Whether an entry affects the tasks of a lot that it names, and of a colony that it names.
struct Bears {
    on_lots: bool,
    on_colonies: bool,
}

fn bears(kind: DueKind, event: &Event) -> Bears {
    let of_lot = matches!(kind, DueKind::LotLastDay | DueKind::LotExpires | DueKind::DisposeOfLot);
    let lots = |on_lots| Bears { on_lots, on_colonies: false };
    let colonies = |on_colonies| Bears { on_lots: false, on_colonies };
    match event {
        Event::LotAcquired(_) | Event::VetLot(_) | Event::LeafletReading(_) => lots(true),
        Event::LotOpened(_) | Event::Disposal(_) => lots(of_lot),
        Event::Administration(_) => Bears { on_lots: of_lot, on_colonies: !of_lot },
        Event::Removal(_)
        | Event::ColonyEstablished(_)
        | Event::ColonyMoved(_)
        | Event::ColonySplit(_)
        | Event::ColonyUnited(_)
        | Event::ColonyEnded(_) => colonies(!of_lot),
        Event::Inspection(seen) => {
            colonies(matches!(kind, DueKind::TakeOut | DueKind::SupersFree) && seen.brood.is_some())
        }
        Event::SupersOn(_) | Event::SupersOff(_) => colonies(kind == DueKind::TakeSupersOff),
        Event::MiteCount(_) => colonies(kind == DueKind::CountMites),
        Event::HoldingDetails(_)
        | Event::ApiaryDetails(_)
        | Event::SiteConditions(_)
        | Event::NectarFlow(_)
        | Event::Temperature(_)
        | Event::TemperatureNormals(_)
        | Event::MedicineDescribed(_)
        | Event::DocumentAttached(_)
        | Event::Prescription(_)
        | Event::Harvest(_)
        | Event::StrikeOut(_)
        | Event::Archived(_)
        | Event::InArchive(_) => Bears { on_lots: false, on_colonies: false },
    }
}
