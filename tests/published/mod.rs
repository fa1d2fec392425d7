//! The built-in leaflets against independently compiled published statements.
//!
//! The statements, each with its `Source:`, are in `tests/published/<jurisdiction>.toml` of the workspace.

use combclear_domain::basics::topic::Topic;
use std::collections::BTreeSet;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::{Jurisdiction, LeafletId, Method};
use combclear_domain::rules::leaflet::{Leaflets, Rule};
use combclear_testkit::files::{listing, root};
use serde::Deserialize;
use serde_json::{Map, Value};

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Published {
    statement: Vec<Statement>,
}

/// A statement of a document. The selectors pick the rule that must say the same; every other key is compared with it.
#[derive(Debug, Clone, Deserialize)]
struct Statement {
    name: String,
    leaflet: LeafletId,
    topic: String,
    source: String,
    /// Whether `source` is a text other than those cited by the leaflet's rule. If not, the check only shows that the text
    /// was copied correctly.
    outside: bool,
    difference: Option<String>,
    confidence: String,
    // Selectors.
    method: Option<Method>,
    revision: Option<String>,
    force: Option<String>,
    brood: Option<String>,
    per: Option<String>,
    window: Option<String>,
    when: Option<String>,
    /// There may be several rules in words: one of them must contain these words.
    text_contains: Option<String>,
    /// The values compared.
    #[serde(flatten)]
    compared: Map<String, Value>,
}

/// The keys by which statements select a rule.
const SELECTORS: [&str; 4] = ["brood", "per", "window", "when"];

/// The content of a rule as a statement: without its kind, selectors and text.
fn said(rule: &Rule) -> Map<String, Value> {
    let mut said = in_words(rule);
    said.retain(|key, _| key != "kind" && key != "text" && !SELECTORS.contains(&key.as_str()));
    // The value of a statement is called `value`, since it already has a `name`.
    if let Some(class) = said.remove("name") {
        said.insert("value".to_owned(), class);
    }
    for (tenths, degrees) in [("min_tenths_c", "min_c"), ("max_tenths_c", "max_c")] {
        if let Some(tenths) = said.remove(tenths).and_then(|tenths| tenths.as_f64()) {
            said.insert(degrees.to_owned(), Value::from(tenths / 10.0));
        }
    }
    numbers_alike(said)
}

fn in_words(rule: &Rule) -> Map<String, Value> {
    match serde_json::to_value(&rule.says) {
        Ok(Value::Object(said)) => said,
        other => panic!("a rule is an object: {other:?}"),
    }
}

/// 2 and 2.0 are one number.
fn numbers_alike(map: Map<String, Value>) -> Map<String, Value> {
    let alike = |value: Value| value.as_f64().map_or(value, Value::from);
    map.into_iter().map(|(key, value)| (key, alike(value))).collect()
}

impl Statement {
    fn expects(&self) -> Map<String, Value> {
        numbers_alike(self.compared.clone())
    }

    fn selects(&self, rule: &Rule) -> bool {
        let words = in_words(rule);
        let word = |key: &str| words.get(key).and_then(Value::as_str);
        let selectors = [&self.brood, &self.per, &self.window, &self.when];
        // The brood of a `brood` rule is its value; only a length of stay is selected by it.
        SELECTORS.iter().zip(selectors).all(|(key, wanted)| wanted.as_deref() == word(key))
            && self.method.as_ref() == rule.method.as_ref()
            && self.revision.as_deref() == rule.revision.as_deref()
            && self.force.as_deref().is_none_or(|force| force == rule.force.as_str())
    }

    /// How the leaflets differ from the document; `None` if they agree.
    fn fault(&self, leaflets: &Leaflets, jurisdiction: &Jurisdiction, on: Day) -> Option<String> {
        let Some(leaflet) = leaflets.as_written(jurisdiction, &self.leaflet) else {
            return Some("there is no such leaflet".to_owned());
        };
        let Some(topic) = Topic::ALL.iter().copied().find(|topic| topic.as_str() == self.topic) else {
            return Some(format!("`{}` is no topic", self.topic));
        };
        let rules: Vec<&Rule> =
            leaflet.in_force(topic, on, self.method.as_ref()).filter(|rule| self.selects(rule)).collect();
        let says_so = |rule: &&&Rule| {
            let words = in_words(rule);
            let text = words.get("text").and_then(Value::as_str).unwrap_or_default();
            let in_words_only = self.compared.is_empty() && self.text_contains.is_some();
            (in_words_only || said(rule) == self.expects())
                && self.text_contains.as_deref().is_none_or(|part| text.contains(part))
        };
        let marked = |rule: &&Rule| rule.confidence.as_str() == self.confidence;
        let saying: Vec<&Rule> = rules.iter().filter(says_so).copied().collect();
        match (rules.as_slice(), saying.as_slice()) {
            ([], _) => Some("no rule in force speaks of it".to_owned()),
            (all, []) => {
                let found: Vec<_> =
                    all.iter().map(|rule| format!("line {}: {:?}", rule.line, in_words(rule))).collect();
                let words = self.text_contains.as_deref().unwrap_or_default();
                Some(format!("published: {:?} {words}\n  leaflet {}", self.expects(), found.join("\n  ")))
            }
            (_, saying) if saying.iter().any(marked) => None,
            (_, saying) => {
                let marks: Vec<_> =
                    saying.iter().map(|rule| format!("{} in line {}", rule.confidence, rule.line)).collect();
                Some(format!("marked {}, expected {}", marks.join(", "), self.confidence))
            }
        }
    }
}

/// The day on which statements are compared: in a coming winter, so that seasons and values that begin late in the year of
/// writing are in force.
fn on() -> Day {
    "2026-12-01".parse().expect("a date")
}

/// The statements by jurisdiction.
fn published() -> Vec<(Jurisdiction, Vec<Statement>)> {
    let files = listing(root().join("tests/published")).into_iter();
    let read = files.filter(|path| path.extension().is_some_and(|end| end == "toml")).map(|path| {
        let name = path.file_stem().expect("a name").to_string_lossy().into_owned();
        let text = std::fs::read_to_string(&path).expect("a text");
        let published: Published = toml::from_str(&text).unwrap_or_else(|error| panic!("{name}: {error}"));
        (Jurisdiction::new(&name).expect("a jurisdiction"), published.statement)
    });
    read.collect()
}

fn leaflets() -> &'static Leaflets {
    combclear_leaflets::builtin()
        .unwrap_or_else(|faults| panic!("the built-in leaflets have faults: {faults:#?}"))
}

#[test]
fn every_published_statement_is_what_the_leaflet_says() {
    let mut faults = Vec::new();
    for (jurisdiction, statements) in published() {
        for statement in statements {
            let Some(fault) = statement.fault(leaflets(), &jurisdiction, on()) else { continue };
            let of = format!("{jurisdiction}/{}", statement.leaflet);
            faults.push(format!("{} ({of})\n  {fault}\n  {}", statement.name, statement.source));
        }
    }
    assert!(faults.is_empty(), "{} statements do not hold:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn every_statement_names_its_source_and_says_something() {
    for (jurisdiction, statements) in published() {
        let mut names = BTreeSet::new();
        for statement in &statements {
            let name = &statement.name;
            assert!(names.insert(name.clone()), "two statements of {jurisdiction} are called `{name}`");
            let sourced = statement.source.starts_with("Source: ");
            assert!(sourced, "`{name}` of {jurisdiction} does not begin its source with `Source: `");
            let marked = statement.difference.as_ref().is_none_or(|text| text.starts_with("DIFFERENCE: "));
            assert!(marked, "`{name}` of {jurisdiction} does not begin its difference with `DIFFERENCE: `");
            let says = !statement.compared.is_empty() || statement.text_contains.is_some();
            assert!(says, "`{name}` of {jurisdiction} compares nothing");
        }
        assert!(!names.is_empty(), "no published statement for {jurisdiction}");
    }
}

#[test]
fn a_check_against_the_leaflets_own_text_does_not_call_itself_an_outside_one() {
    for (jurisdiction, statements) in published() {
        for statement in statements.iter().filter(|statement| statement.outside) {
            let same = ["the only text read", "none read", "no other text"];
            let says_so = same.iter().any(|words| statement.source.contains(words));
            assert!(!says_so, "`{}` of {jurisdiction} is called an outside check", statement.name);
        }
    }
}

#[test]
fn every_limit_that_a_leaflet_states_is_checked() {
    let published = published();
    for leaflet in leaflets().iter() {
        let name = format!("{}/{}", leaflet.jurisdiction, leaflet.id);
        let statements = published.iter().find(|(jurisdiction, _)| *jurisdiction == leaflet.jurisdiction);
        let statements = statements.map_or(&[][..], |(_, statements)| statements.as_slice());
        let of_it = statements.iter().filter(|statement| statement.leaflet == leaflet.id);
        let checked: BTreeSet<&str> = of_it.map(|statement| statement.topic.as_str()).collect();
        assert!(!checked.is_empty(), "no published statement on {name}");
        for topic in [
            Topic::SupersDuring,
            Topic::FlowBefore,
            Topic::Withdrawal,
            Topic::WaitAfterRemoval,
            Topic::Contraindication,
            Topic::Dose,
            Topic::Doses,
            Topic::StayMin,
            Topic::StayMax,
            Topic::Temperature,
        ] {
            let stated = leaflet.in_force(topic, on(), None).next().is_some();
            let topic = topic.as_str();
            assert!(!stated || checked.contains(topic), "no published check of `{topic}` of {name}");
        }
    }
}

#[test]
fn a_statement_that_the_leaflet_does_not_make_is_found_out() {
    let gb = Jurisdiction::new("gb").expect("a jurisdiction");
    let published = published();
    let (_, of_gb) = published.iter().find(|(jurisdiction, _)| *jurisdiction == gb).expect("statements");
    let named = |name: &str| {
        let found = of_gb.iter().find(|statement| statement.name == name);
        found.unwrap_or_else(|| panic!("no statement `{name}`")).clone()
    };
    let with = |statement: &Statement, key: &str, value: Value| {
        let mut changed = statement.clone();
        changed.compared.insert(key.to_owned(), value);
        changed
    };
    let holds = named("tau-fluvalinate strips do not stay in after eight weeks");
    assert_eq!(holds.fault(leaflets(), &gb, on()), None);

    let other_value = with(&holds, "days", 55.into());
    let other_mark = Statement { confidence: "unconfirmed".to_owned(), ..holds.clone() };
    let more_than_stated = with(&holds, "count", 1.into());
    let strange_key = with(&holds, "dayz", 56.into());
    let no_rule = Statement { brood: Some("present".to_owned()), ..holds.clone() };
    let no_revision = Statement { revision: Some("2020".to_owned()), ..holds.clone() };
    let no_topic = Statement { topic: "stay".to_owned(), ..holds.clone() };
    let no_leaflet = Statement { leaflet: LeafletId::new("none").expect("an id"), ..holds.clone() };
    for wrong in
        [other_value, other_mark, more_than_stated, strange_key, no_rule, no_revision, no_topic, no_leaflet]
    {
        assert!(wrong.fault(leaflets(), &gb, on()).is_some(), "{wrong:?} passes");
    }
    let before: Day = "2014-10-31".parse().expect("a date");
    assert!(holds.fault(leaflets(), &gb, before).is_some(), "a rule is held to a day before it is in force");

    let words = named("combs that held brood beside amitraz strips of variant A never become honey combs");
    let other_words = Statement { text_contains: Some("four years".to_owned()), ..words };
    assert!(other_words.fault(leaflets(), &gb, on()).is_some(), "words that are not there are found");
}
