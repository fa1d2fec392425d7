//! How long records must be kept, around the table.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;

super::sentences! {
    /// The head.
    TerminalRetentionHead: head(holding: &HoldingName, day: &str);
    /// That nothing could go.
    TerminalRetentionNothing: nothing_could_go(day: Day);
    /// What could go, by its lots.
    TerminalRetentionCouldGo: could_go(stories: usize, day: Day, lots: &str);
}
