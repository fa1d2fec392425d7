//! What is wrong with the text of a file and with the keys of its tables.

use super::values::Wanted;

/// A table of a file, as it is called.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TableName {
    /// The leaflet as a whole.
    Leaflet,
    /// The law file as a whole.
    LawFile,
    /// One of a list that has no name yet.
    One {
        /// The key of the list.
        list: &'static str,
    },
    /// One of a list, by its name.
    Named {
        /// The key of the list.
        list: &'static str,
        /// The name.
        name: String,
    },
}

/// Text that is not TOML.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TomlFault {
    /// A key is written twice in one table.
    KeyTwice {
        /// The key.
        key: String,
    },
    /// A key has no value.
    NoValue,
    /// Text without its quotes.
    NotInQuotes {
        /// The text.
        written: String,
    },
    /// Text whose closing quote is missing.
    NotClosed,
    /// Anything else, in the words of the parser.
    NotToml {
        /// What the parser says.
        says: String,
        /// Whether that is about a list.
        in_a_list: bool,
    },
}

/// Keys that there are not, or that are missing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum KeyFault {
    /// The table has no such key.
    Unknown {
        /// The table.
        table: TableName,
        /// The key.
        key: String,
        /// The key that was probably meant.
        meant: Option<&'static str>,
        /// Those that there are, as far as they are known.
        takes: Vec<&'static str>,
    },
    /// A key is missing.
    Missing {
        /// The table.
        table: TableName,
        /// The key.
        key: &'static str,
        /// What its value would be.
        wanted: Wanted,
    },
}
