//! Colonies: where they stand, what is in them, whether they may be supered.

use axum::http::HeaderValue;
use axum::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE};
use axum::response::{IntoResponse, Response};
use combclear_domain::Day;
use combclear_domain::basics::spelling::nearest;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::facts::history::{BroodSeen, Histories, History, SuperSpan};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::timeline::Timeline;
use combclear_papers::picture;
use combclear_wording::supering::{SuperingReport, SuperingSummary};
use combclear_wording::{Label, Words, http, notice};
use serde::Serialize;
use utoipa::ToSchema;

use crate::app::App;
use crate::course::{ColonyCourse, Happened};
use crate::doubt::Doubt;
use crate::extract::{ColonyPath, HoldingPath, OnQuery, Path, Query};
use crate::freshness::Asked;
use crate::problem::{Problem, ProblemKind, Problems, label};

/// The colonies alive on a day.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ColonyList {
    /// The holding.
    holding: HoldingName,
    /// The day asked about.
    on: Day,
    /// In order of name.
    items: Vec<ColonyItem>,
    /// The limits of these answers.
    notice: String,
}

/// A colony in a list, with the short answer.
#[derive(Debug, Serialize, ToSchema)]
struct ColonyItem {
    /// Its name.
    colony: ColonyName,
    /// Where it stands.
    apiary: Option<ApiaryName>,
    /// The mark on its hive, as first recorded.
    hive_mark: Option<String>,
    /// Whether it may be supered.
    #[serde(flatten)]
    supering: SuperingSummary,
}

/// List the colonies
///
/// Those alive on the day, each with the answer to whether it may be supered.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies",
    tag = "colonies",
    params(HoldingPath, OnQuery),
    responses((status = 200, description = "The colonies.", body = ColonyList), Problems),
)]
pub(crate) async fn list_colonies(
    Asked(app): Asked,
    Path(path): Path<HoldingPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let list = move |holding: &Holding, app: &App| {
        let alive = holding.colonies().filter(|colony| holding.life(colony).lasts(on));
        let mut histories = Histories::new(holding, &app.leaflets);
        let items = alive.map(|colony| ColonyItem::of(holding, &histories.of(colony), on)).collect();
        let notice = notice(Words::english());
        let list = ColonyList { holding: holding.name().clone(), on, items, notice };
        Doubt::of(app, holding, query.on.is_none()).json(list)
    };
    app.report(&path.holding, list).await
}

/// A colony on a day.
#[derive(Debug, Serialize, ToSchema)]
pub(crate) struct ColonyReport {
    /// The holding.
    holding: HoldingName,
    /// Its name.
    colony: ColonyName,
    /// The day asked about.
    on: Day,
    /// The mark on its hive, as first recorded.
    hive_mark: Option<String>,
    /// Its apiary on that day.
    apiary: Option<ApiaryName>,
    /// Its beginning and end, as recorded.
    life: LifeReport,
    /// Since when, and by which entry, the medicine inside is not known. Null if it is known.
    unknown_since: Option<Happened>,
    /// The courses that reached it by that day, in the order of placing.
    courses: Vec<ColonyCourse>,
    /// The periods with harvest supers on, up to that day.
    supers: Vec<SuperSpan>,
    /// Brood seen up to that day.
    broods: Vec<BroodSeen>,
    /// The entries named above, with their numbers in the journal.
    named_entries: Vec<NamedEntry>,
}

/// The beginning and the end of a colony.
#[derive(Debug, Serialize, ToSchema)]
struct LifeReport {
    /// Whether it is alive on the day asked about.
    alive: bool,
    /// When and by which entry it came into the record.
    begun: Option<Happened>,
    /// When and by which entry it ended; null if it has not.
    ended: Option<Happened>,
}

/// Read one colony
///
/// Its life, apiary, courses with their terms, supers and brood, as recorded at the end of the day.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The colony.", body = ColonyReport), Problems),
)]
pub(crate) async fn get_colony(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let report = move |holding: &Holding, app: &App| {
        check_known(holding, &path.colony)?;
        let history = History::of(holding, &app.leaflets, &path.colony);
        Ok(Doubt::of(app, holding, query.on.is_none()).json(ColonyReport::of(holding, &history, on)))
    };
    app.ask(&path.holding, report).await?
}

/// Ask whether a colony may be supered
///
/// Yes, no or unknown, with the grounds, the first free day, what must happen first and what is missing. The answer is
/// unknown for a colony that came into the record after the day; a colony that no entry mentions is a problem.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/supering",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The answer.", body = SuperingReport), Problems),
)]
pub(crate) async fn get_colony_supering(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let report = move |holding: &Holding, app: &App| {
        check_known(holding, &path.colony)?;
        let report = SuperingReport::ask(Words::english(), holding, &app.leaflets, &path.colony, on);
        Ok(Doubt::of(app, holding, query.on.is_none()).json(report))
    };
    app.ask(&path.holding, report).await?
}

/// Draw the season of a colony
///
/// A picture (SVG, black and white, as wide as a phone) of the 120 days before the day and after it: may it be supered, what was in and
/// how long it may stay, doses, supers and nectar flows. It has a title and a description in words.
#[utoipa::path(
    get,
    path = "/holdings/{holding}/colonies/{colony}/season",
    tag = "colonies",
    params(ColonyPath, OnQuery),
    responses((status = 200, description = "The picture.", body = String, content_type = "image/svg+xml"), Problems),
)]
pub(crate) async fn get_colony_season(
    Asked(app): Asked,
    Path(path): Path<ColonyPath>,
    Query(query): Query<OnQuery>,
) -> Result<Response, Problem> {
    let on = app.day(query.on);
    let draw = move |holding: &Holding, app: &App| {
        check_known(holding, &path.colony)?;
        let season = Timeline::of(holding, &app.leaflets, &path.colony, on);
        let drawn = picture::of_colony(Words::english(), &season);
        Ok(Doubt::of(app, holding, query.on.is_none()).over(as_picture(drawn)))
    };
    app.ask(&path.holding, draw).await?
}

/// A picture that runs nothing and fetches nothing, wherever it is opened.
pub(crate) fn as_picture(drawn: String) -> impl IntoResponse {
    let policy = HeaderValue::from_static("default-src 'none'");
    let kind = HeaderValue::from_static(picture::MEDIA_TYPE);
    ([(CONTENT_TYPE, kind), (CONTENT_SECURITY_POLICY, policy)], drawn)
}

/// Refuses a colony that no standing entry mentions.
pub(crate) fn check_known(holding: &Holding, colony: &ColonyName) -> Result<(), Problem> {
    if !holding.colony_file(colony).is_empty() {
        return Ok(());
    }
    let detail = http::no_colony(Words::english(), holding.name(), colony);
    let near = nearest(colony.as_str(), holding.colonies().map(ColonyName::as_str));
    let problem = Problem::new(ProblemKind::UnknownColony, detail);
    Err(problem.at_unknown("colony", near, label(Label::HttpNoColonyHelp)))
}

impl ColonyItem {
    fn of(holding: &Holding, history: &History, on: Day) -> ColonyItem {
        let colony = &history.colony;
        ColonyItem {
            colony: colony.clone(),
            apiary: holding.apiary_of(colony, on).cloned(),
            hive_mark: holding.hive_mark(colony).map(str::to_owned),
            supering: SuperingSummary::of(Words::english(), &history.supering(on)),
        }
    }
}

impl ColonyReport {
    fn of(holding: &Holding, history: &History, on: Day) -> ColonyReport {
        let colony = &history.colony;
        let happened = |(on, entry): (Day, EntryId)| Happened { on, entry };
        let courses = history.courses_on(on);
        let supers = history.supers.iter().filter(|span| span.from <= on);
        let off = |span: &SuperSpan| span.off.filter(|off| *off <= on);
        let mut report = ColonyReport {
            holding: holding.name().clone(),
            colony: colony.clone(),
            on,
            hive_mark: holding.hive_mark(colony).map(str::to_owned),
            apiary: holding.apiary_of(colony, on).cloned(),
            life: LifeReport {
                alive: holding.life(colony).lasts(on),
                begun: history.begun.map(happened),
                ended: history.ended.map(happened),
            },
            unknown_since: history.unknown_since.filter(|(since, _)| *since <= on).map(happened),
            courses: courses.map(|course| ColonyCourse::of(course, on)).collect(),
            supers: supers.map(|span| SuperSpan { off: off(span), ..*span }).collect(),
            broods: history.broods.iter().filter(|seen| seen.on <= on).copied().collect(),
            named_entries: Vec::new(),
        };
        report.named_entries = NamedEntry::all(holding, report.entries());
        report
    }

    /// Every entry that it names; some stand in it several times.
    fn entries(&self) -> impl Iterator<Item = EntryId> {
        let life = [&self.life.begun, &self.life.ended, &self.unknown_since];
        life.into_iter()
            .flatten()
            .map(|happened| happened.entry)
            .chain(self.courses.iter().flat_map(ColonyCourse::entries))
            .chain(self.supers.iter().map(|span| span.entry))
            .chain(self.broods.iter().map(|seen| seen.entry))
    }
}
