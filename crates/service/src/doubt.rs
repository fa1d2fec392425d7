//! The clock of the machine, where it is behind the journal: an answer about "today" then says so.

use axum::Json;
use axum::http::HeaderValue;
use axum::response::{IntoResponse, Response};
use combclear_domain::facts::holding::Holding;
use combclear_wording::reports::ClockBehind;
use serde::Serialize;

use crate::app::App;
use crate::language::words;

/// The header of an answer that rests on a clock which is behind. Files have nothing else to say it in.
pub(crate) const CLOCK_BEHIND: &str = "clock-behind";

/// What an answer must say of the clock, if anything.
#[derive(Debug, Clone)]
pub(crate) struct Doubt(Option<ClockBehind>);

impl Doubt {
    /// What an answer about this holding must say. Nothing unless it is about today, since no day was named.
    pub(crate) fn of(app: &App, holding: &Holding, is_about_today: bool) -> Doubt {
        let about = is_about_today.then(|| app.clock.today());
        Doubt(about.and_then(|today| ClockBehind::of(words(), holding, today)))
    }

    /// The answer to a question.
    pub(crate) fn json(self, report: impl Serialize) -> Response {
        let body = Json(ClockBehind::beside(self.0.clone(), report));
        self.over(body)
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
