//! Random holdings of a few colonies and medicines.
//!
//! A plan is drawn first, then recorded. Refused entries are left out, so every journal is a possible one.

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Draft, Event};
use combclear_testkit::entries::{Journal, draft, record, uuid_of};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::leaflets;
use super::making::{PLAIN_STRIPS, SPAN, day};

/// An event of a plan. Its numbers select from what exists when the entry is made.
#[derive(Debug, Clone)]
enum What {
    Treat {
        medicine: u8,
        colonies: u8,
        both_lots: bool,
        pack: Option<u16>,
        method: Option<bool>,
        prescribed: bool,
    },
    Dose {
        course: u8,
        colonies: u8,
        pack: Option<u16>,
    },
    Remove {
        course: u8,
        colonies: u8,
        left_inside: u8,
    },
    Split {
        colony: u8,
        strips: Option<&'static str>,
    },
    Unite {
        colony: u8,
        into: u8,
        strips: Option<&'static str>,
    },
    SupersOn {
        colonies: u8,
        purpose: &'static str,
    },
    SupersOff {
        colonies: u8,
        left_on: u8,
    },
    Inspect {
        colony: u8,
        brood: &'static str,
    },
    Read {
        medicine: u8,
        lot: u8,
        terms: Value,
    },
    End {
        colony: u8,
    },
}

#[derive(Debug, Clone)]
struct Planned {
    day: u16,
    hour: Option<u8>,
    what: What,
}

#[derive(Debug, Clone)]
struct Plan {
    jurisdiction: bool,
    unknown_inside: Option<u8>,
    palette: Vec<usize>,
    declared: Vec<Value>,
    prescription: Value,
    happenings: Vec<Planned>,
}

/// A journal of up to thirty happenings in up to a dozen colonies.
pub(crate) fn journals() -> impl Strategy<Value = Journal> {
    let plan = (
        prop::bool::weighted(0.95),
        prop::option::weighted(0.1, 0..3_u8),
        prop::collection::vec(0..kinds_of_medicine(), 3),
        prop::collection::vec(terms(), 2),
        terms(),
        prop::collection::vec(planned(), 1..30),
    );
    plan.prop_map(|(jurisdiction, unknown_inside, palette, declared, prescription, happenings)| {
        Plan { jurisdiction, unknown_inside, palette, declared, prescription, happenings }.recorded()
    })
}

/// A journal of strips that must come out and keep supers off meanwhile, with at most one entry a day.
pub(super) fn journals_of_strips() -> impl Strategy<Value = Journal> {
    let strips = || {
        invented()
            .iter()
            .enumerate()
            .filter(|(_, id)| PLAIN_STRIPS.contains(*id))
            .map(|(index, _)| index)
            .collect()
    };
    prop::collection::vec(planned(), 1..40).prop_map(move |mut happenings| {
        happenings.retain(|planned| !matches!(planned.what, What::Read { .. }));
        for (planned, ahead) in happenings.iter_mut().zip((0..SPAN).step_by(2)) {
            planned.day = ahead;
            if let What::Treat { pack, .. } | What::Dose { pack, .. } = &mut planned.what {
                *pack = None;
            }
        }
        let plan = Plan {
            jurisdiction: true,
            unknown_inside: None,
            palette: strips(),
            declared: Vec::new(),
            prescription: json!({}),
            happenings,
        };
        plan.recorded()
    })
}

fn planned() -> impl Strategy<Value = Planned> {
    (0..SPAN, prop::option::weighted(0.2, 8..18_u8), what()).prop_map(|(day, hour, what)| Planned {
        day,
        hour,
        what,
    })
}

fn what() -> impl Strategy<Value = What> {
    let pack = || prop::option::weighted(0.5, 0..12_u16);
    let strips = |words: &'static [&'static str]| prop::option::weighted(0.7, prop::sample::select(words));
    let treat =
        (any::<u8>(), any::<u8>(), prop::bool::weighted(0.2), pack(), any::<Option<bool>>(), any::<bool>());
    prop_oneof![
        6 => treat.prop_map(|(medicine, colonies, both_lots, pack, method, prescribed)| {
            What::Treat { medicine, colonies, both_lots, pack, method, prescribed }
        }),
        3 => (any::<u8>(), any::<u8>(), pack())
            .prop_map(|(course, colonies, pack)| What::Dose { course, colonies, pack }),
        6 => (any::<u8>(), any::<u8>(), prop_oneof![6 => Just(0_u8), 1 => Just(1)])
            .prop_map(|(course, colonies, left_inside)| What::Remove { course, colonies, left_inside }),
        3 => (any::<u8>(), strips(&["stayed", "went", "both"]))
            .prop_map(|(colony, strips)| What::Split { colony, strips }),
        2 => (any::<u8>(), any::<u8>(), strips(&["went_along", "taken_out"]))
            .prop_map(|(colony, into, strips)| What::Unite { colony, into, strips }),
        2 => (any::<u8>(), prop::sample::select(&["harvest", "bees_only"][..]))
            .prop_map(|(colonies, purpose)| What::SupersOn { colonies, purpose }),
        2 => (any::<u8>(), 0..2_u8).prop_map(|(colonies, left_on)| What::SupersOff { colonies, left_on }),
        2 => (any::<u8>(), prop::sample::select(&["absent", "lowest", "present"][..]))
            .prop_map(|(colony, brood)| What::Inspect { colony, brood }),
        2 => (any::<u8>(), 1..3_u8, terms()).prop_map(|(medicine, lot, terms)| What::Read { medicine, lot, terms }),
        1 => any::<u8>().prop_map(|colony| What::End { colony }),
    ]
}

/// Random stated terms: any topics, any values that do not contradict each other.
pub(super) fn terms() -> impl Strategy<Value = Value> {
    let days = |most: u16| prop::option::of(0..most);
    let supers = prop::option::of(prop::sample::select(&["off", "on", "on_no_harvest"][..]));
    let removal = prop::option::of(prop::sample::select(&["needed", "not_needed", "nothing_stays"][..]));
    (
        supers,
        days(12),
        days(12),
        removal,
        prop::option::of(1..21_u16),
        prop::option::of(1..21_u16),
        prop::option::of(20..40_u16),
        prop::option::of(1..4_u8),
    )
        .prop_map(|(supers, withdrawal, wait, removal, least, with_brood, most, doses)| {
            let mut terms = json!({
                "supers_during": supers,
                "withdrawal_days": withdrawal,
                "wait_after_removal_days": wait,
                "removal": removal,
                "stay_min_days": least,
                "stay_min_days_with_brood": with_brood,
                "stay_max_days": most,
                "doses": doses,
            });
            // Nothing stays, yet a least stay: a contradiction that would be asked about.
            if removal == Some("nothing_stays") {
                terms["stay_min_days"] = Value::Null;
                terms["stay_min_days_with_brood"] = Value::Null;
            }
            terms.as_object_mut().unwrap().retain(|_, value| !value.is_null());
            terms
        })
}

/// The invented leaflets, then: two declared medicines, one without any terms, one whose leaflet does not exist.
fn kinds_of_medicine() -> usize {
    invented().len() + 4
}

fn invented() -> Vec<&'static str> {
    leaflets()
        .iter()
        .filter(|leaflet| leaflet.jurisdiction.as_str() == "zz")
        .map(|leaflet| leaflet.id.as_str())
        .collect()
}

/// What exists while a plan is being recorded.
struct Recording {
    holding: Holding,
    drafts: Vec<Draft>,
    colonies: Vec<String>,
    courses: Vec<(String, usize)>,
}

impl Plan {
    fn recorded(mut self) -> Journal {
        self.palette.sort_unstable();
        self.palette.dedup();
        let mut recording = Recording {
            holding: Holding::new("test".parse().unwrap()),
            drafts: Vec::new(),
            colonies: Vec::new(),
            courses: Vec::new(),
        };
        self.set_up(&mut recording);
        // Most journals are written day by day; entries of one day keep the order in which they were drawn.
        self.happenings.sort_by_key(|planned| planned.day);
        for (index, planned) in self.happenings.iter().enumerate() {
            self.happen(&mut recording, index, planned);
        }
        Journal(recording.drafts)
    }

    fn set_up(&self, recording: &mut Recording) {
        let start: Day = "2025-01-01".parse().unwrap();
        let mut add = |id: &str, kind: &str, body: Value| {
            assert!(recording.take(draft(id, start, kind, &body)), "{kind} {body}");
        };
        if self.jurisdiction {
            add("details", "holding_details", json!({ "keeper": "tester", "jurisdiction": "zz" }));
        }
        add("East", "apiary_details", json!({ "apiary": "East" }));
        for (number, name) in (0_u8..).zip(["A0", "A1", "A2"]) {
            let inside = if self.unknown_inside == Some(number) { "not_known" } else { "none" };
            add(name, "colony_established", json!({ "colony": name, "apiary": "East", "medicines": inside }));
        }
        for medicine in &self.palette {
            let mut body = json!({ "medicine": named(*medicine), "pack_name": "Pack", "unit": "strip" });
            match (invented().get(*medicine), medicine - invented().len().min(*medicine)) {
                (Some(leaflet), _) => body["leaflet"] = json!(leaflet),
                (None, declared @ 0..2) => body["terms"] = self.declared[declared].clone(),
                (None, 2) => {}
                (None, _) => body["leaflet"] = json!("no-such-leaflet"),
            }
            add(&named(*medicine), "medicine_described", body);
            for lot in 1..3 {
                let lot = lot_of(*medicine, lot);
                add(
                    &lot,
                    "lot_acquired",
                    json!({ "lot": lot, "medicine": named(*medicine), "quantity": 10_000 }),
                );
            }
        }
        let first = named(self.palette[0]);
        add(
            "P",
            "prescription",
            json!({
                "prescription": "P", "vet": "a vet", "medicine": first, "terms": self.prescription
            }),
        );
        recording.colonies = ["A0", "A1", "A2"].map(str::to_owned).to_vec();
    }

    fn happen(&self, recording: &mut Recording, index: usize, planned: &Planned) {
        let id = format!("entry {index}");
        let medicine = |number: u8| self.palette[usize::from(number) % self.palette.len()];
        let new = format!("C{index}");
        let (kind, body) = match &planned.what {
            What::Treat { medicine: number, colonies, both_lots, pack, method, prescribed } => {
                let chosen = medicine(*number);
                let colonies = recording.some(*colonies);
                let part = |lot: u8| json!({ "lot": lot_of(chosen, lot), "each": 1, "colonies": colonies });
                let given = if *both_lots { vec![part(1), part(2)] } else { vec![part(1 + number / 128)] };
                let mut body = json!({ "given": given });
                put(&mut body, "withdrawal_days", *pack);
                put(&mut body, "method", method.map(|trickle| if trickle { "trickle" } else { "spray" }));
                put(&mut body, "prescription", (*prescribed && chosen == self.palette[0]).then_some("P"));
                ("administration", body)
            }
            What::Dose { course, colonies, pack } => {
                let Some((first, chosen)) = recording.course(*course) else { return };
                let part =
                    json!({ "lot": lot_of(chosen, 1), "each": 1, "colonies": recording.some(*colonies) });
                let mut body = json!({ "given": [part], "continues": uuid_of(&first) });
                put(&mut body, "withdrawal_days", *pack);
                ("administration", body)
            }
            What::Remove { course, colonies, left_inside } => {
                let Some((first, _)) = recording.course(*course) else { return };
                let colonies = recording.some(*colonies);
                let body = json!({ "administration": uuid_of(&first), "colonies": colonies, "left_inside": left_inside });
                ("removal", body)
            }
            What::Split { colony, strips } => {
                let mut body = json!({ "colony": recording.one(*colony), "into": new });
                put(&mut body, "strips", *strips);
                ("colony_split", body)
            }
            What::Unite { colony, into, strips } => {
                let mut body = json!({ "colony": recording.one(*colony), "into": recording.one(*into) });
                put(&mut body, "strips", *strips);
                ("colony_united", body)
            }
            What::SupersOn { colonies, purpose } => (
                "supers_on",
                json!({ "colonies": recording.some(*colonies), "supers": 1, "purpose": purpose }),
            ),
            What::SupersOff { colonies, left_on } => {
                ("supers_off", json!({ "colonies": recording.some(*colonies), "left_on": left_on }))
            }
            What::Inspect { colony, brood } => {
                ("inspection", json!({ "colony": recording.one(*colony), "brood": brood }))
            }
            What::Read { medicine: number, lot, terms } => {
                ("leaflet_reading", json!({ "lot": lot_of(medicine(*number), *lot), "terms": terms }))
            }
            What::End { colony } => {
                ("colony_ended", json!({ "colony": recording.one(*colony), "cause": "sold" }))
            }
        };
        let mut made = draft(&id, day(planned.day), kind, &body);
        made.at = planned.hour.map(|hour| format!("{hour:02}:00").parse().unwrap());
        let first = match &made.event {
            Event::Administration(given) if given.continues.is_none() => Some(&planned.what),
            _ => None,
        };
        let course = first.map(|what| match what {
            What::Treat { medicine: number, .. } => medicine(*number),
            _ => self.palette[0],
        });
        let split = matches!(made.event, Event::ColonySplit(_));
        if recording.take(made) {
            recording.courses.extend(course.map(|medicine| (id, medicine)));
            recording.colonies.extend(split.then_some(new));
        }
    }
}

impl Recording {
    /// Records an entry, unless it is refused.
    fn take(&mut self, draft: Draft) -> bool {
        let taken = record(&mut self.holding, &draft).is_ok();
        if taken {
            self.drafts.push(draft);
        }
        taken
    }

    fn one(&self, number: u8) -> &str {
        &self.colonies[usize::from(number) % self.colonies.len()]
    }

    /// One to three colonies.
    fn some(&self, mask: u8) -> Vec<String> {
        let mut chosen = vec![self.one(mask).to_owned()];
        for more in [mask >> 2, mask >> 4].into_iter().filter(|more| more % 3 == 0) {
            let next = self.one(more).to_owned();
            if !chosen.contains(&next) {
                chosen.push(next);
            }
        }
        chosen
    }

    fn course(&self, number: u8) -> Option<(String, usize)> {
        let count = self.courses.len().max(1);
        self.courses.get(usize::from(number) % count).cloned()
    }
}

fn put<T: serde::Serialize>(body: &mut Value, field: &str, value: Option<T>) {
    if let Some(value) = value {
        body[field] = json!(value);
    }
}

fn named(medicine: usize) -> String {
    invented().get(medicine).map_or_else(|| format!("plain {medicine}"), |id| (*id).to_owned())
}

fn lot_of(medicine: usize, lot: u8) -> String {
    format!("{} lot {lot}", named(medicine))
}
