//! Files that are refused, and that a refused file stays unchanged.

use std::fs;

use combclear_domain::journal::Entry;
use combclear_store::{AppendError, StoreError, Verified};
use sqlx::Connection;

use crate::making::{Bench, chain, contents, drafts, refusal, run, said, url};

#[tokio::test]
async fn a_folder_and_a_path_without_folder_are_refused() {
    let bench = Bench::new();
    fs::create_dir(&bench.path).unwrap();
    let error = refusal(&bench.url()).await;
    assert_eq!(said(&error).message, format!("cannot open `{}`: it is a folder", bench.path.display()));
    let nowhere = bench.folder.path().join("no/such/journal.db");
    let error = refusal(&url(&nowhere)).await;
    assert_eq!(
        said(&error).message,
        format!("cannot open `{}`: its folder does not exist", nowhere.display())
    );
    assert!(!nowhere.parent().unwrap().exists());
}

#[tokio::test]
async fn a_journal_asked_for_read_only_is_read_and_not_written() {
    let (bench, journal, holding, entries) = Bench::with_entries(3).await;
    let after = entries.last().map(Entry::tip);
    let url = format!("{}?mode=ro", bench.url());
    for closed in [false, true] {
        if closed {
            journal.close().await;
        }
        let reading = combclear_store::open(&url).await.unwrap();
        assert_eq!(reading.page(&holding, 0, 9).await.unwrap(), entries);
        let sound = reading.verify(&holding, None).await.unwrap();
        assert_eq!(sound, Verified::Sound { entries: 3, head: after.map(|(_, hash)| hash) });
        let more = chain(&holding, after, drafts([15]));
        let refused = reading.append(&holding, after, &more, &[]).await.unwrap_err();
        assert!(matches!(refused, AppendError::Store(StoreError::ReadOnly { .. })), "{refused:?}");
        reading.close().await;
    }
    let nowhere = format!("{}?mode=ro", crate::making::url(&bench.folder.path().join("other.db")));
    let error = refusal(&nowhere).await;
    assert!(matches!(error, StoreError::ReadOnly { .. } | StoreError::CannotOpen { .. }), "{error:?}");
    assert!(!bench.folder.path().join("other.db").exists());
}

/// It holds names, addresses and what was given: nobody else on the machine may read it.
#[cfg(unix)]
#[tokio::test]
async fn a_new_file_can_be_read_by_its_owner_only() {
    use std::os::unix::fs::PermissionsExt;
    let (bench, journal, ..) = Bench::with_entries(3).await;
    for (name, _) in contents(bench.folder.path()) {
        let rights = fs::metadata(bench.folder.path().join(&name)).unwrap().permissions().mode();
        assert_eq!(rights & 0o777, 0o600, "{name}");
    }
    drop(journal);
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
        assert_eq!(said(&error).message, format!("`{}` is not a database", bench.path.display()));
        assert_eq!(contents(bench.folder.path()), [("journal.db".to_owned(), text.as_bytes().to_vec())]);
    }
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
    assert!(matches!(error, StoreError::Newer { version: 9000, known: 5, .. }), "{error:?}");
    assert_eq!(
        said(&error).message,
        format!(
            "`{}` has version 9000 of the tables; this program knows versions up to 5",
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
    run(&mut raw, "update _sqlx_migrations set checksum = x'00' where version = 1").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Altered { version: 1, .. }), "{error:?}");
    run(&mut raw, "update _sqlx_migrations set version = 0 where version = 1").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Altered { version: 0, .. }), "{error:?}");
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
    for error in [
        journal.trusted().unwrap_err(),
        journal.verify(&holding, None).await.unwrap_err(),
        journal.page(&holding, 0, 3000).await.unwrap_err(),
    ] {
        assert!(matches!(error, StoreError::Damaged { .. }), "{error:?}");
        assert!(!said(&error).help.is_empty());
    }
    drop(journal);
    // Only the write-ahead flag (two bytes) and the change counters are in the first page.
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

/// File modes. They do not bind the superuser, so the test drops privileges if necessary.
#[cfg(unix)]
mod modes {
    use std::os::unix::fs::{MetadataExt, PermissionsExt};
    use std::os::unix::process::CommandExt;
    use std::path::Path;
    use std::process::Command;
    use std::time::Duration;

    use super::*;

    /// Runs the body as a user bound by file modes: here, or in a process of its own.
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
            .args(["--exact", &format!("refused::modes::{test}"), "--nocapture"])
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
            journal.close().await;
            // Write-only.
            set_mode(&bench.path, 0o200);
            let error = refusal(&bench.url()).await;
            assert!(matches!(error, StoreError::CannotOpen { .. }), "{error:?}");
            assert!(
                said(&error).message.ends_with(": the system refuses access to it or to its folder"),
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
                said(&error).message.ends_with(": there is no such file, and none can be created there"),
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
