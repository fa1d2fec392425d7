//! One rule of a leaflet: dates, sources, confidence. Its content is declared in `basics/rule_kinds.rs`.

use crate::basics::confidence::Confidence;
use std::fmt;

use serde::{Deserialize, Serialize};

use crate::basics::calendar::Day;
use crate::basics::words::{Method, word_lists};

pub use crate::basics::rule_words::{
    BroodState, DosePer, Need, Other, Region, TemperatureWindow, Timing, YearCounting,
};
pub use crate::basics::says::{Says, WithdrawalPeriod};

/// One dated, sourced statement of a leaflet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Rule {
    /// Its content.
    #[serde(flatten)]
    pub says: Says,
    /// The method it is limited to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub method: Option<Method>,
    /// The label revision it is limited to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub revision: Option<String>,
    /// The part of the Union that it is limited to.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub region: Option<Region>,
    /// First day on which it is in force; open to the past if absent, since the start is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Day>,
    /// Last day on which it is in force; open-ended if absent.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub until: Option<Day>,
    /// How binding it is.
    pub force: Force,
    /// Keys of the sources in which it was read.
    pub source: Vec<String>,
    /// How well it is established.
    pub confidence: Confidence,
    /// The day on which it was last checked.
    pub checked_on: Day,
    /// Anything a reader must know about it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub note: Option<String>,
    /// Its line in the leaflet file.
    pub line: u32,
}

impl Rule {
    /// Whether it is in force on a day.
    #[must_use]
    pub(crate) fn is_in_force(&self, on: Day) -> bool {
        self.from.is_none_or(|from| from <= on) && self.until.is_none_or(|until| on <= until)
    }

    /// Whether it applies to a lot of this label revision given by this method. It may if either is not known.
    #[must_use]
    pub fn fits(&self, method: Option<&Method>, revision: Option<&str>) -> bool {
        let of_method = self.method.as_ref().zip(method).is_none_or(|(of, given)| of == given);
        of_method && self.revision.as_deref().zip(revision).is_none_or(|(of, printed)| of == printed)
    }
}

word_lists! {
    /// How binding a rule is.
    Force {
        /// Law.
        Law = "law",
        /// The label or leaflet.
        Label = "label",
        /// Advice only.
        Advice = "advice",
    }
}
