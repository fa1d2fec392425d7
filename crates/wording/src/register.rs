//! The register in words: the rows of the journal as they are, with the notice.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::questions::register::{
    AcquisitionRow, AdministrationRow, ArchivedPart, CorrectionRow, DisposalRow, KeeperPart, LotTotal,
    NamedEntry, PrescriptionRow, Register, RemovalRow,
};
use serde::Serialize;

use crate::words::Words;

/// The register of a holding for a time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RegisterReport {
    /// The holding.
    pub holding: HoldingName,
    /// Who kept it in that time, and where; the earliest first.
    pub keepers: Vec<KeeperPart>,
    /// The first day.
    pub from: Day,
    /// The last day.
    pub to: Day,
    /// What happened after this day does not bear on it.
    pub as_of: Day,
    /// Lots acquired in that time, and earlier ones that were used or disposed of in it.
    pub acquisitions: Vec<AcquisitionRow>,
    /// Prescriptions of that time, and earlier ones that it used.
    pub prescriptions: Vec<PrescriptionRow>,
    /// Administrations of that time, each once, and earlier ones that were in, or of which a period ran, in it.
    pub administrations: Vec<AdministrationRow>,
    /// Removals of that time.
    pub removals: Vec<RemovalRow>,
    /// Disposals of that time.
    pub disposals: Vec<DisposalRow>,
    /// What was corrected or struck out of all these: the old value stays visible.
    pub corrections: Vec<CorrectionRow>,
    /// Other entries that the administrations and removals name, and where they stand in the journal.
    pub also_named: Vec<NamedEntry>,
    /// What went in and out of each lot in that time.
    pub totals: Vec<LotTotal>,
    /// Archives that entries of that time were moved into: what they say stands there, and not here.
    pub archived: Vec<ArchivedPart>,
    /// How many entries the journal had when this was read from it.
    #[cfg_attr(feature = "openapi", schema(maximum = 9_007_199_254_740_991i64))]
    pub entries: u64,
    /// The hash of the last of them: whoever has the journal can prove that this was read from it.
    pub head: Option<Hash>,
    /// The counting policy.
    pub policy: &'static str,
    /// What this is not.
    pub notice: String,
}

impl RegisterReport {
    /// Writes a register out.
    #[must_use]
    pub fn of(words: &Words, register: Register) -> RegisterReport {
        RegisterReport {
            holding: register.holding,
            keepers: register.keepers,
            from: register.from,
            to: register.to,
            as_of: register.as_of,
            acquisitions: register.acquisitions,
            prescriptions: register.prescriptions,
            administrations: register.administrations,
            removals: register.removals,
            disposals: register.disposals,
            corrections: register.corrections,
            also_named: register.also_named,
            totals: register.totals,
            archived: register.archived,
            entries: register.entries,
            head: register.head,
            policy: register.policy,
            notice: crate::notice(words),
        }
    }
}
