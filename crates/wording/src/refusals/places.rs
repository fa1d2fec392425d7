//! Why entries about apiaries, flows and temperatures are refused.

use combclear_domain::facts::holding::untrue::{Places, Weather};

use super::did_you_mean;
use crate::words::{Words, say};

pub(super) fn places(words: &Words, why: &Places) -> (String, String) {
    match why {
        Places::NoSuchApiary { apiary, near } => (
            say!(words, RefusalNoSuchApiary, apiary = apiary),
            did_you_mean(words, near.as_ref(), || say!(words, RefusalNoSuchApiaryHelp)),
        ),
        Places::ApiaryIsRecorded { apiary } => {
            (say!(words, RefusalApiaryIsRecorded, apiary = apiary), say!(words, RefusalCorrectItHelp))
        }
        Places::DaysAreBackwards { from, to } => {
            (say!(words, RefusalDaysAreBackwards, from = from, to = to), say!(words, RefusalCheckDatesHelp))
        }
        Places::FlowNotYetSeen { from, on } => {
            (say!(words, RefusalFlowNotYetSeen, from = from, on = on), say!(words, RefusalFlowNotYetSeenHelp))
        }
        Places::SeenFlowHasOneDay => {
            (say!(words, RefusalSeenFlowHasOneDay), say!(words, RefusalSeenFlowHasOneDayHelp))
        }
        Places::EarlyAfterUsual { early, usual } => (
            say!(words, RefusalEarlyAfterUsual, early = early, usual = usual),
            say!(words, RefusalCheckDatesHelp),
        ),
        Places::LateBeforeUsual { late, usual } => (
            say!(words, RefusalLateBeforeUsual, late = late, usual = usual),
            say!(words, RefusalCheckDatesHelp),
        ),
        Places::LateAfterEnd { late, to } => {
            (say!(words, RefusalLateAfterEnd, late = late, to = to), say!(words, RefusalCheckDatesHelp))
        }
    }
}

pub(super) fn weather(words: &Words, why: &Weather) -> (String, String) {
    match why {
        Weather::NumberOfDays { days, most } => (
            say!(words, RefusalNumberOfDays, days = *days),
            say!(words, RefusalNumberOfDaysHelp, most = *most),
        ),
        Weather::DayTwice { day } => {
            (say!(words, RefusalDayTwice, day = day), say!(words, RefusalTwiceInListHelp))
        }
        Weather::NotYetMeasured { day, on } => (
            say!(words, RefusalDayNotYetMeasured, day = day, on = on),
            say!(words, RefusalDayNotYetMeasuredHelp),
        ),
        Weather::NoMonths => (say!(words, RefusalNoMonths), say!(words, RefusalNoMonthsHelp)),
        Weather::NoSuchMonth { month } => {
            (say!(words, RefusalNoSuchMonth, month = *month), say!(words, RefusalNoSuchMonthHelp))
        }
        Weather::MonthTwice { month } => {
            (say!(words, RefusalMonthTwice, month = *month), say!(words, RefusalTwiceInListHelp))
        }
        Weather::LowestAboveHighest { min, max } => (
            say!(words, RefusalLowestAboveHighest, min = min, max = max),
            say!(words, RefusalLowestAboveHighestHelp),
        ),
    }
}
