//! The names in an entry, and so the files it belongs to; the entry it builds on; its movements in and out of lots.

use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName, PrescriptionName};
use crate::facts::Movement;
use crate::journal::entry::EntryId;
use crate::journal::event::Event;

/// The names in an entry.
#[derive(Debug, Default)]
pub(crate) struct Mentions<'a> {
    pub(crate) apiaries: Vec<&'a ApiaryName>,
    pub(crate) colonies: Vec<&'a ColonyName>,
    pub(crate) medicines: Vec<&'a MedicineName>,
    pub(crate) lots: Vec<&'a LotName>,
    pub(crate) prescriptions: Vec<&'a PrescriptionName>,
    /// The first dose that it builds on.
    pub(crate) builds_on: Option<EntryId>,
    /// Its movements in and out of lots.
    pub(crate) moves: Vec<(&'a LotName, Movement)>,
    /// Whether it says where a colony came from, where it is, or that it ended.
    pub(crate) of_life: bool,
}

/// The names in an event.
pub(crate) fn of(event: &Event) -> Mentions<'_> {
    let of_life = matches!(
        event,
        Event::ColonyEstablished(_)
            | Event::ColonyMoved(_)
            | Event::ColonySplit(_)
            | Event::ColonyUnited(_)
            | Event::ColonyEnded(_)
    );
    let mut names = Mentions { of_life, ..Mentions::default() };
    match event {
        Event::HoldingDetails(_) | Event::StrikeOut(_) | Event::Archived(_) | Event::InArchive(_) => {}
        Event::ApiaryDetails(body) => names.apiaries.push(&body.apiary),
        Event::SiteConditions(body) => names.apiaries.push(&body.apiary),
        Event::NectarFlow(body) => names.apiaries.push(&body.apiary),
        Event::Temperature(body) => names.apiaries.push(&body.apiary),
        Event::TemperatureNormals(body) => names.apiaries.push(&body.apiary),
        Event::ColonyEstablished(body) => {
            names.colonies.push(&body.colony);
            names.apiaries.push(&body.apiary);
        }
        Event::ColonyMoved(body) => {
            names.colonies.push(&body.colony);
            names.apiaries.push(&body.to);
        }
        Event::ColonySplit(body) => {
            names.colonies.extend([&body.colony, &body.into]);
            names.apiaries.extend(&body.to);
        }
        Event::ColonyUnited(body) => names.colonies.extend([&body.colony, &body.into]),
        Event::ColonyEnded(body) => names.colonies.push(&body.colony),
        Event::SupersOn(body) => names.colonies.extend(&body.colonies),
        Event::SupersOff(body) => names.colonies.extend(&body.colonies),
        Event::Inspection(body) => names.colonies.push(&body.colony),
        Event::MiteCount(body) => names.colonies.push(&body.colony),
        Event::MedicineDescribed(body) => names.medicines.push(&body.medicine),
        Event::LotAcquired(body) => {
            names.moves.push((&body.lot, Movement::Acquired(body.quantity)));
            names.lots.push(&body.lot);
            names.medicines.push(&body.medicine);
        }
        Event::VetLot(body) => {
            names.moves.push((&body.lot, Movement::OfVet));
            names.lots.push(&body.lot);
            names.medicines.push(&body.medicine);
        }
        Event::LotOpened(body) => names.lots.push(&body.lot),
        Event::DocumentAttached(body) => {
            names.lots.extend(&body.lot);
            names.prescriptions.extend(&body.prescription);
        }
        Event::LeafletReading(body) => names.lots.push(&body.lot),
        Event::Prescription(body) => {
            names.prescriptions.push(&body.prescription);
            names.medicines.push(&body.medicine);
        }
        Event::Administration(body) => {
            names.builds_on = body.continues;
            for given in &body.given {
                names.moves.push((&given.lot, Movement::Given(given.total())));
                names.lots.push(&given.lot);
                names.colonies.extend(&given.colonies);
            }
            names.prescriptions.extend(&body.prescription);
        }
        Event::Removal(body) => {
            names.builds_on = Some(body.administration);
            names.colonies.extend(&body.colonies);
        }
        Event::Disposal(body) => {
            names.moves.push((&body.lot, Movement::Disposed(body.quantity)));
            names.lots.push(&body.lot);
        }
        Event::Harvest(body) => names.colonies.extend(&body.colonies),
    }
    // An entry appears once in each file, however often it uses the name.
    names.colonies.sort_unstable();
    names.colonies.dedup();
    names.lots.sort_unstable();
    names.lots.dedup();
    names
}
