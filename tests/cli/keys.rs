//! `combclear key`, and a service that asks for keys.

use std::io::{Read, Write};
use std::net::TcpStream;
use std::sync::Arc;

use serde_json::{Value, json};
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::{CertificateDer, ServerName, pem::PemObject};
use tokio_rustls::rustls::{ClientConfig, ClientConnection, RootCertStore, StreamOwned};

use crate::bench::{Bench, id};
use crate::server::{LONGEST, Server};

/// Makes a key. Returns its id and the whole of it.
fn add(bench: &Bench, arguments: &[&str]) -> (String, String) {
    let made = bench.run(&[&["key", "add"], arguments, &["--json"]].concat()).answered(0).json();
    let text = |field: &str| made[field].as_str().unwrap().to_owned();
    assert_eq!(made["holds"], true);
    (text("id"), text("key"))
}

#[test]
fn a_key_is_shown_once_and_kept_as_a_hash_only() {
    let bench = Bench::with_mine();
    let ran = bench.run(&["key", "add", "helper", "--for", "Jory (invented)"]).done();
    let key = ran.out.lines().last().unwrap();
    let (id, secret) = key.split_once('.').unwrap();
    assert_eq!((id.len(), secret.len()), (8, 43), "{key}");
    assert!(
        ran.out.starts_with(&format!("Key {id} for Jory (invented), helper of mine, was made.")),
        "{}",
        ran.out
    );
    for file in bench.files() {
        let bytes = std::fs::read(bench.path(&file)).unwrap();
        assert!(!bytes.windows(43).any(|part| part == secret.as_bytes()), "{file} holds the secret");
    }
    let listed = bench.run(&["key", "list", "--json"]).answered(0);
    assert!(!listed.out.contains(secret), "{}", listed.out);
    assert_eq!(listed.json()[0]["holder"], "Jory (invented)");
    // No two are alike.
    let (other, _) = add(&bench, &["helper", "--for", "Jory (invented)"]);
    assert_ne!(other, id);
}

#[test]
fn keys_are_listed_and_ended() {
    let bench = Bench::with_mine();
    bench.run(&["key", "list"]).done().says(&["There are no keys."]);
    let (keeper, _) = add(&bench, &["keeper", "--for", "Perpetua (invented)"]);
    let (reader, _) = add(&bench, &["reader", "--for", "An inspector", "--until", "2099-12-31"]);
    let (operator, _) = add(&bench, &["operator", "--for", "Whoever runs it"]);
    bench.run(&["key", "end", &keeper]).done().says(&["holds no longer"]);
    bench.run(&["key", "end", &keeper]).done().says(&["was ended before"]);
    bench
        .run(&["key", "end", "zzzzzzzz"])
        .failed_with("there is no key `zzzzzzzz`", "see them with: combclear key list");
    let ran = bench.run(&["key", "list"]).done();
    for (id, said) in [(&keeper, "no: ended"), (&reader, "until 2099-12-31"), (&operator, "yes")] {
        let line = ran.out.lines().find(|line| line.contains(id.as_str())).unwrap();
        assert!(line.contains(said), "{line}");
    }
    assert!(ran.out.lines().all(|line| line.chars().count() <= 80), "{}", ran.out);
    bench
        .run(&["key", "add", "reader", "--for", "x", "--until", "2020-01-01"])
        .failed()
        .says(&["a key until 2020-01-01 would never hold", "name a day that is still to come"]);
    let ran = bench.run(&["key", "add", "gardener", "--for", "x"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.err.contains("keeper, helper, vet, reader, operator"), "{}", ran.err);
    // Neither list nor end makes a database.
    let empty = Bench::new();
    empty.run(&["key", "list"]).failed().says(&["there is no database at `combclear.db` yet"]);
    assert!(empty.files().is_empty());
}

#[test]
fn a_service_that_others_can_reach_does_not_start_without_all_that_it_needs() {
    let bench = Bench::with_mine();
    let proxy = ["serve", "--listen", "127.0.0.1:0", "--behind-proxy"];
    bench.run(&proxy).failed_with(
        "others can reach the service, and it does not know by which name",
        "say it with --name, such as --name hives.example.org",
    );
    let named = [&proxy[..], &["--name", "hives.example.org"]].concat();
    let no_key = "others can reach the service, and there is no key to let anybody in";
    let help = "make one first: combclear key add keeper --for \"A. Keeper\"";
    bench.run(&named).failed_with(no_key, help);
    bench.run(&["serve", "--listen", "127.0.0.1:0", "--keys"]).failed_with(no_key, help);
    // One that holds no longer lets nobody in either.
    let (id, _) = add(&bench, &["keeper", "--for", "Perpetua (invented)"]);
    bench.run(&["key", "end", &id]).done();
    bench.run(&named).failed_with(no_key, help);
    let (certificate, key) = certificate(&bench);
    let ran = bench.run(&[
        "serve",
        "--listen",
        "0.0.0.0:0",
        "--name",
        "hives.example.org",
        "--certificate",
        &key,
        "--certificate-key",
        &certificate,
    ]);
    ran.failed().says(&["the certificate or its key cannot be used: `key.pem`", "both are PEM files"]);
    let ran = bench.run(&["serve", "--certificate", &certificate]);
    assert_eq!(ran.code, Some(2), "{}", ran.err);
}

#[test]
fn behind_a_proxy_every_request_needs_a_key_and_a_name_that_is_meant() {
    let bench = Bench::with_mine();
    let (keeper, whole) = add(&bench, &["keeper", "--for", "Perpetua (invented)"]);
    let server = Server::start_with(
        &bench,
        &["--listen", "127.0.0.1:0", "--behind-proxy", "--name", "hives.example.org"],
    );
    assert!(server.said.contains("it asks for a key"), "{}", server.said);
    let ask = |host: &str, key: Option<&str>| {
        let key = key.map(|key| format!("authorization: Bearer {key}\r\n")).unwrap_or_default();
        let mut stream = server.connect();
        write!(stream, "GET /holdings HTTP/1.1\r\nhost: {host}\r\nconnection: close\r\n{key}\r\n").unwrap();
        crate::server::answer(stream)
    };
    assert_eq!(ask("hives.example.org", None).0, 401);
    assert_eq!(ask("hives.example.org", Some(&whole)).0, 200);
    assert_eq!(ask("hives.example.org", Some(&format!("{whole}x"))).0, 401);
    assert_eq!(ask("other.example.org", Some(&whole)).0, 403);
    // Ended beside the running service, it is refused with the next request.
    bench.run(&["key", "end", &keeper]).done();
    let (status, body) = ask("hives.example.org", Some(&whole));
    assert_eq!(status, 401, "{body}");
    server.tell("-TERM");
    let (_, _, log) = server.end();
    let secret = whole.split_once('.').unwrap().1;
    assert!(!log.contains(secret) && log.contains("answered"), "{log}");
}

/// Writes a certificate for `hives.example.org` that vouches for itself, and its key. Returns the names of the files.
fn certificate(bench: &Bench) -> (String, String) {
    let made = rcgen::generate_simple_self_signed(["hives.example.org".to_owned()]).unwrap();
    bench.write("certificate.pem", made.cert.pem());
    bench.write("key.pem", made.signing_key.serialize_pem());
    ("certificate.pem".to_owned(), "key.pem".to_owned())
}

#[test]
fn with_a_certificate_the_whole_way_is_encrypted() {
    let bench = Bench::with_mine();
    let (id_of_key, whole) = add(&bench, &["helper", "--for", "Jory (invented)"]);
    let (certificate, key) = certificate(&bench);
    let server = Server::start_with(
        &bench,
        &[
            "--listen",
            "127.0.0.1:0",
            "--name",
            "hives.example.org",
            "--certificate",
            &certificate,
            "--certificate-key",
            &key,
        ],
    );
    assert!(server.said.starts_with("Combclear answers at https://127.0.0.1:"), "{}", server.said);

    let mut trusted = RootCertStore::empty();
    trusted.add(CertificateDer::from_pem_file(bench.path(&certificate)).unwrap()).unwrap();
    let config = ClientConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .unwrap()
        .with_root_certificates(trusted)
        .with_no_client_auth();
    let config = Arc::new(config);
    let ask = |head: &str, body: &str| -> (u16, Value) {
        let name = ServerName::try_from("hives.example.org").unwrap();
        let connection = ClientConnection::new(Arc::clone(&config), name).unwrap();
        let mut stream = StreamOwned::new(connection, server.connect());
        write!(
            stream,
            "{head} HTTP/1.1\r\nhost: hives.example.org\r\nconnection: close\r\nauthorization: Bearer {whole}\r\n\
             content-type: application/json\r\ncontent-length: {}\r\n\r\n{body}",
            body.len()
        )
        .unwrap();
        let mut answer = Vec::new();
        // The end of the connection may come without a word.
        let _ = stream.read_to_end(&mut answer);
        let answer = String::from_utf8(answer).unwrap();
        let (head, body) = answer.split_once("\r\n\r\n").unwrap();
        (head.split(' ').nth(1).unwrap().parse().unwrap(), serde_json::from_str(body).unwrap())
    };
    assert_eq!(ask("GET /holdings", "").0, 200);
    let entry =
        json!({ "on": "2026-03-02", "recorded_by": "Jory", "kind": "inspection", "body": {"colony": "A1"} });
    let (status, recorded) = ask(&format!("PUT /holdings/mine/entries/{}", id(3)), &entry.to_string());
    assert_eq!((status, &recorded["key"]), (201, &json!(id_of_key)), "{recorded}");
    bench.run(&["verify"]).done().says(&["3 entries"]);

    // Whoever speaks without encryption, or says nothing, is not answered and holds up nobody.
    let _silent = TcpStream::connect(("127.0.0.1", server.port)).unwrap();
    let mut plain = server.connect();
    plain.set_read_timeout(Some(LONGEST)).unwrap();
    plain.write_all(b"GET /healthz HTTP/1.1\r\nhost: localhost\r\n\r\n").unwrap();
    let mut answer = Vec::new();
    let _ = plain.read_to_end(&mut answer);
    assert!(!answer.starts_with(b"HTTP/"), "{}", String::from_utf8_lossy(&answer));
    assert_eq!(ask("GET /holdings", "").0, 200);
}
