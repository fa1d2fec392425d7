//! Checks of the names in an entry: colonies must be alive, lots must hold enough, new names must be new.

use std::collections::BTreeSet;

use super::Holding;
use super::check::Checked;
use super::refusal::Refusal;
use super::untrue::{Colonies, Lots, Places};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::spelling::nearest_name;
use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName};
use crate::journal::event::{Administration, Disposal, Event};

impl Holding {
    pub(super) fn check_alive(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        let life = self.life(colony);
        let Some(begun) = life.begun else {
            let near = nearest_name(colony.as_str(), self.colonies().map(ColonyName::as_str));
            let colony = colony.clone();
            return Err(Refusal::at(pointer, Colonies::NoSuchColony { colony, near }));
        };
        if on < begun.on {
            let (colony, begun) = (colony.clone(), begun.on);
            return Err(Refusal::at(pointer, Colonies::NotYetThere { colony, begun, on }));
        }
        match life.ended {
            Some(ended) if ended.on < on => {
                let (colony, ended) = (colony.clone(), ended.on);
                Err(Refusal::at(pointer, Colonies::Ended { colony, ended }))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn check_colonies(&self, pointer: &str, colonies: &[ColonyName], on: Day) -> Checked {
        if colonies.is_empty() {
            return Err(Refusal::at(pointer, Colonies::NoneNamed));
        }
        let mut seen = BTreeSet::new();
        for (index, colony) in colonies.iter().enumerate() {
            let at = format!("{pointer}/{index}");
            if !seen.insert(colony) {
                let colony = colony.clone();
                return Err(Refusal::at(at, Colonies::NamedTwice { colony }));
            }
            self.check_alive(&at, colony, on)?;
        }
        Ok(())
    }

    pub(super) fn check_new_colony(&self, pointer: &str, colony: &ColonyName) -> Checked {
        match self.life(colony).begun {
            Some(begun) => {
                let (colony, since) = (colony.clone(), begun.on);
                Err(Refusal::at(pointer, Colonies::NameIsTaken { colony, since }))
            }
            None => Ok(()),
        }
    }

    /// A colony ends once, and has no later events.
    pub(super) fn check_end(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        if let Some(ended) = self.life(colony).ended {
            let (colony, ended) = (colony.clone(), ended.on);
            return Err(Refusal::at(pointer, Colonies::EndedBefore { colony, ended }));
        }
        match self.colony_file(colony).last() {
            Some(last) if last.on > on => {
                let (colony, kind, last) = (colony.clone(), last.event.kind(), last.on);
                Err(Refusal::at(pointer, Colonies::LivedLater { colony, kind, last, on }))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn check_apiary(&self, pointer: &str, apiary: &ApiaryName) -> Checked {
        let mut file = self.apiary_file(apiary).iter();
        if file.any(|record| matches!(record.event, Event::ApiaryDetails(_))) {
            return Ok(());
        }
        let near = nearest_name(apiary.as_str(), self.apiaries().map(ApiaryName::as_str));
        Err(Refusal::at(pointer, Places::NoSuchApiary { apiary: apiary.clone(), near }))
    }

    pub(super) fn check_new_apiary(&self, apiary: &ApiaryName) -> Checked {
        match self.check_apiary("", apiary) {
            Ok(()) => {
                let apiary = apiary.clone();
                Err(Refusal::at("/body/apiary", Places::ApiaryIsRecorded { apiary }))
            }
            Err(_) => Ok(()),
        }
    }

    pub(super) fn check_medicine(&self, pointer: &str, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_some() {
            return Ok(());
        }
        let near = nearest_name(medicine.as_str(), self.medicines.keys().map(MedicineName::as_str));
        Err(Refusal::at(pointer, Lots::NoSuchMedicine { medicine: medicine.clone(), near }))
    }

    pub(super) fn check_new_medicine(&self, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_none() {
            return Ok(());
        }
        Err(Refusal::at("/body/medicine", Lots::MedicineIsDescribed { medicine: medicine.clone() }))
    }

    pub(super) fn check_lot(&self, pointer: &str, lot: &LotName) -> Checked {
        if self.lot(lot).is_some() {
            return Ok(());
        }
        let near = nearest_name(lot.as_str(), self.lots().map(LotName::as_str));
        Err(Refusal::at(pointer, Lots::NoSuchLot { lot: lot.clone(), near }))
    }

    pub(super) fn check_new_lot(&self, lot: &LotName) -> Checked {
        if self.lot(lot).is_none() {
            return Ok(());
        }
        Err(Refusal::at("/body/lot", Lots::LotNameIsTaken { lot: lot.clone() }))
    }

    pub(super) fn check_lot_in_hand(&self, pointer: &str, lot: &LotName, on: Day) -> Checked {
        self.check_lot(pointer, lot)?;
        match self.lot(lot) {
            Some((record, _)) if record.on > on => {
                let (lot, acquired) = (lot.clone(), record.on);
                Err(Refusal::at(pointer, Lots::NotYetAcquired { lot, acquired, on }))
            }
            _ => Ok(()),
        }
    }

    /// Checks that a lot is of the keeper's own stock: only the vet opens or disposes of the vet's.
    pub(super) fn check_keepers_own(&self, pointer: &str, lot: &LotName) -> Checked {
        match self.lot(lot).and_then(|(_, lot)| lot.of_vet()) {
            Some(_) => Err(Refusal::at(pointer, Lots::OfVetsStock { lot: lot.clone() })),
            None => Ok(()),
        }
    }

    pub(super) fn check_left(
        &self,
        pointer: &str,
        lot: &LotName,
        taken: Quantity,
        count_corrected: bool,
    ) -> Checked {
        // Nobody counts what a vet brought and kept.
        let Some(acquired) = self.lot(lot).and_then(|(_, lot)| lot.acquired()) else { return Ok(()) };
        check_stock(pointer, lot, acquired.quantity, self.balance(lot).gone().plus(taken), count_corrected)
    }

    /// Whether an entry corrected the stock account of a lot after a count. The account then no longer balances.
    pub(super) fn count_was_corrected(&self, lot: &LotName) -> bool {
        self.lot_file(lot).iter().any(|record| {
            let given = record.body::<Administration>().is_some_and(|body| body.count_corrected);
            given || record.body::<Disposal>().is_some_and(|body| body.count_corrected)
        })
    }
}

/// Checks that no more is taken from a lot than it held.
pub(super) fn check_stock(
    pointer: &str,
    lot: &LotName,
    held: Quantity,
    gone: Quantity,
    count_corrected: bool,
) -> Checked {
    if count_corrected || gone <= held {
        return Ok(());
    }
    Err(Refusal::at(pointer, Lots::MoreThanHeld { lot: lot.clone(), held, gone }))
}
