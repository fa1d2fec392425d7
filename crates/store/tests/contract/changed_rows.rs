//! Rows that were changed behind the program's back.

use combclear_domain::journal::EntryId;

use crate::making::{Bench, run};
use crate::on_sqlite::verify::{BODY_GONE, Told, WRONG_PREV, broken, told};

const CHANGED: &str = "its content does not match its hash: it was changed after it was recorded";
const EMPTY_ID: &str = "its `corrects` is empty; it must be an id, or null";

/// Changes the file of a journal of eight entries behind the program's back, and says what the walk finds.
async fn after(change: &str) -> Told {
    let (bench, journal, holding, _) = Bench::with_entries(8).await;
    let mut raw = bench.unguarded().await;
    for sql in change.split(';') {
        run(&mut raw, sql).await.unwrap();
    }
    told(journal.verify(&holding, None).await.unwrap())
}

fn nil() -> EntryId {
    EntryId(uuid::Uuid::nil())
}

fn misplaced(seq: u64, id_number: u64, last: u64) -> Told {
    let what = format!("it comes after entry {last}, so it should be entry {}", last + 1);
    broken(seq, id_number, &what)
}

#[tokio::test]
async fn a_change_to_any_column_names_the_entry() {
    // Entry 6 has a time and a correction, entry 3 has neither.
    for (change, expected) in [
        ("happened_on = '2026-04-12' where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = '00:01' where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = null where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = '09:30' where seq = 3", broken(3, 3, CHANGED)),
        (
            "happened_at = '' where seq = 3",
            broken(3, 3, "its `happened_at` is empty; it must be a time, or null"),
        ),
        ("recorded_at = '2026-04-11T08:15:30.124Z' where seq = 6", broken(6, 6, CHANGED)),
        ("recorded_at = '2026-04-11T10:15:30.123+02:00' where seq = 6", broken(6, 6, CHANGED)),
        ("recorded_by = 'B. Keeper' where seq = 6", broken(6, 6, CHANGED)),
        // Entry 3 was copied, entry 6 was not.
        ("copied_from = 'blue notebook' where seq = 3", broken(3, 3, CHANGED)),
        ("written_on = '2026-04-12' where seq = 3", broken(3, 3, CHANGED)),
        ("copied_from = null, written_on = null where seq = 3", broken(3, 3, CHANGED)),
        ("copied_from = 'notebook', written_on = '2026-04-11' where seq = 6", broken(6, 6, CHANGED)),
        ("kind = 'strike_out' where seq = 6", broken(6, 6, CHANGED)),
        ("body = replace(body, ':', ' :') where seq = 6", broken(6, 6, CHANGED)),
        ("body = body || char(10) where seq = 6", broken(6, 6, CHANGED)),
        ("body = '' where seq = 6", broken(6, 6, BODY_GONE)),
        ("body = cast(x'ff' as text) where seq = 6", broken(6, 6, "its `body` is not text")),
        ("corrects = randomblob(16) where seq = 6", broken(6, 6, CHANGED)),
        ("corrects = null, reason = null where seq = 6", broken(6, 6, CHANGED)),
        ("corrects = x'', reason = '' where seq = 3", broken(3, 3, EMPTY_ID)),
        (
            "reason = '' where seq = 3",
            broken(3, 3, "it has one of `corrects` and `reason` without the other"),
        ),
        (
            "reason = null where seq = 6",
            broken(6, 6, "it has one of `corrects` and `reason` without the other"),
        ),
        ("reason = '' where seq = 6", broken(6, 6, CHANGED)),
        ("prev = zeroblob(32) where seq = 6", broken(6, 6, WRONG_PREV)),
        ("prev = zeroblob(31) where seq = 6", broken(6, 6, "its `prev` has 31 bytes, not 32")),
        ("hash = zeroblob(32) where seq = 6", broken(6, 6, CHANGED)),
        ("hash = x'' where seq = 6", broken(6, 6, "its `hash` has 0 bytes, not 32")),
        ("seq = 60 where seq = 6", misplaced(7, 7, 5)),
        ("seq = 9 where seq = 8", misplaced(9, 8, 7)),
        ("seq = 0 where seq = 1", misplaced(0, 1, 0)),
        ("seq = -9223372036854775808 where seq = 1", misplaced(0, 1, 0)),
        ("seq = 9223372036854775807 where seq = 8", misplaced(9_223_372_036_854_775_807, 8, 7)),
        ("holding = 'second' where seq = 6", misplaced(7, 7, 5)),
    ] {
        assert_eq!(after(&format!("update entries set {change}")).await, expected, "{change}");
    }
}

#[tokio::test]
async fn another_id_names_the_place() {
    let found = after("update entries set id = zeroblob(16) where seq = 6").await;
    assert_eq!(found, Told::Broken { seq: 6, id: nil(), what: CHANGED.to_owned() });
    assert!(matches!(after("update entries set id = x'' where seq = 6").await, Told::Broken { seq: 6, .. }));
}

#[tokio::test]
async fn rows_that_go_come_or_change_places_name_the_first_that_does_not_fit() {
    for (change, expected) in [
        ("delete from entries where seq = 4", misplaced(5, 5, 3)),
        ("delete from entries where seq = 1", misplaced(2, 2, 0)),
        // The gap is closed.
        (
            "delete from entries where seq = 4; update entries set seq = 4 where seq = 5;
             update entries set seq = 5 where seq = 6; update entries set seq = 6 where seq = 7;
             update entries set seq = 7 where seq = 8",
            broken(4, 5, WRONG_PREV),
        ),
        // Two swap places.
        (
            "update entries set seq = 99 where seq = 3; update entries set seq = 3 where seq = 4;
             update entries set seq = 4 where seq = 99",
            broken(3, 4, WRONG_PREV),
        ),
        // One occurs twice.
        (
            "insert into entries select holding, 9, zeroblob(16), happened_on, happened_at, recorded_at, recorded_by,
             kind, body, corrects, reason, prev, hash, copied_from, written_on, key from entries where seq = 8",
            Told::Broken { seq: 9, id: nil(), what: WRONG_PREV.to_owned() },
        ),
    ] {
        assert_eq!(after(change).await, expected, "{change}");
    }
}
