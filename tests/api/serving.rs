//! Listening, and the permitted addresses.

use std::sync::Arc;

use combclear_service::{check_address, serve};
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
            "`{address}` can be reached from other machines, and there are no keys to let only the keeper in"
        );
        let words = Words::english();
        assert_eq!(failures::open_to_others(words, &refused.address.to_string()), want);
        assert_eq!(
            failures::this_machine_only(words, refused.address.port()),
            "listen at `127.0.0.1:7878` or `[::1]:7878`, which only this machine can reach"
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
    let service = tokio::spawn(serve(listener, app, async move { stopped.await.unwrap() }));

    let mut client = TcpStream::connect(address).await.unwrap();
    let entry = seed::entries()[0].to_string();
    let head = format!(
        "PUT /holdings/{HOLDING} HTTP/1.1\r\nhost: localhost\r\ncontent-type: application/json\r\ncontent-length: {}\r\n\r\n",
        entry.len()
    );
    client.write_all(format!("{head}{entry}").as_bytes()).await.unwrap();
    gate.is_reached().await;
    stop.send(()).unwrap();
    tokio::time::sleep(std::time::Duration::from_millis(100)).await;
    assert!(!service.is_finished());
    gate.let_through();
    let mut answer = String::new();
    client.read_to_string(&mut answer).await.unwrap();
    assert!(answer.starts_with("HTTP/1.1 201 Created\r\n"), "{answer}");
    service.await.unwrap().unwrap();
    assert_eq!(bench.entries_of(HOLDING).await, 1);
    assert!(TcpStream::connect(address).await.is_err());
}
