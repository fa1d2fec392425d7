//! Which sets may be archived by a day. Planning moves nothing.

use std::collections::BTreeSet;

use super::kept::{KeptSet, NotSettled, Retention};
use crate::basics::calendar::Day;
use crate::basics::words::{ColonyName, HoldingName};
use crate::facts::history::History;
use crate::facts::holding::{Holding, Tie};
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::journal::places::Places;
use crate::journal::seal::Hash;
use crate::rules::law::Laws;
use crate::rules::leaflet::Leaflets;

/// Number of days, from the day of the step on, on which no colony's answer may change. Longer than any period that
/// can be stated (400 days).
const DAYS_LOOKED_AT: u16 = 401;

/// The archive plan.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ArchivePlan {
    /// The holding.
    pub holding: HoldingName,
    /// At the end of this day, none of the planned entries has to be kept any longer.
    pub through: Day,
    /// The sets to archive, in the order of their first entries.
    pub sets: Vec<KeptSet>,
    /// The sets that the law no longer requires, but that are held back.
    pub held_back: Vec<HeldBack>,
    /// The positions of the entries to archive. `None` if there are none.
    pub places: Option<Places>,
    /// The document contents that no retained entry names, in order of first attachment.
    pub contents: Vec<Hash>,
}

/// A set that the law no longer requires, but that is retained.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldBack {
    /// The set.
    pub set: KeptSet,
    /// Why it is retained.
    pub because: WhyHeldBack,
}

/// What a law that was not read in its own text does to records that it would release.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LawNotRead {
    /// It holds them back.
    HoldsBack,
    /// The keeper answers for it, with a reason that is recorded.
    IsAnsweredFor,
}

/// Why a set is retained that the law no longer requires.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyHeldBack {
    /// The law was not read in its own text.
    LawNotRead(Vec<NotSettled>),
    /// Part of it is still running.
    StillRuns(Vec<NotSettled>),
    /// A retained entry is tied to it.
    Tied(Tie),
    /// The supering answer of this colony depends on it.
    SuperingTurns(ColonyName),
}

impl ArchivePlan {
    /// The sets that need not be kept beyond the end of `through`. A set is held back if it is not over, if a
    /// retained entry is tied to it, or if the supering answer of a colony depends on it on or after `today`.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        laws: &Laws,
        through: Day,
        today: Day,
        not_read: LawNotRead,
    ) -> ArchivePlan {
        let report = Retention::of(holding, leaflets, laws, through);
        let mut waiting: Vec<HeldBack> = Vec::new();
        let mut could_go: Vec<KeptSet> = Vec::new();
        for set in report.sets {
            match (set.waits_for_law(through), not_read) {
                (Some(because), LawNotRead::HoldsBack) => {
                    waiting.push(HeldBack { set, because: WhyHeldBack::LawNotRead(because) });
                }
                (Some(_), LawNotRead::IsAnsweredFor) => could_go.push(set),
                (None, _) if set.could_go => could_go.push(set),
                (None, _) => {}
            }
        }
        // Some laws count from the making of the entry, and so release sets that are not over: a lot with stock
        // left, a course still in a colony. The journal still needs those.
        let (running, mut sets): (Vec<_>, Vec<_>) = could_go.into_iter().partition(still_runs);
        let running = running.into_iter().map(|set| HeldBack { because: why_it_runs(&set), set });
        let mut held_back: Vec<HeldBack> = waiting.into_iter().chain(running).collect();
        // Each round holds back at least one set, so this ends.
        loop {
            let going: Vec<EntryId> = ids(&sets).collect();
            let found = holding
                .first_tie(&going)
                .map(|tie| (BTreeSet::from([tie.goes]), WhyHeldBack::Tied(tie)))
                .or_else(|| turned(holding, leaflets, &sets, today));
            let Some((entries, because)) = found else { break };
            let (staying, rest): (Vec<_>, Vec<_>) = sets
                .into_iter()
                .partition(|set| set.entries.iter().any(|kept| entries.contains(&kept.entry)));
            sets = rest;
            // Unreachable: the tied entry is one of those to archive.
            if staying.is_empty() {
                sets.clear();
            }
            held_back.extend(staying.into_iter().map(|set| HeldBack { set, because: because.clone() }));
        }
        let places = places(&sets);
        let contents = places.as_ref().map_or_else(Vec::new, |places| contents(holding, places));
        ArchivePlan { holding: holding.name().clone(), through, sets, held_back, places, contents }
    }
}

fn still_runs(set: &KeptSet) -> bool {
    set.lots.iter().any(|lot| !lot.still_runs.is_empty())
}

fn why_it_runs(set: &KeptSet) -> WhyHeldBack {
    WhyHeldBack::StillRuns(set.lots.iter().flat_map(|lot| lot.still_runs.iter().cloned()).collect())
}

fn ids(sets: &[KeptSet]) -> impl Iterator<Item = EntryId> {
    sets.iter().flat_map(|set| set.entries.iter().map(|kept| kept.entry))
}

fn places(sets: &[KeptSet]) -> Option<Places> {
    Places::of(sets.iter().flat_map(|set| set.entries.iter().map(|kept| kept.seq)))
}

/// The contents that only entries at these positions name.
fn contents(holding: &Holding, places: &Places) -> Vec<Hash> {
    let mut going = Vec::new();
    let mut staying = BTreeSet::new();
    for record in holding.in_order() {
        let Event::DocumentAttached(document) = &record.event else { continue };
        if !places.contains(record.seq) {
            staying.insert(document.content.0);
        } else if !going.contains(&document.content) {
            going.push(document.content);
        }
    }
    going.retain(|content| !staying.contains(&content.0));
    going
}

/// The entries that affect the first colony whose supering answer would change, if any.
///
/// A course with an unknown period makes its colony unknown for good; archiving it would turn that into a yes although
/// nothing was learnt. Likewise, a retention rule that is too short must never produce a wrong yes.
fn turned(
    holding: &Holding,
    leaflets: &Leaflets,
    sets: &[KeptSet],
    today: Day,
) -> Option<(BTreeSet<EntryId>, WhyHeldBack)> {
    let places = places(sets)?;
    let after = holding.without(&places);
    let colony = holding.colonies().find(|colony| {
        let ahead = |holding: &Holding, colony: &ColonyName| {
            History::of(holding, leaflets, colony).supering_ahead(today, DAYS_LOOKED_AT)
        };
        ahead(holding, colony) != ahead(&after, colony)
    })?;
    let history = History::of(holding, leaflets, colony);
    let mut bearing: BTreeSet<EntryId> = history.courses.iter().map(|course| course.entry).collect();
    bearing.retain(|entry| ids(sets).any(|going| going == *entry));
    if bearing.is_empty() {
        bearing.extend(ids(sets));
    }
    Some((bearing, WhyHeldBack::SuperingTurns(colony.clone())))
}
