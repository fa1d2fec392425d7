//! A server that is killed while it writes: what it acknowledged is kept, and what it did not can be sent again.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread::{ScopedJoinHandle, scope, sleep};
use std::time::Duration;

use serde_json::{Value, json};

use crate::bench::{Bench, id};
use crate::server::{LONGEST, Server, request};

/// Clients that write at the same time.
const WRITERS: usize = 3;
/// Kills, if [`ROUNDS_SAID`] does not say otherwise.
const ROUNDS: u64 = 20;
/// How many kills: more for a long test.
const ROUNDS_SAID: &str = "COMBCLEAR_KILLS";

/// What came of the entries that were sent, by number.
#[derive(Default)]
struct Sent {
    acknowledged: BTreeSet<usize>,
    unanswered: BTreeSet<usize>,
}

fn entry(number: usize) -> Value {
    json!({
        "on": "2026-03-02", "recorded_by": "me", "kind": "inspection",
        "body": {"colony": "A1", "note": format!("visit {number}")},
    })
}

/// Sends an entry. Returns the status, if an answer came.
fn put(port: u16, number: usize) -> Option<u16> {
    let body = entry(number).to_string();
    let mut stream = TcpStream::connect(("127.0.0.1", port)).ok()?;
    stream.set_read_timeout(Some(LONGEST)).ok()?;
    let head = request(&format!("PUT /holdings/mine/entries/{}", id(number)), body.len());
    stream.write_all(format!("{head}{body}").as_bytes()).ok()?;
    let mut answer = Vec::new();
    // A connection that breaks off may have brought the status before.
    let _ = stream.read_to_end(&mut answer);
    let line = String::from_utf8(answer).ok()?;
    line.strip_prefix("HTTP/1.1 ")?.get(..3)?.parse().ok()
}

/// Lets clients write until the server is killed, some time after it acknowledged the first entry.
fn write_until_killed(mut server: Server, next: &AtomicUsize, pause: Duration) -> Sent {
    let (port, acknowledged) = (server.port, &AtomicUsize::new(0));
    let mut all = Sent::default();
    scope(|threads| {
        let writers: Vec<_> = (0..WRITERS)
            .map(|_| {
                threads.spawn(move || {
                    let mut sent = Sent::default();
                    loop {
                        let number = next.fetch_add(1, Ordering::SeqCst);
                        let Some(status) = put(port, number) else {
                            sent.unanswered.insert(number);
                            return sent;
                        };
                        assert_eq!(status, 201, "entry {number}");
                        sent.acknowledged.insert(number);
                        acknowledged.fetch_add(1, Ordering::SeqCst);
                    }
                })
            })
            .collect();
        while acknowledged.load(Ordering::SeqCst) == 0 && !writers.iter().any(ScopedJoinHandle::is_finished) {
            sleep(Duration::from_millis(1));
        }
        sleep(pause);
        server.child.kill().unwrap();
        server.child.wait().unwrap();
        for writer in writers {
            let sent = writer.join().unwrap();
            all.acknowledged.extend(sent.acknowledged);
            all.unanswered.extend(sent.unanswered);
        }
    });
    all
}

/// The entries in the journal, by id.
fn kept(bench: &Bench) -> BTreeMap<String, Value> {
    let exported = bench.run(&["export"]).done().out;
    let entries = exported.lines().skip(1).map(|line| serde_json::from_str::<Value>(line).unwrap());
    entries.map(|entry| (entry["id"].as_str().unwrap().to_owned(), entry)).collect()
}

#[test]
fn a_server_killed_while_it_writes_keeps_what_it_acknowledged_and_takes_the_rest_again() {
    let rounds = std::env::var(ROUNDS_SAID).map_or(ROUNDS, |said| said.parse().unwrap());
    let bench = Bench::with_mine();
    let next = AtomicUsize::new(3);
    let (mut acknowledged, mut lost, mut kept_unanswered) = (BTreeSet::new(), 0, 0);
    for round in 0..rounds {
        // Every phase of a write, which takes a few milliseconds.
        let pause = Duration::from_micros(round * 1_700 % 40_000);
        let sent = write_until_killed(Server::start(&bench), &next, pause);
        acknowledged.extend(sent.acknowledged);

        let report = bench.run(&["verify", "--json"]).answered(0).json();
        let journal = kept(&bench);
        assert_eq!((&report["sound"], &report["entries"]), (&json!(true), &json!(journal.len())));
        for number in &acknowledged {
            let found = &journal.get(&id(*number)).unwrap_or_else(|| panic!("round {round}: lost {number}"));
            assert_eq!(found["body"], entry(*number)["body"], "round {round}");
        }

        // Sent again, an entry that was kept is found and one that was not is added, once.
        let server = Server::start(&bench);
        for number in &sent.unanswered {
            let was_kept = journal.contains_key(&id(*number));
            let status = put(server.port, *number);
            assert_eq!(status, Some(if was_kept { 200 } else { 201 }), "round {round}: entry {number}");
            kept_unanswered += u32::from(was_kept);
            lost += u32::from(!was_kept);
        }
        acknowledged.extend(sent.unanswered);
        drop(server);
        assert_eq!(kept(&bench).len(), acknowledged.len() + 2, "round {round}");
    }
    assert!(lost + kept_unanswered > 0, "it was never killed while it wrote");
    println!(
        "{rounds} kills: {} entries acknowledged; unanswered: {kept_unanswered} kept, {lost} not",
        acknowledged.len()
    );
}
