//! `combclear serve`: a real server on a free loopback port, over a plain connection.

use std::io::{Read, Write};
use std::net::{TcpListener, TcpStream};
use std::time::{Duration, Instant};

use serde_json::{Value, json};

use crate::bench::{Bench, DEMO_DAY, id};
use crate::server::{LONGEST, Server, answer, request};

#[test]
fn it_says_where_it_answers_and_answers_there() {
    let bench = Bench::with_demo();
    let server = Server::start(&bench);
    let address = format!("http://127.0.0.1:{}", server.port);
    assert_eq!(
        server.said,
        format!("Combclear answers at {address} (documentation at {address}/docs); stop it with Ctrl-C\n")
    );
    assert_eq!(server.get("/healthz").0, 200);
    let (status, report) = server.get(&format!("/holdings/demo/colonies/O1/supering?on={DEMO_DAY}"));
    assert_eq!((status, &report["answer"]), (200, &json!("no")));
    // The same report as on the command line.
    let line = bench.run(&["supering", "O1", "--on", DEMO_DAY, "--json"]).answered(3).json();
    assert_eq!(report, line[0]);
}

#[test]
fn an_entry_sent_to_it_is_seen_by_the_command_line_and_the_other_way_round() {
    let bench = Bench::with_mine();
    let server = Server::start(&bench);
    let entry = json!({
        "on": "2026-03-02", "recorded_by": "me", "kind": "inspection", "body": {"colony": "A1"}
    });
    let put = format!("PUT /holdings/mine/entries/{}", id(3));
    assert_eq!(server.ask(&put, &entry.to_string()).0, 201);
    bench.run(&["verify"]).done().says(&["The journal of mine is intact: 3 entries"]);
    let more = crate::bench::inspection(4, "2026-03-03", "A1");
    bench.write("more.jsonl", crate::bench::mine(&[&more]));
    bench.run(&["import", "more.jsonl"]).done().says(&["1 entry added, 2 were already there"]);
    let (status, read) = server.get(&format!("/holdings/mine/entries/{}", id(4)));
    assert_eq!((status, &read["seq"]), (200, &json!(4)));
}

#[test]
fn it_begins_with_a_new_database_where_there_is_none() {
    let bench = Bench::new();
    let server = Server::start(&bench);
    assert_eq!(server.get("/healthz").0, 200);
    let (status, problem) = server.get("/holdings/mine/colonies/A1/supering");
    assert_eq!(status, 404, "{problem}");
}

#[test]
fn a_port_in_use_is_named() {
    let bench = Bench::with_mine();
    let taken = TcpListener::bind("127.0.0.1:0").unwrap();
    let address = taken.local_addr().unwrap();
    bench.run(&["serve", "--listen", &address.to_string()]).failed_with(
        &format!("`{address}` is in use by another program"),
        "choose another port, such as --listen 127.0.0.1:8421, or end the program that uses it",
    );
}

#[test]
fn an_address_that_others_can_reach_is_refused_before_anything_is_opened() {
    let bench = Bench::new();
    for address in ["0.0.0.0:8420", "[::]:8420", "192.0.2.1:8420"] {
        bench.run(&["serve", "--listen", address]).failed_with(
            &format!(
                "`{address}` can be reached from other machines, and what is sent there can be read on the way"
            ),
            "give it a certificate (--certificate and --certificate-key), put it behind a proxy that encrypts \
             (--behind-proxy), or listen at `127.0.0.1:8420`, which only this machine can reach",
        );
    }
    assert!(bench.files().is_empty(), "{:?}", bench.files());
}

#[test]
fn what_is_logged_is_plain_text_where_it_goes_to_no_terminal() {
    let bench = Bench::with_mine();
    let mut server = Server::start(&bench);
    server.get("/healthz");
    server.child.kill().unwrap();
    let (_, _, log) = server.end();
    assert!(log.contains("/healthz"), "{log}");
    assert!(!log.contains('\u{1b}'), "{log:?}");
}

#[cfg(unix)]
#[test]
fn told_to_end_it_ends_well_at_once() {
    let bench = Bench::with_mine();
    for signal in ["-TERM", "-INT"] {
        // It can be ended as soon as it says that it is ready.
        let server = Server::start(&bench);
        server.tell(signal);
        let (code, out, log) = server.end();
        assert_eq!((code, out.as_str()), (Some(0), ""), "{signal}: {log}");
    }
    // And with a client connected that has already asked.
    let server = Server::start(&bench);
    let mut idle = server.connect();
    idle.write_all(b"GET /healthz HTTP/1.1\r\nhost: localhost\r\n\r\n").unwrap();
    idle.read_exact(&mut [0; 12]).unwrap();
    let begun = Instant::now();
    server.tell("-TERM");
    assert_eq!(server.end().0, Some(0));
    assert!(begun.elapsed() < Duration::from_secs(5), "{:?}", begun.elapsed());
}

#[cfg(unix)]
#[test]
fn told_to_end_it_finishes_what_has_begun() {
    let bench = Bench::with_mine();
    let server = Server::start(&bench);
    let entry = json!({
        "on": "2026-03-02", "recorded_by": "me", "kind": "inspection", "body": {"colony": "A1"}
    })
    .to_string();
    let mut client = server.connect();
    let (sent, kept_back) = entry.split_at(20);
    let head = request(&format!("PUT /holdings/mine/entries/{}", id(3)), entry.len());
    client.write_all(format!("{head}{sent}").as_bytes()).unwrap();
    // Time to read the request; there is no sign of it.
    std::thread::sleep(Duration::from_millis(300));
    server.tell("-TERM");
    // Until it accepts no more connections.
    let begun = Instant::now();
    while TcpStream::connect(("127.0.0.1", server.port)).is_ok() {
        assert!(begun.elapsed() < LONGEST, "it still lets clients in");
        std::thread::sleep(Duration::from_millis(10));
    }
    client.write_all(kept_back.as_bytes()).unwrap();
    assert_eq!(answer(client).0, 201);
    let (code, _, log) = server.end();
    assert_eq!(code, Some(0), "{log}");
    bench.run(&["verify"]).done().says(&["The journal of mine is intact: 3 entries"]);
}

#[cfg(unix)]
#[test]
fn a_client_that_never_finishes_does_not_keep_it_up() {
    let bench = Bench::with_mine();
    let server = Server::start(&bench);
    let mut client = server.connect();
    client.write_all(b"GET /heal").unwrap();
    std::thread::sleep(Duration::from_millis(300));
    server.tell("-TERM");
    let (code, _, log) = server.end();
    assert_eq!(code, Some(0), "{log}");
    assert!(log.contains("gave up requests that did not come to an end"), "{log}");
}

#[test]
fn an_upload_that_breaks_off_on_its_way_is_told_so_and_nothing_is_recorded() {
    let bench = Bench::with_mine();
    let server = Server::start(&bench);
    let file =
        combclear_testkit::documents::sample(combclear_domain::basics::words::MediaType::Jpeg, "photo");
    let mut stream = server.connect();
    let address = format!("/holdings/mine/documents/{}?lot=L1&on=2026-03-02&recorded_by=me", id(9));
    let length = file.len() + 100;
    write!(
        stream,
        "PUT {address} HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-length: {length}\r\n\r\n"
    )
    .unwrap();
    stream.write_all(&file).unwrap();
    stream.shutdown(std::net::Shutdown::Write).unwrap();
    let (status, body) = answer(stream);
    assert_eq!(status, 400, "{body}");
    let problem: Value = serde_json::from_str(&body).unwrap();
    assert_eq!(problem["type"], "/problems/unreadable-body");
    assert_eq!(problem["detail"], "the upload broke off: the document did not arrive in full");
    assert_eq!(server.get("/holdings/mine/documents").1, json!({ "items": [] }));
}
