//! What is wrong with files of leaflets and laws: where, and what, as facts. The sentences are made elsewhere.

mod keys;
mod law;
mod leaflet;
mod rules;
mod sources;
mod values;

use std::fmt;

pub use keys::{KeyFault, TableName, TomlFault};
pub use law::LawFault;
pub use leaflet::LeafletFault;
pub use rules::{KeepApart, Lacking, RuleFault, SwapOr, ValueOf};
pub use sources::SourceFault;
pub use values::{Found, Listed, Mend, ValueFault, Wanted, WordsOf};

/// One fault found in a file. Several are reported together, never only the first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Diagnostic {
    /// The file as it was named by whoever gave it.
    pub file: String,
    /// Line, counted from 1; 0 when the whole file is meant.
    pub line: u32,
    /// Column in characters, counted from 1; 0 when the whole file is meant.
    pub column: u32,
    /// What is wrong.
    pub what: Fault,
}

impl Diagnostic {
    /// A fault of a file as a whole.
    pub(super) fn of_file(path: &str, what: impl Into<Fault>) -> Diagnostic {
        Diagnostic { file: path.to_owned(), line: 0, column: 0, what: what.into() }
    }
}

impl fmt::Display for Diagnostic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}:{}: {:?}", self.file, self.line, self.column, self.what)
    }
}

macro_rules! faults {
    ($($(#[$doc:meta])+ $group:ident($fault:ident),)+) => {
        /// What is wrong, by what it is about.
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum Fault {
            $($(#[$doc])+ $group($fault),)+
        }

        $(impl From<$fault> for Fault {
            fn from(fault: $fault) -> Fault {
                Fault::$group(fault)
            }
        })+
    };
}

faults! {
    /// The text is not TOML.
    Toml(TomlFault),
    /// A key that there is not, or that is missing.
    Keys(KeyFault),
    /// A value.
    Values(ValueFault),
    /// A source.
    Sources(SourceFault),
    /// Values that do not go together.
    Rules(RuleFault),
    /// A leaflet as a whole, or what it names.
    Leaflet(LeafletFault),
    /// A law file as a whole, or what it includes.
    Law(LawFault),
}

/// Everything that is wrong with some files, in their order. Never empty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Faults(Vec<Diagnostic>);

impl Faults {
    /// The result of `made`, if there are no faults.
    ///
    /// # Errors
    /// The faults, if there are any.
    pub(super) fn none_of<T>(faults: Vec<Diagnostic>, made: impl FnOnce() -> T) -> Result<T, Faults> {
        if faults.is_empty() { Ok(made()) } else { Err(Faults(faults)) }
    }

    /// Each fault.
    pub fn iter(&self) -> impl Iterator<Item = &Diagnostic> {
        self.0.iter()
    }
}

impl IntoIterator for Faults {
    type Item = Diagnostic;
    type IntoIter = std::vec::IntoIter<Diagnostic>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (index, fault) in self.0.iter().enumerate() {
            if index > 0 {
                f.write_str("\n")?;
            }
            write!(f, "{fault}")?;
        }
        Ok(())
    }
}

impl std::error::Error for Faults {}
