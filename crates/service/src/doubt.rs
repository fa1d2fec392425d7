//! The clock of the machine, where it is behind the journal: an answer about "today" then says so.
//!
//! It is not refused, since the clock may have been ahead when the entry was recorded. Who names the day is not warned.

use axum::Json;
use axum::http::HeaderValue;
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::Holding;
use combclear_domain::{Day, Instant};
use combclear_wording::terminal::failures::clock_is_behind;
use combclear_wording::{Label, Words};
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::problem::label;

/// The header of an answer that rests on a clock which is behind. Files have nothing else to say it in.
pub(crate) const CLOCK_BEHIND: &str = "clock-behind";

/// That the clock of the machine is behind the journal, so that "today" may be another day.
#[derive(Debug, Clone, Serialize, ToSchema)]
pub(crate) struct ClockBehind {
    /// The day that the clock says it is.
    today: Day,
    /// The place of the entry that was recorded later.
    #[schema(minimum = 1, maximum = 9_007_199_254_740_991i64)]
    seq: u64,
    /// When it was recorded.
    recorded_at: Instant,
    /// The same in a sentence.
    said: String,
    /// What to do.
    #[schema(value_type = String)]
    help: &'static str,
}

/// What an answer must say of the clock, if anything.
#[derive(Debug, Clone)]
pub(crate) struct Doubt(Option<ClockBehind>);

/// A report with the warning beside its fields.
#[derive(Serialize)]
struct Warned<T> {
    #[serde(flatten)]
    report: T,
    clock_behind: ClockBehind,
}

impl Doubt {
    /// What an answer about this holding must say. Nothing unless it is about today, since no day was named.
    pub(crate) fn of(app: &App, holding: &Holding, is_about_today: bool) -> Doubt {
        let today = app.clock.today();
        let newest = is_about_today.then(|| holding.recorded_after(today)).flatten();
        Doubt(newest.map(|newest| {
            let (seq, recorded_at) = (newest.seq, newest.recorded_at);
            let said = clock_is_behind(Words::english(), today, seq, recorded_at);
            ClockBehind { today, seq, recorded_at, said, help: label(Label::ClockIsBehindHelp) }
        }))
    }

    /// The answer to a question.
    pub(crate) fn json(self, report: impl Serialize) -> Response {
        match self.0.clone() {
            Some(clock_behind) => self.over(Json(Warned { report, clock_behind })),
            None => Json(report).into_response(),
        }
    }

    /// A file, with the warning in its header only.
    pub(crate) fn over(self, file: impl IntoResponse) -> Response {
        let mut response = file.into_response();
        let newest = self.0.and_then(|behind| HeaderValue::from_str(&behind.recorded_at.to_string()).ok());
        if let Some(newest) = newest {
            response.headers_mut().insert(CLOCK_BEHIND, newest);
        }
        response
    }
}
