//! Bodies of requests: how many bytes of them are in memory at a time, and how long they may take to arrive.

use std::error::Error;
use std::sync::Arc;
use std::time::Duration;

use axum::Extension;
use axum::body::{Body, Bytes, HttpBody, to_bytes};
use axum::extract::Request;
use axum::http::StatusCode;
use axum::http::header::CONTENT_LENGTH;
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use combclear_wording::Label;
use http_body_util::LengthLimitError;
use tokio::sync::{OwnedSemaphorePermit, Semaphore};
use tokio::time::Instant;
use tower_http::timeout::{TimeoutBody, TimeoutError};

use crate::app::App;
use crate::problem::{Problem, ProblemKind, label};
use crate::work::{Limits, share, taken};

/// Longest upload, waiting for room included. Shorter than the limit on answers, so that the answer always says what became of it.
const UPLOAD_MOST: Duration = Duration::from_secs(29);

/// The bytes that bodies may take up together.
#[derive(Debug, Clone)]
pub(crate) struct Room {
    bytes: Arc<Semaphore>,
    all: u32,
    wait: Duration,
}

impl Room {
    pub(crate) fn within(limits: Limits) -> Room {
        let all = limits.bodies;
        let bytes = Arc::new(Semaphore::new(usize::try_from(all).unwrap_or(Semaphore::MAX_PERMITS)));
        Room { bytes, all, wait: limits.wait }
    }

    /// How many bytes of it are taken.
    pub(crate) fn taken(&self) -> u64 {
        taken(&self.bytes, usize::try_from(self.all).unwrap_or(usize::MAX))
    }

    async fn take(&self, bytes: u32) -> Result<OwnedSemaphorePermit, Problem> {
        let (detail, help) = (Label::HttpBodiesBusy, Label::HttpBodiesBusyHelp);
        share(&self.bytes, bytes.min(self.all), self.wait, detail, help).await
    }
}

/// When a request came in.
#[derive(Debug, Clone, Copy)]
struct Since(Instant);

tokio::task_local! {
    static HELD: Arc<OwnedSemaphorePermit>;
}

/// Takes room for the body of a request before any of it is read: for as many bytes as it announces, or else for the `MOST` that
/// its path takes. A body that stops arriving is let go. The room is free again once the request is answered and no work holds what was in the body.
pub(crate) async fn take_room<const MOST: usize>(
    Extension(app): Extension<App>,
    request: Request,
    next: Next,
) -> Response {
    let announced = request.body().size_hint().exact();
    if announced == Some(0) {
        return next.run(request).await;
    }
    // It hides the length, so it comes after.
    let mut request = request.map(|body| Body::new(TimeoutBody::new(app.silence, body)));
    request.extensions_mut().insert(Since(Instant::now()));
    let bytes = announced.and_then(|bytes| usize::try_from(bytes).ok()).unwrap_or(MOST).min(MOST);
    match app.room.take(u32::try_from(bytes).unwrap_or(u32::MAX)).await {
        Ok(room) => HELD.scope(Arc::new(room), next.run(request)).await,
        Err(problem) => problem.into_response(),
    }
}

/// The room that the body of this request takes, for work that goes on when the request is dropped.
pub(crate) fn held() -> Option<Arc<OwnedSemaphorePermit>> {
    HELD.try_with(Arc::clone).ok()
}

/// Why a body was not read.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Unread {
    /// It is larger than its path takes.
    TooLarge,
    /// It stopped arriving.
    Stalled,
    /// It arrived, but not in time.
    TooSlow,
    /// The connection broke.
    BrokenOff,
    /// It is shorter than it was announced.
    Shorter { announced: usize, arrived: usize },
}

impl Unread {
    /// The problem, where it is the same for every body; a body that is too large is described by its path.
    pub(crate) fn problem(self) -> Problem {
        let (kind, detail) = match self {
            Unread::TooLarge => return Problem::behind(StatusCode::PAYLOAD_TOO_LARGE),
            Unread::BrokenOff | Unread::Shorter { .. } => {
                return Problem::new(ProblemKind::UnreadableBody, label(Label::HttpBodyNotWhole));
            }
            Unread::Stalled => (ProblemKind::StalledBody, Label::HttpUploadStalled),
            Unread::TooSlow => (ProblemKind::Timeout, Label::HttpUploadTooSlow),
        };
        Problem::nothing_recorded(kind, label(detail)).at_body(label(Label::HttpUploadTooSlowHelp))
    }
}

/// Reads a body, up to the limit of its path.
pub(crate) async fn read_whole(request: Request) -> Result<Bytes, Unread> {
    let headers = request.headers();
    let announced =
        headers.get(CONTENT_LENGTH).and_then(|length| length.to_str().ok()?.parse::<usize>().ok());
    let since = request.extensions().get().map_or_else(Instant::now, |Since(since)| *since);
    let body: Body = request.into_body();
    let arrived = tokio::time::timeout_at(since + UPLOAD_MOST, to_bytes(body, usize::MAX));
    let Ok(arrived) = arrived.await else { return Err(Unread::TooSlow) };
    let bytes = arrived.map_err(|error| why(&error))?;
    match announced {
        Some(announced) if announced != bytes.len() => {
            Err(Unread::Shorter { announced, arrived: bytes.len() })
        }
        _ => Ok(bytes),
    }
}

/// Which layer ended the read.
fn why(error: &axum::Error) -> Unread {
    let mut cause = Some(error as &dyn Error);
    while let Some(error) = cause {
        if error.is::<LengthLimitError>() {
            return Unread::TooLarge;
        }
        if error.is::<TimeoutError>() {
            return Unread::Stalled;
        }
        cause = error.source();
    }
    Unread::BrokenOff
}
