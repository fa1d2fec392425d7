//! Checks of documents, units and mite counts.

use super::Holding;
use super::check::{Checked, Look};
use super::refusal::Refusal;
use super::untrue::{Counts, Documents, Lots};
use crate::basics::calendar::Day;
use crate::basics::words::{CountMethod, LotName, MedicineName, Unit};
use crate::journal::document::DOCUMENT_MOST;
use crate::journal::event::{DocumentAttached, MiteCount};

impl Holding {
    /// Checks that a document belongs to exactly one recorded lot or prescription, not before its day, and is neither empty
    /// nor too large.
    pub(super) fn check_document(&self, on: Day, body: &DocumentAttached, look: Look) -> Checked {
        if body.bytes == 0 {
            return Err(Refusal::at("/body/bytes", Documents::Empty));
        }
        if body.bytes > DOCUMENT_MOST {
            return Err(Refusal::at("/body/bytes", Documents::TooLarge { bytes: body.bytes }));
        }
        match (&body.lot, &body.prescription) {
            (Some(lot), None) => {
                self.check_lot("/body/lot", lot)?;
                not_before(on, self.lot(lot).map(|(record, _)| record.on), look)
            }
            (None, Some(prescription)) => {
                let Some((record, _)) = self.prescription(prescription) else {
                    let prescription = prescription.clone();
                    return Err(Refusal::at("/body/prescription", Lots::NoSuchPrescription { prescription }));
                };
                not_before(on, Some(record.on), look)
            }
            (None, None) => Err(Refusal::at("/body", Documents::OfNothing)),
            (Some(_), Some(_)) => Err(Refusal::at("/body/prescription", Documents::OfTwoThings)),
        }
    }

    /// Checks that an amount is in the unit of its medicine, if a unit is given.
    pub(super) fn check_unit(&self, pointer: &str, medicine: &MedicineName, unit: Option<Unit>) -> Checked {
        let counted_in = self.medicine(medicine).map(|(_, described)| described.unit);
        match (unit, counted_in) {
            (Some(unit), Some(counted_in)) if unit != counted_in => {
                let medicine = medicine.clone();
                Err(Refusal::at(pointer, Lots::InOtherUnit { medicine, unit, counted_in }))
            }
            _ => Ok(()),
        }
    }

    /// Checks that an amount from a lot is in the unit of its medicine, if a unit is given.
    pub(super) fn check_unit_of_lot(&self, pointer: &str, lot: &LotName, unit: Option<Unit>) -> Checked {
        self.lot(lot).map_or(Ok(()), |(_, lot)| self.check_unit(pointer, lot.medicine, unit))
    }
}

/// Checks that nothing is attached before what it is attached to. Older journals may hold such an entry, so it is only refused
/// when it is new.
fn not_before(on: Day, begins: Option<Day>, look: Look) -> Checked {
    match (begins, look) {
        (Some(from), Look::First) if on < from => {
            Err(Refusal::at("/on", Documents::BeforeItsSubject { from }))
        }
        (_, Look::First | Look::Sealed | Look::Again) => Ok(()),
    }
}

/// Checks that a count has only the fields of its method, and counts something.
pub(super) fn check_count(body: &MiteCount) -> Checked {
    let sizes = [
        ("days", body.days.map(u32::from), CountMethod::NaturalFall, None),
        ("bees", body.bees, CountMethod::Wash, Some(CountMethod::SugarRoll)),
        ("cells", body.cells, CountMethod::OpenedBrood, None),
    ];
    for (field, size, method, or) in sizes {
        let Some(size) = size else { continue };
        let pointer = format!("/body/{field}");
        if size == 0 {
            return Err(Refusal::at(pointer, Counts::OverNone { field }));
        }
        if body.method != method && Some(body.method) != or {
            return Err(Refusal::at(pointer, Counts::NotOfMethod { field, method: body.method }));
        }
    }
    match body.cells {
        Some(cells) if body.mites > cells => {
            Err(Refusal::at("/body/mites", Counts::MoreThanCells { mites: body.mites, cells }))
        }
        _ => Ok(()),
    }
}
