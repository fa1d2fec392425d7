//! Why entries about colonies, and mite counts, are refused.

use combclear_domain::facts::holding::untrue::{Colonies, Counts};

use super::did_you_mean;
use crate::words::{Words, say};

pub(super) fn colonies(words: &Words, why: &Colonies) -> (String, String) {
    match why {
        Colonies::NoSuchColony { colony, near } => (
            say!(words, RefusalNoSuchColony, colony = colony),
            did_you_mean(words, near.as_ref(), || say!(words, RefusalNoSuchColonyHelp)),
        ),
        Colonies::NotYetThere { colony, begun, on } => (
            say!(words, RefusalColonyNotYetThere, colony = colony, begun = begun, on = on),
            say!(words, RefusalCheckDatesHelp),
        ),
        Colonies::Ended { colony, ended } => (
            say!(words, RefusalColonyEnded, colony = colony, ended = ended),
            say!(words, RefusalColonyEndedHelp),
        ),
        Colonies::EndedBefore { colony, ended } => (
            say!(words, RefusalColonyEnded, colony = colony, ended = ended),
            say!(words, RefusalCorrectItHelp),
        ),
        Colonies::LivedLater { colony, kind, last, on } => (
            say!(words, RefusalColonyLivedLater, colony = colony, kind = kind.as_str(), last = last, on = on),
            say!(words, RefusalColonyLivedLaterHelp),
        ),
        Colonies::NoneNamed => (say!(words, RefusalNoColonyNamed), say!(words, RefusalNoColonyNamedHelp)),
        Colonies::NamedTwice { colony } => {
            (say!(words, RefusalColonyNamedTwice, colony = colony), say!(words, RefusalColonyNamedTwiceHelp))
        }
        Colonies::NameIsTaken { colony, since } => (
            say!(words, RefusalColonyNameIsTaken, colony = colony, since = since),
            say!(words, RefusalColonyNameIsTakenHelp),
        ),
        Colonies::UnitedWithItself { colony } => (
            say!(words, RefusalColonyUnitedWithItself, colony = colony),
            say!(words, RefusalColonyUnitedWithItselfHelp),
        ),
        Colonies::NoSuper => (say!(words, RefusalNoSuper), say!(words, RefusalNoSuperHelp)),
    }
}

pub(super) fn counts(words: &Words, why: &Counts) -> (String, String) {
    match why {
        Counts::OverNone { field } => {
            (say!(words, RefusalCountedOverNone, field = *field), say!(words, RefusalCountedOverNoneHelp))
        }
        Counts::NotOfMethod { field, method } => (
            say!(words, RefusalNotOfCountMethod, field = *field, method = method.as_str()),
            say!(words, RefusalNotOfCountMethodHelp),
        ),
        Counts::MoreThanCells { mites, cells } => (
            say!(words, RefusalMoreMitesThanCells, mites = *mites, cells = *cells),
            say!(words, RefusalMoreMitesThanCellsHelp),
        ),
    }
}
