//! The amount of each medicine for one course of all colonies, compared with the usable stock.

use super::life::leaflet_of;
use super::lot::{Lot, LotState};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ColonyName, LeafletId, LotName, MedicineName, Method, Unit};
use crate::facts::holding::Holding;
use crate::questions::options::{CourseNeed, NoDose, one_course_of_all};
use crate::rules::leaflet::Leaflets;
use serde::Serialize;

/// A medicine, and whether the stock is enough for one course of all colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = MedicineNeed))]
pub struct Need {
    /// The medicine.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: String,
    /// The leaflet that states the dose.
    pub leaflet: LeafletId,
    /// The unit of the quantities.
    pub unit: Unit,
    /// The number of colonies alive on the day.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub colonies: usize,
    /// The usable quantity left.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 8))]
    pub usable: Quantity,
    /// The lots of that quantity.
    pub lots: Vec<LotName>,
    /// Lots with stock that is not usable, with their state.
    #[serde(skip)]
    pub not_counted: Vec<NotCounted>,
    /// The amount for a course, for each method and label revision.
    #[serde(skip)]
    pub ways: Vec<Way>,
}

/// A lot that is not counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotCounted {
    /// The lot.
    pub lot: LotName,
    /// Its state, which is the reason.
    pub state: LotState,
}

/// The amount for one course of all colonies, by one method and label revision.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Way {
    /// The method, if there are several.
    pub method: Option<Method>,
    /// The label revision, if they differ.
    pub revision: Option<String>,
    /// Number of doses in the course, at least. Absent if not stated.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// The total amount; of a range, the most. Absent if it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 74))]
    pub takes: Option<Quantity>,
    /// The amount for the colonies whose dose is known; for one dose, if the number of doses is not stated.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 20))]
    pub takes_at_least: Quantity,
    /// The number of colonies whose dose is known.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub counted: usize,
    /// What must be known first, and for which colonies.
    #[serde(skip)]
    pub not_known: Vec<(NoDose, Vec<ColonyName>)>,
    /// The quantity short; 0 if none. Absent if it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 66))]
    pub short: Option<Quantity>,
    /// The quantity short for the colonies whose dose is known.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 12))]
    pub short_at_least: Quantity,
}

pub(super) fn of(holding: &Holding, leaflets: &Leaflets, lots: &[Lot], on: Day) -> Vec<Need> {
    let alive = |colony: &&ColonyName| holding.life(colony).lasts(on);
    let colonies: Vec<ColonyName> = holding.colonies().filter(alive).cloned().collect();
    let mut medicines: Vec<(u64, &MedicineName)> = holding
        .medicines()
        .filter_map(|medicine| {
            let (record, _) = holding.medicine(medicine)?;
            let here = record.on <= on || lots.iter().any(|lot| lot.medicine == *medicine);
            here.then_some((record.seq, medicine))
        })
        .collect();
    medicines.sort_unstable();
    let needs = medicines.into_iter().filter_map(|(_, medicine)| {
        let (_, described) = holding.medicine(medicine)?;
        let leaflet = leaflet_of(holding, leaflets, medicine, on)?;
        let needs = one_course_of_all(holding, leaflets, &leaflet.id, described.unit, &colonies, on);
        let of_it = || lots.iter().filter(|lot| lot.medicine == *medicine);
        let usable = || of_it().filter(|lot| lot.state.is_usable());
        let left =
            usable().filter_map(|lot| lot.left().known().copied()).fold(Quantity::ZERO, Quantity::plus);
        (!needs.is_empty()).then(|| Need {
            medicine: medicine.clone(),
            pack_name: described.pack_name.clone(),
            leaflet: leaflet.id.clone(),
            unit: described.unit,
            colonies: colonies.len(),
            usable: left,
            lots: usable().map(|lot| lot.lot.clone()).collect(),
            not_counted: of_it().filter_map(not_counted).collect(),
            ways: needs.into_iter().map(|need| Way::of(need, left)).collect(),
        })
    });
    needs.collect()
}

fn not_counted(lot: &Lot) -> Option<NotCounted> {
    let with_something_left =
        matches!(lot.state, LotState::Overdrawn | LotState::Expired | LotState::PastLifeInUse);
    with_something_left.then(|| NotCounted { lot: lot.lot.clone(), state: lot.state })
}

impl Way {
    fn of(need: CourseNeed, usable: Quantity) -> Way {
        let all_known = need.not_known.is_empty();
        let short = need.takes.minus(usable).unwrap_or_default();
        Way {
            method: need.method,
            revision: need.revision,
            doses: need.doses.known().copied(),
            takes: all_known.then_some(need.takes),
            takes_at_least: need.takes,
            counted: need.counted,
            not_known: need.not_known,
            short: all_known.then_some(short),
            short_at_least: short,
        }
    }
}
