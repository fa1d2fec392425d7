//! Reads the keys that every `[[rule]]` has. Those of its kind are declared in `basics/rule_kinds.rs`.

use super::kinds;
use super::rule::{Force, Region, Rule};
use super::written::Reading;
use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use crate::basics::words::Method;
use crate::rules::fault::Wanted;
use crate::rules::table::{DataFile, Table, dates_in_order, words};

/// The readable parts of a rule.
pub(super) struct ReadRule {
    /// Whether its kind was read; if not, its permitted keys are unknown.
    pub(super) kind_is_known: bool,
    /// The rule, if enough of it could be read.
    pub(super) rule: Option<Rule>,
    /// The method it is limited to.
    pub(super) method: Option<Method>,
    /// The revision of the label it is limited to.
    pub(super) revision: Option<String>,
    /// The source keys it cites, each with its place.
    pub(super) cited: Vec<(usize, String)>,
}

/// Reads a rule.
pub(super) fn rule(file: &mut DataFile<'_>, table: &mut Table<'_>) -> ReadRule {
    let topics: Vec<_> = Topic::ALL.iter().map(|topic| (topic.as_str(), *topic)).collect();
    let topic = table.word(file, "kind", &topics);
    if let Some(topic) = topic {
        table.rename("rule", topic.as_str());
    }
    let says = topic.and_then(|topic| kinds::read(&mut Reading { file, table, found: Vec::new() }, topic));
    let method: Option<Method> = table.maybe_name_of(file, "method", Wanted::Method);
    let revision = table.maybe_text(file, "revision");
    let region = table.maybe_word(file, "region", &words(Region::ALL, |region| region.as_str()));
    let from = table.maybe_day(file, "from");
    let until = table.maybe_day(file, "until");
    let force = table.word(file, "force", &words(Force::ALL, |force| force.as_str()));
    let cited = table.texts(file, "source", Wanted::SourceKeys);
    let confidence =
        table.word(file, "confidence", &words(Confidence::ALL, |confidence| confidence.as_str()));
    let checked_on = table.day(file, "checked_on");
    let note = table.maybe_text(file, "note");

    let in_order = dates_in_order(file, table, from, until, checked_on);
    let line = file.line(table.at(""));
    let source = cited.iter().map(|(_, key)| key.clone()).collect();
    let rule = || {
        let (says, force) = (says?, force?);
        let (confidence, checked_on) = (confidence?, checked_on?);
        let (method, revision) = (method.clone(), revision.clone());
        Some(Rule {
            says,
            method,
            revision,
            region,
            from,
            until,
            force,
            source,
            confidence,
            checked_on,
            note,
            line,
        })
    };
    ReadRule { kind_is_known: topic.is_some(), rule: rule().filter(|_| in_order), method, revision, cited }
}
