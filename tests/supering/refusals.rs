//! What a holding must refuse and must accept: entries as data, in `refusals/`.

use std::collections::BTreeSet;
use std::path::Path;

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::{Holding, Refusal};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_testkit::entries::{envelope, take_in_at_noon, uuid_of};
use combclear_testkit::files::{listing, root};
use combclear_wording::Words;
use combclear_wording::refusals::Refused;
use combclear_wording::supering::SuperingReport;
use serde::Deserialize;

use super::leaflets;

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RefusalFile {
    #[serde(default)]
    setup: Vec<toml::Value>,
    #[serde(rename = "case")]
    cases: Vec<RefusalCase>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct RefusalCase {
    name: String,
    /// A published source, or "common practice, no source".
    #[serde(default)]
    source: Option<String>,
    #[serde(default)]
    entries: Vec<toml::Value>,
    /// The last entry, which is refused. If absent, all entries must be accepted.
    #[serde(default)]
    refused: Option<toml::Value>,
    /// When the last entry is recorded; by default at noon (UTC) of its day.
    #[serde(default)]
    recorded_at: Option<String>,
    #[serde(default)]
    pointer: Option<String>,
    /// Part of the message; `{word}` is replaced by an id.
    #[serde(default)]
    message: Option<String>,
    #[serde(default)]
    help: Option<String>,
}

#[test]
fn what_cannot_be_true_is_refused_with_its_place_and_its_remedy() {
    let mut wrong = Vec::new();
    let mut refused = 0;
    for (file, setup, case) in cases() {
        let Some(entry) = &case.refused else { continue };
        refused += 1;
        let mut fault = |what: String| wrong.push(format!("{file}: {}: {what}", case.name));
        let mut holding = taken_in(setup.iter().chain(&case.entries));
        let before = answers(&holding, leaflets());
        let Err(refusal) = accept(&mut holding, entry, case.recorded_at.as_deref()) else {
            fault("was not refused".to_owned());
            continue;
        };
        if answers(&holding, leaflets()) != before {
            fault("the refused entry left a trace".to_owned());
        }
        let Refused { message, help } = said(&refusal);
        let expected = [
            ("pointer", &case.pointer, refusal.pointer == with_ids(case.pointer.as_deref().unwrap_or("/"))),
            ("message", &case.message, contains(&message, case.message.as_deref())),
            ("help", &case.help, contains(&help, case.help.as_deref())),
        ];
        for (part, wanted, holds) in expected {
            if !holds {
                fault(format!("{part}: wanted {wanted:?}, got {refusal:?}: {message:?}, {help:?}"));
            }
        }
        assert!(case.pointer.is_some(), "{}: no pointer is expected", case.name);
    }
    assert!(refused > 0, "no case was found");
    assert!(wrong.is_empty(), "{} wrong of {refused} refusals:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn what_broke_a_rule_or_was_recorded_late_is_not_refused() {
    let mut wrong = Vec::new();
    let mut accepted = 0;
    for (file, setup, case) in cases() {
        if case.refused.is_some() {
            continue;
        }
        accepted += 1;
        let mut holding = taken_in(&setup);
        for (index, entry) in case.entries.iter().enumerate() {
            let last = index + 1 == case.entries.len();
            let recorded_at = case.recorded_at.as_deref().filter(|_| last);
            if let Err(refusal) = accept(&mut holding, entry, recorded_at) {
                wrong.push(format!("{file}: {}: entry {index}: {refusal:?}", case.name));
            }
        }
    }
    assert!(accepted > 0, "no case was found");
    assert!(wrong.is_empty(), "{} wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn every_help_says_something_and_no_message_ends_with_a_full_stop() {
    let mut seen = 0;
    for (_, setup, case) in cases() {
        let Some(entry) = &case.refused else { continue };
        let mut holding = taken_in(setup.iter().chain(&case.entries));
        let Err(refusal) = accept(&mut holding, entry, case.recorded_at.as_deref()) else { continue };
        seen += 1;
        let Refused { message, help } = said(&refusal);
        for text in [&message, &help] {
            assert!(!text.is_empty() && !text.ends_with('.'), "{}: {text:?}", case.name);
            assert!(!text.starts_with(char::is_uppercase), "{}: {text:?}", case.name);
        }
        assert!(!message.contains(" a inspection") && !message.contains(" a administration"));
    }
    assert!(seen > 0, "no case was refused");
}

#[test]
fn an_entry_that_was_refused_may_be_sent_again_mended() {
    let mut holding = taken_in(&[]);
    let apiary = |word: &str| format!("id = \"one\"\non = \"2026-03-02\"\n{word}");
    let bad = r#"kind = "colony_established"
        body = { colony = "A1", apiary = "East", medicines = "none" }"#;
    let good = r#"kind = "apiary_details"
        body = { apiary = "East" }"#;
    let bad = toml::from_str(&apiary(bad)).unwrap();
    let good = toml::from_str(&apiary(good)).unwrap();
    assert!(accept(&mut holding, &bad, None).is_err(), "there is no apiary yet");
    assert_eq!(holding.tip(), None, "a refused entry has no place");
    assert_eq!(accept(&mut holding, &good, None), Ok(()), "its id is still free");
    assert_eq!(holding.tip().map(|(seq, _)| seq), Some(1));
}

#[test]
fn four_hundred_days_of_temperatures_fit_into_one_entry_and_one_more_does_not() {
    let entry = |most: usize| {
        let first: Day = "2026-03-03".parse().unwrap();
        let days = std::iter::successors(Some(first), |day| Some(day.next())).take(most);
        let days: Vec<String> =
            days.map(|day| format!(r#"{{ day = "{day}", min_c = 1, max_c = 9.5 }}"#)).collect();
        let text = format!(
            r#"on = "2026-03-02"
            kind = "temperature"
            body = {{ apiary = "East", stage = "forecast", days = [{}] }}"#,
            days.join(", ")
        );
        toml::from_str::<toml::Value>(&text).unwrap()
    };
    let apiary = r#"on = "2026-03-01"
        kind = "apiary_details"
        body = { apiary = "East" }"#;
    let mut holding = taken_in(&[toml::from_str(apiary).unwrap()]);
    let refusal = accept(&mut holding, &entry(401), None).unwrap_err();
    assert_eq!(refusal.pointer, "/body/days");
    let Refused { message, help } = said(&refusal);
    assert_eq!(message, "the list has 401 days");
    assert_eq!(help, "give 1 to 400 days in one entry");
    assert_eq!(accept(&mut holding, &entry(400), None), Ok(()));
}

/// Every case with its file and the setup of that file.
fn cases() -> Vec<(String, Vec<toml::Value>, RefusalCase)> {
    let read = |path: &Path| -> RefusalFile {
        let text = std::fs::read_to_string(path).unwrap();
        toml::from_str(&text).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
    };
    let mut cases = Vec::new();
    for path in &listing(root().join("tests/supering/refusals")) {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        let file = read(path);
        for case in &file.cases {
            assert!(case.source.as_deref() != Some(""), "{name}: an empty source: {}", case.name);
        }
        cases.extend(file.cases.into_iter().map(|case| (name.clone(), file.setup.clone(), case)));
    }
    cases
}

fn taken_in<'a>(entries: impl IntoIterator<Item = &'a toml::Value>) -> Holding {
    let mut holding = Holding::new("test".parse().unwrap());
    for entry in entries {
        accept(&mut holding, entry, None).unwrap_or_else(|refusal| panic!("{entry:?}: {refusal:?}"));
    }
    holding
}

fn accept(holding: &mut Holding, entry: &toml::Value, recorded_at: Option<&str>) -> Result<(), Refusal> {
    let draft = envelope(entry).read().unwrap_or_else(|fault| panic!("{entry:?}: {fault:?}"));
    take_in_at_noon(holding, draft, recorded_at)
}

fn said(refusal: &Refusal) -> Refused {
    Refused::of(Words::english(), refusal)
}

/// Every answer of a holding, as text, over the days of the cases.
fn answers(holding: &Holding, leaflets: &Leaflets) -> Vec<String> {
    let mut days: BTreeSet<Day> = BTreeSet::new();
    for month in 2..=6 {
        days.extend([2, 11, 14, 21].into_iter().filter_map(|day| Day::new(2026, month, day)));
    }
    let mut answers = vec![format!("{:?}", holding.tip())];
    for day in days {
        for colony in holding.colonies() {
            let report = SuperingReport::ask(Words::english(), holding, leaflets, colony, day);
            answers.push(serde_json::to_string(&report).unwrap());
        }
        for apiary in holding.apiaries() {
            answers.push(format!("{:?}", holding.apiary(apiary, day)));
        }
    }
    answers.extend(holding.lots().map(|lot| format!("{:?} {:?}", holding.lot(lot), holding.balance(lot))));
    answers.extend(holding.colonies().map(|colony| format!("{:?}", holding.colony_file(colony))));
    answers.extend(holding.lots().map(|lot| format!("{:?}", holding.lot_file(lot))));
    answers.extend(holding.apiaries().map(|apiary| format!("{:?}", holding.apiary_file(apiary))));
    answers
}

fn contains(text: &str, words: Option<&str>) -> bool {
    words.is_none_or(|words| text.contains(&with_ids(words)))
}

/// Replaces words in braces by the ids of their entries.
fn with_ids(text: &str) -> String {
    let mut parts = text.split('{');
    let mut out = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        let (word, rest) = part.split_once('}').expect("a brace that is not closed");
        out.push_str(&uuid_of(word));
        out.push_str(rest);
    }
    out
}
