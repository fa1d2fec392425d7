//! Lots to dispose of, each with a prepared entry for the keeper to complete.

use crate::basics::confidence::Confidence;
use crate::basics::fact::Fact;
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

/// A lot to dispose of.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ToDispose {
    /// The lot.
    pub lot: LotName,
    /// The reason.
    #[serde(skip)]
    pub why: WhyDispose,
    /// The leaflet's rules on disposal, each with its sources. Empty if it has none.
    pub leaflet_says: Vec<DisposalRule>,
    /// The prepared entry, complete except for how and where, which the keeper fills in. It is not recorded.
    pub prepared: PreparedDisposal,
}

/// Why a lot must be disposed of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyDispose {
    /// It has expired.
    Expired {
        /// The last day on which it could be given.
        expiry: Day,
    },
    /// It was opened, and its in-use life is over. Sealed packs are not affected.
    PastLifeInUse {
        /// When it was opened.
        opened: Opened,
        /// The last day to use it after opening.
        until: Day,
        /// Whether that day is documented.
        documented: bool,
        /// The leaflet's words.
        says: String,
    },
}

/// A leaflet's rule on disposal of a medicine.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalRule {
    /// The rule, as worded in the built-in leaflet.
    pub says: String,
    /// How binding it is.
    pub force: Force,
    /// How well it is established.
    pub confidence: Confidence,
    /// Where it was read.
    pub sources: Vec<String>,
}

/// A disposal that can be recorded once the keeper has filled in how and where.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct PreparedDisposal {
    /// Its id. It stays the same while the lot has the same amount left, so the disposal is recorded only once.
    pub id: EntryId,
    /// The day asked about.
    pub on: Day,
    /// The keeper, if the holding's details name one.
    pub recorded_by: Option<Person>,
    /// Always `disposal`.
    #[cfg_attr(feature = "openapi", schema(value_type = Kind))]
    pub kind: &'static str,
    /// The content of the disposal.
    pub body: DisposalBody,
}

/// The content of a disposal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct DisposalBody {
    /// The lot.
    pub lot: LotName,
    /// The quantity left according to the journal.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 8))]
    pub quantity: Quantity,
    /// The unit of the quantity.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub unit: Option<Unit>,
    /// How and where: null, for the keeper to fill in. An entry with null here is refused.
    pub how_and_where: Option<String>,
}

pub(super) fn of(holding: &Holding, leaflets: &Leaflets, lots: &[Lot], on: Day) -> Vec<ToDispose> {
    lots.iter().filter_map(|lot| one(holding, leaflets, lot, on)).collect()
}

fn one(holding: &Holding, leaflets: &Leaflets, lot: &Lot, on: Day) -> Option<ToDispose> {
    // The amount of an overdrawn lot is not known: the keeper counts it first.
    let Fact::Known(quantity) = lot.left() else { return None };
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
    /// Why a lot must be disposed of. `None` if it need not be.
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
