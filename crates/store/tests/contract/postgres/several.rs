//! Several programs on one database, and a database that goes away and comes back.

use std::sync::Arc;
use std::time::Duration;

use combclear_domain::journal::Entry;
use combclear_store::{AppendError, Holdings, StoreError, Verified};
use combclear_testkit::postgres::Cluster;

use super::Bench;
use crate::making::{chain, draft, drafts, holding, recorded_at};

/// Each program answers from its own memory, which must have what the others wrote before the question was asked.
#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn many_programs_see_one_order_of_entries_and_each_answers_from_all_of_them() {
    let bench = Bench::new();
    let programs: Vec<Arc<Holdings>> = {
        let mut programs = Vec::new();
        for _ in 0..4 {
            programs.push(Arc::new(Holdings::new(bench.open().await)));
        }
        programs
    };
    let holding = holding("first");
    let begin = draft(3);
    programs[0].begin(&holding, begin, recorded_at()).await.unwrap();
    let writers: Vec<_> = (0..40u64)
        .map(|number| {
            let (writer, reader) = (
                Arc::clone(&programs[usize::try_from(number % 4).unwrap()]),
                Arc::clone(&programs[usize::try_from((number + 1) % 4).unwrap()]),
            );
            let holding = holding.clone();
            tokio::spawn(async move {
                // Every third draft describes an apiary of its own, which needs nothing before it.
                let draft = draft(6 + 12 * number);
                let id = draft.id;
                let draft = combclear_domain::journal::Draft { correction: None, ..draft };
                writer.record(&holding, vec![draft], recorded_at()).await.unwrap();
                let seen = reader.read(&holding, |holding| holding.entry(id).is_some()).await.unwrap();
                assert_eq!(seen, Some(true), "what one program acknowledged, the next one answers from");
            })
        })
        .collect();
    for writer in writers {
        writer.await.unwrap();
    }
    let first = programs[0].journal().page(&holding, 0, 1000).await.unwrap();
    assert_eq!(first.len(), 41);
    for program in &programs {
        assert_eq!(program.journal().page(&holding, 0, 1000).await.unwrap(), first);
        let head = first.last().map(|entry| entry.hash);
        let found = program.journal().verify(&holding, None).await.unwrap();
        assert_eq!(found, Verified::Sound { entries: 41, head });
    }
}

/// Writers of different holdings do not wait for each other.
#[tokio::test]
async fn a_holding_that_is_being_written_holds_up_no_other() {
    let (bench, journal, first, entries) = Bench::with_entries(2).await;
    let other = bench.open().await;
    let writing = journal.begin_write(&first).await.unwrap();
    let second = holding("second");
    let theirs = chain(&second, None, drafts(1..=3));
    let appended = tokio::time::timeout(Duration::from_secs(2), other.append(&second, None, &theirs, &[]));
    appended.await.expect("it did not wait").unwrap();
    // The same holding waits, and says after a while that it is locked.
    let after = entries.last().map(Entry::tip);
    let more = chain(&first, after, drafts([3]));
    let error = other.append(&first, after, &more, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::Store(StoreError::Locked { .. })), "{error:?}");
    drop(writing);
    other.append(&first, after, &more, &[]).await.unwrap();
}

/// As on a server that follows another: it is read, and never written.
#[tokio::test]
async fn a_database_that_may_only_be_read_answers_and_takes_nothing_in() {
    let (bench, journal, holding, entries) = Bench::with_entries(3).await;
    let address = bench.url().replacen("options=", "options=-cdefault_transaction_read_only%3Don%20", 1);
    let follower = combclear_store::open(&address).await.unwrap();
    follower.ready().await.unwrap();
    assert_eq!(follower.page(&holding, 0, 9).await.unwrap(), entries);
    let after = entries.last().map(Entry::tip);
    let more = chain(&holding, after, drafts([4]));
    let error = follower.append(&holding, after, &more, &[]).await.unwrap_err();
    assert!(matches!(error, AppendError::Store(StoreError::ReadOnly { .. })), "{error:?}");
    journal.append(&holding, after, &more, &[]).await.unwrap();
    assert_eq!(follower.tip(&holding).await.unwrap(), more.last().map(Entry::tip));
    // Nothing is made where nothing is.
    let empty = Bench::new().url().replacen("options=", "options=-cdefault_transaction_read_only%3Don%20", 1);
    let Err(error) = combclear_store::open(&empty).await else { panic!("it was opened") };
    assert!(matches!(error, StoreError::ReadOnly { .. } | StoreError::Database { .. }), "{error:?}");
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn many_may_open_a_new_database_at_once() {
    let bench = Bench::new();
    let opening: Vec<_> = (0..8)
        .map(|_| {
            let url = bench.url();
            tokio::spawn(async move { combclear_store::open(&url).await.map(drop) })
        })
        .collect();
    for opened in opening {
        opened.await.unwrap().unwrap();
    }
}

/// The server ends at once, connections with it, and is started again. Nobody has to do anything here.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_server_that_is_started_again_is_used_again() {
    let cluster = Cluster::start();
    let journal = combclear_store::open(&cluster.empty()).await.unwrap();
    let holding = holding("first");
    let mut entries = chain(&holding, None, drafts(1..=3));
    journal.append(&holding, None, &entries, &[]).await.unwrap();
    let holdings = Holdings::new(Arc::clone(&journal));
    assert!(holdings.read(&holding, |_| ()).await.unwrap().is_some());
    for signal in ["INT", "KILL", "QUIT"] {
        cluster.restart(signal);
        // The first call may meet a connection that is gone. Then it says so, and nothing else.
        let mut after = entries.last().map(Entry::tip);
        let next = chain(&holding, after, [draft(entries.len() as u64 + 1)]);
        let mut tries = 0;
        loop {
            match journal.append(&holding, after, &next, &[]).await {
                Ok(()) => break,
                Err(AppendError::Store(StoreError::Unreachable { .. })) if tries < 20 => tries += 1,
                Err(error) => panic!("{error:?}"),
            }
        }
        after = next.last().map(Entry::tip);
        entries.extend(next);
        assert_eq!(journal.tip(&holding).await.unwrap(), after);
        assert!(holdings.read(&holding, |_| ()).await.unwrap().is_some());
        let head = after.map(|(_, hash)| hash);
        let wanted = Verified::Sound { entries: entries.len() as u64, head };
        assert_eq!(journal.verify(&holding, None).await.unwrap(), wanted);
    }
}
