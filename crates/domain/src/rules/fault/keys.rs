//! What is wrong with the text of a file and with the keys of its tables.

use super::values::Wanted;

/// A table of a file, as it is called. A list goes by its key, such as `rule`.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are its parts")]
pub enum TableName {
    /// The leaflet as a whole.
    Leaflet,
    /// The law file as a whole.
    LawFile,
    /// One of a list that has no name yet.
    One { list: &'static str },
    /// One of a list, by its name.
    Named { list: &'static str, name: String },
}

/// Text that is not TOML.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum TomlFault {
    /// A key is written twice in one table.
    KeyTwice { key: String },
    /// A key has no value.
    NoValue,
    /// Text without its quotes.
    NotInQuotes { written: String },
    /// Text whose closing quote is missing.
    NotClosed,
    /// Anything else, in the words of the parser; perhaps in a list.
    NotToml { says: String, in_a_list: bool },
}

/// Keys that there are not, or that are missing.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum KeyFault {
    /// The table has no such key. Another was probably `meant`; those that it takes, as far as they are known.
    Unknown { table: TableName, key: String, meant: Option<&'static str>, takes: Vec<&'static str> },
    /// A key is missing; what its value would be.
    Missing { table: TableName, key: &'static str, wanted: Wanted },
}
