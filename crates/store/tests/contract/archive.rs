//! Archived bodies on a file: what the tables permit, once, and what they refuse; and what is detected.

use combclear_store::Verified;

use crate::making::{id, run};
use crate::on_sqlite::archive::{archived, before};

#[tokio::test]
async fn the_tables_let_nothing_else_through() {
    const STAYS: &str = "what was moved into an archive stays there";
    const NEVER: &str = "an entry is never changed";
    let kept = before().await;
    let mut raw = kept.bench.raw().await;
    let hexed = |id: combclear_domain::journal::EntryId| format!("x'{}'", id.0.simple());
    let step = hexed(id(20));
    // Before the step nothing is noted, so no body and no content can be removed.
    for (sql, message) in [
        ("update entries set body = '' where seq = 2".to_owned(), NEVER),
        ("delete from contents".to_owned(), "a document is never deleted"),
        (format!("insert into moved values ('first', 2, {step})"), "FOREIGN KEY constraint failed"),
        (
            format!("insert into moved_contents values ('first', zeroblob(32), {step})"),
            "FOREIGN KEY constraint failed",
        ),
    ] {
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    // Noted for an entry that archives nothing, or comes earlier.
    let plain = hexed(id(7));
    run(&mut raw, &format!("insert into moved values ('first', 1, {plain})")).await.unwrap();
    let error = run(&mut raw, "update entries set body = '' where seq = 1").await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{error}");
    kept.archive().await.unwrap();
    let columns = "happened_on, null, recorded_at, recorded_by";
    for (sql, message) in [
        ("update entries set body = '{}' where seq = 2".to_owned(), NEVER),
        ("update entries set body = '' where seq = 2".to_owned(), NEVER),
        ("update entries set body = '' where seq = 4".to_owned(), NEVER),
        ("update entries set body = '' where seq = 6".to_owned(), NEVER),
        ("update entries set body = '', kind = 'harvest' where seq = 3".to_owned(), NEVER),
        ("update or replace entries set seq = 4 where seq = 2".to_owned(), NEVER),
        ("delete from entries where seq = 2".to_owned(), "an entry is never deleted"),
        ("update moved set seq = 4 where seq = 2".to_owned(), STAYS),
        ("delete from moved".to_owned(), STAYS),
        (format!("insert or replace into moved values ('first', 2, {plain})"), STAYS),
        ("update moved_contents set hash = zeroblob(32)".to_owned(), STAYS),
        ("delete from moved_contents".to_owned(), STAYS),
        ("insert or replace into moved_contents select * from moved_contents".to_owned(), STAYS),
        ("delete from contents".to_owned(), "a document is never deleted"),
        (
            format!(
                "insert into entries select 'first', 7, randomblob(16), {columns}, 'harvest', '', null, null, prev, hash, null, null, null
                from entries where seq = 6"
            ),
            "an entry comes with its body",
        ),
        (
            format!(
                "insert into entries select 'first', 7, randomblob(16), {columns}, kind, '', null, null, prev, hash, null, null, null
                from entries where seq = 6"
            ),
            "an entry comes with its body",
        ),
    ] {
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    // Every other column, changed together with a body that may be emptied.
    run(&mut raw, &format!("insert into moved values ('first', 4, {step})")).await.unwrap();
    for (column, value) in [
        ("holding", "'other'"),
        ("seq", "40"),
        ("id", "randomblob(16)"),
        ("happened_on", "'2026-04-12'"),
        ("happened_at", "'10:00'"),
        ("recorded_at", "'2026-04-11T08:15:30.124Z'"),
        ("recorded_by", "'B'"),
        ("kind", "'harvest'"),
        ("key", "'key00001'"),
        ("prev", "zeroblob(32)"),
        ("hash", "zeroblob(32)"),
    ] {
        let sql = format!("update entries set body = '', {column} = {value} where seq = 4");
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(NEVER), "{sql}: {error}");
    }
    let sql = "update entries set body = '', corrects = randomblob(16), reason = 'why' where seq = 4";
    let error = run(&mut raw, sql).await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{sql}: {error}");
    let sql =
        "update entries set body = '', copied_from = 'notebook', written_on = '2026-04-11' where seq = 4";
    let error = run(&mut raw, sql).await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{sql}: {error}");
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.after());
    assert_eq!(kept.verified().await, kept.sound());
}

#[tokio::test]
async fn any_change_of_what_stays_is_named() {
    let kept = archived().await;
    let mut raw = kept.bench.unguarded().await;
    let step = r#"replace(body, '"entries":3', '"entries":2')"#;
    for (seq, column, value, named) in [
        (2, "id", "randomblob(16)", 6),
        (2, "happened_on", "'2026-04-12'", 6),
        (2, "happened_at", "'10:01'", 6),
        (2, "recorded_at", "'2026-04-11T08:15:30.124Z'", 6),
        (2, "recorded_by", "'B'", 6),
        (2, "kind", "'harvest'", 6),
        (2, "prev", "zeroblob(32)", 2),
        // The next entry then no longer follows it.
        (2, "hash", "zeroblob(32)", 3),
        (5, "hash", "zeroblob(32)", 6),
        (3, "body", "'{}'", 3),
        (6, "body", step, 6),
        // No entry then names the first of them any more.
        (6, "body", "'{}'", 2),
        (4, "body", "''", 4),
        (6, "body", "''", 2),
    ] {
        let old = format!("create temp table old as select * from entries where seq = {seq}");
        run(&mut raw, &old).await.unwrap();
        let change = format!("update entries set {column} = {value} where seq = {seq}");
        assert_eq!(run(&mut raw, &change).await.unwrap(), 1, "{change}");
        let found = kept.verified().await;
        assert!(matches!(&found, Verified::Broken(broken) if broken.seq == named), "{change}: {found:?}");
        let back = format!("update entries set {column} = (select {column} from old) where seq = {seq}");
        run(&mut raw, &back).await.unwrap();
        run(&mut raw, "drop table old").await.unwrap();
    }
    assert_eq!(kept.verified().await, kept.sound());
}
