//! Rounds in which clients write until something is killed, and what is looked at after each.

use std::collections::{BTreeMap, BTreeSet};
use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering};
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

pub(crate) fn rounds() -> u64 {
    std::env::var(ROUNDS_SAID).map_or(ROUNDS, |said| said.parse().unwrap())
}

/// What came of the entries that were sent, by number.
#[derive(Default)]
pub(crate) struct Sent {
    pub(crate) acknowledged: BTreeSet<usize>,
    pub(crate) unanswered: BTreeSet<usize>,
}

pub(crate) fn entry(number: usize) -> Value {
    json!({
        "on": "2026-03-02", "recorded_by": "me", "kind": "inspection",
        "body": {"colony": "A1", "note": format!("visit {number}")},
    })
}

/// Sends an entry. Returns the status, if an answer came.
pub(crate) fn put(port: u16, number: usize) -> Option<u16> {
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

/// Lets clients write until `kill` is done, some time after the first entry was acknowledged. A client goes on until one of its
/// entries is not acknowledged, or until all is over: it may not have noticed anything.
pub(crate) fn write_until(port: u16, next: &AtomicUsize, pause: Duration, kill: impl FnOnce()) -> Sent {
    let (acknowledged, over) = (&AtomicUsize::new(0), &AtomicBool::new(false));
    let mut all = Sent::default();
    scope(|threads| {
        let writers: Vec<_> = (0..WRITERS)
            .map(|_| {
                threads.spawn(move || {
                    let mut sent = Sent::default();
                    while !over.load(Ordering::SeqCst) {
                        let number = next.fetch_add(1, Ordering::SeqCst);
                        match put(port, number) {
                            Some(201) => drop(sent.acknowledged.insert(number)),
                            // The database is gone, and the service says so.
                            None | Some(503) => {
                                sent.unanswered.insert(number);
                                return sent;
                            }
                            Some(status) => panic!("entry {number}: {status}"),
                        }
                        acknowledged.fetch_add(1, Ordering::SeqCst);
                    }
                    sent
                })
            })
            .collect();
        while acknowledged.load(Ordering::SeqCst) == 0 && !writers.iter().any(ScopedJoinHandle::is_finished) {
            sleep(Duration::from_millis(1));
        }
        sleep(pause);
        kill();
        over.store(true, Ordering::SeqCst);
        for writer in writers {
            let sent = writer.join().unwrap();
            all.acknowledged.extend(sent.acknowledged);
            all.unanswered.extend(sent.unanswered);
        }
    });
    all
}

/// What came of all rounds.
#[derive(Default)]
pub(crate) struct Tally {
    acknowledged: BTreeSet<usize>,
    kept: u32,
    lost: u32,
}

impl Tally {
    /// After a kill, on a server that answers again: what was acknowledged is there, and what was not is found or added, once.
    pub(crate) fn take_in(&mut self, round: u64, bench: &Bench, server: &Server, sent: Sent) {
        for number in &sent.acknowledged {
            let (status, found) = server.get(&format!("/holdings/mine/entries/{}", id(*number)));
            assert_eq!((status, &found["body"]), (200, &entry(*number)["body"]), "round {round}: {number}");
        }
        for number in &sent.unanswered {
            let (was, _) = server.get(&format!("/holdings/mine/entries/{}", id(*number)));
            let wanted = if was == 200 { 200 } else { 201 };
            assert_eq!(put(server.port, *number), Some(wanted), "round {round}: entry {number} was {was}");
            self.kept += u32::from(was == 200);
            self.lost += u32::from(was != 200);
        }
        self.acknowledged.extend(sent.acknowledged);
        self.acknowledged.extend(sent.unanswered);
        let report = bench.run(&["verify", "--json"]).answered(0).json();
        let entries = self.acknowledged.len() + 2;
        assert_eq!((&report["sound"], &report["entries"]), (&json!(true), &json!(entries)), "round {round}");
    }

    /// In the end, every entry as it was sent. Returns the numbers, in words.
    pub(crate) fn end(&self, rounds: u64, bench: &Bench) -> String {
        let journal = kept(bench);
        assert_eq!(journal.len(), self.acknowledged.len() + 2);
        for number in &self.acknowledged {
            assert_eq!(journal[&id(*number)]["body"], entry(*number)["body"], "entry {number}");
        }
        assert!(self.lost + self.kept > 0, "it was never killed while it wrote");
        format!(
            "{rounds} kills: {} entries acknowledged; unanswered: {} kept, {} not",
            self.acknowledged.len(),
            self.kept,
            self.lost
        )
    }
}

/// The entries in the journal, by id.
fn kept(bench: &Bench) -> BTreeMap<String, Value> {
    let exported = bench.run(&["export"]).done().out;
    let entries = exported.lines().skip(1).map(|line| serde_json::from_str::<Value>(line).unwrap());
    entries.map(|entry| (entry["id"].as_str().unwrap().to_owned(), entry)).collect()
}
