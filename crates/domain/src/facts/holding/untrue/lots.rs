use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::quantity::Quantity;
use crate::basics::words::{LotName, MedicineName, PrescriptionName, Unit};

untrue! {
    /// What cannot be true of medicines, lots, prescriptions and amounts.
    Lots {
        /// No medicine of this name is described.
        NoSuchMedicine = "no_such_medicine" {
            /// The name.
            medicine: MedicineName,
            /// A medicine whose name is written much like it.
            near: Option<MedicineName>,
        },
        /// The medicine is described already.
        MedicineIsDescribed = "medicine_is_described" {
            /// The medicine.
            medicine: MedicineName,
        },
        /// No lot has this name.
        NoSuchLot = "no_such_lot" {
            /// The name.
            lot: LotName,
            /// A lot whose name is written much like it.
            near: Option<LotName>,
        },
        /// A new lot would have the name of another.
        LotNameIsTaken = "lot_name_is_taken" {
            /// The name.
            lot: LotName,
        },
        /// The lot was acquired later.
        NotYetAcquired = "lot_not_yet_acquired" {
            /// The lot.
            lot: LotName,
            /// The day on which it was acquired.
            acquired: Day,
            /// The day of the entry.
            on: Day,
        },
        /// More would be gone from the lot than it held, and nobody said that its count was corrected.
        MoreThanHeld = "more_than_lot_held" {
            /// The lot.
            lot: LotName,
            /// What it held.
            held: Quantity,
            /// What would be gone.
            gone: Quantity,
        },
        /// The amount is zero.
        NoAmount = "no_amount",
        /// The amount is not in the unit of its medicine.
        InOtherUnit = "in_other_unit" {
            /// The medicine.
            medicine: MedicineName,
            /// The unit of the amount.
            unit: Unit,
            /// The unit of the medicine.
            counted_in: Unit,
        },
        /// No prescription of this number is recorded.
        NoSuchPrescription = "no_such_prescription" {
            /// The number.
            prescription: PrescriptionName,
        },
        /// The prescription is recorded already.
        PrescriptionIsRecorded = "prescription_is_recorded" {
            /// The prescription.
            prescription: PrescriptionName,
        },
    }
}
