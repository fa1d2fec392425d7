//! Opening: which addresses are taken, which files are refused, and that a refused file stays as it is.

use std::fs;
use std::path::Path;
use std::time::Duration;

use combclear_domain::journal::Entry;
use combclear_store::{AppendError, StoreError, Verified};
use sqlx::{AssertSqlSafe, Connection};

use crate::making::{Bench, chain, draft, drafts, raw, refusal, run, url};

/// The names in a folder, with what is in each file.
fn contents(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut found: Vec<_> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap())
        .map(|entry| (entry.file_name().into_string().unwrap(), fs::read(entry.path()).unwrap_or_default()))
        .collect();
    found.sort();
    found
}

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
        ("", "`` does not say what kind of database it is", "name a file: `sqlite:journal.db`"),
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
            "`.db` is not something that can be asked of a file",
            "`?mode=rw` opens only a file that is there; write a `?` in a file name as `%3F`",
        ),
        (
            "sqlite:bees.db?mode=memory",
            "`mode=memory` is not something that can be asked of a file",
            "`?mode=rw` opens only a file that is there; write a `?` in a file name as `%3F`",
        ),
        ("sqlite:bees%ff.db", "`bees%ff.db` cannot be read as a path", "write a `%` in a file name as `%25`"),
    ] {
        let error = refusal(address).await;
        assert!(matches!(error, StoreError::Address { .. }), "{address}");
        assert_eq!((error.to_string().as_str(), error.help()), (message, help), "{address}");
    }
}

#[tokio::test]
async fn other_databases_are_refused_without_repeating_a_password() {
    for (address, message) in [
        ("postgres://keeper:secret@db/combclear", "a journal in PostgreSQL is not built yet"),
        ("postgresql://keeper:secret@db/combclear", "a journal in PostgreSQL is not built yet"),
        (
            "other://keeper:secret@db/combclear",
            "`other` is not a kind of database that a journal can be kept in",
        ),
    ] {
        let error = refusal(address).await;
        assert_eq!(error.to_string(), message);
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
            error.to_string().ends_with(": there is no such file, and none can be made there"),
            "{error}"
        );
    }
    assert_eq!(contents(bench.folder.path()), []);
}

#[tokio::test]
async fn a_folder_and_a_path_without_folder_are_refused() {
    let bench = Bench::new();
    fs::create_dir(&bench.path).unwrap();
    let error = refusal(&bench.url()).await;
    assert_eq!(error.to_string(), format!("cannot open `{}`: it is a folder", bench.path.display()));
    let nowhere = bench.folder.path().join("no/such/journal.db");
    let error = refusal(&url(&nowhere)).await;
    assert_eq!(error.to_string(), format!("cannot open `{}`: its folder is not there", nowhere.display()));
    assert!(!nowhere.parent().unwrap().exists());
}

#[tokio::test]
async fn a_journal_asked_for_read_only_is_refused() {
    let (bench, journal, ..) = Bench::with_entries(1).await;
    drop(journal);
    let error = refusal(&format!("{}?mode=ro", bench.url())).await;
    assert!(matches!(error, StoreError::ReadOnly { .. }), "{error:?}");
    assert_eq!(error.to_string(), format!("`{}` is read-only", bench.path.display()));
}

#[tokio::test]
async fn a_read_only_file_is_refused_until_it_may_be_written_again() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    drop(journal);
    let copy = bench.folder.path().join("copy.db");
    run(&mut bench.raw().await, &format!("vacuum into '{}'", copy.display())).await.unwrap();
    let set_read_only = |read_only| {
        let mut permissions = fs::metadata(&copy).unwrap().permissions();
        permissions.set_readonly(read_only);
        fs::set_permissions(&copy, permissions).unwrap();
    };
    set_read_only(true);
    let before = fs::read(&copy).unwrap();
    let error = refusal(&url(&copy)).await;
    assert!(matches!(error, StoreError::ReadOnly { .. }), "{error:?}");
    assert_eq!(fs::read(&copy).unwrap(), before);
    set_read_only(false);
    let journal = combclear_store::open(&url(&copy)).await.unwrap();
    assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
}

#[tokio::test]
async fn a_file_that_is_no_database_is_refused_and_left_as_it_is() {
    for text in
        ["dear diary", "x", &"a line of a note\n".repeat(1000), "SQLite format 3\0but then something else"]
    {
        let bench = Bench::new();
        fs::write(&bench.path, text).unwrap();
        let error = refusal(&bench.url()).await;
        assert!(matches!(error, StoreError::NotADatabase { .. }), "`{text}`: {error:?}");
        assert_eq!(error.to_string(), format!("`{}` is not a database", bench.path.display()));
        assert_eq!(contents(bench.folder.path()), [("journal.db".to_owned(), text.as_bytes().to_vec())]);
    }
}

#[tokio::test]
async fn an_empty_file_becomes_a_journal() {
    let bench = Bench::new();
    fs::write(&bench.path, "").unwrap();
    assert_eq!(bench.open().await.holdings().await.unwrap(), []);
}

#[tokio::test]
async fn a_database_of_another_program_is_refused_and_left_as_it_is() {
    for tables in [
        "create table songs (title text); insert into songs values ('flight of the bumblebee')",
        "create table entries (title text)",
        "create table _sqlx_migrations (version bigint primary key)",
    ] {
        let bench = Bench::new();
        let mut other = bench.raw().await;
        for sql in tables.split(';') {
            run(&mut other, sql).await.unwrap();
        }
        other.close().await.unwrap();
        let before = contents(bench.folder.path());
        let error = refusal(&bench.url()).await;
        assert!(matches!(error, StoreError::Foreign { .. }), "{error:?}");
        assert_eq!(contents(bench.folder.path()), before, "{tables}");
    }
}

#[tokio::test]
async fn a_database_of_a_newer_version_is_refused() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    drop(journal);
    let mut raw = bench.raw().await;
    run(
        &mut raw,
        "insert into _sqlx_migrations (version, description, success, checksum, execution_time)
        values (9000, 'later', true, x'00', 1)",
    )
    .await
    .unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Newer { version: 9000, known: 1, .. }), "{error:?}");
    assert_eq!(
        error.to_string(),
        format!(
            "`{}` has version 9000 of the tables; this program knows versions up to 1",
            bench.path.display()
        )
    );
    run(&mut raw, "delete from _sqlx_migrations where version = 9000").await.unwrap();
    assert_eq!(bench.open().await.page(&holding, 0, 9).await.unwrap(), entries);
}

#[tokio::test]
async fn a_database_with_other_tables_of_the_same_version_is_refused() {
    let (bench, journal, ..) = Bench::with_entries(1).await;
    drop(journal);
    let mut raw = bench.raw().await;
    run(&mut raw, "update _sqlx_migrations set checksum = x'00'").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Altered { version: 1, .. }), "{error:?}");
    run(&mut raw, "update _sqlx_migrations set version = 0").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Altered { version: 0, .. }), "{error:?}");
}

#[tokio::test]
async fn many_may_open_a_new_file_at_once() {
    let bench = Bench::new();
    let opening: Vec<_> = (0..8)
        .map(|_| {
            let url = bench.url();
            tokio::spawn(async move { combclear_store::open(&url).await.map(|_| ()) })
        })
        .collect();
    for opened in opening {
        opened.await.unwrap().unwrap();
    }
    let steps: i64 = sqlx::query_scalar("select count(*) from _sqlx_migrations")
        .fetch_one(&mut bench.raw().await)
        .await
        .unwrap();
    assert_eq!(steps, 1);
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

#[tokio::test]
async fn a_locked_database_is_refused_after_a_while() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    let mut raw = bench.raw().await;
    let lock = raw.begin_with("begin immediate").await.unwrap();
    let after = Some(entries[0].tip());
    let more = chain(&holding, after, [draft(2)]);
    let url = bench.url();
    let started = std::time::Instant::now();
    let (append, opened) = tokio::join!(journal.append(&holding, after, &more), refusal(&url));
    assert!(started.elapsed() >= Duration::from_secs(4), "it did not wait: {:?}", started.elapsed());
    assert!(matches!(opened, StoreError::Locked { .. }), "{opened:?}");
    let error = append.unwrap_err();
    assert!(matches!(error, AppendError::Store(StoreError::Locked { .. })), "{error:?}");
    assert_eq!(error.to_string(), format!("`{}` is locked by another writer", bench.path.display()));
    lock.rollback().await.unwrap();
    journal.append(&holding, after, &more).await.unwrap();
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
    let (append, released) = tokio::join!(journal.append(&holding, after, &more), release);
    released.unwrap();
    append.unwrap();
    assert_eq!(journal.tip(&holding).await.unwrap(), Some(more[0].tip()));
}

#[tokio::test]
async fn a_damaged_file_is_named_and_left_as_it_is() {
    let (bench, journal, holding, _) = Bench::with_entries(3000).await;
    drop(journal);
    let copy = bench.folder.path().join("copy.db");
    run(&mut bench.raw().await, &format!("vacuum into '{}'", copy.display())).await.unwrap();
    let mut bytes = fs::read(&copy).unwrap();
    let middle = bytes.len() / 2 / 4096 * 4096;
    bytes[middle..middle + 16 * 4096].fill(0xa5);
    fs::write(&copy, &bytes).unwrap();
    let journal = combclear_store::open(&url(&copy)).await.unwrap();
    let error = journal.verify(&holding, None).await.unwrap_err();
    assert!(matches!(error, StoreError::Damaged { .. }), "{error:?}");
    let error = journal.page(&holding, 0, 3000).await.unwrap_err();
    assert!(matches!(error, StoreError::Damaged { .. }), "{error:?}");
    assert!(!error.help().is_empty());
    drop(journal);
    // Only the mark of write-ahead logging (two bytes) and the change counters stand in the first page.
    assert_eq!(fs::read(&copy).unwrap()[4096..], bytes[4096..]);
}

#[tokio::test]
async fn a_file_cut_short_is_refused_or_named() {
    let (bench, journal, holding, _) = Bench::with_entries(3000).await;
    drop(journal);
    let copy = bench.folder.path().join("copy.db");
    run(&mut bench.raw().await, &format!("vacuum into '{}'", copy.display())).await.unwrap();
    let bytes = fs::read(&copy).unwrap();
    fs::write(&copy, &bytes[..bytes.len() / 2]).unwrap();
    let found = match combclear_store::open(&url(&copy)).await {
        Ok(journal) => journal.verify(&holding, None).await.map(|_| ()),
        Err(error) => Err(error),
    };
    let error = found.unwrap_err();
    assert!(matches!(error, StoreError::Damaged { .. }), "{error:?}");
}

#[tokio::test]
async fn a_file_that_disappears_is_not_made_anew() {
    let (bench, journal, holding, entries) = Bench::with_entries(2).await;
    drop(journal);
    let journal = bench.open().await;
    // No connection for reading was opened yet.
    for name in ["journal.db", "journal.db-wal", "journal.db-shm"] {
        let _ = fs::remove_file(bench.folder.path().join(name));
    }
    let after = Some(entries[1].tip());
    let error = journal.tip(&holding).await.unwrap_err();
    assert!(matches!(error, StoreError::CannotOpen { .. }), "{error:?}");
    let error = journal.append(&holding, after, &chain(&holding, after, drafts([3]))).await.unwrap_err();
    assert!(matches!(error, AppendError::Store(StoreError::CannotOpen { .. })), "{error:?}");
    assert!(!bench.path.exists());
}

#[tokio::test]
async fn a_journal_restored_from_its_text_is_still_a_journal() {
    let (bench, journal, holding, entries) = Bench::with_entries(6).await;
    drop(journal);
    // What a dump and a restore leave: the same tables, filled anew.
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

/// File modes. They do not bind the superuser, so the test steps down first where it has to.
#[cfg(unix)]
mod modes {
    use std::os::unix::fs::{MetadataExt, PermissionsExt};
    use std::os::unix::process::CommandExt;
    use std::process::Command;

    use super::*;

    /// Runs the body as somebody whom file modes bind: here, or in a process of its own.
    fn without_rights(test: &str, body: impl AsyncFnOnce()) {
        let probe = tempfile::NamedTempFile::new().unwrap();
        let superuser = probe.as_file().metadata().unwrap().uid() == 0;
        if !superuser {
            let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
            runtime.block_on(body());
            return;
        }
        // The build folder may be closed to others, so they get a copy of this program.
        let folder = tempfile::tempdir().unwrap();
        set_mode(folder.path(), 0o755);
        let program = folder.path().join("contract");
        fs::copy(std::env::current_exe().unwrap(), &program).unwrap();
        set_mode(&program, 0o755);
        let done = Command::new(&program)
            .args(["--exact", &format!("open::modes::{test}"), "--nocapture"])
            .current_dir("/")
            .uid(65534)
            .gid(65534)
            .output()
            .unwrap();
        let said = String::from_utf8_lossy(&done.stdout) + String::from_utf8_lossy(&done.stderr);
        assert!(done.status.success() && said.contains("1 passed"), "{said}");
    }

    fn set_mode(path: &Path, mode: u32) {
        fs::set_permissions(path, fs::Permissions::from_mode(mode)).unwrap();
    }

    #[test]
    fn a_file_that_may_not_be_read_is_refused() {
        without_rights("a_file_that_may_not_be_read_is_refused", async || {
            let (bench, journal, ..) = Bench::with_entries(1).await;
            drop(journal);
            // Write-only.
            set_mode(&bench.path, 0o200);
            let error = refusal(&bench.url()).await;
            assert!(matches!(error, StoreError::CannotOpen { .. }), "{error:?}");
            assert!(
                error.to_string().ends_with(": the system refuses access to it or to its folder"),
                "{error}"
            );
        });
    }

    #[test]
    fn a_read_only_folder_is_refused() {
        without_rights("a_read_only_folder_is_refused", async || {
            let bench = Bench::new();
            set_mode(bench.folder.path(), 0o555);
            let error = refusal(&bench.url()).await;
            assert!(
                error.to_string().ends_with(": there is no such file, and none can be made there"),
                "{error}"
            );
            set_mode(bench.folder.path(), 0o755);
            drop(bench.open().await);
            tokio::time::sleep(Duration::from_millis(200)).await;
            set_mode(bench.folder.path(), 0o555);
            let error = refusal(&bench.url()).await;
            assert!(
                matches!(error, StoreError::CannotOpen { .. } | StoreError::ReadOnly { .. }),
                "{error:?}"
            );
            set_mode(bench.folder.path(), 0o755);
        });
    }
}
