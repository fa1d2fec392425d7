//! How long records must be kept, as a report in words.

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::words::{HoldingName, Jurisdiction, LotName, MedicineName};
use combclear_domain::journal::EntryId;
use combclear_domain::journal::event::Kind;
use combclear_domain::questions::retention::{NotSettled, Retention, kept};
use combclear_domain::rules::law::{CountedFrom, KeepingForce, RecordSort};
use serde::Serialize;

use super::{decided_by, not_settled};
use crate::words::Words;

/// Until when the medicine records of a holding must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RetentionReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about: what could go on it.
    pub on: Day,
    /// Story by story, in the order of their first entries.
    pub stories: Vec<KeptStory>,
    /// What this is not.
    pub notice: String,
}

/// Entries that are kept, or may go, together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptStory {
    /// The lots it is about; none for prescriptions that several stories used, or none.
    pub lots: Vec<KeptLot>,
    /// The day for all of it: the latest of its entries.
    pub keep: KeepUntil,
    /// The first day on which it could go; absent while that is not known.
    pub could_go_from: Option<Day>,
    /// Whether it could go on the day asked about. Nothing goes by itself.
    pub could_go: bool,
    /// Its entries, in the order of the journal.
    pub entries: Vec<KeptEntry>,
}

/// A lot, and the end of its use.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptLot {
    /// The lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: Option<MedicineName>,
    /// The last day on which something of it was given, taken out or disposed of.
    pub last_use_or_disposal: Option<Day>,
    /// Why that may yet move. Empty if everything of the lot is accounted for.
    pub still_runs: Vec<String>,
}

/// An entry, and until when it must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptEntry {
    /// The entry.
    pub entry: EntryId,
    /// Its place in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub seq: u64,
    /// The day on which it happened.
    pub on: Day,
    /// Its kind.
    pub kind: Kind,
    /// What sorts of record it is, for the law.
    pub records: Vec<RecordSort>,
    /// Until when it must be kept.
    pub keep: KeepUntil,
}

/// Until when something must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "state", rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum KeepUntil {
    /// Until this day, which is the last.
    Until {
        /// The last day on which it must be kept.
        day: Day,
        /// The rule that decided.
        decided_by: Box<DecidedBy>,
    },
    /// At least until this day: the end is not known yet.
    AtLeast {
        /// The last day on which it must be kept if nothing more is recorded.
        day: Day,
        /// The rule that decided.
        decided_by: Box<DecidedBy>,
        /// Why the end is not known.
        because: Vec<String>,
    },
    /// Not known: keep it.
    NotKnown {
        /// What is missing.
        missing: Vec<String>,
    },
}

/// The rule that decided.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DecidedBy {
    /// In whose law it stands.
    pub jurisdiction: Jurisdiction,
    /// For so many years.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 30))]
    pub years: u8,
    /// Counted from when.
    pub counted_from: CountedFrom,
    /// The day that this was.
    pub counted_from_day: Day,
    /// How much it binds.
    pub force: KeepingForce,
    /// How well it is established.
    pub confidence: Confidence,
    /// Titles of the sources.
    pub sources: Vec<String>,
    /// Anything a reader must know about it.
    pub note: Option<String>,
    /// The same in a sentence.
    pub statement: String,
}

impl RetentionReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, answer: &Retention) -> RetentionReport {
        RetentionReport {
            holding: answer.holding.clone(),
            on: answer.on,
            stories: answer.stories.iter().map(|story| KeptStory::of(words, story)).collect(),
            notice: crate::law::notice(words),
        }
    }
}

impl KeptStory {
    /// Puts one story into words.
    #[must_use]
    pub fn of(words: &Words, story: &kept::KeptStory) -> KeptStory {
        let lots = story.lots.iter().map(|lot| KeptLot {
            lot: lot.lot.clone(),
            medicine: lot.medicine.clone(),
            last_use_or_disposal: lot.last_use_or_disposal,
            still_runs: said(words, &lot.still_runs),
        });
        let entries = story.entries.iter().map(|entry| KeptEntry {
            entry: entry.entry,
            seq: entry.seq,
            on: entry.on,
            kind: entry.kind,
            records: entry.records.clone(),
            keep: KeepUntil::of(words, &entry.keep),
        });
        KeptStory {
            lots: lots.collect(),
            keep: KeepUntil::of(words, &story.keep),
            could_go_from: story.could_go_from,
            could_go: story.could_go,
            entries: entries.collect(),
        }
    }
}

impl KeepUntil {
    fn of(words: &Words, keep: &kept::KeepUntil) -> KeepUntil {
        let decided = |by: &kept::DecidedBy| Box::new(DecidedBy::of(words, by));
        match keep {
            kept::KeepUntil::Until { day, decided_by } => {
                KeepUntil::Until { day: *day, decided_by: decided(decided_by) }
            }
            kept::KeepUntil::AtLeast { day, decided_by, because } => KeepUntil::AtLeast {
                day: *day,
                decided_by: decided(decided_by),
                because: said(words, because),
            },
            kept::KeepUntil::NotKnown { missing } => KeepUntil::NotKnown { missing: said(words, missing) },
        }
    }
}

impl DecidedBy {
    fn of(words: &Words, by: &kept::DecidedBy) -> DecidedBy {
        DecidedBy {
            jurisdiction: by.jurisdiction.clone(),
            years: by.years,
            counted_from: by.counted_from,
            counted_from_day: by.counted_from_day,
            force: by.force,
            confidence: by.confidence,
            sources: by.sources.clone(),
            note: by.note.clone(),
            statement: decided_by(words, by),
        }
    }
}

fn said(words: &Words, reasons: &[NotSettled]) -> Vec<String> {
    reasons.iter().map(|reason| not_settled(words, reason)).collect()
}
