//! The journal of a holding folded into what it speaks of: apiaries, colonies, medicines, lots, prescriptions.
//!
//! The fold keeps, under each name, the entries that mention it, ordered by the day on which they happened (and not
//! by when they were recorded: recording late is lawful). Corrected and struck-out entries leave these files but stay
//! in the journal. Everything else is derived when a question is asked, so that a question costs what one colony costs.
//!
//! - [`Holding::accept`] takes a new entry in, or refuses what cannot be true ([`Refusal`])
//! - [`Holding::restore`] takes in what is already in the journal

mod accept;
mod archived;
mod check;
mod check_courses;
mod check_documents;
mod check_names;
mod check_place;
pub(crate) mod mentions;
mod references;
mod refusal;
mod site;
pub mod untrue;
mod views;

use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

use crate::basics::calendar::{Day, Instant, TimeOfDay};
use crate::basics::words::{
    ApiaryName, ColonyName, HoldingName, Jurisdiction, LotName, MedicineName, Person, PrescriptionName,
};
use crate::facts::Balance;
use crate::journal::entry::{Correction, Entry, EntryId};
use crate::journal::event::{
    Body, Event, HoldingDetails, Kind, LotAcquired, MedicineDescribed, Prescription,
};
use crate::journal::seal::Hash;

pub use references::{Bond, Tie};
pub use refusal::Refusal;
pub(crate) use site::SiteFile;
pub use site::SiteView;
pub use untrue::Untrue;
pub use views::{ApiaryView, LotView};

/// An entry as the fold keeps it.
#[derive(Debug, Clone)]
pub struct Record {
    /// Its id.
    pub id: EntryId,
    /// Its place in the journal.
    pub seq: u64,
    /// Its place among entries of one moment: of the entry that it corrects, if day and time stayed the same, else its own.
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
    pub correction: Option<Correction>,
}

impl Record {
    /// What it says, if it is of that kind.
    #[must_use]
    pub fn body<B: Body>(&self) -> Option<&B> {
        B::of(&self.event)
    }

    /// Order within a file: day, then what brings a colony into the record before what happens to it, then time (entries without
    /// one after those with), then place in the journal, where a correction that keeps day and time keeps the place of what it
    /// corrects.
    pub(in crate::facts) fn order(&self) -> impl Ord + use<> {
        let happens = !matches!(self.event, Event::ColonyEstablished(_));
        (self.on, happens, self.at.is_none(), self.at, self.place)
    }
}

/// The entries that mention one name, in the order in which they happened.
pub type File = Vec<Arc<Record>>;

/// The entries of a file from a day to another, both included.
pub(crate) fn between(file: &[Arc<Record>], first: Day, last: Day) -> &[Arc<Record>] {
    let from = file.partition_point(|record| record.on < first);
    let to = file.partition_point(|record| record.on <= last);
    file.get(from..to).unwrap_or_default()
}

/// The entries of a file on one day.
pub(crate) fn of_day(file: &[Arc<Record>], on: Day) -> &[Arc<Record>] {
    between(file, on, on)
}

/// A holding as its journal tells it.
#[derive(Debug, Clone)]
pub struct Holding {
    name: HoldingName,
    tip: Option<(u64, Hash)>,
    /// Looked up by id only; walked by `in_order` alone, which sorts: answers must not depend on the order of a hash map.
    records: HashMap<EntryId, Arc<Record>>,
    /// Which entry corrected or struck out which.
    superseded: HashMap<EntryId, EntryId>,
    details: File,
    apiaries: BTreeMap<ApiaryName, File>,
    colonies: BTreeMap<ColonyName, File>,
    /// Of the colonies' files, what says where a colony came from, where it stood and when it ended: a few entries of many.
    lives: BTreeMap<ColonyName, File>,
    /// The colonies that an entry brought to an apiary by name, with those entries.
    brought: BTreeMap<ApiaryName, File>,
    medicines: BTreeMap<MedicineName, File>,
    lots: BTreeMap<LotName, File>,
    prescriptions: BTreeMap<PrescriptionName, File>,
    /// What went in and out of each lot.
    balances: BTreeMap<LotName, Balance>,
    /// Later doses and removals, under the first id that their first dose ever had.
    built_on: HashMap<EntryId, File>,
    /// Entries without body of which no entry said yet that they were moved into an archive, by place.
    bare: BTreeMap<u64, EntryId>,
}

impl Holding {
    /// A holding without a single entry.
    #[must_use]
    pub fn new(name: HoldingName) -> Holding {
        Holding {
            name,
            tip: None,
            records: HashMap::new(),
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

    /// Takes in an entry that is already in the journal, without judging it.
    pub fn restore(&mut self, entry: &Entry) {
        self.take_in(entry);
        self.tip = Some(entry.tip());
    }

    /// The entry with this id, whether or not it was corrected since.
    #[must_use]
    pub fn record(&self, id: EntryId) -> Option<&Arc<Record>> {
        self.records.get(&id)
    }

    /// Every entry, those that were corrected or struck out since included, in the order of the journal.
    #[must_use]
    pub fn in_order(&self) -> Vec<&Arc<Record>> {
        let mut records: Vec<&Arc<Record>> = self.records.values().collect();
        records.sort_unstable_by_key(|record| record.seq);
        records
    }

    /// The entry that corrected or struck out this one.
    #[must_use]
    pub fn superseded_by(&self, id: EntryId) -> Option<EntryId> {
        self.superseded.get(&id).copied()
    }

    /// What an id stands for today: follows corrections to the newest entry; none if it was struck out or is unknown.
    #[must_use]
    pub fn effective(&self, id: EntryId) -> Option<&Arc<Record>> {
        let mut record = self.records.get(&id)?;
        while let Some(by) = self.superseded.get(&record.id) {
            record = self.records.get(by)?;
        }
        (record.event.kind() != Kind::StrikeOut).then_some(record)
    }

    /// The first entry in a chain of corrections: the id by which others may still call it.
    #[must_use]
    pub fn original(&self, id: EntryId) -> EntryId {
        let mut id = id;
        while let Some(correction) = self.records.get(&id).and_then(|record| record.correction.as_ref()) {
            id = correction.of;
        }
        id
    }

    /// Who keeps the holding on this day, and whose rules hold; before the first such entry, what that one says.
    #[must_use]
    pub fn details(&self, on: Day) -> Option<&HoldingDetails> {
        let at = self.details.iter().rfind(|record| record.on <= on).or_else(|| self.details.first())?;
        at.body()
    }

    /// Whose rules hold on this day.
    #[must_use]
    pub fn jurisdiction(&self, on: Day) -> Option<&Jurisdiction> {
        self.details(on).map(|details| &details.jurisdiction)
    }

    /// The entries that say who keeps the holding, in the order in which they hold.
    #[must_use]
    pub fn details_file(&self) -> &[Arc<Record>] {
        &self.details
    }

    /// Every entry that stands, neither corrected nor struck out nor moved into an archive, in the order in which things happened.
    #[must_use]
    pub fn standing(&self) -> Vec<&Arc<Record>> {
        let stands = |record: &&Arc<Record>| {
            !self.superseded.contains_key(&record.id)
                && !matches!(record.event, Event::StrikeOut(_) | Event::InArchive(_))
        };
        let mut standing: Vec<&Arc<Record>> = self.records.values().filter(stands).collect();
        standing.sort_by_key(|record| record.order());
        standing
    }

    /// Every correction and strike-out with the entry it speaks of, in the order in which they were recorded.
    #[must_use]
    pub fn corrections(&self) -> Vec<(&Arc<Record>, &Arc<Record>)> {
        let corrected = self.records.values().filter_map(|new| {
            let old = self.records.get(&new.correction.as_ref()?.of)?;
            // Both went together.
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

    /// Every entry that was ever taken in, corrected and struck out ones too, in the order of the journal.
    #[must_use]
    pub(crate) fn all_records(&self) -> Vec<&Arc<Record>> {
        let mut records: Vec<&Arc<Record>> = self.records.values().collect();
        records.sort_unstable_by_key(|record| record.seq);
        records
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

    /// The entries that say where a colony came from, where it stood and when it ended, in the order in which they happened.
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

    /// What went in and out of a lot by everything that is recorded.
    #[must_use]
    pub fn balance(&self, lot: &LotName) -> Balance {
        self.balances.get(lot).copied().unwrap_or_default()
    }
}
