//! Journals, entries and files for the tests.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use combclear_domain::basics::words::{FlowStage, HoldingName, MediaType};
use combclear_domain::journal::copied::CopiedFrom;
use combclear_domain::journal::event::{ApiaryDetails, ColonyEnded, DocumentAttached, NectarFlow};
use combclear_domain::journal::{Content, Draft, Entry, EntryId, Event, Hash};
use combclear_domain::{Day, Instant};
use combclear_store::{Journal, StoreError};
use combclear_wording::refusals::Refused;
use sqlx::sqlite::SqliteConnectOptions;
use sqlx::{AssertSqlSafe, ConnectOptions, PgConnection, SqliteConnection};
use tempfile::TempDir;
use uuid::Uuid;

/// A temporary place for a journal.
pub(crate) struct Bench {
    pub(crate) folder: TempDir,
    pub(crate) path: PathBuf,
}

impl Bench {
    pub(crate) fn new() -> Bench {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("journal.db");
        Bench { folder, path }
    }

    pub(crate) fn url(&self) -> String {
        url(&self.path)
    }

    pub(crate) async fn open(&self) -> Arc<dyn Journal> {
        combclear_store::open(&self.url()).await.unwrap()
    }

    /// A store with this many entries of one holding.
    pub(crate) async fn with_entries(count: u64) -> (Bench, Arc<dyn Journal>, HoldingName, Vec<Entry>) {
        let bench = Bench::new();
        let journal = bench.open().await;
        let holding = holding("first");
        let entries = chain(&holding, None, drafts(1..=count));
        journal.append(&holding, None, &entries, &[]).await.unwrap();
        (bench, journal, holding, entries)
    }

    /// The file as another program would open it.
    pub(crate) async fn raw(&self) -> SqliteConnection {
        raw(&self.path).await
    }

    /// The tables as another program would change them.
    pub(crate) async fn by_hand(&self) -> ByHand {
        ByHand::Sqlite(self.raw().await)
    }

    /// The same without the triggers that guard the tables.
    pub(crate) async fn by_hand_unguarded(&self) -> ByHand {
        ByHand::Sqlite(self.unguarded().await)
    }

    /// The same without the triggers that guard the tables.
    pub(crate) async fn unguarded(&self) -> SqliteConnection {
        let mut raw = self.raw().await;
        for trigger in [
            "entries_are_not_updated",
            "entries_are_not_deleted",
            "entries_take_the_next_place",
            "entries_keep_their_id",
            "entries_come_with_their_body",
            "moved_are_not_updated",
            "moved_are_not_deleted",
            "contents_are_not_updated",
            "contents_are_not_deleted",
            "contents_keep_their_bytes",
            "keys_are_only_ended",
            "keys_are_not_deleted",
        ] {
            run(&mut raw, &format!("drop trigger if exists {trigger}")).await.unwrap();
        }
        run(&mut raw, "pragma ignore_check_constraints = on").await.unwrap();
        raw
    }
}

/// A connection to the tables beside the program, on whatever database.
pub(crate) enum ByHand {
    Sqlite(SqliteConnection),
    #[cfg_attr(not(postgres), expect(dead_code, reason = "there is no such server on this machine"))]
    Postgres(PgConnection),
    #[cfg_attr(not(postgres), expect(dead_code, reason = "there is no such server on this machine"))]
    PostgresUnguarded(PgConnection),
}

impl ByHand {
    /// Runs a statement that both databases understand. Returns the number of rows changed.
    pub(crate) async fn run(&mut self, sql: &str) -> sqlx::Result<u64> {
        let sql = AssertSqlSafe(sql.to_owned());
        Ok(match self {
            ByHand::Sqlite(raw) => sqlx::query(sql).execute(raw).await?.rows_affected(),
            ByHand::Postgres(raw) => sqlx::query(sql).execute(raw).await?.rows_affected(),
            // The guards are there again afterwards, so that only what was changed can be noticed.
            ByHand::PostgresUnguarded(raw) => {
                sqlx::query(guards("disable trigger all", "")).execute(&mut *raw).await?;
                let done = sqlx::query(sql).execute(&mut *raw).await?.rows_affected();
                sqlx::query(guards("enable trigger all", "enable always trigger")).execute(raw).await?;
                done
            }
        })
    }

    /// The two texts of a row.
    pub(crate) async fn texts(&mut self, sql: &str) -> [String; 2] {
        let sql = AssertSqlSafe(sql.to_owned());
        let (one, two) = match self {
            ByHand::Sqlite(raw) => sqlx::query_as(sql).fetch_one(raw).await.unwrap(),
            ByHand::Postgres(raw) | ByHand::PostgresUnguarded(raw) => {
                sqlx::query_as(sql).fetch_one(raw).await.unwrap()
            }
        };
        [one, two]
    }

    /// What is kept under the hash of a content.
    pub(crate) async fn content(&mut self, hash: &[u8]) -> Option<Vec<u8>> {
        let sql = "select bytes from contents where hash = $1";
        match self {
            ByHand::Sqlite(raw) => sqlx::query_scalar(sql).bind(hash).fetch_optional(raw).await.unwrap(),
            ByHand::Postgres(raw) | ByHand::PostgresUnguarded(raw) => {
                sqlx::query_scalar(sql).bind(hash).fetch_optional(raw).await.unwrap()
            }
        }
    }
}

/// Changes the triggers of all tables, then each of our own.
fn guards(all: &str, each: &str) -> AssertSqlSafe<String> {
    let each = if each.is_empty() {
        String::new()
    } else {
        format!(
            "for guard in select tgname, tgrelid::regclass as of from pg_trigger join pg_class on pg_class.oid = tgrelid
            where not tgisinternal and relnamespace = current_schema()::regnamespace loop
                execute format('alter table %s {each} %I', guard.of, guard.tgname);
            end loop;"
        )
    };
    AssertSqlSafe(format!(
        "do $$ declare guard record; begin
        alter table entries {all}; alter table contents {all}; alter table moved {all};
        alter table moved_contents {all}; alter table keys {all}; {each} end $$"
    ))
}

pub(crate) fn url(path: &Path) -> String {
    format!("sqlite:{}", path.display())
}

pub(crate) async fn raw(path: &Path) -> SqliteConnection {
    SqliteConnectOptions::new().filename(path).create_if_missing(true).connect().await.unwrap()
}

/// The file names in a folder, with the content of each file.
pub(crate) fn contents(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut found: Vec<_> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .map(|entry| {
            (entry.file_name().into_string().unwrap(), std::fs::read(entry.path()).unwrap_or_default())
        })
        .collect();
    found.sort();
    found
}

/// Runs a statement. Returns the number of rows changed.
pub(crate) async fn run(connection: &mut SqliteConnection, sql: &str) -> sqlx::Result<u64> {
    sqlx::query(AssertSqlSafe(sql.to_owned())).execute(connection).await.map(|done| done.rows_affected())
}

/// What is said of an error.
pub(crate) fn said(error: &StoreError) -> Refused {
    combclear_wording::keeping::store(combclear_wording::Words::english(), error)
}

/// What opening an address is refused with.
pub(crate) async fn refusal(url: &str) -> StoreError {
    let Err(error) = combclear_store::open(url).await else { panic!("`{url}` was opened") };
    assert!(!said(&error).help.is_empty());
    error
}

pub(crate) fn holding(name: &str) -> HoldingName {
    name.parse().unwrap()
}

pub(crate) fn id(number: u64) -> EntryId {
    EntryId(Uuid::from_u128(0x0190_0000_0000_7000_8000_0000_0000_0000 | u128::from(number)))
}

pub(crate) fn day() -> Day {
    "2026-04-11".parse().unwrap()
}

pub(crate) fn recorded_at() -> Instant {
    "2026-04-11T08:15:30.123Z".parse().unwrap()
}

/// Drafts of several kinds, with and without time of day and correction, one for each number.
pub(crate) fn drafts(numbers: impl IntoIterator<Item = u64>) -> Vec<Draft> {
    numbers.into_iter().map(draft).collect()
}

pub(crate) fn draft(number: u64) -> Draft {
    let event = match number % 3 {
        0 => Event::from(ApiaryDetails {
            apiary: format!("apiary {number}").parse().unwrap(),
            place: Some("behind the \"old\" barn, 300 m \u{2191}".to_owned()),
        }),
        1 => Event::from(ColonyEnded {
            colony: format!("colony {number}").parse().unwrap(),
            cause: "queenless, dwindled".to_owned(),
        }),
        _ => Event::from(NectarFlow {
            apiary: "apiary 3".parse().unwrap(),
            forage: "lime; 'heather'".to_owned(),
            stage: FlowStage::Expected,
            from: day(),
            from_early: None,
            from_late: None,
            to: None,
        }),
    };
    let draft = Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), event);
    match number % 4 {
        0 => draft.at("09:30".parse().unwrap()),
        1 => draft.correcting(id(number / 2), "wrong colony\nnoted"),
        2 => draft.at("00:00".parse().unwrap()).correcting(id(number + 1), "zweimal gez\u{e4}hlt"),
        _ => {
            let what = "red notebook; \"2025\"".to_owned();
            draft.copied_from(CopiedFrom { what, written_on: day() })
        }
    }
}

/// The entry that attaches a content to a lot.
pub(crate) fn attaching(number: u64, content: &Content) -> Draft {
    let event = Event::from(DocumentAttached {
        content: content.hash(),
        media_type: MediaType::Png,
        bytes: u32::try_from(content.bytes().len()).unwrap(),
        file_name: None,
        lot: Some(format!("lot {number}").parse().unwrap()),
        prescription: None,
    });
    Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), event)
}

/// Seals drafts one after the other.
pub(crate) fn chain(
    holding: &HoldingName,
    mut tip: Option<(u64, Hash)>,
    drafts: impl IntoIterator<Item = Draft>,
) -> Vec<Entry> {
    let seal = |draft| {
        let entry = Entry::seal(holding, draft, recorded_at(), tip);
        tip = Some(entry.tip());
        entry
    };
    drafts.into_iter().map(seal).collect()
}
