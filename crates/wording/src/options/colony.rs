//! The answer for one colony in words, ready for JSON, a table or a page.

use combclear_domain::Day;
use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{ApiaryName, ColonyName, LeafletId, Method};
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

/// What else can be used in this colony: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionsReport {
    /// What was asked.
    #[serde(flatten)]
    pub asked: Asked,
    /// The colony.
    pub colony: ColonyName,
    /// Where it stands on the first day.
    pub apiary: Option<ApiaryName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<OptionReport>,
    /// What must be known before there can be any option.
    pub missing: Vec<Missing>,
    /// The counting policy.
    pub policy: &'static str,
    /// The limits of this answer.
    pub notice: String,
}

/// One way of treating, checked against the colony.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct OptionReport {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active, form and strength in words.
    pub title: String,
    /// Whether the leaflet comes from the keeper's own folder.
    pub own: bool,
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label on the pack, where the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day.
    pub answer: Usability,
    /// Why it is ranked here.
    pub order: Vec<String>,
    /// All start days asked about, with their answers.
    pub days: Vec<StartDays>,
    /// Every condition.
    pub conditions: Vec<ConditionReport>,
    /// What is not known, and which entry would supply it.
    pub missing: Vec<Missing>,
    /// For one that is ruled out: the first day after those asked about on which no condition is broken, as far as can be seen.
    pub first_open_day: Option<Day>,
    /// For one that is ruled out: the start day asked about with the fewest broken conditions, the first of them.
    pub nearest_day: Option<Day>,
    /// For one that is ruled out: what would have to change for that day.
    pub would_have_to_change: Vec<String>,
    /// What a start on the first day of each range that is not ruled out would mean.
    pub starts: Vec<StartReport>,
    /// The latest start that is out before the next flow.
    pub latest_start: Vec<LatestStart>,
    /// What the colony would get.
    pub dose: DoseOfColony,
    /// What has to be carried there.
    pub carry: Vec<String>,
    /// What the leaflet asks for in words, which cannot be judged from the record.
    pub see_to: Vec<String>,
    /// Cautions for the user.
    pub cautions: Vec<String>,
}

impl OptionsReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, answer: ColonyOptions) -> OptionsReport {
        let ColonyOptions { asked, colony, apiary, options, no_leaflets } = answer;
        let missing = no_leaflets.map(|missing| Missing::of_leaflets(words, &missing));
        OptionsReport {
            asked,
            options: options.into_iter().map(|option| OptionReport::of(words, &colony, option)).collect(),
            colony,
            apiary,
            missing: missing.into_iter().collect(),
            policy: POLICY,
            notice: notice(words),
        }
    }
}

impl OptionReport {
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
