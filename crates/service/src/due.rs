//! What must or may be done, as JSON or a calendar.

use axum::http::header::{CONTENT_TYPE, VARY};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::Due;
use combclear_papers::calendar::{MEDIA_TYPE, calendar};
use combclear_wording::due::DueReport;
use combclear_wording::reports::Unanswered;

use crate::accept::preferred;
use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{DueFormat, DueQuery, HoldingPath, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

/// The formats in order of preference.
const FORMS: [(&str, DueFormat); 2] =
    [("application/json", DueFormat::Json), ("text/calendar", DueFormat::Calendar)];

/// Ask what is due
///
/// What must or may be done, with first and last day, grouped into visits to apiaries; overdue items first. With `Accept:
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
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<DueQuery>,
    headers: HeaderMap,
) -> Result<Response, Problem> {
    let span = app.span(query.from, query.to)?;
    let apiary = query.apiary;
    let format = query.format.or_else(|| preferred(&headers, &FORMS)).unwrap_or(DueFormat::Json);
    // Both formats share one URL, so caches must keep them apart.
    let vary = [(VARY, HeaderValue::from_static("accept"))];
    let ask = move |holding: &Holding, app: &App| match &apiary {
        Some(apiary) if !holding.apiaries().any(|known| known == apiary) => {
            Err(Unanswered::no_apiary(words(), holding, apiary).into())
        }
        apiary => {
            let due = Due::of(holding, &app.leaflets, &app.laws, span, apiary.as_ref());
            let report = DueReport::of(words(), holding, due);
            let doubt = Doubt::of(app, holding, query.from.is_none());
            Ok(match format {
                DueFormat::Json => (vary, doubt.json(report)).into_response(),
                DueFormat::Calendar => {
                    let media_type = [(CONTENT_TYPE, HeaderValue::from_static(MEDIA_TYPE))];
                    doubt.over((vary, media_type, calendar(words(), &report)))
                }
            })
        }
    };
    app.report(&path.holding, ask).await?
}
