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
    /// The day asked about, for `could_go`.
    pub on: Day,
    /// The sets of records, each kept and archived together, in the order of their first entries.
    pub sets: Vec<KeptSet>,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// Entries that are kept or archived together.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptSet {
    /// The lots of the set. Empty for prescriptions used by several sets or by none.
    pub lots: Vec<KeptLot>,
    /// How long all of it must be kept: the latest of its entries.
    pub keep: KeepUntil,
    /// The first day on which it may be archived. Absent if not known.
    pub could_go_from: Option<Day>,
    /// Whether it may be archived on the day asked about. Nothing is archived automatically.
    pub could_go: bool,
    /// Its entries, in the order of the journal.
    pub entries: Vec<KeptEntry>,
}

/// A lot and the end of its use.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptLot {
    /// The lot, and its last use.
    #[serde(flatten)]
    pub lot: kept::KeptLot,
    /// Why that day may still move. Empty if all of the lot is accounted for.
    pub still_runs: Vec<String>,
}

/// An entry, with how long it must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct KeptEntry {
    /// The entry.
    #[serde(flatten)]
    pub entry: kept::KeptEntry,
    /// How long it must be kept.
    pub keep: KeepUntil,
}

/// How long something must be kept, in words.
pub type KeepUntil = kept::KeepUntil<DecidedBy, String>;

/// The rule that decided how long to keep a record.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DecidedBy {
    /// The rule.
    #[serde(flatten)]
    pub rule: kept::DecidedBy,
    /// The rule in a sentence.
    pub statement: String,
}

impl RetentionReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, answer: Retention) -> RetentionReport {
        let Retention { holding, on, sets } = answer;
        RetentionReport {
            holding,
            on,
            sets: sets.into_iter().map(|set| KeptSet::of(words, set)).collect(),
            notice: crate::law::notice(words),
        }
    }
}

impl KeptSet {
    /// Puts one set into words.
    #[must_use]
    pub fn of(words: &Words, set: kept::KeptSet) -> KeptSet {
        let kept::KeptSet { lots, keep, could_go_from, could_go, entries } = set;
        let lots = lots.into_iter().map(|lot| {
            let still_runs = lot.still_runs.iter().map(|why| not_settled(words, why)).collect();
            KeptLot { lot, still_runs }
        });
        let entries =
            entries.into_iter().map(|entry| KeptEntry { keep: keep_until(words, entry.keep.clone()), entry });
        KeptSet {
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
