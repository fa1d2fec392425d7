//! The board of a holding, and one colony.

use combclear_domain::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};

use crate::{Label, Words};

super::sentences! {
    /// The next step of a group of colonies.
    TerminalSuperingNext: next(next: &str);
    /// The colonies with breaches on record.
    TerminalSuperingBreachesIn: breaches_in(colonies: &str);
    /// How to see all the grounds of a colony.
    TerminalSuperingMore: more(colony: &ColonyName);
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

/// The heading above colonies with this answer.
#[must_use]
pub fn answer(words: &Words, answer: Verdict) -> &str {
    words.label(match answer {
        Verdict::Yes => Label::SuperingMay,
        Verdict::No => Label::SuperingMayNot,
        Verdict::Unknown => Label::SuperingNotKnown,
    })
}
