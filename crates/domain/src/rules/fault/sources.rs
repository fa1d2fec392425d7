//! What is wrong with the sources of a file.

use super::keys::TableName;

/// What is wrong with a source.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum SourceFault {
    /// It does not say whose text it is.
    NoCountry { source: TableName },
    /// A text of the Union has the country of a state.
    UnionOfAState,
    /// The Union is given as the authority of a country.
    UnionAsAuthority,
    /// It is defined twice, first in this line.
    Twice { id: String, line: u32 },
    /// A rule cites it, and it is not defined. Another was probably meant.
    NotDefined { id: String, meant: Option<String> },
    /// No rule cites it.
    NotCited { id: String },
}
