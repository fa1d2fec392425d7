//! The only place that reads the clock and makes new ids.

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::journal::EntryId;

/// The current instant.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn now() -> Instant {
    Instant::new(chrono::Utc::now())
}

/// A new id for an entry made here.
#[expect(clippy::disallowed_methods, reason = "the binary is the writer of the entries that it makes")]
pub(crate) fn new_id() -> EntryId {
    EntryId(uuid::Uuid::now_v7())
}

/// The civil date on this machine, which is taken as the apiaries' own.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn today() -> Day {
    Day::in_range(chrono::Local::now().date_naive()).unwrap_or(Day::LAST)
}
