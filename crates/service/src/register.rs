//! The legal register of a period, in every format.

use std::io::Seek;
use std::sync::Arc;

use axum::Json;
use axum::body::Body;
use axum::extract::State;
use axum::http::header::{CONTENT_DISPOSITION, CONTENT_LENGTH, CONTENT_SECURITY_POLICY, CONTENT_TYPE, VARY};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use combclear_domain::basics::calendar::Counting;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Hash;
use combclear_domain::questions::gaps::Gaps;
use combclear_domain::questions::register::{Period, Register};
use combclear_domain::{Day, Instant};
use combclear_papers::exchange::Exchange;
use combclear_papers::pack::{Input, Packer, safe_name, seasons, wanted};
use combclear_papers::{Paper, Typesetter, flat, html};
use combclear_store::{Attached, content_of};
use combclear_wording::Label;
use combclear_wording::gaps::GapsReport;
use combclear_wording::refusals::Refused;
use combclear_wording::register::RegisterReport;
use tokio_util::io::ReaderStream;
use utoipa::ToSchema;

use crate::accept::preferred;
use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{CountingWord, Form, HoldingPath, PackQuery, Path, Query, RegisterQuery, TimeQuery};
use crate::freshness::not_kept;
use crate::language::words;
use crate::problem::{Problem, Problems, label};
use crate::work::unless_given_up;

/// The formats of the register in order of preference.
const FORMS: [(&str, Form); 4] = [
    ("application/json", Form::Json),
    ("text/csv", Form::Csv),
    ("text/html", Form::Html),
    ("application/pdf", Form::Pdf),
];

/// The bytes of a file.
#[expect(dead_code, reason = "stands for the bytes in the document; handlers send them as they are")]
#[derive(ToSchema)]
#[schema(value_type = String, format = Binary)]
struct Download(Vec<u8>);

/// Read the legal register
///
/// What was acquired, given, taken out and disposed of in a period, and what was corrected: as JSON, as CSV for a
/// spreadsheet, as a page for reading and printing, or as PDF.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/register",
    tag = "register",
    params(HoldingPath, RegisterQuery),
    responses(
        (
            status = 200,
            description = "The register.",
            content(
                (RegisterReport<'_> = "application/json"),
                (String = "text/csv"),
                (String = "text/html"),
                (Download = "application/pdf"),
            )
        ),
        Problems,
    ),
)]
pub(crate) async fn get_register(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<RegisterQuery>,
    headers: HeaderMap,
) -> Result<Response, Problem> {
    let time = TimeQuery { from: query.from, to: query.to, as_of: query.as_of };
    let Asked { period, as_of, is_about_today } = asked(&app, &time)?;
    let counting = match query.counting {
        Some(CountingWord::Elapsed) => Counting::Elapsed,
        Some(CountingWord::Calendar) | None => Counting::Calendar,
    };
    let typesetter = app.typesetter.clone();
    if query.format == Some(Form::Pdf) && typesetter.is_none() {
        let (detail, help) = (label(Label::HttpNoPdf), label(Label::HttpNoPdfHelp));
        return Err(Problem::bad_parameter("format", detail, help));
    }
    let offered: Vec<(&str, Form)> =
        FORMS.into_iter().filter(|(_, form)| *form != Form::Pdf || typesetter.is_some()).collect();
    let form = query.format.or_else(|| preferred(&headers, &offered)).unwrap_or(Form::Json);
    let reports = app.reports.clone();
    let made = app.clock.now();
    let work = async move {
        let holding = app.recorded(&path.holding).await?;
        let register = Register::of(&holding, &app.leaflets, period, as_of).counted_by(counting);
        unless_given_up().await;
        let doubt = Doubt::of(&app, &holding, is_about_today);
        let mut response = match form {
            Form::Json => doubt.json(RegisterReport::of(words(), &register)),
            form => {
                let bytes = written(&register, form, made, typesetter.as_deref()).map_err(not_made)?;
                doubt.over(sent(bytes, media_type(form), &named(&register, "register", form)))
            }
        };
        response.headers_mut().insert(VARY, HeaderValue::from_static("accept"));
        Ok(response)
    };
    reports.work_out(work).await
}

/// Read the treatments for other programs
///
/// A collection of group treatment events of the ICAR Animal Data Exchange. The page of the pack lists what it has no field for.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/register/exchange/treatments",
    tag = "register",
    params(HoldingPath, TimeQuery),
    responses((status = 200, description = "The treatments.", body = serde_json::Value), Problems),
)]
pub(crate) async fn get_exchange_treatments(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<TimeQuery>,
) -> Result<Response, Problem> {
    exchange(&app, &path.holding, &query, |made| Json(made.treatments).into_response()).await
}

/// Read the movements of stock for other programs
///
/// A collection of medicine transactions of the ICAR Animal Data Exchange: what was received, used and disposed of, and what is
/// on hand at the end.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/register/exchange/transactions",
    tag = "register",
    params(HoldingPath, TimeQuery),
    responses((status = 200, description = "The movements of stock.", body = serde_json::Value), Problems),
)]
pub(crate) async fn get_exchange_transactions(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<TimeQuery>,
) -> Result<Response, Problem> {
    exchange(&app, &path.holding, &query, |made| Json(made.transactions).into_response()).await
}

async fn exchange(
    app: &App,
    holding: &HoldingName,
    time: &TimeQuery,
    part: fn(Exchange) -> Response,
) -> Result<Response, Problem> {
    let Asked { period, as_of, is_about_today } = asked(app, time)?;
    let read = move |holding: &Holding, app: &App| {
        let made = part(Exchange::of(&Register::of(holding, &app.leaflets, period, as_of)));
        // Its fields are those of its standard.
        Doubt::of(app, holding, is_about_today).over(made)
    };
    app.report(holding, read).await
}

/// Read the inspection pack
///
/// One ZIP file with the register in every format, its supporting documents, the state of the journal, and the hash of
/// every file.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/register/pack",
    tag = "register",
    params(HoldingPath, PackQuery),
    responses((status = 200, description = "The pack.", body = Download, content_type = "application/zip"), Problems),
)]
pub(crate) async fn get_register_pack(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<PackQuery>,
) -> Result<Response, Problem> {
    let PackQuery { from, to, as_of, gaps: with_gaps } = query;
    let asked = asked(&app, &TimeQuery { from, to, as_of })?;
    let (made, typesetter, reports) = (app.clock.now(), app.typesetter.clone(), app.reports.clone());
    let work = async move {
        let Both { holding, register, gaps, doubt } = both(&app, &path.holding, asked).await?;
        // It goes to disk as it is made, and from there to the client: neither pack nor proofs are held in memory.
        let mut packer = Box::new(Packer::begin(tempfile::tempfile().map_err(not_made)?, made));
        let journal = app.holdings.journal().as_ref();
        for document in wanted(&register).into_iter().cloned().collect::<Vec<_>>() {
            let found = content_of(journal, &path.holding, document.content).await?;
            packer.document(&document, &found.into()).map_err(not_made)?;
        }
        unless_given_up().await;
        let gaps = with_gaps.then_some(&gaps);
        let on = register.to.min(register.as_of);
        let seasons = seasons(words(), &holding, &app.leaflets, on);
        let typesetter = typesetter.as_deref();
        let input = Input { words: words(), register: &register, gaps, seasons: &seasons, typesetter };
        let mut file = packer.finish(&input, |_| {}).map_err(not_made)?;
        let length = file.stream_position().map_err(not_made)?;
        file.rewind().map_err(not_made)?;
        let name = safe_name(register.holding.as_str());
        Ok((file, length, format!("pack-{name}-{}-{}.zip", register.from, register.to), doubt))
    };
    let (file, length, name, doubt) = reports.work_out(work).await?;
    let body = Body::from_stream(ReaderStream::new(tokio::fs::File::from_std(file)));
    let length = [(CONTENT_LENGTH, HeaderValue::from(length))];
    // It says when it was made, so it is another each time: a tag over all its proofs would never be known again.
    Ok(doubt.over((not_kept(), length, sent(body, "application/zip", &name))))
}

/// Ask what is missing from the register
///
/// Checks each row of the register against the law of its day: what is missing and how to supply it, what is irregular, and
/// whether the stock account of each lot balances.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/register/gaps",
    tag = "register",
    params(HoldingPath, TimeQuery),
    responses((status = 200, description = "The gaps.", body = GapsReport), Problems),
)]
pub(crate) async fn get_register_gaps(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<TimeQuery>,
) -> Result<Response, Problem> {
    let asked = asked(&app, &query)?;
    let reports = app.reports.clone();
    let work = async move {
        let Both { gaps, doubt, .. } = both(&app, &path.holding, asked).await?;
        Ok(doubt.json(gaps))
    };
    reports.work_out(work).await
}

#[expect(clippy::needless_pass_by_value, reason = "it is what `map_err` hands over")]
fn not_made(error: impl ToString) -> Problem {
    tracing::error!(error = error.to_string(), "a paper could not be made");
    Problem::internal()
}

/// The time that is meant, and the day whose knowledge counts.
#[derive(Debug, Clone, Copy)]
struct Asked {
    period: Period,
    as_of: Day,
    /// Whether one of them is today because none was named.
    is_about_today: bool,
}

fn asked(app: &App, time: &TimeQuery) -> Result<Asked, Problem> {
    let to = app.day(time.to);
    let from = time.from.unwrap_or_else(|| to.first_of_year());
    let period = Period::new(from, to).map_err(|fault| {
        let Refused { message, help } = Refused::of_period(words(), fault);
        Problem::bad_parameter("to", message, help)
    })?;
    let is_about_today = time.to.is_none() || time.as_of.is_none();
    Ok(Asked { period, as_of: app.day(time.as_of), is_about_today })
}

/// The register of a period and its gaps, both read from one state of the journal.
struct Both {
    holding: Arc<Holding>,
    register: Register,
    gaps: GapsReport,
    doubt: Doubt,
}

async fn both(
    app: &App,
    holding: &HoldingName,
    Asked { period, as_of, is_about_today }: Asked,
) -> Result<Both, Problem> {
    let attached = app.holdings.documents(holding).await?;
    let not_kept: Vec<Hash> =
        attached.iter().filter_map(Attached::fault).map(|fault| fault.content).collect();
    let holding = app.recorded(holding).await?;
    let register = Register::of(&holding, &app.leaflets, period, as_of);
    unless_given_up().await;
    let gaps = Gaps::in_register(&holding, &app.leaflets, &app.laws, &register, &not_kept);
    let doubt = Doubt::of(app, &holding, is_about_today);
    Ok(Both { holding, register, gaps: GapsReport::of(words(), gaps), doubt })
}

fn written(
    register: &Register,
    form: Form,
    made: Instant,
    typesetter: Option<&dyn Typesetter>,
) -> Result<Vec<u8>, String> {
    let paper = || Paper::of(words(), register, None);
    match form {
        Form::Json => {
            serde_json::to_vec(&RegisterReport::of(words(), register)).map_err(|error| error.to_string())
        }
        Form::Csv => flat::csv(register).map_err(|error| error.to_string()),
        Form::Html => Ok(html::page(&paper()).into_bytes()),
        Form::Pdf => {
            let typesetter = typesetter.ok_or_else(|| label(Label::HttpNoPdf).to_owned())?;
            typesetter.set(&paper(), made).map(|pdf| pdf.bytes).map_err(|error| error.to_string())
        }
    }
}

fn media_type(form: Form) -> &'static str {
    match form {
        Form::Json => "application/json",
        Form::Csv => "text/csv; charset=utf-8; header=present",
        Form::Html => "text/html; charset=utf-8",
        Form::Pdf => "application/pdf",
    }
}

fn named(register: &Register, what: &str, form: Form) -> String {
    let end = match form {
        Form::Json => "json",
        Form::Csv => "csv",
        Form::Html => "html",
        Form::Pdf => "pdf",
    };
    format!("{what}-{}-{}-{}.{end}", safe_name(register.holding.as_str()), register.from, register.to)
}

/// A file under a safe name. Its content security policy permits a page nothing but its own content.
fn sent(content: impl IntoResponse, media_type: &'static str, name: &str) -> Response {
    let shown = media_type.starts_with("text/html") || media_type == "application/pdf";
    let how = if shown { "inline" } else { "attachment" };
    let mut response = content.into_response();
    let headers = response.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(media_type));
    if let Ok(value) = HeaderValue::try_from(format!("{how}; filename=\"{name}\"")) {
        headers.insert(CONTENT_DISPOSITION, value);
    }
    headers.insert(
        CONTENT_SECURITY_POLICY,
        HeaderValue::from_static("default-src 'none'; style-src 'unsafe-inline'"),
    );
    response
}
