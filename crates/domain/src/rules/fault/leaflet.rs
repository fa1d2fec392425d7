//! What is wrong with a leaflet as a whole, and with what it names.

use crate::basics::misread::BadName;
use crate::basics::topic::Topic;
use crate::basics::words::{Jurisdiction, LeafletId, Method};

/// What is wrong with a leaflet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LeafletFault {
    /// It holds no rule.
    NoRule,
    /// It is in the folder of another jurisdiction.
    OtherFolder {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
        /// The folder.
        folder: String,
    },
    /// A text that cannot be a method.
    MethodName(BadName),
    /// A rule is for a method that the leaflet does not declare.
    UnknownMethod {
        /// The method.
        method: Method,
        /// The one that was probably meant.
        meant: Option<String>,
        /// Those that it declares.
        declared: Vec<Method>,
    },
    /// A rule is for a label revision that the leaflet does not declare.
    UnknownRevision {
        /// The revision.
        revision: String,
        /// The one that was probably meant.
        meant: Option<String>,
    },
    /// A text that is no member state of the Union.
    NotAState {
        /// The text.
        written: String,
    },
    /// A leaflet that is not of the Union names member states.
    StatesElsewhere {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
    },
    /// A value is marked as a document, and no authority says it.
    NoAuthority {
        /// What the rule is about.
        topic: Topic,
        /// The sources that it cites.
        sources: Vec<String>,
        /// The jurisdiction whose authority would have to say it.
        jurisdiction: Jurisdiction,
    },
    /// It is in two files.
    InTwoFiles {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
        /// Its id.
        id: LeafletId,
        /// The other file.
        other: String,
    },
    /// A keeper's own leaflet would replace a built-in one without saying so.
    WouldReplace {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
        /// Its id.
        id: LeafletId,
    },
    /// It says that it replaces another than the one of its own jurisdiction and id.
    InsteadOfAnother {
        /// The other.
        of: String,
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
        /// Its id.
        id: LeafletId,
    },
    /// It says that it replaces one that there is not.
    InsteadOfNone {
        /// That one.
        of: String,
    },
}
