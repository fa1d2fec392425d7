//! Published documents in which rules were read.

use std::fmt;

use serde::Serialize;

use super::words::{Jurisdiction, SourceKind};

/// A published document in which a rule was read.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Source {
    /// Short key, used by the rules of the same file.
    pub id: String,
    /// Whose text it is, as a lower-case code: `gb`, `de`, `eu` for a body of the Union. Absent only where nothing was read.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub country: Option<Jurisdiction>,
    /// Who speaks in it.
    pub kind: SourceKind,
    /// What it is.
    pub title: String,
    /// Its authorisation or record number.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub record: Option<String>,
    /// Where in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub locator: Option<String>,
    /// Its public address.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub address: Option<String>,
    /// When it was published, as far as known: a year, a month or a day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub published: Option<String>,
}

impl fmt::Display for Source {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.title)?;
        for part in [&self.record, &self.locator, &self.address].into_iter().flatten() {
            write!(f, ", {part}")?;
        }
        if let Some(published) = &self.published {
            write!(f, " ({published})")?;
        }
        match &self.country {
            Some(country) => write!(f, " [{country}, {}]", self.kind),
            None => write!(f, " [{}]", self.kind),
        }
    }
}

impl Source {
    /// Whether it is the text of an authority that speaks for a jurisdiction: its own, or one of the Union for a member
    /// state. For the Union as a whole, the authority of any member state counts too: see `Leaflets::get`.
    #[must_use]
    pub(crate) fn speaks_for(&self, jurisdiction: &Jurisdiction) -> bool {
        let in_union = jurisdiction.is_union() || jurisdiction.is_member_state();
        match self.kind {
            SourceKind::Union => in_union,
            SourceKind::Authority => self.country.as_ref().is_some_and(|country| {
                country == jurisdiction || (jurisdiction.is_union() && country.is_member_state())
            }),
            SourceKind::Trade | SourceKind::Research | SourceKind::Memory => false,
        }
    }
}
