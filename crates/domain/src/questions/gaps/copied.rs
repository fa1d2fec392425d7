//! Entries copied from a paper register: no gap, but the paper is the record that was made at the time.

use std::collections::{BTreeMap, BTreeSet};

use crate::basics::calendar::Day;
use crate::journal::entry::EntryId;
use crate::questions::register::Register;

/// Entries copied from one record on paper.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CopiedEntries {
    /// What they were copied from.
    pub what: String,
    /// Their number.
    pub entries: usize,
    /// The first day on which one of them was written there.
    pub first: Day,
    /// The last such day.
    pub last: Day,
}

/// The rows of a register that were copied, by what they were copied from.
pub(super) fn of(register: &Register) -> Vec<CopiedEntries> {
    let mut found: BTreeMap<&str, (BTreeSet<EntryId>, Day, Day)> = BTreeMap::new();
    for written in register.written() {
        let Some(copied) = &written.copied_from else { continue };
        let on = copied.written_on;
        let (entries, first, last) = found.entry(&copied.what).or_insert_with(|| (BTreeSet::new(), on, on));
        entries.insert(written.entry);
        *first = on.min(*first);
        *last = on.max(*last);
    }
    let copied = |(what, (entries, first, last)): (&str, (BTreeSet<EntryId>, Day, Day))| CopiedEntries {
        what: what.to_owned(),
        entries: entries.len(),
        first,
        last,
    };
    found.into_iter().map(copied).collect()
}
