//! How long records must be kept, and the archive plan, in words.

mod archive;
mod report;

use combclear_domain::questions::retention::{NotSettled, WhyHeldBack, kept};
use combclear_domain::rules::law::KeepingForce;

use crate::colonies::colonies as colonies_said;
use crate::pieces::amount;
use crate::words::{Words, say};

pub use archive::{ArchivePlanReport, HeldBack};
pub use report::{DecidedBy, KeepUntil, KeptEntry, KeptLot, KeptSet, RetentionReport};

/// Why the end of retention is not known, or may still move.
fn not_settled(words: &Words, reason: &NotSettled) -> String {
    match reason {
        NotSettled::JurisdictionNotRecorded => say!(words, RetentionJurisdictionNotRecorded),
        NotSettled::LawNotBuiltIn { jurisdiction } => {
            say!(words, RetentionLawNotBuiltIn, jurisdiction = jurisdiction)
        }
        NotSettled::UnionsPartOnly { jurisdiction } => {
            say!(words, RetentionUnionsPartOnly, jurisdiction = jurisdiction)
        }
        NotSettled::RulesBegin { jurisdiction, from } => {
            say!(words, RetentionRulesBegin, jurisdiction = jurisdiction, from = from)
        }
        NotSettled::RulesEnded { jurisdiction, until } => {
            say!(words, RetentionRulesEnded, jurisdiction = jurisdiction, until = until)
        }
        NotSettled::NoRule => say!(words, RetentionNoRule),
        NotSettled::LawNotRead { jurisdiction, confidence } => {
            say!(words, RetentionLawNotRead, jurisdiction = jurisdiction, confidence = confidence.as_str())
        }
        NotSettled::Left { lot, left, unit } => {
            say!(words, RetentionLeft, lot = lot, amount = amount(words, *left, *unit))
        }
        NotSettled::MoreGone { lot, more, unit } => {
            say!(words, RetentionMoreGone, lot = lot, amount = amount(words, *more, *unit))
        }
        NotSettled::InHive { lot, colonies, must_come_out: true } => {
            say!(words, RetentionNotOut, lot = lot, colonies = colonies_said(words, colonies))
        }
        NotSettled::InHive { lot, colonies, must_come_out: false } => {
            say!(words, RetentionPerhapsNotOut, lot = lot, colonies = colonies_said(words, colonies))
        }
    }
}

/// The deciding rule, in a sentence.
fn decided_by(words: &Words, by: &kept::DecidedBy) -> String {
    let (years, counted, from) = (by.years, by.counted_from.as_str(), by.counted_from_day);
    let jurisdiction = &by.jurisdiction;
    match by.force {
        KeepingForce::Law => say!(
            words,
            RetentionByLaw,
            years = years,
            counted = counted,
            from = from,
            jurisdiction = jurisdiction
        ),
        KeepingForce::Scheme => say!(
            words,
            RetentionByScheme,
            years = years,
            counted = counted,
            from = from,
            jurisdiction = jurisdiction
        ),
    }
}

/// Why a set is retained that the law no longer requires.
#[must_use]
pub fn held_back(words: &Words, why: &WhyHeldBack) -> String {
    match why {
        WhyHeldBack::StillRuns(reasons) | WhyHeldBack::LawNotRead(reasons) => {
            let said: Vec<String> = reasons.iter().map(|reason| not_settled(words, reason)).collect();
            said.join("; ")
        }
        WhyHeldBack::Tied(tie) => crate::refusals::tie(words, tie),
        WhyHeldBack::SuperingTurns(colony) => say!(words, RetentionSuperingTurns, colony = colony),
    }
}
