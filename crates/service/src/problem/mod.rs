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
use axum::http::header::{CONTENT_LENGTH, CONTENT_TYPE, RETRY_AFTER};
use axum::http::{HeaderValue, StatusCode, Uri};
use axum::response::{IntoResponse, Response};
use combclear_wording::quoted::{cut, shortened};
use combclear_wording::terminal::failures::did_you_mean;
use combclear_wording::{Label, http};
use serde::Serialize;
use utoipa::{IntoResponses, ToSchema};

use crate::access::BY_KEY;
use crate::language::words;

pub(crate) use combclear_wording::reports::Fault;
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

/// A text that stands fixed.
pub(crate) fn label(label: Label) -> &'static str {
    words().label(label)
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

    /// A problem for which nothing was recorded.
    pub(crate) fn nothing_recorded(kind: ProblemKind, why: &str) -> Problem {
        Problem::new(kind, http::nothing_recorded(words(), why))
    }

    /// The problem of a part of the path or a query parameter that cannot be used.
    pub(crate) fn bad_parameter(
        parameter: &str,
        detail: impl Into<String>,
        help: impl Into<String>,
    ) -> Problem {
        Problem::new(ProblemKind::BadParameter, detail).at_parameter(parameter, help)
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

    /// The same, with a known name that is written much like the unknown one, or else with this help.
    pub(crate) fn at_unknown(
        self,
        parameter: &str,
        near: Option<&str>,
        otherwise: impl Into<String>,
    ) -> Problem {
        let help = near.map_or_else(|| otherwise.into(), |near| did_you_mean(words(), near));
        self.at_parameter(parameter, help)
    }

    /// The same, with help on the body as a whole.
    pub(crate) fn at_body(self, help: impl Into<String>) -> Problem {
        let fault = Fault::at("", self.detail.clone(), help);
        self.with(vec![fault])
    }

    /// The problem for a bare status from a layer or the framework.
    pub(crate) fn behind(status: StatusCode) -> Problem {
        let (kind, detail) = match status {
            StatusCode::NOT_FOUND => (ProblemKind::UnknownPath, Label::HttpNothingServed),
            StatusCode::METHOD_NOT_ALLOWED => (ProblemKind::WrongMethod, Label::HttpWrongMethod),
            StatusCode::PAYLOAD_TOO_LARGE => (ProblemKind::BodyTooLarge, Label::HttpBodyTooLarge),
            StatusCode::SERVICE_UNAVAILABLE => (ProblemKind::Timeout, Label::HttpTimeout),
            _ if status.is_client_error() => (ProblemKind::UnreadableBody, Label::HttpUnreadable),
            _ => (ProblemKind::Internal, Label::HttpInternal),
        };
        Problem::new(kind, label(detail))
    }

    /// A bug in this program. Details go to the log, not into the answer.
    pub(crate) fn internal() -> Problem {
        Problem::behind(StatusCode::INTERNAL_SERVER_ERROR)
    }
}

impl Problem {
    /// The same with what the client wrote cut where it is long.
    fn shortened(&self) -> Problem {
        let fault = |fault: &Fault| Fault {
            pointer: fault.pointer.as_ref().map(|pointer| cut(pointer, POINTER_MOST).into_owned()),
            parameter: fault.parameter.clone(),
            detail: shortened(&fault.detail).into_owned(),
            help: shortened(&fault.help).into_owned(),
        };
        Problem {
            detail: shortened(&self.detail).into_owned(),
            instance: cut(&self.instance, POINTER_MOST).into_owned(),
            errors: self.errors.iter().map(fault).collect(),
            ..self.clone()
        }
    }
}

/// The most characters of a pointer or a path that are repeated.
const POINTER_MOST: usize = 1_000;

impl IntoResponse for Problem {
    /// Adds itself as an extension, so that [`finish`] can set the path.
    fn into_response(self) -> Response {
        let mut response = (self.kind.status(), Json(&self.shortened())).into_response();
        response.headers_mut().insert(CONTENT_TYPE, PROBLEM_JSON);
        if let Some(seconds) = self.kind.retry_after() {
            response.headers_mut().insert(RETRY_AFTER, seconds.into());
        }
        if self.kind.status() == StatusCode::UNAUTHORIZED {
            let (name, value) = BY_KEY;
            response.headers_mut().insert(name, value);
        }
        response.extensions_mut().insert(self);
        response
    }
}

/// Turns every answer that is not a success into a problem document that names the path. Other headers are kept.
pub(crate) fn finish(asked: &Uri, response: Response) -> Response {
    let status = response.status();
    if !status.is_client_error() && !status.is_server_error() {
        return response;
    }
    let (mut parts, _) = response.into_parts();
    let problem = parts.extensions.remove::<Problem>().unwrap_or_else(|| Problem::behind(status));
    parts.headers.remove(CONTENT_LENGTH);
    parts.headers.remove(CONTENT_TYPE);
    let mut finished = Problem { instance: asked.path().to_owned(), ..problem }.into_response();
    finished.headers_mut().extend(parts.headers);
    finished
}
