//! The answer to a question, as the service would send it.

use std::collections::BTreeMap;

use combclear_domain::basics::words::{ApiaryName, HoldingName};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::due::Due;
use combclear_domain::questions::options::{ApiaryOptions, ColonyOptions};
use combclear_domain::questions::retention::Retention;
use combclear_domain::questions::stock::Stock;
use combclear_domain::rules::law::Laws;
use combclear_domain::rules::leaflet::Leaflets;
use combclear_domain::{Day, Instant};
use combclear_pictures as picture;
use combclear_wording::due::DueReport;
use combclear_wording::options::{ApiaryReport, OptionsReport};
use combclear_wording::reports::asked::{OptionsAsked, span};
use combclear_wording::reports::filled_in::{FormList, NewForm};
use combclear_wording::reports::history::ColonyHistory;
use combclear_wording::reports::lot_leaflet::LotLeaflet;
use combclear_wording::reports::medicines::MedicineList;
use combclear_wording::reports::{ClockBehind, Fault, Unanswered, Why, apiaries, colonies};
use combclear_wording::retention::RetentionReport;
use combclear_wording::stock::StockReport;
use combclear_wording::{Words, http};
use serde::Serialize;
use serde_json::value::RawValue;

use crate::Copy;
use crate::question::{About, Asked, Question};

/// An answer as the service would send it.
#[derive(Debug, Serialize)]
pub struct Answer {
    /// The HTTP status.
    pub status: u16,
    /// The media type.
    pub media_type: &'static str,
    /// JSON as it is; anything else as a JSON string.
    pub body: Box<RawValue>,
}

const JSON: &str = "application/json";
const PROBLEM: &str = "application/problem+json";

impl Answer {
    /// The answer to a path of the service, with a body if one was sent. Nothing if there is no copy to answer from, or if only the
    /// service itself can answer.
    pub(crate) fn to(
        copies: &BTreeMap<HoldingName, Copy>,
        words: &'static Words,
        path: &str,
        body: Option<&str>,
        (today, now): (Day, Instant),
    ) -> Option<Answer> {
        let (leaflets, laws) = (combclear_leaflets::builtin().ok()?, combclear_leaflets::laws().ok()?);
        match Question::read(path)? {
            Question::Forms => Answer::json(FormList::all(words)),
            Question::Of { holding, about, asked } => {
                let holding = copies.get(&holding)?.expected();
                holding.tip()?;
                let rests = Rests { words, holding, leaflets, laws, today, now };
                rests
                    .answer(&about, &asked, body)
                    .unwrap_or_else(|unanswered| Answer::problem(words, &unanswered))
            }
        }
    }

    fn json(report: impl Serialize) -> Option<Answer> {
        let body = serde_json::value::to_raw_value(&report).ok()?;
        Some(Answer { status: 200, media_type: JSON, body })
    }

    fn picture(drawn: &str) -> Option<Answer> {
        let body = serde_json::value::to_raw_value(drawn).ok()?;
        Some(Answer { status: 200, media_type: picture::MEDIA_TYPE, body })
    }

    fn problem(words: &Words, unanswered: &Unanswered) -> Option<Answer> {
        let Unanswered { why, detail, faults } = unanswered;
        let (status, title, detail) = match why {
            Why::UnknownApiary | Why::UnknownColony | Why::UnknownLot => (404, "Not Found", detail.clone()),
            Why::BadParameter => (400, "Bad Request", detail.clone()),
            Why::UnreadableForm | Why::UntrueForm => {
                (422, "Unprocessable Content", http::nothing_recorded(words, detail))
            }
        };
        // The status says it all (RFC 9457, section 4.2.1).
        let problem = Problem { kind: "about:blank", title, status, detail, errors: faults };
        let body = serde_json::value::to_raw_value(&problem).ok()?;
        Some(Answer { status, media_type: PROBLEM, body })
    }
}

/// A problem as the service sends it (RFC 9457).
#[derive(Serialize)]
struct Problem<'a> {
    #[serde(rename = "type")]
    kind: &'static str,
    title: &'static str,
    status: u16,
    detail: String,
    errors: &'a [Fault],
}

/// What an answer rests on.
struct Rests<'a> {
    words: &'static Words,
    holding: &'a Holding,
    leaflets: &'a Leaflets,
    laws: &'a Laws,
    today: Day,
    now: Instant,
}

impl Rests<'_> {
    fn answer(&self, about: &About, asked: &Asked, body: Option<&str>) -> Result<Option<Answer>, Unanswered> {
        let Rests { words, holding, leaflets, laws, today, now: _ } = *self;
        let on = asked.on.unwrap_or(today);
        Ok(match about {
            About::Colonies => self.dated(asked.on, colonies::list(words, holding, leaflets, on)),
            About::Colony(colony) => {
                self.dated(asked.on, colonies::one(words, holding, leaflets, colony, on)?)
            }
            About::ColonySupering(colony) => {
                self.dated(asked.on, colonies::supering(words, holding, leaflets, colony, on)?)
            }
            About::ColonyHistory(colony) => {
                self.dated(asked.on, ColonyHistory::of(words, holding, colony, on)?)
            }
            About::ColonySeason(colony) => {
                let season = colonies::season(words, holding, leaflets, colony, on)?;
                Answer::picture(&picture::of_colony(words, &season))
            }
            About::ColonyOptions(colony) => {
                // What is wrong with the question is told first, as the service does.
                let ask = options(asked).read(words, today)?;
                colonies::check_known(words, holding, colony)?;
                let answer = ColonyOptions::of(holding, leaflets, colony, &ask);
                self.dated(asked.from, OptionsReport::of(words, holding, answer))
            }
            About::Apiaries => self.dated(asked.on, apiaries::list(holding, on)),
            About::Apiary(apiary) => self.dated(asked.on, apiaries::one(words, holding, apiary, on)?),
            About::ApiarySupering(apiary) => {
                self.dated(asked.on, apiaries::supering(words, holding, leaflets, apiary, on)?)
            }
            About::ApiarySeason(apiary) => self.season(apiary, on)?,
            About::ApiaryOptions(apiary) => {
                let ask = options(asked).read(words, today)?;
                let answer = ApiaryOptions::of(holding, leaflets, apiary, &ask)
                    .ok_or_else(|| Unanswered::no_apiary(words, holding, apiary))?;
                self.dated(asked.from, ApiaryReport::of(words, holding, answer))
            }
            About::Visit(apiary) => {
                self.dated(asked.on, apiaries::visit(words, holding, leaflets, laws, apiary, on)?)
            }
            About::Due => self.due(asked)?,
            About::Stock => {
                self.dated(asked.on, StockReport::of(words, holding, Stock::of(holding, leaflets, on)))
            }
            About::LotLeaflet(lot) => {
                self.dated(asked.on, LotLeaflet::of(words, holding, leaflets, lot, on)?)
            }
            About::Medicines => Answer::json(MedicineList::of(holding, leaflets, today)),
            About::Retention => {
                let retention = Retention::of(holding, leaflets, laws, on);
                self.dated(asked.on, RetentionReport::of(words, retention))
            }
            About::FilledIn(kind) => {
                let form = NewForm::read(words, body.unwrap_or_default())?;
                Answer::json(form.fill_in(words, holding, leaflets, *kind, (today, self.now))?)
            }
        })
    }

    fn season(&self, apiary: &ApiaryName, on: Day) -> Result<Option<Answer>, Unanswered> {
        let here = apiaries::one(self.words, self.holding, apiary, on)?.colonies;
        let drawn = picture::around(self.words, self.holding, self.leaflets, apiary, &here, on);
        Ok(drawn.and_then(|drawn| Answer::picture(&drawn)))
    }

    fn due(&self, asked: &Asked) -> Result<Option<Answer>, Unanswered> {
        let Rests { words, holding, leaflets, laws, today, .. } = *self;
        let span = span(words, asked.from.unwrap_or(today), asked.to)?;
        if let Some(unknown) =
            asked.apiary.as_ref().filter(|named| !holding.apiaries().any(|known| known == *named))
        {
            return Err(Unanswered::no_apiary(words, holding, unknown));
        }
        let due = Due::of(holding, leaflets, laws, span, asked.apiary.as_ref());
        Ok(self.dated(asked.from, DueReport::of(words, holding, due)))
    }

    /// A report, with a warning if it is about today and the clock is behind the journal.
    fn dated(&self, named: Option<Day>, report: impl Serialize) -> Option<Answer> {
        let about = named.is_none().then_some(self.today);
        let clock_behind = about.and_then(|today| ClockBehind::of(self.words, self.holding, today));
        Answer::json(ClockBehind::beside(clock_behind, report))
    }
}

fn options(asked: &Asked) -> OptionsAsked {
    let Asked { from, to, as_of, power, access, ground, site_until, .. } = *asked;
    OptionsAsked { from, to, as_of, power, access, ground, site_until }
}
