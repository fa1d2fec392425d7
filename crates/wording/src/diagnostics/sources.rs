//! What is wrong with the sources of a file.

use combclear_domain::rules::fault::SourceFault;

use super::keys::table_name;
use crate::words::{Words, say};

pub(super) fn sources(words: &Words, fault: &SourceFault) -> (String, String) {
    match fault {
        SourceFault::NoCountry { source } => (
            say!(words, FaultSourceNoCountry, source = table_name(words, source)),
            say!(words, FaultSourceNoCountryHelp),
        ),
        SourceFault::UnionOfAState => {
            (say!(words, FaultSourceUnionOfAState), say!(words, FaultSourceUnionOfAStateHelp))
        }
        SourceFault::UnionAsAuthority => {
            (say!(words, FaultSourceUnionAsAuthority), say!(words, FaultSourceUnionAsAuthorityHelp))
        }
        SourceFault::Twice { id, line } => {
            (say!(words, FaultSourceTwice, id = id, line = *line), say!(words, FaultSourceTwiceHelp))
        }
        SourceFault::NotDefined { id, meant } => {
            let help = match meant {
                None => say!(words, FaultSourceNotDefinedHelp, id = id),
                Some(near) => say!(words, FaultSourceNotDefinedNearHelp, near = near, id = id),
            };
            (say!(words, FaultSourceNotDefined, id = id), help)
        }
        SourceFault::NotCited { id } => {
            (say!(words, FaultSourceNotCited, id = id), say!(words, FaultSourceNotCitedHelp))
        }
    }
}
