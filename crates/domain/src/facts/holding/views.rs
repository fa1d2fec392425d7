//! A holding on a day, for lists and pages.

use serde::Serialize;

use super::Holding;
use crate::basics::calendar::Day;
use crate::basics::words::{ApiaryName, ColonyName, LotName, Unit};
use crate::facts::apiary::{Site, SiteView};
use crate::journal::event::{ApiaryDetails, ColonyEstablished, ColonySplit, NectarFlow};

/// An apiary on a day.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryView {
    /// Its name.
    pub apiary: ApiaryName,
    /// Where it is, in words.
    pub place: Option<String>,
    /// The colonies there, by name.
    pub colonies: Vec<ColonyName>,
    /// Power, access and ground, as recorded and not over.
    pub conditions: SiteView,
    /// Nectar flows that are not over, in the order of their first days.
    pub flows: Vec<NectarFlow>,
}

impl Holding {
    /// An apiary as described.
    #[must_use]
    pub(crate) fn apiary_details(&self, apiary: &ApiaryName) -> Option<&ApiaryDetails> {
        self.apiary_file(apiary).iter().find_map(|record| record.body())
    }

    /// The mark on the hive of a colony, as first recorded.
    #[must_use]
    pub fn hive_mark(&self, colony: &ColonyName) -> Option<&str> {
        let begun = self.life(colony).begun?;
        let established = begun.body::<ColonyEstablished>().map(|body| &body.hive_mark);
        established.or_else(|| begun.body::<ColonySplit>().map(|body| &body.hive_mark))?.as_deref()
    }

    /// An apiary at the end of a day.
    #[must_use]
    pub fn apiary(&self, apiary: &ApiaryName, on: Day) -> Option<ApiaryView> {
        let file = self.apiary_file(apiary);
        let place = self.apiary_details(apiary)?.place.clone();
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

    /// The unit of a lot, if its medicine is described.
    #[must_use]
    pub fn unit_of(&self, lot: &LotName) -> Option<Unit> {
        let (_, of) = self.lot(lot)?;
        self.medicine(of.medicine).map(|(_, medicine)| medicine.unit)
    }
}
