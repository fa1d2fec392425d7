//! Where a colony came from, where it was, when it ended, and which courses reached it.

use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

use super::holding::{Holding, Record, between};
use crate::basics::calendar::{Day, TimeOfDay};
use crate::basics::words::{ApiaryName, ColonyName, MedicinesInside};
use crate::journal::entry::EntryId;
use crate::journal::event::{
    Body, ColonyEnded, ColonyEstablished, ColonyMoved, ColonySplit, ColonyUnited, Event,
};

/// How many splits and unitings back a line of descent is followed.
///
/// Real lines are far shorter; this limits the work on a hand-made journal. Anything further back is not known, so
/// the answer for such a colony is unknown.
pub(crate) const GENERATIONS: u8 = 200;

/// The beginning and the end of a colony.
#[derive(Debug, Clone, Copy, Default)]
pub struct Life<'h> {
    /// The entry that began it: established, or split off.
    pub begun: Option<&'h Arc<Record>>,
    /// The entry that ended it: ended, or united into another.
    pub ended: Option<&'h Arc<Record>>,
}

impl Life<'_> {
    /// Whether the colony is on record and alive at the end of a day.
    #[must_use]
    pub fn lasts(&self, on: Day) -> bool {
        self.begun.is_some_and(|record| record.on <= on) && self.ended.is_none_or(|record| record.on > on)
    }
}

/// A stay at an apiary: from this day until the next stay.
type Stay<'h> = (Day, &'h ApiaryName);

impl Holding {
    /// The beginning and end of a colony; both `None` for a colony that was never entered.
    #[must_use]
    pub fn life(&self, colony: &ColonyName) -> Life<'_> {
        let mut life = Life::default();
        for record in self.life_file(colony) {
            let split_off = || record.body::<ColonySplit>().is_some_and(|split| split.into == *colony);
            let united = || record.body::<ColonyUnited>().is_some_and(|united| united.colony == *colony);
            if record.body::<ColonyEstablished>().is_some() || split_off() {
                life.begun = Some(record);
            } else if record.body::<ColonyEnded>().is_some() || united() {
                life.ended = Some(record);
            }
        }
        life
    }

    /// Where a colony was at the end of a day.
    #[must_use]
    pub fn apiary_of(&self, colony: &ColonyName, on: Day) -> Option<&ApiaryName> {
        self.apiary_of_line(colony, on, GENERATIONS)
    }

    fn apiary_of_line(&self, colony: &ColonyName, on: Day, generations: u8) -> Option<&ApiaryName> {
        self.own_stays(colony, generations).rfind(|(from, _)| *from <= on).map(|(_, apiary)| apiary)
    }

    /// The colony's own apiaries, in order, without those of its ancestors. Of several stays that begin on one day
    /// the last counts.
    fn own_stays(&self, colony: &ColonyName, generations: u8) -> impl DoubleEndedIterator<Item = Stay<'_>> {
        self.life_file(colony).iter().filter_map(move |record| {
            let apiary = if let Some(body) = record.body::<ColonyEstablished>() {
                &body.apiary
            } else if let Some(body) = record.body::<ColonyMoved>() {
                &body.to
            } else {
                let body = record.body::<ColonySplit>().filter(|body| body.into == *colony)?;
                // Without a stated destination, it stays where the old colony is.
                let of_old = || self.apiary_of_line(&body.colony, record.on, generations.checked_sub(1)?);
                body.to.as_ref().or_else(of_old)?
            };
            Some((record.on, apiary))
        })
    }

    /// The apiaries of a colony, in order. Before it was split off, those of the old colony: the medicine that it
    /// brought was used there.
    pub(crate) fn stays(&self, colony: &ColonyName) -> Vec<Stay<'_>> {
        self.stays_of_line(colony, GENERATIONS)
    }

    fn stays_of_line(&self, colony: &ColonyName, generations: u8) -> Vec<Stay<'_>> {
        let old = self.life_file(colony).iter().find_map(|record| {
            let body = record.body::<ColonySplit>().filter(|body| body.into == *colony)?;
            Some((&body.colony, record.on))
        });
        let of_old = old.zip(generations.checked_sub(1)).map(|((old, on), older)| {
            let mut stays = self.stays_of_line(old, older);
            stays.retain(|(from, _)| *from < on);
            stays
        });
        let mut stays = of_old.unwrap_or_default();
        for (from, apiary) in self.own_stays(colony, generations) {
            stays.retain(|(known, _)| *known < from);
            stays.push((from, apiary));
        }
        stays
    }

    /// Where a colony was when it was treated. If it was moved on that day and both times are recorded, the times
    /// decide; otherwise it was treated before the move.
    pub(crate) fn stood_at(
        &self,
        colony: &ColonyName,
        on: Day,
        at: Option<TimeOfDay>,
    ) -> Option<&ApiaryName> {
        let after = |moved: &Record| at.zip(moved.at).is_none_or(|(done, moved)| done <= moved);
        let moves: Vec<_> = self.moves(colony).filter(|(record, _)| record.on == on).collect();
        match moves.iter().rfind(|(record, _)| !after(record)) {
            // The previous move says where it was.
            Some((_, before)) => Some(&before.to),
            None if moves.is_empty() => self.apiary_of(colony, on),
            None => self.apiary_of(colony, on.before()),
        }
    }

    /// Each apiary that a colony was moved to after it was treated at `stood`, up to a day, with the day of each
    /// move.
    pub(crate) fn moved_on_from(
        &self,
        colony: &ColonyName,
        stood: Option<&ApiaryName>,
        done: (Day, Option<TimeOfDay>),
        until: Day,
    ) -> Vec<(Day, &ApiaryName)> {
        let (on, at) = done;
        let before =
            |moved: &Record| moved.on == on && at.zip(moved.at).is_some_and(|(done, moved)| moved < done);
        let mut went: Vec<(Day, &ApiaryName)> = Vec::new();
        let mut stands = stood;
        for (record, moved) in self.moves(colony) {
            if record.on < on || record.on > until || before(record) {
                continue;
            }
            if stands != Some(&moved.to) {
                went.push((record.on, &moved.to));
            }
            stands = Some(&moved.to);
        }
        went
    }

    fn moves(&self, colony: &ColonyName) -> impl Iterator<Item = (&Record, &ColonyMoved)> {
        self.life_file(colony).iter().filter_map(|record| Some((&**record, record.body::<ColonyMoved>()?)))
    }

    /// The colonies at an apiary that are alive at the end of a day, by name.
    pub fn colonies_at<'h>(
        &'h self,
        apiary: &'h ApiaryName,
        on: Day,
    ) -> impl Iterator<Item = &'h ColonyName> {
        self.ever_at(apiary)
            .into_iter()
            .filter(move |colony| self.life(colony).lasts(on) && self.apiary_of(colony, on) == Some(apiary))
    }

    /// Every colony that may ever have been at an apiary: brought there by name, or split off from such a colony
    /// without a stated destination.
    fn ever_at(&self, apiary: &ApiaryName) -> BTreeSet<&ColonyName> {
        let mut there: BTreeSet<&ColonyName> = BTreeSet::new();
        let brought = self.brought_to(apiary).iter().filter_map(|record| {
            let split_off = || record.body::<ColonySplit>().map(|body| &body.into);
            let moved = || record.body::<ColonyMoved>().map(|body| &body.colony);
            let established = record.body::<ColonyEstablished>().map(|body| &body.colony);
            established.or_else(moved).or_else(split_off)
        });
        let mut open: Vec<&ColonyName> = brought.collect();
        while let Some(colony) = open.pop() {
            if there.insert(colony) {
                let splits = self.life_file(colony).iter().filter_map(|record| record.body::<ColonySplit>());
                let there_too = splits.filter(|split| split.colony == *colony && split.to.is_none());
                open.extend(there_too.map(|split| &split.into));
            }
        }
        there
    }

    /// Whether a course reached a colony by a day: given to it, or brought by a split or uniting.
    pub(in crate::facts) fn course_reached(&self, colony: &ColonyName, first_dose: &Record, by: Day) -> bool {
        let Event::Administration(given) = &first_dose.event else { return false };
        // Each colony is visited once, for its latest day: otherwise lines that part and meet again would be walked
        // repeatedly.
        let mut looked_at: BTreeMap<&ColonyName, Day> = BTreeMap::new();
        let mut open: Vec<(&ColonyName, Day)> = vec![(colony, by)];
        while let Some((colony, by)) = open.pop() {
            if first_dose.on <= by && given.given.iter().any(|given| given.colonies.contains(colony)) {
                return true;
            }
            let known = looked_at.get(colony).is_some_and(|known| *known >= by);
            if known {
                continue;
            }
            looked_at.insert(colony, by);
            let file = self.colony_file(colony).iter().filter(|record| record.on <= by);
            open.extend(file.filter_map(|record| Some((joined(&record.event, colony)?, record.on))));
        }
        false
    }

    /// Whether a course had reached a colony before an event, in order of the entries.
    pub(in crate::facts) fn course_reached_before(
        &self,
        colony: &ColonyName,
        first_dose: &Record,
        event: &Record,
    ) -> bool {
        let mut before = self.colony_file(colony).iter().take_while(|record| record.order() < event.order());
        before.any(|record| {
            let brought_by = joined(&record.event, colony);
            record.id == first_dose.id
                || brought_by.is_some_and(|other| self.course_reached(other, first_dose, record.on))
        })
    }

    /// Whether a colony with the course was united into this one between two days.
    pub(in crate::facts) fn course_came_again(
        &self,
        colony: &ColonyName,
        first_dose: &Record,
        since: Day,
        by: Day,
    ) -> bool {
        between(self.colony_file(colony), since, by).iter().any(|record| {
            let united = record.body::<ColonyUnited>().filter(|united| united.into == *colony);
            united.is_some_and(|united| self.course_reached(&united.colony, first_dose, record.on))
        })
    }

    /// The entry since which the medicine in a colony is not known: it arrived that way, or was made from or united
    /// with such a colony.
    #[must_use]
    pub fn unknown_since(&self, colony: &ColonyName) -> Option<&Arc<Record>> {
        let mut known: BTreeMap<(&ColonyName, u64), bool> = BTreeMap::new();
        self.colony_file(colony)
            .iter()
            .find(|record| self.leaves_unknown(record, colony, GENERATIONS, &mut known))
    }

    /// The entry that first brought in a colony with unknown medicines, from which `entry` inherits the unknown.
    #[must_use]
    pub(crate) fn unknown_root(&self, entry: EntryId) -> Option<EntryId> {
        let mut record = self.entry(entry)?;
        for _ in 0..=GENERATIONS {
            let split = record.body::<ColonySplit>().map(|split| &split.colony);
            let united = || record.body::<ColonyUnited>().map(|united| &united.colony);
            let Some(other) = split.or_else(united) else { return Some(record.id) };
            record = self.unknown_since(other)?;
        }
        None
    }

    /// Whether this event makes the medicine in `colony` unknown.
    fn leaves_unknown<'h>(
        &'h self,
        record: &'h Record,
        colony: &ColonyName,
        generations: u8,
        known: &mut BTreeMap<(&'h ColonyName, u64), bool>,
    ) -> bool {
        if let Some(body) = record.body::<ColonyEstablished>() {
            return body.medicines == MedicinesInside::NotKnown;
        }
        joined(&record.event, colony).is_some_and(|other| {
            let older = generations.checked_sub(1);
            older.is_none_or(|older| self.unknown_before(other, record, older, known))
        })
    }

    /// Whether the medicine in `colony` was unknown before `event`. Only earlier entries count, so the recursion
    /// ends.
    fn unknown_before<'h>(
        &'h self,
        colony: &'h ColonyName,
        event: &Record,
        generations: u8,
        known: &mut BTreeMap<(&'h ColonyName, u64), bool>,
    ) -> bool {
        if let Some(found) = known.get(&(colony, event.seq)) {
            return *found;
        }
        let file = self.colony_file(colony).iter();
        let mut before = file.filter(|record| record.order() < event.order());
        let found = before.any(|record| self.leaves_unknown(record, colony, generations, known));
        known.insert((colony, event.seq), found);
        found
    }
}

/// The other colony of an event: the one `colony` was split off from, or the one united into it.
fn joined<'e>(event: &'e Event, colony: &ColonyName) -> Option<&'e ColonyName> {
    let split = ColonySplit::of(event).filter(|split| split.into == *colony).map(|split| &split.colony);
    let united =
        || ColonyUnited::of(event).filter(|united| united.into == *colony).map(|united| &united.colony);
    split.or_else(united)
}
