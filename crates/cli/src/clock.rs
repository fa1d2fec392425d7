//! The only place that asks the machine for the time, and for new ids.

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::journal::EntryId;

/// This instant.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn now() -> Instant {
    Instant::new(chrono::Utc::now())
}

/// A new id for an entry that is made here.
#[expect(clippy::disallowed_methods, reason = "the binary is the writer of the entries that it makes")]
pub(crate) fn new_id() -> EntryId {
    EntryId(uuid::Uuid::now_v7())
}

/// The civil date where this program runs, which is taken for the apiaries' own.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn today() -> Day {
    Day::in_range(chrono::Local::now().date_naive()).unwrap_or(Day::LAST)
}
