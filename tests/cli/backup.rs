//! `combclear backup` and `combclear restore`: one file with everything in it, verified, and back.

use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};

use combclear_testkit::postgres::shared;
use serde_json::Value;

use crate::archive::{THROUGH, old};
use crate::bench::{Bench, DEMO, MINE, inspection, lines, mine};
use crate::killed_rounds::put;
use crate::server::Server;
use crate::verify::behind_its_back;

/// A bench with the demo, the holding `mine`, and two keys, one of them ended.
fn full() -> Bench {
    filled(Bench::new())
}

fn filled(bench: Bench) -> Bench {
    bench.run(&["import", DEMO]).done();
    bench.write("mine.jsonl", mine(&[]));
    bench.run(&["import", "--begin", "mine.jsonl"]).done();
    bench.run(&["key", "add", "keeper", "--for", "K", "--holding", "mine"]).done();
    let made = bench.run(&["key", "add", "operator", "--for", "O", "--json"]).done().json();
    bench.run(&["key", "end", made["id"].as_str().unwrap()]).done();
    bench
}

/// What a database has: the head of each holding, and its keys.
fn heads(bench: &Bench, db: &str) -> Vec<Value> {
    let of = |arguments: &[&str]| bench.run(&[&["--db", db], arguments].concat()).done().json();
    vec![
        of(&["verify", "--holding", "demo", "--json"]),
        of(&["verify", "--holding", "mine", "--json"]),
        of(&["key", "list", "--json"]),
    ]
}

/// The secrets of the keys, as a file keeps them.
fn secrets(bench: &Bench, file: &str) -> Vec<(String, Vec<u8>)> {
    use sqlx::{ConnectOptions, Connection};
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        let options = sqlx::sqlite::SqliteConnectOptions::new().filename(bench.path(file));
        let mut raw = options.connect().await.unwrap();
        let secrets = sqlx::query_as("select id, secret from keys order by id");
        let secrets = secrets.fetch_all(&mut raw).await.unwrap();
        raw.close().await.unwrap();
        secrets
    })
}

#[test]
fn a_backup_is_one_file_with_the_same_heads_and_opens_as_a_database() {
    let bench = full();
    let said = bench.run(&["backup", "copy.db"]).done().says(&[
        "Backed up into copy.db, ",
        "with 2 keys; the copy passes verification:",
        "demo: 456 entries, ",
        "mine: 2 entries, 0 documents, head ",
    ]);
    assert!(said.out.contains("bytes"), "{}", said.out);
    assert_eq!(bench.files(), ["combclear.db", "copy.db", "mine.jsonl"]);
    assert_eq!(heads(&bench, "sqlite:copy.db"), heads(&bench, "sqlite:combclear.db"));
    assert_eq!(secrets(&bench, "copy.db"), secrets(&bench, "combclear.db"));
    let kept = |db: &str| bench.run(&["--db", db, "export", "--holding", "demo"]).done().out;
    assert_eq!(kept("sqlite:copy.db"), kept("sqlite:combclear.db"));
}

#[test]
fn a_backup_says_for_programs_what_is_in_it() {
    let bench = full();
    let report = bench.run(&["backup", "copy.db", "--json"]).done().json();
    let size = std::fs::metadata(bench.path("copy.db")).unwrap().len();
    assert_eq!((report["file"].as_str(), report["bytes"].as_u64()), (Some("copy.db"), Some(size)));
    assert_eq!(report["keys"], 2);
    let demo = &report["holdings"][0];
    assert_eq!((demo["holding"].as_str(), demo["entries"].as_u64()), (Some("demo"), Some(456)));
    assert_eq!(demo["head"], heads(&bench, "sqlite:combclear.db")[0]["head"]);
    let documents = bench.run(&["documents", "--holding", "demo", "--json"]).done().json();
    assert!(demo["documents"].as_u64().unwrap() > 0, "{documents}");
}

#[cfg(unix)]
#[test]
fn a_backup_is_for_its_owner_alone() {
    use std::os::unix::fs::PermissionsExt;
    let bench = Bench::with_mine();
    bench.run(&["backup", "copy.db"]).done();
    bench.run(&["--db", "sqlite:new.db", "restore", "copy.db"]).done();
    for file in ["copy.db", "new.db"] {
        assert_eq!(
            std::fs::metadata(bench.path(file)).unwrap().permissions().mode() & 0o777,
            0o600,
            "{file}"
        );
    }
}

#[test]
fn a_file_that_is_there_is_left_as_it_is() {
    let bench = Bench::with_mine();
    bench.write("copy.db", "dear diary");
    bench.run(&["backup", "copy.db"]).failed().says(&["`copy.db`"]);
    assert_eq!(bench.read("copy.db"), "dear diary");
    bench.run(&["backup", "no/such/copy.db"]).failed().says(&["no backup was made", "`no/such/copy.db`"]);
    assert_eq!(bench.files(), ["combclear.db", "copy.db", "mine.jsonl"]);
}

#[test]
fn a_journal_that_was_changed_gives_no_backup_and_the_entry_is_named() {
    let bench = Bench::with_demo();
    behind_its_back(
        &bench,
        "combclear.db",
        &[
            "drop trigger entries_are_not_updated",
            "update entries set body = replace(body, 'O1', 'O2') where seq = 200",
            "update entries set recorded_by = 'somebody else' where seq = 201",
        ],
    );
    let named = "the journal of `demo` was changed at entry 20";
    bench.run(&["backup", "copy.db"]).failed().says(&["error: no backup was made: ", named]);
    assert_eq!(bench.files(), ["combclear.db"]);
    // A copy of the file by other means is found out before it is restored.
    std::fs::copy(bench.path("combclear.db"), bench.path("copied.db")).unwrap();
    bench
        .run(&["--db", "sqlite:new.db", "restore", "copied.db"])
        .failed()
        .says(&["error: the backup was not restored: ", named]);
    assert_eq!(bench.files(), ["combclear.db", "copied.db"]);
}

#[test]
fn a_missing_document_does_not_stand_in_the_way_of_a_backup_and_is_told_of() {
    let bench = Bench::with_demo();
    behind_its_back(
        &bench,
        "combclear.db",
        &[
            "drop trigger contents_are_not_deleted",
            "delete from contents where hash = (select min(hash) from contents)",
        ],
    );
    let ran = bench.run(&["backup", "copy.db"]);
    assert_eq!(ran.code, Some(5), "{}", ran.err);
    assert!(ran.err.starts_with("warning: "), "{}", ran.err);
    let report = bench.run(&["--db", "sqlite:new.db", "restore", "copy.db", "--json"]);
    assert_eq!(report.code, Some(5), "{}", report.err);
    assert!(!report.json()["holdings"][0]["lacking"].as_array().unwrap().is_empty());
}

#[test]
fn nothing_is_not_backed_up() {
    let bench = Bench::new();
    bench.run(&["backup", "copy.db"]).failed().says(&["there is no database at `combclear.db` yet"]);
    bench.write("none.jsonl", format!("{MINE}\n"));
    bench.run(&["import", "none.jsonl"]).done();
    bench.run(&["backup", "copy.db"]).failed().says(&["no backup was made", "has no journal yet"]);
    assert_eq!(bench.files(), ["combclear.db", "none.jsonl"]);
}

/// While a server takes in entries, every backup is whole: it has what was acknowledged before it began.
#[test]
fn backups_made_while_a_server_writes_are_whole() {
    let bench = Bench::with_mine();
    taken_while_writing(&bench);
}

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn backups_of_a_database_on_a_server_are_whole_too() {
    taken_while_writing(&Bench::on(shared().empty()).filled_with_mine());
}

fn taken_while_writing(bench: &Bench) {
    let server = Server::start(bench);
    let (written, over) = (AtomicUsize::new(2), AtomicBool::new(false));
    std::thread::scope(|threads| {
        threads.spawn(|| {
            while !over.load(Ordering::SeqCst) {
                let next = written.load(Ordering::SeqCst) + 1;
                assert!(matches!(put(server.port, next), Some(200 | 201)));
                written.store(next, Ordering::SeqCst);
            }
        });
        for round in 0..5 {
            let before = written.load(Ordering::SeqCst);
            let file = format!("copy{round}.db");
            let ran = bench.run(&["backup", &file, "--json"]);
            if ran.code != Some(0) || round == 4 {
                over.store(true, Ordering::SeqCst);
            }
            let report = ran.done().json();
            let entries = report["holdings"][0]["entries"].as_u64().unwrap();
            assert!(entries >= u64::try_from(before).unwrap(), "{entries} of {before}");
            bench.run(&["--db", &format!("sqlite:{file}"), "verify"]).done();
        }
    });
    assert!(written.load(Ordering::SeqCst) > 3, "the server wrote nothing meanwhile");
}

#[test]
fn a_backup_is_restored_into_a_new_file_and_into_an_empty_one() {
    let bench = full();
    bench.run(&["backup", "copy.db"]).done();
    let before = std::fs::read(bench.path("copy.db")).unwrap();
    bench.run(&["--db", "sqlite:new.db", "restore", "copy.db"]).done().says(&[
        "Restored from copy.db into sqlite:new.db, with 2 keys; it passes verification:",
        "demo: 456 entries",
    ]);
    bench.write("none.jsonl", format!("{MINE}\n"));
    bench.run(&["--db", "sqlite:empty.db", "import", "none.jsonl"]).done();
    bench.run(&["--db", "sqlite:empty.db", "restore", "copy.db"]).done();
    for db in ["sqlite:new.db", "sqlite:empty.db"] {
        assert_eq!(heads(&bench, db), heads(&bench, "sqlite:combclear.db"), "{db}");
    }
    assert_eq!(secrets(&bench, "new.db"), secrets(&bench, "combclear.db"));
    assert_eq!(std::fs::read(bench.path("copy.db")).unwrap(), before, "the backup stays as it is");
    let names = ["combclear.db", "copy.db", "empty.db", "mine.jsonl", "new.db", "none.jsonl"];
    assert_eq!(bench.files(), names);
}

/// The entry that says so comes pages after those without bodies, and they are taken in together.
#[test]
fn entries_that_were_moved_into_an_archive_are_restored_without_their_bodies() {
    let bench = old();
    let visits: Vec<String> = (100..5_300).map(|number| inspection(number, "2025-03-01", "A")).collect();
    bench.write("visits.jsonl", lines([MINE].into_iter().chain(visits.iter().map(String::as_str))));
    bench.run(&["import", "visits.jsonl"]).done();
    bench.run(&["archive", "a.jsonl", "--by", "K", "--through", THROUGH, "--move-for-good"]).done();
    bench.run(&["backup", "copy.db"]).done();
    bench.run(&["--db", "sqlite:new.db", "restore", "copy.db"]).done().says(&["0 documents"]);
    let kept = |db: &str| bench.run(&["--db", db, "export"]).done().out;
    assert_eq!(kept("sqlite:new.db"), kept("sqlite:combclear.db"));
    let proof = ["--db", "sqlite:new.db", "verify", "--archive", "a.jsonl", "--since-checkpoint", "kept.txt"];
    bench.run(&proof).done().says(&["agrees with the checkpoint", "The archive a.jsonl is intact"]);
}

#[test]
fn a_database_that_is_not_empty_is_left_as_it_is() {
    let bench = full();
    bench.run(&["backup", "copy.db"]).done();
    let before = heads(&bench, "sqlite:combclear.db");
    bench.run(&["restore", "copy.db"]).failed_with(
        "the backup was not restored: `sqlite:combclear.db` is not empty",
        "it was left as it is; a backup is restored into a database without holdings and keys, such as a new file",
    );
    assert_eq!(heads(&bench, "sqlite:combclear.db"), before);
    // A key alone counts too: it would let somebody in.
    bench.run(&["--db", "sqlite:keys.db", "key", "add", "operator", "--for", "O"]).done();
    bench.run(&["--db", "sqlite:keys.db", "restore", "copy.db"]).failed().says(&["is not empty"]);
}

#[test]
fn what_is_no_backup_is_not_restored_and_leaves_nothing() {
    let bench = Bench::new();
    bench.write("diary.db", "dear diary");
    bench.run(&["restore", "diary.db"]).failed().says(&["not restored", "`diary.db` is not a database"]);
    bench.run(&["restore", "missing.db"]).failed().says(&["not restored", "`missing.db`"]);
    assert_eq!(bench.files(), ["diary.db"]);
    assert_eq!(bench.read("diary.db"), "dear diary");
}

/// A disk that is full while the copy is written.
#[cfg(unix)]
#[test]
fn a_copy_that_cannot_be_finished_leaves_no_file() {
    let bench = Bench::with_demo();
    let ran = crate::databases::with_files_up_to(150, &bench, &["backup", "copy.db"]).failed();
    let begins = "error: no backup was made: `copy.db` could not be read or written: ";
    assert!(ran.err.starts_with(begins), "{}", ran.err);
    assert_eq!(bench.files(), ["combclear.db"]);
    bench.run(&["backup", "copy.db"]).done();
    crate::databases::with_files_up_to(150, &bench, &["--db", "sqlite:new.db", "restore", "copy.db"])
        .failed()
        .says(&["the backup was not restored: `new.db` could not be read or written: "]);
    assert_eq!(bench.files(), ["combclear.db", "copy.db"]);
}

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn a_backup_goes_from_file_to_server_and_back_with_the_same_heads() {
    let file = full();
    let server = Bench::on(shared().empty());
    file.run(&["backup", "copy.db"]).done();
    let copy = file.path("copy.db").display().to_string();
    server.run(&["restore", &copy]).done().says(&["demo: 456 entries", "with 2 keys"]);
    server.run(&["restore", &copy]).failed().says(&["is not empty", "it was left as it is"]);
    server.run(&["backup", "back.db"]).done().says(&["demo: 456 entries", "with 2 keys"]);
    assert_eq!(server.files(), ["back.db"]);
    assert_eq!(heads(&server, "sqlite:back.db"), heads(&file, "sqlite:combclear.db"));
    assert_eq!(secrets(&server, "back.db"), secrets(&file, "combclear.db"));
    let all = |bench: &Bench, db: &str| bench.run(&["--db", db, "export", "--holding", "demo"]).done().out;
    assert_eq!(all(&server, "sqlite:back.db"), all(&file, "sqlite:combclear.db"));
}

#[cfg_attr(not(postgres), ignore = "PostgreSQL 15 or later is not on this machine")]
#[test]
fn a_journal_that_was_changed_on_a_server_gives_no_backup() {
    let address = shared().empty();
    let server = Bench::on(address.clone());
    server.run(&["import", DEMO]).done();
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(async {
        use sqlx::Connection;
        let mut raw = sqlx::PgConnection::connect(&address).await.unwrap();
        for sql in [
            "alter table entries disable trigger all",
            "update entries set recorded_by = 'somebody else' where seq = 201",
            "alter table entries enable trigger all",
        ] {
            sqlx::query(sql).execute(&mut raw).await.unwrap();
        }
    });
    server
        .run(&["backup", "copy.db"])
        .failed()
        .says(&["no backup was made: the journal of `demo` was changed at entry 201"]);
    assert!(server.files().is_empty(), "{:?}", server.files());
}
