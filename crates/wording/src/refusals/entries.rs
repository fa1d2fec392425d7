//! Why an entry is refused by itself or as a correction.

use combclear_domain::facts::holding::untrue::{Corrections, Entries};

use super::{did_you_mean, untrue};
use crate::words::{Words, say};

pub(super) fn entries(words: &Words, why: &Entries) -> (String, String) {
    match why {
        Entries::IdIsTaken { id } => {
            (say!(words, RefusalIdIsTaken, id = id), say!(words, RefusalIdIsTakenHelp))
        }
        Entries::InTheFuture { on, today } => {
            (say!(words, RefusalInTheFuture, on = on, today = today), say!(words, RefusalInTheFutureHelp))
        }
        Entries::WrittenBefore { written_on, on } => (
            say!(words, RefusalWrittenBefore, written_on = written_on, on = on),
            say!(words, RefusalWrittenBeforeHelp),
        ),
        Entries::WrittenLater { written_on, today } => (
            say!(words, RefusalWrittenLater, written_on = written_on, today = today),
            say!(words, RefusalWrittenBeforeHelp),
        ),
        Entries::NameHasInvisibleSign { name, sign } => (
            say!(words, RefusalInvisibleSign, name = name, sign = sign),
            say!(words, RefusalInvisibleSignHelp),
        ),
        Entries::NameLooksLikeAnother { name, other } => (
            say!(words, RefusalLooksLikeAnother, name = name, other = other),
            say!(words, RefusalLooksLikeAnotherHelp),
        ),
        Entries::JurisdictionIsUnknown { jurisdiction, meant } => (
            say!(words, RefusalJurisdictionIsUnknown, jurisdiction = jurisdiction),
            did_you_mean(words, *meant, || say!(words, RefusalJurisdictionIsUnknownHelp)),
        ),
    }
}

pub(super) fn corrections(words: &Words, why: &Corrections) -> (String, String) {
    match why {
        Corrections::NoSuchEntry { of } => {
            (say!(words, RefusalNoEntryToCorrect, of = of), say!(words, RefusalNoEntryToCorrectHelp))
        }
        Corrections::CorrectedBefore { of, by } => (
            say!(words, RefusalCorrectedBefore, of = of, by = by),
            say!(words, RefusalCorrectedBeforeHelp, by = by),
        ),
        Corrections::OfArchiveStep { of } => (
            say!(words, RefusalCorrectionOfArchiveStep, of = of),
            say!(words, RefusalCorrectionOfArchivedHelp),
        ),
        Corrections::OfMovedEntry { of } => (
            say!(words, RefusalCorrectionOfMovedEntry, of = of),
            say!(words, RefusalCorrectionOfArchivedHelp),
        ),
        Corrections::OfStrikeOut { of } => (
            say!(words, RefusalCorrectionOfStrikeOut, of = of),
            say!(words, RefusalCorrectionOfStrikeOutHelp),
        ),
        Corrections::OfOtherKind { of, was, now } => (
            say!(words, RefusalCorrectionOfOtherKind, of = of, was = was.as_str(), now = now.as_str()),
            say!(words, RefusalCorrectionOfOtherKindHelp),
        ),
        Corrections::OfAnother { kind, on, entry, why } => (
            say!(
                words,
                RefusalAnotherBecomesUntrue,
                kind = kind.as_str(),
                on = on,
                entry = entry,
                why = untrue(words, why).message
            ),
            say!(words, RefusalAnotherBecomesUntrueHelp),
        ),
    }
}
