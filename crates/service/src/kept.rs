//! Answers that are given again as long as everything that they rest on is the same.
//!
//! They are found by a hash over all of that: the program, the leaflets and laws, the head of the journal, the day and the question. So
//! none is ever out of date; those that nobody can ask for any more are the first to go.

use axum::body::{Body, Bytes};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use combclear_domain::journal::Hash;
use http_body_util::BodyExt;
use quick_cache::Weighter;
use quick_cache::sync::Cache;

use crate::problem::Problem;
use crate::work::Limits;

/// The answers that were given, by what they rest on.
pub(crate) struct KeptAnswers(Cache<Hash, KeptAnswer, ByBytes>);

#[derive(Clone)]
struct KeptAnswer {
    headers: HeaderMap,
    body: Bytes,
}

#[derive(Clone)]
struct ByBytes;

impl Weighter<Hash, KeptAnswer> for ByBytes {
    fn weight(&self, _: &Hash, answer: &KeptAnswer) -> u64 {
        let headers = answer.headers.values().map(HeaderValue::len).sum::<usize>();
        u64::try_from(answer.body.len() + headers + BESIDE).unwrap_or(u64::MAX)
    }
}

/// What goes with a kept answer beside its bytes.
const BESIDE: usize = 512;

impl KeptAnswers {
    pub(crate) fn within(limits: Limits) -> KeptAnswers {
        let about = usize::try_from(limits.answers / OF_AN_ANSWER).unwrap_or(usize::MAX);
        KeptAnswers(Cache::with_weighter(about, limits.answers, ByBytes))
    }

    /// What they take, in bytes.
    pub(crate) fn bytes(&self) -> u64 {
        self.0.weight()
    }

    pub(crate) fn get(&self, rests_on: &Hash) -> Option<Response> {
        let KeptAnswer { headers, body } = self.0.get(rests_on)?;
        let mut response = Response::new(Body::from(body));
        *response.headers_mut() = headers;
        Some(response)
    }

    /// Keeps an answer. Every answer is made whole before it is sent, so this copies nothing.
    pub(crate) async fn keep(&self, rests_on: Hash, answer: Response) -> Response {
        let (parts, body) = answer.into_parts();
        let Ok(whole) = body.collect().await else { return Problem::internal().into_response() };
        let body = whole.to_bytes();
        self.0.insert(rests_on, KeptAnswer { headers: parts.headers.clone(), body: body.clone() });
        Response::from_parts(parts, Body::from(body))
    }
}

/// What an answer takes, about, in bytes.
const OF_AN_ANSWER: u64 = 8 * 1024;
