//! What is to be disposed of, with the entry prepared for the keeper to complete.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use super::life::{Opened, leaflet_of};
use super::lot::{Lot, LotState};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{LotName, Person, Unit};
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::Kind;
use crate::journal::seal::derived_id;
use crate::rules::leaflet::{Force, Leaflets, Says};

/// A lot that is to be disposed of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ToDispose {
    /// The lot.
    pub lot: LotName,
    /// Why.
    #[serde(skip)]
    pub why: WhyDispose,
    /// What the leaflet says of disposing of it, each with its sources; empty where it says nothing.
    pub leaflet_says: Vec<DisposalRule>,
    /// The entry, but for how and where, which the keeper writes. It is not recorded.
    pub prepared: PreparedDisposal,
}

/// Why a lot is to be disposed of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyDispose {
    /// It has expired.
    Expired {
        /// The last day on which it could be given.
        expiry: Day,
    },
    /// It was opened, and its life in use is over. Packs that are still sealed are not meant.
    PastLifeInUse {
        /// When it was opened.
        opened: Opened,
        /// The last day on which what was opened could be used.
        until: Day,
        /// Whether a document carries that.
        documented: bool,
        /// What the leaflet says, in its words.
        says: String,
    },
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

pub(super) fn of(holding: &Holding, leaflets: &Leaflets, lots: &[Lot], on: Day) -> Vec<ToDispose> {
    lots.iter().filter_map(|lot| one(holding, leaflets, lot, on)).collect()
}

fn one(holding: &Holding, leaflets: &Leaflets, lot: &Lot, on: Day) -> Option<ToDispose> {
    let quantity = lot.left?;
    let leaflet = leaflet_of(holding, leaflets, &lot.medicine, on);
    let rules = leaflet.into_iter().flat_map(|leaflet| {
        leaflet.in_force(Topic::Disposal, on, None).filter_map(move |rule| {
            let Says::Disposal { text } = &rule.says else { return None };
            let sources = rule
                .source
                .iter()
                .map(|key| leaflet.source(key).map_or_else(|| key.clone(), |source| source.title.clone()));
            Some(DisposalRule {
                says: text.clone(),
                force: rule.force,
                confidence: rule.confidence,
                sources: sources.collect(),
            })
        })
    });
    Some(ToDispose {
        lot: lot.lot.clone(),
        why: WhyDispose::of(lot)?,
        leaflet_says: rules.collect(),
        prepared: PreparedDisposal {
            id: derived_id(&[
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

impl WhyDispose {
    /// Why a lot is to be disposed of; none if it is not.
    #[must_use]
    pub fn of(lot: &Lot) -> Option<WhyDispose> {
        match lot.state {
            LotState::Expired => Some(WhyDispose::Expired { expiry: lot.expiry? }),
            LotState::PastLifeInUse => {
                let in_use = lot.in_use.as_ref()?;
                Some(WhyDispose::PastLifeInUse {
                    opened: lot.opened?,
                    until: in_use.until?,
                    documented: in_use.confidence == Confidence::Document,
                    says: in_use.says.clone(),
                })
            }
            LotState::Overdrawn
            | LotState::Empty
            | LotState::Expiring
            | LotState::InUse
            | LotState::Sealed => None,
        }
    }
}
