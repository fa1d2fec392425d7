//! Why entries are refused, grouped by what they are about. Each reason carries what a sentence about it and its remedy need.

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

/// A group of reasons, each with its word for programs.
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
            /// The reason as a word, for programs and logs.
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

/// What cannot be true of an entry.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Untrue {
    /// Its id, its day, or whose rules it says hold.
    Entries(Entries),
    /// What it corrects.
    Corrections(Corrections),
    /// The colonies it names.
    Colonies(Colonies),
    /// The apiary it names, or a nectar flow there.
    Places(Places),
    /// Temperatures.
    Weather(Weather),
    /// A count of mites.
    Counts(Counts),
    /// Medicines, lots, prescriptions and amounts.
    Lots(Lots),
    /// What it says a leaflet or a prescription states.
    Terms(Terms),
    /// A dose or a removal.
    Courses(Courses),
    /// A document.
    Documents(Documents),
    /// What it moves into an archive.
    Archives(Archives),
}

impl Untrue {
    /// The reason as a word, for programs and logs.
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
