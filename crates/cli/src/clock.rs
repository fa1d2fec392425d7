//! The only place that reads the clock and makes new ids.

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_wording::terminal::failures as say;
use combclear_wording::{Label, Words};

use crate::failure::Said;
use crate::layout;

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

/// Warns if the clock is behind an entry of the holding: a strip that is in since yesterday is not in by the clock of last month.
/// It is not refused, since the clock may have been ahead when the entry was recorded, and the keeper must go on.
pub(crate) fn doubt(holding: &Holding) {
    let (words, today) = (Words::english(), today());
    if let Some(entry) = holding.recorded_after(today) {
        let said = say::warning(words, &say::clock_is_behind(words, today, entry.seq, entry.recorded_at));
        let help = say::help(words, &Label::ClockIsBehindHelp.said());
        layout::tell(&format!("{said}\n  {help}"));
    }
}
