//! Missing facts, and how to supply them, in words.

use combclear_domain::Day;
use combclear_domain::basics::words::{ColonyName, LotName};
use combclear_domain::journal::{EntryId, Kind};
use combclear_domain::questions::options::{self, NoDose, NoLeaflets, Remedy};
use combclear_domain::rules::leaflet::Leaflet;
use serde::Serialize;

use super::because::because;
use super::condition::says;
use super::{dose, how};
use crate::Words;
use crate::words::say;

/// A missing fact.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Missing {
    /// The subject of the open condition.
    pub about: &'static str,
    /// The missing fact.
    pub fact: String,
    /// The kind of entry that would supply it. Absent if no entry can.
    pub supplied_by: Option<&'static str>,
    /// The fields to fill in; `field=value` if only that value would help.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fields: Vec<String>,
    /// The first day that the entry may have. For temperatures and flows, which are recorded when they are known, the
    /// first day that the entry must cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_from: Option<Day>,
    /// The last such day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_by: Option<Day>,
    /// The lots whose leaflets must be read, all of them.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<LotName>,
    /// The existing entries concerned: the first dose of a course to take out, or an entry to correct.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub entries: Vec<EntryId>,
    /// How to supply it, in words.
    pub how: String,
    /// The first start day concerned, if only later ones are.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Day>,
}

impl Missing {
    /// For an open condition of a leaflet in a colony.
    pub(super) fn of(
        words: &Words,
        leaflet: &Leaflet,
        colony: &ColonyName,
        missing: &options::Missing,
    ) -> Missing {
        let why = because(words, &missing.because);
        let rule = missing.rule.and_then(|index| leaflet.rules.get(index));
        let fact = match rule.map(|rule| says(words, leaflet, missing.about, rule)) {
            Some(says) => say!(words, OptionsRuleAndFact, rule = says, fact = why),
            None => why,
        };
        let about = missing.about.as_str();
        let from = missing.from;
        match &missing.remedy {
            Remedy::Entry(entry) => Missing {
                supplied_by: Some(entry.kind.as_str()),
                fields: entry.fields.iter().map(|field| (*field).to_owned()).collect(),
                on_from: entry.on.map(|(from, _)| from),
                on_by: entry.on.map(|(_, by)| by),
                lots: entry.lots.clone(),
                entries: entry.entries.clone(),
                from,
                ..Missing::with(about, fact, None, how::entry(words, colony, entry))
            },
            Remedy::NoEntry(instead) => {
                Missing { from, ..Missing::with(about, fact, None, how::no_entry(words, instead)) }
            }
        }
    }

    /// For a dose, or the amount for a course.
    pub(super) fn of_dose(words: &Words, missing: &NoDose) -> Missing {
        let how = dose::how(words, missing);
        Missing::with("dose", dose::fact(words, missing), missing.supplied_by(), how)
    }

    /// For the jurisdiction whose leaflets apply.
    pub(super) fn of_leaflets(words: &Words, missing: &NoLeaflets) -> Missing {
        let (fact, how) = match missing {
            NoLeaflets::NoJurisdiction => {
                (say!(words, OptionsNoJurisdiction), say!(words, OptionsHowJurisdiction))
            }
            NoLeaflets::NoneOf(jurisdiction) => (
                say!(words, OptionsNoLeafletsOf, jurisdiction = jurisdiction),
                say!(words, OptionsHowLeafletsOf),
            ),
        };
        Missing::with("jurisdiction", fact, Some(Kind::HoldingDetails), how)
    }

    fn with(about: &'static str, fact: String, supplied_by: Option<Kind>, how: String) -> Missing {
        Missing {
            about,
            fact,
            supplied_by: supplied_by.map(Kind::as_str),
            fields: Vec::new(),
            on_from: None,
            on_by: None,
            lots: Vec::new(),
            entries: Vec::new(),
            how,
            from: None,
        }
    }
}
