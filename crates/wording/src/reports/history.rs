//! What was written down of a colony, also what was corrected since.

use combclear_domain::basics::words::{ColonyName, HoldingName, Person};
use combclear_domain::facts::holding::{Holding, Record};
use combclear_domain::journal::EntryId;
use combclear_domain::journal::event::Event;
use combclear_domain::{Day, Instant};
use serde::Serialize;

use super::Unanswered;
use super::colonies::check_known;
use crate::Words;
use crate::recording::in_lines;

/// What was written down of a colony up to a day.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColonyHistory {
    /// The holding.
    holding: HoldingName,
    /// The colony.
    colony: ColonyName,
    /// The day asked about.
    on: Day,
    /// The entries that name it, the latest day first.
    items: Vec<HistoryItem>,
}

/// An entry that names a colony.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct HistoryItem {
    /// Its id.
    entry: EntryId,
    /// Its place in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    seq: u64,
    /// The day on which it happened.
    on: Day,
    /// When it was recorded.
    recorded_at: Instant,
    /// Who recorded it.
    recorded_by: Person,
    /// What it says, in a line.
    line: String,
    /// The entry that took its place. Null if it stands.
    superseded: Option<Superseded>,
}

/// The entry that took the place of another.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct Superseded {
    /// Its place in the journal.
    #[cfg_attr(feature = "openapi", schema(minimum = 1, maximum = 9_007_199_254_740_991i64))]
    by: u64,
    /// Whether it only strikes the other out: what that says did not happen.
    struck_out: bool,
    /// Why, in the words of whoever did it.
    reason: String,
}

impl ColonyHistory {
    /// What was written down of events up to a day.
    ///
    /// # Errors
    /// No standing entry mentions the colony.
    pub fn of(
        words: &Words,
        holding: &Holding,
        colony: &ColonyName,
        on: Day,
    ) -> Result<ColonyHistory, Unanswered> {
        check_known(words, holding, colony)?;
        let by_then = holding.entries_about(colony).into_iter().filter(|record| record.on <= on);
        let items = by_then.map(|record| HistoryItem::of(words, holding, record)).collect();
        Ok(ColonyHistory { holding: holding.name().clone(), colony: colony.clone(), on, items })
    }
}

impl HistoryItem {
    fn of(words: &Words, holding: &Holding, record: &Record) -> HistoryItem {
        let lines = in_lines(words, holding, record.on, std::slice::from_ref(&record.event));
        let by = holding.superseded_by(record.id).and_then(|by| holding.entry(by));
        let superseded = by.map(|by| Superseded {
            by: by.seq,
            struck_out: matches!(by.event, Event::StrikeOut(_)),
            reason: by.correction.as_ref().map(|correction| correction.reason.clone()).unwrap_or_default(),
        });
        HistoryItem {
            entry: record.id,
            seq: record.seq,
            on: record.on,
            recorded_at: record.recorded_at,
            recorded_by: record.recorded_by.clone(),
            line: lines.join("; "),
            superseded,
        }
    }
}
