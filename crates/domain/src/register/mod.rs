//! The legal register: what the law wants recorded of veterinary medicines, read from the journal for a time.
//!
//! Acquisitions, administrations, removals, disposals and prescriptions, each once, with what was corrected about them
//! and when they were written down. Nothing is judged here; what a law still misses is told by the gaps.
//!
//! - [`Period`]: from which day to which
//! - [`RegisterReport`]: the register, ready for JSON, a table or a page

mod administrations;
mod archived;
mod corrections;
mod course_parts;
mod lots;
mod period;
mod rows;

use std::sync::Arc;

use serde::Serialize;

use crate::calendar::{Day, POLICY};
use crate::holding::{Holding, Record};
use crate::journal::event::Event;
use crate::journal::seal::Hash;
use crate::leaflet::Leaflets;
use crate::supering::NOTICE;
use crate::words::HoldingName;

pub use period::{BadPeriod, Period};
pub use rows::{
    AcquisitionRow, AdministrationRow, ApiaryStay, ArchivedPart, Change, CorrectionRow, CoursePart,
    DisposalRow, DocumentPart, GivenPart, KeeperPart, LotTotal, MedicinePart, PrescriptionPart,
    PrescriptionRow, RemovalRow, SaidBy, WithdrawalPart, Written,
};

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
    /// Administrations of that time, each once.
    pub administrations: Vec<AdministrationRow>,
    /// Removals of that time.
    pub removals: Vec<RemovalRow>,
    /// Disposals of that time.
    pub disposals: Vec<DisposalRow>,
    /// What was corrected or struck out of all these: the old value stays visible.
    pub corrections: Vec<CorrectionRow>,
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
    pub notice: &'static str,
}

impl RegisterReport {
    /// Reads the register from the journal, as the record stood at the end of `as_of`. Never fails; a time without
    /// entries has empty tables.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, period: Period, as_of: Day) -> RegisterReport {
        let view = View { holding, leaflets, period, as_of };
        let standing: Vec<&Arc<Record>> =
            holding.standing().into_iter().filter(|record| record.on <= as_of).collect();
        let within: Vec<&Arc<Record>> =
            standing.iter().copied().filter(|record| period.holds(record.on)).collect();
        RegisterReport {
            holding: holding.name().clone(),
            keepers: lots::keepers(&view),
            from: period.from(),
            to: period.to(),
            as_of,
            acquisitions: lots::acquisitions(&view, &standing, &within),
            prescriptions: lots::prescriptions(&view, &standing, &within),
            administrations: administrations::administrations(&view, &within),
            removals: administrations::removals(&view, &within),
            disposals: lots::disposals(&view, &within),
            corrections: corrections::corrections(&view),
            totals: lots::totals(&view, &within),
            archived: archived::parts(&view),
            entries: holding.tip().map_or(0, |(seq, _)| seq),
            head: holding.tip().map(|(_, hash)| hash),
            policy: POLICY,
            notice: NOTICE,
        }
    }
}

/// What the rows are read from.
struct View<'h> {
    holding: &'h Holding,
    leaflets: &'h Leaflets,
    period: Period,
    as_of: Day,
}

/// Whether entries of this kind stand in the register, or what they say does.
fn is_of_the_register(event: &Event) -> bool {
    matches!(
        event,
        Event::HoldingDetails(_)
            | Event::MedicineDescribed(_)
            | Event::LotAcquired(_)
            | Event::LotOpened(_)
            | Event::DocumentAttached(_)
            | Event::LeafletReading(_)
            | Event::Prescription(_)
            | Event::Administration(_)
            | Event::Removal(_)
            | Event::Disposal(_)
    )
}
