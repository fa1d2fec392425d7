//! What is wrong with single values, and how they are mended.

use combclear_domain::Day;
use combclear_domain::rules::fault::{Found, Listed, Mend, ValueFault, Wanted, WordsOf};

use super::keys::table_name;
use crate::refusals::did_you_mean;
use crate::words::{Words, say};

pub(super) fn values(words: &Words, fault: &ValueFault) -> (String, String) {
    match fault {
        ValueFault::Wrong { table, key, found, mend } => {
            let (found, written) = match found {
                Found::EmptyList => ("empty-list", ""),
                Found::List => ("list", ""),
                Found::Table => ("table", ""),
                Found::Written(written) => ("written", written.as_str()),
            };
            let table = table_name(words, table);
            let message =
                say!(words, FaultValue, key = *key, table = table, found = found, written = written);
            (message, mended(words, key, mend))
        }
        ValueFault::Unlisted { of, written, meant, known } => {
            let of = match of {
                WordsOf::Needs => "needs",
                WordsOf::Others => "others",
                WordsOf::Records => "records",
            };
            let help = did_you_mean(words, *meant, || write(words, &Wanted::OneOf(known.clone())));
            (say!(words, FaultUnlisted, of = of, written = written), help)
        }
        ValueFault::Twice { of, name } => {
            let of = match of {
                Listed::Method => "method",
                Listed::State => "state",
                Listed::Revision => "revision",
                Listed::Record => "record",
                Listed::Include => "include",
            };
            (say!(words, FaultTwice, of = of, name = name), say!(words, FaultTwiceHelp, of = of))
        }
        ValueFault::UntilBeforeFrom { until, from } => (
            say!(words, FaultUntilBeforeFrom, until = until, from = from),
            say!(words, FaultUntilBeforeFromHelp),
        ),
        ValueFault::CheckedBeforeFrom { checked_on, from } => (
            say!(words, FaultCheckedBeforeFrom, checked = checked_on, from = from),
            say!(words, FaultCheckedBeforeFromHelp),
        ),
        ValueFault::NotTheFile { key, name, file } => {
            let stem = file.strip_suffix(".toml").unwrap_or(file);
            (
                say!(words, FaultNotTheFile, key = *key, name = name, file = file),
                say!(words, FaultNotTheFileHelp, key = *key, name = name, stem = stem),
            )
        }
    }
}

fn mended(words: &Words, key: &str, mend: &Mend) -> String {
    match mend {
        Mend::Write(value) => write(words, value),
        Mend::Meant(near) => say!(words, RefusalDidYouMeanHelp, near = *near),
        Mend::DropQuotes(value) => say!(words, FaultDropQuotes, value = value),
        Mend::DayOfCalendar => say!(words, FaultDayOfCalendar),
        Mend::DayInRange => say!(words, FaultDayInRange, first = Day::FIRST, last = Day::LAST),
        Mend::DateAlone(date) => say!(words, FaultDateAlone, date = date),
        Mend::InBrackets(text) => say!(words, FaultInBrackets, text = text),
        Mend::Celsius { fahrenheit, tenths } => {
            let (help, celsius) =
                (write(words, &Wanted::Degrees), format!("{}.{}", tenths / 10, tenths % 10));
            say!(words, FaultCelsius, help = help, fahrenheit = fahrenheit, celsius = celsius)
        }
        Mend::Format(format) => {
            say!(words, FaultFormat, help = write(words, &Wanted::Format(*format)))
        }
        Mend::OwnTables => say!(words, FaultOwnTables, list = key),
    }
}

fn write(words: &Words, value: &Wanted) -> String {
    say!(words, FaultWrite, wanted = wanted(words, value))
}

/// What a value would have to be, as it stands after "write" and "add".
pub(super) fn wanted(words: &Words, value: &Wanted) -> String {
    let wanted = match value {
        Wanted::Format(format) => return say!(words, FaultWantedFormat, format = *format),
        Wanted::OneOf(list) => return say!(words, FaultWantedOneOf, list = list.join(", ")),
        Wanted::AnyOf(list) => return say!(words, FaultWantedAnyOf, list = list.join(", ")),
        Wanted::Whole { least, most } => {
            return say!(words, FaultWantedWhole, least = *least, most = *most);
        }
        Wanted::Text => "text",
        Wanted::Date => "date",
        Wanted::True => "true",
        Wanted::Amount => "amount",
        Wanted::Degrees => "degrees",
        Wanted::YearDay => "year-day",
        Wanted::FileName => "file-name",
        Wanted::FolderName => "folder-name",
        Wanted::Country => "country",
        Wanted::Method => "method",
        Wanted::Actives => "actives",
        Wanted::Methods => "methods",
        Wanted::States => "states",
        Wanted::Revisions => "revisions",
        Wanted::SourceKeys => "source-keys",
        Wanted::Jurisdictions => "jurisdictions",
        Wanted::Records => "records",
    };
    say!(words, FaultWanted, wanted = wanted)
}
