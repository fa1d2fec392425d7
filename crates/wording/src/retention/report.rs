//! How long records must be kept, as a report in words.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::questions::retention::{Retention, kept};
use serde::Serialize;

use super::{decided_by, not_settled};
use crate::words::Words;

/// How long the medicine records of a holding must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RetentionReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about, on which records may be archived.
    pub on: Day,
    /// Story by story, in the order of their first entries.
    pub stories: Vec<KeptStory>,
    /// The limits of this answer.
    pub notice: String,
}

/// Entries that are kept or archived together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptStory {
    /// The lots it is about; empty for prescriptions that several stories used, or that none used.
    pub lots: Vec<KeptLot>,
    /// The last day on which all of it must be kept: the latest of its entries.
    pub keep: KeepUntil,
    /// The first day on which it may be archived; absent while that is not known.
    pub could_go_from: Option<Day>,
    /// Whether it may be archived on the day asked about. Nothing is archived automatically.
    pub could_go: bool,
    /// Its entries, in the order of the journal.
    pub entries: Vec<KeptEntry>,
}

/// A lot, and the end of its use.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptLot {
    /// The lot, and its last use.
    #[serde(flatten)]
    pub lot: kept::KeptLot,
    /// Why that may still move. Empty if everything of the lot is accounted for.
    pub still_runs: Vec<String>,
}

/// An entry, and until when it must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptEntry {
    /// The entry.
    #[serde(flatten)]
    pub entry: kept::KeptEntry,
    /// Until when it must be kept.
    pub keep: KeepUntil,
}

/// Until when something must be kept, in words.
pub type KeepUntil = kept::KeepUntil<DecidedBy, String>;

/// The rule that decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DecidedBy {
    /// The rule.
    #[serde(flatten)]
    pub rule: kept::DecidedBy,
    /// The same in a sentence.
    pub statement: String,
}

impl RetentionReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, answer: Retention) -> RetentionReport {
        let Retention { holding, on, stories } = answer;
        RetentionReport {
            holding,
            on,
            stories: stories.into_iter().map(|story| KeptStory::of(words, story)).collect(),
            notice: crate::law::notice(words),
        }
    }
}

impl KeptStory {
    /// Puts one story into words.
    #[must_use]
    pub fn of(words: &Words, story: kept::KeptStory) -> KeptStory {
        let kept::KeptStory { lots, keep, could_go_from, could_go, entries } = story;
        let lots = lots.into_iter().map(|lot| {
            let still_runs = lot.still_runs.iter().map(|why| not_settled(words, why)).collect();
            KeptLot { lot, still_runs }
        });
        let entries =
            entries.into_iter().map(|entry| KeptEntry { keep: keep_until(words, entry.keep.clone()), entry });
        KeptStory {
            lots: lots.collect(),
            keep: keep_until(words, keep),
            could_go_from,
            could_go,
            entries: entries.collect(),
        }
    }
}

fn keep_until(words: &Words, keep: kept::KeepUntil) -> KeepUntil {
    let decided = |rule| DecidedBy { statement: decided_by(words, &rule), rule };
    keep.said(decided, |why| not_settled(words, why))
}
