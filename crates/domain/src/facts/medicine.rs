//! Which medicine was given: that of its lot.

use super::holding::Holding;
use crate::basics::fact::Fact;
use crate::basics::words::{LotName, MedicineName};
use crate::journal::event::Administration;

/// The record that would tell which medicine it was.
///
/// No accepted journal lacks one: an entry with such a name is refused, and neither a correction nor an archive step
/// can take away what another entry rests on. A journal changed outside this program may lack one, and its courses and
/// rows are told all the same.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotOnRecord {
    /// No entry acquired the lot.
    Lot,
    /// No entry gave the first dose.
    FirstDose,
}

/// A medicine by the keeper's name, or the record that would tell which one it is.
pub type MedicineGiven = Fact<MedicineName, NotOnRecord>;

impl Holding {
    /// The medicine of a lot.
    pub(crate) fn medicine_of_lot(&self, lot: &LotName) -> MedicineGiven {
        let acquired = self.lot(lot).map(|(_, lot)| lot.medicine.clone());
        Fact::stated(acquired, NotOnRecord::Lot)
    }

    /// The medicine of an administration: all its lots share one.
    pub(crate) fn medicine_given(&self, given: &Administration) -> MedicineGiven {
        match given.given.first() {
            Some(part) => self.medicine_of_lot(&part.lot),
            None => Fact::NotKnown(NotOnRecord::Lot),
        }
    }
}
