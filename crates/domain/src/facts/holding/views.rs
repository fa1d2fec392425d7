//! A holding on a day, for lists and pages.

use serde::Serialize;

use super::Holding;
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName, Unit};
use crate::facts::apiary::{Site, SiteView};
use crate::journal::entry::EntryId;
use crate::journal::event::{ApiaryDetails, NectarFlow};

/// An apiary on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryView {
    /// Its name.
    pub apiary: ApiaryName,
    /// Where it is, in words.
    pub place: Option<String>,
    /// The colonies that stand there, by name.
    pub colonies: Vec<ColonyName>,
    /// Power, access and ground as recorded and still holding.
    pub conditions: SiteView,
    /// Nectar flows that are not over, in the order of their first days.
    pub flows: Vec<NectarFlow>,
}

/// A lot as the book has it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LotView {
    /// Its name.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicineName,
    /// The entry that recorded the acquisition.
    pub entry: EntryId,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// What it is counted in.
    pub unit: Option<Unit>,
    /// How much was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
    pub acquired: Quantity,
    /// How much was given or disposed of.
    #[cfg_attr(feature = "openapi", schema(value_type = f64, minimum = 0, maximum = 1_000_000, example = 2))]
    pub gone: Quantity,
    /// What is left by the book; absent when more is gone than was acquired.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0, maximum = 1_000_000, example = 2))]
    pub left: Option<Quantity>,
}

impl Holding {
    /// An apiary as it stands at the end of a day.
    #[must_use]
    pub fn apiary(&self, apiary: &ApiaryName, on: Day) -> Option<ApiaryView> {
        let file = self.apiary_file(apiary);
        let place = file.iter().find_map(|record| record.body::<ApiaryDetails>())?.place.clone();
        let mut flows: Vec<NectarFlow> = file
            .iter()
            .filter(|record| record.on <= on)
            .filter_map(|record| record.body::<NectarFlow>())
            .filter(|flow| flow.to.is_none_or(|to| to >= on))
            .cloned()
            .collect();
        flows.sort_by_key(|flow| flow.from);
        Some(ApiaryView {
            apiary: apiary.clone(),
            place,
            colonies: self.colonies_at(apiary, on).cloned().collect(),
            conditions: Site::of(file).view(on),
            flows,
        })
    }

    /// A lot as recorded today.
    #[must_use]
    pub fn lot_view(&self, lot: &LotName) -> Option<LotView> {
        let (record, acquired) = self.lot(lot)?;
        let balance = self.balance(lot);
        Some(LotView {
            lot: lot.clone(),
            medicine: acquired.medicine.clone(),
            entry: record.id,
            batch: acquired.batch.clone(),
            expiry: acquired.expiry,
            unit: self.medicine(&acquired.medicine).map(|(_, medicine)| medicine.unit),
            acquired: balance.acquired,
            gone: balance.gone(),
            left: balance.left(),
        })
    }
}
