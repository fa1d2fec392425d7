//! Checks of doses and removals.

use std::sync::Arc;

use super::check::{Checked, Look, check_amount, check_days};
use super::refusal::Refusal;
use super::untrue::{Courses, Lots};
use super::{Holding, Record};
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::MedicineName;
use crate::journal::entry::EntryId;
use crate::journal::event::{Administration, Event, Removal};

impl Holding {
    pub(super) fn check_administration(&self, on: Day, body: &Administration, look: Look) -> Checked {
        if body.given.is_empty() {
            return Err(Refusal::at("/body/given", Courses::NothingIsGiven));
        }
        check_days("/body/withdrawal_days", body.withdrawal_days)?;
        let mut medicine: Option<&MedicineName> = None;
        for (index, given) in body.given.iter().enumerate() {
            let at = |field: &str| format!("/body/given/{index}/{field}");
            check_amount(&at("each"), given.each)?;
            self.check_lot_in_hand(&at("lot"), &given.lot, on)?;
            self.check_unit_of_lot(&at("unit"), &given.lot, given.unit)?;
            self.check_colonies(&at("colonies"), &given.colonies, on)?;
            let of = self.lot(&given.lot).map(|(_, lot)| lot.medicine);
            if let (Some(one), Some(other)) = (medicine, of)
                && one != other
            {
                let (medicine, other) = (other.clone(), one.clone());
                let why = Courses::TwoMedicines { lot: given.lot.clone(), medicine, other };
                return Err(Refusal::at(at("lot"), why));
            }
            medicine = medicine.or(of);
            let together: Quantity = body
                .given
                .iter()
                .filter(|other| other.lot == given.lot)
                .fold(Quantity::ZERO, |sum, other| sum.plus(other.total()));
            self.check_left(&at("each"), &given.lot, together, body.count_corrected || look == Look::Again)?;
        }
        if let Some(prescription) = &body.prescription {
            let known = self.prescription(prescription).map(|(_, body)| &body.medicine);
            let (pointer, prescription) = ("/body/prescription", prescription.clone());
            let Some(of) = known else {
                return Err(Refusal::at(pointer, Lots::NoSuchPrescription { prescription }));
            };
            if medicine.is_some_and(|given| given != of) {
                let why = Courses::PrescriptionOfOther { prescription, medicine: of.clone() };
                return Err(Refusal::at(pointer, why));
            }
        }
        body.continues.map_or(Ok(()), |first| self.check_continued(on, body, first, medicine))
    }

    fn check_continued(
        &self,
        on: Day,
        body: &Administration,
        first: EntryId,
        medicine: Option<&MedicineName>,
    ) -> Checked {
        let pointer = "/body/continues";
        let (record, given) = self.first_dose(pointer, first)?;
        let of = given.given.first().and_then(|given| self.lot(&given.lot)).map(|(_, lot)| lot.medicine);
        if of != medicine {
            return Err(Refusal::at(pointer, Courses::FirstDoseOfOtherMedicine { first }));
        }
        if on < record.on {
            return Err(Refusal::at("/on", Courses::BeforeFirstDose { first: record.on, on }));
        }
        for (index, given) in body.given.iter().enumerate() {
            for (place, colony) in given.colonies.iter().enumerate() {
                if !self.course_reached(colony, record, on) {
                    let pointer = format!("/body/given/{index}/colonies/{place}");
                    let colony = colony.clone();
                    return Err(Refusal::at(pointer, Courses::NotGivenFirstDose { colony }));
                }
                if let Some(out) = self.cleared(colony, record).filter(|out| out.on < on) {
                    let (colony, out) = (colony.clone(), out.on);
                    return Err(Refusal::at("/on", Courses::TakenOutBefore { colony, out }));
                }
            }
        }
        Ok(())
    }

    pub(super) fn check_removal(&self, on: Day, body: &Removal, look: Look) -> Checked {
        let (record, _) = self.first_dose("/body/administration", body.administration)?;
        if on < record.on {
            return Err(Refusal::at("/on", Courses::OutBeforePlaced { placed: record.on, on }));
        }
        self.check_colonies("/body/colonies", &body.colonies, on)?;
        for (index, colony) in body.colonies.iter().enumerate() {
            let pointer = format!("/body/colonies/{index}");
            if !self.course_reached(colony, record, on) {
                let (colony, administration) = (colony.clone(), body.administration);
                return Err(Refusal::at(pointer, Courses::NoPartInIt { colony, administration }));
            }
            // Accepted removals stay valid, whatever was removed or given since.
            if look == Look::Again {
                continue;
            }
            // On the day of a later dose, the previous carrier came out: the course goes on.
            let mut later_doses = self.later_doses(self.colony_file(colony), record.id);
            if later_doses.any(|dose| dose.on == on) {
                continue;
            }
            let cleared = self.cleared(colony, record);
            // Pieces may be left inside before it was cleared. A colony united into this one may bring the course back
            // between the two removals, whichever is recorded first.
            let stands = |out: &&Arc<Record>| {
                let (since, by) = (out.on.min(on), out.on.max(on));
                (body.left_inside == 0 || on > out.on) && !self.course_came_again(colony, record, since, by)
            };
            if let Some(out) = cleared.filter(stands) {
                let (colony, out) = (colony.clone(), out.on);
                return Err(Refusal::at(pointer, Courses::ClearedBefore { colony, out }));
            }
            // A dose may follow if pieces are left inside.
            let asked = body.left_inside == 0;
            let mut later_doses = self.later_doses(self.colony_file(colony), record.id);
            if let Some(dose) = later_doses.find(|dose| asked && dose.on > on) {
                let (colony, given) = (colony.clone(), dose.on);
                return Err(Refusal::at("/on", Courses::LaterDoseFollows { colony, given }));
            }
        }
        Ok(())
    }

    /// The administration behind an id, as corrected; it must be the first dose of its course.
    fn first_dose(&self, pointer: &str, id: EntryId) -> Result<(&Arc<Record>, &Administration), Refusal> {
        let standing = self.effective(id);
        let Some((record, Event::Administration(given))) = standing.map(|record| (record, &record.event))
        else {
            let entry = id;
            let why = match self.entry(id) {
                Some(_) if standing.is_none() => Courses::FirstDoseStruckOut { entry },
                Some(_) => Courses::FirstDoseOfOtherKind { entry },
                None => Courses::NoSuchFirstDose { entry },
            };
            return Err(Refusal::at(pointer, why));
        };
        match given.continues {
            Some(first) => Err(Refusal::at(pointer, Courses::LaterDoseNamed { entry: id, first })),
            None => Ok((record, given)),
        }
    }
}
