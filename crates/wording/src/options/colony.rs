//! The answer for one colony in words, ready for JSON, a table or a page.

use combclear_domain::Day;
use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{ApiaryName, ColonyName, LeafletId, Method};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::options::{
    Asked, ColonyOption, ColonyOptions, LatestStart, StartDays, Usability,
};
use serde::Serialize;

use super::change::change;
use super::condition::ConditionReport;
use super::dose::DoseOfColony;
use super::missing::Missing;
use super::start::StartReport;
use super::{notice, order, to_do};
use crate::Words;

/// The options for a colony: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionsReport {
    /// The question.
    #[serde(flatten)]
    pub asked: Asked,
    /// The colony.
    pub colony: ColonyName,
    /// Its apiary on the first day.
    pub apiary: Option<ApiaryName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<OptionReport>,
    /// The missing facts that leave no options.
    pub missing: Vec<Missing>,
    /// The entries named above, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The counting policy.
    pub policy: &'static str,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// One way of treating, judged for the colony.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionReport {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active substance, form and strength in words.
    pub title: String,
    /// Whether the leaflet comes from the keeper's own folder.
    pub own: bool,
    /// The method, if the leaflet has several.
    pub method: Option<Method>,
    /// The label revision on the pack, if the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day.
    pub answer: Usability,
    /// The reasons for its rank.
    pub order: Vec<String>,
    /// The answer for every start day asked about.
    pub days: Vec<StartDays>,
    /// Every condition that was checked.
    pub conditions: Vec<ConditionReport>,
    /// The missing facts, with what would supply each.
    pub missing: Vec<Missing>,
    /// If it is ruled out: the first day after those asked about on which no condition is broken, as far as can be
    /// foreseen.
    pub first_open_day: Option<Day>,
    /// If it is ruled out: the first of the start days asked about with the fewest broken conditions.
    pub nearest_day: Option<Day>,
    /// If it is ruled out: what would have to change for that day.
    pub would_have_to_change: Vec<String>,
    /// The consequences of starting on the first day of each range that is not ruled out.
    pub starts: Vec<StartReport>,
    /// For each kind of year, the latest start that is out before the next flow.
    pub latest_start: Vec<LatestStart>,
    /// The dose for the colony.
    pub dose: DoseOfColony,
    /// What to carry there.
    pub carry: Vec<String>,
    /// The leaflet's rules in words that cannot be judged from the record, and those on preparing the product.
    pub see_to: Vec<String>,
    /// Cautions for the user.
    pub cautions: Vec<String>,
}

impl OptionsReport {
    /// Puts the answer into words. `holding` must be the one that was asked about.
    #[must_use]
    pub fn of(words: &Words, holding: &Holding, answer: ColonyOptions) -> OptionsReport {
        let ColonyOptions { asked, colony, apiary, options, no_leaflets } = answer;
        let missing = no_leaflets.map(|missing| Missing::of_leaflets(words, &missing));
        let options: Vec<OptionReport> =
            options.into_iter().map(|option| OptionReport::of(words, &colony, option)).collect();
        let read = options.iter().flat_map(OptionReport::entries);
        let flow = asked.flow.as_ref().map(|flow| flow.entry);
        OptionsReport {
            named_entries: NamedEntry::all(holding, read.chain(flow)),
            asked,
            options,
            colony,
            apiary,
            missing: missing.into_iter().collect(),
            policy: POLICY,
            notice: notice(words),
        }
    }
}

impl OptionReport {
    /// Every entry that it names; some stand in it several times.
    fn entries(&self) -> impl Iterator<Item = EntryId> {
        let runs = self.conditions.iter().flat_map(|condition| &condition.runs);
        let read = runs.flat_map(|run| &run.entries);
        read.chain(self.missing.iter().flat_map(|missing| &missing.entries)).copied()
    }

    fn of(words: &Words, colony: &ColonyName, option: ColonyOption) -> OptionReport {
        let leaflet = option.leaflet.as_ref();
        let conditions = option.conditions.iter();
        let missing = option.missing.iter();
        let changes = option.nearest.iter().flat_map(|nearest| &nearest.changes);
        OptionReport {
            leaflet: leaflet.id.clone(),
            title: leaflet.title.clone(),
            own: leaflet.own,
            method: option.method,
            revision: option.revision,
            answer: option.answer,
            order: order::reasons(words, &option.order),
            days: option.days,
            conditions: conditions.map(|condition| ConditionReport::of(words, leaflet, condition)).collect(),
            missing: missing.map(|missing| Missing::of(words, leaflet, colony, missing)).collect(),
            first_open_day: option.first_open_day,
            nearest_day: option.nearest.as_ref().map(|nearest| nearest.day),
            would_have_to_change: changes.map(|of| change(words, of)).collect(),
            starts: option.starts.into_iter().map(|start| StartReport::of(words, start)).collect(),
            latest_start: option.latest_start,
            dose: DoseOfColony::of(words, leaflet, option.dose),
            carry: to_do::carry(words, &option.needs),
            see_to: to_do::see_to(words, leaflet, &option.see_to),
            cautions: to_do::cautions(words, leaflet, &option.cautions, option.is_flooded),
        }
    }
}
