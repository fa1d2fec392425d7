//! What is missing from the record: texts around the gaps.

use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::questions::gaps::GapWeight;

use crate::{Label, Words};

super::sentences! {
    /// A kind of gap, and the places of its entries.
    TerminalGapsBrief: brief(what: &str, numbers: &str);
    /// A kind of gap with very many entries, and the places of the first.
    TerminalGapsOfMany: of_many(what: &str, count: usize, numbers: &str);
    /// The heading.
    TerminalGapsHead: head(holding: &HoldingName, from: Day, to: Day);
    /// A law that was checked, by its title.
    TerminalGapsByLaw: by_law(law: &str);
    /// How often one kind of advice was found.
    TerminalGapsTimes: times(count: usize, what: &str);
    /// The entries with that advice, by position.
    TerminalGapsEntries: entries(numbers: &str);
    /// How much more of a lot is gone than was acquired.
    TerminalGapsMoreGone: more_gone(amount: &str);
}

/// The heading of the gaps of one weight.
#[must_use]
pub fn head_of(words: &Words, weight: GapWeight) -> &str {
    words.label(match weight {
        GapWeight::Required => Label::GapsRequired,
        GapWeight::Irregular => Label::GapsIrregular,
        GapWeight::WhereApplicable => Label::GapsWhereApplicable,
        GapWeight::Advised => Label::GapsAdvised,
    })
}
