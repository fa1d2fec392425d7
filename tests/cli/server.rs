//! A server on a free loopback port, and a plain connection to it.

use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::process::{Child, ChildStdout, Stdio};
use std::thread::JoinHandle;
use std::time::{Duration, Instant};

use serde_json::Value;

use crate::bench::Bench;

/// Time limit for every step.
pub(crate) const LONGEST: Duration = Duration::from_secs(30);

/// A server that ends with the test.
pub(crate) struct Server {
    pub(crate) child: Child,
    /// Kept open, so that the server can continue printing.
    out: BufReader<ChildStdout>,
    /// Read all the time, so that the server can continue logging.
    log: Option<JoinHandle<String>>,
    pub(crate) port: u16,
    pub(crate) said: String,
}

impl Server {
    pub(crate) fn start(bench: &Bench) -> Server {
        Server::start_with(bench, &["--listen", "127.0.0.1:0"])
    }

    pub(crate) fn start_with(bench: &Bench, arguments: &[&str]) -> Server {
        let mut command = bench.command(&[&["serve"], arguments].concat());
        let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let mut out = BufReader::new(child.stdout.take().unwrap());
        let mut log = child.stderr.take().unwrap();
        let log = std::thread::spawn(move || {
            let mut text = String::new();
            log.read_to_string(&mut text).unwrap();
            text
        });
        let mut said = String::new();
        out.read_line(&mut said).unwrap();
        let port = said
            .split_once("://127.0.0.1:")
            .and_then(|(_, rest)| rest.split_once([' ', ';']))
            .and_then(|(port, _)| port.parse().ok());
        let Some(port) = port else {
            child.kill().unwrap();
            panic!("it did not say where it answers: `{said}`");
        };
        Server { child, out, log: Some(log), port, said }
    }

    pub(crate) fn connect(&self) -> TcpStream {
        let stream = TcpStream::connect(("127.0.0.1", self.port)).unwrap();
        stream.set_read_timeout(Some(LONGEST)).unwrap();
        stream
    }

    /// Sends a request on a connection of its own. Returns status and body.
    pub(crate) fn ask(&self, head: &str, body: &str) -> (u16, String) {
        let mut stream = self.connect();
        write!(stream, "{}{body}", request(head, body.len())).unwrap();
        answer(stream)
    }

    pub(crate) fn get(&self, path: &str) -> (u16, Value) {
        let (status, body) = self.ask(&format!("GET {path}"), "");
        (status, serde_json::from_str(&body).unwrap_or_else(|error| panic!("{error}: {body}")))
    }

    #[cfg(unix)]
    pub(crate) fn tell(&self, signal: &str) {
        let kill = std::process::Command::new("kill").args([signal, &self.child.id().to_string()]).status();
        assert!(kill.unwrap().success());
    }

    /// Waits for its end. Returns the exit code, further output, and the log.
    pub(crate) fn end(mut self) -> (Option<i32>, String, String) {
        let begun = Instant::now();
        while self.child.try_wait().unwrap().is_none() {
            if begun.elapsed() > LONGEST {
                self.child.kill().unwrap();
                panic!("it does not come to its end");
            }
            std::thread::sleep(Duration::from_millis(10));
        }
        let mut out = String::new();
        self.out.read_to_string(&mut out).unwrap();
        let log = self.log.take().unwrap().join().unwrap();
        (self.child.wait().unwrap().code(), out, log)
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // Still running only if a test failed.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The head of a request on a connection of its own.
pub(crate) fn request(head: &str, length: usize) -> String {
    format!(
        "{head} HTTP/1.1\r\nhost: localhost\r\nconnection: close\r\ncontent-type: application/json\r\n\
         content-length: {length}\r\n\r\n"
    )
}

/// Status and body.
pub(crate) fn answer(mut stream: TcpStream) -> (u16, String) {
    let mut answer = String::new();
    stream.read_to_string(&mut answer).unwrap();
    let (head, body) = answer.split_once("\r\n\r\n").unwrap_or_else(|| panic!("no answer: `{answer}`"));
    let status = head.split_whitespace().nth(1).unwrap().parse().unwrap();
    (status, body.to_owned())
}
