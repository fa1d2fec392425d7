//! Values that do not go together, within a rule or between two.

use combclear_domain::rules::fault::{KeepApart, Lacking, RuleFault, SwapOr, ValueOf};

use super::keys::table_name;
use crate::unreadable::quoted;
use crate::words::{Words, say};

pub(super) fn rules(words: &Words, fault: &RuleFault) -> (String, String) {
    match fault {
        RuleFault::NotAbove { least, most, mend } => {
            let help = match mend {
                SwapOr::Swap => say!(words, FaultSwapHelp),
                SwapOr::LeaveOut => say!(words, FaultLeaveOutHelp, most = *most),
            };
            (say!(words, FaultNotAbove, least = *least, most = *most), help)
        }
        RuleFault::Less { least, low, most, high } => {
            let message = say!(words, FaultLess, least = *least, low = *low, most = *most, high = *high);
            (message, say!(words, FaultSwapHelp))
        }
        RuleFault::NoneOf { rule, lacking, keys } => {
            let lacking = match lacking {
                Lacking::Limit => "limit",
                Lacking::Size => "size",
                Lacking::Bees => "bees",
            };
            let keys = quoted(words, keys);
            let (last, others) = keys.split_last().map_or(("", &[][..]), |(last, others)| (last, others));
            let (others, keys) = (others.join(", "), keys.join(", "));
            (
                say!(words, FaultNoneOf, rule = table_name(words, rule), lacking = lacking),
                say!(words, FaultNoneOfHelp, lacking = lacking, keys = keys, others = others, last = last),
            )
        }
        RuleFault::Needed { rule, key, of, word } => (
            say!(words, FaultKeyMissing, table = table_name(words, rule), key = *key),
            say!(words, FaultNeededHelp, key = *key, of = *of, word = *word),
        ),
        RuleFault::Misplaced { key, of, written, word } => (
            say!(words, FaultMisplaced, key = *key, of = *of, written = *written),
            say!(words, FaultMisplacedHelp, of = *of, word = *word),
        ),
        RuleFault::DaysBesideNone { key } => {
            (say!(words, FaultDaysBesideNone), say!(words, FaultDaysBesideNoneHelp, key = *key))
        }
        RuleFault::NothingStays { topic } => {
            (say!(words, FaultNothingStays, topic = topic.as_str()), say!(words, FaultNothingStaysHelp))
        }
        RuleFault::TwoInForce { of, on, line, apart } => {
            let of = value_of(words, of);
            let message = match on {
                None => say!(words, FaultTwoInForceAlways, of = of, line = *line),
                Some(on) => say!(words, FaultTwoInForce, of = of, on = on, line = *line),
            };
            (message, keep_apart(words, *apart))
        }
        RuleFault::AnyBrood { topic, line } => {
            (say!(words, FaultAnyBrood, topic = topic.as_str(), line = *line), say!(words, FaultAnyBroodHelp))
        }
        RuleFault::StayBounds { least, most, line } => (
            say!(words, FaultStayBounds, least = *least, most = *most, line = *line),
            say!(words, FaultStayBoundsHelp),
        ),
    }
}

fn value_of(words: &Words, of: &ValueOf) -> String {
    match of {
        ValueOf::Topic(topic) => say!(words, MisreadInBackticks, name = topic.as_str()),
        ValueOf::Field { field, occasion } => {
            say!(words, FaultValueOfField, field = field.as_str(), occasion = occasion.as_str())
        }
        ValueOf::Years(records) => {
            let records: Vec<&str> = records.iter().map(|record| record.as_str()).collect();
            say!(words, FaultValueOfYears, records = records.join(", "))
        }
        ValueOf::WithinDays(occasion) => say!(words, FaultValueOfDays, occasion = occasion.as_str()),
    }
}

fn keep_apart(words: &Words, apart: KeepApart) -> String {
    let how = match apart {
        KeepApart::EveryRevision => "revision",
        KeepApart::EveryMethod => "method",
        KeepApart::OneWindow => "window",
        KeepApart::OneOfTwo => "one-of-two",
        KeepApart::Until { until, since: None } => return say!(words, FaultUntilHelp, until = until),
        KeepApart::Until { until, since: Some(from) } => {
            return say!(words, FaultUntilOfHelp, until = until, from = from);
        }
    };
    say!(words, FaultKeepApartHelp, how = how)
}
