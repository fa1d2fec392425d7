//! How long records must be kept: texts around the table.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;

super::sentences! {
    /// The heading.
    TerminalRetentionHead: head(holding: &HoldingName, day: &str);
    /// Nothing may be archived.
    TerminalRetentionNothing: nothing_could_go(day: Day);
    /// The records that may be archived, by their lots.
    TerminalRetentionCouldGo: could_go(sets: usize, day: Day, lots: &str);
}
