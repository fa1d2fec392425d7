//! Connections to a `SQLite` file that are asked on the spot, on the thread of whoever asks.
//!
//! The driver of all other statements hands each of them to a thread of its own, and each row back. That takes longer than most
//! answers, and longer than taking a row in. So what is asked before every question, and what reads every row of a journal, goes over
//! these. They only read.

use std::path::{Path, PathBuf};
use std::sync::Mutex;
use std::time::Duration;

use combclear_domain::journal::{Hash, Kept};
use rusqlite::Error::InvalidColumnType;
use rusqlite::types::{Type, ValueRef};
use rusqlite::{Connection, OpenFlags, Row};

use crate::fold::held;
use crate::journal::Version;
use crate::row::{Chain, Columns, NotKept};
use crate::sql;

/// "The integer values returned by two invocations of `PRAGMA data_version` from the same connection will be different if changes were
/// committed to the database by any other connection in the interim." Source: SQLite, "Pragma statements", `data_version`. This
/// connection commits nothing.
const DATA_VERSION: &str = "pragma data_version";

/// How long a reader waits while another program puts the log of the file in order.
const BUSY_TIMEOUT: Duration = Duration::from_secs(5);

/// Connections to a file.
pub(crate) struct OnTheSpot {
    file: PathBuf,
    watch: Mutex<Option<Connection>>,
    readers: Mutex<Vec<Connection>>,
    is_open: bool,
}

impl OnTheSpot {
    pub(crate) fn over(file: &Path) -> OnTheSpot {
        let watch = connect(file, Duration::ZERO).ok();
        let is_open = watch.is_some();
        OnTheSpot { file: file.to_owned(), watch: Mutex::new(watch), readers: Mutex::default(), is_open }
    }

    /// Says nothing and reads nothing.
    pub(crate) fn closed() -> OnTheSpot {
        let (watch, readers) = (Mutex::new(None), Mutex::default());
        OnTheSpot { file: PathBuf::new(), watch, readers, is_open: false }
    }

    /// The version now. What cannot be read says nothing: the statement that is asked instead says why.
    pub(crate) fn version(&self) -> Option<Version> {
        let watch = held(&self.watch);
        let mut asked = watch.as_ref()?.prepare_cached(DATA_VERSION).ok()?;
        asked.query_row([], |row| row.get(0)).ok().map(Version)
    }

    /// Entries after a place, as the fold takes them in; or the first that does not follow the one before it, or that cannot be
    /// understood. `None` if they cannot be read like this: the statement that is asked instead says why.
    pub(crate) fn kept(
        &self,
        holding: &str,
        after: Option<(u64, Hash)>,
        limit: u32,
    ) -> Option<Result<Vec<Kept>, NotKept>> {
        if !self.is_open {
            return None;
        }
        let reader = held(&self.readers).pop();
        let reader = match reader {
            Some(reader) => reader,
            None => connect(&self.file, BUSY_TIMEOUT).ok()?,
        };
        let kept = read(&reader, holding, after, limit).ok()?;
        held(&self.readers).push(reader);
        Some(kept)
    }

    /// Closes them one after the other, the last after it read: one that never did leaves the log beside the file.
    pub(crate) fn close(&self) {
        held(&self.readers).clear();
        let _ = self.version();
        held(&self.watch).take();
    }
}

fn connect(file: &Path, wait: Duration) -> rusqlite::Result<Connection> {
    // It has to write to the memory that is shared with others who have the file open, and never to the file.
    let flags = OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_NO_MUTEX;
    let connection = Connection::open_with_flags(file, flags)?;
    connection.busy_timeout(wait)?;
    connection.pragma_update(None, "query_only", "on")?;
    Ok(connection)
}

fn read(
    reader: &Connection,
    holding: &str,
    after: Option<(u64, Hash)>,
    limit: u32,
) -> rusqlite::Result<Result<Vec<Kept>, NotKept>> {
    let mut chain = Chain::after(after);
    let Some(from) = chain.next_place() else { return Ok(Ok(Vec::new())) };
    let mut kept = Vec::new();
    let mut asked = reader.prepare_cached(sql::KEPT)?;
    let mut rows = asked.query((holding, from, limit))?;
    while let Some(row) = rows.next()? {
        match chain.next(holding, &columns(row)?) {
            Ok(entry) => kept.push(entry),
            Err(why) => return Ok(Err(why)),
        }
    }
    Ok(Ok(kept))
}

/// The columns of [`sql::KEPT`], each as the bytes that it holds.
fn columns<'a>(row: &'a Row<'_>) -> rusqlite::Result<Columns<'a>> {
    // What is of another kind is left to the statement that is asked instead.
    let noted = |at: usize| match row.get_ref(at)? {
        ValueRef::Null => Ok(None),
        ValueRef::Text(bytes) | ValueRef::Blob(bytes) => Ok(Some(bytes)),
        other => Err(InvalidColumnType(at, String::new(), other.data_type())),
    };
    let bytes = |at: usize| noted(at)?.ok_or(InvalidColumnType(at, String::new(), Type::Null));
    Ok(Columns {
        seq: row.get(0)?,
        id: bytes(1)?,
        happened_on: bytes(2)?,
        happened_at: noted(3)?,
        recorded_at: bytes(4)?,
        recorded_by: bytes(5)?,
        kind: bytes(6)?,
        body: bytes(7)?,
        corrects: noted(8)?,
        reason: noted(9)?,
        copied_from: noted(10)?,
        written_on: noted(11)?,
        key: noted(12)?,
        hash: bytes(13)?,
    })
}
