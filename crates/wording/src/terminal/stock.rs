//! Lots, disposals and needs: texts around their tables.

use combclear_domain::basics::words::{HoldingName, LotName};
use combclear_domain::journal::EntryId;

super::sentences! {
    /// Lots of which nothing is left.
    TerminalStockEmpty: empty(lots: &str);
    /// A medicine of which there is too little for one course.
    TerminalStockShort: short(medicine: &str, short: &str);
    /// Medicines of which there is enough.
    TerminalStockEnough: enough(medicines: &str);
    /// A lot to dispose of.
    TerminalStockDisposeBrief: dispose_brief(amount: &str, pack: &str, lot: &LotName);
    /// A medicine of which the amount needed is not known.
    TerminalStockNeedNotKnown: need_not_known(medicine: &str);
    /// The heading.
    TerminalStockHead: head(holding: &HoldingName, day: &str);
    /// The heading of the amounts for one course of all colonies.
    TerminalStockCourse: course(colonies: usize);
    /// The entry that took more than was left.
    TerminalStockTakenBy: taken_by(entry: &EntryId);
    /// A lot to dispose of, and why.
    TerminalStockDispose: dispose(amount: &str, pack: &str, lot: &LotName, why: &str);
    /// The same if only the lot is known.
    TerminalStockDisposeLot: dispose_lot(lot: &LotName, why: &str);
    /// The leaflet's rule on disposal.
    TerminalStockLeafletSays: leaflet_says(says: &str, confidence: &str, sources: &str);
    /// The number of doses.
    TerminalStockDoses: doses(doses: u8);
    /// A missing fact about some colonies.
    TerminalStockNotKnown: not_known(colonies: &str, gap: &str);
}
