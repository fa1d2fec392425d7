//! The legal register: the veterinary medicine records that the law requires, read from the journal for a period.
//!
//! Acquisitions, administrations, removals, disposals and prescriptions, each once, with their corrections and the
//! time of recording. Nothing is judged here; [`gaps`](crate::questions::gaps) reports what a law finds missing.
//!
//! - [`Period`]: its first and last day
//! - [`Register`]: the register

mod administrations;
mod archived;
mod corrections;
mod course_parts;
mod key;
mod lots;
mod named;
mod period;
mod rows;
mod sent_before;
mod struck_out;
mod vet_lots;

use std::collections::BTreeSet;
use std::sync::Arc;

use serde::Serialize;

use sent_before::Changes;

use crate::basics::calendar::{Counting, Day, Moment, POLICY};
use crate::basics::words::HoldingName;
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::Event;
use crate::journal::seal::Hash;
use crate::questions::NamedEntry;
use crate::rules::leaflet::Leaflets;

pub use period::{BadPeriod, Period};
pub use rows::{
    AcquisitionRow, AdministrationRow, ApiaryKey, ApiaryStay, ArchivedPart, Change, ColonyKey, CorrectionRow,
    CoursePart, DisposalRow, DocumentPart, GivenPart, KeeperPart, LotTotal, MedicinePart, PrescriptionPart,
    PrescriptionRow, RemovalRow, SaidBy, WithdrawalPart, Written,
};
pub use sent_before::SentBefore;
pub use struck_out::{StruckOut, StruckOutRow};
pub use vet_lots::VetLotRow;

/// The register of a holding for a period.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Register {
    /// The holding.
    pub holding: HoldingName,
    /// The keepers in that period and their addresses; the earliest first.
    pub keepers: Vec<KeeperPart>,
    /// The first day of the period.
    pub from: Day,
    /// The last day of the period.
    pub to: Day,
    /// Events after this day are ignored.
    pub as_of: Day,
    /// Lots acquired in the period, and earlier ones used or disposed of in it.
    pub acquisitions: Vec<AcquisitionRow>,
    /// Lots of a vet's own stock that were given in the period. The keeper acquired none of them.
    pub vet_lots: Vec<VetLotRow>,
    /// Prescriptions of the period, and earlier ones used in it.
    pub prescriptions: Vec<PrescriptionRow>,
    /// Administrations of the period, each once, and earlier ones that were in, or had a running period, during it.
    pub administrations: Vec<AdministrationRow>,
    /// Removals of the period.
    pub removals: Vec<RemovalRow>,
    /// Disposals of the period.
    pub disposals: Vec<DisposalRow>,
    /// Corrections and strike-outs of all these; the old value stays visible.
    pub corrections: Vec<CorrectionRow>,
    /// What was acquired, given or disposed of by entries that were struck out, whole. The corrections tell a reader of them.
    #[serde(skip)]
    pub struck_out: Vec<StruckOut>,
    /// The entries named above that have no row, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The stock account of each lot of which something moved in the period or is left at its end.
    pub totals: Vec<LotTotal>,
    /// The apiaries that the rows name, and those of the colonies.
    pub apiaries: Vec<ApiaryKey>,
    /// The colonies that the rows name.
    pub colonies: Vec<ColonyKey>,
    /// Archives with entries of the period. The archived entries are not in this register.
    pub archived: Vec<ArchivedPart>,
    /// Number of entries in the journal when the register was read.
    #[cfg_attr(feature = "openapi", schema(maximum = 9_007_199_254_740_991i64))]
    pub entries: u64,
    /// The hash of the last of them, which proves to anyone with the journal that the register was read from it.
    pub head: Option<Hash>,
    /// The counting policy.
    pub policy: &'static str,
}

impl Register {
    /// Who recorded each entry that is a row, and when.
    pub fn written(&self) -> impl Iterator<Item = &Written> {
        self.standing().chain(self.corrections.iter().map(|row| &row.written))
    }

    /// The same without the corrections: each of these entries stands.
    pub fn standing(&self) -> impl Iterator<Item = &Written> {
        let acquired = self.acquisitions.iter().map(|row| &row.written);
        acquired
            .chain(self.vet_lots.iter().map(|row| &row.written))
            .chain(self.prescriptions.iter().map(|row| &row.written))
            .chain(self.administrations.iter().map(|row| &row.written))
            .chain(self.removals.iter().map(|row| &row.written))
            .chain(self.disposals.iter().map(|row| &row.written))
    }

    /// The documents of the lots and prescriptions, each with the entry that it belongs to.
    pub fn documents(&self) -> impl Iterator<Item = (&Written, &DocumentPart)> {
        let of_lots = self.acquisitions.iter().map(|row| (&row.written, &row.documents));
        let of_prescriptions = self.prescriptions.iter().map(|row| (&row.written, &row.documents));
        let of_vets = self.vet_lots.iter().map(|row| (&row.written, &row.documents));
        let each = of_lots.chain(of_vets).chain(of_prescriptions);
        each.flat_map(|(written, documents)| documents.iter().map(move |document| (written, document)))
    }

    /// Reads the register from the journal, as of the end of `as_of`. Never fails; a period without entries has empty
    /// tables.
    #[must_use]
    pub fn of(holding: &Holding, leaflets: &Leaflets, period: Period, as_of: Day) -> Register {
        let view = View { holding, leaflets, period, as_of };
        // No other entry becomes a row or is counted in one.
        let standing = holding.standing_if(|record| record.on <= as_of && is_of_the_register(&record.event));
        let within: Vec<&Arc<Record>> =
            standing.iter().copied().filter(|record| period.holds(record.on)).collect();
        let changes = Changes::of(&view);
        let keepers = lots::keepers(&view);
        let administrations = administrations::administrations(&view, &changes, &standing);
        let acquisitions = lots::acquisitions(&view, &standing, &within, &administrations);
        let vet_lots = vet_lots::rows(&view, &standing, &administrations);
        let prescriptions = lots::prescriptions(&view, &standing, &administrations);
        // The entries that the rows depend on, whatever their day: keeper, lots, prescriptions, medicines, readings.
        let mut rest_on: BTreeSet<EntryId> = keepers.iter().map(|keeper| keeper.entry).collect();
        rest_on.extend(acquisitions.iter().map(|row| row.written.entry));
        rest_on.extend(prescriptions.iter().map(|row| row.written.entry));
        rest_on.extend(vet_lots.iter().map(|row| row.written.entry));
        let lots = acquisitions.iter().map(|row| &row.lot).chain(vet_lots.iter().map(|row| &row.lot));
        rest_on.extend(lots.flat_map(|lot| view.rests_on(lot)));
        let of_courses = administrations.iter().flat_map(|row| &row.courses);
        rest_on.extend(administrations.iter().map(|row| row.written.entry));
        rest_on.extend(of_courses.filter_map(|course| course.withdrawal.as_ref()?.entry));
        let removals = administrations::removals(&view, &within);
        let all_corrections = holding.corrections();
        let mut register = Register {
            holding: holding.name().clone(),
            keepers,
            from: period.from(),
            to: period.to(),
            as_of,
            acquisitions,
            vet_lots,
            prescriptions,
            administrations,
            removals,
            disposals: lots::disposals(&view, &within),
            corrections: corrections::corrections(&view, &all_corrections, &rest_on),
            struck_out: struck_out::entries(&view, &changes, &all_corrections),
            named_entries: Vec::new(),
            totals: lots::totals(&view, &within),
            apiaries: Vec::new(),
            colonies: Vec::new(),
            archived: archived::parts(&view),
            entries: holding.tip().map_or(0, |(seq, _)| seq),
            head: holding.tip().map(|(_, hash)| hash),
            policy: POLICY,
        };
        register.named_entries = named::entries(&view, &register);
        register.colonies = key::colonies(&view, &register);
        register.apiaries = key::apiaries(&view, &register);
        register
    }
}

impl Register {
    /// The same, with a counting policy. Counting full days of 24 hours adds the moment from which each course is
    /// free, if the time of day was recorded and every period is documented; the civil days stay.
    #[must_use]
    pub fn counted_by(mut self, counting: Counting) -> Register {
        self.policy = counting.as_str();
        for course in self.administrations.iter_mut().flat_map(|row| &mut row.courses) {
            let period = course.withdrawal.as_ref().map(|period| period.days);
            let days = period.zip(course.wait_days).map(|(period, wait)| period.max(wait));
            let last = course.last.zip(course.last_at).map(|(on, at)| Moment { on, at });
            let free_at = last.zip(days).map(|(last, days)| last.after_days(days));
            // Only if a first free day is known: without a free civil day there is no free moment either.
            let asked = counting == Counting::Elapsed && course.first_free_day.is_some();
            course.free_at = free_at.filter(|_| asked);
        }
        self
    }
}

/// The source of the rows.
struct View<'h> {
    holding: &'h Holding,
    leaflets: &'h Leaflets,
    period: Period,
    as_of: Day,
}

impl View<'_> {
    /// Whether a day is in the period, and not after the as-of day.
    fn holds(&self, on: Day) -> bool {
        self.period.holds(on) && on <= self.as_of
    }
}

/// Whether entries of this kind appear in the register or supply its rows.
fn is_of_the_register(event: &Event) -> bool {
    matches!(
        event,
        Event::HoldingDetails(_)
            | Event::MedicineDescribed(_)
            | Event::LotAcquired(_)
            | Event::VetLot(_)
            | Event::LotOpened(_)
            | Event::DocumentAttached(_)
            | Event::LeafletReading(_)
            | Event::Prescription(_)
            | Event::Administration(_)
            | Event::Removal(_)
            | Event::Disposal(_)
    )
}
