//! Reads the keys that every `[[rule]]` has. Those of its kind are declared in `basics/rule_kinds.rs`.

use super::kinds;
use super::rule::{Force, Region, Rule};
use super::written::Reading;
use crate::basics::confidence::Confidence;
use crate::basics::topic::Topic;
use crate::basics::words::Method;
use crate::rules::table::{DataFile, Table, words};

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
        table.rename(format!("rule `{}`", topic.as_str()));
    }
    let says = topic.and_then(|topic| kinds::read(&mut Reading { file, table, found: Vec::new() }, topic));
    let method: Option<Method> =
        table.maybe_name_of(file, "method", "one of the names in `methods`, in double quotes");
    let revision = table.maybe_text(file, "revision");
    let region = table.maybe_word(file, "region", &words(Region::ALL, |region| region.as_str()));
    let from = table.maybe_day(file, "from");
    let until = table.maybe_day(file, "until");
    let force = table.word(file, "force", &words(Force::ALL, |force| force.as_str()));
    let cited = table.texts(file, "source", "a list of keys of sources, such as [\"S1\"]");
    let confidence =
        table.word(file, "confidence", &words(Confidence::ALL, |confidence| confidence.as_str()));
    let checked_on = table.day(file, "checked_on");
    let note = table.maybe_text(file, "note");

    let backwards = from.zip(until).filter(|(from, until)| until < from);
    if let Some((from, until)) = backwards {
        let message = format!("`until` {until} lies before `from` {from}");
        file.fault(table.at("until"), message, "write the last day in force, or leave `until` out");
    }
    if let Some((from, checked_on)) = from.zip(checked_on).filter(|(from, checked_on)| checked_on < from) {
        let message = format!("`checked_on` {checked_on} lies before `from` {from}");
        file.fault(
            table.at("checked_on"),
            message,
            "correct the one that is wrong: a value is checked once it is in force",
        );
    }
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
    ReadRule {
        kind_is_known: topic.is_some(),
        rule: rule().filter(|_| backwards.is_none()),
        method,
        revision,
        cited,
    }
}
