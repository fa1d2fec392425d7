//! What the tables themselves refuse, from anyone; and what is noticed of tables that refuse less.

use combclear_store::{Holdings, StoreError, Verified};

use super::Bench;
use crate::making::{chain, drafts, recorded_at, refusal, said};
use crate::on_postgres::archive::{archived, before};

#[tokio::test]
async fn entries_can_neither_be_changed_nor_deleted_nor_replaced() {
    let (bench, journal, holding, entries) = Bench::with_entries(3).await;
    let mut raw = bench.by_hand().await;
    // Whoever owns the tables may also say that triggers are for others; not for these.
    raw.run("set session_replication_role = replica").await.unwrap();
    let columns =
        "happened_on, null, recorded_at, recorded_by, kind, body, null, null, prev, hash, null, null, null";
    for (sql, message) in [
        ("update entries set body = '{}' where seq = 2".to_owned(), "an entry is never changed"),
        ("update entries set seq = seq".to_owned(), "an entry is never changed"),
        ("delete from entries where seq = 3".to_owned(), "an entry is never deleted"),
        ("truncate entries cascade".to_owned(), "an entry is never deleted"),
        (
            format!(
                "insert into entries select holding, seq, gen_random_uuid(), {columns} from entries where seq = 3
                on conflict (holding, seq) do update set body = '{{}}'"
            ),
            "replaces nothing",
        ),
        (
            format!(
                "insert into entries select holding, 5, gen_random_uuid(), {columns} from entries where seq = 3"
            ),
            "has no gaps",
        ),
        (
            format!(
                "insert into entries select 'new', 2, gen_random_uuid(), {columns} from entries where seq = 3"
            ),
            "has no gaps",
        ),
        (
            "insert into entries select holding, 4, gen_random_uuid(), happened_on, null, recorded_at,
                recorded_by, kind, '', null, null, prev, hash, null, null, null from entries where seq = 3"
                .to_owned(),
            "an entry comes with its body",
        ),
    ] {
        let error = raw.run(&sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    let again = format!("insert into entries select holding, 4, id, {columns} from entries where seq = 2");
    assert_eq!(raw.run(&again).await.unwrap(), 0);
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
}

#[tokio::test]
async fn a_column_takes_only_what_belongs_there() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    let mut raw = bench.by_hand().await;
    let bytes = "decode(repeat('00', 32), 'hex')";
    let good = [
        "'first'",
        "2",
        "gen_random_uuid()",
        "'2026-04-11'",
        "null",
        "'2026-04-11T08:15:30.123Z'",
        "'K'",
        "'strike_out'",
        "'{}'",
        "null",
        "null",
        bytes,
        bytes,
        "null",
        "null",
        "null",
    ];
    for (column, value, message) in [
        (6, "null", "violates not-null"),
        (1, "'two'", "invalid input syntax"),
        (2, "'0123456789abcdef'", "invalid input syntax"),
        (4, "''", "entries_happened_at_check"),
        (9, "gen_random_uuid()", "violates check"),
        (10, "'why'", "violates check"),
        (11, "decode('00', 'hex')", "entries_prev_check"),
        (12, "null", "violates not-null"),
        (12, "decode('00', 'hex')", "entries_hash_check"),
        (13, "'notebook'", "violates check"),
        (13, "''", "violates check"),
        (14, "'2026-04-11'", "violates check"),
    ] {
        let mut row = good;
        row[column] = value;
        let sql = format!("insert into entries values ({})", row.join(", "));
        let error = raw.run(&sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
    // The row from which all of these were made is accepted: each was refused for its one changed value.
    assert_eq!(raw.run(&format!("insert into entries values ({})", good.join(", "))).await.unwrap(), 1);
}

#[tokio::test]
async fn the_tables_let_nothing_through_but_one_archive_step() {
    const STAYS: &str = "what was moved into an archive stays there";
    const NEVER: &str = "an entry is never changed";
    let kept = before().await;
    let mut raw = kept.bench.by_hand().await;
    for (sql, message) in [
        ("update entries set body = '' where seq = 2", NEVER),
        ("delete from contents", "a document is never deleted"),
        ("truncate contents", "a document is never deleted"),
        ("update contents set bytes = decode('00', 'hex')", "a document is never changed"),
        ("insert into moved values ('first', 2, gen_random_uuid())", "violates foreign key"),
    ] {
        let error = raw.run(sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    kept.archive().await.unwrap();
    for (sql, message) in [
        ("update entries set body = '{}' where seq = 2", NEVER),
        ("update entries set body = '' where seq = 2", NEVER),
        ("update entries set body = '' where seq = 4", NEVER),
        ("update entries set body = '' where seq = 6", NEVER),
        ("update entries set body = '', kind = 'harvest' where seq = 3", NEVER),
        ("delete from entries where seq = 2", "an entry is never deleted"),
        ("update moved set seq = 4 where seq = 2", STAYS),
        ("delete from moved", STAYS),
        ("truncate moved", STAYS),
        ("update moved_contents set hash = decode(repeat('00', 32), 'hex')", STAYS),
        ("delete from moved_contents", STAYS),
        ("truncate moved_contents", STAYS),
        ("delete from contents", "a document is never deleted"),
    ] {
        let error = raw.run(sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    // Every other column, changed together with a body that may be emptied.
    raw.run("insert into moved select 'first', 4, archived_by from moved limit 1").await.unwrap();
    for (column, value) in [
        ("holding", "'other'"),
        ("seq", "40"),
        ("id", "gen_random_uuid()"),
        ("happened_on", "'2026-04-12'"),
        ("happened_at", "'10:00'"),
        ("recorded_at", "'2026-04-11T08:15:30.124Z'"),
        ("recorded_by", "'B'"),
        ("kind", "'harvest'"),
        ("corrects", "gen_random_uuid(), reason = 'why'"),
        ("copied_from", "'notebook', written_on = '2026-04-11'"),
        ("key", "'key00001'"),
        ("prev", "decode(repeat('00', 32), 'hex')"),
        ("hash", "decode(repeat('00', 32), 'hex')"),
    ] {
        let sql = format!("update entries set body = '', {column} = {value} where seq = 4");
        let error = raw.run(&sql).await.unwrap_err().to_string();
        assert!(error.contains(NEVER), "{sql}: {error}");
    }
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.after());
    assert_eq!(kept.verified().await, kept.sound());
}

#[tokio::test]
async fn any_change_of_what_stays_is_named() {
    let kept = archived().await;
    let mut raw = kept.bench.by_hand_unguarded().await;
    let step = r#"replace(body, '"entries":3', '"entries":2')"#;
    let zeros = "decode(repeat('00', 32), 'hex')";
    for (seq, column, value, named) in [
        (2, "id", "gen_random_uuid()", 6),
        (2, "happened_on", "'2026-04-12'", 6),
        (2, "recorded_by", "'B'", 6),
        (2, "kind", "'harvest'", 6),
        (2, "prev", zeros, 2),
        (2, "hash", zeros, 3),
        (5, "hash", zeros, 6),
        (3, "body", "'{}'", 3),
        (6, "body", step, 6),
        (6, "body", "'{}'", 2),
        (4, "body", "''", 4),
        (6, "body", "''", 2),
    ] {
        raw.run(&format!("create temp table old as select * from entries where seq = {seq}")).await.unwrap();
        let change = format!("update entries set {column} = {value} where seq = {seq}");
        assert_eq!(raw.run(&change).await.unwrap(), 1, "{change}");
        let found = kept.verified().await;
        assert!(matches!(&found, Verified::Broken(broken) if broken.seq == named), "{change}: {found:?}");
        let back = format!("update entries set {column} = (select {column} from old) where seq = {seq}");
        raw.run(&back).await.unwrap();
        raw.run("drop table old").await.unwrap();
    }
}

/// What keeps entries as they are, weakened in ways that leave a plain question as it was.
#[tokio::test]
async fn a_missing_or_changed_guard_is_named_when_the_database_is_opened() {
    for (change, named) in [
        ("drop trigger entries_are_not_updated on entries", "entries_are_not_updated"),
        ("alter table entries disable trigger entries_are_not_deleted", "entries_are_not_deleted"),
        ("alter table entries enable trigger entries_are_not_deleted", "entries_are_not_deleted"),
        (
            "create or replace function entries_are_not_updated() returns trigger language plpgsql as
            $$ begin return new; end $$",
            "entries_are_not_updated()",
        ),
        ("create rule quiet as on update to entries do instead nothing", "entries rule quiet"),
        ("alter table entries alter column reason type varchar(900)", "entries.reason"),
        ("alter table entries add column note text", "entries.note"),
        ("alter table entries drop constraint entries_hash_check", "entries entries_hash_check"),
        ("alter table entries enable row level security", "entries"),
        ("create policy few on entries using (seq < 3)", "entries policy few"),
        ("drop index if exists none; create index more on entries (kind)", "entries more"),
        (
            "create function skip() returns trigger language plpgsql as $$ begin return null; end $$;
            create trigger a_skip before insert on entries for each row execute function skip()",
            "a_skip",
        ),
        ("drop trigger contents_are_not_truncated on contents", "contents_are_not_truncated"),
        ("create table younger () inherits (entries)", "entries kept in younger"),
    ] {
        let (bench, journal, holding, _) = Bench::with_entries(4).await;
        let mut raw = bench.by_hand().await;
        for sql in split(change) {
            raw.run(&sql).await.unwrap();
        }
        let wanted = |error: &StoreError| {
            let StoreError::Guards { names, .. } = error else { panic!("{change}: {error:?}") };
            assert!(names.iter().any(|name| name == named), "{change}: {names:?}");
        };
        // Whoever had it open notices with the next verification.
        wanted(&journal.verify(&holding, None).await.unwrap_err());
        let again = bench.open().await;
        wanted(&again.ready().await.unwrap_err());
        let holdings = Holdings::new(again);
        wanted(&holdings.read(&holding, |_| ()).await.unwrap_err());
        assert!(holdings.record(&holding, drafts(10..11), recorded_at()).await.is_err(), "{change}");
    }
}

/// Splits at `;`, but not within a function.
fn split(sql: &str) -> Vec<String> {
    let mut parts = vec![String::new()];
    for (index, piece) in sql.split("$$").enumerate() {
        if index % 2 == 1 {
            let last = parts.last_mut().unwrap();
            last.push_str(&format!("$${piece}$$"));
            continue;
        }
        for (nth, plain) in piece.split(';').enumerate() {
            if nth > 0 {
                parts.push(String::new());
            }
            parts.last_mut().unwrap().push_str(plain);
        }
    }
    parts.retain(|part| !part.trim().is_empty());
    parts
}

#[tokio::test]
async fn an_entry_that_was_changed_by_hand_supports_no_answer() {
    let (bench, journal, holding, entries) = Bench::with_entries(5).await;
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("update entries set recorded_by = 'Nobody' where seq = 3").await.unwrap();
    let holdings = Holdings::new(journal);
    let error = holdings.read(&holding, |_| ()).await.unwrap_err();
    let StoreError::Broken { broken, .. } = &error else { panic!("{error:?}") };
    assert_eq!(broken.seq, 3);
    assert!(said(&error).message.contains("was changed at entry 3"), "{error}");
    let after = entries.last().map(combclear_domain::journal::Entry::tip);
    assert_eq!(chain(&holding, after, drafts(6..7)).len(), 1);
}

#[tokio::test]
async fn a_schema_of_another_program_is_left_as_it_is() {
    let bench = Bench::new();
    let mut raw = bench.by_hand().await;
    raw.run("create table invoices (number bigint)").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Foreign { .. }), "{error:?}");
    let [tables, _] = raw
        .texts("select string_agg(tablename, ' '), '' from pg_tables where schemaname = current_schema()")
        .await;
    assert_eq!(tables, "invoices");
}

#[tokio::test]
async fn tables_of_a_newer_or_another_version_are_refused() {
    let bench = Bench::new();
    bench.open().await.close().await;
    let mut raw = bench.by_hand().await;
    raw.run(
        "insert into _sqlx_migrations (version, description, success, checksum, execution_time)
        values (9000, 'later', true, '', 0)",
    )
    .await
    .unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Newer { version: 9000, .. }), "{error:?}");
    raw.run("delete from _sqlx_migrations where version = 9000").await.unwrap();
    raw.run("update _sqlx_migrations set checksum = '' where version = 1").await.unwrap();
    let error = refusal(&bench.url()).await;
    assert!(matches!(error, StoreError::Altered { version: 1, .. }), "{error:?}");
}
