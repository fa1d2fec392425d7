//! Answers that a client may keep, and how it asks whether what it kept still holds.
//!
//! Every answer to a `GET` carries an `ETag`, and may be kept only to be asked about again: a front end sends the tag back in
//! `If-None-Match` and gets `304` if nothing has changed. A tag of [`by_what_it_rests_on`] is known before the question is
//! worked out, so the question is then not worked out at all; nor is it if the same question was answered before. A tag of
//! [`by_content`] comes from the answer itself.

use std::convert::Infallible;
use std::sync::{Arc, LazyLock};
use std::time::UNIX_EPOCH;

use axum::Extension;
use axum::body::Body;
use axum::extract::rejection::RawPathParamsRejection;
use axum::extract::{FromRequestParts, RawPathParams, Request};
use axum::http::header::{ACCEPT, CACHE_CONTROL, ETAG, IF_NONE_MATCH};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, Uri};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use combclear_domain::Day;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Hash;
use http_body_util::BodyExt;

use crate::app::App;
use crate::language::words;
use crate::problem::Problem;
use crate::work::apart;

/// May be kept, but must be asked about before each use: the next entry, or the next day, can turn a yes into a no.
const ASK_AGAIN: HeaderValue = HeaderValue::from_static("private, no-cache");
/// Must not be kept.
const KEEP_NOTHING: HeaderValue = HeaderValue::from_static("no-store");

/// Tags answers that rest on nothing but the journal of the holding, the day, the leaflets, the laws and this program; and gives an
/// answer again that was given to the same question, as long as all of these are the same.
///
/// The tag and the answer are made from the same state of the holding.
pub(crate) async fn by_what_it_rests_on(
    Extension(app): Extension<App>,
    path: Result<RawPathParams, RawPathParamsRejection>,
    mut request: Request,
    next: Next,
) -> Response {
    let holding = path.ok().and_then(|path| {
        let (_, holding) = path.iter().find(|(name, _)| *name == "holding")?;
        holding.parse::<HoldingName>().ok()
    });
    // The handler says what is wrong with a name.
    let Some(holding) = holding else { return next.run(request).await };
    let at_hand = match app.holdings.snapshot(&holding).await {
        Ok(Some(at_hand)) => at_hand,
        Ok(None) => return next.run(request).await,
        Err(error) => return Problem::from(error).into_response(),
    };
    let today = app.clock.today();
    let rests_on = what_it_rests_on(&app, &at_hand, today, request.uri(), request.headers());
    let Ok(tag) = weak(rests_on) else { return Problem::internal().into_response() };
    if known(request.headers().get_all(IF_NONE_MATCH)).any(|known| known == tag.as_bytes()) {
        return not_modified(tag);
    }
    // The answer to `HEAD` has no body that could be given again.
    let is_whole = request.method() == Method::GET;
    if is_whole && let Some(kept) = app.kept.get(&rests_on) {
        return kept;
    }
    request.extensions_mut().insert(AtHand(at_hand));
    let mut response = next.run(request).await;
    // If the day has changed on the way, nobody can say of which of the two the answer is.
    if response.status() != StatusCode::OK || app.clock.today() != today {
        return response;
    }
    response.headers_mut().insert(ETAG, tag);
    if is_whole { app.kept.keep(rests_on, response).await } else { response }
}

/// The state of the holding that the question at hand is about.
#[derive(Clone)]
struct AtHand(Arc<Holding>);

/// The service, with the state of the holding from which the tag of the answer was made.
pub(crate) struct Asked(pub(crate) App);

impl FromRequestParts<App> for Asked {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Asked, Infallible> {
        let at_hand = parts.extensions.get::<AtHand>().map(|AtHand(holding)| Arc::clone(holding));
        Ok(Asked(app.clone().about(at_hand)))
    }
}

/// Tags every other answer to a `GET` by its content.
pub(crate) async fn by_content(request: Request, next: Next) -> Response {
    if request.method() != Method::GET {
        return next.run(request).await;
    }
    let asked: Vec<HeaderValue> = request.headers().get_all(IF_NONE_MATCH).iter().cloned().collect();
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
pub(crate) fn say_whether_to_keep(asked: &Method, mut response: Response) -> Response {
    let reading = matches!(*asked, Method::GET | Method::HEAD);
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
pub(crate) fn names_in<'a>(asked: impl IntoIterator<Item = &'a HeaderValue>, tag: &HeaderValue) -> bool {
    let tag = tag.as_bytes();
    known(asked).any(|known| known == b"*" || opaque(known) == opaque(tag))
}

/// The tags of the answers that the client has kept (RFC 9110, section 13.1.2).
fn known<'a>(asked: impl IntoIterator<Item = &'a HeaderValue>) -> impl Iterator<Item = &'a [u8]> {
    asked.into_iter().flat_map(|list| list.as_bytes().split(|byte| *byte == b',').map(<[u8]>::trim_ascii))
}

/// A tag without the mark of a weak one: `If-None-Match` compares weakly.
fn opaque(tag: &[u8]) -> &[u8] {
    tag.strip_prefix(b"W/").unwrap_or(tag)
}

fn not_modified(tag: HeaderValue) -> Response {
    (StatusCode::NOT_MODIFIED, [(ETAG, tag)]).into_response()
}

fn what_it_rests_on(app: &App, at_hand: &Holding, today: Day, asked: &Uri, headers: &HeaderMap) -> Hash {
    let mut rests_on = Vec::with_capacity(512);
    // Each part that a client writes ends with what stands in none of them.
    let parts = [
        BUILD.as_bytes(),
        words().language().as_bytes(),
        at_hand.name().as_str().as_bytes(),
        asked.path_and_query().map_or(&b""[..], |asked| asked.as_str().as_bytes()),
    ];
    for part in parts.into_iter().chain(headers.get_all(ACCEPT).iter().map(HeaderValue::as_bytes)) {
        rests_on.extend_from_slice(part);
        rests_on.push(b'\n');
    }
    let head = at_hand.tip().map_or(Hash::GENESIS, |(_, head)| head);
    rests_on.extend_from_slice(&app.rules().0);
    rests_on.extend_from_slice(&head.0);
    rests_on.extend_from_slice(today.to_string().as_bytes());
    Hash::of_content(&rests_on)
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
