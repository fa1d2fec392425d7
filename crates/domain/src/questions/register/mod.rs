//! The legal register: what the law wants recorded of veterinary medicines, read from the journal for a time.
//!
//! Acquisitions, administrations, removals, disposals and prescriptions, each once, with what was corrected about them
//! and when they were written down. Nothing is judged here; what a law still misses is told by the gaps.
//!
//! - [`Period`]: from which day to which
//! - [`Register`]: the register

mod administrations;
mod archived;
mod corrections;
mod course_parts;
mod lots;
mod named;
mod period;
mod rows;

use std::collections::BTreeSet;
use std::sync::Arc;

use serde::Serialize;

use crate::basics::calendar::{Counting, Day, Moment, POLICY};
use crate::basics::words::HoldingName;
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::journal::seal::Hash;
use crate::rules::leaflet::Leaflets;

pub use period::{BadPeriod, Period};
pub use rows::{
    AcquisitionRow, AdministrationRow, ApiaryStay, ArchivedPart, Change, CorrectionRow, CoursePart,
    DisposalRow, DocumentPart, GivenPart, KeeperPart, LotTotal, MedicinePart, NamedEntry, PrescriptionPart,
    PrescriptionRow, RemovalRow, SaidBy, WithdrawalPart, Written,
};

/// The register of a holding for a time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Register {
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
}

impl Register {
    /// Reads the register from the journal, as the record stood at the end of `as_of`. Never fails; a time without
    /// entries has empty tables.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, period: Period, as_of: Day) -> Register {
        let view = View { holding, leaflets, period, as_of };
        // Nothing else becomes a row, or is counted in one.
        let standing = holding.standing_if(|record| record.on <= as_of && is_of_the_register(&record.event));
        let within: Vec<&Arc<Record>> =
            standing.iter().copied().filter(|record| period.holds(record.on)).collect();
        let keepers = lots::keepers(&view);
        let administrations = administrations::administrations(&view, &standing);
        let acquisitions = lots::acquisitions(&view, &standing, &within, &administrations);
        let prescriptions = lots::prescriptions(&view, &standing, &administrations);
        // What the rows rest on, whenever it was: keeper, lots, prescriptions, medicines, readings.
        let mut rest_on: BTreeSet<EntryId> = keepers.iter().map(|keeper| keeper.entry).collect();
        rest_on.extend(acquisitions.iter().map(|row| row.written.entry));
        rest_on.extend(prescriptions.iter().map(|row| row.written.entry));
        rest_on.extend(acquisitions.iter().flat_map(|row| view.rests_on(&row.lot)));
        let of_courses = administrations.iter().flat_map(|row| &row.courses);
        rest_on.extend(administrations.iter().map(|row| row.written.entry));
        rest_on.extend(of_courses.filter_map(|course| course.withdrawal.as_ref()?.entry));
        let removals = administrations::removals(&view, &within);
        Register {
            also_named: named::entries(&view, &administrations, &removals),
            holding: holding.name().clone(),
            keepers,
            from: period.from(),
            to: period.to(),
            as_of,
            acquisitions,
            prescriptions,
            administrations,
            removals,
            disposals: lots::disposals(&view, &within),
            corrections: corrections::corrections(&view, &rest_on),
            totals: lots::totals(&view, &within),
            archived: archived::parts(&view),
            entries: holding.tip().map_or(0, |(seq, _)| seq),
            head: holding.tip().map(|(_, hash)| hash),
            policy: POLICY,
        }
    }
}

impl Register {
    /// The same, counted by a policy. Counting full days of 24 hours adds the moment from which each course is free, where the
    /// time of day was noted and every period is documented; civil days stand beside it all the same.
    #[must_use]
    pub fn counted_by(mut self, counting: Counting) -> Register {
        self.policy = counting.as_str();
        for course in self.administrations.iter_mut().flat_map(|row| &mut row.courses) {
            let period = course.withdrawal.as_ref().map(|period| period.days);
            let days = period.zip(course.wait_days).map(|(period, wait)| period.max(wait));
            let last = course.last.zip(course.last_at).map(|(on, at)| Moment { on, at });
            let free_at = last.zip(days).map(|(last, days)| last.after_days(days));
            // Only where a first free day is known: what frees no civil day frees no moment of it.
            let asked = counting == Counting::Elapsed && course.first_free_day.is_some();
            course.free_at = free_at.filter(|_| asked);
        }
        self
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
