//! What must or may be done, also as a calendar.

use axum::Json;
use axum::extract::State;
use axum::http::header::{ACCEPT, CONTENT_TYPE, VARY};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use combclear_domain::due::DueReport;
use combclear_domain::holding::Holding;
use combclear_domain::options::Span;
use combclear_papers::calendar::{MEDIA_TYPE, calendar};

use crate::apiaries::unknown_apiary;
use crate::app::App;
use crate::extract::{DueFormat, DueQuery, HoldingPath, Path, Query};
use crate::problem::{Problem, ProblemKind, Problems};

/// How many days are asked about if nothing is said.
const DAYS_IF_NOT_SAID: u16 = 60;

/// Ask what is due
///
/// What must or may be done, from when, by when, taken together by visits to apiaries; what is overdue first. With `Accept:
/// text/calendar`, or `format=calendar`, an iCalendar feed (RFC 5545) of whole-day events with stable ids.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/due",
    tag = "holding",
    params(HoldingPath, DueQuery),
    responses(
        (status = 200, description = "What is due.", content(
            (DueReport = "application/json"),
            (String = "text/calendar"),
        )),
        Problems,
    ),
)]
pub(crate) async fn get_due(
    State(app): State<App>,
    Path(path): Path<HoldingPath>,
    Query(query): Query<DueQuery>,
    headers: HeaderMap,
) -> Result<Response, Problem> {
    let from = app.day(query.from);
    let to = query.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
    let span = Span::new(from, to).map_err(|fault| {
        Problem::new(ProblemKind::BadParameter, fault.to_string()).at_parameter("to", fault.help())
    })?;
    let ask = |holding: &Holding| match &query.apiary {
        Some(apiary) if !holding.apiaries().any(|known| known == apiary) => {
            Err(unknown_apiary(holding, apiary))
        }
        apiary => Ok(DueReport::of(holding, &app.leaflets, &app.laws, span, apiary.as_ref())),
    };
    let report = app.ask(&path.holding, ask).await??;
    let format = query.format.unwrap_or_else(|| accepted(&headers));
    // Both forms stand at one address: whoever keeps answers must not mix them up.
    let vary = [(VARY, HeaderValue::from_static("accept"))];
    Ok(match format {
        DueFormat::Json => (vary, Json(report)).into_response(),
        DueFormat::Calendar => {
            let media_type = [(CONTENT_TYPE, HeaderValue::from_static(MEDIA_TYPE))];
            (vary, media_type, calendar(&report)).into_response()
        }
    })
}

/// The form that a client accepts best; JSON unless it likes a calendar better (RFC 9110, section 12.5.1).
fn accepted(headers: &HeaderMap) -> DueFormat {
    let ranges = || {
        let values = headers.get_all(ACCEPT).iter().filter_map(|value| value.to_str().ok());
        values.flat_map(|value| value.split(','))
    };
    // The most specific range that covers a media type speaks for it.
    let weight = |media_type: &str, any_of_it: &str| {
        let named = |range: &str| ranges().find_map(|written| weight_of(written, range));
        named(media_type).or_else(|| named(any_of_it)).or_else(|| named("*/*")).unwrap_or(0)
    };
    let (json, calendar) = (weight("application/json", "application/*"), weight("text/calendar", "text/*"));
    if calendar > json { DueFormat::Calendar } else { DueFormat::Json }
}

/// The weight that this part of the header gives to a range, in thousandths; none if it speaks of another.
fn weight_of(written: &str, range: &str) -> Option<u16> {
    let mut parts = written.split(';').map(str::trim);
    if !parts.next()?.eq_ignore_ascii_case(range) {
        return None;
    }
    let quality = parts.find_map(|part| part.strip_prefix("q=").or_else(|| part.strip_prefix("Q=")));
    let Some(quality) = quality else { return Some(1_000) };
    let (whole, decimals) = quality.split_once('.').unwrap_or((quality, ""));
    let thousandths = format!("{whole}{decimals:0<3}");
    thousandths.parse().ok().filter(|weight| *weight <= 1_000)
}
