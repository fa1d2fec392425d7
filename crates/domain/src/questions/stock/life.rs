//! When a lot was opened, and how long it may be used after that.

use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use serde::Serialize;

use crate::basics::calendar::Day;
use crate::basics::words::{LotName, MedicineName, Unit};
use crate::facts::history::label_revision;
use crate::facts::holding::Holding;
use crate::journal::entry::EntryId;
use crate::journal::event::{Event, LeafletReading};
use crate::rules::leaflet::{Force, Leaflet, Leaflets, Rule, Says};

/// When the first pack of a lot was opened.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct Opened {
    /// The day.
    pub on: Day,
    /// How that is known.
    pub told_by: OpenedBy,
    /// The entry.
    pub entry: EntryId,
}

/// How the day of opening is known.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub enum OpenedBy {
    /// From an entry that says so.
    LotOpened,
    /// Only from the first dose: it was opened on that day at the latest.
    FirstAdministration,
}

/// How long a lot may be used after opening, according to its leaflet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct LifeInUse {
    /// The leaflet's words.
    pub says: String,
    /// Days after the day of opening. Absent if the leaflet gives no number for the pack.
    pub days: Option<u16>,
    /// The last day to use it after opening. Absent until it is opened, or without a number of days.
    pub until: Option<Day>,
    /// How well the value is established.
    pub confidence: Confidence,
    /// The keeper's reading that confirmed the value on the leaflet of this lot.
    pub confirmed_by: Option<EntryId>,
    /// How binding it is.
    pub force: Force,
    /// Where it was read.
    pub sources: Vec<String>,
    /// When it was last checked.
    pub checked_on: Day,
    /// A note for the reader.
    pub note: Option<String>,
}

impl Opened {
    /// When a lot was opened, as of the end of a day: by the entry that says so, else by the first dose.
    pub(super) fn of(holding: &Holding, lot: &LotName, on: Day) -> Option<Opened> {
        let known = || holding.lot_file(lot).iter().filter(|record| record.on <= on);
        let first = |told_by: OpenedBy, tells: fn(&Event) -> bool| {
            let record = known().find(|record| tells(&record.event))?;
            Some(Opened { on: record.on, told_by, entry: record.id })
        };
        let said = first(OpenedBy::LotOpened, |event| matches!(event, Event::LotOpened(_)));
        let given = first(OpenedBy::FirstAdministration, |event| matches!(event, Event::Administration(_)));
        match (said, given) {
            // A dose given before the stated opening proves that it was opened earlier.
            (Some(said), Some(given)) if given.on < said.on => Some(given),
            (said, given) => said.or(given),
        }
    }
}

impl LifeInUse {
    /// The leaflet's rule for a lot, as in force on the day of opening; for a sealed lot, on `on`.
    pub(super) fn of(
        holding: &Holding,
        leaflet: &Leaflet,
        lot: &LotName,
        opened: Option<&Opened>,
        on: Day,
    ) -> Option<LifeInUse> {
        let day = opened.map_or(on, |opened| opened.on);
        let revision = label_revision(holding, lot, None);
        let rules = leaflet
            .in_force(Topic::AfterOpening, day, None)
            .filter(|rule| rule.fits(None, revision))
            .filter_map(|rule| {
                let Says::AfterOpening { text, days } = &rule.says else { return None };
                Some((rule, text, *days))
            });
        // A number of days comes before words, the label before advice, and shorter before longer.
        let order = |(rule, _, days): &(&Rule, &String, Option<u16>)| {
            (days.is_none(), rule.force == Force::Advice, *days)
        };
        let (rule, says, days) = rules.min_by_key(order)?;
        let confirmed_by = confirmed(holding, lot, &rule.says, leaflet.unit);
        let sources = rule
            .source
            .iter()
            .map(|key| leaflet.source(key).map_or_else(|| key.clone(), |source| source.title.clone()));
        Some(LifeInUse {
            days,
            until: opened.zip(days).map(|(opened, days)| opened.on.plus(days)),
            confidence: if confirmed_by.is_some() { Confidence::Document } else { rule.confidence },
            confirmed_by,
            force: rule.force,
            sources: sources.collect(),
            checked_on: rule.checked_on,
            note: rule.note.clone(),
            says: says.clone(),
        })
    }
}

/// The reading that confirmed this value on the leaflet of a lot.
fn confirmed(holding: &Holding, lot: &LotName, says: &Says, unit: Unit) -> Option<EntryId> {
    holding.reading_file(lot).iter().rev().find_map(|record| {
        let confirms = &record.body::<LeafletReading>()?.confirms;
        confirms.iter().any(|confirmed| confirmed.is(says, unit)).then_some(record.id)
    })
}

/// The built-in leaflet named for a medicine, if the holding's jurisdiction has it.
pub(super) fn leaflet_of<'l>(
    holding: &Holding,
    leaflets: &'l Leaflets,
    medicine: &MedicineName,
    on: Day,
) -> Option<&'l Leaflet> {
    let (_, described) = holding.medicine(medicine)?;
    let found = leaflets.get(holding.jurisdiction(on)?, described.leaflet.as_ref()?)?;
    Some(found)
}
