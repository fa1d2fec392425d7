//! `SQLite`: one file, one writer, several readers.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::{Hash, Kept};
use sqlx::migrate::{MigrateError, Migrator};
use sqlx::sqlite::{SqliteConnectOptions, SqlitePoolOptions, SqliteSynchronous};
use sqlx::{ConnectOptions, Connection, Sqlite, SqliteConnection, SqlitePool, Transaction};
use tokio::sync::OnceCell;

use crate::journal::{Version, Weakness};
use crate::on_the_spot::OnTheSpot;
use crate::row::NotKept;
use crate::sql_journal::{Backend, SqlJournal};
use combclear_domain::journal::keeping::{BadAddress, NotOpened, StoreError};

static MIGRATIONS: Migrator = sqlx::migrate!("../../migrations/sqlite");

/// How long a writer waits for another, in this program or elsewhere.
const BUSY_TIMEOUT: Duration = Duration::from_secs(5);

/// Pause between attempts to turn on write-ahead logging, and their number.
const RETRY: (Duration, u32) = (Duration::from_millis(20), 250);

/// Concurrent readers.
const READERS: u32 = 4;

/// Takes the write lock at once. A plain `begin` takes it at the first write, after reading, and then cannot wait for it.
const BEGIN_WRITE: &str = "begin immediate";

/// Tests whether the file is writable: `begin immediate` succeeds even on one that is not.
const WRITE_NOTHING: &str = "insert into entries select * from entries where false";

/// A database in a file.
pub(crate) struct SqliteFile {
    place: PathBuf,
    writer: SqlitePool,
    readers: SqlitePool,
    on_the_spot: OnTheSpot,
    /// Why nothing that it holds is to be trusted, if something was wrong with it when it was opened.
    untrusted: Option<StoreError>,
    /// Which file it is: one that is put in its place later is another.
    identity: Option<Identity>,
    /// Why nothing can be written, if the file is open for reading only.
    reading_only: Option<StoreError>,
}

/// Opens or creates the file named after `sqlite:`.
pub(crate) async fn open(path: &str) -> Result<SqlJournal<SqliteFile>, StoreError> {
    SqliteFile::open(path).await.map(SqlJournal::new)
}

impl SqliteFile {
    async fn open(path: &str) -> Result<SqliteFile, StoreError> {
        let (options, mode) = options(path)?;
        let asked_to_read = mode == Mode::Read;
        let place = options.get_filename().to_owned();
        let prepared = if asked_to_read {
            Err(StoreError::ReadOnly { place: place.display().to_string() })
        } else {
            prepare(&options, &place, mode == Mode::Create).await
        };
        let (untrusted, reading_only, options) = match prepared {
            Ok(untrusted) => (untrusted, None, options),
            Err(why) => {
                let why = why_reading_only(why, asked_to_read, &place)?;
                let (untrusted, options) = prepare_reading(options, &place, &why).await?;
                (untrusted, Some(why), options)
            }
        };
        // The file exists now. If it disappears, a new connection must not create an empty one.
        let options = options.create_if_missing(false).synchronous(SqliteSynchronous::Full);
        let writer = pool()
            .max_connections(1)
            // After an I/O error SQLite rolls back by itself, without the driver noticing.
            .before_acquire(|connection, _| Box::pin(async move { Ok(!connection.is_in_transaction()) }))
            .connect_lazy_with(options.clone());
        let readers = pool().max_connections(READERS).connect_lazy_with(options.pragma("query_only", "on"));
        let identity = identity(&place);
        let on_the_spot = if reading_only.is_none() { OnTheSpot::over(&place) } else { OnTheSpot::closed() };
        Ok(SqliteFile { place, writer, readers, on_the_spot, untrusted, identity, reading_only })
    }
}

/// Connections to a file are kept for as long as the program runs: nothing is gained by opening it anew. That also keeps the
/// pool from looking after its idle connections now and then. It counts them after it puts one back, so it may take the count
/// for below zero while another takes one out, and then it looks at a number of connections that it never gets through.
fn pool() -> SqlitePoolOptions {
    // Nor can a file fall silent, which would be found out before each use.
    SqlitePoolOptions::new().max_lifetime(None).idle_timeout(None).test_before_acquire(false)
}

impl Backend for SqliteFile {
    type Db = Sqlite;

    /// The disk answers, or says that it does not.
    const PATIENCE: Option<Duration> = None;

    fn readers(&self) -> &SqlitePool {
        &self.readers
    }

    fn is_in_place(&self) -> Result<(), StoreError> {
        if identity(&self.place) == self.identity {
            return Ok(());
        }
        Err(StoreError::Replaced { place: self.place.display().to_string() })
    }

    fn version(&self) -> Option<Version> {
        self.on_the_spot.version()
    }

    fn kept_on_the_spot(
        &self,
        holding: &str,
        after: Option<(u64, Hash)>,
        limit: u32,
    ) -> Option<Result<Vec<Kept>, NotKept>> {
        self.on_the_spot.kept(holding, after, limit)
    }

    fn may_write(&self) -> Result<(), StoreError> {
        self.reading_only.clone().map_or(Ok(()), Err)
    }

    fn trusted(&self) -> Result<(), StoreError> {
        self.untrusted.clone().map_or(Ok(()), Err)
    }

    async fn sound(&self) -> Result<(), StoreError> {
        let explain = |error| explain(&self.place, &error);
        let mut reader = self.readers.acquire().await.map_err(explain)?;
        check_pages(&mut reader, &self.place, WHOLE_FILE).await
    }

    async fn copy_into(&self, file: &Path) -> Result<bool, StoreError> {
        let explain = |error: sqlx::Error| {
            // The one that is open is read, and only the new one is written.
            let place = match primary_code(&error) {
                Some(FULL | CANTOPEN) => file,
                Some(IOERR) if !READING.contains(&code(&error).unwrap_or_default()) => file,
                _ => &self.place,
            };
            explain(place, &error)
        };
        let Some(name) = file.to_str() else {
            let file = file.display().to_string();
            return Err(StoreError::Address(BadAddress::UnreadablePath { file }));
        };
        make_for_its_owner(file);
        // Connections for reading may not write into the copy either. This one holds up no writer: it only reads the journal.
        let mut connection = self.writer.acquire().await.map_err(explain)?;
        sqlx::query("vacuum into $1").bind(name).execute(&mut *connection).await.map_err(explain)?;
        Ok(true)
    }

    async fn weaknesses(&self) -> Result<Vec<Weakness>, StoreError> {
        // Every connection is opened so that a commit is on the disk.
        Ok(Vec::new())
    }

    async fn close(&self) {
        self.readers.close().await;
        self.writer.close().await;
        // The last connection to close moves the log into the file. Of two that close at once, each finds the other still there.
        self.on_the_spot.close();
    }

    async fn begin_write(&self, _: Option<&HoldingName>) -> sqlx::Result<Transaction<'static, Sqlite>> {
        self.writer.begin_with(BEGIN_WRITE).await
    }

    fn explain(&self, error: sqlx::Error) -> StoreError {
        explain(&self.place, &error)
    }
}

/// The file that an address names after `sqlite:`.
pub(crate) fn file_of(path: &str) -> Result<PathBuf, StoreError> {
    options(path).map(|(options, _)| options.get_filename().to_owned())
}

/// The device and the number of a file on it.
type Identity = (u64, u64);

/// Which file lies at a path, where the system tells files apart. Elsewhere a file that is open cannot be taken away.
fn identity(path: &Path) -> Option<Identity> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt;
        path.metadata().ok().map(|file| (file.dev(), file.ino()))
    }
    #[cfg(not(unix))]
    {
        let _ = path;
        None
    }
}

/// Rows that the database may read ahead. Journals are read in long pages; with fewer, reader and database would wait for
/// each other all the time.
const ROWS_AHEAD: usize = 2_000;

/// What may be done with a file.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Mode {
    /// It is read, and never written.
    Read,
    /// It must be there.
    Existing,
    /// It is made if it is not there.
    Create,
}

/// How to open the file, according to its address, and what may be done with it.
fn options(path: &str) -> Result<(SqliteConnectOptions, Mode), StoreError> {
    let wrong = |bad: BadAddress| Err(StoreError::Address(bad));
    let path = path.strip_prefix("//").unwrap_or(path);
    let (file, parameters) = path.split_once('?').map_or((path, None), |(file, rest)| (file, Some(rest)));
    if file.is_empty() {
        return wrong(BadAddress::NoFile);
    }
    if file.starts_with(":memory:") || file.starts_with("file:") {
        return wrong(BadAddress::NotAPath { file: file.to_owned() });
    }
    if let Some(other) = parameters.filter(|asked| !["mode=rwc", "mode=rw", "mode=ro"].contains(asked)) {
        return wrong(BadAddress::OtherAsked { asked: other.to_owned() });
    }
    let options = match format!("sqlite:{path}").parse::<SqliteConnectOptions>() {
        Ok(options) if parameters.is_none() => options.create_if_missing(true),
        Ok(options) => options,
        Err(_) => return wrong(BadAddress::UnreadablePath { file: file.to_owned() }),
    };
    let options = options.foreign_keys(true).busy_timeout(BUSY_TIMEOUT).row_buffer_size(ROWS_AHEAD);
    let mode = match parameters {
        Some("mode=ro") => Mode::Read,
        Some("mode=rw") => Mode::Existing,
        _ => Mode::Create,
    };
    Ok((options, mode))
}

/// Makes sure that the file is ours, is writable and has the tables of this program. Returns what speaks against trusting what it
/// holds: it can still be verified.
async fn prepare(
    options: &SqliteConnectOptions,
    place: &Path,
    may_create: bool,
) -> Result<Option<StoreError>, StoreError> {
    let explain = |error: sqlx::Error| explain(place, &error);
    look_at_file(place)?;
    if may_create {
        make_for_its_owner(place);
    }
    let mut connection = options.connect().await.map_err(explain)?;
    // Check whose file it is before writing anything.
    if is_foreign(&mut connection).await.map_err(explain)? {
        return Err(StoreError::Foreign { place: place.display().to_string() });
    }
    write_ahead(&mut connection).await.map_err(explain)?;
    // One transaction around all steps, so that of two programs opening a new file only one creates the tables.
    let mut write = connection.begin_with(BEGIN_WRITE).await.map_err(explain)?;
    MIGRATIONS.run_direct(None, &mut *write, false).await.map_err(|error| explain_migration(place, error))?;
    sqlx::query(WRITE_NOTHING).execute(&mut *write).await.map_err(explain)?;
    write.commit().await.map_err(explain)?;
    let mut untrusted = check_guards(&mut connection, place).await.err();
    let (pages, size): (i64, i64) =
        sqlx::query_as("select page_count, page_size from pragma_page_count, pragma_page_size")
            .fetch_one(&mut connection)
            .await
            .map_err(explain)?;
    if pages.saturating_mul(size) <= CHECKED_WHEN_OPENED {
        // What stands in a row is left to the chain, which names the entry.
        sqlx::query("pragma ignore_check_constraints = on")
            .execute(&mut connection)
            .await
            .map_err(explain)?;
        untrusted = untrusted.or(check_pages(&mut connection, place, OF_ENTRIES).await.err());
    }
    connection.close().await.map_err(explain)?;
    Ok(untrusted)
}

/// Why a file that could not be opened for writing may still be read: it was asked for like that, or no room is left on its disk.
///
/// # Errors
/// Any other reason.
fn why_reading_only(why: StoreError, asked_to_read: bool, place: &Path) -> Result<StoreError, StoreError> {
    if asked_to_read {
        return Ok(why);
    }
    match why {
        // SQLite needs room beside the file before it reads from it, and tells of a fault of the disk if there is none.
        StoreError::Full { .. } | StoreError::Device { .. } if place.exists() && is_full(place) => {
            Ok(StoreError::Full { place: place.display().to_string() })
        }
        why => Err(why),
    }
}

/// Whether the disk of a file takes in nothing more.
fn is_full(place: &Path) -> bool {
    let folder = place.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let written =
        tempfile::NamedTempFile::new_in(folder).and_then(|mut file| file.write_all(&vec![1; 64 * 1024]));
    written.is_err_and(|error| matches!(error.kind(), ErrorKind::StorageFull | ErrorKind::QuotaExceeded))
}

/// Opens a file for reading only. Returns what speaks against trusting it, and how connections are opened.
///
/// # Errors
/// `why`, if it cannot be read either; or its tables are not those of this version, which could be brought up to date only by
/// writing.
async fn prepare_reading(
    options: SqliteConnectOptions,
    place: &Path,
    why: &StoreError,
) -> Result<(Option<StoreError>, SqliteConnectOptions), StoreError> {
    if !place.is_file() {
        return Err(StoreError::CannotOpen {
            place: place.display().to_string(),
            why: why_not_opened(place),
        });
    }
    let shared = options.read_only(true).create_if_missing(false);
    let mut connection = match readable(&shared).await {
        Some(connection) => connection,
        // Without the files beside it, only what is in the file itself can be read. That is all, if the log is empty.
        None if log_is_empty(place) => {
            let alone = shared.clone().immutable(true);
            let Some(connection) = readable(&alone).await else { return Err(why.clone()) };
            return looked_at(connection, place, alone).await;
        }
        None => return Err(why.clone()),
    };
    if is_foreign(&mut connection).await.map_err(|error| explain(place, &error))? {
        return Err(StoreError::Foreign { place: place.display().to_string() });
    }
    looked_at(connection, place, shared).await
}

/// A connection over which the file can be read.
async fn readable(options: &SqliteConnectOptions) -> Option<SqliteConnection> {
    let mut connection = options.connect().await.ok()?;
    let read: sqlx::Result<i64> =
        sqlx::query_scalar("select count(*) from sqlite_schema").fetch_one(&mut connection).await;
    read.is_ok().then_some(connection)
}

async fn looked_at(
    mut connection: SqliteConnection,
    place: &Path,
    options: SqliteConnectOptions,
) -> Result<(Option<StoreError>, SqliteConnectOptions), StoreError> {
    let untrusted = check_guards(&mut connection, place).await.err();
    connection.close().await.map_err(|error| explain(place, &error))?;
    Ok((untrusted, options))
}

/// Whether everything is in the file itself, and nothing in the log beside it.
fn log_is_empty(place: &Path) -> bool {
    let mut log = place.as_os_str().to_owned();
    log.push("-wal");
    Path::new(&log).metadata().map_or(true, |log| log.len() == 0)
}

/// Files up to this size, in bytes, have the pages of their entries checked whenever they are opened: some milliseconds. Those of
/// larger ones are checked by `verify`. A question checks the chain and the number of entries, whatever the size.
const CHECKED_WHEN_OPENED: i64 = 16 * 1024 * 1024;

/// Checks the pages of the entries and of the index over their ids.
const OF_ENTRIES: &str = "pragma integrity_check(entries)";
/// Checks every page, those of the documents too.
const WHOLE_FILE: &str = "pragma integrity_check";

/// Checks that pages are as the database wrote them: keys in order, every row in every index.
async fn check_pages(
    connection: &mut SqliteConnection,
    place: &Path,
    check: &'static str,
) -> Result<(), StoreError> {
    let found: Vec<String> =
        sqlx::query_scalar(check).fetch_all(connection).await.map_err(|error| explain(place, &error))?;
    match found.first() {
        Some(first) if first != "ok" => {
            Err(StoreError::Damaged { place: place.display().to_string(), what: first.clone() })
        }
        _ => Ok(()),
    }
}

/// The tables, indexes and triggers that the migrations make, each with the hash of its statement.
static GUARDS: OnceCell<BTreeMap<String, Hash>> = OnceCell::const_new();

/// Checks that the tables and triggers are those of this program. Without a trigger, nothing keeps an entry from being changed.
async fn check_guards(connection: &mut SqliteConnection, place: &Path) -> Result<(), StoreError> {
    let explain = |error: sqlx::Error| explain(place, &error);
    let wanted = GUARDS.get_or_try_init(|| async {
        let mut fresh = SqliteConnectOptions::new().in_memory(true).connect().await.map_err(explain)?;
        MIGRATIONS
            .run_direct(None, &mut fresh, false)
            .await
            .map_err(|error| explain_migration(place, error))?;
        guards_of(&mut fresh).await.map_err(explain)
    });
    let (wanted, found) = (wanted.await?, guards_of(connection).await.map_err(explain)?);
    let differ = |(name, hash): (&String, &Hash), other: &BTreeMap<String, Hash>| {
        (other.get(name) != Some(hash)).then(|| name.clone())
    };
    let lacking = wanted.iter().filter_map(|guard| differ(guard, &found));
    let strange = found.iter().filter_map(|guard| differ(guard, wanted));
    let names: BTreeSet<String> = lacking.chain(strange).collect();
    if names.is_empty() {
        return Ok(());
    }
    Err(StoreError::Guards { place: place.display().to_string(), names: names.into_iter().collect() })
}

async fn guards_of(connection: &mut SqliteConnection) -> sqlx::Result<BTreeMap<String, Hash>> {
    // What SQLite makes for itself has no statement.
    let made: Vec<(String, String)> = sqlx::query_as(
        "select name, sql from sqlite_schema where sql is not null and name not like 'sqlite_%'",
    )
    .fetch_all(connection)
    .await?;
    // Blanks do not matter.
    let hash = |sql: &str| {
        let words: Vec<&str> = sql.split_whitespace().collect();
        Hash::of_content(words.join(" ").as_bytes())
    };
    Ok(made.into_iter().map(|(name, sql)| (name, hash(&sql))).collect())
}

/// Makes an empty file that only its owner can read: it holds names and addresses. If that is impossible, opening it says why. The
/// files that SQLite puts beside it have the same rights.
fn make_for_its_owner(place: &Path) {
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        let _ = std::fs::OpenOptions::new().write(true).create_new(true).mode(0o600).open(place);
    }
    #[cfg(not(unix))]
    let _ = place;
}

/// Catches files that `SQLite` would handle wrongly.
///
/// Looks at the file without opening it: closing it again would drop the locks that another connection of this program holds
/// on it.
/// Source: <https://www.sqlite.org/howtocorrupt.html>, section 2.2.
fn look_at_file(path: &Path) -> Result<(), StoreError> {
    let Ok(file) = path.metadata() else { return Ok(()) };
    let place = path.display().to_string();
    if file.is_file() && file.len() == 1 {
        // SQLite treats a one-byte file as empty and would overwrite it.
        return Err(StoreError::NotADatabase { place });
    }
    if file.is_file() && file.permissions().readonly() {
        // SQLite would create read-only files beside it, which keep it read-only even after it is made writable.
        return Err(StoreError::ReadOnly { place });
    }
    Ok(())
}

/// Whether the file has tables, but not those of a journal.
async fn is_foreign(connection: &mut SqliteConnection) -> sqlx::Result<bool> {
    let (tables, ours): (i64, i64) = sqlx::query_as(
        "select count(*), count(*) filter (where name in ('entries', '_sqlx_migrations'))
        from sqlite_schema where type = 'table'",
    )
    .fetch_one(connection)
    .await?;
    Ok(tables > 0 && ours < 2)
}

/// Lets readers continue during a write. The setting is stored in the file.
async fn write_ahead(connection: &mut SqliteConnection) -> sqlx::Result<()> {
    let (pause, times) = RETRY;
    let mut left = times;
    loop {
        match sqlx::query("pragma journal_mode = wal").execute(&mut *connection).await {
            Ok(_) => return Ok(()),
            // The busy timeout does not apply to this statement.
            Err(error) if left > 0 && primary_code(&error) == Some(BUSY) => left -= 1,
            Err(error) => return Err(error),
        }
        tokio::time::sleep(pause).await;
    }
}

// Source: https://www.sqlite.org/rescode.html, the primary result codes.
const BUSY: i32 = 5;
const LOCKED: i32 = 6;
const READONLY: i32 = 8;
const IOERR: i32 = 10;
const CORRUPT: i32 = 11;
const FULL: i32 = 13;
const CANTOPEN: i32 = 14;
const NOTADB: i32 = 26;

/// The extended result codes of a read that failed, and of one that found less than it should.
const READING: [i32; 2] = [266, 522];

/// The lowest byte of the result code is enough nearly everywhere.
fn primary_code(error: &sqlx::Error) -> Option<i32> {
    Some(code(error)? & 0xff)
}

fn code(error: &sqlx::Error) -> Option<i32> {
    error.as_database_error()?.code()?.parse().ok()
}

fn explain(path: &Path, error: &sqlx::Error) -> StoreError {
    let place = path.display().to_string();
    let what = error.as_database_error().map(|error| error.message().to_owned()).unwrap_or_default();
    match primary_code(error) {
        Some(BUSY | LOCKED) => StoreError::Locked { place },
        Some(READONLY) => StoreError::ReadOnly { place },
        Some(IOERR) => StoreError::Device { place, what },
        Some(CORRUPT) => StoreError::Damaged { place, what },
        Some(FULL) => StoreError::Full { place },
        Some(CANTOPEN) => StoreError::CannotOpen { place, why: why_not_opened(path) },
        Some(NOTADB) => StoreError::NotADatabase { place },
        _ if matches!(error, sqlx::Error::PoolTimedOut) => StoreError::Locked { place },
        _ => StoreError::Database { place, what: error.to_string() },
    }
}

fn why_not_opened(path: &Path) -> NotOpened {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    if path.is_dir() {
        NotOpened::IsAFolder
    } else if folder.is_some_and(|folder| !folder.exists()) {
        NotOpened::NoFolder
    } else if !path.exists() {
        NotOpened::NoFile
    } else {
        NotOpened::Refused
    }
}

fn explain_migration(path: &Path, error: MigrateError) -> StoreError {
    let place = path.display().to_string();
    let known = MIGRATIONS.iter().map(|migration| migration.version).max().unwrap_or(0);
    match error {
        MigrateError::VersionMissing(version) if version > known => {
            StoreError::Newer { place, version, known }
        }
        MigrateError::VersionMissing(version) | MigrateError::VersionMismatch(version) => {
            StoreError::Altered { place, version }
        }
        MigrateError::Execute(error) | MigrateError::ExecuteMigration(error, _) => explain(path, &error),
        other => StoreError::Database { place, what: sqlx::Error::from(other).to_string() },
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Arc;

    use combclear_domain::journal::event::ColonyEnded;
    use combclear_domain::journal::{Draft, Entry, EntryId, Event, Hash};
    use uuid::Uuid;

    use super::*;
    use crate::journal::{AppendError, Journal, Verified};

    fn entries(
        holding: &HoldingName,
        mut tip: Option<(u64, Hash)>,
        numbers: std::ops::Range<u128>,
    ) -> Vec<Entry> {
        let entry = |number| {
            let cause = "x".repeat(500);
            let event = Event::from(ColonyEnded { colony: "a".parse().unwrap(), cause });
            let id = EntryId(Uuid::from_u128(number));
            let draft = Draft::new(id, "2026-04-11".parse().unwrap(), "K".parse().unwrap(), event);
            let entry = Entry::seal(holding, draft, "2026-04-11T08:15:30.123Z".parse().unwrap(), tip);
            tip = Some(entry.tip());
            entry
        };
        numbers.map(entry).collect()
    }

    #[tokio::test(flavor = "multi_thread", worker_threads = 4)]
    async fn a_closed_file_has_no_log_beside_it_also_if_several_readers_came_back_at_once() {
        for round in 0..30 {
            let folder = tempfile::tempdir().unwrap();
            let path = folder.path().join("journal.db");
            // Nothing is written, so that no connection for writing is closed last.
            let journal = Arc::new(open(&path.display().to_string()).await.unwrap());
            let mut readers = Vec::new();
            for _ in 0..READERS {
                let mut reader = journal.backend().readers.acquire().await.unwrap();
                sqlx::query("select count(*) from entries").execute(&mut *reader).await.unwrap();
                readers.push(reader);
            }
            let closing = tokio::spawn({
                let journal = Arc::clone(&journal);
                async move { journal.close().await }
            });
            // From now on a reader that comes back is closed by whoever brings it.
            journal.backend().readers.close_event().await;
            drop(readers);
            closing.await.unwrap();
            assert!(!path.with_extension("db-wal").exists(), "round {round}");
        }
    }

    // Here rather than among the contract tests because the limit applies to one connection only.
    #[tokio::test]
    async fn a_full_disk_is_named_writes_nothing_and_is_over_when_there_is_room_again() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("journal.db");
        let journal = open(&path.display().to_string()).await.unwrap();
        let holding: HoldingName = "first".parse().unwrap();
        let first = entries(&holding, None, 1..11);
        journal.append(&holding, None, &first, &[]).await.unwrap();
        let tip = first.last().map(Entry::tip);

        let mut writer = journal.backend().writer.acquire().await.unwrap();
        sqlx::query("pragma max_page_count = 40").execute(&mut *writer).await.unwrap();
        drop(writer);
        let many = entries(&holding, tip, 11..1011);
        let error = journal.append(&holding, tip, &many, &[]).await.unwrap_err();
        assert!(matches!(error, AppendError::Store(StoreError::Full { .. })), "{error:?}");
        let head = tip.map(|(_, hash)| hash);
        assert_eq!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 10, head });

        let mut writer = journal.backend().writer.acquire().await.unwrap();
        sqlx::query("pragma max_page_count = 4000").execute(&mut *writer).await.unwrap();
        drop(writer);
        journal.append(&holding, tip, &many, &[]).await.unwrap();
        assert_eq!(journal.tip(&holding).await.unwrap(), many.last().map(Entry::tip));
    }

    #[tokio::test]
    async fn a_transaction_that_sqlite_took_back_by_itself_does_not_bar_the_next_one() {
        let folder = tempfile::tempdir().unwrap();
        let journal = open(&folder.path().join("journal.db").display().to_string()).await.unwrap();
        let holding: HoldingName = "first".parse().unwrap();
        let mut write = journal.backend().begin_write(Some(&holding)).await.unwrap();
        // As SQLite does after an I/O error, unnoticed by the driver.
        sqlx::query("rollback").execute(&mut *write).await.unwrap();
        drop(write);
        journal.append(&holding, None, &entries(&holding, None, 1..3), &[]).await.unwrap();
    }

    #[tokio::test]
    async fn both_kinds_of_connection_are_set_up_as_they_should_be() {
        let folder = tempfile::tempdir().unwrap();
        let journal = open(&folder.path().join("journal.db").display().to_string()).await.unwrap();
        let file = journal.backend();
        for (pool, query_only) in [(&file.writer, 0), (&file.readers, 1)] {
            let settings: (i64, i64, i64, i64, String) = sqlx::query_as(
                "select (select synchronous from pragma_synchronous), (select timeout from pragma_busy_timeout),
                (select foreign_keys from pragma_foreign_keys), (select query_only from pragma_query_only),
                (select journal_mode from pragma_journal_mode)",
            )
            .fetch_one(pool)
            .await
            .unwrap();
            // 2 is `full`.
            assert_eq!(settings, (2, 5000, 1, query_only, "wal".to_owned()));
        }
    }
}
