//! Adding entries to the fold.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::archived::Bodies;
use super::check::{Look, check_written};
use super::refusal::Refusal;
use super::untrue::Courses;
use super::{File, Holding, Record, mentions};
use crate::basics::calendar::Instant;
use crate::journal::entry::{Draft, Entry, EntryId};
use crate::journal::event::{Archived, Body, Event, LeafletReading};
use crate::journal::kept::Kept;

/// What became of the entries that an archive step moved.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Moved {
    /// They left the journal.
    Out,
    /// They were read back from the archive's file.
    ReadBack,
}

impl Holding {
    /// Seals an event as the next entry and adds it, unless it cannot be true.
    ///
    /// # Errors
    /// Why it cannot be true. The holding is then unchanged.
    pub fn record(&mut self, draft: Draft, at: Instant) -> Result<Entry, Refusal> {
        let entry = Entry::seal(self.name(), draft, at, self.tip());
        self.accept(&entry)?;
        Ok(entry)
    }

    /// Adds a new entry, unless it cannot be true.
    ///
    /// A broken rule is no reason to refuse: an expired batch, strips left too long and the like are recorded, and
    /// judged elsewhere.
    ///
    /// # Errors
    /// Why the entry cannot be true. The holding is then unchanged.
    pub fn accept(&mut self, entry: &Entry) -> Result<(), Refusal> {
        self.accept_as(entry, Look::First)
    }

    fn accept_as(&mut self, entry: &Entry, look: Look) -> Result<(), Refusal> {
        self.check_envelope(entry)?;
        match &entry.draft.correction {
            None => {
                if look == Look::First {
                    self.check_looks(&entry.draft.event, None)?;
                }
                self.check_event(entry.draft.on, &entry.draft.event, look)?;
            }
            Some(correction) => self.check_correction(entry, correction.of, look)?,
        }
        self.restore(entry);
        Ok(())
    }

    /// Adds a sealed entry of an export. Unlike [`Holding::accept`] it also accepts entries without a body, and the
    /// archive entry that moved them, if they match.
    ///
    /// # Errors
    /// As [`Holding::accept`].
    pub fn accept_sealed(&mut self, entry: &Entry) -> Result<(), Refusal> {
        if let Event::InArchive(_) = entry.draft.event {
            self.check_envelope(entry)?;
            if entry.draft.correction.is_some() {
                self.check_moved_correction(entry)?;
            }
        } else if let Some(body) = Archived::of(&entry.draft.event) {
            self.check_envelope(entry)?;
            self.check_archived(entry, body, Bodies::AreGone)?;
        } else {
            return self.accept_as(entry, Look::Sealed);
        }
        self.restore(entry);
        Ok(())
    }

    /// Adds the entry that moves others into an archive.
    ///
    /// # Errors
    /// The entry is of another kind, or names entries that do not exist, were moved before, or are tied to retained
    /// entries.
    pub fn accept_archived(&mut self, entry: &Entry) -> Result<(), Refusal> {
        let Event::Archived(body) = &entry.draft.event else {
            return self.accept(entry);
        };
        self.check_envelope(entry)?;
        self.check_archived(entry, body, Bodies::AreHere)?;
        self.restore(entry);
        Ok(())
    }

    /// Tests a correction: removes the old entry, inserts the new one, and checks every entry that shares a name with
    /// either. Leaves the holding unchanged.
    fn check_correction(&mut self, entry: &Entry, of: EntryId, look: Look) -> Result<(), Refusal> {
        let old = self.check_corrected(entry, of)?;
        let new = Arc::new(self.record_of(entry.into()));
        // What a correction does not repeat still holds.
        let is_struck_out = matches!(new.event, Event::StrikeOut(_));
        if let Some(copied) = self.copied_from(&old).filter(|_| new.copied_from.is_none() && !is_struck_out) {
            check_written(copied, new.on)?;
        }
        if look == Look::First {
            self.check_looks(&new.event, Some(&old.event))?;
        }
        self.unlist(&old);
        let mut verdict =
            self.check_own_course(&old, &new).and_then(|()| self.check_event(new.on, &new.event, look));
        if verdict.is_ok() {
            self.superseded.insert(old.id, new.id);
            self.records.put(Arc::clone(&new));
            self.list(&new);
            verdict = self.check_neighbours(&old, &new);
            self.unlist(&new);
            self.records.remove(new.id);
            self.superseded.remove(&old.id);
        }
        self.list(&old);
        verdict
    }

    /// Checks every entry that shares a name with the old or new entry again.
    fn check_neighbours(&mut self, old: &Record, new: &Record) -> Result<(), Refusal> {
        for neighbour in self.neighbours(old, new) {
            self.unlist(&neighbour);
            let again = self.check_event(neighbour.on, &neighbour.event, Look::Again);
            self.list(&neighbour);
            again.map_err(|refusal| refusal.because_of(&neighbour))?;
        }
        Ok(())
    }

    fn neighbours(&self, old: &Record, new: &Record) -> Vec<Arc<Record>> {
        let mut found: BTreeMap<u64, Arc<Record>> = BTreeMap::new();
        let mut add = |file: Option<&File>| {
            for record in file.into_iter().flatten().filter(|record| record.id != new.id) {
                found.insert(record.seq, Arc::clone(record));
            }
        };
        for event in [&old.event, &new.event] {
            let names = mentions::of(event);
            names.apiaries.iter().for_each(|name| add(self.apiaries.get(*name)));
            names.colonies.iter().for_each(|name| add(self.colonies.get(*name)));
            names.medicines.iter().for_each(|name| add(self.medicines.get(*name)));
            names.lots.iter().for_each(|name| add(self.lots.get(*name)));
            names.prescriptions.iter().for_each(|name| add(self.prescriptions.get(*name)));
        }
        // Entries that build on a dose may be in the file of another colony, which the dose reached by a split.
        let doses = found.values().map(|record| record.id).chain([old.id]).collect::<Vec<_>>();
        for dose in doses {
            let built = self.built_on.get(&self.original(dose)).into_iter().flatten();
            found.extend(
                built.filter(|record| record.id != new.id).map(|record| (record.seq, Arc::clone(record))),
            );
        }
        found.into_values().collect()
    }

    /// A dose cannot continue itself, under any of its earlier ids.
    fn check_own_course(&self, old: &Record, new: &Record) -> Result<(), Refusal> {
        let own = mentions::of(&new.event)
            .builds_on
            .is_some_and(|first| self.original(first) == self.original(old.id));
        if own { Err(Refusal::at("/body/continues", Courses::WithItself)) } else { Ok(()) }
    }

    /// Undoes the last entry if the journal did not store it. Returns whether it was undone: an archive step cannot
    /// be undone, nor any entry but the last.
    pub fn take_back(&mut self, last: &Entry) -> bool {
        let Some(record) = self.records.get(last.draft.id).cloned() else { return false };
        let of_archive = matches!(record.event, Event::InArchive(_) | Event::Archived(_));
        if self.tip != Some(last.tip()) || of_archive {
            return false;
        }
        self.text_bytes = self.text_bytes.saturating_sub(last.draft.body.len());
        self.unlist(&record);
        self.records.remove(record.id);
        if let Some(correction) = &record.correction {
            self.superseded.remove(&correction.of);
            if let Some(old) = self.records.get(correction.of).cloned() {
                self.list(&old);
            }
        }
        self.tip = last.seq.checked_sub(1).filter(|before| *before > 0).map(|before| (before, last.prev));
        true
    }

    /// Adds an entry to the fold, and removes the one it corrects.
    pub(super) fn take_in(&mut self, entry: Kept, moved: Moved) {
        self.text_bytes += entry.text_bytes;
        let record = Arc::new(self.record_of(entry));
        if let Some(correction) = &record.correction {
            if let Some(old) = self.records.get(correction.of).cloned() {
                self.unlist(&old);
            }
            self.superseded.insert(correction.of, record.id);
        }
        self.records.put(Arc::clone(&record));
        self.list(&record);
        if let Event::InArchive(_) = record.event {
            self.bare.insert(record.seq, record.id);
        }
        if let Some(body) = record.body::<Archived>() {
            if moved == Moved::Out {
                self.move_out(&body.places);
            }
            self.note_archived(&record, &body.places);
        }
    }

    fn list(&mut self, record: &Arc<Record>) {
        let names = mentions::of(&record.event);
        names
            .apiaries
            .iter()
            .for_each(|name| insert(self.apiaries.entry((*name).clone()).or_default(), record));
        names
            .colonies
            .iter()
            .for_each(|name| insert(self.colonies.entry((*name).clone()).or_default(), record));
        if names.of_life {
            for name in &names.colonies {
                insert(self.lives.entry((*name).clone()).or_default(), record);
            }
            for name in &names.apiaries {
                insert(self.brought.entry((*name).clone()).or_default(), record);
            }
        }
        names
            .medicines
            .iter()
            .for_each(|name| insert(self.medicines.entry((*name).clone()).or_default(), record));
        names.lots.iter().for_each(|name| insert(self.lots.entry((*name).clone()).or_default(), record));
        if let Some(reading) = record.body::<LeafletReading>() {
            insert(self.readings.entry(reading.lot.clone()).or_default(), record);
        }
        for name in &names.prescriptions {
            insert(self.prescriptions.entry((*name).clone()).or_default(), record);
        }
        if let Some(first) = names.builds_on {
            let first = self.original(first);
            self.built_on.entry(first).or_default().push(Arc::clone(record));
        }
        if matches!(record.event, Event::HoldingDetails(_)) {
            insert(&mut self.details, record);
        }
        for (lot, movement) in names.moves {
            self.balances.entry(lot.clone()).or_default().add(movement);
        }
    }

    pub(super) fn unlist(&mut self, record: &Arc<Record>) {
        let names = mentions::of(&record.event);
        let remove = |file: Option<&mut File>| {
            if let Some(file) = file {
                file.retain(|listed| listed.id != record.id);
            }
        };
        names.apiaries.iter().for_each(|name| remove(self.apiaries.get_mut(*name)));
        names.colonies.iter().for_each(|name| remove(self.colonies.get_mut(*name)));
        names.colonies.iter().for_each(|name| remove(self.lives.get_mut(*name)));
        names.apiaries.iter().for_each(|name| remove(self.brought.get_mut(*name)));
        names.medicines.iter().for_each(|name| remove(self.medicines.get_mut(*name)));
        names.lots.iter().for_each(|name| remove(self.lots.get_mut(*name)));
        names.lots.iter().for_each(|name| remove(self.readings.get_mut(*name)));
        names.prescriptions.iter().for_each(|name| remove(self.prescriptions.get_mut(*name)));
        remove(Some(&mut self.details));
        if let Some(first) = names.builds_on {
            let first = self.original(first);
            remove(self.built_on.get_mut(&first));
        }
        for (lot, movement) in names.moves {
            if let Some(balance) = self.balances.get_mut(lot) {
                balance.take_back(movement);
            }
        }
    }

    fn record_of(&self, entry: Kept) -> Record {
        let Kept { id, seq, on, at, recorded_at, recorded_by, event, copied_from, correction, .. } = entry;
        let corrected = correction.as_ref().and_then(|correction| self.records.get(correction.of));
        let moment_kept = corrected.filter(|old| old.on == on && old.at == at);
        let place = moment_kept.map_or(seq, |old| old.place);
        Record { id, seq, place, on, at, recorded_at, recorded_by, event, copied_from, correction }
    }
}

/// Keeps the file in order. Most entries belong at its end.
fn insert(file: &mut File, record: &Arc<Record>) {
    if file.last().is_none_or(|last| last.order() < record.order()) {
        return file.push(Arc::clone(record));
    }
    let at = file.partition_point(|listed| listed.order() < record.order());
    file.insert(at, Arc::clone(record));
}
