//! The journal kept in a database. This is the only crate that knows SQL.
//!
//! ```text
//! lib.rs          open(url): chooses the database by the scheme of the address
//! journal.rs      trait Journal, and what its calls answer: all that the rest of the program sees
//! documents.rs    the documents of a holding, each held against what is kept of it
//! holdings.rs     Holdings: a journal and the holdings it tells of; takes entries in, answers from memory
//! sql_journal.rs  SqlJournal<B: Backend>: append, page, verify ..., written once for every database
//! verify.rs       walks the chain over raw rows
//! row.rs          an entry as a row, and a row as an entry
//! sql.rs          every statement, once, with $1 placeholders
//! statements.rs   trait Statements: bind and fetch, stamped per database by a macro
//! sqlite.rs       SQLite: how a file is opened, how a write begins, what its errors mean
//! error.rs        StoreError
//! ```
//!
//! # What it promises
//!
//! - Entries are added and never changed: triggers refuse it. The one exception is the archive step: it takes away the
//!   bodies of the entries that it names, once, and contents of documents that no remaining entry names. All else of
//!   an entry stays, and verification and every answer miss a body of which no archive tells.
//! - The content of a document goes in together with the entry that attaches it, and is never changed.
//! - A batch is written as a whole or not at all, and only after the entry that its writer thought was the last.
//! - What is read is what was written, to the byte. A row that cannot be understood is named, never skipped.
//! - A call that is given up half-way (its future dropped) leaves nothing behind and nothing locked. It may still have
//!   been written as a whole: look the id up.
//! - A file that is not a journal is left as it is.
//!
//! # To add a database
//!
//! 1. Put `NNNN_*.sql` into a folder of its own beside `migrations/sqlite`, under the same file names, with the same
//!    table, checks and triggers. Bodies stay text: a JSON type rewrites them, and the hash no longer fits.
//! 2. Stamp `statements_on!(TheConnection)` in `statements.rs`. The statements of `sql.rs` are shared; where one does
//!    not run on both databases, rewrite it so that it does.
//! 3. Write a module like `sqlite.rs` that implements `Backend`: a pool to read from, `begin_write` (it must let one
//!    writer of a holding in at a time, before the last entry is read), `explain` for errors.
//! 4. Choose it by its scheme in [`open`].
//! 5. Run `tests/contract` on it too.
#![deny(missing_docs)]

use std::sync::Arc;

mod documents;
mod holdings;
mod journal;
mod row;
mod sql;
mod sql_journal;
mod sqlite;
mod statements;
mod verify;

use combclear_domain::journal::keeping::BadAddress;
pub use combclear_domain::journal::keeping::{ContentState, DocumentFault, Missed, StoreError};

pub use documents::{Attached, contents_of, documents};
pub use holdings::{Holdings, OnRefusal, RecordError, Recorded};
pub use journal::{AppendError, Journal, Verified};

/// Opens the journals kept at an address, and brings the database up to date.
///
/// `sqlite:journal.db` (or `sqlite://journal.db`) names a file, which is made if it is missing. `?mode=rw` opens only a
/// file that is there. In the path, `?` is written `%3F` and `%` is written `%25`.
///
/// # Errors
/// An address that names no database this program can use; a file that cannot be opened, read or written, is locked,
/// belongs to another program or was made by a newer version of this one. Such a file is left as it is.
pub async fn open(url: &str) -> Result<Arc<dyn Journal>, StoreError> {
    match url.split_once(':') {
        Some(("sqlite", path)) => Ok(Arc::new(sqlite::open(path).await?)),
        Some(("postgres" | "postgresql", _)) => Err(StoreError::Address(BadAddress::NotBuiltYet)),
        // The rest of the address may hold a password, so it is not repeated.
        Some((scheme, rest)) if rest.starts_with("//") => {
            Err(StoreError::Address(BadAddress::OtherKind { kind: scheme.to_owned() }))
        }
        _ => Err(StoreError::Address(BadAddress::NoKind { address: url.to_owned() })),
    }
}
