//! The stock on a day: lot by lot, what to dispose of, and what to reorder for the colonies on record.
//!
//! Events after the day are ignored. Balances are summed from the entries of each lot: acquired = given + disposed of
//! + left. If a lot does not balance, its entries are shown without further judgement.
//!
//! - [`Stock`]: the whole answer
//! - [`Lot`]: one lot with its balance, its state and its in-use life
//! - [`PreparedDisposal`]: an entry for the keeper to complete; it is never recorded automatically
//! - [`Need`]: the amount for one course of all colonies, compared with the usable stock

mod dispose;
mod life;
mod lot;
mod need;
mod notes;

use crate::basics::calendar::Day;
use crate::basics::words::{HoldingName, LotName};
use crate::facts::holding::Holding;
use crate::rules::leaflet::Leaflets;

pub use dispose::{DisposalBody, DisposalRule, PreparedDisposal, ToDispose, WhyDispose};
pub use life::{LifeInUse, Opened, OpenedBy};
pub use lot::{Lot, LotState};
pub use need::{Need, NotCounted, Way};
pub use notes::Note;

/// A lot is called expiring this many days before its expiry, by default.
///
/// Common practice, no source: long enough to plan a course with it.
pub const EXPIRING_WITHIN_DAYS: u16 = 60;

/// The stock: the whole answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stock {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about.
    pub on: Day,
    /// The lots, in journal order.
    pub lots: Vec<Lot>,
    /// The lots to dispose of, each with a prepared entry.
    pub dispose: Vec<ToDispose>,
    /// The amount for one course of all colonies, medicine by medicine.
    pub needs: Vec<Need>,
    /// Points to check again. None of them is a gap in the record.
    pub notes: Vec<Note>,
}

impl Stock {
    /// Answers the question for a holding.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, on: Day) -> Stock {
        let lots = lots(holding, leaflets, on);
        Stock {
            holding: holding.name().clone(),
            on,
            dispose: dispose::of(holding, leaflets, &lots, on),
            needs: need::of(holding, leaflets, &lots, on),
            notes: notes::of(&lots),
            lots,
        }
    }
}

/// Every lot acquired by the end of a day, in journal order.
pub(crate) fn lots(holding: &Holding, leaflets: &Leaflets, on: Day) -> Vec<Lot> {
    let mut here: Vec<(u64, &LotName)> = holding
        .lots()
        .filter_map(|lot| {
            holding.lot(lot).filter(|(record, _)| record.on <= on).map(|(record, _)| (record.seq, lot))
        })
        .collect();
    here.sort_unstable();
    here.into_iter().filter_map(|(_, lot)| Lot::of(holding, leaflets, lot, on)).collect()
}
