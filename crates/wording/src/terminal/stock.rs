//! Lots, disposals and needs, around their tables.

use combclear_domain::basics::words::{HoldingName, LotName};
use combclear_domain::journal::EntryId;

super::sentences! {
    /// The head.
    TerminalStockHead: head(holding: &HoldingName, day: &str);
    /// The head of what one course of all colonies takes.
    TerminalStockCourse: course(colonies: usize);
    /// The entry that took more than was left.
    TerminalStockTakenBy: taken_by(entry: &EntryId);
    /// What is to be disposed of, and why.
    TerminalStockDispose: dispose(amount: &str, pack: &str, lot: &LotName, why: &str);
    /// The same where nothing but the lot is known.
    TerminalStockDisposeLot: dispose_lot(lot: &LotName, why: &str);
    /// What the leaflet says of a disposal.
    TerminalStockLeafletSays: leaflet_says(says: &str, confidence: &str, sources: &str);
    /// How many doses.
    TerminalStockDoses: doses(doses: u8);
    /// What is not known of some colonies.
    TerminalStockNotKnown: not_known(colonies: &str, gap: &str);
    /// A few names, and how many more.
    TerminalStockAndMore: and_more(names: &str, more: usize);
}
