//! Answers that a client may keep, and how it asks whether what it kept still holds.
//!
//! Every answer to a `GET` carries an `ETag`, and may be kept only to be asked about again: a front end sends the tag back in
//! `If-None-Match` and gets `304` if nothing has changed. A tag of [`by_what_it_rests_on`] is known before the question is
//! worked out, so the question is then not worked out at all. A tag of [`by_content`] comes from the answer itself.

use std::sync::LazyLock;
use std::time::UNIX_EPOCH;

use axum::Extension;
use axum::body::Body;
use axum::extract::rejection::RawPathParamsRejection;
use axum::extract::{RawPathParams, Request};
use axum::http::header::{ACCEPT, CACHE_CONTROL, ETAG, IF_NONE_MATCH};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, Uri};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Hash;
use http_body_util::BodyExt;

use crate::app::App;
use crate::problem::Problem;
use crate::work::apart;

/// May be kept, but must be asked about before each use: the next entry, or the next day, can turn a yes into a no.
const ASK_AGAIN: HeaderValue = HeaderValue::from_static("private, no-cache");
/// Must not be kept.
const KEEP_NOTHING: HeaderValue = HeaderValue::from_static("no-store");

/// Tags answers that rest on nothing but the journal of the holding, the day, the leaflets, the laws and this program.
///
/// The tag is made before the answer. An entry recorded in between makes the answer newer than its tag, and the client asks once
/// too often; never is an old answer taken for a new one.
pub(crate) async fn by_what_it_rests_on(
    Extension(app): Extension<App>,
    path: Result<RawPathParams, RawPathParamsRejection>,
    request: Request,
    next: Next,
) -> Response {
    let holding = path.ok().and_then(|path| {
        let (_, holding) = path.iter().find(|(name, _)| *name == "holding")?;
        holding.parse().ok()
    });
    // The handler says what is wrong with a name.
    let Some(holding) = holding else { return next.run(request).await };
    let tag = match tag_of(&app, &holding, request.uri(), request.headers()).await {
        Ok(Some(tag)) => tag,
        Ok(None) => return next.run(request).await,
        Err(problem) => return problem.into_response(),
    };
    if known(request.headers()).any(|known| known == tag.as_bytes()) {
        return not_modified(tag);
    }
    let mut response = next.run(request).await;
    if response.status() == StatusCode::OK {
        response.headers_mut().insert(ETAG, tag);
    }
    response
}

/// Tags every other answer to a `GET` by its content.
pub(crate) async fn by_content(request: Request, next: Next) -> Response {
    if request.method() != Method::GET {
        return next.run(request).await;
    }
    let asked = request.headers().clone();
    let (mut parts, body) = next.run(request).await.into_parts();
    if parts.status != StatusCode::OK || parts.headers.contains_key(CACHE_CONTROL) {
        return Response::from_parts(parts, body);
    }
    let (tag, body) = if let Some(tag) = parts.headers.get(ETAG) {
        (tag.clone(), body)
    } else {
        // Every answer is made whole before it is sent, so this copies nothing.
        let Ok(whole) = body.collect().await else { return Problem::internal().into_response() };
        let bytes = whole.to_bytes();
        let hashed = bytes.clone();
        let hash = if bytes.len() > HASHED_APART {
            apart(move || Hash::of_content(&hashed)).await
        } else {
            Ok(Hash::of_content(&hashed))
        };
        let Ok(tag) = hash.and_then(weak) else { return Problem::internal().into_response() };
        parts.headers.insert(ETAG, tag.clone());
        (tag, Body::from(bytes))
    };
    if names_in(&asked, &tag) {
        return not_modified(tag);
    }
    Response::from_parts(parts, body)
}

/// A longer answer is hashed on a blocking thread. In bytes: some tenths of a millisecond.
const HASHED_APART: usize = 64 * 1024;

/// Says of every answer whether it may be kept.
pub(crate) async fn say_whether_to_keep(request: Request, next: Next) -> Response {
    let reading = matches!(*request.method(), Method::GET | Method::HEAD);
    let mut response = next.run(request).await;
    let keeps = matches!(response.status(), StatusCode::OK | StatusCode::NOT_MODIFIED);
    let said = if reading && keeps { ASK_AGAIN } else { KEEP_NOTHING };
    response.headers_mut().entry(CACHE_CONTROL).or_insert(said);
    response
}

/// The header of an answer that must not be kept, although it is a success.
pub(crate) fn not_kept() -> [(HeaderName, HeaderValue); 1] {
    [(CACHE_CONTROL, KEEP_NOTHING)]
}

/// Whether the client has the answer with this tag.
pub(crate) fn names_in(headers: &HeaderMap, tag: &HeaderValue) -> bool {
    let tag = tag.as_bytes();
    known(headers).any(|known| known == b"*" || opaque(known) == opaque(tag))
}

/// The tags of the answers that the client has kept (RFC 9110, section 13.1.2).
fn known(headers: &HeaderMap) -> impl Iterator<Item = &[u8]> {
    let lists = headers.get_all(IF_NONE_MATCH).iter();
    lists.flat_map(|list| list.as_bytes().split(|byte| *byte == b',').map(<[u8]>::trim_ascii))
}

/// A tag without the mark of a weak one: `If-None-Match` compares weakly.
fn opaque(tag: &[u8]) -> &[u8] {
    tag.strip_prefix(b"W/").unwrap_or(tag)
}

fn not_modified(tag: HeaderValue) -> Response {
    (StatusCode::NOT_MODIFIED, [(ETAG, tag)]).into_response()
}

/// `None` for a holding without entries.
async fn tag_of(
    app: &App,
    holding: &HoldingName,
    asked: &Uri,
    headers: &HeaderMap,
) -> Result<Option<HeaderValue>, Problem> {
    let Some((_, head)) = app.holdings.journal().tip(holding).await? else { return Ok(None) };
    let accept = headers.get_all(ACCEPT).iter().map(|accept| String::from_utf8_lossy(accept.as_bytes()));
    let accept = accept.collect::<Vec<_>>().join(",");
    let (rules, today) = (app.rules(), app.clock.today());
    let rests_on = [BUILD.as_str(), &format!("{rules} {holding} {head} {today} {asked}"), &accept].join("\n");
    weak(Hash::of_content(rests_on.as_bytes())).map(Some)
}

/// Weak, since the same answer may be sent compressed.
fn weak(of: Hash) -> Result<HeaderValue, Problem> {
    HeaderValue::from_str(&format!("W/\"{of}\"")).map_err(|_| Problem::internal())
}

/// What tells this program from an earlier one that may have answered otherwise: its file. Without one that can be looked at,
/// nothing kept from another run counts.
static BUILD: LazyLock<String> = LazyLock::new(|| {
    let file = std::env::current_exe().and_then(std::fs::metadata);
    let made = file.and_then(|file| Ok((file.len(), file.modified()?)));
    let made = made.map(|(length, at)| (length, at.duration_since(UNIX_EPOCH).unwrap_or_default()));
    format!("{made:?} {} {}", env!("CARGO_PKG_VERSION"), if made.is_ok() { 0 } else { std::process::id() })
});
