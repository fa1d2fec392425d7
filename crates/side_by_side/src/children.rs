//! This program as a child of itself: what is measured from outside.

use std::hint::black_box;
use std::io::{BufRead, BufReader, Write};
use std::process::{Child, Command, Stdio};
use std::sync::Arc;
use std::time::Instant as Moment;

use anyhow::{Context, ensure};
use axum::Router;
use axum::http::{HeaderMap, StatusCode, header};
use axum::response::IntoResponse;
use axum::routing::get;
use combclear_bench::scene::leaflets;
use combclear_domain::facts::history::History;
use combclear_domain::{Day, Instant};
use combclear_service::{App, Clock, Patience, serve};
use combclear_store::Holdings;
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use procfs::process::Process;
use serde_json::{Value, json};
use tokio::net::TcpListener;

use crate::registers::holding;
use crate::timing::median;

/// The tag that the bare handler sends and knows.
pub(crate) const TAG: &str = "W/\"0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef\"";

/// A clock that stands still: every answer is for the same day.
struct Still(Instant);

impl Clock for Still {
    fn now(&self) -> Instant {
        self.0
    }

    fn today(&self) -> Day {
        Day::new(2026, 8, 29).unwrap_or(Day::LAST)
    }
}

/// The service on a database.
pub(crate) fn service(address: &str) -> anyhow::Result<()> {
    tokio::runtime::Runtime::new()?.block_on(async {
        let holdings = Arc::new(Holdings::new(combclear_store::open(address).await?));
        let now = Still("2026-08-29T08:00:00.000Z".parse()?);
        let laws = combclear_leaflets::laws().map_err(|faults| anyhow::anyhow!("{faults}"))?;
        let app = App::new(holdings, Arc::new(leaflets().clone()), Arc::new(laws.clone()), Arc::new(now));
        let listener = listen().await?;
        serve(listener, None, app, Patience::default(), std::future::pending()).await;
        Ok(())
    })
}

/// A handler that sends the bytes of a file and does nothing else, apart from knowing its tag.
pub(crate) fn bare(file: &str) -> anyhow::Result<()> {
    let bytes = axum::body::Bytes::from(std::fs::read(file)?);
    tokio::runtime::Runtime::new()?.block_on(async {
        let answer = move |headers: HeaderMap| async move {
            if headers.get(header::IF_NONE_MATCH).is_some_and(|known| known == TAG) {
                return (StatusCode::NOT_MODIFIED, [(header::ETAG, TAG)]).into_response();
            }
            ([(header::CONTENT_TYPE, "application/json"), (header::ETAG, TAG)], bytes).into_response()
        };
        axum::serve(listen().await?, Router::new().route("/", get(answer))).await?;
        Ok(())
    })
}

async fn listen() -> anyhow::Result<TcpListener> {
    let listener = TcpListener::bind("127.0.0.1:0").await?;
    writeln!(std::io::stdout(), "{}", listener.local_addr()?)?;
    Ok(listener)
}

/// Opens a database, asks about a colony of each holding, and says how long that took and what it keeps in memory.
pub(crate) fn first_answer(address: &str, count: usize) -> anyhow::Result<()> {
    let leaflets = leaflets();
    let words = Words::english();
    let before = resident()?;
    let runtime = tokio::runtime::Runtime::new()?;
    let began = Moment::now();
    let said = runtime.block_on(async {
        let holdings = Holdings::new(combclear_store::open(address).await?);
        let (colony, on) = ("C0-0".parse()?, Day::new(2026, 8, 29).context("no such day")?);
        let mut last = None;
        for number in 0..count {
            let Some(found) = holdings.snapshot(&holding(number)?).await? else { continue };
            black_box(SuperingReport::ask(words, &found, leaflets, &colony, on));
            last = Some(found);
        }
        let start = began.elapsed();
        let bytes = resident()?.saturating_sub(before);
        let Some(found) = last else {
            return Ok::<Value, anyhow::Error>(json!({ "start_s": start.as_secs_f64() }));
        };
        let answer = median(|| SuperingReport::ask(words, &found, leaflets, &colony, on));
        let courses = History::of(&found, leaflets, &colony).courses.len();
        Ok(json!({
            "start_s": start.as_secs_f64(),
            "bytes": bytes,
            "answer_s": answer.as_secs_f64(),
            "courses": courses,
        }))
    })?;
    writeln!(std::io::stdout(), "{said}")?;
    Ok(())
}

/// Bytes of memory that this process has.
fn resident() -> anyhow::Result<u64> {
    Ok(Process::myself()?.statm()?.resident * procfs::page_size())
}

/// What a child says, once it is done.
pub(crate) fn output(arguments: &[&str]) -> anyhow::Result<String> {
    let done = Command::new(std::env::current_exe()?).args(arguments).stderr(Stdio::inherit()).output()?;
    ensure!(done.status.success(), "a child failed");
    Ok(String::from_utf8(done.stdout)?)
}

/// The same as JSON.
pub(crate) fn said(output: &str) -> anyhow::Result<Value> {
    Ok(serde_json::from_str(output)?)
}

/// A server that ends with its handle.
pub(crate) struct Server {
    child: Child,
    /// Where it listens.
    pub(crate) address: String,
}

impl Server {
    pub(crate) fn start(arguments: &[&str]) -> anyhow::Result<Server> {
        let mut command = Command::new(std::env::current_exe()?);
        let mut child = command.args(arguments).stdout(Stdio::piped()).spawn()?;
        let mut address = String::new();
        let out = child.stdout.take().context("it has no output")?;
        BufReader::new(out).read_line(&mut address)?;
        Ok(Server { child, address: address.trim().to_owned() })
    }

    /// Seconds of processor time that it has taken so far, of all its threads.
    pub(crate) fn processor_time(&self) -> anyhow::Result<f64> {
        let stat = Process::new(i32::try_from(self.child.id())?)?.stat()?;
        let ticks = f64::from(u32::try_from(stat.utime + stat.stime)?);
        Ok(ticks / f64::from(u32::try_from(procfs::ticks_per_second())?))
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        // It may have ended by itself.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}
