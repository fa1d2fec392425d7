//! Statements about the doses of a course, recorded or planned, from the files of lots and prescriptions.

use std::sync::Arc;

use super::Dose;
use super::terms::{LotSaid, Named, Stated, Terms};
use crate::basics::calendar::Day;
use crate::basics::words::{LotName, Method};
use crate::facts::holding::{Holding, Record};
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, LeafletReading, StatedTerms};
use crate::rules::leaflet::Leaflet;

impl Terms {
    /// The terms that would apply if a leaflet's medicine were given from these lots on a day; without lots, the
    /// leaflet's terms.
    ///
    /// A value read on the pack when some of the lot was given counts for the rest of the lot. A vet's prescription
    /// for that dose does not.
    pub(crate) fn if_given(
        holding: &Holding,
        leaflet: &Arc<Leaflet>,
        on: Day,
        method: Option<&Method>,
        revision: Option<&str>,
        lots: &[LotName],
    ) -> Terms {
        let said_of = |lot: &LotName| {
            let packs = holding.lot_file(lot).iter().filter_map(|record| {
                let given = record.body::<Administration>().filter(|given| given.prescription.is_none())?;
                Some((record.id, record.on, given.withdrawal_days?))
            });
            LotSaid { revision, readings: readings(holding, lot), packs: packs.collect(), first_given: None }
        };
        let mut said: Vec<LotSaid<'_>> = lots.iter().map(said_of).collect();
        if said.is_empty() {
            said.push(LotSaid { revision, ..LotSaid::default() });
        }
        // Lots of two medicines have no declared terms in common.
        let mut medicines = lots.iter().filter_map(|lot| holding.lot(lot)).map(|(_, lot)| lot.medicine);
        let first = medicines.next().filter(|first| medicines.all(|other| other == *first));
        let medicine = first.and_then(|medicine| holding.medicine(medicine));
        let stated = Stated {
            prescriptions: Vec::new(),
            all_prescribed: false,
            lots: said,
            declared: medicine.and_then(|(record, medicine)| Some((record.id, medicine.terms.as_ref()?))),
        };
        Terms::of(&Named::Found(Arc::clone(leaflet)), on, method, &stated)
    }
}

/// The readings of a lot's leaflet, in the order they were made.
fn readings<'h>(holding: &'h Holding, lot: &LotName) -> Vec<(&'h Record, &'h StatedTerms)> {
    let readings = holding.reading_file(lot).iter().filter_map(|record| {
        let reading = record.body::<LeafletReading>()?;
        Some((&**record, &reading.terms))
    });
    readings.collect()
}

/// A dose and the lots it came from.
#[derive(Clone)]
pub(super) struct GivenDose<'h> {
    pub(super) dose: Dose,
    /// The body of its entry.
    pub(super) given: &'h Administration,
    pub(super) lots: Vec<&'h LotName>,
}

// Written by hand: equal entries have equal bodies, so `given` need not be compared.
impl PartialEq for GivenDose<'_> {
    fn eq(&self, other: &GivenDose<'_>) -> bool {
        self.dose == other.dose && self.lots == other.lots
    }
}

/// The prescriptions of the doses, and whether every dose had one.
pub(super) fn prescriptions<'h>(
    doses: &[GivenDose<'h>],
    holding: &'h Holding,
) -> (Vec<(EntryId, &'h StatedTerms)>, bool) {
    let found = |name| holding.prescription(name).map(|(record, body)| (record.id, &body.terms));
    let of_doses = || doses.iter().map(|dose| dose.given.prescription.as_ref().and_then(found));
    let all = of_doses().all(|prescription| prescription.is_some());
    let mut prescriptions: Vec<_> = of_doses().flatten().collect();
    prescriptions.dedup_by_key(|(entry, _)| *entry);
    (prescriptions, all)
}

/// The statements about each lot given. A dose without a recorded lot counts as one unread lot.
pub(super) fn said_of_lots<'h>(doses: &[GivenDose<'h>], holding: &'h Holding) -> Vec<LotSaid<'h>> {
    let mut lots: Vec<&LotName> = doses.iter().flat_map(|given| given.lots.iter().copied()).collect();
    lots.sort_unstable();
    lots.dedup();
    if lots.is_empty() {
        return vec![LotSaid::default()];
    }
    let said = lots.into_iter().map(|lot| {
        let gave = |given: &Administration| given.given.iter().any(|part| part.lot == *lot);
        let packs = doses.iter().filter(|dose| gave(dose.given));
        let first_given = packs.clone().map(|given| given.dose.on).min();
        LotSaid {
            revision: label_revision(holding, lot, first_given),
            readings: readings(holding, lot),
            packs: packs
                .filter_map(|given| Some((given.dose.entry, given.dose.on, given.given.withdrawal_days?)))
                .collect(),
            first_given,
        }
    });
    said.collect()
}

/// The label revision on the pack of a lot: as recorded at acquisition, else from the newest reading that names one.
/// With `by`, later readings are ignored: a reading made after a treatment never relaxes its terms.
pub(crate) fn label_revision<'h>(holding: &'h Holding, lot: &LotName, by: Option<Day>) -> Option<&'h str> {
    let acquired = holding.lot(lot).and_then(|(_, acquired)| acquired.label_revision.map(String::as_str));
    acquired.or_else(|| {
        let by_then = |record: &&Arc<Record>| by.is_none_or(|by| record.on <= by);
        holding
            .reading_file(lot)
            .iter()
            .rev()
            .filter(by_then)
            .find_map(|record| record.body::<LeafletReading>()?.revision.as_deref())
    })
}
