//! PostgreSQL: one database or schema, many programs.
//!
//! Nothing is kept in one program that another could not read from the tables: whoever answers first asks for the last place of the
//! journal. That costs a look into an index before every question, and never gives an answer from behind the journal, as a
//! notification that is lost with its connection would.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::time::Duration;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use combclear_domain::journal::keeping::{BadAddress, StoreError};
use sqlx::migrate::{MigrateError, Migrator};
use sqlx::postgres::{PgConnectOptions, PgPoolOptions, PgSslMode};
use sqlx::{AssertSqlSafe, ConnectOptions, Connection, PgConnection, PgPool, Postgres, Transaction};

use crate::journal::{Version, Weakness};
use crate::sql_journal::{Backend, SqlJournal};

static MIGRATIONS: Migrator = sqlx::migrate!("../../migrations/postgres");

/// The oldest version that the tests run on.
const LEAST_VERSION: i32 = 15;

/// How long a writer waits for another one of the same holding, and anybody for a connection.
const LOCK_TIMEOUT: Duration = Duration::from_secs(5);

/// How long one statement may take. What takes longer has lost its way: the network was cut without a word.
const PATIENCE: Duration = Duration::from_secs(25);

/// How long a connection that is given back may take to say that it is in order.
const SIGN_OF_LIFE: Duration = Duration::from_secs(3);

/// Concurrent readers, and concurrent writers, of this program.
const CONNECTIONS: u32 = 8;

/// Waits until nobody else holds this number.
const LOCK_HOLDING: &str = "select pg_advisory_xact_lock($1)";

/// Holds up other programs that open the same database, while its tables are made.
const LOCK_TABLES: i64 = 0x636f_6d62_636c_6561;

/// A database on a server.
pub(crate) struct PostgresDatabase {
    place: String,
    /// The tables are in this schema: others of the same database have nothing to do with it.
    schema: String,
    writers: PgPool,
    readers: PgPool,
    /// Why nothing that it holds is to be trusted, if something was wrong with it when it was opened.
    untrusted: Option<StoreError>,
    /// Why nothing can be written, if the server only follows another.
    reading_only: Option<StoreError>,
}

/// Opens the database at an address.
pub(crate) async fn open(address: &str) -> Result<SqlJournal<PostgresDatabase>, StoreError> {
    PostgresDatabase::open(address).await.map(SqlJournal::new)
}

impl PostgresDatabase {
    async fn open(address: &str) -> Result<PostgresDatabase, StoreError> {
        let options = options(address)?;
        let place = place(&options);
        let connecting = tokio::time::timeout(LOCK_TIMEOUT, options.connect()).await;
        let silent = || unreachable(&place, "it does not answer");
        let mut connection = connecting.map_err(|_| silent())?.map_err(|error| explain(&place, &error))?;
        let prepared = tokio::time::timeout(PATIENCE, prepare(&mut connection, &place)).await;
        let (untrusted, reading_only) = prepared.unwrap_or_else(|_| Err(silent()))?;
        let schema: String = sqlx::query_scalar("select coalesce(current_schema(), '')")
            .fetch_one(&mut connection)
            .await
            .map_err(|error| explain(&place, &error))?;
        connection.close().await.map_err(|error| explain(&place, &error))?;
        let pool = || {
            PgPoolOptions::new()
                .max_connections(CONNECTIONS)
                .acquire_timeout(LOCK_TIMEOUT)
                .after_connect(|connection, _| Box::pin(commit_on_disk(connection)))
                // The driver asks for a sign of life too, but waits for it without end.
                .after_release(|connection, _| Box::pin(is_alive(connection)))
        };
        let (writers, readers) = (pool(), pool());
        let (writers, readers) =
            (writers.connect_lazy_with(options.clone()), readers.connect_lazy_with(options));
        Ok(PostgresDatabase { place, schema, writers, readers, untrusted, reading_only })
    }
}

impl Backend for PostgresDatabase {
    type Db = Postgres;

    const PATIENCE: Option<Duration> = Some(PATIENCE);

    fn readers(&self) -> &PgPool {
        &self.readers
    }

    async fn begin_write(
        &self,
        holding: Option<&HoldingName>,
    ) -> sqlx::Result<Transaction<'static, Postgres>> {
        let mut write = self.writers.begin().await?;
        if let Some(holding) = holding {
            let wait = format!("set local lock_timeout = {}", LOCK_TIMEOUT.as_millis());
            sqlx::query(AssertSqlSafe(wait)).execute(&mut *write).await?;
            let lock = lock_of(&self.schema, holding);
            sqlx::query(LOCK_HOLDING).bind(lock).execute(&mut *write).await?;
        }
        Ok(write)
    }

    fn trusted(&self) -> Result<(), StoreError> {
        self.untrusted.clone().map_or(Ok(()), Err)
    }

    async fn sound(&self) -> Result<(), StoreError> {
        // The server checks its own pages as it reads them. Its tables may have been changed since they were looked at.
        let explain = |error| explain(&self.place, &error);
        let mut connection = self.readers.acquire().await.map_err(explain)?;
        check_guards(&mut connection, &self.place).await
    }

    fn may_write(&self) -> Result<(), StoreError> {
        self.reading_only.clone().map_or(Ok(()), Err)
    }

    fn version(&self) -> Option<Version> {
        // Asking the server for it takes as long as asking for the last place.
        None
    }

    fn is_in_place(&self) -> Result<(), StoreError> {
        // A database that was put back from a copy is noticed by its last place, as a journal that has gone on is.
        Ok(())
    }

    async fn copy_into(&self, _file: &Path) -> Result<bool, StoreError> {
        Ok(false)
    }

    async fn weaknesses(&self) -> Result<Vec<Weakness>, StoreError> {
        let mut connection = self.ask(self.readers.acquire()).await?;
        let off: Vec<String> = self.ask(sqlx::query_scalar(SETTINGS_OFF).fetch_all(&mut *connection)).await?;
        let lacking: Vec<(String, String)> =
            self.ask(sqlx::query_as(RIGHTS_LACKING).fetch_all(&mut *connection)).await?;
        let off = off.into_iter().map(|setting| Weakness::SettingOff { setting });
        let lacking = lacking.into_iter().map(|(right, table)| Weakness::NoRight { right, table });
        Ok(off.chain(lacking).collect())
    }

    async fn close(&self) {
        self.readers.close().await;
        self.writers.close().await;
    }

    fn explain(&self, error: sqlx::Error) -> StoreError {
        explain(&self.place, &error)
    }
}

/// The number under which a holding is locked. Two holdings with the same number only wait for each other.
fn lock_of(schema: &str, holding: &HoldingName) -> i64 {
    let Hash(hash) = Hash::of_content(format!("combclear holding {schema}/{holding}").as_bytes());
    let number = hash.first_chunk().copied().unwrap_or_default();
    i64::from_be_bytes(number)
}

/// Settings that are off and must not be. `synchronous_commit` is set by every connection, and looked at all the same.
const SETTINGS_OFF: &str = "
select name from unnest(array['fsync', 'full_page_writes', 'synchronous_commit']) as name
where current_setting(name) = 'off' order by name";

/// What the user of the address may not do, and must.
const RIGHTS_LACKING: &str = "
select needed.privilege, needed.name
from (values
    ('select', 'entries'), ('insert', 'entries'), ('update', 'entries'),
    ('select', 'contents'), ('insert', 'contents'), ('delete', 'contents'),
    ('select', 'moved'), ('insert', 'moved'), ('select', 'moved_contents'), ('insert', 'moved_contents'),
    ('select', 'keys'), ('insert', 'keys'), ('update', 'keys')
) as needed (privilege, name)
where not has_table_privilege(needed.name, needed.privilege)
order by needed.name, needed.privilege";

/// A server may be set to answer before a commit is on its disk. Ours is acknowledged, so it must be there.
async fn commit_on_disk(connection: &mut PgConnection) -> sqlx::Result<()> {
    let set = "select set_config('synchronous_commit', 'on', false)
        where current_setting('synchronous_commit') = 'off'";
    sqlx::query(set).execute(connection).await.map(|_| ())
}

async fn is_alive(connection: &mut PgConnection) -> sqlx::Result<bool> {
    let said = tokio::time::timeout(SIGN_OF_LIFE, connection.ping()).await;
    Ok(said.is_ok_and(|said| said.is_ok()))
}

/// Parameters of an address that the driver knows. It passes over others, and writes them with their values to the log.
const PARAMETERS: [&str; 14] = [
    "application_name",
    "dbname",
    "host",
    "hostaddr",
    "options",
    "password",
    "port",
    "sslcert",
    "sslkey",
    "sslmode",
    "sslrootcert",
    "statement-cache-capacity",
    "user",
    "options[search_path]",
];

/// How to connect, according to the address. No part of it is repeated in an error: it may hold a password.
fn options(address: &str) -> Result<PgConnectOptions, StoreError> {
    let query = address.split_once('?').map_or("", |(_, query)| query);
    let known = |key: &str| PARAMETERS.contains(&key);
    let mut says_how_safe = false;
    for parameter in query.split('&').filter(|parameter| !parameter.is_empty()) {
        let key = parameter.split('=').next().unwrap_or(parameter);
        let key = key.replace("%5B", "[").replace("%5D", "]");
        if !known(&key) {
            return Err(StoreError::Address(BadAddress::OtherParameter { parameter: key }));
        }
        says_how_safe |= key == "sslmode";
    }
    let options: PgConnectOptions =
        address.parse().map_err(|_| StoreError::Address(BadAddress::UnreadableServer))?;
    let stays_here = options.get_socket().is_some()
        || options.get_host().starts_with('/')
        || matches!(options.get_host(), "localhost" | "127.0.0.1" | "::1" | "[::1]");
    // What leaves this machine is encrypted, and the server proves who it is, unless the address says otherwise.
    let options = if stays_here || says_how_safe { options } else { options.ssl_mode(PgSslMode::VerifyFull) };
    Ok(options.application_name("combclear").disable_statement_logging())
}

/// Where the database is, without user and password.
fn place(options: &PgConnectOptions) -> String {
    let host = match options.get_socket() {
        Some(socket) => socket.display().to_string(),
        None => options.get_host().to_owned(),
    };
    let database = options.get_database().unwrap_or(options.get_username());
    format!("postgres://{host}:{}/{database}", options.get_port())
}

/// Makes the tables if they are not there, and looks at them. Returns what speaks against trusting them, and why nothing can be
/// written.
async fn prepare(
    connection: &mut PgConnection,
    place: &str,
) -> Result<(Option<StoreError>, Option<StoreError>), StoreError> {
    let explain = |error: sqlx::Error| explain(place, &error);
    check_server(connection, place).await?;
    let (follows, is_read_only): (bool, bool) =
        sqlx::query_as("select pg_is_in_recovery(), current_setting('transaction_read_only') = 'on'")
            .fetch_one(&mut *connection)
            .await
            .map_err(explain)?;
    if follows || is_read_only {
        check_version(connection, place).await?;
        // An answer from behind the journal may be a wrong yes. What is on record can be read all the same.
        let untrusted = follows.then(|| StoreError::Follows { place: place.to_owned() });
        return Ok((untrusted, Some(StoreError::ReadOnly { place: place.to_owned() })));
    }
    if is_foreign(connection).await.map_err(explain)? {
        return Err(StoreError::Foreign { place: place.to_owned() });
    }
    // One transaction around all steps, so that of two programs opening a new database only one creates the tables.
    let mut write = connection.begin().await.map_err(explain)?;
    sqlx::query(LOCK_HOLDING).bind(LOCK_TABLES).execute(&mut *write).await.map_err(explain)?;
    stay_in(&mut write, None).await.map_err(explain)?;
    MIGRATIONS.run_direct(None, &mut *write, false).await.map_err(|error| explain_migration(place, error))?;
    write.commit().await.map_err(explain)?;
    Ok((check_guards(connection, place).await.err(), None))
}

/// Checks what the server is.
async fn check_server(connection: &mut PgConnection, place: &str) -> Result<(), StoreError> {
    let asked =
        "select current_setting('server_version_num')::int / 10000, current_setting('server_encoding')";
    let (version, encoding): (i32, String) =
        sqlx::query_as(asked).fetch_one(connection).await.map_err(|error| explain(place, &error))?;
    if version < LEAST_VERSION {
        let place = place.to_owned();
        return Err(StoreError::TooOld { place, version, least: LEAST_VERSION });
    }
    if encoding != "UTF8" {
        return Err(StoreError::OtherEncoding { place: place.to_owned(), encoding });
    }
    Ok(())
}

/// Checks that the tables are of the version of this program, where they cannot be brought up to it.
async fn check_version(connection: &mut PgConnection, place: &str) -> Result<(), StoreError> {
    let known = newest();
    let found: Option<i64> = sqlx::query_scalar("select max(version) from _sqlx_migrations")
        .fetch_one(connection)
        .await
        .map_err(|error| explain(place, &error))?;
    match found {
        Some(version) if version > known => {
            Err(StoreError::Newer { place: place.to_owned(), version, known })
        }
        Some(version) if version == known => Ok(()),
        _ => Err(StoreError::ReadOnly { place: place.to_owned() }),
    }
}

fn newest() -> i64 {
    MIGRATIONS.iter().map(|migration| migration.version).max().unwrap_or(0)
}

/// Looks for tables in one schema only until the transaction ends: the one named, or else the one that is in use. Temporary tables,
/// which would come first, come last.
async fn stay_in(connection: &mut PgConnection, schema: Option<&str>) -> sqlx::Result<()> {
    let set = "select set_config('search_path',
        quote_ident(coalesce($1, current_schema(), 'public')) || ', pg_temp', true)";
    sqlx::query(set).bind(schema).execute(connection).await.map(|_| ())
}

/// Whether the schema has tables, but not those of a journal.
async fn is_foreign(connection: &mut PgConnection) -> sqlx::Result<bool> {
    let (tables, ours): (i64, i64) = sqlx::query_as(
        "select count(*), count(*) filter (where tablename in ('entries', '_sqlx_migrations'))
        from pg_tables where schemaname = current_schema()",
    )
    .fetch_one(connection)
    .await?;
    Ok(tables > 0 && ours < 2)
}

/// What stands for the name of the schema in which guards are compared.
const GUARDS: &str = include_str!("postgres_guards.sql");

/// Checks that the tables, triggers and functions are those of this program. They are made anew in a schema beside it, and taken back.
/// Without a trigger, nothing keeps an entry from being changed.
async fn check_guards(connection: &mut PgConnection, place: &str) -> Result<(), StoreError> {
    let explain = |error: sqlx::Error| explain(place, &error);
    let found = guards_of(connection, None).await.map_err(explain)?;
    let wanted = {
        let mut beside = connection.begin().await.map_err(explain)?;
        let me: i32 =
            sqlx::query_scalar("select pg_backend_pid()").fetch_one(&mut *beside).await.map_err(explain)?;
        let schema = format!("combclear_beside_{me}");
        let create = format!("create schema {schema}");
        sqlx::query(AssertSqlSafe(create)).execute(&mut *beside).await.map_err(explain)?;
        stay_in(&mut beside, Some(&schema)).await.map_err(explain)?;
        for step in MIGRATIONS.iter() {
            sqlx::raw_sql(AssertSqlSafe(step.sql.as_str().to_owned()))
                .execute(&mut *beside)
                .await
                .map_err(explain)?;
        }
        let wanted = guards_of(&mut beside, Some(&schema)).await.map_err(explain)?;
        beside.rollback().await.map_err(explain)?;
        wanted
    };
    let lacking = wanted.iter().filter(|(name, what)| found.get(*name) != Some(*what));
    let strange = found.iter().filter(|(name, what)| wanted.get(*name) != Some(*what));
    let names: BTreeSet<String> = lacking.chain(strange).map(|(name, _)| name.clone()).collect();
    if names.is_empty() {
        return Ok(());
    }
    Err(StoreError::Guards { place: place.to_owned(), names: names.into_iter().collect() })
}

async fn guards_of(
    connection: &mut PgConnection,
    schema: Option<&str>,
) -> sqlx::Result<BTreeMap<String, String>> {
    let made: Vec<(String, String)> = sqlx::query_as(GUARDS).bind(schema).fetch_all(connection).await?;
    Ok(made.into_iter().collect())
}

fn unreachable(place: &str, what: &str) -> StoreError {
    StoreError::Unreachable { place: place.to_owned(), what: what.to_owned() }
}

fn explain(place: &str, error: &sqlx::Error) -> StoreError {
    let at = || place.to_owned();
    let Some(refused) = error.as_database_error() else {
        return match error {
            // All connections are at work.
            sqlx::Error::PoolTimedOut => StoreError::Locked { place: at() },
            sqlx::Error::Io(_) | sqlx::Error::Tls(_) | sqlx::Error::Protocol(_) | sqlx::Error::PoolClosed => {
                unreachable(place, &error.to_string())
            }
            _ => StoreError::Database { place: at(), what: error.to_string() },
        };
    };
    let (code, what) = (refused.code().unwrap_or_default(), refused.message().to_owned());
    // Source: https://www.postgresql.org/docs/15/errcodes-appendix.html
    match code.as_ref() {
        // lock_not_available, serialization_failure, deadlock_detected; unique_violation: another writer took the place.
        "55P03" | "40001" | "40P01" | "23505" => StoreError::Locked { place: at() },
        // read_only_sql_transaction
        "25006" => StoreError::ReadOnly { place: at() },
        // disk_full
        "53100" => StoreError::Full { place: at() },
        // io_error
        "58030" => StoreError::Device { place: at(), what },
        // data_corrupted, index_corrupted
        "XX001" | "XX002" => StoreError::Damaged { place: at(), what },
        // too_many_connections, and those that say that the server is ending, has crashed or is starting.
        "53300" | "57P01" | "57P02" | "57P03" => unreachable(place, &what),
        // invalid_catalog_name, invalid_schema_name, insufficient_privilege
        "3D000" | "3F000" | "42501" => StoreError::NotAdmitted { place: at(), what },
        code if code.starts_with("08") => unreachable(place, &what),
        code if code.starts_with("28") => StoreError::NotAdmitted { place: at(), what },
        _ => StoreError::Database { place: at(), what },
    }
}

fn explain_migration(place: &str, error: MigrateError) -> StoreError {
    let (at, known) = (place.to_owned(), newest());
    match error {
        MigrateError::VersionMissing(version) if version > known => {
            StoreError::Newer { place: at, version, known }
        }
        MigrateError::VersionMissing(version) | MigrateError::VersionMismatch(version) => {
            StoreError::Altered { place: at, version }
        }
        MigrateError::Execute(error) | MigrateError::ExecuteMigration(error, _) => explain(place, &error),
        other => StoreError::Database { place: at, what: sqlx::Error::from(other).to_string() },
    }
}
