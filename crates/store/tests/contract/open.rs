//! Opening: accepted addresses, files, locks.

use std::fs;
use std::time::Duration;

use combclear_domain::journal::Entry;
use combclear_store::{AppendError, StoreError, Verified};
use sqlx::{AssertSqlSafe, Connection};

use crate::making::{Bench, chain, contents, draft, drafts, raw, refusal, run, said, url};

#[tokio::test]
async fn an_address_says_what_kind_of_database_it_is() {
    let bench = Bench::new();
    let path = bench.path.display();
    for address in [format!("sqlite:{path}"), format!("sqlite://{path}"), format!("sqlite:{path}?mode=rw")] {
        let journal = combclear_store::open(&address).await.unwrap();
        journal.ready().await.unwrap();
    }
    assert!(bench.path.is_file());
}

#[tokio::test]
async fn a_plain_path_is_told_how_to_be_written() {
    for (address, message, help) in [
        (
            "bees.db",
            "`bees.db` does not say what kind of database it is",
            "for a file, write `sqlite:bees.db`",
        ),
        (
            "./a/bees.db",
            "`./a/bees.db` does not say what kind of database it is",
            "for a file, write `sqlite:./a/bees.db`",
        ),
        (
            "C:\\bees.db",
            "`C:\\bees.db` does not say what kind of database it is",
            "for a file, write `sqlite:C:\\bees.db`",
        ),
        (
            "",
            "`` does not say what kind of database it is",
            "name a file: `sqlite:journal.db`, or a server: `postgres://user@server/database`",
        ),
        ("sqlite:", "the address names no file", "write `sqlite:journal.db`"),
        ("sqlite://?mode=rw", "the address names no file", "write `sqlite:journal.db`"),
        (
            "sqlite::memory:",
            "`:memory:` is not the path of a file",
            "a journal is kept in a file; write its plain path, as in `sqlite:journal.db`",
        ),
        (
            "sqlite:file:bees.db",
            "`file:bees.db` is not the path of a file",
            "a journal is kept in a file; write its plain path, as in `sqlite:journal.db`",
        ),
        (
            "sqlite:what?.db",
            "`.db` is not an option for a file",
            "`?mode=rw` opens only an existing file; write a `?` in a file name as `%3F`",
        ),
        (
            "sqlite:bees.db?mode=memory",
            "`mode=memory` is not an option for a file",
            "`?mode=rw` opens only an existing file; write a `?` in a file name as `%3F`",
        ),
        ("sqlite:bees%ff.db", "`bees%ff.db` cannot be read as a path", "write a `%` in a file name as `%25`"),
    ] {
        let error = refusal(address).await;
        assert!(matches!(error, StoreError::Address(_)), "{address}");
        let error = said(&error);
        assert_eq!((error.message.as_str(), error.help.as_str()), (message, help), "{address}");
    }
}

#[tokio::test]
async fn other_databases_are_refused_without_repeating_a_password() {
    for (address, message) in [(
        "other://keeper:secret@db/combclear",
        "`other` is not a kind of database that a journal can be kept in",
    )] {
        let error = refusal(address).await;
        assert_eq!(said(&error).message, message);
        assert!(!format!("{error:?}").contains("secret"));
    }
}

#[tokio::test]
async fn signs_in_a_path_can_be_escaped() {
    let bench = Bench::new();
    let address = format!("sqlite:{}/100%25 \u{e4}%3F%23.db", bench.folder.path().display());
    combclear_store::open(&address).await.unwrap().ready().await.unwrap();
    assert!(bench.folder.path().join("100% \u{e4}?#.db").is_file());
}

#[tokio::test]
async fn a_file_that_must_be_there_is_not_made() {
    let bench = Bench::new();
    for mode in ["rw", "ro"] {
        let error = refusal(&format!("{}?mode={mode}", bench.url())).await;
        assert!(matches!(error, StoreError::CannotOpen { .. }), "{error}");
        assert!(
            said(&error).message.ends_with(": there is no such file, and none can be created there"),
            "{error}"
        );
    }
    assert_eq!(contents(bench.folder.path()), []);
}

#[tokio::test]
async fn an_empty_file_becomes_a_journal() {
    let bench = Bench::new();
    fs::write(&bench.path, "").unwrap();
    assert_eq!(bench.open().await.holdings().await.unwrap(), []);
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn many_may_open_a_new_file_at_once() {
    for _ in 0..20 {
        let bench = Bench::new();
        let opening: Vec<_> = (0..8)
            .map(|_| {
                let url = bench.url();
                tokio::spawn(async move { combclear_store::open(&url).await.map(drop) })
            })
            .collect();
        for opened in opening {
            opened.await.unwrap().unwrap();
        }
        let steps = "select count(*) from _sqlx_migrations";
        let steps: i64 = sqlx::query_scalar(steps).fetch_one(&mut bench.raw().await).await.unwrap();
        assert_eq!(steps, 5);
    }
}

#[tokio::test]
async fn the_file_is_kept_so_that_readers_go_on_while_somebody_writes_and_a_commit_is_on_the_disk() {
    let (bench, journal, holding, entries) = Bench::with_entries(2).await;
    let mut raw = bench.raw().await;
    let mode: String = sqlx::query_scalar("pragma journal_mode").fetch_one(&mut raw).await.unwrap();
    assert_eq!(mode, "wal");
    let write = raw.begin_with("begin immediate").await.unwrap();
    assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
    journal.ready().await.unwrap();
    drop(write);
}

/// The tables gain columns; what was recorded before keeps its hash, and what is copied now is recorded beside it.
#[tokio::test]
async fn a_database_of_the_version_before_is_migrated_and_its_entries_stay_as_they_were() {
    let (bench, journal, holding, entries) = Bench::with_entries(2).await;
    let old = bench.folder.path().join("old.db");
    let steps = bench.folder.path().join("steps");
    fs::create_dir(&steps).unwrap();
    let all = concat!(env!("CARGO_MANIFEST_DIR"), "/../../migrations/sqlite");
    for step in ["0001_journal.sql", "0002_contents.sql", "0003_archive.sql"] {
        fs::copy(format!("{all}/{step}"), steps.join(step)).unwrap();
    }
    let mut other = raw(&old).await;
    sqlx::migrate::Migrator::new(steps).await.unwrap().run(&mut other).await.unwrap();
    run(&mut other, &format!("attach '{}' as new", bench.path.display())).await.unwrap();
    let columns = "holding, seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason, prev, hash";
    let copy = format!("insert into main.entries ({columns}) select {columns} from new.entries order by seq");
    assert_eq!(run(&mut other, &copy).await.unwrap(), 2);
    other.close().await.unwrap();
    drop(journal);
    let journal = combclear_store::open(&url(&old)).await.unwrap();
    assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
    let after = Some(entries[1].tip());
    let copied = chain(&holding, after, [draft(3)]);
    assert!(copied[0].draft.copied_from.is_some());
    journal.append(&holding, after, &copied, &[]).await.unwrap();
    assert_eq!(journal.page(&holding, 2, 9).await.unwrap(), copied);
    let head = Some(copied[0].hash);
    assert_eq!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 3, head });
}

#[tokio::test]
async fn a_locked_database_is_refused_after_a_while() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    let mut raw = bench.raw().await;
    let lock = raw.begin_with("begin immediate").await.unwrap();
    let after = Some(entries[0].tip());
    let more = chain(&holding, after, [draft(2)]);
    let url = bench.url();
    let started = std::time::Instant::now();
    let (append, opened) = tokio::join!(journal.append(&holding, after, &more, &[]), refusal(&url));
    assert!(started.elapsed() >= Duration::from_secs(4), "it did not wait: {:?}", started.elapsed());
    assert!(matches!(opened, StoreError::Locked { .. }), "{opened:?}");
    let error = append.unwrap_err();
    let AppendError::Store(error @ StoreError::Locked { .. }) = error else { panic!("{error:?}") };
    assert_eq!(said(&error).message, format!("`{}` is locked by another writer", bench.path.display()));
    lock.rollback().await.unwrap();
    journal.append(&holding, after, &more, &[]).await.unwrap();
}

#[tokio::test]
async fn a_short_lock_is_waited_for() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    let mut raw = bench.raw().await;
    let lock = raw.begin_with("begin immediate").await.unwrap();
    let after = Some(entries[0].tip());
    let more = chain(&holding, after, [draft(2)]);
    let release = async {
        tokio::time::sleep(Duration::from_millis(300)).await;
        lock.rollback().await
    };
    let (append, released) = tokio::join!(journal.append(&holding, after, &more, &[]), release);
    released.unwrap();
    append.unwrap();
    assert_eq!(journal.tip(&holding).await.unwrap(), Some(more[0].tip()));
}

#[tokio::test]
async fn a_file_that_disappears_is_not_made_anew() {
    let (bench, journal, holding, entries) = Bench::with_entries(2).await;
    drop(journal);
    let journal = bench.open().await;
    // No reading connection is open yet.
    for name in ["journal.db", "journal.db-wal", "journal.db-shm"] {
        let _ = fs::remove_file(bench.folder.path().join(name));
    }
    let after = Some(entries[1].tip());
    let error = journal.tip(&holding).await.unwrap_err();
    assert!(matches!(error, StoreError::Replaced { .. }), "{error:?}");
    let error = journal.append(&holding, after, &chain(&holding, after, drafts([3])), &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::Store(StoreError::Replaced { .. })), "{error:?}");
    assert!(!bench.path.exists());
}

#[tokio::test]
async fn a_journal_restored_from_its_text_is_still_a_journal() {
    let (bench, journal, holding, entries) = Bench::with_entries(6).await;
    drop(journal);
    // The result of a dump and a restore: the same tables, filled again.
    let copy = bench.folder.path().join("copy.db");
    let mut other = raw(&copy).await;
    let attach = format!("attach '{}' as old", bench.path.display());
    run(&mut other, &attach).await.unwrap();
    let made: Vec<String> =
        sqlx::query_scalar("select sql from old.sqlite_schema where sql is not null order by rowid")
            .fetch_all(&mut other)
            .await
            .unwrap();
    for sql in made {
        sqlx::query(AssertSqlSafe(sql)).execute(&mut other).await.unwrap();
    }
    run(&mut other, "insert into main._sqlx_migrations select * from old._sqlx_migrations").await.unwrap();
    run(&mut other, "insert into main.entries select * from old.entries order by seq").await.unwrap();
    other.close().await.unwrap();
    let journal = combclear_store::open(&url(&copy)).await.unwrap();
    assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
    let head = entries.last().map(|entry: &Entry| entry.hash);
    assert_eq!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 6, head });
}
