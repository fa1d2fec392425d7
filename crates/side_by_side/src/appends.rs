//! Durable appends over HTTP beside plain inserts of the same bytes, each committed on its own.

use std::future::Future;
use std::path::Path;
use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use anyhow::ensure;
use combclear_bench::scene::register_of;
use combclear_domain::journal::Entry;
use combclear_testkit::postgres::Cluster;
use hyper::StatusCode;
use serde_json::json;
use sqlx::postgres::{PgPool, PgPoolOptions};
use sqlx::sqlite::{
    SqliteConnectOptions, SqliteJournalMode, SqlitePool, SqlitePoolOptions, SqliteSynchronous,
};

use crate::children::Server;
use crate::registers::{address, holding, write};
use crate::requests::Connection;
use crate::table::Table;
use crate::timing::middle;

/// How long each number of callers writes.
const LONG: Duration = Duration::from_secs(4);
const CALLERS: [usize; 3] = [1, 16, 64];
const INSERT: &str = "insert into lines (body) values ($1)";

pub(crate) fn measure(table: &mut Table) -> anyhow::Result<()> {
    let folder = tempfile::tempdir()?;
    let runtime = tokio::runtime::Runtime::new()?;
    let ours = address(folder.path(), "appends.db");
    runtime.block_on(async {
        let plain = Plain::Sqlite(file(&folder.path().join("plain.db")).await?);
        on(table, "SQLite", &ours, &plain).await
    })?;
    if !Cluster::is_possible() {
        table.row("durable appends on PostgreSQL", "there is none on this machine", "", "", "");
        return Ok(());
    }
    let cluster = Cluster::durable();
    runtime.block_on(async {
        let pool = PgPoolOptions::new().max_connections(8).connect(&cluster.empty()).await?;
        sqlx::query("create table lines (seq bigserial primary key, body text not null)")
            .execute(&pool)
            .await?;
        on(table, "PostgreSQL", &cluster.empty(), &Plain::Postgres(pool)).await
    })
}

async fn on(table: &mut Table, database: &str, address: &str, plain: &Plain) -> anyhow::Result<()> {
    write(address, 1, 560).await?;
    let server = Server::start(&["service", address])?;
    let line = line()?;
    let mut loop_of_one = None;
    for callers in CALLERS {
        let ours = over_http(&server.address, callers).await?;
        let theirs = inserted(plain, &line, callers).await?;
        let one = *loop_of_one.get_or_insert(theirs.each);
        let ratio = format!("{:.2}", one / ours.each);
        let what = format!("durable appends on {database}, {callers} callers");
        let other = "one loop of plain inserts, one commit each";
        table.row(&what, &format!("{:.0}/s", ours.each), other, &format!("{one:.0}/s"), &ratio);
        let other = "plain inserts of as many callers";
        let ratio = format!("{:.2}", theirs.each / ours.each);
        table.row(&what, &format!("{:.0}/s", ours.each), other, &format!("{:.0}/s", theirs.each), &ratio);
        table.time(&format!("{what}: median"), ours.latency, other, theirs.latency);
    }
    Ok(())
}

/// A database in which each line is committed on its own.
enum Plain {
    Sqlite(SqlitePool),
    Postgres(PgPool),
}

/// A number that no entry has had.
fn next() -> u64 {
    static NEXT: AtomicU64 = AtomicU64::new(1);
    NEXT.fetch_add(1, Ordering::Relaxed)
}

fn seen(id: &str) -> String {
    let body = json!({ "colony": "C0-0", "brood": "present", "seams": 7 });
    json!({ "id": id, "on": "2025-06-01", "recorded_by": "keeper", "kind": "inspection", "body": body })
        .to_string()
}

/// An entry of the register as it is stored: about as long as those that are sent.
fn line() -> anyhow::Result<String> {
    let register = register_of(holding(0)?, 1);
    Ok(register.last().map(Entry::to_json).unwrap_or_default())
}

/// A database set up as ours is: a write-ahead log, each commit written to the disk.
async fn file(path: &Path) -> anyhow::Result<SqlitePool> {
    let options = SqliteConnectOptions::new()
        .filename(path)
        .create_if_missing(true)
        .journal_mode(SqliteJournalMode::Wal)
        .synchronous(SqliteSynchronous::Full);
    let pool = SqlitePoolOptions::new().max_connections(1).connect_with(options).await?;
    sqlx::query("create table lines (seq integer primary key, body text not null)").execute(&pool).await?;
    Ok(pool)
}

struct Written {
    /// Entries a second, of all callers together.
    each: f64,
    latency: Duration,
}

async fn over_http(address: &str, callers: usize) -> anyhow::Result<Written> {
    let address = Arc::new(address.to_owned());
    written(callers, async |until| {
        let mut connection = Connection::to(&address).await?;
        let mut times = Vec::new();
        while Instant::now() < until {
            let id = format!("00000000-0000-7000-9000-{:012x}", next());
            let began = Instant::now();
            let status = connection.put(&format!("/holdings/holding-0/entries/{id}"), seen(&id)).await?;
            times.push(began.elapsed());
            ensure!(status == StatusCode::CREATED, "it was answered {status}");
        }
        Ok(times)
    })
    .await
}

async fn inserted(plain: &Plain, line: &str, callers: usize) -> anyhow::Result<Written> {
    written(callers, async |until| {
        let mut times = Vec::new();
        while Instant::now() < until {
            let began = Instant::now();
            match plain {
                Plain::Sqlite(pool) => sqlx::query(INSERT).bind(line).execute(pool).await.map(drop)?,
                Plain::Postgres(pool) => sqlx::query(INSERT).bind(line).execute(pool).await.map(drop)?,
            }
            times.push(began.elapsed());
        }
        Ok(times)
    })
    .await
}

/// Lets some callers write until it is time.
async fn written<Writing: Future<Output = anyhow::Result<Vec<Duration>>>>(
    callers: usize,
    caller: impl Fn(Instant) -> Writing,
) -> anyhow::Result<Written> {
    let began = Instant::now();
    let all = (0..callers).map(|_| caller(began + LONG));
    let all = futures_util::future::try_join_all(all).await?;
    let took = began.elapsed();
    let mut times: Vec<Duration> = all.into_iter().flatten().collect();
    let count = f64::from(u32::try_from(times.len())?);
    Ok(Written { each: count / took.as_secs_f64(), latency: middle(&mut times) })
}
