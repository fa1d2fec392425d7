//! Who may do what, where keys are asked for: on a loopback address nobody is asked, elsewhere everybody.
//!
//! A request without a key that holds learns nothing but that: not which paths there are, nor which holdings. A key is for one holding;
//! that another is asked about is decided before anybody looks whether there is such a one.

use std::num::NonZeroU32;
use std::sync::Arc;

use axum::extract::{FromRequestParts, MatchedPath, RawPathParams, Request};
use axum::http::header::{AUTHORIZATION, WWW_AUTHENTICATE};
use axum::http::request::Parts;
use axum::http::{HeaderMap, HeaderValue, Method};
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::key::{Deed, Key, KeyId, NotAllowed, Role, Stamp};
use combclear_domain::journal::{Draft, Hash};
use combclear_wording::{Label, http};
use governor::{DefaultKeyedRateLimiter, Quota};
use tracing::Span;

use crate::app::App;
use crate::language::words;
use crate::problem::{Fault, Problem, ProblemKind, Sent, label};

/// How many requests a key may make.
#[derive(Debug, Clone, Copy)]
pub struct Rate {
    /// In a second, in the long run.
    pub per_second: NonZeroU32,
    /// At once, after a pause.
    pub at_once: NonZeroU32,
}

impl Default for Rate {
    fn default() -> Rate {
        let number = |number| NonZeroU32::new(number).unwrap_or(NonZeroU32::MIN);
        Rate { per_second: number(50), at_once: number(500) }
    }
}

/// Who is let in.
#[derive(Clone)]
pub(crate) enum Door {
    /// Everybody: only this machine can reach the service.
    Open,
    /// Whoever has a key. All without one that holds share one rate.
    Keys(Arc<DefaultKeyedRateLimiter<Option<KeyId>>>),
}

impl Door {
    pub(crate) fn with_keys(rate: Rate) -> Door {
        let quota = Quota::per_second(rate.per_second).allow_burst(rate.at_once);
        Door::Keys(Arc::new(DefaultKeyedRateLimiter::keyed(quota)))
    }

    pub(crate) fn asks_for_keys(&self) -> bool {
        matches!(self, Door::Keys(_))
    }
}

/// Who makes a request.
#[derive(Debug, Clone)]
pub(crate) struct Caller(Option<Arc<Key>>);

impl Caller {
    /// Whether it may know of this holding.
    pub(crate) fn may_know_of(&self, holding: &HoldingName) -> bool {
        // The operator begins holdings, and must not begin one twice.
        self.0.as_ref().is_none_or(|key| key.holding.as_ref().is_none_or(|own| own == holding))
    }

    /// What the holder of the key is to the holding, where a key is asked for.
    pub(crate) fn role(&self) -> Option<Role> {
        self.0.as_ref().map(|key| key.role)
    }

    /// When an entry is recorded, and with which key.
    pub(crate) fn stamp(&self, app: &App) -> Stamp {
        Stamp { at: app.clock.now(), key: self.0.as_ref().map(|key| key.id) }
    }

    /// Checks that it may record these.
    pub(crate) fn may_record(&self, drafts: &[Draft], sent: Sent) -> Result<(), Problem> {
        let Some(key) = &self.0 else { return Ok(()) };
        let refused = drafts.iter().enumerate().find_map(|(index, draft)| {
            let why = key.role.may_record(draft).err()?;
            Some((index, why))
        });
        refused.map_or(Ok(()), |(index, why)| {
            let pointer = match why {
                NotAllowed::Records => "",
                NotAllowed::Corrects => "/corrects",
                NotAllowed::OtherKind { .. } => "/kind",
            };
            let detail = http::not_allowed_entry(words(), key.role, why);
            let fault =
                Fault::at(sent.pointer(index, pointer), detail.clone(), label(Label::HttpNotAllowedHelp));
            Err(Problem::nothing_recorded(ProblemKind::NotAllowed, &detail).with(vec![fault]))
        })
    }
}

impl FromRequestParts<App> for Caller {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, app: &App) -> Result<Caller, Problem> {
        match parts.extensions.get::<Caller>() {
            Some(caller) => Ok(caller.clone()),
            None if app.door.asks_for_keys() => {
                Err(Problem::new(ProblemKind::NoKey, label(Label::HttpNoKey)))
            }
            None => Ok(Caller(None)),
        }
    }
}

/// What a route asks of whoever calls it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Asks {
    Nothing,
    AnyKey,
    KeyFor(Deed),
}

/// By the method and the path as it is registered. What is not named here asks for some key at least.
fn asked(method: &Method, path: Option<&str>) -> Asks {
    let reads = method == Method::GET || method == Method::HEAD;
    match path {
        Some(
            "/" | "/page/{file}" | "/docs" | "/docs/{file}" | "/openapi.json" | "/healthz" | "/readyz"
            | "/problems/{slug}",
        ) if reads => Asks::Nothing,
        Some("/metrics") => Asks::KeyFor(Deed::Watch),
        Some("/holdings/{holding}") => Asks::KeyFor(Deed::Begin),
        Some(path) if path.starts_with("/holdings/{holding}/") => {
            Asks::KeyFor(if reads { Deed::Read } else { Deed::Add })
        }
        _ => Asks::AnyKey,
    }
}

/// Lets a request in, or says why not.
pub(crate) async fn let_in(app: &App, request: Request) -> Result<Request, Problem> {
    let Door::Keys(rates) = &app.door else { return Ok(request) };
    let path = request.extensions().get::<MatchedPath>().map(MatchedPath::as_str);
    let asks = asked(request.method(), path);
    if asks == Asks::Nothing {
        return Ok(request);
    }
    let key = match known(app, request.headers()).await {
        Ok(key) => key,
        Err(problem) => {
            let within = rates.check_key(&None).is_ok();
            return Err(if within { problem } else { too_many() });
        }
    };
    Span::current().record("key", key.id.as_str());
    if rates.check_key(&Some(key.id)).is_err() {
        return Err(too_many());
    }
    let (mut parts, body) = request.into_parts();
    may(&key, asks, &mut parts).await?;
    parts.extensions.insert(Caller(Some(Arc::new(key))));
    Ok(Request::from_parts(parts, body))
}

/// The key of a request, if it holds today.
async fn known(app: &App, headers: &HeaderMap) -> Result<Key, Problem> {
    let nobody = || Problem::new(ProblemKind::NoKey, label(Label::HttpNoKey));
    let sent = headers.get(AUTHORIZATION).and_then(|sent| sent.to_str().ok()).ok_or_else(nobody)?;
    // RFC 6750, section 2.1; the name of the scheme in any case (RFC 9110, section 11.1).
    let (scheme, token) = sent.split_once(' ').ok_or_else(nobody)?;
    let (id, secret) = token.trim().split_once('.').ok_or_else(nobody)?;
    let id: KeyId = id.parse().map_err(|_| nobody())?;
    if !scheme.eq_ignore_ascii_case("bearer") {
        return Err(nobody());
    }
    // A hash is compared, so how long that takes says nothing about the secret. There is no other way to be refused for an id that is
    // known than for one that is not.
    let hash = Hash::of_content(secret.as_bytes());
    let found = app.holdings.key(id).await?;
    let (key, _) = found.filter(|(_, kept)| *kept == hash).ok_or_else(nobody)?;
    if key.holds_on(app.clock.today()) {
        return Ok(key);
    }
    Err(Problem::new(ProblemKind::EndedKey, http::ended_key(words(), &key)))
}

async fn may(key: &Key, asks: Asks, parts: &mut Parts) -> Result<(), Problem> {
    let named = RawPathParams::from_request_parts(parts, &()).await.ok();
    let holding = named.as_ref().and_then(|named| named.iter().find(|(name, _)| *name == "holding"));
    if let (Some(own), Some((_, asked))) = (&key.holding, holding)
        && own.as_str() != asked
    {
        return Err(Problem::new(ProblemKind::ForeignHolding, label(Label::HttpForeignHolding)));
    }
    match asks {
        Asks::KeyFor(deed) if !key.role.may(deed) => {
            let detail = http::not_allowed(words(), key.role, deed);
            Err(Problem::new(ProblemKind::NotAllowed, detail))
        }
        Asks::Nothing | Asks::AnyKey | Asks::KeyFor(_) => Ok(()),
    }
}

fn too_many() -> Problem {
    Problem::new(ProblemKind::TooManyRequests, label(Label::HttpTooManyRequests))
}

/// How a client shows a key (RFC 6750, section 3).
pub(crate) const BY_KEY: (axum::http::HeaderName, HeaderValue) =
    (WWW_AUTHENTICATE, HeaderValue::from_static("Bearer realm=\"combclear\""));
