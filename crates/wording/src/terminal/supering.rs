//! The board of a holding, and one colony.

use combclear_domain::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};

super::sentences! {
    /// The head of the board.
    TerminalSuperingBoard: board(holding: &HoldingName, day: &str);
    /// How many colonies have which answer.
    TerminalSuperingSums: sums(colonies: usize, yes: usize, no: usize, unknown: usize);
    /// How many breaches stand.
    TerminalSuperingBreaches: breaches(breaches: usize);
    /// The head of one colony.
    TerminalSuperingOne: one(colony: &ColonyName, day: &str, answer: &str);
    /// A first free day that turns on a removal.
    TerminalSuperingIfOut: if_out(day: &str, out: Day);
    /// What is asked of a whole apiary, and the colonies that were left out.
    TerminalSuperingLeftOut: left_out(asks: &str, apiary: &ApiaryName, colonies: &str);
    /// The answer of some days ahead.
    TerminalSuperingAhead: ahead(from: Day, to: Day, answer: &str);
}
