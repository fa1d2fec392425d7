//! The board of a holding, and one colony.

use combclear_domain::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};

super::sentences! {
    /// The heading of the board.
    TerminalSuperingBoard: board(holding: &HoldingName, day: &str);
    /// The number of colonies by answer.
    TerminalSuperingSums: sums(colonies: usize, yes: usize, no: usize, unknown: usize);
    /// The number of breaches on record.
    TerminalSuperingBreaches: breaches(breaches: usize);
    /// The heading of one colony.
    TerminalSuperingOne: one(colony: &ColonyName, day: &str, answer: &str);
    /// A first free day that depends on a removal.
    TerminalSuperingIfOut: if_out(day: &str, out: Day);
    /// The rule on a whole apiary, and the colonies left out.
    TerminalSuperingLeftOut: left_out(asks: &str, apiary: &ApiaryName, colonies: &str);
    /// The answer for a range of coming days.
    TerminalSuperingAhead: ahead(from: Day, to: Day, answer: &str);
}
