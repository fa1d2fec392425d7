//! What cannot be true of the names an entry uses: colonies that must live, lots that must hold enough, names that must
//! be new.

use std::collections::BTreeSet;

use super::Holding;
use super::check::{Checked, Refusal};
use crate::basics::calendar::Day;
use crate::basics::diagnostic::nearest;
use crate::basics::quantity::Quantity;
use crate::basics::words::{ApiaryName, ColonyName, LotName, MedicineName};
use crate::journal::event::{Administration, Disposal, Event};

impl Holding {
    pub(super) fn check_alive(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        let life = self.life(colony);
        let Some(begun) = life.begun else {
            let names = self.colonies().map(ColonyName::as_str);
            let help = nearest(colony.as_str(), names).map_or_else(
                || "record it as established first".to_owned(),
                |near| format!("did you mean `{near}`?"),
            );
            return Err(Refusal::at(pointer, format!("there is no colony `{colony}`"), help));
        };
        if on < begun.on {
            let message = format!("colony `{colony}` came into the record on {}, after {on}", begun.on);
            return Err(Refusal::at(pointer, message, "check both dates"));
        }
        match life.ended {
            Some(ended) if ended.on < on => {
                let message = format!("colony `{colony}` ended on {}", ended.on);
                Err(Refusal::at(pointer, message, "check the colony and the date"))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn check_colonies(&self, pointer: &str, colonies: &[ColonyName], on: Day) -> Checked {
        if colonies.is_empty() {
            return Err(Refusal::at(pointer, "no colony is named", "name at least one"));
        }
        let mut seen = BTreeSet::new();
        for (index, colony) in colonies.iter().enumerate() {
            let at = format!("{pointer}/{index}");
            if !seen.insert(colony) {
                return Err(Refusal::at(&at, format!("colony `{colony}` is named twice"), "name it once"));
            }
            self.check_alive(&at, colony, on)?;
        }
        Ok(())
    }

    pub(super) fn check_new_colony(&self, pointer: &str, colony: &ColonyName) -> Checked {
        match self.life(colony).begun {
            Some(begun) => {
                let message = format!("there is a colony `{colony}` since {}", begun.on);
                let help = "a colony's name is never used again; a hive mark may be";
                Err(Refusal::at(pointer, message, help))
            }
            None => Ok(()),
        }
    }

    /// A colony ends once, and does nothing after it.
    pub(super) fn check_end(&self, pointer: &str, colony: &ColonyName, on: Day) -> Checked {
        if let Some(ended) = self.life(colony).ended {
            let message = format!("colony `{colony}` ended on {}", ended.on);
            return Err(Refusal::at(pointer, message, "correct that entry instead"));
        }
        match self.colony_file(colony).last() {
            Some(last) if last.on > on => {
                let kind = last.event.kind().as_str();
                let article = if kind.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
                let kind = kind.replace('_', " ");
                let message =
                    format!("colony `{colony}` has {article} {kind} recorded on {}, after {on}", last.on);
                Err(Refusal::at(pointer, message, "check both dates, or correct that entry first"))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn check_apiary(&self, pointer: &str, apiary: &ApiaryName) -> Checked {
        let mut file = self.apiary_file(apiary).iter();
        if file.any(|record| matches!(record.event, Event::ApiaryDetails(_))) {
            return Ok(());
        }
        let help = nearest(apiary.as_str(), self.apiaries().map(ApiaryName::as_str))
            .map_or_else(|| "record the apiary first".to_owned(), |near| format!("did you mean `{near}`?"));
        Err(Refusal::at(pointer, format!("there is no apiary `{apiary}`"), help))
    }

    pub(super) fn check_new_apiary(&self, apiary: &ApiaryName) -> Checked {
        match self.check_apiary("", apiary) {
            Ok(()) => {
                let message = format!("the apiary `{apiary}` is already recorded");
                Err(Refusal::at("/body/apiary", message, "correct that entry instead"))
            }
            Err(_) => Ok(()),
        }
    }

    pub(super) fn check_medicine(&self, pointer: &str, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_some() {
            return Ok(());
        }
        let help = nearest(medicine.as_str(), self.medicines.keys().map(MedicineName::as_str)).map_or_else(
            || "describe the medicine first".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        Err(Refusal::at(pointer, format!("no medicine `{medicine}` is described"), help))
    }

    pub(super) fn check_new_medicine(&self, medicine: &MedicineName) -> Checked {
        if self.medicine(medicine).is_none() {
            return Ok(());
        }
        let message = format!("the medicine `{medicine}` is already described");
        Err(Refusal::at("/body/medicine", message, "correct that entry instead"))
    }

    pub(super) fn check_lot(&self, pointer: &str, lot: &LotName) -> Checked {
        if self.lot(lot).is_some() {
            return Ok(());
        }
        let help = nearest(lot.as_str(), self.lots().map(LotName::as_str)).map_or_else(
            || "record its acquisition first".to_owned(),
            |near| format!("did you mean `{near}`?"),
        );
        Err(Refusal::at(pointer, format!("there is no lot `{lot}`"), help))
    }

    pub(super) fn check_new_lot(&self, lot: &LotName) -> Checked {
        if self.lot(lot).is_none() {
            return Ok(());
        }
        let help = "give this acquisition a name of its own; two may carry one batch number";
        Err(Refusal::at("/body/lot", format!("there is already a lot `{lot}`"), help))
    }

    pub(super) fn check_lot_in_hand(&self, pointer: &str, lot: &LotName, on: Day) -> Checked {
        self.check_lot(pointer, lot)?;
        match self.lot(lot) {
            Some((record, _)) if record.on > on => {
                let message = format!("lot `{lot}` was acquired on {}, after {on}", record.on);
                Err(Refusal::at(pointer, message, "check both dates"))
            }
            _ => Ok(()),
        }
    }

    pub(super) fn check_left(
        &self,
        pointer: &str,
        lot: &LotName,
        taken: Quantity,
        count_corrected: bool,
    ) -> Checked {
        let Some((_, acquired)) = self.lot(lot) else { return Ok(()) };
        check_stock(pointer, lot, acquired.quantity, self.balance(lot).gone().plus(taken), count_corrected)
    }

    /// Whether an entry says that the count of a lot was corrected. Then its book no longer comes out even.
    pub(super) fn count_was_corrected(&self, lot: &LotName) -> bool {
        self.lot_file(lot).iter().any(|record| {
            let given = record.body::<Administration>().is_some_and(|body| body.count_corrected);
            given || record.body::<Disposal>().is_some_and(|body| body.count_corrected)
        })
    }
}

/// That no more goes out of a lot than it held.
pub(super) fn check_stock(
    pointer: &str,
    lot: &LotName,
    had: Quantity,
    gone: Quantity,
    count_corrected: bool,
) -> Checked {
    if count_corrected || gone <= had {
        return Ok(());
    }
    let message = format!("lot `{lot}` held {had}, but {gone} would be gone from it");
    let help = "check the amount and the lot; if the record's count is wrong, set `count_corrected`";
    Err(Refusal::at(pointer, message, help))
}
