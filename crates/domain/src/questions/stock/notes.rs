//! Points to check again. None of them is a gap in the record.

use super::lot::Lot;
use crate::basics::words::LotName;

/// Something to check again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Note {
    /// Two lots of one medicine have the same batch number: acquired twice, or recorded twice.
    SameBatch {
        /// The earlier of the two.
        earlier: LotName,
        /// The later of the two.
        later: LotName,
        /// The name on the pack.
        pack_name: String,
        /// The batch number as printed.
        batch: String,
    },
    /// A lot has no expiry date on record.
    NoExpiry {
        /// The lot.
        lot: LotName,
        /// The name on the pack.
        pack_name: String,
    },
}

pub(super) fn of(lots: &[Lot]) -> Vec<Note> {
    let mut notes = Vec::new();
    for (index, lot) in lots.iter().enumerate() {
        let Some(batch) = &lot.batch else { continue };
        let same = |other: &&Lot| other.medicine == lot.medicine && other.batch.as_ref() == Some(batch);
        // Each pair is reported once, at the later lot.
        let earlier = lots.get(..index).unwrap_or_default().iter().rfind(same);
        if let Some(earlier) = earlier {
            notes.push(Note::SameBatch {
                earlier: earlier.lot.clone(),
                later: lot.lot.clone(),
                pack_name: lot.pack_name.clone(),
                batch: batch.clone(),
            });
        }
    }
    for lot in lots.iter().filter(|lot| lot.expiry.is_none()) {
        notes.push(Note::NoExpiry { lot: lot.lot.clone(), pack_name: lot.pack_name.clone() });
    }
    notes
}
