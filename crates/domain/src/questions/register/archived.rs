//! Archived entries of the register's period: the register names their archives, so that nothing disappears silently. Those
//! that were read back from their file are in the register, and are not counted here.

use super::View;
use super::rows::{ArchivedPart, Written};
use crate::journal::event::Event;

/// The archives with entries of the period, in the order they were made.
pub(super) fn parts(view: &View<'_>) -> Vec<ArchivedPart> {
    let archives = view.holding.archives();
    if archives.is_empty() {
        return Vec::new();
    }
    let records = view.holding.in_order();
    let parts = archives.into_iter().filter_map(|(step, body)| {
        let moved = records
            .iter()
            .filter(|record| body.places.contains(record.seq) && view.period.holds(record.on))
            .filter(|record| matches!(record.event, Event::InArchive(_)))
            .count();
        let entries = u64::try_from(moved).unwrap_or(u64::MAX);
        let written = || Written::of(view.holding, step);
        (entries > 0).then(|| ArchivedPart {
            written: written(),
            through: body.through,
            entries,
            file: body.file,
        })
    });
    parts.collect()
}
