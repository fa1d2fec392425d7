//! Why entries are refused, grouped by subject. Each reason carries the facts for its message and its remedy.

mod archives;
mod colonies;
mod corrections;
mod counts;
mod courses;
mod documents;
mod entries;
mod lots;
mod places;
mod terms;
mod weather;

/// Defines a group of reasons, each with its wire identifier.
macro_rules! untrue {
    ($(#[$doc:meta])+ $group:ident {
        $($(#[$about:meta])+ $why:ident = $word:literal $({ $($fact:tt)* })?,)+
    }) => {
        $(#[$doc])+
        #[derive(Debug, Clone, PartialEq, Eq)]
        pub enum $group {
            $($(#[$about])+ $why $({ $($fact)* })?,)+
        }

        impl $group {
            /// The reason as an identifier, for clients and logs.
            #[must_use]
            pub const fn as_str(&self) -> &'static str {
                match self { $($group::$why { .. } => $word,)+ }
            }
        }

        impl From<$group> for super::Untrue {
            fn from(why: $group) -> super::Untrue {
                super::Untrue::$group(why)
            }
        }
    };
}
use untrue;

pub use archives::Archives;
pub use colonies::Colonies;
pub use corrections::Corrections;
pub use counts::Counts;
pub use courses::Courses;
pub use documents::Documents;
pub use entries::Entries;
pub use lots::Lots;
pub use places::Places;
pub use terms::Terms;
pub use weather::Weather;

/// Why an entry is refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Untrue {
    /// Its id, its day or its jurisdiction.
    Entries(Entries),
    /// Its correction.
    Corrections(Corrections),
    /// Its colonies.
    Colonies(Colonies),
    /// Its apiary, or a nectar flow there.
    Places(Places),
    /// Temperatures.
    Weather(Weather),
    /// A mite count.
    Counts(Counts),
    /// Medicines, lots, prescriptions and amounts.
    Lots(Lots),
    /// The terms of a leaflet, label or prescription.
    Terms(Terms),
    /// A dose or a removal.
    Courses(Courses),
    /// A document.
    Documents(Documents),
    /// The entries it moves into an archive.
    Archives(Archives),
}

impl Untrue {
    /// The reason as an identifier, for clients and logs.
    #[must_use]
    pub const fn as_str(&self) -> &'static str {
        match self {
            Untrue::Entries(why) => why.as_str(),
            Untrue::Corrections(why) => why.as_str(),
            Untrue::Colonies(why) => why.as_str(),
            Untrue::Places(why) => why.as_str(),
            Untrue::Weather(why) => why.as_str(),
            Untrue::Counts(why) => why.as_str(),
            Untrue::Lots(why) => why.as_str(),
            Untrue::Terms(why) => why.as_str(),
            Untrue::Courses(why) => why.as_str(),
            Untrue::Documents(why) => why.as_str(),
            Untrue::Archives(why) => why.as_str(),
        }
    }
}
