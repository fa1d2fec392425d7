//! What one course of all colonies takes of each medicine, against what is left and may still be used.

use super::life::leaflet_of;
use super::lot::{Lot, LotState};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ColonyName, LeafletId, LotName, MedicineName, Method, Unit};
use crate::facts::holding::Holding;
use crate::questions::options::{CourseNeed, NoDose, one_course_of_all};
use crate::rules::leaflet::Leaflets;
use serde::Serialize;

/// A medicine, and whether it suffices for one course of all colonies.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema), schema(as = MedicineNeed))]
pub struct Need {
    /// The medicine.
    pub medicine: MedicineName,
    /// The name on the pack.
    pub pack_name: String,
    /// The leaflet that states the dose.
    pub leaflet: LeafletId,
    /// What it is counted in.
    pub unit: Unit,
    /// How many colonies live on the day.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub colonies: usize,
    /// What is left and may still be used.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 8))]
    pub usable: Quantity,
    /// The lots of that.
    pub lots: Vec<LotName>,
    /// Lots with something left that is not counted, and why.
    #[serde(skip)]
    pub not_counted: Vec<NotCounted>,
    /// What a course takes, for each way of giving it.
    #[serde(skip)]
    pub ways: Vec<Way>,
}

/// A lot that is not counted.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotCounted {
    /// The lot.
    pub lot: LotName,
    /// How it stands, which is why.
    pub state: LotState,
}

/// What one course of all colonies takes by one way of giving it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Way {
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label, where they differ.
    pub revision: Option<String>,
    /// How many doses make the course, at least; absent where nobody has stated it.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// What it takes in all; where the leaflet gives a range, the most. Absent where it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 74))]
    pub takes: Option<Quantity>,
    /// What it takes for the colonies whose dose is known; for one dose, where nobody has stated how many there are.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, example = 20))]
    pub takes_at_least: Quantity,
    /// How many those are.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 9_007_199_254_740_991i64))]
    pub counted: usize,
    /// What must be known first, and of which colonies.
    #[serde(skip)]
    pub not_known: Vec<(NoDose, Vec<ColonyName>)>,
    /// How much is short, 0 if nothing; absent where it is not known for every colony.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, example = 66))]
    pub short: Option<Quantity>,
    /// How much is short for the colonies whose dose is known.
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
        let left = usable().filter_map(|lot| lot.left).fold(Quantity::ZERO, Quantity::plus);
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
