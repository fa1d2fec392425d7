//! What is wrong with a leaflet as a whole, and with what it names.

use combclear_domain::basics::words::{Jurisdiction, LeafletId, Method};
use combclear_domain::rules::fault::LeafletFault;

use crate::refusals::did_you_mean;
use crate::unreadable::{bad_name, quoted};
use crate::words::{Words, say};

pub(super) fn leaflet(words: &Words, fault: &LeafletFault) -> (String, String) {
    match fault {
        LeafletFault::NoRule => (say!(words, FaultLeafletNoRule), say!(words, FaultLeafletNoRuleHelp)),
        LeafletFault::OtherFolder { jurisdiction, folder } => (
            say!(words, FaultOtherFolder, jurisdiction = jurisdiction, folder = folder),
            say!(words, FaultOtherFolderHelp, jurisdiction = jurisdiction, folder = folder),
        ),
        LeafletFault::MethodName(bad) => (bad_name(words, bad), say!(words, FaultMethodNameHelp)),
        LeafletFault::UnknownMethod { method, meant, declared } => {
            let help = did_you_mean(words, meant.as_ref(), || {
                if declared.is_empty() {
                    return say!(words, FaultNoMethodsHelp, method = method);
                }
                let declared: Vec<&str> = declared.iter().map(Method::as_str).collect();
                say!(words, FaultUnknownMethodHelp, declared = quoted(words, &declared).join(", "))
            });
            (say!(words, FaultUnknownMethod, method = method), help)
        }
        LeafletFault::UnknownRevision { revision, meant } => {
            let help = did_you_mean(words, meant.as_ref(), || {
                say!(words, FaultUnknownRevisionHelp, revision = revision)
            });
            (say!(words, FaultUnknownRevision, revision = revision), help)
        }
        LeafletFault::NotAState { written } => {
            (say!(words, FaultNotAState, written = written), say!(words, FaultNotAStateHelp))
        }
        LeafletFault::StatesElsewhere { jurisdiction } => (
            say!(words, FaultStatesElsewhere, jurisdiction = jurisdiction),
            say!(words, FaultStatesElsewhereHelp),
        ),
        LeafletFault::NoAuthority { topic, sources, jurisdiction } => {
            let either = |one: String, other: String| say!(words, MisreadEither, one = one, other = other);
            let sources = quoted(words, sources).into_iter().reduce(either).unwrap_or_default();
            let topic = topic.as_str();
            let message =
                say!(words, FaultNoAuthority, topic = topic, sources = sources, jurisdiction = jurisdiction);
            (message, say!(words, FaultNoAuthorityHelp))
        }
        LeafletFault::InTwoFiles { jurisdiction, id, other } => (
            say!(words, FaultLeafletInTwoFiles, leaflet = name(jurisdiction, id), other = other),
            say!(words, FaultLeafletInTwoFilesHelp),
        ),
        LeafletFault::WouldReplace { jurisdiction, id } => {
            let leaflet = name(jurisdiction, id);
            (
                say!(words, FaultWouldReplace, leaflet = &leaflet),
                say!(words, FaultWouldReplaceHelp, leaflet = &leaflet),
            )
        }
        LeafletFault::InsteadOfAnother { of, jurisdiction, id } => (
            say!(words, FaultInsteadOfAnother, of = of, leaflet = name(jurisdiction, id)),
            say!(words, FaultInsteadOfAnotherHelp),
        ),
        LeafletFault::InsteadOfNone { of } => {
            (say!(words, FaultInsteadOfNone, of = of), say!(words, FaultInsteadOfNoneHelp))
        }
    }
}

fn name(jurisdiction: &Jurisdiction, id: &LeafletId) -> String {
    format!("{jurisdiction}/{id}")
}
