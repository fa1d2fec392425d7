//! What else can be used, in a colony and at an apiary.

use axum::Json;
use axum::extract::State;
use combclear_domain::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{ApiaryOptions, Ask, ColonyOptions, Span, WhatIf};
use combclear_wording::Words;
use combclear_wording::options::{ApiaryReport, OptionsReport};
use combclear_wording::refusals::Refused;

use crate::apiaries::unknown_apiary;
use crate::app::App;
use crate::colonies::check_known;
use crate::extract::{ApiaryPath, ColonyPath, OptionsQuery, Path, Query};
use crate::problem::{Problem, ProblemKind, Problems};

/// Days asked about by default.
const DAYS_IF_NOT_SAID: u16 = 60;

/// Ask what else can be used in a colony
///
/// Checks every leaflet of the holding's jurisdiction against the colony and its apiary for every start day: usable, unknown
/// or ruled out, with each condition, missing facts, visits, dose, and the first day on which supers may go on.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/treatment-options",
    tag = "colonies",
    params(ColonyPath, OptionsQuery),
    responses((status = 200, description = "The options, in order.", body = OptionsReport), Problems),
)]
pub(crate) async fn get_colony_options(
    State(app): State<App>,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OptionsQuery>,
) -> Result<Json<OptionsReport>, Problem> {
    let ask = query.read(&app)?;
    let report = move |holding: &Holding, app: &App| {
        check_known(holding, &path.colony)?;
        let answer = ColonyOptions::of(holding, &app.leaflets, &path.colony, &ask);
        Ok(Json(OptionsReport::of(Words::english(), answer)))
    };
    app.ask(&path.holding, report).await?
}

/// Ask what else can be used at an apiary
///
/// The same for every colony that stands there on the first day: usable for all of them, for some, and for which not and
/// why, with the dose for all together.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/apiaries/{apiary}/treatment-options",
    tag = "apiaries",
    params(ApiaryPath, OptionsQuery),
    responses((status = 200, description = "The options, in order.", body = ApiaryReport), Problems),
)]
pub(crate) async fn get_apiary_options(
    State(app): State<App>,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OptionsQuery>,
) -> Result<Json<ApiaryReport>, Problem> {
    let ask = query.read(&app)?;
    let report = move |holding: &Holding, app: &App| {
        let answer = ApiaryOptions::of(holding, &app.leaflets, &path.apiary, &ask);
        let report = answer.map(|answer| ApiaryReport::of(Words::english(), answer));
        report.map(Json).ok_or_else(|| unknown_apiary(holding, &path.apiary))
    };
    app.ask(&path.holding, report).await?
}

impl OptionsQuery {
    fn read(self, app: &App) -> Result<Ask, Problem> {
        let from = app.day(self.from);
        let to = self.to.unwrap_or_else(|| from.plus(DAYS_IF_NOT_SAID - 1));
        let span = Span::new(from, to).map_err(|fault| {
            let Refused { message, help } = Refused::of_span(Words::english(), fault);
            Problem::new(ProblemKind::BadParameter, message).at_parameter("to", help)
        })?;
        let what_if =
            WhatIf { power: self.power, access: self.access, ground: self.ground, until: self.site_until };
        check_until(&what_if, from)?;
        Ok(Ask { span, as_of: self.as_of.unwrap_or(from), what_if })
    }
}

fn check_until(what_if: &WhatIf, from: Day) -> Result<(), Problem> {
    let (detail, help) = match what_if.until {
        Some(_) if what_if.is_empty() => (
            "`site_until` is given, but nothing is assumed of the site".to_owned(),
            "give `power`, `access` or `ground` as well, or leave it out",
        ),
        Some(until) if until < from => (
            format!("what is assumed would end on {until}, before the first day, {from}"),
            "give a later day, or leave it out",
        ),
        _ => return Ok(()),
    };
    Err(Problem::new(ProblemKind::BadParameter, detail).at_parameter("site_until", help))
}
