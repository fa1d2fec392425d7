//! Why entries about medicines, lots, prescriptions, amounts and documents are refused.

use combclear_domain::facts::holding::untrue::{Documents, Lots};

use super::did_you_mean;
use crate::words::{Words, say};

pub(super) fn lots(words: &Words, why: &Lots) -> (String, String) {
    match why {
        Lots::NoSuchMedicine { medicine, near } => (
            say!(words, RefusalNoSuchMedicine, medicine = medicine),
            did_you_mean(words, near.as_ref(), || say!(words, RefusalNoSuchMedicineHelp)),
        ),
        Lots::MedicineIsDescribed { medicine } => {
            (say!(words, RefusalMedicineIsDescribed, medicine = medicine), say!(words, RefusalCorrectItHelp))
        }
        Lots::NoSuchLot { lot, near } => (
            say!(words, RefusalNoSuchLot, lot = lot),
            did_you_mean(words, near.as_ref(), || say!(words, RefusalNoSuchLotHelp)),
        ),
        Lots::LotNameIsTaken { lot } => {
            (say!(words, RefusalLotNameIsTaken, lot = lot), say!(words, RefusalLotNameIsTakenHelp))
        }
        Lots::NotYetAcquired { lot, acquired, on } => (
            say!(words, RefusalLotNotYetAcquired, lot = lot, acquired = acquired, on = on),
            say!(words, RefusalCheckDatesHelp),
        ),
        Lots::OfVetsStock { lot } => {
            (say!(words, RefusalLotOfVetsStock, lot = lot), say!(words, RefusalLotOfVetsStockHelp))
        }
        Lots::MoreThanHeld { lot, held, gone } => (
            say!(words, RefusalMoreThanLotHeld, lot = lot, held = held, gone = gone),
            say!(words, RefusalMoreThanLotHeldHelp),
        ),
        Lots::NoAmount => (say!(words, RefusalNoAmount), say!(words, RefusalNoAmountHelp)),
        Lots::InOtherUnit { medicine, unit, counted_in } => {
            let counted = counted_in.as_str();
            (
                say!(words, RefusalInOtherUnit, medicine = medicine, unit = unit.as_str(), counted = counted),
                say!(words, RefusalInOtherUnitHelp, counted = counted),
            )
        }
        Lots::NoSuchPrescription { prescription } => (
            say!(words, RefusalNoSuchPrescription, prescription = prescription),
            say!(words, RefusalNoSuchPrescriptionHelp),
        ),
        Lots::PrescriptionIsRecorded { prescription } => (
            say!(words, RefusalPrescriptionIsRecorded, prescription = prescription),
            say!(words, RefusalCorrectItHelp),
        ),
    }
}

pub(super) fn documents(words: &Words, why: &Documents) -> (String, String) {
    match why {
        Documents::Empty => (say!(words, RefusalDocumentIsEmpty), say!(words, RefusalDocumentIsEmptyHelp)),
        Documents::TooLarge { bytes } => {
            (say!(words, RefusalDocumentTooLarge, bytes = *bytes), say!(words, RefusalDocumentTooLargeHelp))
        }
        Documents::BeforeItsSubject { from } => (
            say!(words, RefusalDocumentBeforeItsSubject, from = from),
            say!(words, RefusalDocumentBeforeItsSubjectHelp, from = from),
        ),
        Documents::OfNothing => {
            (say!(words, RefusalDocumentOfNothing), say!(words, RefusalDocumentOfNothingHelp))
        }
        Documents::OfTwoThings => {
            (say!(words, RefusalDocumentOfTwoThings), say!(words, RefusalDocumentOfTwoThingsHelp))
        }
    }
}
