//! Work that takes long, off the threads that take requests in, and under a common limit.
//!
//! A question about one colony or one apiary is worked out on a blocking thread at once ([`apart`]). A report, which is whatever
//! looks at a whole holding, first waits for one of few places ([`Reports`]). So reports wait for each other, and nobody else
//! waits for them.

use std::future::Future;
use std::sync::Arc;
use std::time::Duration;

use combclear_wording::Label;
use tokio::runtime::Handle;
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio_util::sync::CancellationToken;
use tracing::Span;

use crate::body::held;
use crate::language::{speaking, words};
use crate::problem::{Fault, Problem, ProblemKind, label};

/// What requests may use up together, and how long they wait for their share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Limits {
    /// The most reports over a whole holding that are worked out at a time.
    pub reports: usize,
    /// The most bytes of bodies in memory at a time.
    pub bodies: u32,
    /// The most bytes of answers that are kept to be given again.
    pub answers: u64,
    /// How long a request waits for its share before it is told to come again.
    pub wait: Duration,
    /// How long a client may fall silent in the middle of a body.
    pub silence: Duration,
}

impl Default for Limits {
    /// As many reports as the machine has cores, but at least two; six of the largest documents.
    fn default() -> Limits {
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        Limits {
            reports: cores.max(2),
            bodies: 64 * 1024 * 1024,
            answers: 32 * 1024 * 1024,
            wait: Duration::from_secs(8),
            silence: Duration::from_secs(15),
        }
    }
}

/// The places of reports over whole holdings.
#[derive(Debug, Clone)]
pub(crate) struct Reports {
    places: Arc<Semaphore>,
    all: usize,
    wait: Duration,
}

impl Reports {
    pub(crate) fn within(limits: Limits) -> Reports {
        let all = limits.reports;
        Reports { places: Arc::new(Semaphore::new(all)), all, wait: limits.wait }
    }

    /// How many are being worked out.
    pub(crate) fn taken(&self) -> u64 {
        taken(&self.places, self.all)
    }

    /// Works out a report on a blocking thread, once there is a place. The place is free again when the work has ended.
    ///
    /// If the client is gone or the answer took too long, the work is given up where it awaits something next: the database, or
    /// [`unless_given_up`]. What it computes without a pause (a register, its gaps, a PDF) cannot be stopped: it comes to its end
    /// and keeps the place until then.
    pub(crate) async fn work_out<T: Send + 'static>(
        &self,
        work: impl Future<Output = Result<T, Problem>> + Send + 'static,
    ) -> Result<T, Problem> {
        let (detail, help) = (Label::HttpReportsBusy, Label::HttpReportsBusyHelp);
        let place = share(&self.places, 1, self.wait, detail, help).await?;
        let given_up = CancellationToken::new();
        // Cancels when the request is dropped.
        let _asked = given_up.clone().drop_guard();
        let runtime = Handle::current();
        let work = given_up.run_until_cancelled_owned(work);
        let done = apart(move || {
            let _place = place;
            runtime.block_on(work)
        });
        // Nobody is there to be told that it was given up.
        done.await?.unwrap_or_else(|| Err(Problem::internal()))
    }
}

/// How much of what requests use up together is in use.
pub(crate) fn taken(of: &Semaphore, all: usize) -> u64 {
    u64::try_from(all.saturating_sub(of.available_permits())).unwrap_or(u64::MAX)
}

/// A share of what requests use up together, or the problem that none was free in time.
pub(crate) async fn share(
    of: &Arc<Semaphore>,
    wanted: u32,
    wait: Duration,
    detail: Label,
    help: Label,
) -> Result<OwnedSemaphorePermit, Problem> {
    match tokio::time::timeout(wait, Arc::clone(of).acquire_many_owned(wanted)).await {
        Ok(Ok(share)) => Ok(share),
        // It is never closed.
        Ok(Err(_)) => Err(Problem::internal()),
        Err(_) => {
            let fault = Fault::anywhere(label(detail), label(help));
            Err(Problem::new(ProblemKind::ServiceBusy, label(detail)).with(vec![fault]))
        }
    }
}

/// Where work between two steps ends if nobody waits for it any more.
pub(crate) async fn unless_given_up() {
    tokio::task::yield_now().await;
}

/// Runs work that computes on a blocking thread, so that it does not delay other requests. What it logs and says belongs to the
/// request.
pub(crate) async fn apart<T: Send + 'static>(
    work: impl FnOnce() -> T + Send + 'static,
) -> Result<T, Problem> {
    let (span, room, spoken) = (Span::current(), held(), words());
    let work = move || {
        let _room = room;
        span.in_scope(|| speaking(spoken, work))
    };
    tokio::task::spawn_blocking(work).await.map_err(|error| {
        tracing::error!(%error, "work for a request was broken off");
        Problem::internal()
    })
}
