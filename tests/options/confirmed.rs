//! A confirmation as a value counts just like one in words.

use std::collections::BTreeSet;

use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::words::Unit;
use combclear_domain::facts::confirmed::in_words;
use combclear_domain::journal::event::Confirmed;
use combclear_domain::questions::options::{ColonyOptions, WhatIf};
use combclear_domain::rules::leaflet::Leaflet;
use combclear_domain::rules::leaflet::rule::Rule;
use combclear_testkit::entries::draft;
use combclear_wording::Words;
use combclear_wording::options::OptionsReport;
use proptest::prelude::*;
use serde_json::{Value, json};

use super::laws::{asked, colonies};
use super::leaflets;
use super::making::{Journal, SPAN, day};
use super::plans::journals;
use crate::some;

/// The same journal with readings that confirm these rules, chosen by number among those of each lot that may be confirmed.
fn and_readings(journal: &Journal, rules: &[u8], entry: impl Fn(&Leaflet, &Rule) -> Value) -> Journal {
    let readings = journal.lots.iter().map(|(lot, leaflet)| {
        let may_be: Vec<&Rule> = leaflet.rules.iter().filter(|rule| !rule.says.topic().is_stated()).collect();
        let picked = rules.iter().filter_map(|number| may_be.get(usize::from(*number) % may_be.len().max(1)));
        let confirms: Vec<Value> = picked.map(|rule| entry(leaflet, rule)).collect();
        let body = json!({ "lot": lot, "terms": {}, "confirms": confirms });
        draft(&format!("confirmed of {lot}"), day(SPAN), "leaflet_reading", &body)
    });
    readings.fold(journal.clone(), |journal, reading| journal.and(reading))
}

fn words(leaflet: &Leaflet, rule: &Rule) -> Value {
    json!({ "topic": rule.says.topic(), "says": in_words(&rule.says, leaflet.unit) })
}

fn value(_: &Leaflet, rule: &Rule) -> Value {
    serde_json::to_value(Confirmed::Value(rule.says.clone())).unwrap()
}

/// A mix of both ways.
fn either(leaflet: &Leaflet, rule: &Rule) -> Value {
    if rule.line.is_multiple_of(2) { words(leaflet, rule) } else { value(leaflet, rule) }
}

#[test]
#[expect(clippy::too_many_lines, reason = "a line for each form of words")]
fn the_words_of_journals_never_change() {
    let unit = Unit::Strip;
    let mut topics = BTreeSet::new();
    for (topic, fields, words) in [
        ("supers_during", json!({ "value": "off" }), "supers off while it is in"),
        ("supers_during", json!({ "value": "on" }), "supers may be on while it is in"),
        (
            "supers_during",
            json!({ "value": "on_no_harvest" }),
            "supers may be on while it is in, no honey taken meanwhile",
        ),
        ("flow_during", json!({ "value": "forbidden" }), "not in a nectar flow"),
        ("flow_during", json!({ "value": "allowed" }), "may be used in a nectar flow"),
        ("flow_before", json!({ "value": "forbidden" }), "not right before a nectar flow"),
        (
            "flow_before",
            json!({ "value": "forbidden", "days": 14 }),
            "not in the 14 days before a nectar flow",
        ),
        ("withdrawal", json!({ "days": "none_by_label" }), "no withdrawal period by the label"),
        ("withdrawal", json!({ "days": 0 }), "withdrawal period 0 days"),
        ("wait_after_removal", json!({ "days": 1 }), "1 day from removal to supers"),
        ("harvest_during", json!({ "value": "forbidden" }), "no honey taken while it is in"),
        ("harvest_during", json!({ "value": "allowed" }), "honey may be taken while it is in"),
        (
            "comb_rule",
            json!({ "text": "No combs of the brood nest into supers." }),
            "No combs of the brood nest into supers.",
        ),
        ("removal", json!({ "value": "not_needed" }), "removal not needed"),
        ("stay_min", json!({ "days": 42, "brood": "present" }), "at least 42 days, brood present"),
        ("stay_min", json!({ "days": 42 }), "at least 42 days"),
        (
            "stay_max",
            json!({ "days": 56, "brood": "absent_or_lowest" }),
            "at most 56 days, brood absent or at its lowest",
        ),
        ("stay_max", json!({ "days": 56 }), "at most 56 days"),
        ("doses", json!({ "count": 1 }), "1 dose"),
        (
            "doses",
            json!({ "count": 2, "count_max": 3, "interval_min_days": 7 }),
            "2 to 3 doses, at least 7 days apart",
        ),
        (
            "doses",
            json!({ "count": 3, "interval_min_days": 7, "interval_max_days": 7 }),
            "3 doses, 7 days apart",
        ),
        (
            "doses",
            json!({ "count": 3, "interval_min_days": 5, "interval_max_days": 7 }),
            "3 doses, 5 to 7 days apart",
        ),
        ("doses", json!({ "count": 3, "interval_max_days": 7 }), "3 doses, at most 7 days apart"),
        ("courses_per_year", json!({ "count": 1 }), "at most 1 course in a year"),
        (
            "courses_per_year",
            json!({ "count": 2, "counted": "twelve_months" }),
            "at most 2 courses in a twelve months",
        ),
        ("courses_per_broodless_period", json!({ "count": 1 }), "at most 1 course in one time without brood"),
        ("gap_between_courses", json!({ "days": 30 }), "at least 30 days between courses"),
        ("season", json!({ "from_day": "11-01", "to_day": "01-31" }), "only from 11-01 to 01-31 of a year"),
        ("timing", json!({ "value": "after_last_harvest" }), "only after the last harvest of the year"),
        (
            "temperature",
            json!({ "window": "maximum_on_placing_day", "min_tenths_c": 100, "max_tenths_c": 295 }),
            "highest temperature of the day of placing 10 to 29.5 °C",
        ),
        (
            "temperature",
            json!({ "window": "maximum_in_first_days", "first_days": 3, "max_tenths_c": 300 }),
            "highest temperature of each of the first 3 days at most 30 °C",
        ),
        (
            "temperature",
            json!({ "window": "maximum_over_stay", "min_tenths_c": 150 }),
            "highest temperature of every day of the stay 15 °C or more",
        ),
        (
            "temperature",
            json!({ "window": "mean_over_stay", "min_tenths_c": -5 }),
            "mean temperature over the stay -0.5 °C or more",
        ),
        (
            "temperature",
            json!({ "window": "at_use", "min_tenths_c": 50 }),
            "outside temperature at the moment of use 5 °C or more",
        ),
        (
            "temperature",
            json!({ "window": "product", "min_tenths_c": 300, "max_tenths_c": 350 }),
            "temperature of the product 30 to 35 °C",
        ),
        ("brood", json!({ "value": "absent" }), "brood absent"),
        ("brood", json!({ "value": "lowest" }), "brood lowest"),
        (
            "colony_size",
            json!({ "min_brood_frames": 6, "min_bees": 10000 }),
            "at least 6 brood frames covered, at least 10000 bees",
        ),
        ("colony_size", json!({ "text": "Strong colonies only." }), "Strong colonies only."),
        ("brood_boxes", json!({ "max": 1 }), "on one brood box only"),
        ("brood_boxes", json!({ "max": 2 }), "on at most 2 brood boxes"),
        ("entrance", json!({ "text": "Fully open." }), "Fully open."),
        ("dose", json!({ "amount": 2, "per": "hive" }), "2 strips for a hive"),
        (
            "dose",
            json!({ "amount": 1, "per": "brood_box", "when": "in autumn" }),
            "1 strip for each brood box (in autumn)",
        ),
        (
            "dose",
            json!({ "amount": 1, "per": "frames_of_bees", "frames": 5 }),
            "1 strip for every 5 frames of bees or part",
        ),
        (
            "dose",
            json!({ "amount": 5, "amount_max": 6, "per": "seam", "unit": "ml" }),
            "5 to 6 ml for each seam of bees",
        ),
        ("dose", json!({ "amount": 1, "per": "small_colony" }), "1 strip for a small colony"),
        (
            "dose",
            json!({ "amount": 2.5, "per": "comb_side", "unit": "ml" }),
            "2.5 ml for each side of an occupied comb",
        ),
        ("dose", json!({ "amount": 2, "per": "litre_of_hive", "unit": "g" }), "2 g for each litre of hive"),
        (
            "dose",
            json!({ "amount": 2, "per": "bees", "min_bees": 10000, "max_bees": 30000 }),
            "2 strips for 10000 to 30000 bees",
        ),
        ("dose", json!({ "amount": 3, "per": "bees", "min_bees": 30000 }), "3 strips for 30000 bees or more"),
        ("dose", json!({ "amount": 1, "per": "bees", "max_bees": 10000 }), "1 strip for at most 10000 bees"),
        ("dose_cap", json!({ "amount": 54, "unit": "ml" }), "at most 54 ml in one colony"),
        (
            "recipe",
            json!({ "amount": 35, "unit": "g", "water_ml": 500, "sugar_g": 500, "makes_ml": 850, "text": "Stir." }),
            "35 g, 500 ml water, 500 g sugar make 850 ml",
        ),
        ("needs", json!({ "list": ["hive_opened", "dry_ground"] }), "hive opened, dry ground"),
        ("not_with", json!({ "text": "Not with feeding.", "others": ["feeding"] }), "Not with feeding."),
        ("contraindication", json!({ "text": "Not in weak colonies." }), "Not in weak colonies."),
        ("class", json!({ "name": "organic acid" }), "organic acid"),
        ("whole_apiary", json!({ "text": "All at once." }), "All at once."),
        ("user_safety", json!({ "text": "Wear gloves." }), "Wear gloves."),
        ("after_opening", json!({ "text": "Use at once.", "days": 0 }), "Use at once."),
        ("storage", json!({ "text": "Cool." }), "Cool."),
        ("disposal", json!({ "text": "To the pharmacy." }), "To the pharmacy."),
    ] {
        let confirmed = json!({ "topic": topic, "value": fields });
        let Ok(Confirmed::Value(says)) = serde_json::from_value(confirmed.clone()) else {
            panic!("{confirmed}")
        };
        topics.insert(says.topic());
        assert_eq!(in_words(&says, unit), words, "{confirmed}");
        let old = json!({ "topic": topic, "says": words });
        let old: Confirmed = serde_json::from_value(old).unwrap();
        assert!(old.is(&says, unit) && Confirmed::Value(says.clone()).is(&says, unit), "{confirmed}");
    }
    assert!(Topic::ALL.iter().all(|topic| topics.contains(topic)), "{topics:?}");
}

proptest! {
    #![proptest_config(some(48))]

    #[test]
    fn options_are_the_same_by_value_and_in_words(
        journal in journals(),
        (from, length) in (40..180_u16, 0..20_u16),
        rules in prop::collection::vec(any::<u8>(), 1..6),
    ) {
        let ask = asked(day(from), day(from + length), day(SPAN.max(from)), &WhatIf::default());
        let [in_words, by_value, mixed] = [words, value, either]
            .map(|entry| and_readings(&journal, &rules, entry).holding());
        for colony in colonies(&journal) {
            let report = |holding| {
                let answer = ColonyOptions::of(holding, leaflets(), &colony, &ask);
                serde_json::to_value(OptionsReport::of(Words::english(), holding, answer)).unwrap()
            };
            let old = report(&in_words);
            prop_assert_eq!(&report(&by_value), &old, "by value");
            prop_assert_eq!(&report(&mixed), &old, "mixed");
        }
    }
}
