//! The rules of a law file, each dated, sourced and marked with how well it is established.

use serde::Serialize;

use super::words::{CountedFrom, Field, FieldNeed, KeepingForce, Occasion, RecordSort};
use crate::basics::calendar::Day;
use crate::basics::confidence::Confidence;

/// What every rule of a law file has in common: dates, sources, confidence.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Basis {
    /// First day on which it is in force.
    pub from: Day,
    /// Last day on which it is in force; open-ended if absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Day>,
    /// Keys of the sources in which it was read.
    pub source: Vec<String>,
    /// How well it is established.
    pub confidence: Confidence,
    /// The day on which it was last checked.
    pub checked_on: Day,
    /// Anything a reader must know about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Its line in the law file.
    pub line: u32,
}

impl Basis {
    /// Whether the rule is in force on a day.
    #[must_use]
    pub fn is_in_force(&self, on: Day) -> bool {
        self.from <= on && self.until.is_none_or(|until| on <= until)
    }

    /// Whether there is a day on which both rules are in force.
    pub(super) fn meets(&self, other: &Basis) -> bool {
        let in_time = |a: &Basis, b: &Basis| b.until.is_none_or(|until| a.from <= until);
        in_time(self, other) && in_time(other, self)
    }
}

/// A field that must be written down on an occasion.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FieldRule {
    /// The occasion.
    pub occasion: Occasion,
    /// The field.
    pub field: Field,
    /// How much it is needed.
    pub need: FieldNeed,
    /// Dates and sources.
    pub basis: Basis,
}

/// How long records must be kept.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RetentionRule {
    /// Which records.
    pub records: Vec<RecordSort>,
    /// Years.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 30))]
    pub years: u8,
    /// The moment from which they are counted.
    pub counted_from: CountedFrom,
    /// How binding it is.
    pub force: KeepingForce,
    /// Dates and sources.
    #[serde(skip)]
    pub basis: Basis,
}

/// How soon an entry must be made.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TimeLimitRule {
    /// The occasion.
    pub occasion: Occasion,
    /// Days after the occasion; 0 means at the time.
    pub within_days: u16,
    /// Dates and sources.
    pub basis: Basis,
}

/// What form the records must have, in words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FormRule {
    /// The requirement, in words.
    pub text: String,
    /// Dates and sources.
    pub basis: Basis,
}

/// A rule with dates and sources.
pub trait Dated {
    /// Its dates and sources.
    fn basis(&self) -> &Basis;
}

macro_rules! dated {
    ($($rule:ident),+) => {$(
        impl Dated for $rule {
            fn basis(&self) -> &Basis {
                &self.basis
            }
        }
    )+};
}

dated!(FieldRule, RetentionRule, TimeLimitRule, FormRule);
