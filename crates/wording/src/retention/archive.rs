//! The archive plan in words.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::journal::places::Places;
use combclear_domain::questions::retention::ArchivePlan;
use serde::Serialize;

use super::{KeptStory, held_back};
use crate::words::Words;

/// The archive plan.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ArchivePlanReport {
    /// The holding.
    pub holding: HoldingName,
    /// At the end of this day, none of the planned entries has to be kept any longer.
    pub through: Day,
    /// The stories to archive, in the order of their first entries.
    pub stories: Vec<KeptStory>,
    /// The stories that the law no longer requires, but that are held back.
    pub held_back: Vec<HeldBack>,
    /// The positions of the entries to archive. Absent if there are none.
    pub places: Option<String>,
    /// The document contents that no retained entry names, in order of first attachment.
    pub contents: Vec<Hash>,
}

/// A story that the law no longer requires, but that is retained.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HeldBack {
    /// The story.
    pub story: KeptStory,
    /// Why it is retained.
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
