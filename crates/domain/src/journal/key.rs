//! Keys: who may ask, and who may record, where others can reach the service. A key belongs to one holding and has one role.

use std::fmt;
use std::str::FromStr;

use serde::Serialize;

use crate::basics::calendar::{Day, Instant};
use crate::basics::misread::NotAKey;
use crate::basics::text::text_in_json;
use crate::basics::words::{HoldingName, Person};
use crate::journal::entry::Draft;
use crate::journal::event::Kind;

/// What names a key: eight signs, digits and small letters. It is no secret, and stands in every entry that the key recorded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(
    feature = "openapi",
    derive(utoipa::ToSchema),
    schema(value_type = String, pattern = r"^[0-9a-z]{8}$", example = "4k7wq2xm")
)]
pub struct KeyId([u8; KeyId::LENGTH]);

text_in_json!(KeyId);

impl KeyId {
    /// Its length, in characters.
    pub const LENGTH: usize = 8;

    /// It as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        // Only digits and letters are ever put in.
        str::from_utf8(&self.0).unwrap_or_default()
    }
}

impl FromStr for KeyId {
    type Err = NotAKey;

    fn from_str(text: &str) -> Result<KeyId, NotAKey> {
        let not = || NotAKey(text.to_owned());
        let signs: [u8; KeyId::LENGTH] = text.as_bytes().try_into().map_err(|_| not())?;
        let fits = |sign: &u8| sign.is_ascii_digit() || sign.is_ascii_lowercase();
        if signs.iter().all(fits) { Ok(KeyId(signs)) } else { Err(not()) }
    }
}

impl fmt::Display for KeyId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// What the holder of a key is to the holding.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Role {
    /// Keeps the bees: everything in the holding.
    Keeper,
    /// Helps: reads, and adds entries. Corrects nothing.
    Helper,
    /// The vet: reads, and adds prescriptions, the vet's own stock and what was given.
    Vet,
    /// Reads only: an inspector, a packer.
    Reader,
    /// Runs the service: begins holdings and sees how it does. Reads no holding.
    Operator,
}

/// What a request does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Deed {
    /// Asks a question of a holding.
    Read,
    /// Adds entries to a holding.
    Add,
    /// Begins a holding.
    Begin,
    /// Looks at the service itself: what it measures.
    Watch,
}

impl Deed {
    /// Every deed.
    pub const ALL: [Deed; 4] = [Deed::Read, Deed::Add, Deed::Begin, Deed::Watch];
}

impl Role {
    /// Every role.
    pub const ALL: [Role; 5] = [Role::Keeper, Role::Helper, Role::Vet, Role::Reader, Role::Operator];

    /// The role in a word.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            Role::Keeper => "keeper",
            Role::Helper => "helper",
            Role::Vet => "vet",
            Role::Reader => "reader",
            Role::Operator => "operator",
        }
    }

    /// The role of this word.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Role> {
        Role::ALL.into_iter().find(|role| role.as_str() == word)
    }

    /// Whether a key of this role is for one holding. The operator's is for none.
    #[must_use]
    pub fn is_of_a_holding(self) -> bool {
        self != Role::Operator
    }

    /// Whether it may do this at all.
    #[must_use]
    pub fn may(self, deed: Deed) -> bool {
        match (self, deed) {
            (Role::Keeper | Role::Helper | Role::Vet, Deed::Read | Deed::Add)
            | (Role::Reader, Deed::Read)
            | (Role::Operator, Deed::Begin | Deed::Watch) => true,
            (Role::Keeper | Role::Helper | Role::Vet, Deed::Begin | Deed::Watch)
            | (Role::Reader, Deed::Add | Deed::Begin | Deed::Watch)
            | (Role::Operator, Deed::Read | Deed::Add) => false,
        }
    }

    /// Whether it may record this entry.
    ///
    /// # Errors
    /// Why not.
    pub fn may_record(self, draft: &Draft) -> Result<(), NotAllowed> {
        let corrects = draft.correction.is_some();
        match self {
            Role::Reader | Role::Operator => Err(NotAllowed::Records),
            Role::Helper | Role::Vet if corrects => Err(NotAllowed::Corrects),
            Role::Vet if !Role::OF_A_VET.contains(&draft.kind()) => {
                Err(NotAllowed::OtherKind { kind: draft.kind() })
            }
            Role::Keeper | Role::Helper | Role::Vet => Ok(()),
        }
    }

    /// The kinds of entry that a vet may add.
    pub const OF_A_VET: [Kind; 5] = [
        Kind::Prescription,
        Kind::VetLot,
        Kind::Administration,
        Kind::MedicineDescribed,
        Kind::DocumentAttached,
    ];
}

/// Why an entry may not be recorded with a key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotAllowed {
    /// The role records nothing.
    Records,
    /// The role corrects nothing.
    Corrects,
    /// The role does not record this kind.
    OtherKind {
        /// The kind.
        kind: Kind,
    },
}

impl fmt::Display for Role {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.as_str())
    }
}

/// When an entry is recorded, and with which key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Stamp {
    /// When, by the clock of the machine.
    pub at: Instant,
    /// The key, where one was asked for.
    pub key: Option<KeyId>,
}

impl From<Instant> for Stamp {
    fn from(at: Instant) -> Stamp {
        Stamp { at, key: None }
    }
}

/// A key as the database keeps it, without what is secret about it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Key {
    /// What names it.
    pub id: KeyId,
    /// Its holding; none for the operator's.
    pub holding: Option<HoldingName>,
    /// What its holder may do.
    pub role: Role,
    /// Who holds it.
    pub holder: Person,
    /// When it was made.
    pub made_at: Instant,
    /// The last day on which it holds, if there is one.
    pub until: Option<Day>,
    /// When it was ended, if it was.
    pub ended_at: Option<Instant>,
}

impl Key {
    /// Whether it holds on a day.
    #[must_use]
    pub fn holds_on(&self, today: Day) -> bool {
        self.ended_at.is_none() && self.until.is_none_or(|until| today <= until)
    }
}
