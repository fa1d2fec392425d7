//! What a reader should look at again. None of it is a gap in the record.

use super::lot::LotReport;

pub(super) fn of(lots: &[LotReport]) -> Vec<String> {
    let mut notes = Vec::new();
    for (index, lot) in lots.iter().enumerate() {
        let Some(batch) = &lot.batch else { continue };
        let same = |other: &&LotReport| other.medicine == lot.medicine && other.batch.as_ref() == Some(batch);
        // The pair is told once, at the later of the two.
        let earlier = lots.get(..index).unwrap_or_default().iter().rfind(same);
        if let Some(earlier) = earlier {
            notes.push(format!(
                "lots {} and {} of {} have one batch number, {batch}: bought twice, or written down twice?",
                earlier.lot, lot.lot, lot.pack_name
            ));
        }
    }
    for lot in lots.iter().filter(|lot| lot.expiry.is_none()) {
        notes.push(format!("lot {} of {} has no expiry date on record", lot.lot, lot.pack_name));
    }
    notes
}
