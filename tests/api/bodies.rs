//! Bodies: how many bytes of them are taken in at a time, and clients that stop in the middle of one.

use std::net::SocketAddr;
use std::sync::Arc;
use std::time::{Duration, Instant};

use combclear_service::{Limits, Patience, serve};
use serde_json::json;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};

use crate::bench::{self, Bench};
use crate::faulty::{Faulty, Gate, Trouble};
use crate::seed::{self, HOLDING};

const QUERY: &str = "lot=strips-1&on=2026-04-10&recorded_by=A.%20Keeper";

/// Serves until the test ends.
async fn served(bench: Bench, limits: Limits) -> SocketAddr {
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = listener.local_addr().unwrap();
    let app = bench::app(Arc::clone(&bench.journal), Arc::clone(&bench.clock)).within(limits);
    tokio::spawn(async move {
        let _folder = bench;
        serve(listener, None, app, Patience::default(), std::future::pending()).await;
    });
    address
}

/// A million bytes of bodies at a time, and little patience.
fn narrow() -> Limits {
    Limits {
        bodies: 1_000_000,
        wait: Duration::from_millis(200),
        silence: Duration::from_mins(1),
        ..Limits::default()
    }
}

/// The head of a request that puts something and says how long its body is, as far as that is known.
fn head(path: &str, length: Option<usize>) -> String {
    let length =
        length.map_or("transfer-encoding: chunked".to_owned(), |length| format!("content-length: {length}"));
    format!("PUT {path} HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\n{length}\r\n\r\n")
}

fn documents(number: u32) -> String {
    format!("/holdings/{HOLDING}/documents/{}?{QUERY}", seed::id(number))
}

async fn begin(address: SocketAddr, sent: &str) -> TcpStream {
    let mut client = TcpStream::connect(address).await.unwrap();
    client.write_all(sent.as_bytes()).await.unwrap();
    client
}

/// What comes back until the connection ends, or for a while.
async fn answer(client: &mut TcpStream) -> String {
    let mut answer = Vec::new();
    let mut part = [0; 4096];
    while let Ok(Ok(read @ 1..)) =
        tokio::time::timeout(Duration::from_millis(1_500), client.read(&mut part)).await
    {
        answer.extend_from_slice(&part[..read]);
        if answer.ends_with(b"}") {
            break;
        }
    }
    String::from_utf8(answer).unwrap()
}

#[track_caller]
fn finds_no_room(answer: &str) {
    assert!(answer.starts_with("HTTP/1.1 503 "), "{answer}");
    assert!(answer.contains("retry-after: 2\r\n") && answer.contains("/problems/service-busy"), "{answer}");
    assert!(answer.contains("others are sending as much"), "{answer}");
}

#[tokio::test]
async fn bodies_take_up_no_more_than_their_common_room() {
    let address = served(seed::bench().await, narrow()).await;
    let large = 900_000;
    for stalled in [documents(50), seed::path(50)] {
        let holder = begin(address, &format!("{}{}", head(&stalled, Some(large)), " ".repeat(1_000))).await;
        tokio::time::sleep(Duration::from_millis(100)).await;
        // Whoever does not say how much is to come needs room for the most that the path takes.
        for length in [Some(large), None] {
            for path in [documents(51), seed::path(51)] {
                finds_no_room(&answer(&mut begin(address, &head(&path, length)).await).await);
            }
        }
        // What is small finds room, and who sends nothing needs none.
        let (small, path) = (seed::entries()[12].to_string(), seed::path(13));
        let known = answer(&mut begin(address, &(head(&path, Some(small.len())) + &small)).await).await;
        assert!(known.starts_with("HTTP/1.1 200 "), "{stalled}: {} {known}", small.len());
        let request = format!("GET /holdings/{HOLDING}/stock HTTP/1.1\r\nhost: localhost\r\n\r\n");
        assert!(answer(&mut begin(address, &request).await).await.starts_with("HTTP/1.1 200 "));
        // Its room is free when it is gone.
        drop(holder);
        tokio::time::sleep(Duration::from_millis(100)).await;
        let sent = head(&seed::path(52), Some(large)) + &" ".repeat(large);
        let refused = answer(&mut begin(address, &sent).await).await;
        assert!(refused.starts_with("HTTP/1.1 400 "), "{refused}");
    }
}

#[tokio::test]
async fn an_append_keeps_its_room_when_its_client_is_gone() {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::AppendWaits(Arc::clone(&gate)))).await;
    let address = served(bench, narrow()).await;
    let path = format!("/holdings/{HOLDING}");
    let first = seed::entries()[0].to_string();
    let sent = format!("{first}{}", " ".repeat(900_000 - first.len()));
    let client = begin(address, &(head(&path, Some(sent.len())) + &sent)).await;
    gate.is_reached().await;
    drop(client);
    tokio::time::sleep(Duration::from_millis(100)).await;
    let other = json!({}).to_string();
    let sent = format!("{other}{}", " ".repeat(900_000 - other.len()));
    finds_no_room(&answer(&mut begin(address, &(head(&path, Some(sent.len())) + &sent)).await).await);
    gate.let_through();
    tokio::time::sleep(Duration::from_millis(300)).await;
    let answer = answer(&mut begin(address, &(head(&path, Some(sent.len())) + &sent)).await).await;
    assert!(answer.starts_with("HTTP/1.1 422 "), "{answer}");
}

#[tokio::test]
async fn a_body_that_stops_arriving_is_let_go() {
    let limits = Limits { silence: Duration::from_millis(600), ..Limits::default() };
    let address = served(seed::bench().await, limits).await;
    for path in [documents(50), seed::path(50), format!("/holdings/{HOLDING}")] {
        for length in [Some(10_000), None] {
            let begun = Instant::now();
            let mut client = begin(address, &head(&path, length)).await;
            // Whoever goes on sending is not let go, however slowly it goes.
            for _ in 0..3 {
                tokio::time::sleep(Duration::from_millis(300)).await;
                client.write_all(if length.is_some() { b"  " } else { b"2\r\n  \r\n" }).await.unwrap();
            }
            let answer = answer(&mut client).await;
            assert!(answer.starts_with("HTTP/1.1 408 "), "{path}: {answer}");
            assert!(answer.contains("/problems/stalled-body"), "{answer}");
            assert!(begun.elapsed() >= Duration::from_millis(1_500), "{:?}", begun.elapsed());
        }
    }
}
