//! Why archive entries are refused, and why entries cannot be archived separately.

use combclear_domain::facts::holding::untrue::Archives;
use combclear_domain::facts::holding::{Bond, Tie};

use crate::words::{Words, say};

/// Why an entry cannot be archived without another.
#[must_use]
pub fn tie(words: &Words, tie: &Tie) -> String {
    let Tie { stays, goes, how } = tie;
    match how {
        Bond::Correction => say!(words, RefusalTiedByCorrection, goes = goes, stays = stays),
        Bond::Course => say!(words, RefusalTiedByCourse, goes = goes, stays = stays),
        Bond::Name => say!(words, RefusalTiedByName, goes = goes, stays = stays),
        Bond::Unknown => say!(words, RefusalNoSuchEntry, entry = goes),
    }
}

pub(super) fn archives(words: &Words, why: &Archives) -> (String, String) {
    match why {
        Archives::ByItsStepOnly { kind } => (
            say!(words, RefusalByArchiveStepOnly, kind = kind.as_str()),
            say!(words, RefusalByArchiveStepOnlyHelp),
        ),
        Archives::StepCorrects => {
            (say!(words, RefusalArchiveStepCorrects), say!(words, RefusalArchiveStepCorrectsHelp))
        }
        Archives::ThroughAfterStep { through, on } => (
            say!(words, RefusalThroughAfterArchiveStep, through = through, on = on),
            say!(words, RefusalThroughAfterArchiveStepHelp),
        ),
        Archives::NumberDiffers { entries, places } => (
            say!(words, RefusalNumberOfPlacesDiffers, entries = *entries, places = *places),
            say!(words, RefusalNumberOfPlacesDiffersHelp),
        ),
        Archives::PlacesNotThere { places } => (
            say!(words, RefusalPlacesNotThere, places = places.to_string()),
            say!(words, RefusalPlacesNotThereHelp),
        ),
        Archives::TellsOfArchive { seq } => {
            (say!(words, RefusalTellsOfArchive, seq = *seq), say!(words, RefusalLeaveItOutHelp))
        }
        Archives::MovedBefore { seq } => {
            (say!(words, RefusalMovedBefore, seq = *seq), say!(words, RefusalLeaveItOutHelp))
        }
        Archives::StillWhole { seq } => {
            (say!(words, RefusalStillWhole, seq = *seq), say!(words, RefusalStillWholeHelp))
        }
        Archives::Tied { tie } => (self::tie(words, tie), say!(words, RefusalTiedHelp)),
        Archives::NotBesideIt { of } => (
            say!(words, RefusalNotBesideWhatItCorrects, of = of),
            say!(words, RefusalNotBesideWhatItCorrectsHelp),
        ),
    }
}
