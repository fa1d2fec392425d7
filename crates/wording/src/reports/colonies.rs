//! Colonies: where they stand, what is in them, whether they may be supered.

use combclear_domain::Day;
use combclear_domain::basics::words::{ApiaryName, ColonyName, HoldingName};
use combclear_domain::facts::history::{BroodSeen, Histories, History, SuperSpan};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::timeline::Timeline;
use combclear_domain::rules::leaflet::Leaflets;
use serde::Serialize;

use super::Unanswered;
use super::course::{ColonyCourse, Happened};
use crate::supering::{SuperingReport, SuperingSummary};
use crate::{Words, notice};

/// The colonies alive on a day.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColonyList {
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
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
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

/// A colony on a day.
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColonyReport {
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
#[derive(Debug, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
struct LifeReport {
    /// Whether it is alive on the day asked about.
    alive: bool,
    /// When and by which entry it came into the record.
    begun: Option<Happened>,
    /// When and by which entry it ended; null if it has not.
    ended: Option<Happened>,
}

/// The colonies alive on the day, each with the answer to whether it may be supered.
#[must_use]
pub fn list(words: &Words, holding: &Holding, leaflets: &Leaflets, on: Day) -> ColonyList {
    let alive = holding.colonies().filter(|colony| holding.life(colony).lasts(on));
    let mut histories = Histories::new(holding, leaflets);
    let items = alive.map(|colony| ColonyItem::of(words, holding, &histories.of(colony), on)).collect();
    ColonyList { holding: holding.name().clone(), on, items, notice: notice(words) }
}

/// One colony at the end of the day.
///
/// # Errors
/// No standing entry mentions it.
pub fn one(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    colony: &ColonyName,
    on: Day,
) -> Result<ColonyReport, Unanswered> {
    check_known(words, holding, colony)?;
    Ok(ColonyReport::of(holding, &History::of(holding, leaflets, colony), on))
}

/// Whether it may be supered, with the grounds.
///
/// # Errors
/// No standing entry mentions it.
pub fn supering(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    colony: &ColonyName,
    on: Day,
) -> Result<SuperingReport, Unanswered> {
    check_known(words, holding, colony)?;
    Ok(SuperingReport::ask(words, holding, leaflets, colony, on))
}

/// Its season around the day.
///
/// # Errors
/// No standing entry mentions it.
pub fn season(
    words: &Words,
    holding: &Holding,
    leaflets: &Leaflets,
    colony: &ColonyName,
    on: Day,
) -> Result<Timeline, Unanswered> {
    check_known(words, holding, colony)?;
    Ok(Timeline::of(holding, leaflets, colony, on))
}

/// Refuses a colony that no standing entry mentions.
///
/// # Errors
/// No standing entry mentions it.
pub fn check_known(words: &Words, holding: &Holding, colony: &ColonyName) -> Result<(), Unanswered> {
    if holding.colony_file(colony).is_empty() {
        Err(Unanswered::no_colony(words, holding, colony))
    } else {
        Ok(())
    }
}

impl ColonyItem {
    fn of(words: &Words, holding: &Holding, history: &History, on: Day) -> ColonyItem {
        let colony = &history.colony;
        ColonyItem {
            colony: colony.clone(),
            apiary: holding.apiary_of(colony, on).cloned(),
            hive_mark: holding.hive_mark(colony).map(str::to_owned),
            supering: SuperingSummary::of(words, &history.supering(on)),
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
