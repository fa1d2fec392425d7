//! What is wrong with a law file as a whole, and with what it includes.

use crate::basics::misread::BadName;
use crate::basics::words::Jurisdiction;

/// What is wrong with a law file.
#[derive(Debug, Clone, PartialEq, Eq)]
#[expect(missing_docs, reason = "the fields are what is told of the fault")]
pub enum LawFault {
    /// It holds no rule.
    NoRule,
    /// A text that cannot be a jurisdiction.
    IncludeName(BadName),
    /// It includes itself.
    IncludesItself { jurisdiction: Jurisdiction },
    /// It includes a law that leads back to it.
    LeadsBack { own: Jurisdiction, include: Jurisdiction },
    /// It includes a law that there is not. Another was probably meant.
    NothingToInclude { include: Jurisdiction, meant: Option<String> },
    /// It is in two files.
    InTwoFiles { jurisdiction: Jurisdiction, other: String },
}
