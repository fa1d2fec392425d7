//! What else can be used, in a colony and at an apiary.

use axum::response::Response;
use combclear_domain::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{ApiaryOptions, Ask, ColonyOptions, WhatIf};
use combclear_wording::options::{ApiaryReport, OptionsReport};
use combclear_wording::terminal::failures::site_until_too_early;
use combclear_wording::{Label, Words};

use crate::apiaries::unknown_apiary;
use crate::app::App;
use crate::colonies::check_known;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, ColonyPath, OptionsQuery, Path, Query};
use crate::freshness::Asked;
use crate::problem::{Problem, Problems, label};

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
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OptionsQuery>,
) -> Result<Response, Problem> {
    let (is_about_today, ask) = (query.from.is_none(), query.read(&app)?);
    let report = move |holding: &Holding, app: &App| {
        check_known(holding, &path.colony)?;
        let answer = ColonyOptions::of(holding, &app.leaflets, &path.colony, &ask);
        let report = OptionsReport::of(Words::english(), holding, answer);
        Ok(Doubt::of(app, holding, is_about_today).json(report))
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
    Asked(app): Asked,
    Path(path): Path<ApiaryPath>,
    Query(query): Query<OptionsQuery>,
) -> Result<Response, Problem> {
    let (is_about_today, ask) = (query.from.is_none(), query.read(&app)?);
    let report = move |holding: &Holding, app: &App| {
        let answer = ApiaryOptions::of(holding, &app.leaflets, &path.apiary, &ask);
        let answer = answer.ok_or_else(|| unknown_apiary(holding, &path.apiary))?;
        let report = ApiaryReport::of(Words::english(), holding, answer);
        Ok(Doubt::of(app, holding, is_about_today).json(report))
    };
    app.ask(&path.holding, report).await?
}

impl OptionsQuery {
    fn read(self, app: &App) -> Result<Ask, Problem> {
        let span = app.span(self.from, self.to)?;
        let from = span.from();
        let what_if =
            WhatIf { power: self.power, access: self.access, ground: self.ground, until: self.site_until };
        check_until(&what_if, from)?;
        Ok(Ask { span, as_of: self.as_of.unwrap_or(from), what_if })
    }
}

fn check_until(what_if: &WhatIf, from: Day) -> Result<(), Problem> {
    let (detail, help) = match what_if.until {
        Some(_) if what_if.is_empty() => {
            (label(Label::HttpSiteUntilAlone).to_owned(), Label::HttpSiteUntilAloneHelp)
        }
        Some(until) if until < from => {
            (site_until_too_early(Words::english(), until, from), Label::AskedGiveALaterDay)
        }
        _ => return Ok(()),
    };
    Err(Problem::bad_parameter("site_until", detail, label(help)))
}
