//! Adding entries: all or nothing, after the last one, each id once.

use std::sync::Arc;
use std::time::Duration;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::{Draft, Entry, Event, Hash, Kind};
use combclear_store::{AppendError, Journal, Verified};

use super::Bench;
use crate::making::{chain, draft, drafts, holding, id, recorded_at};

#[tokio::test]
async fn entries_come_back_to_the_byte() {
    let (bench, journal, holding, entries) = Bench::with_entries(24).await;
    let kept = journal.page(&holding, 0, 100).await.unwrap();
    assert_eq!(kept, entries);
    let lines = |entries: &[Entry]| entries.iter().map(Entry::to_json).collect::<Vec<_>>();
    assert_eq!(lines(&kept), lines(&entries));
    // Checked with raw SQL, in case reading and writing are wrong in the same way.
    let mut raw = bench.by_hand().await;
    let [body, at] =
        raw.texts("select body, happened_at from entries where holding = 'first' and seq = 12").await;
    assert_eq!(body, "{\"apiary\":\"apiary 12\",\"place\":\"behind the \\\"old\\\" barn, 300 m \u{2191}\"}");
    assert_eq!(at, "09:30");
}

#[tokio::test]
async fn a_body_keeps_its_own_spelling() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    let text = "{ \"cause\" : \"\\u0000 and \\u00e4\",\t\"colony\":\"a\" }";
    let event = Event::read(Kind::ColonyEnded, text).unwrap();
    let draft =
        Draft { body: text.into(), ..Draft::new(id(1), crate::making::day(), "K".parse().unwrap(), event) };
    let entries = chain(&holding, None, [draft]);
    journal.append(&holding, None, &entries, &[]).await.unwrap();
    let kept = journal.entry(&holding, id(1)).await.unwrap().unwrap();
    assert_eq!(kept.draft.body.as_ref(), text);
    assert_eq!(kept, entries[0]);
    assert!(matches!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 1, .. }));
}

#[tokio::test]
async fn an_id_that_is_there_already_is_refused() {
    let (_bench, journal, holding, entries) = Bench::with_entries(3).await;
    let after = Some(entries[2].tip());
    let again = chain(&holding, after, [draft(4), draft(2), draft(5)]);
    let error = journal.append(&holding, after, &again, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::DuplicateId { id: taken } if taken == id(2)), "{error}");
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
}

#[tokio::test]
async fn an_id_twice_in_one_batch_is_refused() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    let twice = chain(&holding, None, [draft(1), draft(2), draft(1)]);
    let error = journal.append(&holding, None, &twice, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::DuplicateId { id: taken } if taken == id(1)), "{error}");
    assert_eq!(journal.tip(&holding).await.unwrap(), None);
}

/// Rows go to the database 64, 16, 4 and 1 at a time.
#[tokio::test]
async fn a_batch_of_any_length_is_kept_and_an_id_that_is_taken_is_named_wherever_it_stands() {
    for count in [1_u64, 3, 4, 5, 16, 17, 63, 64, 65, 85, 150] {
        let (_bench, journal, holding, entries) = Bench::with_entries(2).await;
        let after = Some(entries[1].tip());
        for place in [0, 1, count / 2, count - 1].into_iter().filter(|place| *place < count) {
            let taken = (0..count).map(|number| draft(if number == place { 2 } else { 10 + number }));
            let batch = chain(&holding, after, taken);
            let error = journal.append(&holding, after, &batch, &[]).await.unwrap_err();
            let named = matches!(error, AppendError::DuplicateId { id: taken } if taken == id(2));
            assert!(named, "{place} of {count}: {error}");
        }
        let batch = chain(&holding, after, (0..count).map(|number| draft(10 + number)));
        journal.append(&holding, after, &batch, &[]).await.unwrap();
        let kept = journal.page(&holding, 0, 1_000).await.unwrap();
        assert_eq!((&kept[..2], &kept[2..]), (&entries[..], &batch[..]), "{count}");
    }
}

#[tokio::test]
async fn one_id_may_stand_in_the_journals_of_two_holdings() {
    let (_bench, journal, _, _) = Bench::with_entries(3).await;
    let other = holding("second");
    let entries = chain(&other, None, drafts(1..=3));
    journal.append(&other, None, &entries, &[]).await.unwrap();
    assert_eq!(journal.page(&other, 0, 100).await.unwrap(), entries);
}

#[tokio::test]
async fn a_moved_tip_is_refused_and_named() {
    let (_bench, journal, holding, entries) = Bench::with_entries(3).await;
    let now = Some(entries[2].tip());
    let wrong_hash = Some((3, Hash([7; 32])));
    for after in [
        None,
        Some(entries[1].tip()),
        wrong_hash,
        Some((4, entries[2].hash)),
        Some((u64::MAX, Hash::GENESIS)),
    ] {
        let late = chain(&holding, after, [draft(9)]);
        let error = journal.append(&holding, after, &late, &[]).await.unwrap_err();
        assert!(
            matches!(error, AppendError::TipMoved { now: named } if named == now),
            "after {after:?}: {error}"
        );
        let error = journal.append(&holding, after, &[], &[]).await.unwrap_err();
        assert!(
            matches!(error, AppendError::TipMoved { now: named } if named == now),
            "after {after:?}: {error}"
        );
    }
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
    let empty = crate::making::holding("second");
    let early = chain(&empty, now, [draft(9)]);
    let error = journal.append(&empty, now, &early, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::TipMoved { now: None }), "{error}");
    assert_eq!(error.to_string(), "the journal has moved on: it has no entries");
}

#[tokio::test]
async fn a_lost_answer_shows_as_a_moved_tip_and_the_entry_is_found_by_its_id() {
    let (_bench, journal, holding, entries) = Bench::with_entries(1).await;
    let error = journal.append(&holding, None, &entries, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::TipMoved { .. }), "{error}");
    assert_eq!(journal.entry(&holding, id(1)).await.unwrap().as_ref(), Some(&entries[0]));
}

#[tokio::test]
async fn an_empty_batch_adds_nothing() {
    let (_bench, journal, holding, entries) = Bench::with_entries(2).await;
    journal.append(&holding, Some(entries[1].tip()), &[], &[]).await.unwrap();
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
}

/// A change to the last entry of a batch.
type Spoil = fn(&mut Entry);

#[tokio::test]
async fn an_entry_that_is_not_sealed_into_the_chain_takes_the_whole_batch_down() {
    let (_bench, journal, holding, entries) = Bench::with_entries(2).await;
    let after = Some(entries[1].tip());
    let spoils: [(&str, Spoil); 7] = [
        ("seq", |entry| entry.seq += 1),
        ("seq too high for the database", |entry| entry.seq = u64::MAX),
        ("prev", |entry| entry.prev = Hash::GENESIS),
        ("hash", |entry| entry.hash.0[31] ^= 1),
        ("day", |entry| entry.draft.on = entry.draft.on.next()),
        ("body", |entry| entry.draft.body = "{}".into()),
        ("reason", |entry| entry.draft = entry.draft.clone().correcting(id(1), "other")),
    ];
    for (what, spoil) in spoils {
        let mut batch = chain(&holding, after, drafts(3..=5));
        spoil(&mut batch[2]);
        let error = journal.append(&holding, after, &batch, &[]).await.unwrap_err();
        assert!(matches!(&error, AppendError::NotSealed(broken) if broken.id == id(5)), "{what}: {error}");
        assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries, "{what}");
    }
    let of_another = chain(&crate::making::holding("second"), after, drafts(3..=5));
    let error = journal.append(&holding, after, &of_another, &[]).await.unwrap_err();
    assert!(matches!(&error, AppendError::NotSealed(broken) if broken.seq == 3), "{error}");
}

#[tokio::test]
async fn a_body_that_could_not_be_read_back_is_refused_even_if_it_is_sealed() {
    let (_bench, journal, holding, entries) = Bench::with_entries(1).await;
    let after = Some(entries[0].tip());
    for body in ["", "{}", "{\"colony\":\"another\",\"cause\":\"queenless, dwindled\"}"] {
        let batch = chain(&holding, after, [Draft { body: body.into(), ..draft(4) }]);
        let error = journal.append(&holding, after, &batch, &[]).await.unwrap_err();
        assert!(matches!(&error, AppendError::NotSealed(broken) if broken.seq == 2), "`{body}`: {error}");
    }
    assert_eq!(journal.tip(&holding).await.unwrap(), after);
}

#[tokio::test]
async fn a_correction_without_words_is_kept_as_it_is() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    let entries = chain(&holding, None, [draft(3), draft(7).correcting(id(3), "")]);
    journal.append(&holding, None, &entries, &[]).await.unwrap();
    assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries);
    assert!(matches!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 2, .. }));
}

/// Adds one entry as a program that shares the journal with others.
async fn add(journal: &dyn Journal, holding: &HoldingName, draft: Draft) {
    loop {
        let tip = journal.tip(holding).await.unwrap();
        let entry = Entry::seal(holding, draft.clone(), recorded_at(), tip);
        match journal.append(holding, tip, &[entry], &[]).await {
            Ok(()) => return,
            Err(AppendError::TipMoved { .. }) => {}
            Err(error) => panic!("{error}"),
        }
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn fifty_writers_at_once_leave_one_chain_without_gaps() {
    let bench = Bench::new();
    // Two stores on one file, like two programs.
    let stores = [bench.open().await, bench.open().await];
    let holding = holding("first");
    let writers: Vec<_> = (1..=50u64)
        .map(|number| {
            let journal = Arc::clone(&stores[usize::try_from(number % 2).unwrap()]);
            let holding = holding.clone();
            tokio::spawn(async move { add(journal.as_ref(), &holding, draft(number)).await })
        })
        .collect();
    for writer in writers {
        writer.await.unwrap();
    }
    for journal in stores {
        let entries = journal.page(&holding, 0, 1000).await.unwrap();
        assert!(entries.iter().map(|entry| entry.seq).eq(1..=50));
        let mut ids: Vec<_> = entries.iter().map(|entry| entry.draft.id).collect();
        ids.sort();
        assert!(ids.into_iter().eq((1..=50).map(id)));
        let head = Some(entries[49].hash);
        assert_eq!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 50, head });
    }
}

#[tokio::test]
async fn two_stores_on_one_file_append_in_turn() {
    let bench = Bench::new();
    let (left, right) = (bench.open().await, bench.open().await);
    let holding = holding("first");
    let mut tip = None;
    for number in 1..=10u64 {
        let (writer, reader) = if number % 2 == 0 { (&left, &right) } else { (&right, &left) };
        let entries = chain(&holding, tip, [draft(number)]);
        writer.append(&holding, tip, &entries, &[]).await.unwrap();
        tip = Some(entries[0].tip());
        assert_eq!(reader.tip(&holding).await.unwrap(), tip);
        assert_eq!(reader.entry(&holding, id(number)).await.unwrap().as_ref(), Some(&entries[0]));
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn an_append_that_is_given_up_half_way_leaves_nothing_and_locks_nothing() {
    let mut given_up = 0;
    for wait in [0, 1, 2, 4, 8, 16, 32] {
        let bench = Bench::new();
        let journal = bench.open().await;
        let holding = holding("first");
        let batch = chain(&holding, None, drafts(1..=3000));
        let head = batch.last().map(Entry::tip);
        let task = tokio::spawn({
            let (journal, holding) = (Arc::clone(&journal), holding.clone());
            async move { journal.append(&holding, None, &batch, &[]).await }
        });
        tokio::time::sleep(Duration::from_millis(wait)).await;
        task.abort();
        let answer = task.await;
        // The next write waits only until the cancelled one is rolled back.
        let tip = journal.tip(&holding).await.unwrap();
        assert!(tip.is_none() || tip == head, "a part of the batch was written: {tip:?}");
        let after = journal.tip(&holding).await.unwrap();
        add(journal.as_ref(), &holding, draft(5000)).await;
        given_up += u32::from(answer.is_err() && after.is_none());
        let verified = journal.verify(&holding, None).await.unwrap();
        let whole = after.map_or(1, |(seq, _)| seq + 1);
        assert!(matches!(verified, Verified::Sound { entries, .. } if entries == whole), "{verified:?}");
    }
    assert!(given_up > 0, "no append was given up in the middle");
}

#[tokio::test]
async fn a_large_import_is_one_batch() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    let entries = chain(&holding, None, drafts(1..=20_000));
    journal.append(&holding, None, &entries, &[]).await.unwrap();
    assert_eq!(journal.tip(&holding).await.unwrap(), entries.last().map(Entry::tip));
    assert_eq!(journal.page(&holding, 19_990, 100).await.unwrap(), entries[19_990..]);
}
