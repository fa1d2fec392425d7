//! Why a text, or a value in JSON, cannot be read. The sentences are made elsewhere.

use std::fmt;

use serde::de;
use serde::{Deserialize, Serialize};

/// Why a value cannot be read.
///
/// It passes through a reader of serde as an error of its own ([`super::node`]), which can take in no more than text. So
/// `{:#}` writes it as JSON, from which that error has it back; `{}` is for logs.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
pub enum Misread {
    /// The text is not JSON, in the words of the JSON reader.
    NotJson {
        /// What the reader says, without the place.
        says: String,
    },
    /// A list stands where an object with named fields is wanted.
    ListForObject,
    /// A field is not there.
    MissingField {
        /// Its name.
        field: String,
    },
    /// There is no field of this name.
    UnknownField {
        /// The name.
        field: String,
        /// Those that there are.
        known: Vec<String>,
    },
    /// A field is given twice.
    DuplicateField {
        /// Its name.
        field: String,
    },
    /// A word that is not of the list.
    UnknownWord {
        /// The word.
        word: String,
        /// The list.
        known: Vec<String>,
    },
    /// A value of another type.
    WrongType {
        /// What was found.
        found: Found,
        /// What was wanted.
        wanted: Wanted,
    },
    /// A value of the right type that is out of its range.
    WrongValue {
        /// What was found.
        found: Found,
        /// What was wanted.
        wanted: Wanted,
    },
    /// Text that cannot be a name.
    Name(BadName),
    /// Text that is not a day, a time or an instant.
    Date(NotADate),
    /// Text that is not the id of an entry.
    Id(NotAnId),
    /// Text that is neither the id of an entry nor its number.
    Entry(NotAnEntry),
    /// Text that is not a hash.
    Hash(NotAHash),
    /// Text that is not the id of a key.
    Key(NotAKey),
    /// Text that does not name places in a journal.
    Places(NotPlaces),
    /// Text that is not a checkpoint.
    Checkpoint,
    /// Text that is not an amount.
    Amount(NotAnAmount),
    /// Text that is not a temperature.
    Temperature(NotATemperature),
    /// A confirmation with neither a value nor its words.
    NothingConfirmed,
    /// A confirmation with a value and with words.
    ConfirmedTwice,
    /// Anything else, in the words of whoever found it.
    Other {
        /// What was said.
        says: String,
    },
}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if f.alternate() {
            // Text, numbers and lists: writing them to a string cannot fail.
            return f.write_str(&serde_json::to_string(self).unwrap_or_default());
        }
        fmt::Debug::fmt(self, f)
    }
}

impl Misread {
    /// What the JSON reader says against a text, without the place, which it gives by itself.
    #[must_use]
    pub fn not_json(error: &serde_json::Error) -> Misread {
        let place = format!(" at line {} column {}", error.line(), error.column());
        let says = error.to_string();
        Misread::NotJson { says: says.strip_suffix(&place).unwrap_or(&says).to_owned() }
    }

    /// Has a fault back that passed through a reader as text.
    pub(super) fn passed(message: &impl fmt::Display) -> Misread {
        serde_json::from_str(&format!("{message:#}"))
            .unwrap_or_else(|_| Misread::Other { says: message.to_string() })
    }
}

/// What was found in JSON.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Found {
    /// `null`.
    Null,
    /// `true` or `false`.
    Boolean(bool),
    /// A whole number, as it is written.
    Whole(String),
    /// A number with decimals, as it is written.
    Decimal(String),
    /// Text.
    Text(String),
    /// A list.
    List,
    /// An object.
    Object,
    /// Anything else, in the words of the reader.
    Other(String),
}

impl Found {
    pub(super) fn of(found: &de::Unexpected<'_>) -> Found {
        match found {
            de::Unexpected::Bool(value) => Found::Boolean(*value),
            de::Unexpected::Unsigned(number) => Found::Whole(number.to_string()),
            de::Unexpected::Signed(number) => Found::Whole(number.to_string()),
            de::Unexpected::Float(number) => {
                let number = serde_json::Number::from_f64(*number);
                Found::Decimal(number.map(|number| number.to_string()).unwrap_or_default())
            }
            de::Unexpected::Str(text) => Found::Text((*text).to_owned()),
            de::Unexpected::Unit | de::Unexpected::Option => Found::Null,
            de::Unexpected::Seq => Found::List,
            de::Unexpected::Map => Found::Object,
            de::Unexpected::Char(_)
            | de::Unexpected::Bytes(_)
            | de::Unexpected::NewtypeStruct
            | de::Unexpected::Enum
            | de::Unexpected::UnitVariant
            | de::Unexpected::NewtypeVariant
            | de::Unexpected::TupleVariant
            | de::Unexpected::StructVariant
            | de::Unexpected::Other(_) => Found::Other(found.to_string()),
        }
    }
}

/// What was wanted.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub enum Wanted {
    /// Text.
    Text,
    /// A whole number from 0 to the most, if there is one.
    Whole {
        /// The most.
        most: Option<u64>,
    },
    /// A list.
    List,
    /// An object with named fields.
    Object,
    /// The id of an entry, or its number.
    Entry,
    /// Anything else, in the words of the reader.
    Other(String),
}

impl Wanted {
    /// What a type of Rust wants. serde names it in a fixed word.
    pub(super) fn of(wanted: &dyn de::Expected) -> Wanted {
        let wanted = wanted.to_string();
        match wanted.as_str() {
            "a string" => Wanted::Text,
            "u8" => Wanted::Whole { most: Some(u64::from(u8::MAX)) },
            "u16" => Wanted::Whole { most: Some(u64::from(u16::MAX)) },
            "u64" => Wanted::Whole { most: None },
            "a sequence" => Wanted::List,
            super::entry_id::WANTED => Wanted::Entry,
            _ if wanted.starts_with("struct ") => Wanted::Object,
            _ => Wanted::Other(wanted),
        }
    }
}

macro_rules! texts {
    ($($(#[$doc:meta])+ $name:ident { $($(#[$field_doc:meta])+ $field:ident: $type:ty,)+ } = $case:ident;)+) => {$(
        $(#[$doc])+
        #[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
        #[error("{self:?}")]
        pub struct $name {
            /// The text.
            pub text: String,
            $($(#[$field_doc])+ pub $field: $type,)+
        }

        impl From<$name> for Misread {
            fn from(fault: $name) -> Misread {
                Misread::$case(fault)
            }
        }
    )+};
}

texts! {
    /// Text that cannot be a name.
    BadName {
        /// Of what it would be the name.
        of: Named,
        /// Why it cannot.
        why: NameFault,
    } = Name;

    /// Text that is not a day, a time or an instant.
    NotADate {
        /// What it would have to be.
        wanted: DateWanted,
    } = Date;

    /// Text that is not an amount.
    NotAnAmount {
        /// Why not.
        why: AmountFault,
    } = Amount;

    /// Text that is not a temperature.
    NotATemperature {
        /// Why not.
        why: TemperatureFault,
    } = Temperature;
}

/// Text that is not the id of an entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{self:?}")]
pub struct NotAnId(pub String);

/// Text that is neither the id of an entry nor its number.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{self:?}")]
pub struct NotAnEntry(pub String);

/// Text that is not a hash.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{self:?}")]
pub struct NotAHash(pub String);

/// Text that is not the id of a key.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{self:?}")]
pub struct NotAKey(pub String);

/// Text that does not name places in a journal.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize, thiserror::Error)]
#[error("{self:?}")]
pub struct NotPlaces(pub String);

/// Text that is not a checkpoint.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{self:?}")]
pub struct NotACheckpoint;

impl From<NotAnId> for Misread {
    fn from(fault: NotAnId) -> Misread {
        Misread::Id(fault)
    }
}

impl From<NotAnEntry> for Misread {
    fn from(fault: NotAnEntry) -> Misread {
        Misread::Entry(fault)
    }
}

impl From<NotAHash> for Misread {
    fn from(fault: NotAHash) -> Misread {
        Misread::Hash(fault)
    }
}

impl From<NotAKey> for Misread {
    fn from(fault: NotAKey) -> Misread {
        Misread::Key(fault)
    }
}

impl From<NotPlaces> for Misread {
    fn from(fault: NotPlaces) -> Misread {
        Misread::Places(fault)
    }
}

impl From<NotACheckpoint> for Misread {
    fn from(NotACheckpoint: NotACheckpoint) -> Misread {
        Misread::Checkpoint
    }
}

/// What has a name or a number.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Named {
    /// A holding.
    Holding,
    /// An apiary.
    Apiary,
    /// A colony.
    Colony,
    /// A medicine.
    Medicine,
    /// A lot.
    Lot,
    /// A prescription, which has a number.
    Prescription,
    /// A harvest lot.
    HarvestLot,
    /// A leaflet, which has an id.
    Leaflet,
    /// A method.
    Method,
    /// A jurisdiction, which has a code.
    Jurisdiction,
    /// A person.
    Person,
}

impl Named {
    /// The word for it, where a message or a program tells one from another.
    #[must_use]
    pub const fn as_str(self) -> &'static str {
        match self {
            Named::Holding => "holding",
            Named::Apiary => "apiary",
            Named::Colony => "colony",
            Named::Medicine => "medicine",
            Named::Lot => "lot",
            Named::Prescription => "prescription",
            Named::HarvestLot => "harvest-lot",
            Named::Leaflet => "leaflet",
            Named::Method => "method",
            Named::Jurisdiction => "jurisdiction",
            Named::Person => "person",
        }
    }
}

/// Why a text cannot be a name.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum NameFault {
    /// It is empty.
    Empty,
    /// It begins or ends with a space.
    OuterSpace,
    /// It holds a control character.
    ControlCharacter,
    /// It holds a `/`.
    Slash,
    /// It is longer than 80 characters.
    TooLong,
}

/// What a text would have to be.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum DateWanted {
    /// A date in its form.
    Date,
    /// A day that there is.
    DayOfCalendar,
    /// A day in the range that this program knows.
    DayInRange,
    /// A day of every year.
    YearDay,
    /// A time of day.
    TimeOfDay,
    /// An instant in UTC.
    Instant,
}

/// Why a text is not an amount.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum AmountFault {
    /// It is not a number of zero or more.
    NotANumber,
    /// It has more than three decimals.
    Decimals,
    /// It is more than a million.
    TooMuch,
}

/// Why a text is not a temperature.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum TemperatureFault {
    /// It is not a number of degrees.
    NotANumber,
    /// It has more than one decimal.
    Decimals,
    /// No apiary has it.
    OutOfRange {
        /// What it would be in tenths of a degree Celsius if it was meant in Fahrenheit; none if that is out of range too.
        from_fahrenheit: Option<i64>,
    },
}
