//! The medicines of a holding, as the keeper described them.

use axum::Json;
use axum::response::{IntoResponse, Response};
use combclear_domain::basics::natural::sort_naturally;
use combclear_domain::basics::words::{HoldingName, LotName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::journal::event::MedicineDescribed;
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::extract::{HoldingPath, Nothing, Path, Query};
use crate::freshness::Asked;
use crate::problem::{Problem, Problems};

/// The medicines of a holding.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct MedicineList {
    /// The holding.
    holding: HoldingName,
    /// In the order people count.
    items: Vec<MedicineItem>,
}

/// A medicine of a holding.
#[derive(Debug, Serialize, ToSchema)]
struct MedicineItem {
    /// As described.
    described: MedicineDescribed,
    /// The entry that describes it.
    entry: EntryId,
    /// The place of that entry in the journal.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    seq: u64,
    /// The title of its leaflet. Null without a leaflet, or if its leaflet is not known here.
    leaflet_title: Option<String>,
    /// The lots of it ever acquired; the stock says what is left of them.
    lots: Vec<LotName>,
}

/// List the medicines
///
/// Every medicine described so far, with its leaflet and its lots.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/medicines",
    tag = "holding",
    params(HoldingPath),
    responses((status = 200, description = "The medicines.", body = MedicineList), Problems),
)]
pub(crate) async fn list_medicines(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Response, Problem> {
    app.report(&path.holding, |holding, app| Json(MedicineList::of(holding, app)).into_response()).await
}

impl MedicineList {
    fn of(holding: &Holding, app: &App) -> MedicineList {
        let today = app.clock.today();
        let mut items: Vec<MedicineItem> = holding
            .medicines()
            .filter_map(|medicine| {
                let (record, described) = holding.medicine(medicine)?;
                let id = described.leaflet.as_ref();
                let leaflet = id.and_then(|id| app.leaflets.get(holding.jurisdiction(today)?, id));
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
