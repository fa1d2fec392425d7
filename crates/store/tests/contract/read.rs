//! Rows on a file that cannot be read.

use combclear_store::{AppendError, StoreError};
use combclear_wording::Words;
use combclear_wording::unreadable::misfit;

use crate::making::{Bench, chain, drafts, run, said};

#[tokio::test]
async fn a_row_that_cannot_be_understood_is_named() {
    let (bench, journal, holding, entries) = Bench::with_entries(6).await;
    let mut raw = bench.unguarded().await;
    for (change, named) in [
        ("kind = 'honeymoon'", "its `kind` is `honeymoon`, which this program does not know"),
        ("body = '{}'", "its `body` does not fit its kind: missing field `colony` (at ``)"),
        ("body = '{\"colony\":\"a\",\"cause\":7}'", "(at `/cause`)"),
        ("body = cast(x'7bff7d' as text)", "its `body` is not text"),
        (
            "happened_on = '2026-02-30'",
            "its `happened_on` cannot be read: `2026-02-30` is not a day of the calendar",
        ),
        ("happened_at = '9:30'", "its `happened_at` cannot be read"),
        ("happened_at = ''", "its `happened_at` is empty"),
        ("recorded_at = '2026-04-11T10:15:30.123+02:00'", "its `recorded_at` cannot be read"),
        ("recorded_by = ''", "its `recorded_by` cannot be read"),
        ("id = x'01'", "its `id` has 1 bytes, not 16"),
        ("corrects = x'01', reason = 'r'", "its `corrects` has 1 bytes, not 16"),
        ("reason = null, corrects = x'01'", "it has one of `corrects` and `reason` without the other"),
        ("prev = x''", "its `prev` has 0 bytes, not 32"),
        ("hash = zeroblob(33)", "its `hash` has 33 bytes, not 32"),
    ] {
        run(&mut raw, &format!("update entries set {change} where seq = 4")).await.unwrap();
        let error = journal.page(&holding, 0, 100).await.unwrap_err();
        let StoreError::Unreadable { holding: whose, seq: 4, what } = &error else {
            panic!("{change}: {error}")
        };
        assert_eq!(whose, &holding);
        let what = misfit(Words::english(), what);
        assert!(what.contains(named), "{change}: {what}");
        assert!(!said(&error).help.is_empty());
        // What stands before and after it can still be read.
        assert_eq!(journal.page(&holding, 0, 3).await.unwrap(), entries[..3]);
        assert_eq!(journal.page(&holding, 4, 100).await.unwrap(), entries[4..]);
        restore(&mut raw, &entries[3]).await;
        assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries, "{change}");
    }
}

async fn restore(raw: &mut sqlx::SqliteConnection, entry: &combclear_domain::journal::Entry) {
    let draft = &entry.draft;
    let correction = draft.correction.as_ref();
    sqlx::query(
        "update entries set id = $1, happened_on = $2, happened_at = $3, recorded_at = $4, recorded_by = $5,
        kind = $6, body = $7, corrects = $8, reason = $9, prev = $10, hash = $11 where seq = $12",
    )
    .bind(draft.id.0)
    .bind(draft.on.to_string())
    .bind(draft.at.map(|at| at.to_string()))
    .bind(entry.recorded_at.to_string())
    .bind(draft.recorded_by.as_str())
    .bind(draft.kind().as_str())
    .bind(draft.body.as_ref())
    .bind(correction.map(|correction| correction.of.0))
    .bind(correction.map(|correction| correction.reason.as_str()))
    .bind(entry.prev.0.as_slice())
    .bind(entry.hash.0.as_slice())
    .bind(i64::try_from(entry.seq).unwrap())
    .execute(raw)
    .await
    .unwrap();
}

#[tokio::test]
async fn a_last_entry_without_a_hash_is_named_by_whoever_wants_to_write_after_it() {
    let (bench, journal, holding, entries) = Bench::with_entries(2).await;
    run(&mut bench.unguarded().await, "update entries set hash = x'00' where seq = 2").await.unwrap();
    let error = journal.tip(&holding).await.unwrap_err();
    assert_eq!(said(&error).message, "entry 2 of `first` cannot be read: its `hash` has 1 bytes, not 32");
    let after = Some(entries[1].tip());
    let error = journal.append(&holding, after, &chain(&holding, after, drafts([3])), &[]).await.unwrap_err();
    let AppendError::Store(error) = error else { panic!("{error:?}") };
    assert_eq!(said(&error).message, "entry 2 of `first` cannot be read: its `hash` has 1 bytes, not 32");
}
