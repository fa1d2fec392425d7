//! The answer for a whole apiary in words: usable for all colonies, some or none, and why not for which.

use combclear_domain::Quantity;
use combclear_domain::basics::calendar::POLICY;
use combclear_domain::basics::words::{ApiaryName, ColonyName, LeafletId, Method};
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

/// What can be used at this apiary: the whole answer in words.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryReport {
    /// What was asked.
    #[serde(flatten)]
    pub asked: Asked,
    /// The apiary.
    pub apiary: ApiaryName,
    /// The colonies that stand there on the first day.
    pub colonies: Vec<ColonyName>,
    /// The options, ranked; each gives the reasons for its rank.
    pub options: Vec<ApiaryOption>,
    /// What must be known before there can be any option.
    pub missing: Vec<Missing>,
    /// The counting policy.
    pub policy: &'static str,
    /// The limits of this answer.
    pub notice: String,
}

/// One way of treating, checked against every colony of the apiary.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ApiaryOption {
    /// The leaflet.
    pub leaflet: LeafletId,
    /// Active, form and strength in words.
    pub title: String,
    /// The method, where there are several.
    pub method: Option<Method>,
    /// The revision of the label on the pack, where the leaflet has several.
    pub revision: Option<String>,
    /// The best answer of any start day for all colonies together.
    pub answer: Usability,
    /// Why it is ranked here.
    pub order: Vec<String>,
    /// The start days with their answers for all colonies together: the worst of any colony.
    pub days: Vec<StartDays>,
    /// The colonies by the best answer of any start day.
    pub colonies: Vec<ColoniesOfAnswer>,
    /// What a start on the first day of the first range that is not ruled out means, for the colony for which it takes longest.
    pub start: Option<StartReport>,
    /// The colony for which it takes longest.
    pub longest_for: Option<ColonyName>,
    /// What all colonies together would get at one dose; none while something must be counted in one of them.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub one_dose: Option<Quantity>,
    /// Its unit.
    pub unit: String,
    /// How many doses a course has, at least; absent where nobody has stated it.
    #[cfg_attr(feature = "openapi", schema(minimum = 0, maximum = 255))]
    pub doses: Option<u8>,
    /// What all colonies together would get in a course, at least; absent while something must be counted, or where nobody has
    /// stated how many doses there are.
    #[cfg_attr(feature = "openapi", schema(value_type = Option<f64>, minimum = 0))]
    pub course: Option<Quantity>,
    /// What must be known first, and what would supply it.
    pub dose_missing: Vec<Missing>,
    /// The colonies in which something must be counted first, and what.
    pub not_counted: Vec<WhyNot>,
    /// What has to be mixed for one dose of all of them.
    pub solution: Option<Solution>,
    /// What is in stock of it.
    pub stock: StockOfMedicine,
    /// What the leaflet asks for in words.
    pub see_to: Vec<String>,
}

/// Colonies with one answer.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ColoniesOfAnswer {
    /// The answer.
    pub answer: Usability,
    /// The colonies.
    pub colonies: Vec<ColonyName>,
    /// For an answer other than usable: why, colony by colony where it differs.
    pub why: Vec<WhyNot>,
}

/// Why not, in a sentence, and for which colonies.
pub type WhyNot = WithColonies<String>;

impl ApiaryReport {
    /// Puts the answer into words.
    #[must_use]
    pub fn of(words: &Words, answer: ApiaryOptions) -> ApiaryReport {
        let ApiaryOptions { asked, apiary, colonies, options, no_leaflets } = answer;
        let missing = no_leaflets.map(|missing| Missing::of_leaflets(words, &missing));
        ApiaryReport {
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
