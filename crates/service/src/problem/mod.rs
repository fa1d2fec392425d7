//! The one error type: a problem document (RFC 9457).
//!
//! - [`ProblemKind`] lists every problem, each with path, status, title and help
//! - [`Problem`] is one occurrence; [`Fault`] is one fault of a request
//! - [`finish`] makes sure that nothing else ever leaves as an error
//!
//! Inner crates know no status codes: `from.rs` converts their errors into problems.

mod from;
mod kind;

use axum::Json;
use axum::extract::Request;
use axum::http::header::{CONTENT_LENGTH, CONTENT_TYPE};
use axum::http::{HeaderValue, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use serde::Serialize;
use utoipa::{IntoResponses, ToSchema};

pub(crate) use from::Sent;
pub(crate) use kind::ProblemKind;

/// The media type of a problem document.
const PROBLEM_JSON: HeaderValue = HeaderValue::from_static("application/problem+json");

/// A problem (RFC 9457).
#[derive(Debug, Clone, Serialize, ToSchema)]
pub(crate) struct Problem {
    /// The kind of problem: the path of a page that says what to do. Programs decide by this.
    #[serde(rename = "type")]
    #[schema(value_type = String, example = "/problems/unknown-colony")]
    kind: ProblemKind,
    /// The problem in a few words, the same for every problem of one type.
    title: &'static str,
    /// The HTTP status.
    #[schema(minimum = 400, maximum = 599)]
    status: u16,
    /// What happened this time.
    detail: String,
    /// The path requested.
    instance: String,
    /// The faults of the request, one by one. Empty if none can be named.
    errors: Vec<Fault>,
}

/// One fault of a request.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub(crate) struct Fault {
    /// Its place in the body, as a JSON pointer (RFC 6901). Empty for the whole body.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) pointer: Option<String>,
    /// The part of the path, or the query parameter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(crate) parameter: Option<String>,
    /// What is wrong.
    pub(crate) detail: String,
    /// How to fix it.
    pub(crate) help: String,
}

/// The problems that any request can run into.
#[expect(dead_code, reason = "stands for the responses in the document; handlers return `Problem`")]
#[derive(IntoResponses)]
pub(crate) enum Problems {
    /// The request cannot be answered as sent.
    #[response(status = "4XX", content_type = "application/problem+json")]
    OfTheRequest(Problem),
    /// The request may be right, but could not be answered.
    #[response(status = "5XX", content_type = "application/problem+json")]
    OfTheService(Problem),
}

impl Problem {
    pub(crate) fn new(kind: ProblemKind, detail: impl Into<String>) -> Problem {
        Problem {
            kind,
            title: kind.title(),
            status: kind.status().as_u16(),
            detail: detail.into(),
            instance: String::new(),
            errors: Vec::new(),
        }
    }

    /// The same, with faults of the body.
    pub(crate) fn with(self, errors: Vec<Fault>) -> Problem {
        Problem { errors, ..self }
    }

    /// The same, with help on a part of the path or a query parameter.
    pub(crate) fn at_parameter(self, parameter: &str, help: impl Into<String>) -> Problem {
        let fault = Fault {
            pointer: None,
            parameter: Some(parameter.to_owned()),
            detail: self.detail.clone(),
            help: help.into(),
        };
        self.with(vec![fault])
    }

    /// The same, with help on the body as a whole.
    pub(crate) fn at_body(self, help: impl Into<String>) -> Problem {
        let fault = Fault::at("", self.detail.clone(), help);
        self.with(vec![fault])
    }

    /// The problem for a bare status from a layer or the framework.
    fn behind(status: StatusCode) -> Problem {
        match status {
            StatusCode::NOT_FOUND => Problem::new(ProblemKind::UnknownPath, "nothing is served at this path"),
            StatusCode::METHOD_NOT_ALLOWED => Problem::new(
                ProblemKind::WrongMethod,
                "this path does not take this method; see the Allow header",
            ),
            StatusCode::PAYLOAD_TOO_LARGE => {
                Problem::new(ProblemKind::BodyTooLarge, "the body is larger than 4 MiB")
            }
            StatusCode::SERVICE_UNAVAILABLE => Problem::new(
                ProblemKind::Timeout,
                "no answer was ready within 30 seconds; an append may have been recorded all the same",
            ),
            _ if status.is_client_error() => {
                Problem::new(ProblemKind::UnreadableBody, "the request could not be read")
            }
            _ => Problem::internal(),
        }
    }

    /// A bug in this program. Details go to the log, not into the answer.
    pub(crate) fn internal() -> Problem {
        Problem::new(
            ProblemKind::Internal,
            "something went wrong that should not; nothing is known of the request's fate",
        )
    }
}

impl Fault {
    pub(crate) fn at(
        pointer: impl Into<String>,
        detail: impl Into<String>,
        help: impl Into<String>,
    ) -> Fault {
        Fault { pointer: Some(pointer.into()), parameter: None, detail: detail.into(), help: help.into() }
    }
}

impl IntoResponse for Problem {
    /// Adds itself as an extension, so that [`finish`] can set the path.
    fn into_response(self) -> Response {
        let mut response = (self.kind.status(), Json(&self)).into_response();
        response.headers_mut().insert(CONTENT_TYPE, PROBLEM_JSON);
        response.extensions_mut().insert(self);
        response
    }
}

/// Turns every answer that is not a success into a problem document that names the path. Other headers are kept.
pub(crate) async fn finish(request: Request, next: Next) -> Response {
    let path = request.uri().path().to_owned();
    let response = next.run(request).await;
    let status = response.status();
    if !status.is_client_error() && !status.is_server_error() {
        return response;
    }
    let (mut parts, _) = response.into_parts();
    let problem = parts.extensions.remove::<Problem>().unwrap_or_else(|| Problem::behind(status));
    parts.headers.remove(CONTENT_LENGTH);
    parts.headers.remove(CONTENT_TYPE);
    let mut finished = Problem { instance: path, ..problem }.into_response();
    finished.headers_mut().extend(parts.headers);
    finished
}
