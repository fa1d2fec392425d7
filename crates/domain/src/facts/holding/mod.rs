//! The journal of a holding, folded by what it mentions: apiaries, colonies, medicines, lots, prescriptions.
//!
//! For each name the fold keeps the entries that mention it, ordered by the day on which things happened, not by when they were
//! recorded: recording late is lawful. Corrected and struck-out entries leave these files but stay in the journal. Everything
//! else is derived when a question is asked, so that the cost of a question grows with one colony, not with the journal.
//!
//! - [`Holding::accept`] takes in a new entry, or refuses one that cannot be true ([`Refusal`])
//! - [`Holding::restore`] takes in an entry that is already in the journal

mod accept;
mod archived;
mod check;
mod check_courses;
mod check_documents;
mod check_names;
mod check_place;
pub(crate) mod mentions;
mod records;
mod references;
mod refusal;
pub mod untrue;
mod views;

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use crate::basics::calendar::{Day, Instant, TimeOfDay};
use crate::basics::words::{
    ApiaryName, ColonyName, HoldingName, Jurisdiction, LotName, MedicineName, Person, PrescriptionName,
};
use crate::facts::Balance;
use crate::journal::entry::{Correction, EntryId};
use crate::journal::event::{
    Body, Event, HoldingDetails, Kind, LotAcquired, MedicineDescribed, Prescription,
};
use crate::journal::kept::Kept;
use crate::journal::seal::Hash;
use records::Records;

pub use references::{Bond, Tie};
pub use refusal::Refusal;
pub use untrue::Untrue;
pub use views::ApiaryView;

/// An entry as the fold keeps it.
#[derive(Debug, Clone)]
pub struct Record {
    /// Its id.
    pub id: EntryId,
    /// Its place in the journal.
    pub seq: u64,
    /// Its place among entries of the same moment: that of the entry it corrects if day and time are unchanged, else
    /// its own.
    pub place: u64,
    /// The day on which it happened.
    pub on: Day,
    /// The time of day, if noted.
    pub at: Option<TimeOfDay>,
    /// When it was recorded.
    pub recorded_at: Instant,
    /// Who recorded it.
    pub recorded_by: Person,
    /// What happened.
    pub event: Event,
    /// What it corrects.
    pub correction: Option<Box<Correction>>,
}

impl Record {
    /// The body, if it is of this kind.
    #[must_use]
    pub fn body<B: Body>(&self) -> Option<&B> {
        B::of(&self.event)
    }

    /// Order within a file: day; then entries that bring a colony into the record before others; then time (entries
    /// without a time last); then place in the journal. A correction that keeps day and time keeps the place of the
    /// entry it corrects.
    pub(in crate::facts) fn order(&self) -> impl Ord + use<> {
        let happens = !matches!(self.event, Event::ColonyEstablished(_));
        (self.on, happens, self.at.is_none(), self.at, self.place)
    }
}

/// The entries that mention one name, in the order in which they happened.
pub type File = Vec<Arc<Record>>;

/// The entries of a file from one day to another (inclusive).
pub(crate) fn between(file: &[Arc<Record>], first: Day, last: Day) -> &[Arc<Record>] {
    let from = file.partition_point(|record| record.on < first);
    let to = file.partition_point(|record| record.on <= last);
    file.get(from..to).unwrap_or_default()
}

/// The entries of a file on one day.
pub(crate) fn of_day(file: &[Arc<Record>], on: Day) -> &[Arc<Record>] {
    between(file, on, on)
}

/// A holding, as recorded in its journal.
#[derive(Debug, Clone)]
pub struct Holding {
    name: HoldingName,
    tip: Option<(u64, Hash)>,
    records: Records,
    /// Which entry corrected or struck out which.
    superseded: HashMap<EntryId, EntryId>,
    details: File,
    apiaries: BTreeMap<ApiaryName, File>,
    colonies: BTreeMap<ColonyName, File>,
    /// The few entries of each colony's file that say where it came from, where it stood and when it ended.
    lives: BTreeMap<ColonyName, File>,
    /// For each apiary, the entries that brought a colony there by name.
    brought: BTreeMap<ApiaryName, File>,
    medicines: BTreeMap<MedicineName, File>,
    lots: BTreeMap<LotName, File>,
    prescriptions: BTreeMap<PrescriptionName, File>,
    /// What went into and out of each lot.
    balances: BTreeMap<LotName, Balance>,
    /// Later doses and removals, by the original id of their first dose.
    built_on: HashMap<EntryId, File>,
    /// Entries without a body that no entry yet says were moved into an archive, by place.
    bare: BTreeMap<u64, EntryId>,
}

impl Holding {
    /// A holding without entries.
    #[must_use]
    pub fn new(name: HoldingName) -> Holding {
        Holding {
            name,
            tip: None,
            records: Records::default(),
            superseded: HashMap::new(),
            details: File::new(),
            apiaries: BTreeMap::new(),
            colonies: BTreeMap::new(),
            lives: BTreeMap::new(),
            brought: BTreeMap::new(),
            medicines: BTreeMap::new(),
            lots: BTreeMap::new(),
            prescriptions: BTreeMap::new(),
            balances: BTreeMap::new(),
            built_on: HashMap::new(),
            bare: BTreeMap::new(),
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &HoldingName {
        &self.name
    }

    /// Place and hash of the last entry taken in.
    #[must_use]
    pub fn tip(&self) -> Option<(u64, Hash)> {
        self.tip
    }

    /// Takes in an entry that is already in the journal, without checking it.
    pub fn restore(&mut self, entry: impl Into<Kept>) {
        let kept = entry.into();
        self.tip = Some((kept.seq, kept.hash));
        self.take_in(kept);
    }

    /// The entry with this id, corrected or not.
    #[must_use]
    pub fn entry(&self, id: EntryId) -> Option<&Arc<Record>> {
        self.records.get(id)
    }

    /// Every entry in the order of the journal, including corrected and struck-out ones.
    #[must_use]
    pub fn in_order(&self) -> Vec<&Arc<Record>> {
        let mut records: Vec<&Arc<Record>> = self.records.all().collect();
        records.sort_unstable_by_key(|record| record.seq);
        records
    }

    /// The entry that corrected or struck out this one.
    #[must_use]
    pub fn superseded_by(&self, id: EntryId) -> Option<EntryId> {
        self.superseded.get(&id).copied()
    }

    /// The newest correction of an entry; none if it was struck out or is unknown.
    #[must_use]
    pub fn effective(&self, id: EntryId) -> Option<&Arc<Record>> {
        let mut record = self.records.get(id)?;
        while let Some(by) = self.superseded.get(&record.id) {
            record = self.records.get(*by)?;
        }
        (record.event.kind() != Kind::StrikeOut).then_some(record)
    }

    /// The first entry in a chain of corrections: the id by which other entries may still name it.
    #[must_use]
    pub fn original(&self, id: EntryId) -> EntryId {
        let mut id = id;
        while let Some(correction) = self.records.get(id).and_then(|record| record.correction.as_ref()) {
            id = correction.of;
        }
        id
    }

    /// Who keeps the holding on this day, and whose rules apply; before the first such entry, as that one says.
    #[must_use]
    pub fn details(&self, on: Day) -> Option<&HoldingDetails> {
        let at = self.details.iter().rfind(|record| record.on <= on).or_else(|| self.details.first())?;
        at.body()
    }

    /// Whose rules apply on this day.
    #[must_use]
    pub fn jurisdiction(&self, on: Day) -> Option<&Jurisdiction> {
        self.details(on).map(|details| &details.jurisdiction)
    }

    /// The entries that say who keeps the holding, in the order in which they apply.
    #[must_use]
    pub fn details_file(&self) -> &[Arc<Record>] {
        &self.details
    }

    /// Every standing entry (not corrected, struck out or archived) in the order in which things happened.
    #[must_use]
    pub fn standing(&self) -> Vec<&Arc<Record>> {
        self.standing_if(|_| true)
    }

    /// The standing entries that are wanted, in the order in which things happened.
    pub(crate) fn standing_if(&self, wanted: impl Fn(&Record) -> bool) -> Vec<&Arc<Record>> {
        let stands = |record: &&Arc<Record>| {
            wanted(record)
                && !self.superseded.contains_key(&record.id)
                && !matches!(record.event, Event::StrikeOut(_) | Event::InArchive(_))
        };
        let mut standing: Vec<&Arc<Record>> = self.records.all().filter(stands).collect();
        standing.sort_by_key(|record| record.order());
        standing
    }

    /// Every correction and strike-out with the entry it names, in the order in which they were recorded, as (old,
    /// new).
    #[must_use]
    pub fn corrections(&self) -> Vec<(&Arc<Record>, &Arc<Record>)> {
        let corrected = self.records.all().filter_map(|new| {
            let old = self.records.get(new.correction.as_ref()?.of)?;
            // Both were archived together.
            (!matches!(old.event, Event::InArchive(_))).then_some((old, new))
        });
        let mut corrections: Vec<_> = corrected.collect();
        corrections.sort_by_key(|(_, new)| new.seq);
        corrections
    }

    /// Every colony that ever was, by name.
    pub fn colonies(&self) -> impl Iterator<Item = &ColonyName> {
        self.colonies.iter().filter(|(_, file)| !file.is_empty()).map(|(name, _)| name)
    }

    /// Every apiary, by name.
    pub fn apiaries(&self) -> impl Iterator<Item = &ApiaryName> {
        self.apiaries.iter().filter(|(_, file)| !file.is_empty()).map(|(name, _)| name)
    }

    /// Every medicine, by name.
    pub fn medicines(&self) -> impl Iterator<Item = &MedicineName> {
        self.medicines.iter().filter(|(_, file)| !file.is_empty()).map(|(name, _)| name)
    }

    /// Every lot, by name.
    pub fn lots(&self) -> impl Iterator<Item = &LotName> {
        self.lots.iter().filter(|(_, file)| !file.is_empty()).map(|(name, _)| name)
    }

    /// The entries that mention a colony, in the order in which they happened.
    #[must_use]
    pub fn colony_file(&self, colony: &ColonyName) -> &[Arc<Record>] {
        self.colonies.get(colony).map_or(&[], Vec::as_slice)
    }

    /// The entries that say where a colony came from, where it stood and when it ended, in the order in which they
    /// happened.
    #[must_use]
    pub(crate) fn life_file(&self, colony: &ColonyName) -> &[Arc<Record>] {
        self.lives.get(colony).map_or(&[], Vec::as_slice)
    }

    /// The entries that brought a colony to an apiary by name.
    #[must_use]
    pub(in crate::facts) fn brought_to(&self, apiary: &ApiaryName) -> &[Arc<Record>] {
        self.brought.get(apiary).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention an apiary, in the order in which they happened.
    #[must_use]
    pub fn apiary_file(&self, apiary: &ApiaryName) -> &[Arc<Record>] {
        self.apiaries.get(apiary).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention a lot, in the order in which they happened.
    #[must_use]
    pub fn lot_file(&self, lot: &LotName) -> &[Arc<Record>] {
        self.lots.get(lot).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention a prescription, in the order in which they happened.
    #[must_use]
    pub fn prescription_file(&self, prescription: &PrescriptionName) -> &[Arc<Record>] {
        self.prescriptions.get(prescription).map_or(&[], Vec::as_slice)
    }

    /// A medicine as it was described.
    #[must_use]
    pub fn medicine(&self, medicine: &MedicineName) -> Option<(&Arc<Record>, &MedicineDescribed)> {
        self.medicines.get(medicine)?.iter().find_map(|record| Some((record, record.body()?)))
    }

    /// A lot as it was acquired.
    #[must_use]
    pub fn lot(&self, lot: &LotName) -> Option<(&Arc<Record>, &LotAcquired)> {
        self.lot_file(lot).iter().find_map(|record| Some((record, record.body()?)))
    }

    /// A prescription as it was recorded.
    #[must_use]
    pub fn prescription(&self, prescription: &PrescriptionName) -> Option<(&Arc<Record>, &Prescription)> {
        self.prescription_file(prescription).iter().find_map(|record| Some((record, record.body()?)))
    }

    /// What went into and out of a lot, by every entry on record.
    #[must_use]
    pub fn balance(&self, lot: &LotName) -> Balance {
        self.balances.get(lot).copied().unwrap_or_default()
    }
}
