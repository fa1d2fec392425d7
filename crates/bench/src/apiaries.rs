//! Holdings with many apiaries, weather, flows and colonies with past courses, recorded entry by entry.

use std::fmt::Write;

use combclear_domain::basics::calendar::{Day, Instant};
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::Entry;
use combclear_domain::journal::entry::Envelope;
use combclear_domain::questions::options::{Ask, Span};
use combclear_domain::rules::leaflet::Leaflets;
use serde_json::{Value, json};

/// The first start day asked about.
const FROM: &str = "2026-04-18";
/// Courses that every colony had before.
const COURSES: [(&str, &str, u32); 4] = [
    ("2025-01-10", "powder", 2),
    ("2025-08-05", "strips", 2),
    ("2025-12-20", "powder", 2),
    ("2026-02-01", "others", 2),
];

/// A holding with this many colonies, spread evenly over this many apiaries.
#[must_use]
pub fn with_colonies(colonies: u32, apiaries: u32) -> Holding {
    let mut writer = Writer { holding: Holding::new(named("bench")), entries: 0 };
    writer.write("2025-01-01", "holding_details", &json!({ "keeper": "keeper", "jurisdiction": "gb" }));
    for (medicine, leaflet, unit) in [
        ("strips", "amitraz-strip-500mg-a", "strip"),
        ("powder", "oxalic-powder-886mg", "g"),
        ("others", "tau-fluvalinate-strip-824mg", "strip"),
        ("gel", "formic-gel-strip-68.2g-a", "strip"),
    ] {
        let described =
            json!({ "medicine": medicine, "pack_name": medicine, "unit": unit, "leaflet": leaflet });
        writer.write("2025-01-01", "medicine_described", &described);
        let lot =
            json!({ "lot": medicine, "medicine": medicine, "quantity": 1_000_000, "expiry": "2027-12-31" });
        writer.write("2025-01-01", "lot_acquired", &lot);
        let terms = json!({ "withdrawal_days": 0, "supers_during": "off" });
        writer.write("2025-01-02", "leaflet_reading", &json!({ "lot": medicine, "terms": terms }));
    }
    for apiary in 0..apiaries {
        let name = format!("apiary {apiary}");
        writer.apiary(&name);
        let here = (0..colonies).filter(|colony| colony % apiaries == apiary);
        let names: Vec<String> = here.map(|colony| format!("C{colony}")).collect();
        writer.colonies(&name, &names);
    }
    writer.holding
}

/// The question about this many start days.
#[must_use]
pub fn about(days: u16) -> Ask {
    let from: Day = named(FROM);
    let span = Span::new(from, from.plus(days - 1)).unwrap_or_else(|fault| panic!("{fault}"));
    Ask::about(span)
}

/// The built-in leaflets of `gb`, repeated this many times under other names.
#[must_use]
pub fn leaflets_times(times: u32) -> Leaflets {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../leaflets/gb");
    let mut files: Vec<(String, String)> = Vec::new();
    for file in std::fs::read_dir(folder).unwrap_or_else(|error| panic!("{error}")) {
        let path = file.unwrap_or_else(|error| panic!("{error}")).path();
        let text = std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{error}"));
        let stem = path.file_stem().map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        for time in 0..times {
            let mut id = stem.clone();
            if time > 0 {
                write!(id, "-{time}").unwrap_or_default();
            }
            let text = text.replacen(&format!("id = \"{stem}\""), &format!("id = \"{id}\""), 1);
            files.push((format!("gb/{id}.toml"), text));
        }
    }
    let loaded = Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    loaded.unwrap_or_else(|faults| panic!("{faults:?}"))
}

struct Writer {
    holding: Holding,
    entries: u64,
}

impl Writer {
    fn write(&mut self, on: &str, kind: &str, body: &Value) -> String {
        self.entries += 1;
        let id = format!("00000000-0000-7000-8000-{:012x}", self.entries);
        let envelope = json!({ "id": id, "on": on, "recorded_by": "keeper", "kind": kind, "body": body });
        let draft = Envelope::from_json(&envelope.to_string()).and_then(Envelope::read);
        let draft = draft.unwrap_or_else(|fault| panic!("{envelope}: {fault}"));
        let recorded_at: Instant = named("2026-04-18T12:00:00.000Z");
        let entry = Entry::seal(self.holding.name(), draft, recorded_at, self.holding.tip());
        self.holding.accept(&entry).unwrap_or_else(|refusal| panic!("{envelope}: {refusal}"));
        id
    }

    fn apiary(&mut self, apiary: &str) {
        self.write("2025-01-01", "apiary_details", &json!({ "apiary": apiary }));
        let site = json!({ "apiary": apiary, "power": "battery", "access": "vehicle", "ground": "dry" });
        self.write("2025-01-01", "site_conditions", &site);
        let flood = json!({ "apiary": apiary, "ground": "flooded", "power": "none", "until": "2026-05-01" });
        self.write("2026-04-10", "site_conditions", &flood);
        let flow = json!({ "apiary": apiary, "forage": "clover", "stage": "expected", "from_early": "2026-05-30",
                           "from": "2026-06-06", "from_late": "2026-06-13", "to": "2026-07-10" });
        self.write("2026-04-10", "nectar_flow", &flow);
        let months: Vec<Value> =
            (1..=12).map(|month| json!({ "month": month, "min_c": 5, "max_c": 16.5 })).collect();
        self.write("2026-01-01", "temperature_normals", &json!({ "apiary": apiary, "months": months }));
        let from: Day = named(FROM);
        let days: Vec<Value> =
            (0..14).map(|ahead| json!({ "day": from.plus(ahead), "min_c": 4, "max_c": 8 + ahead })).collect();
        let forecast = json!({ "apiary": apiary, "stage": "forecast", "days": days });
        self.write("2026-04-17", "temperature", &forecast);
    }

    fn colonies(&mut self, apiary: &str, names: &[String]) {
        for name in names {
            let body = json!({ "colony": name, "apiary": apiary, "medicines": "none" });
            self.write("2025-01-01", "colony_established", &body);
        }
        for (on, lot, each) in COURSES {
            let body =
                json!({ "given": [{ "lot": lot, "each": each, "colonies": names }], "withdrawal_days": 0 });
            let first = self.write(on, "administration", &body);
            if lot != "powder" {
                let out: Day = named(on);
                let body = json!({ "administration": first, "colonies": names });
                self.write(&out.plus(60).to_string(), "removal", &body);
            }
        }
        for name in names {
            for (on, brood) in
                [("2025-06-01", "present"), ("2026-03-20", "lowest"), ("2026-04-15", "present")]
            {
                let body =
                    json!({ "colony": name, "brood": brood, "seams": 7, "brood_boxes": 1, "feeder": false });
                self.write(on, "inspection", &body);
            }
        }
    }
}

/// Parses a name, a day or an instant of this file.
fn named<T: std::str::FromStr<Err: std::fmt::Display>>(text: &str) -> T {
    text.parse().unwrap_or_else(|error| panic!("{error}"))
}

#[cfg(test)]
mod tests {
    use combclear_domain::questions::options::{ApiaryOptions, Usability};

    use super::*;

    #[test]
    fn a_scene_holds_options_of_every_answer() {
        let holding = with_colonies(10, 2);
        let leaflets = leaflets_times(2);
        let apiary = named("apiary 1");
        let report = ApiaryOptions::of(&holding, &leaflets, &apiary, &about(60)).expect("the apiary");
        assert_eq!(report.colonies.len(), 5);
        let once = leaflets_times(1);
        let ways: usize = once.iter().map(|leaflet| leaflet.methods.len().max(1)).sum();
        assert_eq!(report.options.len(), 2 * ways, "each leaflet twice, each of its methods");
        for answer in [Usability::Usable, Usability::Unknown, Usability::RuledOut] {
            let some = report.options.iter().any(|option| option.answer == answer);
            assert!(some, "no option is {answer:?}");
        }
    }
}
