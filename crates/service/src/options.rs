//! What else can be used, in a colony and at an apiary.

use axum::response::Response;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{ApiaryOptions, Ask, ColonyOptions};
use combclear_wording::options::{ApiaryReport, OptionsReport};
use combclear_wording::reports::Unanswered;
use combclear_wording::reports::asked::OptionsAsked;
use combclear_wording::reports::colonies::check_known;

use crate::app::App;
use crate::doubt::Doubt;
use crate::extract::{ApiaryPath, ColonyPath, OptionsQuery, Path, Query};
use crate::freshness::Asked;
use crate::language::words;
use crate::problem::{Problem, Problems};

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
        check_known(words(), holding, &path.colony)?;
        let answer = ColonyOptions::of(holding, &app.leaflets, &path.colony, &ask);
        let report = OptionsReport::of(words(), holding, answer);
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
        let answer = answer.ok_or_else(|| Unanswered::no_apiary(words(), holding, &path.apiary))?;
        let report = ApiaryReport::of(words(), holding, answer);
        Ok(Doubt::of(app, holding, is_about_today).json(report))
    };
    app.ask(&path.holding, report).await?
}

impl OptionsQuery {
    fn read(self, app: &App) -> Result<Ask, Problem> {
        let OptionsQuery { from, to, as_of, power, access, ground, site_until } = self;
        let asked = OptionsAsked { from, to, as_of, power, access, ground, site_until };
        Ok(asked.read(words(), app.clock.today())?)
    }
}
