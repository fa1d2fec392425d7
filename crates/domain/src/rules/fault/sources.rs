//! What is wrong with the sources of a file.

use super::keys::TableName;

/// What is wrong with a source.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum SourceFault {
    /// It does not say whose text it is.
    NoCountry {
        /// The source.
        source: TableName,
    },
    /// A text of the Union has the country of a state.
    UnionOfAState,
    /// The Union is given as the authority of a country.
    UnionAsAuthority,
    /// It is defined twice.
    Twice {
        /// Its key.
        id: String,
        /// The line of the first.
        line: u32,
    },
    /// A rule cites it, and it is not defined.
    NotDefined {
        /// Its key.
        id: String,
        /// The key that was probably meant.
        meant: Option<String>,
    },
    /// No rule cites it.
    NotCited {
        /// Its key.
        id: String,
    },
}
