//! What the legal record still misses: field by field what the law of the day wants, and what else is amiss.
//!
//! Each row of the register is held against the law that held in the holding on its day. Then the use of each lot is looked
//! at (after its expiry, past its life in use, more than was acquired), and each medicine (authorised? described?). Nothing
//! here refuses an entry: it was recorded as it happened, and is judged apart.

mod amiss;
mod fields;
mod report;
mod supplied;
mod wording;

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::facts::holding::Holding;
use crate::journal::seal::Hash;
use crate::questions::register::{Period, RegisterReport};
use crate::questions::stock;
use crate::questions::supering::NOTICE;
use crate::rules::law::Laws;
use crate::rules::leaflet::Leaflets;

pub use report::{Gap, GapWeight, GapsReport, LawPart, LotCheck};

impl GapsReport {
    /// Holds the record of a time against the laws of its days. Never fails: where no law is known, it says so.
    ///
    /// `not_kept` names contents of documents that are missing or altered where they are kept; those prove nothing.
    #[must_use]
    pub fn of(
        holding: &Holding,
        leaflets: &Leaflets,
        laws: &Laws,
        period: Period,
        as_of: Day,
        not_kept: &[Hash],
    ) -> GapsReport {
        let register = RegisterReport::of(holding, leaflets, period, as_of);
        let stock = stock::lots(holding, leaflets, as_of);
        let mut asked = fields::Asked::of(holding, laws, &register, not_kept);
        let mut gaps = std::mem::take(&mut asked.gaps);
        gaps.extend(amiss::of_medicines(holding, &register));
        gaps.extend(amiss::of_uses(&register, &stock));
        gaps.extend(amiss::of_documents(&register, not_kept));
        let told = |gap: &Gap| gaps.iter().any(|told| told.missing == "expiry" && told.entry == gap.entry);
        let of_lots: Vec<Gap> = amiss::of_lots(&register, &stock)
            .into_iter()
            .filter(|gap| gap.missing != amiss::EXPIRY_NOT_TOLD || !told(gap))
            .collect();
        gaps.extend(of_lots);
        gaps.sort_by_key(|gap| gap.weight);
        let has = |weight: GapWeight| gaps.iter().any(|gap| gap.weight == weight);
        let complete = match () {
            () if has(GapWeight::Required) => Verdict::No,
            () if nothing_recorded(&register) => Verdict::Unknown,
            () if has(GapWeight::WhereApplicable) || !asked.without_law.is_empty() => Verdict::Unknown,
            () => Verdict::Yes,
        };
        GapsReport {
            holding: register.holding.clone(),
            from: register.from,
            to: register.to,
            as_of,
            summary: wording::summary(&register, &gaps, &asked, complete),
            laws: asked.laws.into_iter().collect(),
            complete,
            lots: amiss::checks(&register, &stock),
            gaps,
            notice: NOTICE,
        }
    }
}

/// Whether the register has no row at all. That does not show that nothing was given.
fn nothing_recorded(register: &RegisterReport) -> bool {
    register.acquisitions.is_empty()
        && register.administrations.is_empty()
        && register.removals.is_empty()
        && register.disposals.is_empty()
}
