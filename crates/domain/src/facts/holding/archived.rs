//! Entries whose bodies were moved into an archive. They keep their ids and positions, but are in no file.

use std::collections::HashMap;
use std::sync::Arc;

use super::check::{Checked, DAYS_MOST};
use super::refusal::Refusal;
use super::untrue::Archives;
use super::{Holding, Record};
use crate::basics::calendar::Day;
use crate::journal::entry::{Entry, EntryId};
use crate::journal::event::{Archived, Event, Kind};
use crate::journal::places::Places;

/// How long a course in an archive may bar supers after its last dose or removal, in days. Three of the longest periods that can be
/// stated: until a carrier that need not come out is used up; then a period, or the days before a flow; then that flow.
const MAY_BAR_DAYS: u16 = 3 * DAYS_MOST;

/// Whether the bodies of the entries to move are still in the journal.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Bodies {
    /// They are: the archive step happens now.
    AreHere,
    /// They are gone: a journal with a past archive step is being read.
    AreGone,
}

impl Holding {
    /// The first entry without a body that no archive entry accounts for. Such a journal was changed outside this
    /// program and must not be used for answers.
    #[must_use]
    pub fn first_without_body(&self) -> Option<(u64, EntryId)> {
        self.bare.first_key_value().map(|(seq, id)| (*seq, *id))
    }

    /// Until which day a course in an archive may affect an answer, and the entry of that archive. From the day of the step on none
    /// does: a course that would is held back.
    #[must_use]
    pub fn archived_through(&self) -> Option<(Day, EntryId)> {
        self.archived_through
    }

    /// The archive entries, in the order they were recorded.
    #[must_use]
    pub fn archives(&self) -> Vec<(&Record, &Archived)> {
        let told = self.records.all().filter_map(|record| Some((&**record, record.body()?)));
        let mut told: Vec<(&Record, &Archived)> = told.collect();
        told.sort_unstable_by_key(|(record, _)| record.seq);
        told
    }

    /// A copy of the holding with the bodies at these positions moved into an archive.
    #[must_use]
    pub fn without(&self, places: &Places) -> Holding {
        let mut holding = self.clone();
        holding.move_out(places);
        holding
    }

    /// Removes the entries at these positions from every file, and drops their bodies.
    pub(super) fn move_out(&mut self, places: &Places) {
        let moved: Vec<Arc<Record>> =
            self.records.all().filter(|record| places.contains(record.seq)).cloned().collect();
        for record in &moved {
            // A corrected entry is in no file.
            if !self.superseded.contains_key(&record.id) {
                self.unlist(record);
            }
        }
        for record in moved {
            let event = Event::InArchive(record.event.kind());
            self.bare.remove(&record.seq);
            self.records.put(Arc::new(Record { event, ..(*record).clone() }));
        }
    }

    /// Notes until which day the courses that an archive step moved may affect an answer, unless they were read back.
    pub(super) fn note_archived(&mut self, step: &Record, places: &Places) {
        let of_course = |kind: &Event| matches!(kind, Event::InArchive(Kind::Administration | Kind::Removal));
        let moved =
            self.records.all().filter(|record| places.contains(record.seq) && of_course(&record.event));
        let Some(last) = moved.map(|record| record.on).max() else { return };
        let through = last.plus(MAY_BAR_DAYS).min(step.on.before());
        if self.archived_through.is_none_or(|(known, _)| known < through) {
            self.archived_through = Some((through, step.id));
        }
    }

    /// Checks that an archive entry moves only existing entries, whole sets, and nothing twice.
    pub(super) fn check_archived(&self, entry: &Entry, body: &Archived, bodies: Bodies) -> Checked {
        let at = |pointer: &str, why: Archives| Err(Refusal::at(pointer, why));
        let of_places = |why: Archives| at("/body/places", why);
        if entry.draft.correction.is_some() {
            return at("/corrects", Archives::StepCorrects);
        }
        if body.through > entry.draft.on {
            let (through, on) = (body.through, entry.draft.on);
            return at("/body/through", Archives::ThroughAfterStep { through, on });
        }
        let (entries, places) = (body.entries, body.places.count());
        if entries != places {
            return at("/body/entries", Archives::NumberDiffers { entries, places });
        }
        let by_place: HashMap<u64, &Arc<Record>> =
            self.records.all().map(|record| (record.seq, record)).collect();
        let mut going = Vec::new();
        // Counts known entries instead of expanding the positions: a short text may name very many.
        let known = by_place.keys().filter(|seq| body.places.contains(**seq)).count();
        if u64::try_from(known) != Ok(places) {
            return of_places(Archives::PlacesNotThere { places: body.places.clone() });
        }
        for seq in body.places.iter() {
            let Some(record) = by_place.get(&seq) else { continue };
            match (&record.event, bodies) {
                (Event::Archived(_), _) => return of_places(Archives::TellsOfArchive { seq }),
                (Event::InArchive(_), Bodies::AreGone) if self.bare.contains_key(&seq) => {}
                (Event::InArchive(_), _) => return of_places(Archives::MovedBefore { seq }),
                (_, Bodies::AreGone) => return of_places(Archives::StillWhole { seq }),
                (_, Bodies::AreHere) => going.push(record.id),
            }
        }
        match bodies {
            Bodies::AreHere => match self.first_tie(&going) {
                Some(tie) => of_places(Archives::Tied { tie }),
                None => Ok(()),
            },
            // The ties cannot be checked without the bodies.
            Bodies::AreGone => Ok(()),
        }
    }

    /// Checks that an entry without a body corrects another without a body: they must be moved together.
    pub(super) fn check_moved_correction(&self, entry: &Entry) -> Checked {
        let Some(correction) = &entry.draft.correction else { return Ok(()) };
        let of = correction.of;
        let fits = self.records.get(of).is_some_and(|old| {
            let (was, now) = (old.event.kind(), entry.draft.kind());
            matches!(old.event, Event::InArchive(_)) && (was == now || now == Kind::StrikeOut)
        });
        if fits && !self.superseded.contains_key(&of) {
            return Ok(());
        }
        Err(Refusal::at("/corrects", Archives::NotBesideIt { of }))
    }
}
