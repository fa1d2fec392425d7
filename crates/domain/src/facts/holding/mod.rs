//! The journal of a holding, folded by name: apiaries, colonies, medicines, lots, prescriptions.
//!
//! For each name the fold keeps a file: the entries with that name, ordered by the day of the event, not of
//! recording, since late recording is lawful. Corrected and struck-out entries leave these files but stay in the
//! journal. Everything else is derived for each question, so that the cost of a question grows with one colony, not
//! with the journal.
//!
//! - [`Holding::accept`] adds a new entry, or refuses one that cannot be true ([`Refusal`])
//! - [`Holding::restore`] adds an entry that is already in the journal

mod accept;
mod archived;
mod check;
mod check_courses;
mod check_documents;
mod check_look;
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
use crate::facts::{Balance, Lot};
use crate::journal::copied::CopiedFrom;
use crate::journal::entry::{Correction, EntryId};
use crate::journal::event::{Body, Event, HoldingDetails, Kind, MedicineDescribed, Prescription};
use crate::journal::kept::Kept;
use crate::journal::seal::Hash;
use accept::Moved;
use records::Records;

pub use references::{Bond, Tie};
pub use refusal::Refusal;
pub use untrue::Untrue;
pub use views::ApiaryView;

/// An entry in the fold.
#[derive(Debug, Clone)]
pub struct Record {
    /// Its id.
    pub id: EntryId,
    /// Its position in the journal.
    pub seq: u64,
    /// Its rank among entries of the same moment: that of the entry it corrects if day and time are unchanged, else
    /// its own position.
    pub place: u64,
    /// The day of the event.
    pub on: Day,
    /// The time of day of the event, if recorded.
    pub at: Option<TimeOfDay>,
    /// When it was recorded.
    pub recorded_at: Instant,
    /// Who recorded it.
    pub recorded_by: Person,
    /// The event.
    pub event: Event,
    /// The record on paper from which it was copied, if it was.
    pub copied_from: Option<Box<CopiedFrom>>,
    /// The correction, if it is one.
    pub correction: Option<Box<Correction>>,
}

impl Record {
    /// The body, if it is of this kind.
    #[must_use]
    pub fn body<B: Body>(&self) -> Option<&B> {
        B::of(&self.event)
    }

    /// Sort key within a file: day; then entries that begin a colony before others; then time (entries without a time
    /// last); then journal position. A correction that keeps day and time keeps the rank of the entry it corrects.
    pub(in crate::facts) fn order(&self) -> impl Ord + use<> {
        let happens = !matches!(self.event, Event::ColonyEstablished(_));
        (self.on, happens, self.at.is_none(), self.at, self.place)
    }
}

/// The entries that mention one name, in order of the events.
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
    /// The entry that corrected or struck out each entry.
    superseded: HashMap<EntryId, EntryId>,
    details: File,
    apiaries: BTreeMap<ApiaryName, File>,
    colonies: BTreeMap<ColonyName, File>,
    /// The few entries in each colony's file that say where it came from, where it was and when it ended.
    lives: BTreeMap<ColonyName, File>,
    /// For each apiary, the entries that brought a colony there by name.
    brought: BTreeMap<ApiaryName, File>,
    medicines: BTreeMap<MedicineName, File>,
    lots: BTreeMap<LotName, File>,
    /// The few entries in each lot's file that read its leaflet. A lot may be given thousands of times.
    readings: BTreeMap<LotName, File>,
    prescriptions: BTreeMap<PrescriptionName, File>,
    /// The balance of each lot.
    balances: BTreeMap<LotName, Balance>,
    /// Later doses and removals, by the original id of their first dose.
    built_on: HashMap<EntryId, File>,
    /// Entries without a body that no archive entry accounts for yet, by position.
    bare: BTreeMap<u64, EntryId>,
    /// See [`Holding::archived_through`].
    archived_through: Option<(Day, EntryId)>,
    /// The text of all bodies that were taken in, in bytes.
    text_bytes: usize,
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
            readings: BTreeMap::new(),
            prescriptions: BTreeMap::new(),
            balances: BTreeMap::new(),
            built_on: HashMap::new(),
            bare: BTreeMap::new(),
            archived_through: None,
            text_bytes: 0,
        }
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &HoldingName {
        &self.name
    }

    /// Position and hash of the last entry.
    #[must_use]
    pub fn tip(&self) -> Option<(u64, Hash)> {
        self.tip
    }

    /// What it takes in memory, in bytes, about: the text that was taken in, and so much for each entry.
    #[must_use]
    pub fn weight(&self) -> u64 {
        let entries = self.tip.map_or(0, |(entries, _)| entries);
        let text = u64::try_from(self.text_bytes).unwrap_or(u64::MAX);
        entries.saturating_mul(Holding::BYTES_PER_ENTRY).saturating_add(text)
    }

    /// What goes with each entry beside the text of its body, in bytes: 300 to 400 as it was measured, the more with few entries. Half
    /// of that is the files in which it stands, of which there are two while somebody writes.
    const BYTES_PER_ENTRY: u64 = 400;

    /// Adds an entry that is already in the journal, without checking it.
    pub fn restore(&mut self, entry: impl Into<Kept>) {
        self.restore_as(entry.into(), Moved::Out);
    }

    /// The same for a journal whose archived entries were read back from their file: the entry that moved them moves nothing.
    pub fn restore_whole(&mut self, entry: impl Into<Kept>) {
        self.restore_as(entry.into(), Moved::ReadBack);
    }

    fn restore_as(&mut self, kept: Kept, moved: Moved) {
        self.tip = Some((kept.seq, kept.hash));
        self.take_in(kept, moved);
    }

    /// The entry with this id, corrected or not.
    #[must_use]
    pub fn entry(&self, id: EntryId) -> Option<&Arc<Record>> {
        self.records.get(id)
    }

    /// The entry with this number in the journal, corrected or not.
    #[must_use]
    pub fn entry_numbered(&self, number: u64) -> Option<&Arc<Record>> {
        self.records.all().find(|record| record.seq == number)
    }

    /// Every entry in the order of the journal, including corrected and struck-out ones.
    #[must_use]
    pub fn in_order(&self) -> Vec<&Arc<Record>> {
        let mut records: Vec<&Arc<Record>> = self.records.all().collect();
        records.sort_unstable_by_key(|record| record.seq);
        records
    }

    /// The entry recorded last by the clock, if a clock that says it is `today` was wrong then or is wrong now: when the entry
    /// was recorded, it was a later day everywhere on Earth.
    #[must_use]
    pub fn recorded_after(&self, today: Day) -> Option<&Arc<Record>> {
        let newest = self.records.all().max_by_key(|record| (record.recorded_at, record.seq))?;
        (today < newest.recorded_at.earliest_civil_date()).then_some(newest)
    }

    /// The entry that corrected or struck out this one.
    #[must_use]
    pub fn superseded_by(&self, id: EntryId) -> Option<EntryId> {
        self.superseded.get(&id).copied()
    }

    /// The newest correction of an entry, or the entry itself. `None` if it was struck out or is unknown.
    #[must_use]
    pub fn effective(&self, id: EntryId) -> Option<&Arc<Record>> {
        let mut record = self.records.get(id)?;
        while let Some(by) = self.superseded.get(&record.id) {
            record = self.records.get(*by)?;
        }
        (record.event.kind() != Kind::StrikeOut).then_some(record)
    }

    /// The first entry in a chain of corrections: other entries may still use its id.
    #[must_use]
    pub fn original(&self, id: EntryId) -> EntryId {
        let mut id = id;
        while let Some(correction) = self.records.get(id).and_then(|record| record.correction.as_ref()) {
            id = correction.of;
        }
        id
    }

    /// The record on paper from which an entry was copied, as it was last said: a correction need not repeat it. That an entry
    /// was struck out was on paper only if the strike-out says so.
    #[must_use]
    pub fn copied_from<'h>(&'h self, record: &'h Record) -> Option<&'h CopiedFrom> {
        let mut record = record;
        while record.copied_from.is_none() && !matches!(record.event, Event::StrikeOut(_)) {
            record = self.records.get(record.correction.as_ref()?.of)?;
        }
        record.copied_from.as_deref()
    }

    /// The keeper and jurisdiction on this day. Before the first such entry, those of that entry.
    #[must_use]
    pub fn details(&self, on: Day) -> Option<&HoldingDetails> {
        let at = self.details.iter().rfind(|record| record.on <= on).or_else(|| self.details.first())?;
        at.body()
    }

    /// The jurisdiction on this day.
    #[must_use]
    pub fn jurisdiction(&self, on: Day) -> Option<&Jurisdiction> {
        self.details(on).map(|details| &details.jurisdiction)
    }

    /// The entries about the keeper and jurisdiction, in the order they apply.
    #[must_use]
    pub fn details_file(&self) -> &[Arc<Record>] {
        &self.details
    }

    /// Every effective entry (not corrected, struck out or archived) in order of the events.
    #[must_use]
    pub fn standing(&self) -> Vec<&Arc<Record>> {
        self.standing_if(|_| true)
    }

    /// The effective entries that match `wanted`, in order of the events.
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

    /// Every correction and strike-out as (old, new), in the order they were recorded.
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

    /// Every entry that names a colony, the latest day first: those that stand, and those that were corrected or struck out.
    #[must_use]
    pub fn entries_about(&self, colony: &ColonyName) -> Vec<&Arc<Record>> {
        let names_it = |record: &&Arc<Record>| mentions::of(&record.event).colonies.contains(&colony);
        let superseded = self.corrections().into_iter().map(|(old, _)| old).filter(names_it);
        let mut all: Vec<&Arc<Record>> = self.colony_file(colony).iter().chain(superseded).collect();
        all.sort_by_key(|record| std::cmp::Reverse((record.on, record.seq)));
        all.dedup_by_key(|record| record.id);
        all
    }

    /// Every colony on record, by name.
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

    /// The entries that mention a colony, in order of the events.
    #[must_use]
    pub fn colony_file(&self, colony: &ColonyName) -> &[Arc<Record>] {
        self.colonies.get(colony).map_or(&[], Vec::as_slice)
    }

    /// The entries that say where a colony came from, where it was and when it ended, in order of the events.
    #[must_use]
    pub(crate) fn life_file(&self, colony: &ColonyName) -> &[Arc<Record>] {
        self.lives.get(colony).map_or(&[], Vec::as_slice)
    }

    /// The entries that brought a colony to an apiary by name.
    #[must_use]
    pub(in crate::facts) fn brought_to(&self, apiary: &ApiaryName) -> &[Arc<Record>] {
        self.brought.get(apiary).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention an apiary, in order of the events.
    #[must_use]
    pub fn apiary_file(&self, apiary: &ApiaryName) -> &[Arc<Record>] {
        self.apiaries.get(apiary).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention a lot, in order of the events.
    #[must_use]
    pub fn lot_file(&self, lot: &LotName) -> &[Arc<Record>] {
        self.lots.get(lot).map_or(&[], Vec::as_slice)
    }

    /// The readings of a lot's leaflet, in order of the events.
    #[must_use]
    pub(crate) fn reading_file(&self, lot: &LotName) -> &[Arc<Record>] {
        self.readings.get(lot).map_or(&[], Vec::as_slice)
    }

    /// The entries that mention a prescription, in order of the events.
    #[must_use]
    pub(crate) fn prescription_file(&self, prescription: &PrescriptionName) -> &[Arc<Record>] {
        self.prescriptions.get(prescription).map_or(&[], Vec::as_slice)
    }

    /// A medicine as described, with its entry.
    #[must_use]
    pub fn medicine(&self, medicine: &MedicineName) -> Option<(&Arc<Record>, &MedicineDescribed)> {
        self.medicines.get(medicine)?.iter().find_map(|record| Some((record, record.body()?)))
    }

    /// A lot as acquired, or as a vet brought it, with its entry.
    #[must_use]
    pub fn lot(&self, lot: &LotName) -> Option<(&Arc<Record>, Lot<'_>)> {
        self.lot_file(lot).iter().find_map(|record| Some((record, Lot::of(&record.event)?)))
    }

    /// A prescription as recorded, with its entry.
    #[must_use]
    pub fn prescription(&self, prescription: &PrescriptionName) -> Option<(&Arc<Record>, &Prescription)> {
        self.prescription_file(prescription).iter().find_map(|record| Some((record, record.body()?)))
    }

    /// The balance of a lot over all entries.
    #[must_use]
    pub fn balance(&self, lot: &LotName) -> Balance {
        self.balances.get(lot).copied().unwrap_or_default()
    }
}
