//! What is to be disposed of, with the entry prepared for the keeper to complete.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use super::life::{OpenedBy, leaflet_of};
use super::lot::{LotReport, LotState};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{LotName, Person, Unit};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::questions::options::in_few_words;
use crate::rules::leaflet::{Force, Leaflets};

/// A lot that is to be disposed of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalReport {
    /// The lot.
    pub lot: LotName,
    /// Why, in a sentence.
    pub why: String,
    /// What the leaflet says of disposing of it, each with its sources; empty where it says nothing.
    pub leaflet_says: Vec<DisposalRule>,
    /// The entry, but for how and where, which the keeper writes. It is not recorded.
    pub prepared: PreparedDisposal,
}

/// What a leaflet says of disposing of a medicine.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalRule {
    /// In its words here.
    pub says: String,
    /// How much it binds.
    pub force: Force,
    /// How well it is established.
    pub confidence: Confidence,
    /// Where it was read.
    pub sources: Vec<String>,
}

/// A disposal ready to be recorded once the keeper has written how and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PreparedDisposal {
    /// Its id: always the same for what is left of this lot now, so that the disposal is recorded once.
    pub id: EntryId,
    /// The day asked about.
    pub on: Day,
    /// The keeper, as far as the holding's details tell.
    pub recorded_by: Option<Person>,
    /// Always `disposal`.
    #[cfg_attr(feature = "openapi", schema(value_type = Kind))]
    pub kind: &'static str,
    /// What is disposed of.
    pub body: DisposalBody,
}

/// What is disposed of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalBody {
    /// The lot.
    pub lot: LotName,
    /// What is left of it by the book.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 8))]
    pub quantity: Quantity,
    /// What it is counted in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<Unit>,
    /// How and where: null, for the keeper to write. An entry with null here is refused.
    pub how_and_where: Option<String>,
}

pub(super) fn of(holding: &Holding, leaflets: &Leaflets, lots: &[LotReport], on: Day) -> Vec<DisposalReport> {
    lots.iter().filter_map(|lot| one(holding, leaflets, lot, on)).collect()
}

fn one(holding: &Holding, leaflets: &Leaflets, lot: &LotReport, on: Day) -> Option<DisposalReport> {
    let quantity = lot.left?;
    let leaflet = leaflet_of(holding, leaflets, &lot.medicine, on);
    let rules = leaflet.into_iter().flat_map(|leaflet| {
        leaflet.in_force(Topic::Disposal, on, None).map(move |rule| {
            let sources = rule
                .source
                .iter()
                .map(|key| leaflet.source(key).map_or_else(|| key.clone(), |source| source.title.clone()));
            DisposalRule {
                says: in_few_words(&rule.says, leaflet.unit),
                force: rule.force,
                confidence: rule.confidence,
                sources: sources.collect(),
            }
        })
    });
    Some(DisposalReport {
        lot: lot.lot.clone(),
        why: why(lot)?,
        leaflet_says: rules.collect(),
        prepared: PreparedDisposal {
            id: EntryId::derived(&[
                holding.name().as_str(),
                Kind::Disposal.as_str(),
                &lot.entry.to_string(),
                &lot.given.plus(lot.disposed).to_string(),
            ]),
            on,
            recorded_by: holding.details(on).map(|details| details.keeper.clone()),
            kind: Kind::Disposal.as_str(),
            body: DisposalBody { lot: lot.lot.clone(), quantity, unit: lot.unit, how_and_where: None },
        },
    })
}

/// Why a lot is to be disposed of; none if it is not.
#[must_use]
pub fn why(lot: &LotReport) -> Option<String> {
    match lot.state {
        LotState::Expired => Some(format!("it expired on {}", lot.expiry?)),
        LotState::PastLifeInUse => {
            let opened = lot.opened?;
            let in_use = lot.in_use.as_ref()?;
            let open = match opened.told_by {
                OpenedBy::LotOpened => format!("it was opened on {}", opened.on),
                OpenedBy::FirstAdministration => {
                    format!("it was first given on {}, so it was open", opened.on)
                }
            };
            let doubt = if in_use.confidence == Confidence::Document {
                ""
            } else {
                "; not documented, check the pack"
            };
            Some(format!(
                "{open}; what was opened was to be used by {} (\"{}\"{doubt}). Packs still sealed are not meant: write the \
                 amount that was opened",
                in_use.until?,
                in_use.says.trim_end_matches('.')
            ))
        }
        LotState::Overdrawn | LotState::Empty | LotState::Expiring | LotState::InUse | LotState::Sealed => {
            None
        }
    }
}
