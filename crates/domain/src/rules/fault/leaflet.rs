//! What is wrong with a leaflet as a whole, and with what it names.

use crate::basics::misread::BadName;
use crate::basics::topic::Topic;
use crate::basics::words::{Jurisdiction, LeafletId, Method};

/// What is wrong with a leaflet.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum LeafletFault {
    /// It holds no rule.
    NoRule,
    /// It is in the folder of another jurisdiction.
    OtherFolder { jurisdiction: Jurisdiction, folder: String },
    /// A text that cannot be a method.
    MethodName(BadName),
    /// A rule is for a method that the leaflet does not declare. Another was probably meant; those that it declares.
    UnknownMethod { method: Method, meant: Option<String>, declared: Vec<Method> },
    /// A rule is for a label revision that the leaflet does not declare. Another was probably meant.
    UnknownRevision { revision: String, meant: Option<String> },
    /// A text that is no member state of the Union.
    NotAState { written: String },
    /// A leaflet that is not of the Union names member states.
    StatesElsewhere { jurisdiction: Jurisdiction },
    /// A value is marked as a document, and none of its sources is of an authority of the jurisdiction.
    NoAuthority { topic: Topic, sources: Vec<String>, jurisdiction: Jurisdiction },
    /// It is in two files.
    InTwoFiles { jurisdiction: Jurisdiction, id: LeafletId, other: String },
    /// A keeper's own leaflet would replace a built-in one without saying so.
    WouldReplace { jurisdiction: Jurisdiction, id: LeafletId },
    /// It says that it replaces another (`of`) than the one of its own jurisdiction and id.
    InsteadOfAnother { of: String, jurisdiction: Jurisdiction, id: LeafletId },
    /// It says that it replaces one that there is not.
    InsteadOfNone { of: String },
}
