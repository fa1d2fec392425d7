//! What people stated about the doses of a course, gathered from the files of lots and prescriptions.

use super::Dose;
use super::terms::LotSaid;
use crate::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Event, StatedTerms};
use crate::words::LotName;

/// A dose, and the lots it came from.
#[derive(Clone, PartialEq)]
pub(super) struct Given<'h> {
    pub(super) dose: Dose,
    pub(super) lots: Vec<&'h LotName>,
}

fn administrations<'h>(
    doses: &[Given<'h>],
    holding: &'h Holding,
) -> impl Iterator<Item = (EntryId, &'h Administration)> {
    let records = doses.iter().filter_map(|given| holding.record(given.dose.entry));
    records.filter_map(|record| match &*record.event {
        Event::Administration(given) => Some((record.id, given)),
        _ => None,
    })
}

/// The prescriptions of the doses, and whether every dose had one.
pub(super) fn prescriptions<'h>(
    doses: &[Given<'h>],
    holding: &'h Holding,
) -> (Vec<(EntryId, &'h StatedTerms)>, bool) {
    let found = |name| {
        holding.prescription_file(name).iter().find_map(|record| match &*record.event {
            Event::Prescription(body) => Some((record.id, &body.terms)),
            _ => None,
        })
    };
    let of_doses: Vec<_> = administrations(doses, holding)
        .map(|(_, given)| given.prescription.as_ref().and_then(found))
        .collect();
    let all = of_doses.iter().all(Option::is_some);
    let mut prescriptions: Vec<_> = of_doses.into_iter().flatten().collect();
    prescriptions.dedup_by_key(|(entry, _)| *entry);
    (prescriptions, all)
}

/// What was read of each lot that was given. A dose without a lot on record stands as one unread lot.
pub(super) fn said_of_lots<'h>(doses: &[Given<'h>], holding: &'h Holding) -> Vec<LotSaid<'h>> {
    let mut lots: Vec<&LotName> = doses.iter().flat_map(|given| given.lots.iter().copied()).collect();
    lots.sort_unstable();
    lots.dedup();
    if lots.is_empty() {
        return vec![LotSaid::default()];
    }
    let said = lots.into_iter().map(|lot| {
        let readings = holding.lot_file(lot).iter().filter_map(|record| match &*record.event {
            Event::LeafletReading(reading) => Some((&**record, &reading.terms)),
            _ => None,
        });
        let gave = |given: &Administration| given.given.iter().any(|part| part.lot == *lot);
        let packs = administrations(doses, holding).filter(|(_, given)| gave(given));
        LotSaid {
            revision: label_revision(holding, lot),
            readings: readings.collect(),
            packs: packs.filter_map(|(entry, given)| Some((entry, given.withdrawal_days?))).collect(),
        }
    });
    said.collect()
}

/// The revision of the label on the pack of a lot: as noted when it was acquired, else at the newest reading that names one.
pub(super) fn label_revision<'h>(holding: &'h Holding, lot: &LotName) -> Option<&'h str> {
    let acquired = holding.lot(lot).and_then(|(_, acquired)| acquired.label_revision.as_deref());
    acquired.or_else(|| {
        holding.lot_file(lot).iter().rev().find_map(|record| match &*record.event {
            Event::LeafletReading(reading) => reading.revision.as_deref(),
            _ => None,
        })
    })
}
