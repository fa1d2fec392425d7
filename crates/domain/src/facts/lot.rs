//! A lot: of the keeper's stock, or of a vet's.

use crate::basics::calendar::Day;
use crate::basics::words::MedicineName;
use crate::journal::event::{Body, Event, LotAcquired, VetLot};

/// One batch of a medicine, as recorded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lot<'r> {
    /// The medicine.
    pub medicine: &'r MedicineName,
    /// The batch number as printed.
    pub batch: Option<&'r String>,
    /// The expiry date as printed.
    pub expiry: Option<Day>,
    /// The label revision printed on the pack.
    pub label_revision: Option<&'r String>,
    /// Whose it is.
    pub stock: StockOf<'r>,
}

/// Whose stock a lot is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StockOf<'r> {
    /// The keeper acquired it.
    Keeper(&'r LotAcquired),
    /// A vet gave it from the vet's own stock.
    Vet(&'r VetLot),
}

impl<'r> Lot<'r> {
    /// The lot that an event brings in, if it brings in one.
    pub(crate) fn of(event: &'r Event) -> Option<Lot<'r>> {
        if let Some(body) = LotAcquired::of(event) {
            let LotAcquired { medicine, batch, expiry, label_revision, .. } = body;
            let (batch, label_revision, stock) =
                (batch.as_ref(), label_revision.as_ref(), StockOf::Keeper(body));
            return Some(Lot { medicine, batch, expiry: *expiry, label_revision, stock });
        }
        let body = VetLot::of(event)?;
        let VetLot { medicine, batch, expiry, label_revision, .. } = body;
        let (batch, label_revision, stock) = (batch.as_ref(), label_revision.as_ref(), StockOf::Vet(body));
        Some(Lot { medicine, batch, expiry: *expiry, label_revision, stock })
    }

    /// The acquisition, if it is of the keeper's stock.
    #[must_use]
    pub const fn acquired(self) -> Option<&'r LotAcquired> {
        match self.stock {
            StockOf::Keeper(body) => Some(body),
            StockOf::Vet(_) => None,
        }
    }

    /// What is recorded of the vet's lot, if it is of a vet's stock.
    #[must_use]
    pub const fn of_vet(self) -> Option<&'r VetLot> {
        match self.stock {
            StockOf::Keeper(_) => None,
            StockOf::Vet(body) => Some(body),
        }
    }
}
