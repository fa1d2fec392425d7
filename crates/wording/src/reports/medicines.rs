//! The medicines of a holding, as the keeper described them.

use combclear_domain::Day;
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::journal::event::MedicineDescribed;
use combclear_domain::rules::leaflet::Leaflets;
use serde::Serialize;

/// The medicines of a holding.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct MedicineList {
    /// The holding.
    holding: HoldingName,
    /// In the order people count.
    items: Vec<MedicineItem>,
}

/// A medicine of a holding.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct MedicineItem {
    /// As described.
    described: MedicineDescribed,
    /// The entry that describes it.
    entry: EntryId,
    /// The place of that entry in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    seq: u64,
    /// The title of its leaflet. Null without a leaflet, or if its leaflet is not known here.
    leaflet_title: Option<String>,
    /// The lots of it ever acquired; the stock says what is left of them.
    lots: Vec<LotName>,
}

impl MedicineList {
    /// Those described so far, with the titles that their leaflets have where the holding is today.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, today: Day) -> MedicineList {
        let mut items: Vec<MedicineItem> = holding
            .medicines()
            .filter_map(|medicine| {
                let (record, described) = holding.medicine(medicine)?;
                let id = described.leaflet.as_ref();
                let leaflet = id.and_then(|id| leaflets.get(holding.jurisdiction(today)?, id));
                let of_it = |lot: &&LotName| holding.lot(lot).is_some_and(|(_, it)| it.medicine == medicine);
                let mut lots: Vec<LotName> = holding.lots().filter(of_it).cloned().collect();
                sort_naturally(&mut lots, LotName::as_str);
                Some(MedicineItem {
                    described: described.clone(),
                    entry: record.id,
                    seq: record.seq,
                    leaflet_title: leaflet.map(|leaflet| leaflet.title.clone()),
                    lots,
                })
            })
            .collect();
        sort_naturally(&mut items, |item| item.described.medicine.as_str());
        MedicineList { holding: holding.name().clone(), items }
    }
}
