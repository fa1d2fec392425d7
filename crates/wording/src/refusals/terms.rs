//! Why stated terms of a leaflet, label or prescription are refused.

use combclear_domain::facts::holding::untrue::Terms;

use crate::words::{Words, say};

pub(super) fn terms(words: &Words, why: &Terms) -> (String, String) {
    match why {
        Terms::TooManyDays { days, most } => {
            (say!(words, RefusalTooManyDays, days = *days), say!(words, RefusalTooManyDaysHelp, most = *most))
        }
        Terms::WithdrawalTwice => {
            (say!(words, RefusalWithdrawalStatedTwice), say!(words, RefusalWithdrawalStatedTwiceHelp))
        }
        Terms::StayOfNoDays => (say!(words, RefusalStayOfNoDays), say!(words, RefusalStayOfNoDaysHelp)),
        Terms::NothingStaysYetStays { least } => (
            say!(words, RefusalNothingStaysYetStays, least = *least),
            say!(words, RefusalNothingStaysYetStaysHelp),
        ),
        Terms::LeastAboveMost { least, most } => (
            say!(words, RefusalLeastStayAboveLongest, least = *least, most = *most),
            say!(words, RefusalLeastStayAboveLongestHelp),
        ),
        Terms::NothingIsConfirmed => {
            (say!(words, RefusalNothingIsConfirmed), say!(words, RefusalNothingIsConfirmedHelp))
        }
        Terms::StatedNotConfirmed { topic } => (
            say!(words, RefusalStatedNotConfirmed, topic = topic.as_str()),
            say!(words, RefusalStatedNotConfirmedHelp),
        ),
    }
}
