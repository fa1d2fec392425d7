//! Conditions in words.

use combclear_domain::Day;
use combclear_domain::basics::confidence::Confidence;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::options::{About, Condition, State};
use combclear_domain::rules::leaflet::{Force, Leaflet, Rule};
use serde::Serialize;

use super::because::because;
use crate::Words;
use crate::leaflet;
use crate::words::say;

/// A condition.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct ConditionReport {
    /// What it is about, as a word for programs: a kind of leaflet rule, or what else was looked at.
    pub about: &'static str,
    /// Whether the answer depends on it; advice does not decide.
    pub binds: bool,
    /// The value, in words; absent where the leaflet has no such rule.
    pub says: Option<String>,
    /// How much the rule binds.
    pub force: Option<Force>,
    /// How well the value is established.
    pub confidence: Option<Confidence>,
    /// Where it was read.
    pub sources: Vec<String>,
    /// When it was last checked.
    pub checked_on: Option<Day>,
    /// What a reader must know about it.
    pub note: Option<String>,
    /// What it says about the start days, in order.
    pub runs: Vec<RunReport>,
}

/// Start days for which a condition says the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "openapi", derive(utoipa::ToSchema))]
pub struct RunReport {
    /// The first of them.
    pub from: Day,
    /// The last of them.
    pub to: Day,
    /// Met, broken or unknown.
    pub state: State,
    /// If it is not known: whether it would be met in a usual year.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_a_usual_year: Option<bool>,
    /// Why, in a sentence.
    pub why: String,
    /// The entries that were read.
    pub entries: Vec<EntryId>,
}

impl ConditionReport {
    pub(super) fn of(words: &Words, leaflet: &Leaflet, condition: &Condition) -> ConditionReport {
        let rule = condition.rule.and_then(|index| leaflet.rules.get(index));
        let sources = rule.map(|rule| {
            let title = |key: &String| leaflet.source(key).map_or(key, |source| &source.title).clone();
            rule.source.iter().map(title).collect()
        });
        ConditionReport {
            about: condition.about.as_str(),
            binds: condition.binds,
            says: rule.map(|rule| says(words, leaflet, condition.about, rule)),
            force: rule.map(|rule| rule.force),
            confidence: rule.map(|rule| rule.confidence),
            sources: sources.unwrap_or_default(),
            checked_on: rule.map(|rule| rule.checked_on),
            note: rule.and_then(|rule| rule.note.clone()),
            runs: condition
                .runs
                .iter()
                .map(|run| RunReport {
                    from: run.from,
                    to: run.to,
                    state: run.state,
                    in_a_usual_year: run.expected,
                    why: because(words, &run.because),
                    entries: run.because.entry().into_iter().collect(),
                })
                .collect(),
        }
    }
}

/// The value of a condition's rule; for needs, only the one the condition is about.
pub(super) fn says(words: &Words, leaflet: &Leaflet, about: About, rule: &Rule) -> String {
    match about {
        About::Need(need) => say!(words, OptionsNeed, need = need.as_str()),
        About::Directions
        | About::Access
        | About::Colony
        | About::Apiary
        | About::AlreadyIn
        | About::OtherMedicines
        | About::Topic(_) => leaflet::says(words, &rule.says, leaflet.unit),
    }
}
