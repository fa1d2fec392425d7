//! Database files as each version of this program left them, kept beside this test: they open, and say what they said then.
//!
//! `COMBCLEAR_KEEP_DATABASES=1` makes the files that are missing, from the migrations up to each version and with rows of that time.
//! One that is kept is never made anew: a migration that was changed afterwards does not open it any more.

use std::path::{Path, PathBuf};

use combclear_domain::journal::key::{Key, Role};
use combclear_domain::journal::{Entry, Hash};
use combclear_store::{Holdings, Verified};
use sqlx::{Connection, SqliteConnection};

use crate::making::{Bench, attaching, chain, draft, holding, raw, recorded_at, url};
use crate::on_sqlite::archive::archived;
use crate::on_sqlite::documents::content;

/// Version, entries, contents, keys and the beginning of the head. Those before 5 were made from their migrations, and 5 by the
/// program of then: it has an archived entry too.
const KEPT: [(usize, u64, usize, usize, &str); 5] = [
    (1, 3, 0, 0, "05d01cc0d96c14ca"),
    (2, 4, 1, 0, "20b2973b66551ae2"),
    (3, 4, 1, 0, "20b2973b66551ae2"),
    (4, 4, 1, 0, "20b2973b66551ae2"),
    (5, 6, 1, 1, "0bd901a8e7e016f8"),
];

fn file(version: usize) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("tests/kept/version-{version}.sqlite"))
}

fn migrations() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../migrations/sqlite");
    let mut files: Vec<_> = std::fs::read_dir(folder).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    files
}

#[tokio::test]
async fn a_file_of_each_version_opens_and_says_what_it_said() {
    assert_eq!(migrations().len(), KEPT.len(), "a file of the new version is to be kept");
    for (version, entries, contents, keys, head) in KEPT {
        if !file(version).exists() && std::env::var_os("COMBCLEAR_KEEP_DATABASES").is_some() {
            if version == KEPT.len() { keep_present(version).await } else { keep(version).await }
        }
        let bench = Bench::new();
        std::fs::copy(file(version), &bench.path).unwrap();
        let journal = bench.open().await;
        let holding = holding("first");
        let found = journal.verify(&holding, None).await.unwrap();
        let Verified::Sound { entries: found, head: Some(found_head) } = found else { panic!("{found:?}") };
        assert_eq!(found, entries, "version {version}");
        assert!(found_head.to_string().starts_with(head), "version {version}: {found_head}");
        assert_eq!(journal.contents(&holding).await.unwrap().len(), contents, "version {version}");
        assert_eq!(journal.keys().await.unwrap().len(), keys, "version {version}");
        let snapshot = Holdings::new(journal.clone()).snapshot(&holding).await.unwrap().unwrap();
        assert_eq!(snapshot.tip(), Some((entries, found_head)), "version {version}");
        // It goes on from there.
        let tip = snapshot.tip();
        let new = content(9);
        let attached = chain(&holding, tip, [attaching(90, &new)]);
        journal.append(&holding, tip, &attached, std::slice::from_ref(&new)).await.unwrap();
        assert_eq!(journal.content(&holding, new.hash()).await.unwrap().as_deref(), Some(new.bytes()));
        let head = Some(attached[0].hash);
        let verified = journal.verify(&holding, None).await.unwrap();
        assert_eq!(verified, Verified::Sound { entries: entries + 1, head }, "version {version}");
    }
}

/// A file as an earlier version left it.
async fn keep(version: usize) {
    let folder = tempfile::tempdir().unwrap();
    for file in &migrations()[..version] {
        std::fs::copy(file, folder.path().join(file.file_name().unwrap())).unwrap();
    }
    let mut raw = raw(&file(version)).await;
    let migrations = sqlx::migrate::Migrator::new(folder.path()).await.unwrap();
    migrations.run_direct(None, &mut raw, false).await.unwrap();
    let kept = content(3);
    // None of these was copied from paper, which earlier versions did not know.
    let mut drafts = [1, 2, 4].map(draft).to_vec();
    if version > 1 {
        drafts.push(attaching(5, &kept));
    }
    let holding = holding("first");
    for entry in chain(&holding, None, drafts) {
        insert(&mut raw, &entry).await;
    }
    if version > 1 {
        let insert = sqlx::query("insert into contents (holding, hash, bytes) values ('first', $1, $2)");
        insert.bind(&kept.hash().0[..]).bind(kept.bytes()).execute(&mut raw).await.unwrap();
    }
    raw.close().await.unwrap();
}

/// A file as this version leaves it.
async fn keep_present(version: usize) {
    let made = archived().await;
    let key = Key {
        id: "key00001".parse().unwrap(),
        holding: Some(holding("first")),
        role: Role::Keeper,
        holder: "Jory (invented)".parse().unwrap(),
        made_at: recorded_at(),
        until: None,
        ended_at: None,
    };
    made.journal.add_key(&key, Hash::of_content(b"invented")).await.unwrap();
    assert!(made.journal.copy_into(&file(version)).await.unwrap());
    made.journal.close().await;
    assert!(combclear_store::open(&url(&file(version))).await.is_ok());
}

/// With the columns of the first version.
async fn insert(raw: &mut SqliteConnection, entry: &Entry) {
    let draft = &entry.draft;
    let correction = draft.correction.as_deref();
    let insert = sqlx::query(
        "insert into entries (holding, seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body, corrects, reason,
        prev, hash) values ('first', $1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12)",
    );
    insert
        .bind(i64::try_from(entry.seq).unwrap())
        .bind(draft.id.0)
        .bind(draft.on.to_string())
        .bind(draft.at.map(|at| at.to_string()))
        .bind(entry.recorded_at.to_string())
        .bind(draft.recorded_by.as_str())
        .bind(draft.kind().as_str())
        .bind(&*draft.body)
        .bind(correction.map(|correction| correction.of.0))
        .bind(correction.map(|correction| correction.reason.as_str()))
        .bind(&entry.prev.0[..])
        .bind(&entry.hash.0[..])
        .execute(raw)
        .await
        .unwrap();
}
