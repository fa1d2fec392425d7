//! Which stories can be moved into an archive by a day. Planning moves nothing.

use std::collections::BTreeSet;

use super::kept::{KeptStory, NotSettled, Retention};
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

/// For how many days, from the day of the step on, no colony's answer may change. Longer than any period that can be
/// stated (400 days).
const DAYS_LOOKED_AT: u16 = 401;

/// What would be moved into an archive.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ArchivePlan {
    /// The holding.
    pub holding: HoldingName,
    /// By the end of this day nothing of it has to be kept any more.
    pub through: Day,
    /// The stories that would go, in the order of their first entries.
    pub stories: Vec<KeptStory>,
    /// The stories that could go, but are held back.
    pub held_back: Vec<HeldBack>,
    /// The places of the entries that would go; none if nothing would.
    pub places: Option<Places>,
    /// The contents of documents that no remaining entry names, in the order in which they were first attached.
    pub contents: Vec<Hash>,
}

/// A story that the law would let go, but that stays.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HeldBack {
    /// The story.
    pub story: KeptStory,
    /// Why it stays.
    pub because: WhyHeldBack,
}

/// Why a story stays that the law would let go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyHeldBack {
    /// Something of it still runs.
    StillRuns(Vec<NotSettled>),
    /// An entry that stays is tied to it.
    Tied(Tie),
    /// Whether this colony may be supered turns on it.
    SuperingTurns(ColonyName),
}

impl ArchivePlan {
    /// The stories of which nothing has to be kept any more by the end of `through`, if they are over, nothing that stays is tied
    /// to them and no colony's supering turns on them, from `today` on.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, laws: &Laws, through: Day, today: Day) -> ArchivePlan {
        let report = Retention::of(holding, leaflets, laws, through);
        let could_go = report.stories.into_iter().filter(|story| story.could_go);
        // Some laws count from the making of the entry, and so let go what is not over: a lot of which some is left, a course
        // that is still in a colony. The journal still needs those.
        let (running, mut stories): (Vec<_>, Vec<_>) = could_go.partition(still_runs);
        let held_back = running.into_iter().map(|story| HeldBack { because: why_it_runs(&story), story });
        let mut held_back: Vec<HeldBack> = held_back.collect();
        // Each turn holds one story back at least, so this ends.
        loop {
            let going: Vec<EntryId> = ids(&stories).collect();
            let found = holding
                .first_tie(&going)
                .map(|tie| (BTreeSet::from([tie.goes]), WhyHeldBack::Tied(tie)))
                .or_else(|| turned(holding, leaflets, &stories, today));
            let Some((entries, because)) = found else { break };
            let (staying, rest): (Vec<_>, Vec<_>) = stories
                .into_iter()
                .partition(|story| story.entries.iter().any(|kept| entries.contains(&kept.entry)));
            stories = rest;
            // Should never be: what is tied is among what goes.
            if staying.is_empty() {
                stories.clear();
            }
            held_back.extend(staying.into_iter().map(|story| HeldBack { story, because: because.clone() }));
        }
        let places = places(&stories);
        let contents = places.as_ref().map_or_else(Vec::new, |places| contents(holding, places));
        ArchivePlan { holding: holding.name().clone(), through, stories, held_back, places, contents }
    }
}

fn still_runs(story: &KeptStory) -> bool {
    story.lots.iter().any(|lot| !lot.still_runs.is_empty())
}

fn why_it_runs(story: &KeptStory) -> WhyHeldBack {
    WhyHeldBack::StillRuns(story.lots.iter().flat_map(|lot| lot.still_runs.iter().cloned()).collect())
}

fn ids(stories: &[KeptStory]) -> impl Iterator<Item = EntryId> {
    stories.iter().flat_map(|story| story.entries.iter().map(|kept| kept.entry))
}

fn places(stories: &[KeptStory]) -> Option<Places> {
    Places::of(stories.iter().flat_map(|story| story.entries.iter().map(|kept| kept.seq)))
}

/// The contents that only entries at these places name.
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

/// The entries that bear on the first colony whose supering would turn, if one would.
///
/// A course of which a period is not known makes its colony unknown for good: to move it away would make a yes of that
/// without anybody having learnt anything. And a rule too short must not make a wrong yes either.
fn turned(
    holding: &Holding,
    leaflets: &Leaflets,
    stories: &[KeptStory],
    today: Day,
) -> Option<(BTreeSet<EntryId>, WhyHeldBack)> {
    let places = places(stories)?;
    let after = holding.without(&places);
    let colony = holding.colonies().find(|colony| {
        let ahead = |holding: &Holding, colony: &ColonyName| {
            History::of(holding, leaflets, colony).supering_ahead(today, DAYS_LOOKED_AT)
        };
        ahead(holding, colony) != ahead(&after, colony)
    })?;
    let history = History::of(holding, leaflets, colony);
    let mut bearing: BTreeSet<EntryId> = history.courses.iter().map(|course| course.entry).collect();
    bearing.retain(|entry| ids(stories).any(|going| going == *entry));
    if bearing.is_empty() {
        bearing.extend(ids(stories));
    }
    Some((bearing, WhyHeldBack::SuperingTurns(colony.clone())))
}
