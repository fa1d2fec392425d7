//! Why doses and removals are refused.

use combclear_domain::facts::holding::untrue::Courses;

use crate::words::{Words, say};

pub(super) fn courses(words: &Words, why: &Courses) -> (String, String) {
    match why {
        Courses::NothingIsGiven => {
            (say!(words, RefusalNothingIsGiven), say!(words, RefusalNothingIsGivenHelp))
        }
        Courses::TwoMedicines { lot, medicine, other } => (
            say!(words, RefusalTwoMedicines, lot = lot, medicine = medicine, other = other),
            say!(words, RefusalTwoMedicinesHelp),
        ),
        Courses::PrescriptionOfOther { prescription, medicine } => (
            say!(words, RefusalPrescriptionOfOtherMedicine, prescription = prescription, medicine = medicine),
            say!(words, RefusalPrescriptionOfOtherMedicineHelp),
        ),
        Courses::WithItself => {
            (say!(words, RefusalDoseGoesOnWithItself), say!(words, RefusalDoseGoesOnWithItselfHelp))
        }
        Courses::FirstDoseStruckOut { entry } => {
            (say!(words, RefusalFirstDoseStruckOut, entry = entry), say!(words, RefusalFirstDoseHelp))
        }
        Courses::FirstDoseOfOtherKind { entry } => {
            (say!(words, RefusalFirstDoseOfOtherKind, entry = entry), say!(words, RefusalFirstDoseHelp))
        }
        Courses::NoSuchFirstDose { entry } => {
            (say!(words, RefusalNoSuchEntry, entry = entry), say!(words, RefusalFirstDoseHelp))
        }
        Courses::LaterDoseNamed { entry, first } => (
            say!(words, RefusalLaterDoseNamed, entry = entry, first = first),
            say!(words, RefusalLaterDoseNamedHelp, first = first),
        ),
        Courses::FirstDoseOfOtherMedicine { first } => (
            say!(words, RefusalFirstDoseOfOtherMedicine, first = first),
            say!(words, RefusalFirstDoseOfOtherMedicineHelp),
        ),
        Courses::BeforeFirstDose { first, on } => {
            (say!(words, RefusalBeforeFirstDose, first = first, on = on), say!(words, RefusalCheckDatesHelp))
        }
        Courses::NotGivenFirstDose { colony } => (
            say!(words, RefusalNotGivenFirstDose, colony = colony),
            say!(words, RefusalNotGivenFirstDoseHelp),
        ),
        Courses::TakenOutBefore { colony, out } => (
            say!(words, RefusalTakenOutBefore, colony = colony, out = out),
            say!(words, RefusalTakenOutBeforeHelp),
        ),
        Courses::OutBeforePlaced { placed, on } => (
            say!(words, RefusalOutBeforePlaced, placed = placed, on = on),
            say!(words, RefusalCheckDatesHelp),
        ),
        Courses::NoPartInIt { colony, administration } => (
            say!(words, RefusalNoPartInCourse, colony = colony, administration = administration),
            say!(words, RefusalNoPartInCourseHelp),
        ),
        Courses::ClearedBefore { colony, out } => (
            say!(words, RefusalClearedBefore, colony = colony, out = out),
            say!(words, RefusalClearedBeforeHelp),
        ),
        Courses::LaterDoseFollows { colony, given } => (
            say!(words, RefusalLaterDoseFollows, colony = colony, given = given),
            say!(words, RefusalCheckDatesHelp),
        ),
    }
}
