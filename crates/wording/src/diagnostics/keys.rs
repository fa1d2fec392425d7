//! What is wrong with the text of a file and with the keys of its tables.

use combclear_domain::rules::fault::{KeyFault, TableName, TomlFault};

use super::values::wanted;
use crate::refusals::did_you_mean;
use crate::words::{Words, say};

pub(super) fn toml(words: &Words, fault: &TomlFault) -> (String, String) {
    match fault {
        TomlFault::KeyTwice { key } => {
            (say!(words, FaultTomlKeyTwice, key = key), say!(words, FaultTomlKeyTwiceHelp))
        }
        TomlFault::NoValue => (say!(words, FaultTomlNoValue), say!(words, FaultTomlNoValueHelp)),
        TomlFault::NotInQuotes { written } => (
            say!(words, FaultTomlNotInQuotes, written = written),
            say!(words, FaultTomlNotInQuotesHelp, written = written),
        ),
        TomlFault::NotClosed => (say!(words, FaultTomlNotClosed), say!(words, FaultTomlNotClosedHelp)),
        TomlFault::NotToml { says, in_a_list } => {
            let within = if *in_a_list { "list" } else { "line" };
            (say!(words, FaultToml, says = says), say!(words, FaultTomlHelp, within = within))
        }
    }
}

pub(super) fn keys(words: &Words, fault: &KeyFault) -> (String, String) {
    match fault {
        KeyFault::Unknown { table, key, meant, takes } => {
            let table = table_name(words, table);
            let help = did_you_mean(words, *meant, || {
                say!(words, FaultKeyUnknownHelp, table = &table, keys = takes.join(", "))
            });
            (say!(words, FaultKeyUnknown, table = &table, key = key), help)
        }
        KeyFault::Missing { table, key, wanted: value } => (
            say!(words, FaultKeyMissing, table = table_name(words, table), key = *key),
            say!(words, FaultKeyMissingHelp, key = *key, wanted = wanted(words, value)),
        ),
    }
}

/// How a table is called in a sentence.
pub(super) fn table_name(words: &Words, table: &TableName) -> String {
    let (table, list, name) = match table {
        TableName::Leaflet => ("leaflet", "", ""),
        TableName::LawFile => ("law", "", ""),
        TableName::One { list } => ("one", *list, ""),
        TableName::Named { list, name } => ("named", *list, name.as_str()),
    };
    say!(words, FaultTable, table = table, list = list, name = name)
}
