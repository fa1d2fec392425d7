//! What cannot be true of documents, units and counts of mites.

use super::Holding;
use super::check::{Checked, Refusal};
use crate::basics::words::{CountMethod, LotName, MedicineName, Unit};
use crate::journal::document::DOCUMENT_MOST;
use crate::journal::event::{DocumentAttached, MiteCount};

impl Holding {
    /// That a document belongs to one thing that is on record, and is neither empty nor too long.
    pub(super) fn check_document(&self, body: &DocumentAttached) -> Checked {
        if body.bytes == 0 {
            return Err(Refusal::at("/body/bytes", "the document is empty", "attach the file itself"));
        }
        if body.bytes > DOCUMENT_MOST {
            let message = format!("the document has {} bytes; 10 MB are the most that is kept", body.bytes);
            let help = "scan it with fewer dots, or photograph it smaller";
            return Err(Refusal::at("/body/bytes", message, help));
        }
        match (&body.lot, &body.prescription) {
            (Some(lot), None) => self.check_lot("/body/lot", lot),
            (None, Some(prescription)) if self.prescription(prescription).is_some() => Ok(()),
            (None, Some(prescription)) => {
                let message = format!("no prescription `{prescription}` is recorded");
                Err(Refusal::at("/body/prescription", message, "record the prescription first"))
            }
            (None, None) => {
                let help = "name the lot whose purchase it proves, or the prescription it is a copy of";
                Err(Refusal::at("/body", "the document belongs to nothing", help))
            }
            (Some(_), Some(_)) => {
                let help = "name one of them, and attach it to the other in an entry of its own";
                Err(Refusal::at("/body/prescription", "a lot and a prescription are named", help))
            }
        }
    }

    /// That an amount is in the unit of its medicine, if a unit is given at all.
    pub(super) fn check_unit(&self, pointer: &str, medicine: &MedicineName, unit: Option<Unit>) -> Checked {
        let counted_in = self.medicine(medicine).map(|(_, described)| described.unit);
        match (unit, counted_in) {
            (Some(unit), Some(counted_in)) if unit != counted_in => {
                let message =
                    format!("the amount is given in `{unit}`, but `{medicine}` is counted in `{counted_in}`");
                let help = format!("convert the amount to `{counted_in}`");
                Err(Refusal::at(pointer, message, help))
            }
            _ => Ok(()),
        }
    }

    /// The same for an amount out of a lot.
    pub(super) fn check_unit_of_lot(&self, pointer: &str, lot: &LotName, unit: Option<Unit>) -> Checked {
        self.lot(lot).map_or(Ok(()), |(_, lot)| self.check_unit(pointer, &lot.medicine, unit))
    }
}

/// That a count says only what its method counts, and counts something.
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
            let message = format!("nothing is counted over 0 {field}");
            return Err(Refusal::at(&pointer, message, "write how many, or leave it out if nobody counted"));
        }
        if body.method != method && Some(body.method) != or {
            let message = format!("`{field}` does not belong to a count by `{}`", body.method);
            return Err(Refusal::at(&pointer, message, "leave it out, or correct the method"));
        }
    }
    match body.cells {
        Some(cells) if body.mites > cells => {
            let message = format!("{} of {cells} cells would be infested", body.mites);
            Err(Refusal::at("/body/mites", message, "count the infested cells, not the mites in them"))
        }
        _ => Ok(()),
    }
}
