//! The answer for a whole apiary in words: usable for all colonies, for some or for none, with the reasons.

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{ApiaryName, ColonyName, LeafletId, Method};
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::NamedEntry;
use combclear_domain::questions::options::{
    ApiaryOptions, Asked, OfAnswer, OptionForAll, StartDays, StockOfMedicine, Usability, WithColonies,
};
use serde::Serialize;

use super::because::because;
use super::dose::{self, Solution};
use super::missing::Missing;
use super::start::StartReport;
use super::{notice, order, to_do};
use crate::Words;

/// The options for an apiary: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryReport {
    /// The question.
    #[serde(flatten)]
    pub asked: Asked,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The colonies there on the first day.
    pub colonies: Vec<ColonyName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<ApiaryOption>,
    /// The missing facts that leave no options.
    pub missing: Vec<Missing>,
    /// The entries named above, with their numbers in the journal.
    pub named_entries: Vec<NamedEntry>,
    /// The counting policy.
    pub policy: &'static str,
    /// The notice: the leaflet on the pack, the prescriber and local law decide.
    pub notice: String,
}

/// One way of treating, judged for every colony of the apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryOption {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active substance, form and strength in words.
    pub title: String,
    /// The method, if the leaflet has several.
    pub method: Option<Method>,
    /// The label revision on the pack, if the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day for all colonies together.
    pub answer: Usability,
    /// The reasons for its rank.
    pub order: Vec<String>,
    /// The answer for every start day: the worst of any colony.
    pub days: Vec<StartDays>,
    /// The colonies, grouped by the best answer of any start day.
    pub colonies: Vec<ColoniesOfAnswer>,
    /// The consequences of starting on the first day that is not ruled out, for the colony that takes longest.
    pub start: Option<StartReport>,
    /// The colony that takes longest.
    pub longest_for: Option<ColonyName>,
    /// The amount for one dose of all colonies together. Absent if something must first be counted in one of them.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub one_dose: Option<Quantity>,
    /// The unit of the amounts.
    pub unit: String,
    /// Number of doses in a course, at least. Absent if not stated.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// The amount for a whole course of all colonies, at least. Absent if something must first be counted, or if the
    /// number of doses is not stated.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub course: Option<Quantity>,
    /// What must be known before these amounts can be worked out, with what would supply it.
    pub dose_missing: Vec<Missing>,
    /// What must first be counted, and in which colonies.
    pub not_counted: Vec<WhyNot>,
    /// The solution to mix for one dose of all colonies.
    pub solution: Option<Solution>,
    /// The stock of the medicine.
    pub stock: StockOfMedicine,
    /// The leaflet's rules in words, and those on preparing the product.
    pub see_to: Vec<String>,
}

/// Colonies with the same answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColoniesOfAnswer {
    /// The answer.
    pub answer: Usability,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// Unless the answer is usable: the reasons, each with its colonies.
    pub why: Vec<WhyNot>,
}

/// A reason in a sentence, with the colonies it applies to.
pub type WhyNot = WithColonies<String>;

impl ApiaryReport {
    /// Puts the answer into words. `holding` must be the one that was asked about.
    #[must_use]
    pub fn of(words: &Words, holding: &Holding, answer: ApiaryOptions) -> ApiaryReport {
        let ApiaryOptions { asked, apiary, colonies, options, no_leaflets } = answer;
        let missing = no_leaflets.map(|missing| Missing::of_leaflets(words, &missing));
        ApiaryReport {
            named_entries: NamedEntry::all(holding, asked.flow.as_ref().map(|flow| flow.entry)),
            asked,
            apiary,
            colonies,
            options: options.into_iter().map(|option| ApiaryOption::of(words, option)).collect(),
            missing: missing.into_iter().collect(),
            policy: POLICY,
            notice: notice(words),
        }
    }
}

impl ApiaryOption {
    fn of(words: &Words, option: OptionForAll) -> ApiaryOption {
        let leaflet = option.leaflet.as_ref();
        let dose_missing = option.dose_missing.iter();
        let not_counted = option.not_counted.into_iter();
        ApiaryOption {
            leaflet: leaflet.id.clone(),
            title: leaflet.title.clone(),
            method: option.method,
            revision: option.revision,
            answer: option.answer,
            order: order::reasons(words, &option.order),
            days: option.days,
            colonies: option.colonies.into_iter().map(|of| ColoniesOfAnswer::of(words, of)).collect(),
            start: option.start.map(|start| StartReport::of(words, start)),
            longest_for: option.longest_for,
            one_dose: option.one_dose,
            unit: option.unit,
            doses: option.doses,
            course: option.course,
            dose_missing: dose_missing.map(|missing| Missing::of_dose(words, missing)).collect(),
            not_counted: not_counted.map(|of| of.said(|why| dose::fact(words, why))).collect(),
            solution: option.mixture.map(|mixture| Solution::of(words, leaflet, mixture)),
            stock: option.stock,
            see_to: to_do::see_to(words, leaflet, &option.see_to),
        }
    }
}

impl ColoniesOfAnswer {
    fn of(words: &Words, group: OfAnswer) -> ColoniesOfAnswer {
        let OfAnswer { answer, colonies, why } = group;
        let why = why.into_iter().map(|of| of.said(|why| because(words, why)));
        ColoniesOfAnswer { answer, colonies, why: why.collect() }
    }
}
