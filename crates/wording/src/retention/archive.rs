//! The archive plan in words.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::journal::places::Places;
use combclear_domain::questions::retention::ArchivePlan;
use serde::Serialize;

use super::{KeptSet, held_back};
use crate::words::Words;

/// The archive plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ArchivePlanReport {
    /// The holding.
    pub holding: HoldingName,
    /// At the end of this day, none of the planned entries has to be kept any longer.
    pub through: Day,
    /// The sets to archive, in the order of their first entries.
    pub sets: Vec<KeptSet>,
    /// The sets that the law no longer requires, but that are held back.
    pub held_back: Vec<HeldBack>,
    /// The positions of the entries to archive. Absent if there are none.
    pub places: Option<String>,
    /// The document contents that no retained entry names, in order of first attachment.
    pub contents: Vec<Hash>,
}

/// A set that the law no longer requires, but that is retained.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HeldBack {
    /// The set.
    pub set: KeptSet,
    /// Why it is retained.
    pub because: String,
}

impl ArchivePlanReport {
    /// Puts a plan into words.
    #[must_use]
    pub fn of(words: &Words, plan: ArchivePlan) -> ArchivePlanReport {
        let ArchivePlan { holding, through, sets, held_back: held, places, contents } = plan;
        let held = held.into_iter().map(|held| HeldBack {
            because: held_back(words, &held.because),
            set: KeptSet::of(words, held.set),
        });
        ArchivePlanReport {
            holding,
            through,
            sets: sets.into_iter().map(|set| KeptSet::of(words, set)).collect(),
            held_back: held.collect(),
            places: places.as_ref().map(Places::to_string),
            contents,
        }
    }
}
