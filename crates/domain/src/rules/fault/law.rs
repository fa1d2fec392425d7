//! What is wrong with a law file as a whole, and with what it includes.

use crate::basics::misread::BadName;
use crate::basics::words::Jurisdiction;

/// What is wrong with a law file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LawFault {
    /// It holds no rule.
    NoRule,
    /// A text that cannot be a jurisdiction.
    IncludeName(BadName),
    /// It includes itself.
    IncludesItself {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
    },
    /// It includes a law that leads back to it.
    LeadsBack {
        /// Its jurisdiction.
        own: Jurisdiction,
        /// That of the other law.
        include: Jurisdiction,
    },
    /// It includes a law that there is not.
    NothingToInclude {
        /// The jurisdiction of that law.
        include: Jurisdiction,
        /// The one that was probably meant.
        meant: Option<String>,
    },
    /// It is in two files.
    InTwoFiles {
        /// Its jurisdiction.
        jurisdiction: Jurisdiction,
        /// The other file.
        other: String,
    },
}
