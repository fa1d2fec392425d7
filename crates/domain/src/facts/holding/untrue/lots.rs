use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{LotName, MedicineName, PrescriptionName, Unit};

untrue! {
    /// Why an entry about medicines, lots, prescriptions or amounts is refused.
    Lots {
        /// No medicine with this name is described.
        NoSuchMedicine = "no_such_medicine" {
            /// The name.
            medicine: MedicineName,
            /// A medicine with a similar name, if any.
            near: Option<MedicineName>,
        },
        /// The medicine is already described.
        MedicineIsDescribed = "medicine_is_described" {
            /// The medicine.
            medicine: MedicineName,
        },
        /// No lot has this name.
        NoSuchLot = "no_such_lot" {
            /// The name.
            lot: LotName,
            /// A lot with a similar name, if any.
            near: Option<LotName>,
        },
        /// A new lot has the name of another.
        LotNameIsTaken = "lot_name_is_taken" {
            /// The name.
            lot: LotName,
        },
        /// The lot is of a vet's own stock, which the keeper neither opens nor disposes of.
        OfVetsStock = "lot_of_vets_stock" {
            /// The lot.
            lot: LotName,
        },
        /// The lot was acquired later.
        NotYetAcquired = "lot_not_yet_acquired" {
            /// The lot.
            lot: LotName,
            /// The day it was acquired.
            acquired: Day,
            /// The day of the entry.
            on: Day,
        },
        /// More is taken from the lot than it held, and its stock account was not corrected after a count.
        MoreThanHeld = "more_than_lot_held" {
            /// The lot.
            lot: LotName,
            /// The quantity held.
            held: Quantity,
            /// The quantity taken in all.
            gone: Quantity,
        },
        /// The amount is zero.
        NoAmount = "no_amount",
        /// The amount is in another unit than its medicine.
        InOtherUnit = "in_other_unit" {
            /// The medicine.
            medicine: MedicineName,
            /// The unit of the amount.
            unit: Unit,
            /// The unit of the medicine.
            counted_in: Unit,
        },
        /// No prescription with this number is recorded.
        NoSuchPrescription = "no_such_prescription" {
            /// The number.
            prescription: PrescriptionName,
        },
        /// The prescription is already recorded.
        PrescriptionIsRecorded = "prescription_is_recorded" {
            /// The prescription.
            prescription: PrescriptionName,
        },
    }
}
