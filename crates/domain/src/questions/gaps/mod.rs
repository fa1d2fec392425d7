//! What is missing from the legal record, field by field by the law of the day, and other irregularities.
//!
//! Each row of the register is checked against the law that applied to the holding on its day. Then the use of each
//! lot is checked (after its expiry, past its in-use life, more than was acquired), and each medicine (authorised?
//! described?). An irregular entry is never refused: it records what happened, and is judged here.

mod copied;
mod fields;
mod gap;
mod irregular;
mod row;
mod supplied;

use std::collections::BTreeSet;

use crate::basics::calendar::Day;
use crate::basics::verdict::Verdict;
use crate::basics::words::HoldingName;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::seal::Hash;
use crate::questions::register::{ArchivedPart, Period, Register};
use crate::questions::stock;
use crate::rules::law::{Field, Laws};
use crate::rules::leaflet::Leaflets;
use supplied::Lookup;

pub use copied::{CopiedEntries, copied_entries};
pub use gap::{
    About, Finding, Gap, GapWeight, LawNotAsked, LawPart, LawPlace, LotCheck, OpenEnd, Supply, WhyOpen,
};

/// What is missing from the legal record of a holding for a period, entry by entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gaps {
    /// The holding.
    pub holding: HoldingName,
    /// The first day of the period.
    pub from: Day,
    /// The last day of the period.
    pub to: Day,
    /// Events after this day are ignored.
    pub as_of: Day,
    /// The laws that were checked, by the days of the entries.
    pub laws: Vec<LawPart>,
    /// Why the law of some day could not be checked. Empty if all could.
    pub not_asked: Vec<LawNotAsked>,
    /// Yes if the record meets every requirement of those laws, no if something is missing, unknown if no law could
    /// be checked for some entry, or if entries of the period are in an archive.
    pub complete: Verdict,
    /// Whether nothing was recorded as acquired or given. That does not prove that nothing was given.
    pub nothing_acquired_or_given: bool,
    /// Whether something was given without any prescription on record, under a law that asks for one where a vet prescribed.
    pub given_without_prescription: bool,
    /// The gaps: legal requirements first, then irregularities, then requirements that may apply, then advice.
    pub gaps: Vec<Gap>,
    /// The stock account of each lot.
    pub lots: Vec<LotCheck>,
    /// Rows copied from a paper register. They are no gaps.
    pub copied: Vec<CopiedEntries>,
    /// Archives with entries of the period, which were not checked.
    pub archived: Vec<ArchivedPart>,
}

impl Gaps {
    /// Checks the record of a period against the laws of its days. Never fails: an unknown law is reported.
    ///
    /// `not_kept` names document contents that are missing or altered in the store; those prove nothing.
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

    /// The same, for a register already read from the same holding and leaflets.
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
        let books = irregular::Books::of(&stock);
        let mut asked = fields::Asked::of(holding, laws, &lookup);
        let mut gaps = std::mem::take(&mut asked.gaps);
        gaps.extend(irregular::of_medicines(holding, register));
        gaps.extend(irregular::of_uses(holding, &lookup, &books));
        gaps.extend(irregular::of_vet_lots(holding, register));
        gaps.extend(irregular::of_documents(register, not_kept));
        // If the law requires the expiry date itself, that gap is enough.
        let by_law = |told: &&Gap| told.finding == Finding::FieldNotRecorded(Field::Expiry);
        let told: BTreeSet<EntryId> = gaps.iter().filter(by_law).map(|told| told.entry).collect();
        let of_lots = irregular::of_lots(register, &books).into_iter();
        gaps.extend(
            of_lots.filter(|gap| gap.finding != Finding::ExpiryNotTold || !told.contains(&gap.entry)),
        );
        gaps.sort_by_key(|gap| gap.weight);
        let has = |weight: GapWeight| gaps.iter().any(|gap| gap.weight == weight);
        let complete = match () {
            () if has(GapWeight::Required) => Verdict::No,
            () if !register.archived.is_empty() || nothing_recorded(register) => Verdict::Unknown,
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
            given_without_prescription: asked.knows_prescriptions
                && !given.is_empty()
                && given.iter().all(|row| row.prescription.is_none()),
            lots: irregular::checks(register, &stock),
            copied: copied_entries(register),
            archived: register.archived.clone(),
            gaps,
        }
    }
}

/// Whether the register has no rows. That does not prove that nothing was given.
fn nothing_recorded(register: &Register) -> bool {
    register.acquisitions.is_empty()
        && register.administrations.is_empty()
        && register.removals.is_empty()
        && register.disposals.is_empty()
}
