//! The only place that asks the machine for the time.

use combclear_domain::calendar::{Day, Instant};

/// This instant.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn now() -> Instant {
    Instant::new(chrono::Utc::now())
}

/// The civil date where this program runs, which is taken for the apiaries' own.
#[expect(clippy::disallowed_methods, reason = "the binary is where the clock comes in")]
pub(crate) fn today() -> Day {
    Day::in_range(chrono::Local::now().date_naive()).unwrap_or(Day::LAST)
}
