//! The reasons for the ranking of the options, in words.

use combclear_domain::questions::options::{OrderReason, OutBeforeFlow, State, Usability, Visits};

use crate::Words;
use crate::words::say;

/// Why an option is ranked where it is, most important reason first.
pub(super) fn reasons(words: &Words, reasons: &[OrderReason]) -> Vec<String> {
    reasons.iter().filter_map(|of| reason(words, *of)).collect()
}

fn reason(words: &Words, reason: OrderReason) -> Option<String> {
    Some(match reason {
        OrderReason::Answer(answer) => {
            let answer = match answer {
                Usability::Usable => "usable",
                Usability::Unknown => "unknown",
                Usability::RuledOut => "ruled-out",
            };
            say!(words, OptionsOrderAnswer, answer = answer)
        }
        OrderReason::Class(class) => {
            let state = match class {
                State::Met => "met",
                State::Broken => "broken",
                State::Unknown => "unknown",
            };
            say!(words, OptionsOrderClass, state = state)
        }
        // The same for all options: it does not affect the ranking.
        OrderReason::BeforeFlow(OutBeforeFlow::NoFlow) => return None,
        OrderReason::BeforeFlow(OutBeforeFlow::Yes) => say!(words, OptionsOrderOutBeforeFlow),
        OrderReason::BeforeFlow(OutBeforeFlow::No) => say!(words, OptionsOrderNotOutBeforeFlow),
        OrderReason::BeforeFlow(OutBeforeFlow::NotKnown) => say!(words, OptionsOrderBeforeFlowNotKnown),
        OrderReason::Visits(Visits::Stated { count, perhaps_more: true }) => {
            say!(words, OptionsOrderVisitsAtLeast, count = count)
        }
        OrderReason::Visits(Visits::Stated { count, perhaps_more: false }) => {
            say!(words, OptionsOrderVisits, count = count)
        }
        OrderReason::Visits(Visits::NotKnown) => say!(words, OptionsOrderVisitsNotKnown),
    })
}
