//! A network that is cut without a word between program and database, and a database put back from an older copy.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use combclear_domain::journal::Entry;
use combclear_store::{AppendError, Holdings, StoreError};
use combclear_testkit::postgres::shared;
use sqlx::Connection;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};

use super::Bench;
use crate::making::{chain, drafts, holding};

/// A way to the server that can be cut: then it swallows everything, as a network does whose cable was pulled.
struct Way {
    port: u16,
    cut: Arc<AtomicBool>,
}

impl Way {
    async fn to(server: u16) -> Way {
        let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
        let port = listener.local_addr().unwrap().port();
        let cut = Arc::new(AtomicBool::new(false));
        let seen = Arc::clone(&cut);
        tokio::spawn(async move {
            while let Ok((here, _)) = listener.accept().await {
                let there = TcpStream::connect(("127.0.0.1", server)).await.unwrap();
                let ((from_here, to_here), (from_there, to_there)) = (here.into_split(), there.into_split());
                tokio::spawn(carry(from_here, to_there, Arc::clone(&seen)));
                tokio::spawn(carry(from_there, to_here, Arc::clone(&seen)));
            }
        });
        Way { port, cut }
    }
}

async fn carry(
    mut from: tokio::net::tcp::OwnedReadHalf,
    mut to: tokio::net::tcp::OwnedWriteHalf,
    cut: Arc<AtomicBool>,
) {
    let mut bytes = vec![0; 64 * 1024];
    while let Ok(read) = from.read(&mut bytes).await {
        if read == 0 {
            break;
        }
        if cut.load(Ordering::Relaxed) {
            // Neither delivered nor refused. A cable that is plugged in again does not bring it back.
            std::future::pending::<()>().await;
        }
        if to.write_all(&bytes[..read]).await.is_err() {
            break;
        }
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_network_that_is_cut_is_said_and_mends_without_hands() {
    let bench = Bench::new();
    let way = Way::to(shared().port).await;
    let url = bench.url().replacen(&format!(":{}/", shared().port), &format!(":{}/", way.port), 1);
    let journal = combclear_store::open(&url).await.unwrap();
    let holding = holding("first");
    let entries = chain(&holding, None, drafts(1..=3));
    journal.append(&holding, None, &entries, &[]).await.unwrap();
    let holdings = Arc::new(Holdings::new(Arc::clone(&journal)));
    assert!(holdings.read(&holding, |_| ()).await.unwrap().is_some());

    way.cut.store(true, Ordering::Relaxed);
    let began = Instant::now();
    let after = entries.last().map(Entry::tip);
    let next = chain(&holding, after, drafts([4]));
    let (read, written) =
        tokio::join!(holdings.read(&holding, |_| ()), journal.append(&holding, after, &next, &[]));
    let silent =
        |error: &StoreError| matches!(error, StoreError::Unreachable { .. } | StoreError::Locked { .. });
    assert!(read.as_ref().is_err_and(silent), "{read:?}");
    let Err(AppendError::Store(error)) = &written else { panic!("{written:?}") };
    assert!(silent(error), "{error:?}");
    assert!(began.elapsed() < Duration::from_secs(30), "{:?}", began.elapsed());

    way.cut.store(false, Ordering::Relaxed);
    let began = Instant::now();
    while let Err(error) = holdings.read(&holding, |_| ()).await {
        assert!(silent(&error), "{error:?}");
        assert!(began.elapsed() < Duration::from_secs(30), "it does not mend: {error:?}");
    }
    journal.append(&holding, after, &next, &[]).await.unwrap();
}

/// What is in memory then went on from entries that are no longer there.
#[tokio::test]
async fn a_database_that_is_put_back_from_an_older_copy_and_goes_on_is_read_anew() {
    let (bench, journal, holding, entries) = Bench::with_entries(6).await;
    let holdings = Holdings::new(Arc::clone(&journal));
    let asked = async || {
        holdings.read(&holding, combclear_domain::facts::holding::Holding::tip).await.unwrap().unwrap()
    };
    assert_eq!(asked().await, entries.last().map(Entry::tip));
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("delete from entries where seq > 3").await.unwrap();
    let after = Some(entries[2].tip());
    let anew = chain(&holding, after, drafts(20..=28));
    journal.append(&holding, after, &anew, &[]).await.unwrap();
    assert_eq!(asked().await, anew.last().map(Entry::tip));
}

/// Every connection for writing is taken by somebody who is slow.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_pool_that_is_exhausted_is_said_and_readers_are_answered_meanwhile() {
    let (_bench, journal, first, entries) = Bench::with_entries(3).await;
    let holdings = Holdings::new(Arc::clone(&journal));
    let mut slow = Vec::new();
    for number in 0..8 {
        slow.push(journal.begin_write(&holding(&format!("slow {number}"))).await.unwrap());
    }
    let began = Instant::now();
    let begun = journal.begin_write(&first);
    let asked = async {
        for _ in 0..20 {
            assert!(holdings.snapshot(&first).await.unwrap().is_some());
        }
        began.elapsed()
    };
    let (refused, answered) = tokio::join!(begun, asked);
    assert!(answered < Duration::from_secs(2), "{answered:?}");
    let Err(error) = refused.map(drop) else { panic!("there was a connection left") };
    assert!(matches!(error, StoreError::Locked { .. }), "{error:?}");
    assert!((4..10).contains(&began.elapsed().as_secs()), "{:?}", began.elapsed());
    drop(slow);
    let after = entries.last().map(Entry::tip);
    journal.append(&first, after, &chain(&first, after, drafts([4])), &[]).await.unwrap();
}

/// The server has given all the connections that it gives.
#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_server_without_a_connection_left_is_said_and_mends_without_hands() {
    let (bench, journal, first, _) = Bench::with_entries(3).await;
    journal.close().await;
    let name = bench.url().rsplit("%3D").next().unwrap().to_owned();
    let role = format!("few_{name}");
    shared().run(&format!(
        "create role {role} login connection limit 2; grant all on schema {name} to {role};
        grant all on all tables in schema {name} to {role}; grant create on database postgres to {role}"
    ));
    let url = bench.url().replacen("postgres@", &format!("{role}@"), 1);
    let journal = combclear_store::open(&url).await.unwrap();
    let holdings = Holdings::new(Arc::clone(&journal));
    let mut others = Vec::new();
    for _ in 0..2 {
        others.push(sqlx::PgConnection::connect(&url).await.unwrap());
    }
    let error = holdings.snapshot(&first).await.unwrap_err();
    assert!(matches!(error, StoreError::Unreachable { .. } | StoreError::Locked { .. }), "{error:?}");
    for other in others {
        other.close().await.unwrap();
    }
    let began = Instant::now();
    while let Err(error) = holdings.snapshot(&first).await {
        assert!(began.elapsed() < Duration::from_secs(20), "it does not mend: {error:?}");
    }
    assert_eq!(holdings.snapshot(&first).await.unwrap().unwrap().in_order().len(), 3);
}
