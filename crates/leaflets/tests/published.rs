//! The built-in leaflets against published statements that were gathered apart from them.
//!
//! The statements, each with its `Source:`, are in `tests/published/gb.toml` of the workspace.
#![expect(clippy::expect_used, clippy::panic, reason = "helpers of a test may end it")]

use std::collections::BTreeSet;

use combclear_domain::calendar::Day;
use combclear_domain::leaflet::rule::{BroodState, DosePer, Need, TemperatureWindow};
use combclear_domain::leaflet::{Confidence, Force, Leaflets, Rule, Says, Topic};
use combclear_domain::quantity::Quantity;
use combclear_domain::words::{Jurisdiction, LeafletId, Method};
use serde::Deserialize;

const STATEMENTS: &str = include_str!("../../../tests/published/gb.toml");

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Published {
    statement: Vec<Statement>,
}

/// What a document says. The selectors pick the rule that must say the same; the rest is compared.
#[derive(Debug, Clone, Deserialize)]
#[serde(deny_unknown_fields)]
struct Statement {
    name: String,
    leaflet: LeafletId,
    topic: String,
    source: String,
    difference: Option<String>,
    // Selectors.
    method: Option<Method>,
    brood: Option<String>,
    per: Option<String>,
    window: Option<String>,
    force: Option<String>,
    // Compared.
    confidence: String,
    days: Option<u16>,
    value: Option<String>,
    count: Option<u8>,
    interval_min_days: Option<u16>,
    interval_max_days: Option<u16>,
    first_days: Option<u16>,
    min_c: Option<f64>,
    max_c: Option<f64>,
    max: Option<u8>,
    min_brood_frames: Option<u8>,
    min_bees: Option<u32>,
    amount: Option<Quantity>,
    unit: Option<String>,
    list: Option<Vec<String>>,
    text_contains: Option<String>,
}

/// What a rule says, in the words of a statement.
#[derive(Debug, Default, PartialEq)]
struct Said {
    days: Option<u16>,
    value: Option<String>,
    count: Option<u8>,
    interval_min_days: Option<u16>,
    interval_max_days: Option<u16>,
    first_days: Option<u16>,
    min_c: Option<f64>,
    max_c: Option<f64>,
    max: Option<u8>,
    min_brood_frames: Option<u8>,
    min_bees: Option<u32>,
    amount: Option<Quantity>,
    unit: Option<String>,
    list: Option<Vec<String>>,
}

fn said(rule: &Rule) -> Said {
    let value = |word: &str| Said { value: Some(word.to_owned()), ..Said::default() };
    match &rule.says {
        Says::SupersDuring { value: word } => value(word.as_str()),
        Says::FlowDuring { value: word } | Says::HarvestDuring { value: word } => value(word.as_str()),
        Says::Removal { value: word } => value(word.as_str()),
        Says::BroodNeed { value: word } => value(word.as_str()),
        Says::Class { name } => value(name),
        Says::Withdrawal { days }
        | Says::WaitAfterRemoval { days }
        | Says::GapBetweenCourses { days }
        | Says::StayMin { days, .. }
        | Says::StayMax { days, .. } => Said { days: Some(*days), ..Said::default() },
        Says::Doses { count, interval_min_days, interval_max_days } => Said {
            count: Some(*count),
            interval_min_days: *interval_min_days,
            interval_max_days: *interval_max_days,
            ..Said::default()
        },
        Says::CoursesPerYear { count } => Said { count: Some(*count), ..Said::default() },
        Says::Temperature { first_days, min_tenths_c, max_tenths_c, .. } => Said {
            first_days: *first_days,
            min_c: min_tenths_c.map(|tenths| f64::from(tenths) / 10.0),
            max_c: max_tenths_c.map(|tenths| f64::from(tenths) / 10.0),
            ..Said::default()
        },
        Says::ColonySize { min_brood_frames, min_bees, .. } => {
            Said { min_brood_frames: *min_brood_frames, min_bees: *min_bees, ..Said::default() }
        }
        Says::BroodBoxes { max } => Said { max: Some(*max), ..Said::default() },
        Says::Dose { amount, unit, .. } | Says::DoseCap { amount, unit } => {
            Said { amount: Some(*amount), unit: unit.clone(), ..Said::default() }
        }
        Says::Needs { list } => Said {
            list: Some(list.iter().map(|need| need_word(*need).to_owned()).collect()),
            ..Said::default()
        },
        Says::CombRule { .. }
        | Says::Entrance { .. }
        | Says::NotWith { .. }
        | Says::WholeApiary { .. }
        | Says::UserSafety { .. }
        | Says::AfterOpening { .. }
        | Says::Storage { .. }
        | Says::Disposal { .. } => Said::default(),
    }
}

/// The words of a rule that holds nothing but words; of such rules there may be several.
fn text(rule: &Rule) -> Option<&str> {
    match &rule.says {
        Says::CombRule { text }
        | Says::Entrance { text }
        | Says::NotWith { text }
        | Says::WholeApiary { text }
        | Says::UserSafety { text }
        | Says::AfterOpening { text }
        | Says::Storage { text }
        | Says::Disposal { text } => Some(text),
        _ => None,
    }
}

impl Statement {
    fn expects(&self) -> Said {
        let Statement {
            days,
            value,
            count,
            interval_min_days,
            interval_max_days,
            first_days,
            min_c,
            max_c,
            max,
            min_brood_frames,
            min_bees,
            amount,
            unit,
            list,
            ..
        } = self.clone();
        Said {
            days,
            value,
            count,
            interval_min_days,
            interval_max_days,
            first_days,
            min_c,
            max_c,
            max,
            min_brood_frames,
            min_bees,
            amount,
            unit,
            list,
        }
    }

    fn selects(&self, rule: &Rule) -> bool {
        let brood = match &rule.says {
            Says::StayMin { brood, .. } | Says::StayMax { brood, .. } => brood.map(brood_word),
            _ => None,
        };
        let per = match &rule.says {
            Says::Dose { per, .. } => Some(per_word(*per)),
            _ => None,
        };
        let window = match &rule.says {
            Says::Temperature { window, .. } => Some(window_word(*window)),
            _ => None,
        };
        self.brood.as_deref() == brood
            && self.per.as_deref() == per
            && self.window.as_deref() == window
            && self.method.as_ref() == rule.method.as_ref()
            && self.force.as_deref().is_none_or(|force| force == force_word(rule.force))
    }

    /// Why the leaflets do not say what the document says; none if they do.
    fn fault(&self, leaflets: &Leaflets, on: Day) -> Option<String> {
        let Some(leaflet) = leaflets.get(&gb(), &self.leaflet) else {
            return Some("there is no such leaflet".to_owned());
        };
        let Some(topic) = Topic::ALL.iter().copied().find(|topic| topic.as_str() == self.topic) else {
            return Some(format!("`{}` is no topic", self.topic));
        };
        let rules: Vec<&Rule> =
            leaflet.in_force(topic, on, self.method.as_ref()).filter(|rule| self.selects(rule)).collect();
        if rules.is_empty() {
            return Some("no rule in force speaks of it".to_owned());
        }
        if let Some(words) = &self.text_contains {
            let found = |rule: &&Rule| {
                text(rule).is_some_and(|text| text.contains(words.as_str()))
                    && confidence_word(rule.confidence) == self.confidence
            };
            return if rules.iter().any(found) {
                None
            } else {
                Some(format!("no {} has `{words}`", self.topic))
            };
        }
        let [rule] = rules.as_slice() else {
            return Some(format!("{} rules in force speak of it; pick one with `force`", rules.len()));
        };
        let (expected, found) = (self.expects(), said(rule));
        if expected != found {
            return Some(format!("published: {expected:?}\n  leaflet line {}: {found:?}", rule.line));
        }
        let mark = confidence_word(rule.confidence);
        (mark != self.confidence)
            .then(|| format!("marked {mark} in line {}, expected {}", rule.line, self.confidence))
    }
}

const fn brood_word(brood: BroodState) -> &'static str {
    match brood {
        BroodState::AbsentOrLowest => "absent_or_lowest",
        BroodState::Present => "present",
    }
}

const fn per_word(per: DosePer) -> &'static str {
    match per {
        DosePer::Hive => "hive",
        DosePer::BroodBox => "brood_box",
        DosePer::FramesOfBees => "frames_of_bees",
        DosePer::Seam => "seam",
        DosePer::SmallColony => "small_colony",
    }
}

const fn window_word(window: TemperatureWindow) -> &'static str {
    match window {
        TemperatureWindow::MaximumOnPlacingDay => "maximum_on_placing_day",
        TemperatureWindow::MaximumInFirstDays => "maximum_in_first_days",
        TemperatureWindow::MaximumOverStay => "maximum_over_stay",
        TemperatureWindow::MeanOverStay => "mean_over_stay",
        TemperatureWindow::AtUse => "at_use",
        TemperatureWindow::Product => "product",
    }
}

const fn need_word(need: Need) -> &'static str {
    match need {
        Need::MainsOrGenerator => "mains_or_generator",
        Need::Battery => "battery",
        Need::CarryInKit => "carry_in_kit",
        Need::HiveOpened => "hive_opened",
        Need::ReturnVisit => "return_visit",
        Need::DryGround => "dry_ground",
    }
}

const fn force_word(force: Force) -> &'static str {
    match force {
        Force::Law => "law",
        Force::Label => "label",
        Force::Advice => "advice",
    }
}

const fn confidence_word(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::Document => "document",
        Confidence::SecondHand => "second_hand",
        Confidence::Unconfirmed => "unconfirmed",
    }
}

fn gb() -> Jurisdiction {
    Jurisdiction::new("gb").expect("a jurisdiction")
}

/// The day on which the statements are held against the leaflets.
fn on() -> Day {
    "2026-06-01".parse().expect("a date")
}

fn statements() -> Vec<Statement> {
    let published: Published = toml::from_str(STATEMENTS).expect("the published statements can be read");
    published.statement
}

fn leaflets() -> &'static Leaflets {
    combclear_leaflets::builtin()
        .unwrap_or_else(|faults| panic!("the built-in leaflets have faults: {faults:#?}"))
}

#[test]
fn every_published_statement_is_what_the_leaflet_says() {
    let faults: Vec<String> = statements()
        .iter()
        .filter_map(|statement| {
            let fault = statement.fault(leaflets(), on())?;
            Some(format!("{} ({})\n  {fault}\n  {}", statement.name, statement.leaflet, statement.source))
        })
        .collect();
    assert!(faults.is_empty(), "{} statements do not hold:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn every_statement_names_its_source_and_says_something() {
    let mut names = BTreeSet::new();
    for statement in statements() {
        let name = &statement.name;
        assert!(names.insert(name.clone()), "two statements are called `{name}`");
        assert!(
            statement.source.starts_with("Source: "),
            "`{name}` does not begin its source with `Source: `"
        );
        let marked = statement.difference.as_ref().is_none_or(|text| text.starts_with("DIFFERENCE: "));
        assert!(marked, "`{name}` does not begin its difference with `DIFFERENCE: `");
        let says = statement.expects() != Said::default() || statement.text_contains.is_some();
        assert!(says, "`{name}` compares nothing");
    }
    assert!(names.len() >= 40, "only {} published statements", names.len());
}

#[test]
fn every_leaflet_is_checked_on_supers_withdrawal_dose_and_doses() {
    let statements = statements();
    let shipped: Vec<_> = leaflets().iter().filter(|leaflet| leaflet.jurisdiction == gb()).collect();
    assert!(!shipped.is_empty(), "no leaflet for gb is shipped");
    for leaflet in shipped {
        let checked: BTreeSet<&str> = statements
            .iter()
            .filter(|statement| statement.leaflet == leaflet.id)
            .map(|statement| statement.topic.as_str())
            .collect();
        for topic in [
            Topic::SupersDuring,
            Topic::Withdrawal,
            Topic::Dose,
            Topic::Doses,
            Topic::StayMin,
            Topic::StayMax,
            Topic::Temperature,
        ] {
            let stated = leaflet.in_force(topic, on(), None).next().is_some();
            let topic = topic.as_str();
            assert!(!stated || checked.contains(topic), "no published check of `{topic}` of {}", leaflet.id);
        }
        for topic in [Topic::SupersDuring, Topic::Withdrawal, Topic::Dose, Topic::Doses] {
            let topic = topic.as_str();
            assert!(checked.contains(topic), "no published check of `{topic}` of {}", leaflet.id);
        }
    }
}

#[test]
fn a_statement_that_the_leaflet_does_not_make_is_found_out() {
    let named = |name: &str| {
        let found = statements().into_iter().find(|statement| statement.name == name);
        found.unwrap_or_else(|| panic!("no statement `{name}`"))
    };
    let holds = named("tau-fluvalinate strips do not stay in after eight weeks");
    assert_eq!(holds.fault(leaflets(), on()), None);

    let other_value = Statement { days: Some(55), ..holds.clone() };
    let other_mark = Statement { confidence: "unconfirmed".to_owned(), ..holds.clone() };
    let more_than_stated = Statement { count: Some(1), ..holds.clone() };
    let no_rule = Statement { brood: Some("present".to_owned()), ..holds.clone() };
    let no_topic = Statement { topic: "stay".to_owned(), ..holds.clone() };
    let no_leaflet = Statement { leaflet: LeafletId::new("none").expect("an id"), ..holds.clone() };
    for wrong in [other_value, other_mark, more_than_stated, no_rule, no_topic, no_leaflet] {
        assert!(wrong.fault(leaflets(), on()).is_some(), "{wrong:?} passes");
    }
    let before: Day = "2014-10-31".parse().expect("a date");
    assert!(holds.fault(leaflets(), before).is_some(), "a rule is held to a day before it is in force");

    let words = named("combs that held brood beside amitraz strips of variant A never become honey combs");
    let other_words = Statement { text_contains: Some("four years".to_owned()), ..words };
    assert!(other_words.fault(leaflets(), on()).is_some(), "words that are not there are found");
}

#[test]
fn a_statement_with_an_unknown_key_is_refused() {
    let strange = STATEMENTS.replacen("days = 42", "dayz = 42", 1);
    let error = toml::from_str::<Published>(&strange).expect_err("an unknown key is refused");
    assert!(error.to_string().contains("dayz"), "{error}");
}
