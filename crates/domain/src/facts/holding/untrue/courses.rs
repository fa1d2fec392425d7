use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::{ColonyName, LotName, MedicineName, PrescriptionName};
use crate::journal::entry::EntryId;

untrue! {
    /// Why a dose or removal is refused.
    Courses {
        /// Nothing is given.
        NothingIsGiven = "nothing_is_given",
        /// One entry gives two medicines.
        TwoMedicines = "two_medicines" {
            /// The lot of the second medicine.
            lot: LotName,
            /// The second medicine.
            medicine: MedicineName,
            /// The first medicine.
            other: MedicineName,
        },
        /// The prescription is for another medicine.
        PrescriptionOfOther = "prescription_of_other_medicine" {
            /// The prescription.
            prescription: PrescriptionName,
            /// Its medicine.
            medicine: MedicineName,
        },
        /// A dose cannot continue itself.
        WithItself = "dose_goes_on_with_itself",
        /// The entry named as first dose was struck out.
        FirstDoseStruckOut = "first_dose_struck_out" {
            /// The entry named.
            entry: EntryId,
        },
        /// The entry named as first dose is not an administration.
        FirstDoseOfOtherKind = "first_dose_of_other_kind" {
            /// The entry named.
            entry: EntryId,
        },
        /// The entry named as first dose is not in the journal.
        NoSuchFirstDose = "no_such_first_dose" {
            /// The entry named.
            entry: EntryId,
        },
        /// The entry named as first dose is itself a later dose.
        LaterDoseNamed = "later_dose_named" {
            /// The entry named.
            entry: EntryId,
            /// The first dose of that course.
            first: EntryId,
        },
        /// The first dose is of another medicine.
        FirstDoseOfOtherMedicine = "first_dose_of_other_medicine" {
            /// The first dose.
            first: EntryId,
        },
        /// A later dose is dated before the first.
        BeforeFirstDose = "before_first_dose" {
            /// The day of the first dose.
            first: Day,
            /// The day of the later dose.
            on: Day,
        },
        /// A later dose is given to a colony that did not get the first.
        NotGivenFirstDose = "not_given_first_dose" {
            /// The colony.
            colony: ColonyName,
        },
        /// A later dose is given after the course was taken out.
        TakenOutBefore = "taken_out_before" {
            /// The colony.
            colony: ColonyName,
            /// The day it was taken out.
            out: Day,
        },
        /// It comes out before it was placed.
        OutBeforePlaced = "out_before_placed" {
            /// The day it was placed.
            placed: Day,
            /// The day of the removal.
            on: Day,
        },
        /// It comes out of a colony that never had it.
        NoPartInIt = "no_part_in_course" {
            /// The colony.
            colony: ColonyName,
            /// The dose named.
            administration: EntryId,
        },
        /// It comes out of a colony that was already cleared of it.
        ClearedBefore = "cleared_before" {
            /// The colony.
            colony: ColonyName,
            /// The day it was cleared.
            out: Day,
        },
        /// All of it comes out, but a later dose was given afterwards.
        LaterDoseFollows = "later_dose_follows" {
            /// The colony.
            colony: ColonyName,
            /// The day of the later dose.
            given: Day,
        },
    }
}
