//! Listening, and the permitted addresses.

use std::sync::Arc;
use std::time::{Duration, Instant};

use combclear_service::{Patience, check_address, serve};
use combclear_wording::Words;
use combclear_wording::terminal::failures;
use tokio::io::{AsyncReadExt, AsyncWriteExt};
use tokio::net::{TcpListener, TcpStream};
use tokio::sync::oneshot;

use crate::bench::{self, Bench};
use crate::faulty::{Faulty, Gate, Trouble};
use crate::seed::{self, HOLDING};

#[test]
fn without_keys_only_this_machine_may_be_let_in() {
    for address in ["127.0.0.1:7878", "127.9.9.9:80", "[::1]:7878", "[::ffff:127.0.0.1]:7878"] {
        assert_eq!(check_address(address.parse().unwrap()), Ok(()), "{address}");
    }
    for address in
        ["0.0.0.0:7878", "192.168.1.5:7878", "[::]:7878", "[fe80::1]:7878", "[::ffff:10.0.0.1]:7878"]
    {
        let refused = check_address(address.parse().unwrap()).unwrap_err();
        let want = format!(
            "`{address}` can be reached from other machines, and what is sent there can be read on the way"
        );
        let words = Words::english();
        assert_eq!(failures::open_to_others(words, &refused.address.to_string()), want);
        assert_eq!(
            failures::this_machine_only(words, refused.address.port()),
            "give it a certificate (--certificate and --certificate-key), put it behind a proxy that encrypts \
             (--behind-proxy), or listen at `127.0.0.1:7878`, which only this machine can reach"
        );
    }
}

#[tokio::test]
async fn a_request_that_has_begun_is_finished_before_the_service_stops() {
    let gate = Gate::closed();
    let bench = Bench::over(Faulty::with(Trouble::AppendWaits(Arc::clone(&gate)))).await;
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = listener.local_addr().unwrap();
    let (stop, stopped) = oneshot::channel::<()>();
    let app = bench::app(Arc::clone(&bench.journal), Arc::clone(&bench.clock));
    let service =
        tokio::spawn(serve(listener, None, app, Patience::default(), async move { stopped.await.unwrap() }));

    let mut client = TcpStream::connect(address).await.unwrap();
    let entry = seed::entries()[0].to_string();
    let head = format!(
        "PUT /holdings/{HOLDING} HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n",
        entry.len()
    );
    client.write_all(format!("{head}{entry}").as_bytes()).await.unwrap();
    gate.is_reached().await;
    stop.send(()).unwrap();
    tokio::time::sleep(Duration::from_millis(100)).await;
    assert!(!service.is_finished());
    gate.let_through();
    let mut answer = String::new();
    client.read_to_string(&mut answer).await.unwrap();
    assert!(answer.starts_with("HTTP/1.1 201 Created\r\n"), "{answer}");
    service.await.unwrap();
    assert_eq!(bench.entries_of(HOLDING).await, 1);
    assert!(TcpStream::connect(address).await.is_err());
}

/// Serves with this patience until the returned sender is used or dropped.
async fn served(patience: Patience) -> (std::net::SocketAddr, oneshot::Sender<()>) {
    let bench = seed::bench().await;
    let listener = TcpListener::bind("127.0.0.1:0").await.unwrap();
    let address = listener.local_addr().unwrap();
    let (stop, stopped) = oneshot::channel::<()>();
    let app = bench::app(Arc::clone(&bench.journal), Arc::clone(&bench.clock));
    tokio::spawn(async move {
        let _folder = bench;
        serve(listener, None, app, patience, async move { _ = stopped.await }).await;
    });
    (address, stop)
}

const HEALTH: &[u8] = b"GET /healthz HTTP/1.1\r\nhost: localhost\r\n\r\n";

/// Heads that never end, connections without a word, and ones that fall silent after an answer: each is ended, so that others get in.
#[tokio::test]
async fn a_client_that_falls_silent_is_let_go() {
    let patience = Patience { head: Duration::from_millis(300), ..Patience::default() };
    let (address, _stop) = served(patience).await;
    for (name, sent) in [
        ("without a word", &b""[..]),
        ("half a head", b"GET /healthz HTTP/1.1\r\nhost: local"),
        ("after an answer", HEALTH),
    ] {
        let mut client = TcpStream::connect(address).await.unwrap();
        client.write_all(sent).await.unwrap();
        let begun = Instant::now();
        let mut answer = Vec::new();
        // The end of the connection.
        tokio::time::timeout(Duration::from_secs(5), client.read_to_end(&mut answer)).await.unwrap().unwrap();
        assert!(begun.elapsed() < Duration::from_secs(3), "{name}: {:?}", begun.elapsed());
        assert_eq!(answer.starts_with(b"HTTP/1.1 200"), sent == HEALTH, "{name}");
    }
}

#[tokio::test]
async fn more_connections_than_there_is_room_for_wait_and_are_answered() {
    let patience = Patience { head: Duration::from_millis(500), connections: 4 };
    let (address, _stop) = served(patience).await;
    let mut idle = Vec::new();
    for _ in 0..20 {
        idle.push(TcpStream::connect(address).await.unwrap());
    }
    let mut client = TcpStream::connect(address).await.unwrap();
    client.write_all(HEALTH).await.unwrap();
    let mut answer = Vec::new();
    tokio::time::timeout(Duration::from_secs(20), client.read_to_end(&mut answer)).await.unwrap().unwrap();
    assert!(answer.starts_with(b"HTTP/1.1 200"), "{}", String::from_utf8_lossy(&answer));
}
