//! Acquisitions, prescriptions, disposals, and the quantities in and out of each lot.

use std::collections::BTreeSet;
use std::sync::Arc;

use super::View;
use super::rows::{
    AcquisitionRow, AdministrationRow, DisposalRow, DocumentPart, KeeperPart, LotTotal, MedicinePart,
    PrescriptionPart, PrescriptionRow, Written,
};
use crate::basics::calendar::Day;
use crate::basics::fact::Fact;
use crate::basics::words::{LotName, MedicineName, PrescriptionName};
use crate::facts::holding::Record;
use crate::facts::holding::mentions;
use crate::facts::{Balance, MedicineGiven, Movement, corrects_count};
use crate::journal::entry::EntryId;
use crate::journal::event::{Disposal, DocumentAttached, Event, HoldingDetails, LeafletReading, LotAcquired};
use crate::rules::leaflet::Leaflet;

/// The keepers in the register's period: the one on its first day, and any later ones.
pub(super) fn keepers(view: &View<'_>) -> Vec<KeeperPart> {
    let file = view.holding.details_file();
    let first = file
        .iter()
        .rposition(|record| record.on <= view.period.from())
        .or_else(|| (!file.is_empty()).then_some(0));
    let known = file.iter().skip(first.unwrap_or(0)).enumerate();
    let last = view.period.to().min(view.as_of);
    let of_time = known.filter(move |(index, record)| *index == 0 || record.on <= last);
    let keeper = of_time.filter_map(|(_, record)| {
        let details = record.body::<HoldingDetails>()?;
        Some(KeeperPart {
            entry: record.id,
            since: record.on,
            keeper: details.keeper.clone(),
            address: details.address.clone(),
            registration: details.registration.clone(),
            jurisdiction: details.jurisdiction.clone(),
        })
    });
    keeper.collect()
}

/// Lots acquired in the period, and earlier ones used or disposed of in it.
pub(super) fn acquisitions(
    view: &View<'_>,
    standing: &[&Arc<Record>],
    within: &[&Arc<Record>],
    administrations: &[AdministrationRow],
) -> Vec<AcquisitionRow> {
    let mut touched: BTreeSet<&LotName> = within.iter().flat_map(|record| lots_of(&record.event)).collect();
    touched.extend(administrations.iter().flat_map(|row| &row.given).map(|part| &part.lot));
    let rows = standing.iter().filter_map(|record| {
        let Event::LotAcquired(acquired) = &record.event else { return None };
        let earlier = record.on < view.period.from();
        let stands = view.period.holds(record.on) || (earlier && touched.contains(&acquired.lot));
        stands.then(|| acquisition(view, record, acquired))
    });
    rows.collect()
}

pub(super) fn acquisition(view: &View<'_>, record: &Record, acquired: &LotAcquired) -> AcquisitionRow {
    AcquisitionRow {
        written: Written::of(view.holding, record),
        earlier: record.on < view.period.from(),
        lot: acquired.lot.clone(),
        medicine: view.medicine(Fact::Known(acquired.medicine.clone()), record.on),
        batch: acquired.batch.clone(),
        expiry: acquired.expiry,
        quantity: acquired.quantity,
        supplier: acquired.supplier.clone(),
        proof: acquired.proof.clone(),
        documents: documents(view.holding.lot_file(&acquired.lot), view.as_of),
    }
}

/// Prescriptions of the period, and earlier ones used in it.
pub(super) fn prescriptions(
    view: &View<'_>,
    standing: &[&Arc<Record>],
    administrations: &[AdministrationRow],
) -> Vec<PrescriptionRow> {
    let named = administrations.iter().filter_map(|row| row.prescription.as_ref());
    let used: BTreeSet<&PrescriptionName> = named.map(|prescription| &prescription.number).collect();
    let rows = standing.iter().filter_map(|record| {
        let Event::Prescription(body) = &record.event else { return None };
        let earlier = record.on < view.period.from();
        let stands = view.period.holds(record.on) || (earlier && used.contains(&body.prescription));
        stands.then(|| PrescriptionRow {
            written: Written::of(view.holding, record),
            earlier,
            prescription: view.prescription(&body.prescription),
            medicine: view.medicine(Fact::Known(body.medicine.clone()), record.on),
            withdrawal_days: body.terms.withdrawal_days,
            documents: documents(view.holding.prescription_file(&body.prescription), view.as_of),
        })
    });
    rows.collect()
}

/// Disposals of the period.
pub(super) fn disposals(view: &View<'_>, within: &[&Arc<Record>]) -> Vec<DisposalRow> {
    let rows = within.iter().filter_map(|record| {
        let Event::Disposal(body) = &record.event else { return None };
        Some(disposal(view, record, body))
    });
    rows.collect()
}

pub(super) fn disposal(view: &View<'_>, record: &Record, body: &Disposal) -> DisposalRow {
    let lot = view.holding.lot(&body.lot).map(|(_, lot)| lot);
    DisposalRow {
        written: Written::of(view.holding, record),
        lot: body.lot.clone(),
        medicine: view.medicine(view.holding.medicine_of_lot(&body.lot), record.on),
        batch: lot.and_then(|lot| lot.batch.cloned()),
        quantity: body.quantity,
        how_and_where: body.how_and_where.clone(),
    }
}

/// The account of each lot of which something moved in the period or is left at its end, by name of the lot.
pub(super) fn totals(view: &View<'_>, within: &[&Arc<Record>]) -> Vec<LotTotal> {
    let (holding, through) = (view.holding, view.period.to().min(view.as_of));
    let mut moved = Balance::of_events(within.iter().map(|record| &record.event));
    // What a vet brought is in no stock of the keeper's.
    moved.retain(|lot, _| holding.lot(lot).is_none_or(|(_, lot)| lot.of_vet().is_none()));
    let is_left =
        |lot: &LotName| holding.balance_on(lot, through).is_some_and(|balance| balance.may_be_left());
    for lot in holding.lots().filter(|lot| is_left(lot)) {
        moved.entry(lot).or_default();
    }
    let left = |lot, on| {
        let balance = holding.balances(lot, on).last().map(|(_, balance)| balance).unwrap_or_default();
        balance.left().known().copied()
    };
    let total = moved.into_iter().map(|(lot, balance)| {
        let body = holding.lot(lot).map(|(_, body)| body);
        let expiry = body.and_then(|body| body.expiry);
        let corrected = holding.balances(lot, through).filter(|(record, _)| corrects_count(&record.event));
        LotTotal {
            lot: lot.clone(),
            medicine: view.medicine(holding.medicine_of_lot(lot), through),
            batch: body.and_then(|body| body.batch.cloned()),
            expiry,
            carried_in: left(lot, view.period.from().before()),
            acquired: balance.acquired,
            given: balance.given,
            disposed: balance.disposed,
            left: left(lot, through),
            expired: expiry.is_some_and(|expiry| expiry < through),
            counts_corrected: u64::try_from(corrected.count()).unwrap_or(u64::MAX),
        }
    });
    total.collect()
}

/// The lots that an event takes from.
fn lots_of(event: &Event) -> impl Iterator<Item = &LotName> {
    let moves = mentions::of(event).moves.into_iter();
    moves
        .filter(|(_, movement)| !matches!(movement, Movement::Acquired(_) | Movement::OfVet))
        .map(|(lot, _)| lot)
}

/// The documents in the file of a lot or a prescription, in order of attachment.
pub(super) fn documents(file: &[Arc<Record>], as_of: Day) -> Vec<DocumentPart> {
    let known = file.iter().filter(|record| record.on <= as_of);
    let part = known.filter_map(|record| {
        let body = record.body::<DocumentAttached>()?;
        Some(DocumentPart {
            entry: record.id,
            content: body.content,
            media_type: body.media_type,
            bytes: body.bytes,
            file_name: body.file_name.clone(),
        })
    });
    part.collect()
}

impl View<'_> {
    /// A medicine as described, with what its leaflet in force in the holding adds.
    pub(super) fn medicine(&self, medicine: MedicineGiven, on: Day) -> MedicinePart {
        let name = medicine.known();
        let described = name.and_then(|name| self.holding.medicine(name)).map(|(_, described)| described);
        let named = described.and_then(|described| described.leaflet.as_ref());
        let leaflet = self.leaflet(name, on);
        MedicinePart {
            pack_name: described.map(|described| described.pack_name.clone()),
            authorisation: described.and_then(|described| described.authorisation.clone()),
            unit: described.map(|described| described.unit),
            leaflet: named.cloned(),
            leaflet_known: leaflet.is_some(),
            actives: leaflet.map(|leaflet| leaflet.actives.clone()).unwrap_or_default(),
            strength: leaflet.map(|leaflet| leaflet.strength.clone()),
            withdrawal_declared: described.and_then(|described| described.terms.as_ref()?.withdrawal_days),
            medicine,
        }
    }

    /// The last withdrawal period read on the leaflet of a lot, in days.
    pub(super) fn withdrawal_read(&self, lot: &LotName) -> Option<u16> {
        self.holding
            .lot_file(lot)
            .iter()
            .rev()
            .find_map(|record| record.body::<LeafletReading>()?.terms.withdrawal_days)
    }

    /// The entries about a lot besides its acquisition: its medicine, readings, and opening.
    pub(super) fn rests_on(&self, lot: &LotName) -> Vec<EntryId> {
        let medicine = self.holding.lot(lot).and_then(|(_, lot)| self.holding.medicine(lot.medicine));
        let of_lot = self.holding.lot_file(lot).iter().filter(|record| {
            matches!(
                &record.event,
                Event::LeafletReading(_) | Event::LotOpened(_) | Event::DocumentAttached(_)
            )
        });
        of_lot.map(|record| record.id).chain(medicine.map(|(record, _)| record.id)).collect()
    }

    /// The leaflet named for a medicine, if the holding's jurisdiction has it.
    pub(super) fn leaflet(&self, medicine: Option<&MedicineName>, on: Day) -> Option<&Arc<Leaflet>> {
        let (_, described) = self.holding.medicine(medicine?)?;
        self.leaflets.get(self.holding.jurisdiction(on)?, described.leaflet.as_ref()?)
    }

    pub(super) fn prescription(&self, number: &PrescriptionName) -> PrescriptionPart {
        let body = self.holding.prescription(number).map(|(_, body)| body);
        PrescriptionPart {
            number: number.clone(),
            vet: body.map(|body| body.vet.clone()),
            contact: body.and_then(|body| body.contact.clone()),
        }
    }
}
