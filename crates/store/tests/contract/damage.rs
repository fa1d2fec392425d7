//! A file that was damaged, or changed by hand: no answer rests on it, and none of it passes for a shorter journal.

use std::sync::Arc;

use combclear_domain::basics::words::HoldingName;
use combclear_store::{Holdings, RecordError, StoreError, Verified};

use crate::making::{Bench, chain, drafts, recorded_at, run, said, url};

/// The number of entries that answers rest on, if there are answers.
async fn told(path: &std::path::Path, holding: &HoldingName) -> Result<Option<usize>, StoreError> {
    let journal = combclear_store::open(&url(path)).await?;
    let holdings = Holdings::new(Arc::clone(&journal));
    let snapshot = holdings.snapshot(holding).await;
    // Whoever is not told that the journal is damaged by a question is told nothing else by `verify`.
    let verified = journal.verify(holding, None).await;
    journal.close().await;
    let count = snapshot?.map(|holding| holding.in_order().len());
    if let Ok(Verified::Sound { entries, .. }) = verified {
        assert_eq!(count, Some(usize::try_from(entries).unwrap()), "a question and `verify` differ");
    }
    Ok(count)
}

#[tokio::test]
async fn an_entry_that_was_changed_by_hand_supports_no_answer() {
    for (column, value) in [
        ("body", "'{\"apiary\":\"b\"}'"),
        ("happened_on", "'2020-01-01'"),
        ("recorded_by", "'Nobody'"),
        ("hash", "randomblob(32)"),
    ] {
        let (bench, journal, holding, _) = Bench::with_entries(5).await;
        let mut raw = bench.unguarded().await;
        run(&mut raw, &format!("update entries set {column} = {value} where seq = 3")).await.unwrap();
        let error = Holdings::new(journal).snapshot(&holding).await.unwrap_err();
        let StoreError::Broken { broken, .. } = &error else { panic!("{column}: {error:?}") };
        assert!([3, 4].contains(&broken.seq), "{column}: {error:?}");
        assert!(said(&error).message.contains("the journal of `first` was changed at entry"), "{error:?}");
    }
}

/// The copy in memory was read before: the next entries must follow it.
#[tokio::test]
async fn entries_that_do_not_follow_what_is_in_memory_are_refused() {
    let (bench, journal, holding, entries) = Bench::with_entries(5).await;
    let holdings = Holdings::new(Arc::clone(&journal));
    holdings.snapshot(&holding).await.unwrap();
    let more = chain(&holding, entries.last().map(combclear_domain::journal::Entry::tip), drafts(6..=7));
    journal
        .append(&holding, entries.last().map(combclear_domain::journal::Entry::tip), &more, &[])
        .await
        .unwrap();
    let mut raw = bench.unguarded().await;
    run(&mut raw, "update entries set recorded_by = 'Nobody' where seq = 6").await.unwrap();
    let error = holdings.snapshot(&holding).await.unwrap_err();
    assert!(matches!(&error, StoreError::Broken { broken, .. } if broken.seq == 6), "{error:?}");
}

#[tokio::test]
async fn a_missing_or_changed_guard_is_named_when_the_file_is_opened() {
    for (change, named) in [
        ("drop trigger entries_are_not_updated", "entries_are_not_updated"),
        ("drop trigger contents_are_not_deleted", "contents_are_not_deleted"),
        (
            "drop trigger entries_keep_their_id;
             create trigger entries_keep_their_id before insert on entries begin select 1; end",
            "entries_keep_their_id",
        ),
        ("create trigger helpful after insert on entries begin delete from contents; end", "helpful"),
        ("create table mine (a)", "mine"),
    ] {
        let (bench, journal, holding, entries) = Bench::with_entries(2).await;
        journal.close().await;
        let mut raw = bench.raw().await;
        sqlx::raw_sql(sqlx::AssertSqlSafe(change.to_owned())).execute(&mut raw).await.unwrap();
        drop(raw);
        let journal = bench.open().await;
        // It can be looked at, but nothing is answered or recorded.
        assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
        let error = journal.verify(&holding, None).await.unwrap_err();
        assert!(matches!(&error, StoreError::Guards { .. }), "{change}: {error:?}");
        let holdings = Holdings::new(journal);
        assert_eq!(holdings.snapshot(&holding).await.unwrap_err(), error);
        let recorded = holdings.record(&holding, drafts(3..=3), recorded_at()).await;
        assert!(matches!(recorded, Err(RecordError::Store(StoreError::Guards { .. }))), "{recorded:?}");
        assert!(said(&error).message.contains(named), "{change}: {}", said(&error).message);
    }
}

/// Bytes of the file itself, changed one at a time: whatever comes of it, no answer rests on fewer entries.
#[tokio::test]
async fn no_changed_byte_of_the_file_passes_for_a_shorter_journal() {
    let (bench, journal, holding, entries) = Bench::with_entries(11).await;
    journal.close().await;
    let whole = std::fs::read(&bench.path).unwrap();
    assert_eq!(told(&bench.path, &holding).await.unwrap(), Some(entries.len()));
    let name = holding.as_str().as_bytes();
    // The name of the holding begins the key of every row, in both orders.
    let keys = (0..whole.len() - name.len()).filter(|at| whole[*at..].starts_with(name));
    // A fixed sequence, spread over the file.
    let spread = (0..400_usize).map(|step| step.wrapping_mul(2_654_435_761) % whole.len());
    let mut noticed = 0;
    for at in keys.chain(spread) {
        let mut bytes = whole.clone();
        bytes[at] ^= 1;
        let path = bench.folder.path().join("flipped.db");
        for old in ["flipped.db", "flipped.db-wal", "flipped.db-shm"] {
            let _ = std::fs::remove_file(bench.folder.path().join(old));
        }
        std::fs::write(&path, &bytes).unwrap();
        match told(&path, &holding).await {
            Ok(count) => assert_eq!(count, Some(entries.len()), "byte {at}"),
            Err(error) => {
                noticed += 1;
                assert!(!said(&error).help.is_empty(), "{error:?}");
            }
        }
    }
    assert!(noticed > 100, "{noticed}");
}

/// Another program has the file locked for writing. Whoever records something waits for it; whoever asks does not.
#[tokio::test(flavor = "multi_thread")]
async fn a_writer_that_waits_holds_up_no_question() {
    let (bench, journal, holding, _) = Bench::with_entries(3).await;
    let holdings = Arc::new(Holdings::new(journal));
    holdings.snapshot(&holding).await.unwrap();
    let mut other = bench.raw().await;
    run(&mut other, "begin immediate").await.unwrap();
    let writer = tokio::spawn({
        let (holdings, holding) = (Arc::clone(&holdings), holding.clone());
        async move { holdings.record(&holding, drafts(15..=15), recorded_at()).await }
    });
    tokio::time::sleep(std::time::Duration::from_millis(200)).await;
    assert!(!writer.is_finished(), "it waits for the other program");
    let begun = std::time::Instant::now();
    assert_eq!(holdings.snapshot(&holding).await.unwrap().unwrap().in_order().len(), 3);
    assert!(begun.elapsed() < std::time::Duration::from_secs(1), "{:?}", begun.elapsed());
    run(&mut other, "rollback").await.unwrap();
    writer.await.unwrap().unwrap();
    assert_eq!(holdings.snapshot(&holding).await.unwrap().unwrap().in_order().len(), 4);
}

/// What is written to a file that nobody can find again is lost when the program ends.
#[cfg(unix)]
#[tokio::test]
async fn a_file_that_is_taken_away_or_replaced_while_it_is_open_takes_nothing_in() {
    let (bench, journal, holding, _) = Bench::with_entries(3).await;
    let holdings = Holdings::new(Arc::clone(&journal));
    holdings.snapshot(&holding).await.unwrap();
    let (place, away) = (bench.path.clone(), bench.folder.path().join("away.db"));
    for replaced in [false, true] {
        std::fs::rename(&place, &away).unwrap();
        if replaced {
            std::fs::copy(&away, &place).unwrap();
        }
        let recorded = holdings.record(&holding, drafts(15..=15), recorded_at()).await;
        assert!(matches!(&recorded, Err(RecordError::Store(StoreError::Replaced { .. }))), "{recorded:?}");
        let asked = holdings.snapshot(&holding).await;
        assert!(matches!(&asked, Err(StoreError::Replaced { .. })), "{asked:?}");
        assert!(matches!(journal.ready().await, Err(StoreError::Replaced { .. })));
        std::fs::rename(&away, &place).unwrap();
    }
    holdings.record(&holding, drafts(15..=15), recorded_at()).await.unwrap();
    assert_eq!(holdings.snapshot(&holding).await.unwrap().unwrap().in_order().len(), 4);
}
