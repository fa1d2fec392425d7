//! Random journals: a few colonies at two apiaries, medicines of invented leaflets, doses, removals, disposals, counts.
//! Refused entries are left out, so every journal is a possible one.

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Draft;
use combclear_testkit::entries::{Journal, draft, record, uuid_of};
use proptest::prelude::*;
use serde_json::{Value, json};

/// How many days a plan spans.
pub(super) const SPAN: u16 = 120;
/// The medicines, of invented leaflets.
const MEDICINES: [&str; 8] = [
    "strip-42-56",
    "strip-42-or-70",
    "two-doses",
    "spent-after-7",
    "shot-wait-14",
    "second-hand",
    "in-use-30",
    "in-use-30-second-hand",
];

/// A day of a plan.
pub(super) fn day(ahead: u16) -> Day {
    "2026-02-01".parse::<Day>().unwrap().plus(ahead)
}

/// What happens, by numbers that choose among what there is.
type Happening = (u16, u8, u8, u8, u16);

pub(super) fn journals() -> impl Strategy<Value = Journal> {
    let happening = (0..SPAN, any::<u8>(), any::<u8>(), any::<u8>(), 1..40_u16);
    prop::collection::vec(happening, 0..24).prop_map(recorded)
}

fn recorded(mut happenings: Vec<Happening>) -> Journal {
    let start: Day = "2025-01-01".parse().unwrap();
    let mut recording = Recording { holding: Holding::new("test".parse().unwrap()), drafts: Vec::new() };
    let mut set_up = |word: &str, kind: &str, body: Value| {
        assert!(recording.take(draft(word, start, kind, &body)), "{kind} {body}");
    };
    set_up("details", "holding_details", json!({ "keeper": "tester", "jurisdiction": "zz" }));
    for apiary in ["East", "West"] {
        set_up(apiary, "apiary_details", json!({ "apiary": apiary }));
    }
    for (colony, apiary) in [("A0", "East"), ("A1", "East"), ("A2", "East"), ("B0", "West")] {
        set_up(
            colony,
            "colony_established",
            json!({ "colony": colony, "apiary": apiary, "medicines": "none" }),
        );
    }
    for medicine in MEDICINES {
        let body =
            json!({ "medicine": medicine, "pack_name": medicine, "unit": "strip", "leaflet": medicine });
        set_up(&format!("{medicine} described"), "medicine_described", body);
        let body = json!({ "lot": medicine, "medicine": medicine, "quantity": 40, "expiry": "2026-04-15" });
        set_up(&format!("{medicine} lot"), "lot_acquired", body);
    }
    happenings.sort_by_key(|(day, ..)| *day);
    let mut courses: Vec<(String, &str)> = Vec::new();
    for (index, (ahead, what, one, two, amount)) in happenings.into_iter().enumerate() {
        let word = format!("entry {index}");
        let medicine = MEDICINES[usize::from(one) % MEDICINES.len()];
        let colonies = colonies(two);
        let first = colonies[0];
        let course = courses.get(usize::from(one) % courses.len().max(1)).cloned();
        let corrected = amount % 3 == 0;
        let brood = ["absent", "present"][usize::from(amount % 2)];
        let given = |lot: &str| json!([{ "lot": lot, "each": 1 + amount % 3, "colonies": colonies }]);
        let (kind, body) = match (what % 12, course) {
            (0..=3, _) => {
                ("administration", json!({ "given": given(medicine), "count_corrected": corrected }))
            }
            (4, Some((first, lot))) => {
                ("administration", json!({ "given": given(lot), "continues": uuid_of(&first) }))
            }
            (5 | 6, Some((first, _))) => {
                ("removal", json!({ "administration": uuid_of(&first), "colonies": colonies }))
            }
            (7, _) => {
                let body = json!({ "lot": medicine, "quantity": amount, "how_and_where": "collection point", "count_corrected": corrected });
                ("disposal", body)
            }
            (8, _) => ("inspection", json!({ "colony": first, "brood": brood })),
            (9, _) => {
                ("mite_count", json!({ "colony": first, "method": "wash", "mites": amount, "bees": 300 }))
            }
            (10, _) => ("colony_split", json!({ "colony": first, "into": format!("N{index}") })),
            (11, _) => ("supers_on", json!({ "colonies": colonies, "supers": 1, "purpose": "harvest" })),
            _ => ("lot_opened", json!({ "lot": medicine })),
        };
        let begins = kind == "administration" && body.get("continues").is_none();
        if recording.take(draft(&word, day(ahead), kind, &body)) && begins {
            courses.push((word, medicine));
        }
    }
    Journal(recording.drafts)
}

fn colonies(number: u8) -> Vec<&'static str> {
    let all = ["A0", "A1", "A2", "B0"];
    let chosen = all.iter().enumerate().filter(|(index, _)| number >> index & 1 == 1);
    let chosen: Vec<&str> = chosen.map(|(_, name)| *name).collect();
    if chosen.is_empty() { vec![all[usize::from(number >> 4) % all.len()]] } else { chosen }
}

struct Recording {
    holding: Holding,
    drafts: Vec<Draft>,
}

impl Recording {
    fn take(&mut self, draft: Draft) -> bool {
        let taken = record(&mut self.holding, &draft).is_ok();
        if taken {
            self.drafts.push(draft);
        }
        taken
    }
}
