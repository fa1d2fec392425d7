//! What the law still misses, in words.

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::verdict::Verdict;
use crate::basics::words::{HoldingName, Jurisdiction, LotName, MedicineName, Unit};
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;

/// What the legal record of a holding still misses in a time, entry by entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct GapsReport {
    /// The holding.
    pub holding: HoldingName,
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
    /// What happened after this day does not bear on it.
    pub as_of: Day,
    /// The laws that were asked, by the days of the entries.
    pub laws: Vec<LawPart>,
    /// Yes if everything that those laws require stands in the record; no if something is missing; unknown if for some
    /// entry no law could be asked.
    pub complete: Verdict,
    /// The same for the keeper, in a few sentences.
    pub summary: Vec<String>,
    /// What is missing or amiss: what the law requires first, then what was amiss, then what the law asks for where it
    /// applies, then advice.
    pub gaps: Vec<Gap>,
    /// Whether the book of each lot comes out even.
    pub lots: Vec<LotCheck>,
    /// What this is not.
    pub notice: &'static str,
}

/// A law that was asked.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = LawAsked))]
pub struct LawPart {
    /// Where it holds.
    pub jurisdiction: Jurisdiction,
    /// What it is called.
    pub title: String,
}

/// How much a gap weighs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum GapWeight {
    /// The law requires it, and it is missing.
    Required,
    /// The record is there, and shows that something was not as it should be. No entry can mend it.
    Amiss,
    /// The law requires it where it applies, and the record does not tell whether it does.
    WhereApplicable,
    /// Practice advises it.
    Advised,
}

/// Something that is missing or amiss.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Gap {
    /// How much it weighs.
    pub weight: GapWeight,
    /// What is missing, as a word for programs: a field of the law such as `supplier_address`, or `use_after_expiry` and
    /// the like.
    pub missing: &'static str,
    /// What it is about, in words: `acquisition of lot HERB-25-1 on 2025-08-02`.
    pub about: String,
    /// The entry that it is about.
    pub entry: EntryId,
    /// The place of that entry in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub place: u64,
    /// The kind of that entry.
    pub kind: Kind,
    /// The day of that entry.
    pub on: Day,
    /// The gap in one sentence.
    pub statement: String,
    /// How to supply what is missing.
    pub supply: String,
    /// Where the law says so, for a person to look up.
    pub law: Vec<String>,
}

/// The book of a lot: acquired = given + disposed + left.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotCheck {
    /// The lot.
    pub lot: LotName,
    /// The medicine, by the keeper's name.
    pub medicine: MedicineName,
    /// What it is counted in.
    pub unit: Option<Unit>,
    /// How much was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub acquired: Quantity,
    /// How much was given.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub given: Quantity,
    /// How much was disposed of.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0))]
    pub disposed: Quantity,
    /// What is left by the book; absent when more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub left: Option<Quantity>,
    /// How much more is gone than was acquired; absent when the book comes out even.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub over: Option<Quantity>,
    /// The entries that say that the count was corrected: the book is then not explained by the record alone.
    pub count_corrected_by: Vec<EntryId>,
}
