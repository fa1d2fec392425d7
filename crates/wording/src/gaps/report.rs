//! What is missing from the legal record, as a report in words.

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::questions::gaps::{CopiedEntries, Gap, Gaps, LawPart, LotCheck};
use combclear_domain::questions::register::ArchivedPart;
use serde::Serialize;

use super::{about, law_place, statement, summary, supply};
use crate::words::Words;

/// What is missing from the legal record of a holding for a period, entry by entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GapsReport {
    /// The holding.
    pub holding: HoldingName,
    /// The first day of the period.
    pub from: Day,
    /// The last day of the period.
    pub to: Day,
    /// Events after this day are ignored.
    pub as_of: Day,
    /// The laws that were checked, by the days of the entries.
    pub laws: Vec<LawPart>,
    /// Yes if the record meets every requirement of those laws, no if something is missing, unknown if no law could
    /// be checked for some entry, or if entries of the period are in an archive.
    pub complete: Verdict,
    /// The answer for the keeper, in a few sentences.
    pub summary: Vec<String>,
    /// The gaps: legal requirements first, then irregularities, then requirements that may apply, then advice.
    pub gaps: Vec<GapReport>,
    /// The stock account of each lot.
    pub lots: Vec<LotCheck>,
    /// Entries copied from a paper register. They are no gaps; the paper is kept as long as they are.
    pub copied: Vec<CopiedEntries>,
    /// Archives with entries of the period, which were not checked.
    pub archived: Vec<ArchivedPart>,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// Something missing or irregular.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = Gap))]
pub struct GapReport {
    /// The entry concerned, and how serious it is.
    #[serde(flatten)]
    pub gap: Gap,
    /// The identifier of the gap: a field of the law such as `supplier_address`, or `use_after_expiry` and the like.
    pub missing: &'static str,
    /// The row concerned, in words: `acquisition of lot HERB-25-1 on 2025-08-02`.
    pub about: String,
    /// The gap, in one sentence.
    pub statement: String,
    /// How to fix it.
    pub supply: String,
    /// Where the law requires it.
    pub law: Vec<String>,
}

impl GapsReport {
    /// Puts the findings into words.
    #[must_use]
    pub fn of(words: &Words, found: Gaps) -> GapsReport {
        GapsReport {
            summary: summary(words, &found),
            holding: found.holding,
            from: found.from,
            to: found.to,
            as_of: found.as_of,
            laws: found.laws,
            complete: found.complete,
            gaps: found.gaps.into_iter().map(|gap| GapReport::of(words, gap)).collect(),
            lots: found.lots,
            copied: found.copied,
            archived: found.archived,
            notice: crate::notice(words),
        }
    }
}

impl GapReport {
    fn of(words: &Words, gap: Gap) -> GapReport {
        GapReport {
            missing: gap.finding.as_str(),
            about: about(words, &gap),
            statement: statement(words, &gap),
            supply: supply(words, gap.supply),
            law: gap.law.iter().map(|place| law_place(words, place)).collect(),
            gap,
        }
    }
}
