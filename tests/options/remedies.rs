//! Whatever an answer asks for can be recorded as asked, and then that unknown is gone.

use std::collections::BTreeMap;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::words::ColonyName;
use combclear_domain::journal::Draft;
use combclear_domain::questions::options::WhatIf;
use combclear_testkit::entries::draft;
use combclear_wording::options::{Missing, OptionReport, OptionsReport};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::colony_report;
use super::laws::{asked, colonies};
use super::making::{SPAN, day};
use super::plans::journals;
use crate::some;

/// Possible values of a field.
fn values(field: &str) -> Vec<Value> {
    match field {
        "brood" => vec![json!("absent"), json!("lowest"), json!("present")],
        "feeder" => vec![json!(true), json!(false)],
        "seams" | "brood_boxes" => vec![json!(1), json!(9)],
        "bees" => vec![json!(9_000), json!(30_000)],
        "power" => vec![json!("none"), json!("battery"), json!("mains")],
        "access" => vec![json!("none"), json!("on_foot")],
        "ground" => vec![json!("dry"), json!("flooded")],
        "terms.supers_during" => vec![json!("off"), json!("on"), json!("on_no_harvest")],
        "terms.flow_during" => vec![json!("allowed"), json!("forbidden")],
        "terms.removal" => vec![json!("needed"), json!("not_needed")],
        "terms.doses" => vec![json!(1)],
        "terms.stay_min_days" => vec![json!(20), json!(42)],
        "terms.stay_min_days_with_brood" => vec![json!(42)],
        "terms.stay_max_days" => vec![json!(56)],
        "terms.withdrawal_days" | "terms.wait_after_removal_days" => vec![json!(0), json!(7)],
        other => panic!("`{other}` is asked for, and nothing is known that could be recorded in it"),
    }
}

/// Every combination of values for these fields.
fn bodies(fields: &[String]) -> Vec<Value> {
    let mut bodies = vec![json!({})];
    for field in fields {
        let (name, only) =
            field.split_once('=').map_or((field.as_str(), None), |(name, only)| (name, Some(only)));
        let values = only.map_or_else(|| values(name), |only| vec![json!(only)]);
        bodies = bodies
            .iter()
            .flat_map(|body| {
                values.iter().map(|value| {
                    let mut body = body.clone();
                    match name.split_once('.') {
                        Some((outer, inner)) => body[outer][inner] = value.clone(),
                        None => body[name] = value.clone(),
                    }
                    body
                })
            })
            .collect();
    }
    bodies
}

/// The ways to record what is asked for, each as drafts of one kind. None if no entry is asked for, or only one that must
/// precede another.
fn recorded(
    missing: &Missing,
    colony: &ColonyName,
    apiary: &str,
    (concerns, today): (Day, Day),
) -> Vec<Vec<Draft>> {
    let Some(kind) = missing.supplied_by else { return Vec::new() };
    let on = |body: &Value, on: Day| vec![draft(&format!("asked for {on}"), on, kind, body)];
    let with = |mut body: Value, fields: &[(&str, Value)]| {
        for (field, value) in fields {
            body[*field] = value.clone();
        }
        body
    };
    let days = || [missing.on_from.unwrap(), missing.on_by.unwrap()];
    match kind {
        "inspection" => {
            let bodies =
                bodies(&missing.fields).into_iter().map(|body| with(body, &[("colony", json!(colony))]));
            bodies.flat_map(|body| days().map(|day| on(&body, day))).collect()
        }
        "site_conditions" => {
            let bodies =
                bodies(&missing.fields).into_iter().map(|body| with(body, &[("apiary", json!(apiary))]));
            bodies.flat_map(|body| days().map(|day| on(&body, day))).collect()
        }
        "temperature" => {
            let [first, last] = days();
            let each = |low: i16, high: i16| {
                let days =
                    std::iter::successors(Some(first), |day| Some(day.next())).take_while(|day| *day <= last);
                let told: Vec<Value> =
                    days.map(|day| json!({ "day": day, "min_c": low, "max_c": high })).collect();
                json!({ "apiary": apiary, "stage": "measured", "days": told })
            };
            [each(12, 20), each(-5, 2)].map(|body| on(&body, last)).to_vec()
        }
        "nectar_flow" => {
            let flow = |forage: &str, stage: &str, from: Day, recorded: Day| {
                let body =
                    json!({ "apiary": apiary, "forage": forage, "stage": stage, "from": from, "to": from });
                on(&body, recorded)
            };
            let [first, last] = days();
            if missing.fields.iter().any(|field| field == "stage=seen") {
                // The forage of the flow asked for, from the sentence.
                let forage =
                    missing.how.split("the flow of ").nth(1).unwrap().split(" as seen").next().unwrap();
                vec![flow(forage, "seen", last, today.max(last))]
            } else {
                [first, last]
                    .map(|from| flow("a flow that was asked for", "expected", from, concerns))
                    .to_vec()
            }
        }
        "leaflet_reading" => {
            let body = |lot: &str, body: &Value| with(body.clone(), &[("lot", json!(lot))]);
            let told = if missing.fields == ["confirms"] {
                let said: Value =
                    serde_json::from_str(missing.how.split("`confirms`: ").nth(1).unwrap()).unwrap();
                vec![json!({ "terms": {}, "confirms": [said] })]
            } else {
                bodies(&missing.fields)
            };
            assert!(!missing.lots.is_empty(), "{missing:?}");
            let reading = |told: &Value| {
                let of_lots = missing
                    .lots
                    .iter()
                    .map(|lot| draft(&format!("asked for {lot}"), concerns, kind, &body(lot.as_str(), told)));
                of_lots.collect()
            };
            told.iter().map(reading).collect()
        }
        "removal" => {
            let [entry] = missing.entries.as_slice() else { panic!("{missing:?}") };
            let body = json!({ "administration": entry, "colonies": [colony] });
            vec![on(&body, missing.on_by.unwrap())]
        }
        // Reading the leaflet of a lot still to be acquired, and the medicines in a colony that joined, take two steps or a
        // correction.
        "lot_acquired" | "colony_established" => Vec::new(),
        other => panic!("no entry of the kind `{other}` is known to be asked for: {missing:?}"),
    }
}

/// The same option of another report.
fn same<'r>(report: &'r OptionsReport, option: &OptionReport) -> &'r OptionReport {
    let same = |other: &&OptionReport| {
        (&other.leaflet, &other.method, &other.revision)
            == (&option.leaflet, &option.method, &option.revision)
    };
    report.options.iter().find(same).unwrap()
}

/// Whether a remaining unknown is the same as before. Inspections, measurements and site conditions settle their whole rule;
/// a reading or a flow may raise another question of it.
fn is_left(before: &Missing, left: &Missing) -> bool {
    let whole = ["inspection", "temperature", "site_conditions"];
    let rule = |missing: &Missing| missing.fact.split(": ").next().unwrap().to_owned();
    let same = if whole.iter().any(|kind| before.supplied_by == Some(*kind)) {
        rule(before) == rule(left)
    } else {
        before.fact == left.fact
    };
    before.about == left.about && before.fields == left.fields && before.entries == left.entries && same
}

proptest! {
    #![proptest_config(some(40))]

    #[test]
    fn what_is_recorded_as_it_is_asked_for_takes_the_blank_away(
        journal in journals(),
        (from, length) in (40..180_u16, 0..20_u16),
        flooded in prop_oneof![3 => Just(false), 1 => Just(true)],
        picks in prop::collection::vec(any::<(prop::sample::Index, prop::sample::Index)>(), 8),
    ) {
        let holding = journal.holding();
        let until = day(from + 5);
        let assumed = if flooded { json!({ "ground": "flooded", "until": until }) } else { json!({}) };
        let what_if: WhatIf = serde_json::from_value(assumed).unwrap();
        let as_of = day(SPAN.max(from));
        let ask = asked(day(from), day(from + length), as_of, &what_if);
        // By kind of remedy, so that rare kinds get their turn too.
        let mut ways: BTreeMap<String, Vec<_>> = BTreeMap::new();
        for colony in colonies(&journal) {
            let report = colony_report(&holding, &colony, &ask);
            let Some(apiary) = &report.apiary else { continue };
            for option in &report.options {
                for missing in &option.missing {
                    let concerns = missing.from.unwrap_or(day(from));
                    let recorded = recorded(missing, &colony, apiary.as_str(), (concerns, as_of));
                    let way = |drafts| (colony.clone(), option.clone(), missing.clone(), concerns, drafts);
                    let kind = format!("{:?} {}", missing.supplied_by, missing.fields.join(" "));
                    ways.entry(kind).or_default().extend(recorded.into_iter().map(way));
                }
            }
        }
        ways.retain(|_, ways| !ways.is_empty());
        let ways: Vec<_> = ways.into_values().collect();
        // Only some of them: a whole answer takes time.
        for (kind, way) in picks.iter().filter(|_| !ways.is_empty()) {
            let of_kind = &ways[kind.index(ways.len())];
            let (colony, option, missing, concerns, drafts) = &of_kind[way.index(of_kind.len())];
            let after = drafts.iter().fold(journal.clone(), |journal, draft| journal.and(draft.clone()));
            let latest = drafts.iter().map(|draft| draft.on).max().unwrap();
            let recorded = match after.try_holding() {
                Ok(holding) => holding,
                Err(refusal) => {
                    return Err(TestCaseError::fail(format!("{refusal:?} for {missing:?} in {journal:?}")));
                }
            };
            let again = asked(*concerns, *concerns, as_of.max(latest), &what_if);
            let report = colony_report(&recorded, colony, &again);
            let left = same(&report, option).missing.iter().find(|left| is_left(missing, left));
            prop_assert!(
                left.is_none(),
                "{} in {} on {}: {:?}\nstill {:?}\nafter {:?}\n{:?}",
                option.leaflet, colony, concerns, missing, left, drafts, journal
            );
        }
    }
}

#[test]
fn a_value_can_be_named_for_every_field_that_is_asked_for() {
    assert_eq!(bodies(&["terms.removal".to_owned(), "terms.doses".to_owned()]).len(), 2);
    assert_eq!(bodies(&["brood=present".to_owned()]), [json!({ "brood": "present" })]);
}
