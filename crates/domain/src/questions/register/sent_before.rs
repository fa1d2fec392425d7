//! What a program may have been sent of an administration before. A treatment is sent for each group of colonies whose course
//! went the same way, and groups change: strips come out of one hive first, a correction drops a colony. Whoever was sent a
//! group that is no more has to hear that it is gone.

use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;

use super::View;
use crate::basics::calendar::{Day, Instant};
use crate::basics::words::{ColonyName, LotName};
use crate::facts::holding::{Record, mentions};
use crate::journal::entry::EntryId;
use crate::journal::event::{
    Administration, Body, ColonySplit, ColonyUnited, Event, LeafletReading, Removal,
};

/// What may have been sent of an administration before, and when anything about it changed last.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SentBefore {
    /// The colonies under whose name a group may have been sent.
    pub colonies: BTreeSet<ColonyName>,
    /// The colonies that may have been sent as having received it in a split or a uniting.
    pub carried_over_to: BTreeSet<ColonyName>,
    /// The lots of which a use may have been sent.
    pub lots: BTreeSet<LotName>,
    /// When the last entry was recorded that bears on its course.
    pub changed_at: Instant,
}

/// What happened to courses and colonies, gathered in one pass.
pub(super) struct Changes<'h> {
    /// Doses and removals of each course, by its first dose: how many colonies, and when recorded.
    of_courses: HashMap<EntryId, Vec<(usize, Instant)>>,
    /// Moves, splits, unitings and ends of each colony: the day, and when recorded.
    of_colonies: HashMap<&'h ColonyName, Vec<(Day, Instant)>>,
    /// The colonies that received something from each in a split or a uniting: the day, and which.
    receivers: HashMap<&'h ColonyName, Vec<(Day, &'h ColonyName)>>,
    /// When each reading of the leaflet of a lot was recorded.
    of_lots: HashMap<&'h LotName, Vec<Instant>>,
}

impl<'h> Changes<'h> {
    pub(super) fn of(view: &View<'h>) -> Changes<'h> {
        let mut changes = Changes {
            of_courses: HashMap::new(),
            of_colonies: HashMap::new(),
            receivers: HashMap::new(),
            of_lots: HashMap::new(),
        };
        // Corrected and struck-out entries too: what they said was sent.
        for record in view.holding.in_order() {
            let Some(event) = said(view, record) else { continue };
            let first = if let Some(body) = Removal::of(event) {
                Some((body.administration, body.colonies.len()))
            } else {
                Administration::of(event).and_then(|body| Some((body.continues?, colonies(body).count())))
            };
            if let Some((first, count)) = first {
                let of_course = changes.of_courses.entry(view.holding.original(first)).or_default();
                of_course.push((count, record.recorded_at));
            }
            if let Some(body) = LeafletReading::of(event) {
                changes.of_lots.entry(&body.lot).or_default().push(record.recorded_at);
            }
            let split = ColonySplit::of(event).map(|body| (&body.colony, &body.into));
            let united = ColonyUnited::of(event).map(|body| (&body.colony, &body.into));
            if let Some((from, into)) = split.or(united) {
                changes.receivers.entry(from).or_default().push((record.on, into));
            }
            let names = mentions::of(event);
            if names.of_life {
                for colony in names.colonies {
                    changes.of_colonies.entry(colony).or_default().push((record.on, record.recorded_at));
                }
            }
        }
        changes
    }

    /// What may have been sent of this administration.
    pub(super) fn sent_before(
        &self,
        view: &View<'_>,
        record: &Record,
        body: &Administration,
        first: EntryId,
        is_struck_out: bool,
    ) -> SentBefore {
        let mut sent = SentBefore {
            colonies: BTreeSet::new(),
            carried_over_to: BTreeSet::new(),
            lots: body.given.iter().map(|part| part.lot.clone()).collect(),
            changed_at: record.recorded_at,
        };
        for old in earlier_versions(view, record) {
            let Some(body) = old.body::<Administration>() else { continue };
            sent.colonies.extend(colonies(body).cloned());
            sent.lots.extend(body.given.iter().map(|part| part.lot.clone()));
        }
        let count = colonies(body).count();
        let mut may_have_parted = is_struck_out;
        for (of_them, recorded_at) in self.of_courses.get(&view.holding.original(first)).into_iter().flatten()
        {
            may_have_parted |= *of_them != count;
            sent.changed_at = sent.changed_at.max(*recorded_at);
        }
        let of_colonies = colonies(body).filter_map(|colony| self.of_colonies.get(colony)).flatten();
        for (_, recorded_at) in of_colonies.filter(|(on, _)| *on >= record.on) {
            may_have_parted = true;
            sent.changed_at = sent.changed_at.max(*recorded_at);
        }
        let several_lots = sent.lots.len() > 1;
        for recorded_at in sent.lots.iter().filter_map(|lot| self.of_lots.get(lot)).flatten() {
            may_have_parted |= several_lots;
            sent.changed_at = sent.changed_at.max(*recorded_at);
        }
        let treated: BTreeSet<&ColonyName> = colonies(body).chain(&sent.colonies).collect();
        sent.carried_over_to = self.receivers_of(treated, record.on);
        if may_have_parted {
            sent.colonies.extend(colonies(body).cloned());
        }
        sent
    }

    /// The colonies that received something from these since a day, directly or through others.
    fn receivers_of(&self, colonies: BTreeSet<&ColonyName>, since: Day) -> BTreeSet<ColonyName> {
        let mut found: BTreeSet<ColonyName> = BTreeSet::new();
        let mut open: Vec<&ColonyName> = colonies.into_iter().collect();
        while let Some(from) = open.pop() {
            for (on, into) in self.receivers.get(from).into_iter().flatten() {
                if *on >= since && found.insert((*into).clone()) {
                    open.push(into);
                }
            }
        }
        found
    }
}

/// What an entry said happened; of a strike-out, what it says did not.
fn said<'h>(view: &View<'h>, record: &'h Record) -> Option<&'h Event> {
    match (&record.event, &record.correction) {
        (Event::StrikeOut(_), Some(correction)) => Some(&view.holding.entry(correction.of)?.event),
        (event, _) => Some(event),
    }
}

fn colonies(body: &Administration) -> impl Iterator<Item = &ColonyName> {
    body.given.iter().flat_map(|part| &part.colonies)
}

/// The entries that this one corrects, the newest first.
fn earlier_versions<'h>(view: &View<'h>, record: &Record) -> Vec<&'h Arc<Record>> {
    let mut versions = Vec::new();
    let mut of = record.correction.as_ref().map(|correction| correction.of);
    while let Some(old) = of.and_then(|id| view.holding.entry(id)) {
        versions.push(old);
        of = old.correction.as_ref().map(|correction| correction.of);
    }
    versions
}
