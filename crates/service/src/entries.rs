//! The journal of a holding: appending and reading.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use axum::Json;
use axum::extract::State;
use axum::http::header::{ETAG, LOCATION};
use axum::http::{HeaderValue, StatusCode};
use axum::response::{IntoResponse, Response};
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::entry::{Draft, Envelope, WhichEntry};
use combclear_domain::journal::fault::Unreadable;
use combclear_domain::journal::{Entry, EntryId, Kind};
use combclear_store::Recorded;
use combclear_wording::unreadable::no_entry_numbered;
use combclear_wording::{Label, http};
use serde::Serialize;
use serde_json::value::RawValue;
use utoipa::ToSchema;

use crate::access::Caller;
use crate::app::App;
use crate::extract::{EntryPath, HoldingPath, JsonText, NewEntryPath, Nothing, PageQuery, Path, Query};
use crate::language::words;
use crate::pages::{BATCH_MOST, EntryPage, EntryReport, NewEntries, path_of_entries};
use crate::problem::{Fault, Problem, ProblemKind, Problems, Sent, label};
use crate::work::apart;

/// Record one entry
///
/// The writer makes the id, which is the idempotency key: the same entry sent again is recorded once and answered with the
/// recorded one. Entries are never changed or deleted; a mistake is corrected by a new entry that names the wrong one in
/// `corrects` and gives the reason. Wherever an entry names another, the number of that entry in the journal does as well as its id.
#[utoipa::path(
    put,
    path = "/holdings/{holding}/entries/{id}",
    tag = "journal",
    params(NewEntryPath),
    request_body(content = Envelope, content_type = "application/json"),
    responses(
        (status = 201, description = "It was recorded.", body = EntryReport, headers(
            ("Location", description = "The path of the entry."),
            ("ETag", description = "The hash of the entry, in quotes."),
        )),
        (status = 200, description = "The same entry was recorded already; here it is as it was recorded then.", body = EntryReport, headers(
            ("Location", description = "The path of the entry."),
            ("ETag", description = "The hash of the entry, in quotes."),
        )),
        (status = 409, description = "Another entry is recorded under this id. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "The entry lacks fields of its kind or cannot be true. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn put_entry(
    State(app): State<App>,
    caller: Caller,
    Path(path): Path<NewEntryPath>,
    Query(Nothing {}): Query<Nothing>,
    JsonText(text): JsonText,
) -> Result<Response, Problem> {
    let id = path.id;
    let read =
        move |text: &str, numbered: &Numbered<'_>| read_entry(text, Sent::Alone, 0, Some(id), numbered);
    let draft = with_numbers(&app, &path.holding, text, read).await?.map_err(Sent::unreadable)?;
    let recorded = record(&app, &caller, path.holding.clone(), vec![draft], Sent::Alone).await?;
    let Some(recorded) = recorded.first() else { return Err(Problem::internal()) };
    one(&path.holding, recorded)
}

/// The outcome for one entry of a batch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
enum BatchOutcome {
    /// It was recorded.
    New,
    /// It had been recorded before.
    Known,
}

/// One entry of a batch, as it was recorded.
#[derive(Debug, Serialize, ToSchema)]
struct BatchItem {
    /// Whether it is new.
    outcome: BatchOutcome,
    /// The entry as it is in the journal.
    entry: EntryReport,
}

/// A batch, as it was recorded.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct BatchReport {
    /// The entries, in the order in which they were sent.
    items: Vec<BatchItem>,
}

/// Begin a holding
///
/// A holding is begun on purpose, so that a slip of the pen never makes a second one. Its first entry, of kind
/// `holding_details`, names the keeper and the country whose law and leaflets apply. The same entry sent again is recorded once.
#[utoipa::path(
    put,
    path = "/holdings/{holding}",
    tag = "journal",
    params(HoldingPath),
    request_body(content = Envelope, content_type = "application/json"),
    responses(
        (status = 201, description = "It is begun; this is its first entry.", body = EntryReport, headers(
            ("Location", description = "The path of the entry."),
            ("ETag", description = "The hash of the entry, in quotes."),
        )),
        (status = 200, description = "It was begun with this entry already.", body = EntryReport, headers(
            ("Location", description = "The path of the entry."),
            ("ETag", description = "The hash of the entry, in quotes."),
        )),
        (status = 409, description = "The holding exists already. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "The entry is of another kind, lacks fields or cannot be true. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn put_holding(
    State(app): State<App>,
    caller: Caller,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
    JsonText(text): JsonText,
) -> Result<Response, Problem> {
    // Nothing is numbered yet.
    let numbered = |number| Err(Unreadable::NoEntryNumbered { number, last: 0 });
    let draft = read_entry(&text, Sent::Alone, 0, None, &numbered).map_err(Sent::unreadable)?;
    if draft.kind() != Kind::HoldingDetails {
        let fault =
            Fault::at("/kind".to_owned(), label(Label::HttpFirstEntry), label(Label::HttpFirstEntryHelp));
        return Err(Sent::unreadable(vec![fault]));
    }
    let (holdings, holding) = (Arc::clone(&app.holdings), path.holding.clone());
    let now = caller.stamp(&app);
    let begin = async move { holdings.begin(&holding, draft, now).await.map(|begun| vec![begun]) };
    let begun = app.append(begin).await?.map_err(|error| Sent::Alone.not_recorded(error))?;
    let Some(begun) = begun.first() else { return Err(Problem::internal()) };
    one(&path.holding, begun)
}

/// The answer to one entry that was sent.
fn one(holding: &HoldingName, recorded: &Recorded) -> Result<Response, Problem> {
    let status = match recorded {
        Recorded::New(_) => StatusCode::CREATED,
        Recorded::Known(_) => StatusCode::OK,
    };
    let entry = recorded.entry();
    let location = format!("{}/{}", path_of_entries(holding), entry.draft.id);
    let headers = [(LOCATION, header(&location)?), (ETAG, etag(entry)?)];
    Ok((status, headers, Json(EntryReport::of(entry))).into_response())
}

/// Record a batch of entries
///
/// All or none. They are recorded in the order given, so a later one may refer to an earlier one. Entries already recorded
/// are skipped. JSON pointers in a problem begin with the index of the entry in the batch, from 0.
#[utoipa::path(
    post,
    path = "/holdings/{holding}/entries",
    tag = "journal",
    params(HoldingPath),
    request_body(content = NewEntries, content_type = "application/json"),
    responses(
        (status = 200, description = "All of them are recorded.", body = BatchReport),
        (status = 409, description = "Another entry is recorded under one of the ids. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        (status = 422, description = "An entry lacks fields of its kind or cannot be true. Nothing was recorded.", body = Problem, content_type = "application/problem+json"),
        Problems,
    ),
)]
pub(crate) async fn post_entries(
    State(app): State<App>,
    caller: Caller,
    Path(path): Path<HoldingPath>,
    Query(Nothing {}): Query<Nothing>,
    JsonText(text): JsonText,
) -> Result<Json<BatchReport>, Problem> {
    let drafts = with_numbers(&app, &path.holding, text, read_batch).await??;
    let sent = Sent::Batch(drafts.len());
    let recorded = record(&app, &caller, path.holding, drafts, sent).await?;
    let item = |recorded: &Recorded| BatchItem {
        outcome: match recorded {
            Recorded::New(_) => BatchOutcome::New,
            Recorded::Known(_) => BatchOutcome::Known,
        },
        entry: EntryReport::of(recorded.entry()),
    };
    Ok(Json(BatchReport { items: recorded.iter().map(item).collect() }))
}

/// Read a part of the journal
///
/// The entries after a place, in the order of recording, including corrected and struck-out ones.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/entries",
    tag = "journal",
    params(HoldingPath, PageQuery),
    responses((status = 200, description = "A part of the journal.", body = EntryPage), Problems),
)]
pub(crate) async fn list_entries(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(page): Query<PageQuery>,
) -> Result<Json<EntryPage>, Problem> {
    // One more than is sent, so that a full last page does not link to an empty one.
    let asked = page.limit.saturating_add(1);
    let journal = app.holdings.journal();
    let mut entries = journal.page(&path.holding, page.after, asked).await?;
    if entries.is_empty() && journal.tip(&path.holding).await?.is_none() {
        return Err(app.unknown_holding(&path.holding).await?);
    }
    let limit = usize::try_from(page.limit).unwrap_or(usize::MAX);
    let more = entries.len() > limit;
    entries.truncate(limit);
    let next = entries
        .last()
        .filter(|_| more)
        .map(|last| format!("{}?after={}&limit={}", path_of_entries(&path.holding), last.seq, page.limit));
    Ok(Json(EntryPage { items: entries.iter().map(EntryReport::of).collect(), next }))
}

/// Read one entry
///
/// An entry never changes, so a client that has it may ask with `If-None-Match`. It is named by its id, or by its number in
/// the journal, which is its `seq`.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/entries/{id}",
    tag = "journal",
    params(EntryPath),
    responses(
        (status = 200, description = "The entry.", body = EntryReport, headers(
            ("ETag", description = "The hash of the entry, in quotes."),
        )),
        (status = 304, description = "The client has it already."),
        Problems,
    ),
)]
pub(crate) async fn get_entry(
    State(app): State<App>,
    Path(path): Path<EntryPath>,
    Query(Nothing {}): Query<Nothing>,
) -> Result<Response, Problem> {
    let journal = app.holdings.journal();
    let found = match path.id {
        WhichEntry::Id(id) => journal.entry(&path.holding, id).await?,
        WhichEntry::Number(number) => {
            let page = journal.page(&path.holding, number.saturating_sub(1), 1).await?;
            page.into_iter().find(|entry| entry.seq == number)
        }
    };
    let Some(entry) = found else {
        let Some((last, _)) = journal.tip(&path.holding).await? else {
            return Err(app.unknown_holding(&path.holding).await?);
        };
        let detail = match path.id {
            WhichEntry::Id(id) => http::no_entry(words(), &path.holding, id),
            WhichEntry::Number(number) => no_entry_numbered(words(), number, last).message,
        };
        let help = http::lists_entries(words(), &path_of_entries(&path.holding));
        return Err(Problem::new(ProblemKind::UnknownEntry, detail).at_parameter("id", help));
    };
    let etag = etag(&entry)?;
    Ok(([(ETAG, etag)], Json(EntryReport::of(&entry))).into_response())
}

fn etag(entry: &Entry) -> Result<HeaderValue, Problem> {
    header(&format!("\"{}\"", entry.hash))
}

pub(crate) fn header(text: &str) -> Result<HeaderValue, Problem> {
    HeaderValue::from_str(text).map_err(|_| Problem::internal())
}

async fn record(
    app: &App,
    caller: &Caller,
    holding: HoldingName,
    drafts: Vec<Draft>,
    sent: Sent,
) -> Result<Vec<Recorded>, Problem> {
    let holdings = Arc::clone(&app.holdings);
    caller.may_record(&drafts, sent)?;
    let now = caller.stamp(app);
    let recorded = app.append(async move { holdings.record(&holding, drafts, now).await }).await?;
    recorded.map_err(|error| sent.not_recorded(error))
}

/// Looks up the entry with a number.
type Numbered<'j> = dyn Fn(u64) -> Result<EntryId, Unreadable> + Sync + 'j;

/// Reads what was sent. Only if it names an entry by its number is the journal looked at: whoever records next would have to copy
/// a holding that is still being read.
async fn with_numbers<T: Send + 'static>(
    app: &App,
    holding: &HoldingName,
    text: String,
    read: impl Fn(&str, &Numbered<'_>) -> T + Copy + Send + 'static,
) -> Result<T, Problem> {
    let is_long = text.len() > READ_APART;
    let alone = move || {
        let looked_up = AtomicBool::new(false);
        let read = read(&text, &|_| {
            looked_up.store(true, Ordering::Relaxed);
            Err(Unreadable::NumberedNowhere)
        });
        (read, looked_up.into_inner(), text)
    };
    let (read_alone, looked_up, text) = if is_long { apart(alone).await? } else { alone() };
    if !looked_up {
        return Ok(read_alone);
    }
    let journal = app.recorded(holding).await?;
    let with_journal = move || read(&text, &numbered_in(&journal));
    if is_long { apart(with_journal).await } else { Ok(with_journal()) }
}

/// A longer text is read on a blocking thread, so that it does not delay other requests. In bytes: some tenths of a millisecond.
const READ_APART: usize = 64 * 1024;

/// Looks up the entry with a number in a journal as it is now: the entry of a batch cannot name an earlier one of the same
/// batch like that, which has no number yet.
fn numbered_in(journal: &Holding) -> impl Fn(u64) -> Result<EntryId, Unreadable> + Sync + use<'_> {
    let last = journal.tip().map_or(0, |(last, _)| last);
    move |number| {
        let record = journal.entry_numbered(number);
        record.map(|record| record.id).ok_or(Unreadable::NoEntryNumbered { number, last })
    }
}

/// Parses one entry, or reports everything that is wrong with it. `named` is the id in the path, if there is one.
fn read_entry(
    text: &str,
    sent: Sent,
    index: usize,
    named: Option<EntryId>,
    numbered: &Numbered<'_>,
) -> Result<Draft, Vec<Fault>> {
    if !text.trim_start().starts_with('{') {
        let (detail, help) = (label(Label::HttpNotAnObject), label(Label::HttpNotAnObjectHelp));
        return Err(vec![Fault::at(sent.pointer(index, ""), detail, help)]);
    }
    let draft = Draft::from_json_where(text, named, numbered)
        .map_err(|faults| faults.iter().map(|fault| sent.fault(index, fault)).collect::<Vec<_>>())?;
    match named {
        Some(named) if named != draft.id => {
            let detail = http::other_id(words(), draft.id, named);
            Err(vec![Fault::at(sent.pointer(index, "/id"), detail, label(Label::HttpOtherIdHelp))])
        }
        _ => Ok(draft),
    }
}

/// Parses a batch. Reports every unreadable entry, not only the first.
fn read_batch(text: &str, numbered: &Numbered<'_>) -> Result<Vec<Draft>, Problem> {
    let words = words();
    let whole = |why: &str| {
        let help = http::not_a_batch_help(words, BATCH_MOST);
        Problem::nothing_recorded(ProblemKind::UnreadableEntry, why).at_body(help)
    };
    let entries: Vec<&RawValue> =
        serde_json::from_str(text).map_err(|_| whole(label(Label::HttpNotABatch)))?;
    if entries.is_empty() || entries.len() > BATCH_MOST {
        return Err(whole(&http::batch_of(words, entries.len())));
    }
    let sent = Sent::Batch(entries.len());
    let mut drafts = Vec::with_capacity(entries.len());
    let mut faults = Vec::new();
    for (index, entry) in entries.iter().enumerate() {
        match read_entry(entry.get(), sent, index, None, numbered) {
            Ok(draft) => drafts.push(draft),
            Err(found) => faults.extend(found),
        }
    }
    if faults.is_empty() { Ok(drafts) } else { Err(Sent::unreadable(faults)) }
}
