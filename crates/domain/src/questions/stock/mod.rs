//! What is in stock on a day: lot by lot, what to dispose of, and what to reorder for the colonies on the books.
//!
//! What happened after the day does not bear on it. The book is summed anew from the entries of each lot: acquired = given +
//! disposed of + left. A balance that does not come out is shown with the entries that make it, and judged no further.
//!
//! - [`StockReport`]: the whole answer in words
//! - [`LotReport`]: one lot with its sum, its state and its life in use
//! - [`PreparedDisposal`]: an entry that a keeper completes; it is never recorded by itself
//! - [`NeedReport`]: what one course of all colonies takes, against what is left and may still be used

mod dispose;
mod life;
mod lot;
mod need;
mod notes;

use serde::Serialize;

use crate::basics::calendar::{Day, POLICY};
use crate::basics::words::{HoldingName, LotName};
use crate::facts::holding::Holding;
use crate::questions::supering::NOTICE;
use crate::rules::leaflet::Leaflets;

pub use dispose::{DisposalBody, DisposalReport, DisposalRule, PreparedDisposal, why as why_dispose};
pub use life::{LifeInUse, Opened, OpenedBy};
pub use lot::{LotReport, LotState};
pub use need::{NeedReport, NotCounted, NotKnown, WayReport};

/// How many days before its expiry a lot is called expiring, if nothing else is said.
///
/// Common practice, no source: long enough to plan a course with it.
pub const EXPIRING_WITHIN_DAYS: u16 = 60;

/// What is in stock: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct StockReport {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about.
    pub on: Day,
    /// How many days before its expiry a lot is called expiring.
    pub expiring_within_days: u16,
    /// The lots, in the order of the journal.
    pub lots: Vec<LotReport>,
    /// What is to be disposed of, each with the entry prepared.
    pub dispose: Vec<DisposalReport>,
    /// What one course of all colonies would take, medicine by medicine.
    pub needs: Vec<NeedReport>,
    /// What a reader should look at again. None of it is a gap in the record.
    pub notes: Vec<String>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this answer is not.
    pub notice: &'static str,
}

impl StockReport {
    /// Asks the question of a holding and writes the answer out.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, on: Day) -> StockReport {
        let lots = lots(holding, leaflets, on);
        StockReport {
            holding: holding.name().clone(),
            on,
            expiring_within_days: EXPIRING_WITHIN_DAYS,
            dispose: dispose::of(holding, leaflets, &lots, on),
            needs: need::of(holding, leaflets, &lots, on),
            notes: notes::of(&lots),
            lots,
            policy: POLICY,
            notice: NOTICE,
        }
    }
}

/// Every lot that was here by the end of a day, in the order of the journal.
pub(crate) fn lots(holding: &Holding, leaflets: &Leaflets, on: Day) -> Vec<LotReport> {
    let mut here: Vec<(u64, &LotName)> = holding
        .lots()
        .filter_map(|lot| {
            holding.lot(lot).filter(|(record, _)| record.on <= on).map(|(record, _)| (record.seq, lot))
        })
        .collect();
    here.sort_unstable();
    here.into_iter().filter_map(|(_, lot)| LotReport::of(holding, leaflets, lot, on)).collect()
}
