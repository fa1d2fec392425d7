//! Errors of the database, with help.

/// Why the journals could not be opened, read or written.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum StoreError {
    /// The address names no database that this program can use.
    #[error("{message}")]
    Address {
        /// What is wrong with the address.
        message: String,
        /// How to write it.
        help: String,
    },
    /// The file cannot be opened.
    #[error("cannot open `{place}`: {why}")]
    CannotOpen {
        /// Where the database is.
        place: String,
        /// Why.
        why: String,
    },
    /// It can be read but not written.
    #[error("`{place}` is read-only")]
    ReadOnly {
        /// Where the database is.
        place: String,
    },
    /// The file is not a database.
    #[error("`{place}` is not a database")]
    NotADatabase {
        /// Where the file is.
        place: String,
    },
    /// A database, but not of journals.
    #[error("`{place}` is a database of another program")]
    Foreign {
        /// Where the database is.
        place: String,
    },
    /// Made by a newer version of this program.
    #[error("`{place}` has version {version} of the tables; this program knows versions up to {known}")]
    Newer {
        /// Where the database is.
        place: String,
        /// The version found.
        version: i64,
        /// The newest version this program knows.
        known: i64,
    },
    /// Its tables were made by statements other than this program's.
    #[error("version {version} of the tables in `{place}` is not the one that this program makes")]
    Altered {
        /// Where the database is.
        place: String,
        /// The version that differs.
        version: i64,
    },
    /// The disk is full.
    #[error("no room is left to write to `{place}`; nothing was recorded")]
    Full {
        /// Where the database is.
        place: String,
    },
    /// Another writer, in this program or elsewhere, kept it locked for too long.
    #[error("`{place}` is locked by another writer")]
    Locked {
        /// Where the database is.
        place: String,
    },
    /// Its pages are inconsistent.
    #[error("`{place}` is damaged: {what}")]
    Damaged {
        /// Where the database is.
        place: String,
        /// The error text of the database.
        what: String,
    },
    /// An I/O error.
    #[error("`{place}` could not be read or written: {what}")]
    Device {
        /// Where the database is.
        place: String,
        /// The error text of the database.
        what: String,
    },
    /// A row that cannot be read as an entry.
    #[error("entry {seq} of `{holding}` cannot be read: {what}")]
    Unreadable {
        /// The holding.
        holding: String,
        /// Its place in the journal.
        seq: u64,
        /// What is wrong with the row.
        what: String,
    },
    /// Entries are stored under a name that no holding can have.
    #[error("entries are kept under a name that cannot be read: {what}")]
    UnreadableName {
        /// The name and its fault.
        what: String,
    },
    /// Any other error of the database.
    #[error("the database at `{place}` refuses: {source}")]
    Database {
        /// Where the database is.
        place: String,
        /// The error.
        source: sqlx::Error,
    },
}

impl StoreError {
    /// How to fix it.
    #[must_use]
    pub fn help(&self) -> &str {
        match self {
            StoreError::Address { help, .. } => help,
            StoreError::CannotOpen { .. } => {
                "check the path, and that its folder is there and can be written"
            }
            StoreError::ReadOnly { .. } => {
                "allow this program to write the file and its folder, or work on a copy elsewhere"
            }
            StoreError::NotADatabase { .. } | StoreError::Foreign { .. } => {
                "it was left as it is; name another file, or bring this one back from a copy"
            }
            StoreError::Newer { .. } => "use the version of this program that made it, or a later one",
            StoreError::Altered { .. } => {
                "use the program that made it, and export the journal with that one"
            }
            StoreError::Full { .. } => {
                "make room on the disk, then send the same entries again under the same ids"
            }
            StoreError::Locked { .. } => {
                "try again; if it stays so, look for another program that has the file open"
            }
            StoreError::Damaged { .. } => {
                "keep the file as it is, and bring the journal back from a copy or an export"
            }
            StoreError::Device { .. } => "check the disk and its connection, then try again",
            StoreError::Unreadable { .. } | StoreError::UnreadableName { .. } => {
                "verify the journal: it was changed outside this program, or a newer version of it wrote the entry"
            }
            StoreError::Database { .. } => "nothing was recorded; try again, and report it if it stays so",
        }
    }
}
