//! Refusals in words, each with how to fix it.

mod archives;
mod colonies;
mod courses;
mod entries;
mod lots;
mod places;
mod terms;

use combclear_domain::facts::holding::{Refusal, Untrue};
use combclear_domain::questions::options::BadSpan;
use combclear_domain::questions::register::BadPeriod;

use crate::words::{Words, say};

pub use archives::tie;

/// Why something is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Refused {
    /// The reason.
    pub message: String,
    /// How to fix it.
    pub help: String,
}

impl Refused {
    /// Why an entry is refused.
    #[must_use]
    pub fn of(words: &Words, refusal: &Refusal) -> Refused {
        untrue(words, &refusal.why)
    }

    /// Why these days cannot be asked about. The help names them as the URL does.
    #[must_use]
    pub fn of_span(words: &Words, span: BadSpan) -> Refused {
        let (message, help) = match span {
            BadSpan::Backwards { from, to } => (
                say!(words, RefusalDaysAreBackwards, from = from, to = to),
                say!(words, RefusalSpanBackwardsHelp),
            ),
            BadSpan::TooLong { days, most } => (
                say!(words, RefusalSpanTooLong, days = days, most = most),
                say!(words, RefusalSpanTooLongHelp),
            ),
        };
        Refused { message, help }
    }

    /// Why there is no register of this period.
    #[must_use]
    pub fn of_period(words: &Words, period: BadPeriod) -> Refused {
        let BadPeriod { from, to } = period;
        Refused {
            message: say!(words, RefusalDaysAreBackwards, from = from, to = to),
            help: say!(words, RefusalPeriodBackwardsHelp),
        }
    }
}

fn untrue(words: &Words, why: &Untrue) -> Refused {
    let (message, help) = match why {
        Untrue::Entries(why) => entries::entries(words, why),
        Untrue::Corrections(why) => entries::corrections(words, why),
        Untrue::Colonies(why) => colonies::colonies(words, why),
        Untrue::Places(why) => places::places(words, why),
        Untrue::Weather(why) => places::weather(words, why),
        Untrue::Counts(why) => colonies::counts(words, why),
        Untrue::Lots(why) => lots::lots(words, why),
        Untrue::Terms(why) => terms::terms(words, why),
        Untrue::Courses(why) => courses::courses(words, why),
        Untrue::Documents(why) => lots::documents(words, why),
        Untrue::Archives(why) => archives::archives(words, why),
    };
    Refused { message, help }
}

/// Suggests the similar name, or else says what to do first.
pub(crate) fn did_you_mean(
    words: &Words,
    near: Option<impl ToString>,
    first: impl FnOnce() -> String,
) -> String {
    near.map_or_else(first, |near| say!(words, RefusalDidYouMeanHelp, near = near.to_string()))
}
