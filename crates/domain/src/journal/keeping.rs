//! What can be wrong with a journal where it is kept: the database, its rows, the contents of documents. The sentences are made
//! elsewhere.

use serde::Serialize;

use crate::basics::words::{BadName, HoldingName, LotName, PrescriptionName};
use crate::journal::entry::EntryId;
use crate::journal::misfit::Misfit;
use crate::journal::seal::{Broken, Hash};

/// Why the journals could not be opened, read or written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{self:?}")]
pub enum StoreError {
    /// The address names no database that this program can use.
    Address(BadAddress),
    /// The file cannot be opened.
    CannotOpen {
        /// Where the database is.
        place: String,
        /// Why.
        why: NotOpened,
    },
    /// It can be read but not written.
    ReadOnly {
        /// Where the database is.
        place: String,
    },
    /// The file is something else.
    NotADatabase {
        /// Where the file is.
        place: String,
    },
    /// A database, but not one of journals.
    Foreign {
        /// Where the database is.
        place: String,
    },
    /// A newer version of this program made it.
    Newer {
        /// Where the database is.
        place: String,
        /// The version that is not known.
        version: i64,
        /// The newest version that is.
        known: i64,
    },
    /// Its tables were made by other statements than those of this program.
    Altered {
        /// Where the database is.
        place: String,
        /// The version that differs.
        version: i64,
    },
    /// No room is left.
    Full {
        /// Where the database is.
        place: String,
    },
    /// Another program, or another part of this one, kept it locked for too long.
    Locked {
        /// Where the database is.
        place: String,
    },
    /// The server of the database cannot be reached, or does not answer.
    Unreachable {
        /// Where the database is.
        place: String,
        /// What the driver or the server says about it.
        what: String,
    },
    /// The server does not admit the user of the address, or does not let that user do what is needed.
    NotAdmitted {
        /// Where the database is.
        place: String,
        /// What the server says about it.
        what: String,
    },
    /// The server only follows another, and may be behind it.
    Follows {
        /// Where the database is.
        place: String,
    },
    /// The server is older than any that this program works with.
    TooOld {
        /// Where the database is.
        place: String,
        /// Its version.
        version: i32,
        /// The oldest version that this program works with.
        least: i32,
    },
    /// The database keeps texts in another encoding than UTF-8.
    OtherEncoding {
        /// Where the database is.
        place: String,
        /// Its encoding.
        encoding: String,
    },
    /// Its pages contradict each other.
    Damaged {
        /// Where the database is.
        place: String,
        /// What the database says about it.
        what: String,
    },
    /// The machine could not read or write it.
    Device {
        /// Where the database is.
        place: String,
        /// What the database says about it.
        what: String,
    },
    /// It was taken away or replaced while this program had it open.
    Replaced {
        /// Where the database was.
        place: String,
    },
    /// Its tables and what guards them are not those that this program makes.
    Guards {
        /// Where the database is.
        place: String,
        /// The names of those that are missing or differ, and of those that are not of this program.
        names: Vec<String>,
    },
    /// An entry is not as it was sealed, or does not follow the one before it.
    Broken {
        /// The holding.
        holding: HoldingName,
        /// The entry, and what does not fit.
        broken: Box<Broken>,
    },
    /// Two orders of the same entries do not hold as many: some cannot be reached in one of them.
    Lost {
        /// The holding.
        holding: HoldingName,
        /// Entries that are reached by their places.
        by_place: u64,
        /// Entries that are reached by their ids.
        by_id: u64,
    },
    /// A row that cannot be understood as an entry.
    Unreadable {
        /// The holding.
        holding: HoldingName,
        /// Its place in the journal.
        seq: u64,
        /// What cannot be understood.
        what: Misfit,
    },
    /// A name under which entries are kept, but which cannot be a holding's.
    UnreadableName(BadName),
    /// A row that cannot be understood as a key.
    UnreadableKey {
        /// What stands for its id.
        id: String,
        /// What cannot be understood.
        what: Box<Misfit>,
    },
    /// Anything else that the database refuses.
    Database {
        /// Where the database is.
        place: String,
        /// What it says.
        what: String,
    },
}

/// An address that names no database that this program can use.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum BadAddress {
    /// It does not say what kind of database it is.
    NoKind {
        /// The address; may be empty.
        address: String,
    },
    /// Nothing is kept in this kind of database. The rest of the address may hold a password.
    OtherKind {
        /// The kind.
        kind: String,
    },
    /// What names a server cannot be read. It may hold a password.
    UnreadableServer,
    /// A parameter that the address of a server does not take. Its value may be a password.
    OtherParameter {
        /// Its name.
        parameter: String,
    },
    /// It names no file.
    NoFile,
    /// What stands for the file is not the path of one.
    NotAPath {
        /// What stands there.
        file: String,
    },
    /// Something is asked of the file that cannot be.
    OtherAsked {
        /// What is asked.
        asked: String,
    },
    /// The path cannot be read.
    UnreadablePath {
        /// The path.
        file: String,
    },
}

/// Why a file cannot be opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NotOpened {
    /// It is a folder.
    IsAFolder,
    /// Its folder is not there.
    NoFolder,
    /// It is not there and cannot be made.
    NoFile,
    /// The system refuses access.
    Refused,
}

/// How a journal misses a checkpoint.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{self:?}")]
pub enum Missed {
    /// It was taken of another holding.
    OtherHolding {
        /// Whose it is.
        of: HoldingName,
    },
    /// The end was cut off.
    Shorter {
        /// Entries then.
        had: u64,
        /// Entries now.
        has: u64,
    },
    /// The chain was made anew, from some entry up to this one.
    Differs {
        /// The last entry then.
        seq: u64,
        /// Its hash then.
        had: Hash,
        /// Its hash now.
        has: Hash,
    },
}

/// Whether the content of a document is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ContentState {
    /// It is, as it was attached.
    Kept,
    /// Nothing is kept under its hash. The entry came in without it, or it was taken away.
    Missing,
    /// Something else is kept in its place.
    Altered,
}

impl ContentState {
    /// The state in a word.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            ContentState::Kept => "kept",
            ContentState::Missing => "missing",
            ContentState::Altered => "altered",
        }
    }
}

/// A document that is missing or altered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, thiserror::Error)]
#[error("{self:?}")]
pub struct DocumentFault {
    /// Its hash.
    pub content: Hash,
    /// Missing or altered.
    pub state: ContentState,
    /// The place of the entry that attaches it.
    pub seq: u64,
    /// The id of that entry.
    pub id: EntryId,
    /// The lot whose purchase it proves.
    pub lot: Option<LotName>,
    /// The prescription that it is a copy of.
    pub prescription: Option<PrescriptionName>,
}
