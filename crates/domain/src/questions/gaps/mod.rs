//! What the legal record still misses: field by field what the law of the day wants, and what else is amiss.
//!
//! Each row of the register is held against the law that held in the holding on its day. Then the use of each lot is looked
//! at (after its expiry, past its life in use, more than was acquired), and each medicine (authorised? described?). Nothing
//! here refuses an entry: it was recorded as it happened, and is judged apart.

mod amiss;
mod fields;
mod gap;
mod row;
mod supplied;

use std::collections::BTreeSet;

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::basics::words::HoldingName;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::seal::Hash;
use crate::questions::register::{Period, Register};
use crate::questions::stock;
use crate::rules::law::{Field, Laws};
use crate::rules::leaflet::Leaflets;
use supplied::Lookup;

pub use gap::{
    About, Finding, Gap, GapWeight, LawNotAsked, LawPart, LawPlace, LotCheck, OpenEnd, Supply, WhyOpen,
};

/// What the legal record of a holding still misses in a time, entry by entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gaps {
    /// The holding.
    pub holding: HoldingName,
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
    /// What happened after this day does not bear on it.
    pub as_of: Day,
    /// The laws that were asked, by the days of the entries.
    pub laws: Vec<LawPart>,
    /// Why the law of some day could not be asked; empty if it could for every entry.
    pub not_asked: Vec<LawNotAsked>,
    /// Yes if everything that those laws require stands in the record; no if something is missing; unknown if for some
    /// entry no law could be asked.
    pub complete: Verdict,
    /// Whether nothing was acquired and nothing given. That does not show that nothing was given.
    pub nothing_acquired_or_given: bool,
    /// Whether something was given, and no prescription is named of any of it.
    pub given_without_prescription: bool,
    /// What is missing or amiss: what the law requires first, then what was amiss, then what the law asks for where it
    /// applies, then advice.
    pub gaps: Vec<Gap>,
    /// Whether the book of each lot comes out even.
    pub lots: Vec<LotCheck>,
}

impl Gaps {
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
    ) -> Gaps {
        Gaps::in_register(holding, leaflets, laws, &Register::of(holding, leaflets, period, as_of), not_kept)
    }

    /// The same of a register that was read already, from the same holding and leaflets.
    #[must_use]
    pub fn in_register(
        holding: &Holding,
        leaflets: &Leaflets,
        laws: &Laws,
        register: &Register,
        not_kept: &[Hash],
    ) -> Gaps {
        let as_of = register.as_of;
        let stock = stock::lots(holding, leaflets, as_of);
        let lookup = Lookup::of(register, not_kept);
        let books = amiss::Books::of(&stock);
        let mut asked = fields::Asked::of(holding, laws, &lookup);
        let mut gaps = std::mem::take(&mut asked.gaps);
        gaps.extend(amiss::of_medicines(holding, register));
        gaps.extend(amiss::of_uses(&lookup, &books));
        gaps.extend(amiss::of_documents(register, not_kept));
        // Where the law names the expiry date itself, that is enough.
        let by_law = |told: &&Gap| told.finding == Finding::FieldNotRecorded(Field::Expiry);
        let told: BTreeSet<EntryId> = gaps.iter().filter(by_law).map(|told| told.entry).collect();
        let of_lots = amiss::of_lots(register, &books).into_iter();
        gaps.extend(
            of_lots.filter(|gap| gap.finding != Finding::ExpiryNotTold || !told.contains(&gap.entry)),
        );
        gaps.sort_by_key(|gap| gap.weight);
        let has = |weight: GapWeight| gaps.iter().any(|gap| gap.weight == weight);
        let complete = match () {
            () if has(GapWeight::Required) => Verdict::No,
            () if nothing_recorded(register) => Verdict::Unknown,
            () if has(GapWeight::WhereApplicable) || !asked.unknown_law.is_empty() => Verdict::Unknown,
            () => Verdict::Yes,
        };
        let given = &register.administrations;
        Gaps {
            holding: register.holding.clone(),
            from: register.from,
            to: register.to,
            as_of,
            laws: asked.laws.into_iter().collect(),
            not_asked: asked.unknown_law.into_iter().collect(),
            complete,
            nothing_acquired_or_given: register.acquisitions.is_empty() && given.is_empty(),
            given_without_prescription: !given.is_empty()
                && given.iter().all(|row| row.prescription.is_none()),
            lots: amiss::checks(register, &stock),
            gaps,
        }
    }
}

/// Whether the register has no row at all. That does not show that nothing was given.
fn nothing_recorded(register: &Register) -> bool {
    register.acquisitions.is_empty()
        && register.administrations.is_empty()
        && register.removals.is_empty()
        && register.disposals.is_empty()
}
