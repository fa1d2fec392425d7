//! Extractors for path, query and body, each with its problem.

use std::collections::HashMap;

use axum::extract::path::ErrorKind;
use axum::extract::rejection::PathRejection;
use axum::extract::{FromRequest, FromRequestParts, RawPathParams, Request};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use axum::http::request::Parts;
use combclear_domain::Day;
use combclear_domain::basics::misread::{Misread, NotAnEntry};
use combclear_domain::basics::node::{Reading, read_named};
use combclear_domain::basics::words::{
    Access, ApiaryName, ColonyName, Ground, HoldingName, Jurisdiction, LeafletId, LotName, Person, Power,
    PrescriptionName, Unit,
};
use combclear_domain::journal::Kind;
use combclear_domain::journal::entry::WhichEntry;
use combclear_domain::journal::form::is_filled_in;
use combclear_domain::journal::{EntryId, Hash};
use combclear_wording::unreadable::{self, misread};
use combclear_wording::{Label, http};
use serde::de::{DeserializeOwned, IgnoredAny};
use serde::{Deserialize, Deserializer};
use utoipa::{IntoParams, ToSchema};

use crate::body::{Unread, read_whole};
use crate::language::words;
use crate::problem::{Problem, ProblemKind, label};

/// The parts of the path.
pub(crate) struct Path<T>(pub(crate) T);

/// The query parameters. Every `T` here refuses unknown ones.
pub(crate) struct Query<T>(pub(crate) T);

/// A body declared as JSON that is JSON; the handler parses its content.
pub(crate) struct JsonText(pub(crate) String);

/// Path of a holding.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct HoldingPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
}

/// Path of a recorded entry.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct EntryPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The id of the entry, or its number in the journal.
    #[serde(deserialize_with = "entry_in_path")]
    #[param(value_type = WhichEntry, example = "01964c7e-6f00-7000-8000-000000000023")]
    pub(crate) id: WhichEntry,
}

/// Path of a new entry.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct NewEntryPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The id of the entry, made by its writer: a UUID, preferably of version 7.
    #[param(value_type = String, format = Uuid, example = "01964c7e-6f00-7000-8000-000000000023")]
    pub(crate) id: EntryId,
}

/// Path of a colony.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct ColonyPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The colony.
    #[param(value_type = ColonyName, example = "S1")]
    pub(crate) colony: ColonyName,
}

/// Path of an apiary.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct ApiaryPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The apiary.
    #[param(value_type = ApiaryName, example = "Saltmarsh")]
    pub(crate) apiary: ApiaryName,
}

/// Path of a lot.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct LotPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The lot.
    #[param(value_type = LotName, example = "L1")]
    pub(crate) lot: LotName,
}

/// Path of a form.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct FormPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The kind of entry.
    #[serde(deserialize_with = "kind_of_form")]
    #[param(value_type = Kind, example = "inspection")]
    pub(crate) kind: Kind,
}

/// Path of a law.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct LawPath {
    /// The jurisdiction.
    #[param(value_type = Jurisdiction, example = "gb")]
    pub(crate) jurisdiction: Jurisdiction,
}

/// Path of a leaflet.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct LeafletPath {
    /// The jurisdiction.
    #[param(value_type = Jurisdiction, example = "gb")]
    pub(crate) jurisdiction: Jurisdiction,
    /// The leaflet.
    #[param(value_type = LeafletId, example = "amitraz-strip-500mg-a")]
    pub(crate) id: LeafletId,
}

/// Path of a problem.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct SlugPath {
    /// The last part of the problem's `type`.
    #[param(example = "unknown-colony")]
    pub(crate) slug: String,
}

/// Path of a file of the documentation page.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct FilePath {
    /// Its name.
    #[param(example = "index.html")]
    pub(crate) file: String,
}

/// Path of a new document.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct NewDocumentPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The id of the entry that attaches it, made by its writer: a UUID, preferably of version 7.
    #[param(value_type = String, format = Uuid, example = "01964c7e-6f00-7000-8000-000000000040")]
    pub(crate) document: EntryId,
}

/// Path of an attached document.
#[derive(Debug, Deserialize, IntoParams)]
pub(crate) struct DocumentPath {
    /// The holding.
    #[param(value_type = HoldingName, example = "heathside")]
    pub(crate) holding: HoldingName,
    /// The SHA-256 hash of its content.
    #[param(value_type = String, min_length = 64, max_length = 64, pattern = "^[0-9a-f]{64}$")]
    pub(crate) document: Hash,
}

/// What a document is attached to, when and by whom.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct NewDocumentQuery {
    /// The lot whose purchase it proves. Either this or `prescription`.
    #[param(value_type = LotName, required = false, example = "L1")]
    pub(crate) lot: Option<LotName>,
    /// The prescription of which it is a copy. Either this or `lot`.
    #[param(value_type = PrescriptionName, required = false)]
    pub(crate) prescription: Option<PrescriptionName>,
    /// The civil day on which it is attached.
    #[param(value_type = Day, example = "2026-08-24")]
    pub(crate) on: Day,
    /// Who attaches it.
    #[param(value_type = Person, example = "A. Keeper")]
    pub(crate) recorded_by: Person,
    /// The name of the original file.
    #[param(required = false, max_length = 200, example = "invoice-17.pdf")]
    pub(crate) file_name: Option<String>,
}

/// No query parameters.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct Nothing {}

/// Which leaflets.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct LeafletQuery {
    /// Those that apply in this jurisdiction: a member state of the Union uses those of the Union where it has none of its own.
    #[param(value_type = Jurisdiction, required = false, example = "gb")]
    pub(crate) jurisdiction: Option<Jurisdiction>,
    /// Those with this active substance.
    #[param(required = false, max_length = 200, example = "amitraz")]
    pub(crate) active: Option<String>,
    /// Those counted in this unit.
    #[param(value_type = Unit, required = false, example = "strip")]
    pub(crate) unit: Option<Unit>,
}

/// The day of a question.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct OnQuery {
    /// The civil day asked about; today by default.
    #[param(value_type = Day, required = false, example = "2026-08-24")]
    pub(crate) on: Option<Day>,
}

/// The period of a register.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct TimeQuery {
    /// The first day; by default 1 January of the year of the last day.
    #[param(value_type = Day, required = false, example = "2026-01-01")]
    pub(crate) from: Option<Day>,
    /// The last day; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) to: Option<Day>,
    /// Events after this day are ignored; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) as_of: Option<Day>,
}

/// The period of a pack, and what goes into it.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct PackQuery {
    /// The first day; by default 1 January of the year of the last day.
    #[param(value_type = Day, required = false, example = "2026-01-01")]
    pub(crate) from: Option<Day>,
    /// The last day; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) to: Option<Day>,
    /// Events after this day are ignored; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) as_of: Option<Day>,
    /// Whether the keeper's own list of what is missing goes into it; by default it does not.
    #[param(value_type = bool, required = false)]
    #[serde(default, deserialize_with = "yes_or_no")]
    pub(crate) gaps: bool,
}

/// The period and format of a register.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct RegisterQuery {
    /// The first day; by default 1 January of the year of the last day.
    #[param(value_type = Day, required = false, example = "2026-01-01")]
    pub(crate) from: Option<Day>,
    /// The last day; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) to: Option<Day>,
    /// Events after this day are ignored; today by default.
    #[param(value_type = Day, required = false, example = "2026-12-31")]
    pub(crate) as_of: Option<Day>,
    /// The format. By default the one that the `Accept` header prefers, or JSON if it names none of them.
    #[param(inline, required = false)]
    pub(crate) format: Option<Form>,
    /// How days are counted: `calendar-1` (default) counts civil days; `elapsed-24` adds the moment after full days of 24
    /// hours.
    #[param(inline, required = false)]
    pub(crate) counting: Option<CountingWord>,
}

/// How days are counted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, ToSchema)]
pub(crate) enum CountingWord {
    /// Civil days.
    #[serde(rename = "calendar-1")]
    #[schema(rename = "calendar-1")]
    Calendar,
    /// Full days of 24 hours.
    #[serde(rename = "elapsed-24")]
    #[schema(rename = "elapsed-24")]
    Elapsed,
}

/// The formats of a register.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, ToSchema)]
#[serde(rename_all = "lowercase")]
pub(crate) enum Form {
    /// JSON.
    Json,
    /// CSV.
    Csv,
    /// A page for reading and printing.
    Html,
    /// PDF.
    Pdf,
}

/// The start days of a question, and assumptions about the site.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct OptionsQuery {
    /// The first start day; today by default.
    #[param(value_type = Day, required = false, example = "2026-08-24")]
    pub(crate) from: Option<Day>,
    /// The last start day, at most 399 days after the first; 59 days after it by default.
    #[param(value_type = Day, required = false, example = "2026-10-22")]
    pub(crate) to: Option<Day>,
    /// Events after this day are ignored; by default the first start day.
    #[param(value_type = Day, required = false, example = "2026-08-24")]
    pub(crate) as_of: Option<Day>,
    /// What-if: electric power at the apiary. It is not recorded.
    #[param(value_type = Power, required = false)]
    pub(crate) power: Option<Power>,
    /// What-if: how the apiary can be reached. It is not recorded.
    #[param(value_type = Access, required = false)]
    pub(crate) access: Option<Access>,
    /// What-if: the ground at the stands. It is not recorded.
    #[param(value_type = Ground, required = false)]
    pub(crate) ground: Option<Ground>,
    /// The last day of the assumptions; by default they apply from the first day, without end.
    #[param(value_type = Day, required = false)]
    pub(crate) site_until: Option<Day>,
}

/// The days of a question about due items, and the format of the answer.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct DueQuery {
    /// The first day; events after it are ignored. Today by default.
    #[param(value_type = Day, required = false, example = "2026-08-24")]
    pub(crate) from: Option<Day>,
    /// The last day, at most 399 days after the first; 59 days after it by default.
    #[param(value_type = Day, required = false, example = "2026-10-22")]
    pub(crate) to: Option<Day>,
    /// Only this apiary.
    #[param(value_type = ApiaryName, required = false, example = "Saltmarsh")]
    pub(crate) apiary: Option<ApiaryName>,
    /// The format, for clients that cannot send an `Accept` header. It takes precedence over that header.
    #[param(inline, required = false)]
    pub(crate) format: Option<DueFormat>,
}

/// The formats of due items.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, utoipa::ToSchema)]
#[serde(rename_all = "snake_case")]
pub(crate) enum DueFormat {
    /// JSON.
    Json,
    /// An iCalendar feed.
    Calendar,
}

/// The part of a list.
#[derive(Debug, Deserialize, IntoParams)]
#[serde(deny_unknown_fields)]
pub(crate) struct PageQuery {
    /// Only entries after this place in the journal.
    #[serde(default, deserialize_with = "after")]
    #[param(value_type = i64, required = false, minimum = 0, maximum = 9_007_199_254_740_991i64, default = 0)]
    pub(crate) after: u64,
    /// The largest number of entries.
    #[serde(default = "limit_if_not_said", deserialize_with = "limit")]
    #[param(value_type = i32, required = false, minimum = 1, maximum = 500, default = 100)]
    pub(crate) limit: u32,
}

/// The greatest integer that every JSON reader represents exactly; no journal comes near it.
pub(crate) const PLACE_MOST: u64 = 9_007_199_254_740_991;
const LIMIT_MOST: u32 = 500;
const LIMIT_IF_NOT_SAID: u32 = 100;

fn limit_if_not_said() -> u32 {
    LIMIT_IF_NOT_SAID
}

fn limit<'de, D: Deserializer<'de>>(deserializer: D) -> Result<u32, D::Error> {
    let text = String::deserialize(deserializer)?;
    let limit = whole(&text).filter(|limit| (1..=u64::from(LIMIT_MOST)).contains(limit));
    limit
        .and_then(|limit| u32::try_from(limit).ok())
        .ok_or_else(|| serde::de::Error::custom(http::not_a_limit(words(), &text, LIMIT_MOST)))
}

/// In a path, both the id and the number are text.
fn entry_in_path<'de, D: Deserializer<'de>>(deserializer: D) -> Result<WhichEntry, D::Error> {
    let text = String::deserialize(deserializer)?;
    text.parse().map_err(|fault: NotAnEntry| serde::de::Error::custom(Misread::from(fault)))
}

fn kind_of_form<'de, D: Deserializer<'de>>(deserializer: D) -> Result<Kind, D::Error> {
    let text = String::deserialize(deserializer)?;
    Kind::from_word(&text)
        .filter(|kind| is_filled_in(*kind))
        .ok_or_else(|| serde::de::Error::custom(http::no_form(words(), &text)))
}

fn after<'de, D: Deserializer<'de>>(deserializer: D) -> Result<u64, D::Error> {
    let text = String::deserialize(deserializer)?;
    whole(&text)
        .filter(|after| *after <= PLACE_MOST)
        .ok_or_else(|| serde::de::Error::custom(http::not_a_place(words(), &text)))
}

/// In a query, everything is text.
fn yes_or_no<'de, D: Deserializer<'de>>(deserializer: D) -> Result<bool, D::Error> {
    let text = String::deserialize(deserializer)?;
    text.parse().map_err(|_| serde::de::Error::custom(http::not_yes_or_no(words(), &text)))
}

/// Digits only: Rust also parses `+5`, but the document promises a plain number.
fn whole(text: &str) -> Option<u64> {
    text.bytes().all(|byte| byte.is_ascii_digit()).then(|| text.parse().ok()).flatten()
}

impl<T: DeserializeOwned + Send, S: Send + Sync> FromRequestParts<S> for Path<T> {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Path<T>, Problem> {
        // The framework's extractor does not say which part of the path failed.
        let Ok(raw) = RawPathParams::from_request_parts(parts, state).await else {
            return Err(not_utf_8(parts, state).await);
        };
        let named = raw.iter().map(|(name, text)| (name.to_owned(), text.to_owned()));
        read_named(named).map(Path).map_err(|fault| bad_path(&fault))
    }
}

fn bad_path(fault: &Reading) -> Problem {
    let words = words();
    let message = misread(words, &fault.what);
    let (detail, help) = match (fault.name().as_str(), &fault.what) {
        ("id" | "document", Misread::Id(_)) => (http::not_an_entry(words, &message), Label::HttpIdHelp),
        ("id", Misread::Entry(_)) => (message, Label::HttpEntryHelp),
        ("document", _) => (message, Label::HttpDocumentHelp),
        _ => (message, Label::HttpNameHelp),
    };
    Problem::bad_parameter(&fault.name(), detail, label(help))
}

async fn not_utf_8<S: Send + Sync>(parts: &mut Parts, state: &S) -> Problem {
    let detail = label(Label::HttpPathNotUtf8);
    let path = axum::extract::Path::<HashMap<String, String>>::from_request_parts(parts, state).await;
    if let Err(PathRejection::FailedToDeserializePathParams(fault)) = path
        && let ErrorKind::InvalidUtf8InPathParam { key } = fault.into_kind()
    {
        return Problem::bad_parameter(&key, detail, label(Label::HttpPathNotUtf8Help));
    }
    Problem::new(ProblemKind::BadParameter, detail)
}

impl<T: DeserializeOwned, S: Send + Sync> FromRequestParts<S> for Query<T> {
    type Rejection = Problem;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Query<T>, Problem> {
        let query = parts.uri.query().unwrap_or_default();
        read_named(form_urlencoded::parse(query.as_bytes()).into_owned())
            .map(Query)
            .map_err(|fault| bad_query(&fault))
    }
}

fn bad_query(fault: &Reading) -> Problem {
    let words = words();
    let mut parameter = fault.name();
    let (detail, help) = match &fault.what {
        Misread::DuplicateField { field } => {
            parameter.clone_from(field);
            (http::given_twice(words, field), label(Label::HttpGiveOnce).to_owned())
        }
        Misread::MissingField { field } => {
            parameter.clone_from(field);
            (http::missing(words, field), label(Label::HttpAddToAddress).to_owned())
        }
        Misread::UnknownField { field, known } if known.is_empty() => {
            (http::no_parameter(words, field), label(Label::HttpTakesNone).to_owned())
        }
        Misread::UnknownField { field, known } => {
            (http::no_parameter(words, field), http::takes(words, &unreadable::known(words, known)))
        }
        other => (misread(words, other), http::correct_or_leave_out(words, &parameter)),
    };
    Problem::bad_parameter(&parameter, detail, help)
}

impl<S: Send + Sync> FromRequest<S> for JsonText {
    type Rejection = Problem;

    async fn from_request(request: Request, _: &S) -> Result<JsonText, Problem> {
        check_media_type(request.headers())?;
        let bytes = read_whole(request).await.map_err(Unread::problem)?;
        let text = String::from_utf8(bytes.into()).map_err(|_| {
            Problem::new(ProblemKind::UnreadableBody, label(Label::HttpBodyNotUtf8))
                .at_body(label(Label::HttpBodyNotUtf8Help))
        })?;
        check_json(&text)?;
        Ok(JsonText(text))
    }
}

fn check_media_type(headers: &HeaderMap) -> Result<(), Problem> {
    let declared = headers.get(CONTENT_TYPE).and_then(|value| value.to_str().ok());
    let essence = declared.and_then(|declared| declared.split(';').next()).map(str::trim);
    if essence.is_some_and(|essence| essence.eq_ignore_ascii_case("application/json")) {
        return Ok(());
    }
    let detail = declared.map_or_else(
        || label(Label::HttpBodyUndeclared).to_owned(),
        |declared| http::body_declared(words(), declared),
    );
    Err(Problem::new(ProblemKind::WrongMediaType, detail).at_body(label(Label::HttpDeclareJson)))
}

fn check_json(text: &str) -> Result<(), Problem> {
    let Err(error) = serde_json::from_str::<IgnoredAny>(text) else { return Ok(()) };
    let words = words();
    let what = misread(words, &Misread::not_json(&error));
    let detail = http::at_line(words, error.line(), error.column(), &what);
    Err(Problem::new(ProblemKind::MalformedJson, detail).at_body(label(Label::HttpJsonHelp)))
}
