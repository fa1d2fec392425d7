//! Documents of a holding: proofs of purchase and copies of prescriptions.
//!
//! They come from elsewhere, so they are never opened here or shown inside a page: each is sent as a download, with headers
//! that keep it from being run.

use std::sync::Arc;

use axum::Json;
use axum::extract::{Request, State};
use axum::http::header::{
    CONTENT_DISPOSITION, CONTENT_SECURITY_POLICY, CONTENT_TYPE, ETAG, IF_NONE_MATCH, LOCATION,
    X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderValue, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use combclear_domain::Day;
use combclear_domain::basics::words::{HoldingName, LotName, MediaType, Person, PrescriptionName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::document::DOCUMENT_MOST;
use combclear_domain::journal::document::{Unfit, in_short, media_type};
use combclear_domain::journal::event::DocumentAttached;
use combclear_domain::journal::{Content, Draft, EntryId, Event, Hash};
use combclear_domain::questions::NamedEntry;
use combclear_papers::look::cautions;
use combclear_store::{Attached, ContentState, Recorded, documents};
use combclear_wording::refusals::Refused;
use combclear_wording::{Label, http, unreadable};
use serde::Serialize;
use utoipa::ToSchema;

use crate::access::Caller;
use crate::app::App;
use crate::body::{Unread, read_whole};
use crate::entries::header;
use crate::extract::{DocumentPath, HoldingPath, NewDocumentPath, NewDocumentQuery, Nothing, Path, Query};
use crate::file_name;
use crate::freshness::names_in;
use crate::language::words;
use crate::pages::{EntryReport, path_of_documents};
use crate::problem::{Problem, ProblemKind, Problems, Sent, label};
use crate::work::apart;

/// Largest document, in bytes.
pub(crate) const BODY_MOST: usize = DOCUMENT_MOST as usize;

/// The type of a body declared as mere bytes (RFC 2046, 4.5.1).
const JUST_BYTES: &str = "application/octet-stream";

/// Whether the content of a document is stored.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub(crate) enum StateOfContent {
    /// Stored as attached.
    Kept,
    /// Nothing is stored under its hash.
    Missing,
    /// Something else is stored in its place.
    Altered,
}

impl From<ContentState> for StateOfContent {
    fn from(state: ContentState) -> StateOfContent {
        match state {
            ContentState::Kept => StateOfContent::Kept,
            ContentState::Missing => StateOfContent::Missing,
            ContentState::Altered => StateOfContent::Altered,
        }
    }
}

/// A document and the entry that attaches it.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct DocumentReport {
    /// The id of the entry.
    id: EntryId,
    /// The place of the entry in the journal.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    seq: u64,
    /// The day on which it was attached.
    on: Day,
    /// Who attached it.
    recorded_by: Person,
    /// The SHA-256 hash of its content.
    content: Hash,
    /// The type of the content.
    media_type: MediaType,
    /// The length of the content, in bytes.
    #[schema(minimum = 1, maximum = 10_000_000)]
    bytes: u32,
    /// The name of the original file.
    #[serde(skip_serializing_if = "Option::is_none")]
    file_name: Option<String>,
    /// The lot whose purchase it proves.
    #[serde(skip_serializing_if = "Option::is_none")]
    lot: Option<LotName>,
    /// The prescription of which it is a copy.
    #[serde(skip_serializing_if = "Option::is_none")]
    prescription: Option<PrescriptionName>,
    /// The entry that corrected or struck out this one. The document stays.
    #[serde(skip_serializing_if = "Option::is_none")]
    superseded_by: Option<NamedEntry>,
    /// Whether the content is stored, checked against its hash.
    state: StateOfContent,
    /// The path of the content.
    #[schema(example = "/holdings/heathside/documents/8d16…")]
    path: String,
}

impl DocumentReport {
    fn of(holding: &Holding, Attached { entry, document, state }: Attached) -> DocumentReport {
        DocumentReport {
            id: entry.draft.id,
            seq: entry.seq,
            on: entry.draft.on,
            recorded_by: entry.draft.recorded_by,
            path: path_of_documents(holding.name(), &document.content.to_string()),
            content: document.content,
            media_type: document.media_type,
            bytes: document.bytes,
            file_name: document.file_name.clone(),
            lot: document.lot.clone(),
            prescription: document.prescription.clone(),
            superseded_by: NamedEntry::all(holding, holding.superseded_by(entry.draft.id)).pop(),
            state: state.into(),
        }
    }
}

/// A document just attached.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct AttachedReport {
    /// The entry that attaches it.
    entry: EntryReport,
    /// What to know before opening the document, in words: that it is locked, runs something, or cannot be opened everywhere.
    /// It is kept as it is. Empty if there is nothing to say.
    cautions: Vec<&'static str>,
}

/// The bytes of a document.
#[expect(dead_code, reason = "stands for the bytes in the document of the API")]
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
struct DocumentBytes(Vec<u8>);

/// The documents of a holding.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct DocumentList {
    /// In the order of attaching.
    items: Vec<DocumentReport>,
}

/// List the documents
///
/// All documents ever attached, each with the state of its content: `missing` if the entry was imported without it,
/// `altered` if it was changed outside this program.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/documents",
    tag = "documents",
    params(HoldingPath),
    responses((status = 200, description = "The documents.", body = DocumentList), Problems),
)]
pub(crate) async fn list_documents(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Response, Problem> {
    let reports = app.reports.clone();
    let list = async move {
        let found = documents(app.holdings.journal().as_ref(), &path.holding).await?;
        let holding = app.recorded(&path.holding).await?;
        let items = found.into_iter().map(|attached| DocumentReport::of(&holding, attached)).collect();
        Ok(Json(DocumentList { items }).into_response())
    };
    reports.work_out(list).await
}

/// Attach a document
///
/// The body is the file itself: a PDF, JPEG, PNG or HEIC of at most 10 MB. Its type is read from the content. Content and
/// entry are recorded together. The writer makes the id, which is the idempotency key: the same file sent again is recorded
/// once. If the entry exists and only its content is missing, the content is added.
#[utoipa::path(
    put,
    path = "/holdings/{holding}/documents/{document}",
    tag = "documents",
    params(NewDocumentPath, NewDocumentQuery),
    request_body(
        content(
            (DocumentBytes = "application/octet-stream"),
            (DocumentBytes = "application/pdf"),
            (DocumentBytes = "image/jpeg"),
            (DocumentBytes = "image/png"),
            (DocumentBytes = "image/heic"),
        ),
        description = "The file. Its Content-Type may be absent, `application/octet-stream`, or that of its content.",
    ),
    responses(
        (status = 201, description = "It was recorded.", body = AttachedReport, headers(
            ("Location", description = "The path of the content."),
        )),
        (status = 200, description = "The same document was recorded already; here is its entry as it was recorded then.", body = AttachedReport, headers(
            ("Location", description = "The path of the content."),
        )),
        (status = 409, description = "Another entry is recorded under this id. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 413, description = "The document is too large. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 415, description = "The document is of another type, or declared as one. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "The document is incomplete, or the entry cannot be true. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn put_document(
    State(app): State<App>,
    caller: Caller,
    Path(path): Path<NewDocumentPath>,
    Query(query): Query<NewDocumentQuery>,
    request: Request,
) -> Result<Response, Problem> {
    check_belongs(&query)?;
    file_name::check(query.file_name.as_deref())?;
    let headers = request.headers().clone();
    let bytes = read_whole(request).await.map_err(not_arrived)?;
    let look = move || {
        let media_type = media_type(&bytes).map_err(unfit)?;
        check_declared(&headers, media_type)?;
        let cautions = cautions(media_type, &bytes);
        Ok::<_, Problem>((media_type, cautions, Content::new(bytes.into())))
    };
    let (media_type, cautions, content) = apart(look).await??;
    let NewDocumentQuery { lot, prescription, on, recorded_by, file_name } = query;
    let event = Event::from(DocumentAttached {
        content: content.hash(),
        media_type,
        bytes: u32::try_from(content.bytes().len()).unwrap_or(u32::MAX),
        file_name,
        lot,
        prescription,
    });
    let draft = Draft::new(path.document, on, recorded_by, event);
    let location = header(&path_of_documents(&path.holding, &content.hash().to_string()))?;
    let recorded = attach(&app, &caller, path.holding, draft, content).await?;
    let status = match recorded {
        Recorded::New(_) => StatusCode::CREATED,
        Recorded::Known(_) => StatusCode::OK,
    };
    let cautions = cautions.into_iter().map(label).collect();
    let report = AttachedReport { entry: EntryReport::of(recorded.entry()), cautions };
    Ok((status, [(LOCATION, location)], Json(report)).into_response())
}

/// Fetch a document
///
/// The original bytes, as a download. A document never changes, so a client that has it may ask with `If-None-Match`.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/documents/{document}",
    tag = "documents",
    params(DocumentPath),
    responses(
        (status = 200, description = "The document.", content(
            (DocumentBytes = "application/pdf"),
            (DocumentBytes = "image/jpeg"),
            (DocumentBytes = "image/png"),
            (DocumentBytes = "image/heic"),
        ), headers(
            ("ETag", description = "The hash of the content, in quotes."),
            ("Content-Disposition", description = "Always `attachment`, with the name of the file."),
        )),
        (status = 304, description = "The client has it already."),
        (status = 404, description = "No entry attaches it, or its content is not kept.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn get_document(
    State(app): State<App>,
    Path(path): Path<DocumentPath>,
    Query(Nothing {}): Query<Nothing>,
    headers: HeaderMap,
) -> Result<Response, Problem> {
    let (holding, hash, words) = (&path.holding, path.document, words());
    let journal = app.holdings.journal();
    let attached = journal.attached(holding).await?;
    let document = attached.iter().find_map(|entry| match &entry.draft.event {
        Event::DocumentAttached(document) if document.content == hash => Some(document),
        _ => None,
    });
    let Some(document) = document else {
        if journal.tip(holding).await?.is_none() {
            return Err(app.unknown_holding(holding).await?);
        }
        let detail = http::no_document(words, holding, hash);
        let help = http::lists_documents(words, &path_of_documents(holding, ""));
        return Err(Problem::new(ProblemKind::UnknownDocument, detail).at_parameter("document", help));
    };
    let Some(bytes) = journal.content(holding, hash).await? else {
        let problem = Problem::new(ProblemKind::MissingDocument, http::document_missing(words, hash));
        return Err(problem.at_parameter("document", label(Label::HttpDocumentMissingHelp)));
    };
    let (found, bytes) = apart(move || (Hash::of_content(&bytes), bytes)).await?;
    if found != hash {
        tracing::error!(%holding, %hash, "a document was altered");
        let problem = Problem::new(ProblemKind::AlteredDocument, http::document_altered(words, hash));
        return Err(problem.at_parameter("document", label(Label::HttpDocumentAlteredHelp)));
    }
    let etag = header(&format!("\"{hash}\""))?;
    if names_in(headers.get_all(IF_NONE_MATCH), &etag) {
        return Ok((StatusCode::NOT_MODIFIED, [(ETAG, etag)]).into_response());
    }
    let headers = [
        (CONTENT_TYPE, HeaderValue::from_static(document.media_type.as_str())),
        (CONTENT_DISPOSITION, file_name::to_be_saved_as(&file_name::saved(document))?),
        (X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
        (CONTENT_SECURITY_POLICY, HeaderValue::from_static("sandbox; default-src 'none'")),
        (ETAG, etag),
    ];
    Ok((headers, bytes).into_response())
}

/// Words the problem of an oversized body for this path: the layer that refused it gives only the status.
pub(crate) async fn say_too_large(request: Request, next: Next) -> Response {
    let response = next.run(request).await;
    let unsaid = response.extensions().get::<Problem>().is_none();
    if response.status() == StatusCode::PAYLOAD_TOO_LARGE && unsaid {
        return unfit(Unfit::TooLarge).into_response();
    }
    response
}

async fn attach(
    app: &App,
    caller: &Caller,
    holding: HoldingName,
    draft: Draft,
    content: Content,
) -> Result<Recorded, Problem> {
    let holdings = Arc::clone(&app.holdings);
    caller.may_record(std::slice::from_ref(&draft), Sent::InAddress)?;
    let now = caller.stamp(app);
    let attach = async move { holdings.attach(&holding, draft, content, now).await.map(|one| vec![one]) };
    let attached = app.append(attach).await?.map_err(|error| Sent::InAddress.not_recorded(error))?;
    attached.into_iter().next().ok_or_else(Problem::internal)
}

/// The problem of a document that did not arrive.
fn not_arrived(why: Unread) -> Problem {
    let broken_off = |detail: String| {
        Problem::new(ProblemKind::UnreadableBody, detail).at_body(label(Label::HttpUploadBrokenOffHelp))
    };
    match why {
        Unread::TooLarge => unfit(Unfit::TooLarge),
        Unread::Shorter { announced, arrived } => {
            broken_off(http::upload_shorter(words(), announced, arrived))
        }
        Unread::BrokenOff => broken_off(label(Label::HttpUploadNotWhole).to_owned()),
        Unread::Stalled | Unread::TooSlow => why.problem(),
    }
}

fn unfit(unfit: Unfit) -> Problem {
    let kind = match unfit {
        Unfit::TooLarge => ProblemKind::BodyTooLarge,
        Unfit::OtherType(_) => ProblemKind::OtherDocumentType,
        Unfit::Empty | Unfit::CutOff { .. } => ProblemKind::UnfitDocument,
    };
    let Refused { message, help } = unreadable::unfit(words(), &unfit);
    Problem::nothing_recorded(kind, &message).at_body(help)
}

/// Checks that the document belongs to exactly one thing.
fn check_belongs(query: &NewDocumentQuery) -> Result<(), Problem> {
    let words = words();
    let (detail, help) = match (&query.lot, &query.prescription) {
        (Some(_), None) | (None, Some(_)) => return Ok(()),
        (None, None) => (label(Label::HttpDocumentOfNothing).to_owned(), http::name_what_it_proves(words)),
        (Some(_), Some(_)) => {
            (http::two_things_named(words), label(Label::HttpDocumentOfTwoThingsHelp).to_owned())
        }
    };
    Err(Problem::bad_parameter("lot", detail, help))
}

/// Checks that a declared type matches the content.
fn check_declared(headers: &HeaderMap, found: MediaType) -> Result<(), Problem> {
    let Some(declared) = headers.get(CONTENT_TYPE) else { return Ok(()) };
    let declared = String::from_utf8_lossy(declared.as_bytes());
    let essence = declared.split(';').next().unwrap_or_default().trim();
    if essence.eq_ignore_ascii_case(found.as_str()) || essence.eq_ignore_ascii_case(JUST_BYTES) {
        return Ok(());
    }
    let why = http::document_declared(words(), &declared, in_short(found));
    let help = http::document_declared_help(words(), found.as_str());
    Err(Problem::nothing_recorded(ProblemKind::OtherDocumentType, &why).at_body(help))
}
