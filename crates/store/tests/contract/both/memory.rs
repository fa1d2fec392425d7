//! Holdings in memory: always what the journal says, whoever wrote it, and at no other's cost.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex};

use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::{ApiaryDetails, StrikeOut};
use combclear_domain::journal::{Draft, Entry, Event};
use combclear_store::{Holdings, IfNew, OnRefusal, RecordError, Recorded, Verified};

use super::Bench;
use crate::making::{day, draft, holding, id, recorded_at};

/// An apiary of its own, which needs nothing before it.
fn apiary(number: u64) -> Draft {
    let event = ApiaryDetails { apiary: format!("apiary {number}").parse().unwrap(), place: None };
    Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), Event::from(event))
}

/// Everything that a holding says, in an order that does not depend on how it came about.
fn told(holding: &Holding) -> String {
    let files: Vec<_> = holding.apiaries().map(|apiary| (apiary, holding.apiary_file(apiary))).collect();
    let corrected: Vec<_> = holding.in_order().iter().map(|entry| holding.superseded_by(entry.id)).collect();
    let (order, standing) = (holding.in_order(), holding.standing());
    format!("{:?}\n{order:?}\n{standing:?}\n{files:?}\n{corrected:?}\n{}", holding.tip(), holding.weight())
}

/// A holding with one entry, and how many entries each commit after it had.
async fn begun() -> (Bench, Arc<Holdings>, Arc<Mutex<Vec<usize>>>) {
    let bench = Bench::new();
    let holdings = Arc::new(Holdings::new(bench.open().await));
    holdings.begin(&holding("first"), apiary(1), recorded_at()).await.unwrap();
    let commits = Arc::new(Mutex::new(Vec::new()));
    let told = Arc::clone(&commits);
    holdings.tell_of_commits(move |entries| told.lock().unwrap().push(entries));
    (bench, holdings, commits)
}

/// Two copies take turns, batches are refused in the middle, and some of what was shown is still being read.
#[tokio::test(flavor = "multi_thread")]
async fn what_is_in_memory_is_what_a_journal_that_is_read_anew_says() {
    let (bench, holdings, _) = begun().await;
    let name = holding("first");
    let (mut read_still, mut refused) = (Vec::new(), 0);
    // Knuth's linear congruential generator: the same steps in each run.
    let mut random = 7_u64;
    let mut any = |below: u64| {
        random = random.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (random >> 33) % below
    };
    for step in 0..120_u64 {
        let mut batch = Vec::new();
        for entry in 0..=any(4) {
            let number = 10 + 10 * step + entry;
            let earlier = id(10 + 10 * any(step + 1) + any(2));
            batch.push(match any(5) {
                0 => apiary(number).correcting(earlier, "another name"),
                1 => {
                    let strike_out = Event::from(StrikeOut {});
                    Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), strike_out)
                        .correcting(earlier, "never there")
                }
                _ => apiary(number),
            });
        }
        let on_refusal = if any(2) == 0 { OnRefusal::LeaveOut } else { OnRefusal::Collect };
        let (_, left_out) =
            holdings.record_each(&name, batch, recorded_at(), on_refusal, IfNew::Refuse).await.unwrap();
        refused += left_out.len();
        let shown = holdings.snapshot(&name).await.unwrap().unwrap();
        if step % 10 == 9 {
            let anew = Holdings::new(bench.open().await).snapshot(&name).await.unwrap().unwrap();
            assert_eq!(told(&shown), told(&anew), "step {step}");
        }
        if any(3) == 0 {
            read_still.push((told(&shown), shown));
        }
    }
    assert!(refused > 20, "{refused}");
    assert!(read_still.len() > 20, "{}", read_still.len());
    for (said_then, read_still) in read_still {
        assert_eq!(said_then, told(&read_still), "what is read never changes");
    }
}

#[tokio::test(flavor = "multi_thread")]
async fn many_who_write_at_once_are_committed_together_and_each_is_answered_for_its_own() {
    let (_bench, holdings, commits) = begun().await;
    let name = holding("first");
    let answered = Arc::new(AtomicUsize::new(0));
    let writers: Vec<_> = (100..164_u64)
        .map(|number| {
            let (holdings, name, answered) = (Arc::clone(&holdings), name.clone(), Arc::clone(&answered));
            tokio::spawn(async move {
                // Each fourth batch has one that cannot be true at its end, and nothing of it is recorded.
                let mut batch = vec![apiary(number), apiary(1_000 + number)];
                let is_refused = number % 4 == 0;
                if is_refused {
                    batch.push(apiary(2_000 + number).correcting(id(9_999), "no such entry"));
                }
                let recorded = holdings.record(&name, batch, recorded_at()).await;
                let shown = holdings.snapshot(&name).await.unwrap().unwrap();
                if is_refused {
                    let Err(RecordError::Refused { index: 2, .. }) = recorded else { panic!("{recorded:?}") };
                    assert!(shown.entry(id(number)).is_none());
                    return;
                }
                let recorded = recorded.unwrap();
                let ids: Vec<_> = recorded.iter().map(|entry| entry.entry().draft.id).collect();
                assert_eq!(ids, [id(number), id(1_000 + number)]);
                for entry in &recorded {
                    assert!(matches!(entry, Recorded::New(_)));
                    assert_eq!(
                        shown.entry(entry.entry().draft.id).map(|found| found.seq),
                        Some(entry.entry().seq)
                    );
                }
                answered.fetch_add(recorded.len(), Ordering::Relaxed);
            })
        })
        .collect();
    for writer in writers {
        writer.await.unwrap();
    }
    assert_eq!(answered.load(Ordering::Relaxed), 2 * 48);
    let kept = holdings.journal().page(&name, 0, 1_000).await.unwrap();
    assert_eq!(kept.len(), 1 + 2 * 48);
    let head = kept.last().map(|entry| entry.hash);
    let found = holdings.journal().verify(&name, None).await.unwrap();
    assert_eq!(found, Verified::Sound { entries: 97, head });
    let commits = commits.lock().unwrap().clone();
    assert_eq!(commits.iter().sum::<usize>(), 2 * 48);
    assert!(commits.len() < 48, "each on its own: {commits:?}");
}

/// The same entry is sent twice before either is in the journal: one of the two records it.
#[tokio::test(flavor = "multi_thread")]
async fn the_same_entry_in_two_batches_of_one_commit_is_recorded_once() {
    let (_bench, holdings, _) = begun().await;
    let name = holding("first");
    for round in 0..20_u64 {
        let sent = |drafts: Vec<Draft>| {
            let (holdings, name) = (Arc::clone(&holdings), name.clone());
            tokio::spawn(async move { holdings.record(&name, drafts, recorded_at()).await })
        };
        let number = 100 + 10 * round;
        let other = Draft { id: id(number), ..apiary(number + 5) };
        let writers = [vec![apiary(number)], vec![apiary(number)], vec![other, apiary(number + 1)]].map(sent);
        let mut new = 0;
        for writer in writers {
            match writer.await.unwrap() {
                Ok(recorded) => {
                    new += recorded.iter().filter(|entry| matches!(entry, Recorded::New(_))).count();
                }
                Err(error) => assert!(matches!(error, RecordError::Conflict { index: 0, .. }), "{error}"),
            }
        }
        assert!((1..=2).contains(&new), "{new}");
        let kept = holdings.journal().entry(&name, id(number)).await.unwrap();
        assert!(kept.is_some());
    }
    let last = holdings.snapshot(&name).await.unwrap().unwrap().tip().map(|(last, _)| last);
    let Verified::Sound { entries, .. } = holdings.journal().verify(&name, None).await.unwrap() else {
        panic!("the journal does not hold")
    };
    assert_eq!(last, Some(entries));
}

/// Two keepers begin a holding of the same name at the same time. It is that of one of them.
#[tokio::test(flavor = "multi_thread")]
async fn a_holding_that_two_begin_at_once_is_begun_by_one_of_them() {
    let bench = Bench::new();
    let holdings = Arc::new(Holdings::new(bench.open().await));
    for round in 0..20_u64 {
        let begun: Vec<_> = (0..4)
            .map(|number| {
                let holdings = Arc::clone(&holdings);
                let (name, first) = (holding(&format!("round {round}")), apiary(100 * round + number));
                tokio::spawn(async move { holdings.begin(&name, first, recorded_at()).await })
            })
            .collect();
        let mut new = 0;
        for begun in begun {
            match begun.await.unwrap() {
                Ok(Recorded::New(entry)) => {
                    assert_eq!(entry.seq, 1);
                    new += 1;
                }
                other => assert!(matches!(other, Err(RecordError::BegunBefore { .. })), "{other:?}"),
            }
        }
        assert_eq!(new, 1, "round {round}");
    }
}

/// Every entry of another program is in the next answer, whether or not this one has written meanwhile.
#[tokio::test(flavor = "multi_thread")]
async fn what_another_program_wrote_is_in_the_next_answer() {
    let (bench, holdings, _) = begun().await;
    let other = Holdings::new(bench.open().await);
    let name = holding("first");
    for number in 100..160 {
        let (writer, reader) = if number % 3 == 0 { (&*holdings, &other) } else { (&other, &*holdings) };
        // Both have looked at the database since anything was written.
        reader.snapshot(&name).await.unwrap();
        writer.record(&name, vec![apiary(number)], recorded_at()).await.unwrap();
        let seen = reader.read(&name, |holding| holding.entry(id(number)).is_some()).await.unwrap();
        assert_eq!(seen, Some(true), "{number}");
    }
}

#[tokio::test]
async fn holdings_that_were_not_asked_for_longest_leave_the_memory_when_there_is_no_room() {
    let bench = Bench::new();
    let journal = bench.open().await;
    // Room for some two of them.
    let holdings = Holdings::within(Arc::clone(&journal), 1_000);
    let names: Vec<_> = ["one", "two", "three", "four"].map(holding).to_vec();
    for name in &names {
        holdings.begin(name, draft(3), recorded_at()).await.unwrap();
    }
    let within = holdings.in_memory();
    assert!((1..=3).contains(&within.holdings), "{within:?}");
    assert!(within.bytes <= 1_000, "{within:?}");
    // All of them are still answered, and written to.
    for (number, name) in (100..).zip(names.iter().chain(&names)) {
        assert!(holdings.snapshot(name).await.unwrap().is_some());
        holdings.record(name, vec![apiary(number)], recorded_at()).await.unwrap();
    }
    for name in &names {
        let found = holdings.snapshot(name).await.unwrap().unwrap();
        assert_eq!(found.in_order().len(), 3);
        assert!(matches!(journal.verify(name, None).await.unwrap(), Verified::Sound { entries: 3, .. }));
    }
    // One that has no room at all is answered too.
    let holdings = Holdings::within(journal, 0);
    assert_eq!(holdings.snapshot(&names[0]).await.unwrap().unwrap().in_order().len(), 3);
    assert_eq!(holdings.in_memory().holdings, 1);
    holdings.snapshot(&names[1]).await.unwrap();
    assert_eq!(holdings.in_memory().holdings, 1);
}

/// Whoever waits for the journal may be gone before it answers; others wait behind.
#[tokio::test(flavor = "multi_thread")]
async fn a_writer_that_is_dropped_leaves_nobody_waiting() {
    let (_bench, holdings, _) = begun().await;
    let name = holding("first");
    for number in 100..200 {
        let given_up = holdings.record(&name, vec![apiary(number)], recorded_at());
        // Long enough to begin, and too short to end, now and then.
        let _ = tokio::time::timeout(std::time::Duration::from_micros(20 * (number % 20)), given_up).await;
        let again = holdings.record(&name, vec![apiary(number)], recorded_at());
        let again = tokio::time::timeout(std::time::Duration::from_secs(10), again).await;
        let recorded: Vec<Recorded> = again.expect("it waits").unwrap();
        assert_eq!(recorded[0].entry().draft.id, id(number));
    }
    let kept: Vec<Entry> = holdings.journal().page(&name, 0, 1_000).await.unwrap();
    assert_eq!(kept.len(), 101);
}
