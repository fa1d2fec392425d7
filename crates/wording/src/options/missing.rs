//! What is missing, and how to supply it, in words.

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

/// Something that is not known.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Missing {
    /// What it concerns.
    pub about: &'static str,
    /// What is not known.
    pub fact: String,
    /// The kind of entry that would supply it; absent where no entry can.
    pub supplied_by: Option<&'static str>,
    /// The fields that such an entry must fill in, `field=value` where only that value would do.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub fields: Vec<String>,
    /// The first day that the entry may be dated. For temperatures and flows, which are recorded when they are known: the
    /// first day that it must cover.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_from: Option<Day>,
    /// The last such day.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub on_by: Option<Day>,
    /// The lots whose leaflets must each be read.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub lots: Vec<LotName>,
    /// The entries that it is about: a first dose to be taken out, or an entry to be corrected.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub entries: Vec<EntryId>,
    /// How to supply it, in words.
    pub how: String,
    /// If it concerns only later start days: the first of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub from: Option<Day>,
}

impl Missing {
    /// For a condition of a leaflet in a colony.
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
