//! What a vet gave from the vet's own stock: the product and batch, which the keeper's record needs and no acquisition tells.

use std::collections::BTreeSet;
use std::sync::Arc;

use serde::Serialize;

use super::View;
use super::lots::documents;
use super::rows::{AdministrationRow, DocumentPart, MedicinePart, Written};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::{LotName, Person};
use crate::facts::holding::Record;
use crate::journal::event::VetLot;

/// One batch of a medicine that a vet gave from the vet's own stock.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct VetLotRow {
    /// The record of it.
    pub written: Written,
    /// Whether it is older than the period and is listed because some of it was given in it.
    pub earlier: bool,
    /// The keeper's short name for the lot.
    pub lot: LotName,
    /// The medicine.
    pub medicine: MedicinePart,
    /// The batch number as printed.
    pub batch: Option<String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// The vet.
    pub vet: Person,
    /// How to reach the vet.
    pub contact: Option<String>,
    /// What the vet handed over in writing.
    pub documents: Vec<DocumentPart>,
}

/// Vets' lots of the period, and earlier ones given in it.
pub(super) fn rows(
    view: &View<'_>,
    standing: &[&Arc<Record>],
    administrations: &[AdministrationRow],
) -> Vec<VetLotRow> {
    let given: BTreeSet<&LotName> =
        administrations.iter().flat_map(|row| &row.given).map(|part| &part.lot).collect();
    let rows = standing.iter().filter_map(|record| {
        let body = record.body::<VetLot>()?;
        let earlier = record.on < view.period.from();
        let stands = view.period.holds(record.on) || (earlier && given.contains(&body.lot));
        stands.then(|| VetLotRow {
            written: Written::of(view.holding, record),
            earlier,
            lot: body.lot.clone(),
            medicine: view.medicine(Fact::Known(body.medicine.clone()), record.on),
            batch: body.batch.clone(),
            expiry: body.expiry,
            vet: body.vet.clone(),
            contact: body.contact.clone(),
            documents: documents(view.holding.lot_file(&body.lot), view.as_of),
        })
    });
    rows.collect()
}
