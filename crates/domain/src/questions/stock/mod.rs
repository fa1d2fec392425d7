//! What is in stock on a day: lot by lot, what to dispose of, and what to reorder for the colonies on the books.
//!
//! What happened after the day does not bear on it. The book is summed anew from the entries of each lot: acquired = given +
//! disposed of + left. A balance that does not come out is shown with the entries that make it, and judged no further.
//!
//! - [`Stock`]: the whole answer
//! - [`Lot`]: one lot with its sum, its state and its life in use
//! - [`PreparedDisposal`]: an entry that a keeper completes; it is never recorded by itself
//! - [`Need`]: what one course of all colonies takes, against what is left and may still be used

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

/// How many days before its expiry a lot is called expiring, if nothing else is said.
///
/// Common practice, no source: long enough to plan a course with it.
pub const EXPIRING_WITHIN_DAYS: u16 = 60;

/// What is in stock: the whole answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stock {
    /// The holding.
    pub holding: HoldingName,
    /// The day asked about.
    pub on: Day,
    /// The lots, in the order of the journal.
    pub lots: Vec<Lot>,
    /// What is to be disposed of, each with the entry prepared.
    pub dispose: Vec<ToDispose>,
    /// What one course of all colonies would take, medicine by medicine.
    pub needs: Vec<Need>,
    /// What a reader should look at again. None of it is a gap in the record.
    pub notes: Vec<Note>,
}

impl Stock {
    /// Asks the question of a holding.
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

/// Every lot that was here by the end of a day, in the order of the journal.
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
