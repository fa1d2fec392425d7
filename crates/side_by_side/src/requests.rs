//! One question over HTTP beside a bare handler that sends the same bytes.

use std::time::{Duration, Instant};

use anyhow::{Context, ensure};
use axum::body::Bytes;
use http_body_util::{BodyExt, Full};
use hyper::client::conn::http1::{SendRequest, handshake};
use hyper::header::{ETAG, HOST, HeaderMap, HeaderValue, IF_NONE_MATCH};
use hyper::{Method, Request, StatusCode};
use hyper_util::rt::TokioIo;
use tokio::net::TcpStream;

use crate::children::{Server, TAG};
use crate::registers::{address, write};
use crate::table::Table;
use crate::timing::middle;

/// How long each server is asked.
const LONG: Duration = Duration::from_secs(3);
/// Connections at a time.
const CONNECTIONS: [usize; 2] = [1, 32];
const QUESTION: &str = "/holdings/holding-0/colonies/C0-0/supering";

pub(crate) fn measure(table: &mut Table) -> anyhow::Result<()> {
    let folder = tempfile::tempdir()?;
    let address = address(folder.path(), "requests.db");
    tokio::runtime::Runtime::new()?.block_on(async {
        write(&address, 1, 560).await?;
        let ours = Server::start(&["service", &address])?;
        let (status, headers, bytes) = Connection::to(&ours.address).await?.ask(QUESTION, None).await?;
        ensure!(status == StatusCode::OK, "{status}: {}", String::from_utf8_lossy(&bytes));
        let tag = headers.get(ETAG).context("the answer has no tag")?.to_str()?.to_owned();
        let same = folder.path().join("answer.json");
        std::fs::write(&same, &bytes)?;
        let bare = Server::start(&["bare", same.to_str().context("the path is no text")?])?;
        let (_, _, sent) = Connection::to(&bare.address).await?.ask("/", None).await?;
        ensure!(sent == bytes, "the bare handler sends other bytes");
        for connections in CONNECTIONS {
            for (tag, bare_tag) in [(None, None), (Some(tag.as_str()), Some(TAG))] {
                let ours = asked(&ours, QUESTION, tag, connections).await?;
                let theirs = asked(&bare, "/", bare_tag, connections).await?;
                let kind = if tag.is_some() { "with its tag (304)" } else { "whole (200)" };
                let what = format!("`GET supering`, {} bytes, {kind}, {connections} at a time", bytes.len());
                let other = "a bare handler of the same bytes";
                table.time(&format!("{what}: processor"), ours.processor, other, theirs.processor);
                table.time(&format!("{what}: median"), ours.latency, other, theirs.latency);
            }
        }
        Ok(())
    })
}

struct Asked {
    /// Processor time of the server for each request.
    processor: Duration,
    /// The median from sending to the last byte.
    latency: Duration,
}

async fn asked(
    server: &Server,
    path: &'static str,
    tag: Option<&str>,
    connections: usize,
) -> anyhow::Result<Asked> {
    let wanted = if tag.is_some() { StatusCode::NOT_MODIFIED } else { StatusCode::OK };
    let mut all = Vec::new();
    for _ in 0..connections {
        all.push(Connection::to(&server.address).await?);
    }
    // Hot: each connection has been used.
    for connection in &mut all {
        ensure!(connection.ask(path, tag).await?.0 == wanted, "the answer is not {wanted}");
    }
    let before = server.processor_time()?;
    let until = Instant::now() + LONG;
    let mut tasks = tokio::task::JoinSet::new();
    for mut connection in all {
        let tag = tag.map(str::to_owned);
        tasks.spawn(async move {
            let mut times = Vec::new();
            while Instant::now() < until {
                let began = Instant::now();
                let (status, ..) = connection.ask(path, tag.as_deref()).await?;
                times.push(began.elapsed());
                ensure!(status == wanted, "the answer is not {wanted}");
            }
            Ok(times)
        });
    }
    let mut times = Vec::new();
    while let Some(done) = tasks.join_next().await {
        times.extend(done??);
    }
    let count = u32::try_from(times.len())?;
    ensure!(count > 0, "nothing was answered");
    let processor = Duration::from_secs_f64(server.processor_time()? - before) / count;
    Ok(Asked { processor, latency: middle(&mut times) })
}

/// A connection that is kept.
pub(crate) struct Connection {
    sender: SendRequest<Full<Bytes>>,
    host: HeaderValue,
}

impl Connection {
    pub(crate) async fn to(address: &str) -> anyhow::Result<Connection> {
        let stream = TcpStream::connect(address).await?;
        stream.set_nodelay(true)?;
        let (sender, connection) = handshake(TokioIo::new(stream)).await?;
        tokio::spawn(connection);
        Ok(Connection { sender, host: HeaderValue::from_str(address)? })
    }

    pub(crate) async fn ask(
        &mut self,
        path: &str,
        tag: Option<&str>,
    ) -> anyhow::Result<(StatusCode, HeaderMap, Bytes)> {
        let mut request = Request::builder().method(Method::GET).uri(path).header(HOST, &self.host);
        if let Some(tag) = tag {
            request = request.header(IF_NONE_MATCH, tag);
        }
        self.send(request.body(Full::default())?).await
    }

    pub(crate) async fn put(&mut self, path: &str, body: String) -> anyhow::Result<StatusCode> {
        let request = Request::builder().method(Method::PUT).uri(path).header(HOST, &self.host);
        let request = request.header("content-type", "application/json");
        Ok(self.send(request.body(Full::from(body))?).await?.0)
    }

    async fn send(
        &mut self,
        request: Request<Full<Bytes>>,
    ) -> anyhow::Result<(StatusCode, HeaderMap, Bytes)> {
        self.sender.ready().await?;
        let (head, body) = self.sender.send_request(request).await?.into_parts();
        Ok((head.status, head.headers, body.collect().await?.to_bytes()))
    }
}
