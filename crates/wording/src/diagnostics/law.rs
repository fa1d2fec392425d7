//! What is wrong with a law file as a whole, and with what it includes.

use combclear_domain::rules::fault::LawFault;

use crate::refusals::did_you_mean;
use crate::unreadable::bad_name;
use crate::words::{Words, say};

pub(super) fn law(words: &Words, fault: &LawFault) -> (String, String) {
    match fault {
        LawFault::NoRule => (say!(words, FaultLawNoRule), say!(words, FaultLawNoRuleHelp)),
        LawFault::IncludeName(bad) => (bad_name(words, bad), say!(words, FaultIncludeNameHelp)),
        LawFault::IncludesItself { jurisdiction } => (
            say!(words, FaultIncludesItself, jurisdiction = jurisdiction),
            say!(words, FaultIncludesItselfHelp),
        ),
        LawFault::LeadsBack { own, include } => {
            (say!(words, FaultLeadsBack, own = own, include = include), say!(words, FaultLeadsBackHelp))
        }
        LawFault::NothingToInclude { include, meant } => {
            let help = did_you_mean(words, meant.as_ref(), || {
                say!(words, FaultNothingToIncludeHelp, include = include)
            });
            (say!(words, FaultNothingToInclude, include = include), help)
        }
        LawFault::InTwoFiles { jurisdiction, other } => (
            say!(words, FaultLawInTwoFiles, jurisdiction = jurisdiction, other = other),
            say!(words, FaultLawInTwoFilesHelp),
        ),
    }
}
