//! Entries copied from a paper register: no gap, but the paper is the record that was made at the time.

use std::collections::BTreeMap;

use serde::Serialize;

use crate::basics::calendar::Day;
use crate::questions::register::Register;

/// Entries copied from one record on paper, which is kept as long as they are.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct CopiedEntries {
    /// What they were copied from.
    pub what: String,
    /// Their number.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    pub entries: usize,
    /// The first day on which one of them was written there.
    pub first: Day,
    /// The last such day.
    pub last: Day,
    /// The first day on which one of them was entered here.
    pub entered_first: Day,
    /// The last such day.
    pub entered_last: Day,
}

/// The rows of a register that were copied, by what they were copied from. A corrected entry counts once.
#[must_use]
pub fn copied_entries(register: &Register) -> Vec<CopiedEntries> {
    let mut found: BTreeMap<&str, CopiedEntries> = BTreeMap::new();
    for written in register.standing() {
        let Some(copied) = &written.copied_from else { continue };
        let (on, entered) = (copied.written_on, written.first_recorded_at.earliest_civil_date());
        let none = || CopiedEntries {
            what: copied.what.clone(),
            entries: 0,
            first: on,
            last: on,
            entered_first: entered,
            entered_last: entered,
        };
        let entries = found.entry(&copied.what).or_insert_with(none);
        entries.entries = entries.entries.saturating_add(1);
        entries.first = on.min(entries.first);
        entries.last = on.max(entries.last);
        entries.entered_first = entered.min(entries.entered_first);
        entries.entered_last = entered.max(entries.entered_last);
    }
    found.into_values().collect()
}
