//! Random holdings, as far as treatments depend on them: sites, weather, flows, inspections, supers, courses.
//!
//! A plan is drawn first, then recorded. Refused entries are left out, so every journal is a possible one.

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::confirmed::in_words;
use combclear_domain::journal::Draft;
use combclear_domain::rules::leaflet::Leaflet;
use combclear_testkit::entries::{draft, record, uuid_of};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::making::{Journal, SPAN, day, invented};

/// An event of a plan. Its numbers select from what exists when the entry is made.
#[derive(Debug, Clone)]
pub(super) enum What {
    Inspect { colony: u8, seen: Value },
    Supers { colonies: u8, on: bool },
    Site { apiary: u8, conditions: Value, lasts: Option<u16> },
    Flow { apiary: u8, flow: Value },
    Weather { apiary: u8, measured: bool, apart: u16, degrees: Vec<(i16, i16)> },
    Normals { apiary: u8, month: u8, degrees: (i16, i16) },
    Treat { lot: u8, colonies: u8 },
    Dose { course: u8, colonies: u8 },
    Remove { course: u8, colonies: u8, left_inside: u8 },
    Read { lot: u8, terms: Value },
    Confirm { lot: u8, rule: u8 },
    Move { colony: u8, apiary: u8 },
    End { colony: u8 },
}

/// An event on a day.
#[derive(Debug, Clone)]
pub(super) struct Planned {
    day: u16,
    what: What,
}

/// A journal of up to twenty-five events in one to three colonies at one or two apiaries.
pub(super) fn journals() -> impl Strategy<Value = Journal> {
    let happening = (0..SPAN, what()).prop_map(|(day, what)| Planned { day, what });
    let happenings = prop::collection::vec(happening, 1..26);
    // A leaflet without rules leaves most to learn.
    let silent = invented().iter().position(|leaflet| leaflet.id.as_str() == "strip-silent").unwrap();
    let leaflet = prop_oneof![3 => 0..invented().len(), 1 => Just(silent)];
    let lots = prop::collection::vec((leaflet, prop::option::of(0..SPAN * 2)), 2..5);
    (1..4_usize, 1..3_usize, lots, happenings).prop_map(|(colonies, apiaries, lots, mut happenings)| {
        let mut journal = set_up(colonies, apiaries, &lots);
        let mut holding = journal.holding();
        // Journals are written day by day; entries of one day keep the order in which they were drawn.
        happenings.sort_by_key(|planned| planned.day);
        for (index, planned) in happenings.iter().enumerate() {
            let word = format!("entry {index}");
            let Some(made) = journal.made(&word, planned) else { continue };
            if record(&mut holding, &made).is_ok() {
                if let What::Treat { lot, .. } = planned.what {
                    journal.courses.push((word, journal.lot(lot).0.clone()));
                }
                journal.drafts.push(made);
            }
        }
        journal
    })
}

/// Something that may add knowledge to a journal, depending on its content.
pub(super) fn told() -> impl Strategy<Value = Planned> {
    let what = prop_oneof![
        3 => inspect(),
        2 => site(),
        2 => flow(),
        3 => weather(),
        1 => normals(),
        4 => read(),
        2 => confirm(),
    ];
    (0..SPAN, what).prop_map(|(day, what)| Planned { day, what })
}

fn what() -> impl Strategy<Value = What> {
    let some = any::<u8>;
    prop_oneof![
        5 => inspect(),
        4 => site(),
        4 => flow(),
        4 => weather(),
        1 => normals(),
        1 => read(),
        1 => confirm(),
        3 => (some(), any::<bool>()).prop_map(|(colonies, on)| What::Supers { colonies, on }),
        4 => (some(), some()).prop_map(|(lot, colonies)| What::Treat { lot, colonies }),
        1 => (some(), some()).prop_map(|(course, colonies)| What::Dose { course, colonies }),
        3 => (some(), some(), prop_oneof![6 => Just(0_u8), 1 => Just(1)])
            .prop_map(|(course, colonies, left_inside)| What::Remove { course, colonies, left_inside }),
        1 => (some(), some()).prop_map(|(colony, apiary)| What::Move { colony, apiary }),
        1 => some().prop_map(|colony| What::End { colony }),
    ]
}

fn word(words: &'static [&'static str]) -> impl Strategy<Value = Option<&'static str>> {
    prop::option::weighted(0.6, prop::sample::select(words))
}

/// An estimate of the bees fits the number of seams; otherwise one of the two would be wrong.
fn inspect() -> impl Strategy<Value = What> {
    let few = |most: u16| prop::option::weighted(0.4, 1..most);
    let bees = prop::option::weighted(0.4, 1_200..=3_000_u32);
    let feeder = prop::option::weighted(0.3, any::<bool>());
    let brood = word(&["absent", "lowest", "present"]);
    (any::<u8>(), brood, few(16), bees, few(4), few(90), feeder).prop_map(
        |(colony, brood, seams, bees, boxes, litres, feeder)| {
            let seen = json!({
                "brood": brood,
                "seams": seams,
                "bees": bees.map(|each| each * u32::from(seams.unwrap_or(5))),
                "brood_boxes": boxes,
                "hive_litres": litres,
                "feeder": feeder,
            });
            What::Inspect { colony, seen }
        },
    )
}

fn site() -> impl Strategy<Value = What> {
    let power = word(&["none", "battery", "generator", "mains"]);
    let access = word(&["vehicle", "vehicle", "on_foot", "none"]);
    let ground = word(&["dry", "dry", "wet", "flooded"]);
    (any::<u8>(), power, access, ground, prop::option::weighted(0.3, 0..40_u16)).prop_map(
        |(apiary, power, access, ground, lasts)| {
            let conditions = json!({ "power": power, "access": access, "ground": ground });
            What::Site { apiary, conditions, lasts }
        },
    )
}

fn flow() -> impl Strategy<Value = What> {
    let uncertain = prop::option::of((0..15_u16, 0..15_u16));
    let lasts = prop::option::weighted(0.8, 15..40_u16);
    let forage = prop::sample::select(&["ivy", "lime"][..]);
    (any::<u8>(), forage, 20..250_u16, uncertain, lasts).prop_map(
        |(apiary, forage, from, uncertain, lasts)| {
            let flow = json!({
                "forage": forage,
                "stage": if uncertain.is_some() { "expected" } else { "seen" },
                "from": day(from),
                "from_early": uncertain.map(|(early, _)| day(from - early)),
                "from_late": uncertain.map(|(_, late)| day(from + late)),
                "to": lasts.map(|lasts| day(from + lasts)),
            });
            What::Flow { apiary, flow }
        },
    )
}

/// The lowest and highest of a day, in whole degrees.
fn degrees() -> impl Strategy<Value = (i16, i16)> {
    (-5..20_i16, 0..15_i16).prop_map(|(low, range)| (low, low + range))
}

fn weather() -> impl Strategy<Value = What> {
    let degrees = prop::collection::vec(degrees(), 1..40);
    (any::<u8>(), any::<bool>(), 0..30_u16, degrees)
        .prop_map(|(apiary, measured, apart, degrees)| What::Weather { apiary, measured, apart, degrees })
}

fn normals() -> impl Strategy<Value = What> {
    (any::<u8>(), 1..13_u8, degrees()).prop_map(|(apiary, month, degrees)| What::Normals {
        apiary,
        month,
        degrees,
    })
}

/// Random readings: any topics, any values that do not contradict each other.
fn read() -> impl Strategy<Value = What> {
    let days = |most: u16| prop::option::of(0..most);
    let supers = word(&["off", "on", "on_no_harvest"]);
    // `nothing_stays` would contradict recorded removals; `tests/supering` has that case.
    let removal = word(&["needed", "not_needed"]);
    let stays = (prop::option::of(1..21_u16), prop::option::of(1..35_u16), prop::option::of(35..60_u16));
    let terms = (
        supers,
        word(&["forbidden", "allowed"]),
        days(12),
        days(12),
        removal,
        stays,
        prop::option::of(1..4_u8),
    );
    (any::<u8>(), terms).prop_map(|(lot, (supers, flow, withdrawal, wait, removal, stays, doses))| {
        let mut terms = json!({
            "supers_during": supers,
            "flow_during": flow,
            "withdrawal_days": withdrawal,
            "wait_after_removal_days": wait,
            "removal": removal,
            "stay_min_days": stays.0,
            "stay_min_days_with_brood": stays.1,
            "stay_max_days": stays.2,
            "doses": doses,
        });
        terms.as_object_mut().unwrap().retain(|_, value| !value.is_null());
        What::Read { lot, terms }
    })
}

fn confirm() -> impl Strategy<Value = What> {
    (any::<u8>(), any::<u8>()).prop_map(|(lot, rule)| What::Confirm { lot, rule })
}

fn set_up(colonies: usize, apiaries: usize, lots: &[(usize, Option<u16>)]) -> Journal {
    let start: Day = "2025-01-01".parse().unwrap();
    let mut journal = Journal {
        drafts: Vec::new(),
        colonies: ["A0", "A1", "A2"][..colonies].iter().map(|name| (*name).to_owned()).collect(),
        apiaries: ["East", "West"][..apiaries].iter().map(|name| (*name).to_owned()).collect(),
        lots: Vec::new(),
        courses: Vec::new(),
    };
    let mut add = |word: &str, kind: &str, body: Value| journal.drafts.push(draft(word, start, kind, &body));
    add("details", "holding_details", json!({ "keeper": "tester", "jurisdiction": "xy" }));
    for apiary in &journal.apiaries {
        add(apiary, "apiary_details", json!({ "apiary": apiary }));
    }
    for (colony, apiary) in journal.colonies.iter().zip(journal.apiaries.iter().cycle()) {
        let body = json!({ "colony": colony, "apiary": apiary, "medicines": "none" });
        add(colony, "colony_established", body);
    }
    for leaflet in invented() {
        let (id, unit) = (&leaflet.id, leaflet.unit);
        let body = json!({ "medicine": id, "pack_name": "Pack", "unit": unit, "leaflet": id });
        add(id.as_str(), "medicine_described", body);
    }
    for (index, (leaflet, expiry)) in lots.iter().enumerate() {
        let (lot, leaflet) = (format!("lot {index}"), invented()[*leaflet]);
        let body = json!({
            "lot": lot, "medicine": leaflet.id, "quantity": 10_000, "expiry": expiry.map(day)
        });
        add(&lot, "lot_acquired", body);
        journal.lots.push((lot, leaflet));
    }
    journal
}

impl Journal {
    fn colony(&self, number: u8) -> &str {
        &self.colonies[usize::from(number) % self.colonies.len()]
    }

    /// One colony or all.
    fn some(&self, number: u8) -> Vec<String> {
        if number.is_multiple_of(3) {
            self.colonies.clone()
        } else {
            vec![self.colony(number / 3).to_owned()]
        }
    }

    fn apiary(&self, number: u8) -> &str {
        &self.apiaries[usize::from(number) % self.apiaries.len()]
    }

    fn lot(&self, number: u8) -> &(String, &'static Leaflet) {
        &self.lots[usize::from(number) % self.lots.len()]
    }

    fn course(&self, number: u8) -> Option<&(String, String)> {
        self.courses.get(usize::from(number) % self.courses.len().max(1))
    }

    /// The entry of an event, if the things it names exist.
    pub(super) fn made(&self, word: &str, planned: &Planned) -> Option<Draft> {
        let on = day(planned.day);
        let (kind, body) = match &planned.what {
            What::Inspect { colony, seen } => ("inspection", with(seen, "colony", self.colony(*colony))),
            What::Supers { colonies, on: true } => {
                ("supers_on", json!({ "colonies": self.some(*colonies), "supers": 1, "purpose": "harvest" }))
            }
            What::Supers { colonies, on: false } => {
                ("supers_off", json!({ "colonies": self.some(*colonies), "left_on": 0 }))
            }
            What::Site { apiary, conditions, lasts } => {
                let mut body = with(conditions, "apiary", self.apiary(*apiary));
                body["until"] = json!(lasts.map(|days| on.plus(days)));
                ("site_conditions", body)
            }
            What::Flow { apiary, flow } => ("nectar_flow", with(flow, "apiary", self.apiary(*apiary))),
            What::Weather { apiary, measured, apart, degrees } => {
                let count = u16::try_from(degrees.len()).unwrap();
                let first = if *measured { on.minus(apart + count) } else { on.plus(*apart) };
                let days = (0..count).zip(degrees).map(
                    |(ahead, (low, high))| json!({ "day": first.plus(ahead), "min_c": low, "max_c": high }),
                );
                let days: Vec<Value> = days.collect();
                let stage = if *measured { "measured" } else { "forecast" };
                ("temperature", json!({ "apiary": self.apiary(*apiary), "stage": stage, "days": days }))
            }
            What::Normals { apiary, month, degrees: (low, high) } => {
                let months = json!([{ "month": month, "min_c": low, "max_c": high }]);
                ("temperature_normals", json!({ "apiary": self.apiary(*apiary), "months": months }))
            }
            What::Treat { lot, colonies } => {
                let given = json!({ "lot": self.lot(*lot).0, "each": 1, "colonies": self.some(*colonies) });
                ("administration", json!({ "given": [given] }))
            }
            What::Dose { course, colonies } => {
                let (first, lot) = self.course(*course)?;
                let given = json!({ "lot": lot, "each": 1, "colonies": self.some(*colonies) });
                ("administration", json!({ "given": [given], "continues": uuid_of(first) }))
            }
            What::Remove { course, colonies, left_inside } => {
                let (first, _) = self.course(*course)?;
                let colonies = self.some(*colonies);
                let body = json!({
                    "administration": uuid_of(first), "colonies": colonies, "left_inside": left_inside
                });
                ("removal", body)
            }
            What::Read { lot, terms } => {
                ("leaflet_reading", json!({ "lot": self.lot(*lot).0, "terms": terms }))
            }
            What::Confirm { lot, rule } => {
                let (lot, leaflet) = self.lot(*lot);
                let confirmed = confirmed(leaflet, *rule);
                ("leaflet_reading", json!({ "lot": lot, "terms": {}, "confirms": [confirmed] }))
            }
            What::Move { colony, apiary } => {
                ("colony_moved", json!({ "colony": self.colony(*colony), "to": self.apiary(*apiary) }))
            }
            What::End { colony } => {
                ("colony_ended", json!({ "colony": self.colony(*colony), "cause": "sold" }))
            }
        };
        Some(draft(word, on, kind, &body))
    }
}

fn with(body: &Value, field: &str, name: &str) -> Value {
    let mut body = body.clone();
    body[field] = json!(name);
    body
}

/// A leaflet value in the words of a confirmation.
fn confirmed(leaflet: &Leaflet, rule: u8) -> Value {
    let rule = &leaflet.rules[usize::from(rule) % leaflet.rules.len()];
    json!({ "topic": rule.says.topic(), "says": in_words(&rule.says, leaflet.unit) })
}
