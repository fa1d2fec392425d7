//! What the tables themselves refuse, from anyone.

use crate::making::{Bench, run};

#[tokio::test]
async fn entries_can_neither_be_changed_nor_deleted_nor_replaced() {
    let (bench, journal, holding, entries) = Bench::with_entries(3).await;
    let mut raw = bench.raw().await;
    let columns =
        "happened_on, null, recorded_at, recorded_by, kind, body, null, null, prev, hash, null, null, null";
    for (sql, message) in [
        ("update entries set body = '{}' where seq = 2".to_owned(), "an entry is never changed"),
        ("update entries set seq = seq".to_owned(), "an entry is never changed"),
        ("update or ignore entries set seq = 9 where seq = 3".to_owned(), "an entry is never changed"),
        ("delete from entries where seq = 3".to_owned(), "an entry is never deleted"),
        ("delete from entries".to_owned(), "an entry is never deleted"),
        (
            format!(
                "insert or replace into entries select holding, seq, randomblob(16), {columns} from entries"
            ),
            "replaces nothing",
        ),
        (
            format!(
                "insert into entries select holding, 5, randomblob(16), {columns} from entries where seq = 3"
            ),
            "has no gaps",
        ),
        (
            format!(
                "insert into entries select 'new', 2, randomblob(16), {columns} from entries where seq = 3"
            ),
            "has no gaps",
        ),
    ] {
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    let replace =
        format!("insert or replace into entries select holding, 4, id, {columns} from entries where seq = 2");
    assert_eq!(run(&mut raw, &replace).await.unwrap(), 0);
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
}

#[tokio::test]
async fn a_column_takes_only_what_belongs_there() {
    let (bench, journal, holding, entries) = Bench::with_entries(1).await;
    let mut raw = bench.raw().await;
    let good = [
        "'first'",
        "2",
        "randomblob(16)",
        "'2026-04-11'",
        "null",
        "'2026-04-11T08:15:30.123Z'",
        "'K'",
        "'strike_out'",
        "'{}'",
        "null",
        "null",
        "zeroblob(32)",
        "zeroblob(32)",
        "null",
        "null",
        "null",
    ];
    for (column, value, message) in [
        (6, "null", "NOT NULL"),
        (1, "'two'", "cannot store TEXT"),
        (2, "'0123456789abcdef'", "cannot store TEXT"),
        (2, "randomblob(15)", "length(id) = 16"),
        (4, "''", "happened_at <> ''"),
        (8, "x'7b7d'", "cannot store BLOB"),
        (9, "randomblob(16)", "(corrects is null) = (reason is null)"),
        (10, "'why'", "(corrects is null) = (reason is null)"),
        (11, "zeroblob(31)", "length(prev) = 32"),
        (12, "null", "NOT NULL"),
        (12, "zeroblob(33)", "length(hash) = 32"),
        (13, "'notebook'", "(copied_from is null) = (written_on is null)"),
        (13, "''", "copied_from <> ''"),
        (14, "'2026-04-11'", "(copied_from is null) = (written_on is null)"),
    ] {
        let mut row = good;
        row[column] = value;
        let sql = format!("insert into entries values ({})", row.join(", "));
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
    // The row from which all of these were made is accepted: each was refused for its one changed value.
    assert_eq!(run(&mut raw, &format!("insert into entries values ({})", good.join(", "))).await.unwrap(), 1);
}
