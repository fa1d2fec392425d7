use super::untrue;
use crate::basics::calendar::Day;
use crate::basics::words::{ColonyName, LotName, MedicineName, PrescriptionName};
use crate::journal::entry::EntryId;

untrue! {
    /// What cannot be true of doses and removals.
    Courses {
        /// Nothing is given.
        NothingIsGiven = "nothing_is_given",
        /// One entry would give two medicines.
        TwoMedicines = "two_medicines" {
            /// The lot of the second.
            lot: LotName,
            /// The second.
            medicine: MedicineName,
            /// The first.
            other: MedicineName,
        },
        /// The prescription is one of another medicine.
        PrescriptionOfOther = "prescription_of_other_medicine" {
            /// The prescription.
            prescription: PrescriptionName,
            /// Its medicine.
            medicine: MedicineName,
        },
        /// A dose would go on with itself.
        WithItself = "dose_goes_on_with_itself",
        /// The entry that is named as first dose was struck out.
        FirstDoseStruckOut = "first_dose_struck_out" {
            /// What is named.
            entry: EntryId,
        },
        /// The entry that is named as first dose is not an administration.
        FirstDoseOfOtherKind = "first_dose_of_other_kind" {
            /// What is named.
            entry: EntryId,
        },
        /// The entry that is named as first dose is not in the journal.
        NoSuchFirstDose = "no_such_first_dose" {
            /// What is named.
            entry: EntryId,
        },
        /// The entry that is named as first dose is a later one.
        LaterDoseNamed = "later_dose_named" {
            /// What is named.
            entry: EntryId,
            /// The first dose of its course.
            first: EntryId,
        },
        /// The first dose was one of another medicine.
        FirstDoseOfOtherMedicine = "first_dose_of_other_medicine" {
            /// The first dose.
            first: EntryId,
        },
        /// A later dose would be given before the first.
        BeforeFirstDose = "before_first_dose" {
            /// The day of the first dose.
            first: Day,
            /// The day of the later dose.
            on: Day,
        },
        /// A later dose would be given to a colony that was not given the first.
        NotGivenFirstDose = "not_given_first_dose" {
            /// The colony.
            colony: ColonyName,
        },
        /// A later dose would be given after the course was taken out.
        TakenOutBefore = "taken_out_before" {
            /// The colony.
            colony: ColonyName,
            /// The day on which it was taken out.
            out: Day,
        },
        /// It would come out before it was placed.
        OutBeforePlaced = "out_before_placed" {
            /// The day on which it was placed.
            placed: Day,
            /// The day on which it would come out.
            on: Day,
        },
        /// It would come out of a colony in which it never was.
        NoPartInIt = "no_part_in_course" {
            /// The colony.
            colony: ColonyName,
            /// The dose that is named.
            administration: EntryId,
        },
        /// It would come out of a colony that was cleared of it before.
        ClearedBefore = "cleared_before" {
            /// The colony.
            colony: ColonyName,
            /// The day on which it was cleared.
            out: Day,
        },
        /// All of it would come out, yet a later dose was given afterwards.
        LaterDoseFollows = "later_dose_follows" {
            /// The colony.
            colony: ColonyName,
            /// The day of the later dose.
            given: Day,
        },
    }
}
