//! What an archive step would move, in words.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::journal::places::Places;
use combclear_domain::questions::retention::ArchivePlan;
use serde::Serialize;

use super::{KeptStory, held_back};
use crate::words::Words;

/// What an archive step would move.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ArchivePlanReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day by whose end none of it has to be kept any more.
    pub through: Day,
    /// The stories that would go, in the order of their first entries.
    pub stories: Vec<KeptStory>,
    /// The stories that could go, but are held back.
    pub held_back: Vec<HeldBack>,
    /// The places of the entries that would go; none if nothing would.
    pub places: Option<String>,
    /// The contents of documents that no remaining entry names, in the order in which they were first attached.
    pub contents: Vec<Hash>,
}

/// A story that the law would let go, but that stays.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HeldBack {
    /// The story.
    pub story: KeptStory,
    /// Why it stays.
    pub because: String,
}

impl ArchivePlanReport {
    /// Puts a plan into words.
    #[must_use]
    pub fn of(words: &Words, plan: ArchivePlan) -> ArchivePlanReport {
        let ArchivePlan { holding, through, stories, held_back: held, places, contents } = plan;
        let held = held.into_iter().map(|held| HeldBack {
            because: held_back(words, &held.because),
            story: KeptStory::of(words, held.story),
        });
        ArchivePlanReport {
            holding,
            through,
            stories: stories.into_iter().map(|story| KeptStory::of(words, story)).collect(),
            held_back: held.collect(),
            places: places.as_ref().map(Places::to_string),
            contents,
        }
    }
}
