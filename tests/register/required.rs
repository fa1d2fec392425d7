//! No gaps means that every required field is present: random records in every jurisdiction, against a second reading of the
//! law files that shares no code with the first.

use std::collections::BTreeSet;
use std::sync::Arc;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::basics::words::RemovalNeed;
use combclear_domain::questions::gaps::{GapWeight, Gaps};
use combclear_domain::questions::register::Period;
use combclear_domain::rules::leaflet::{Leaflet, Rule, Says};
use combclear_testkit::entries::holding;
use combclear_testkit::files::root;
use proptest::prelude::*;
use serde_json::{Value, json};

use crate::some;
use crate::supering::leaflets;

const JURISDICTIONS: [&str; 8] = ["gb", "ni", "eu", "de", "fr", "ie", "ch", "us"];

/// The optional fields filled in by the keeper.
#[derive(Debug, Clone)]
#[expect(clippy::struct_excessive_bools, reason = "one for each field of a form")]
struct Filled {
    address_of_keeper: bool,
    authorisation: bool,
    batch: bool,
    expiry: bool,
    supplier: bool,
    supplier_address: bool,
    proof: bool,
    withdrawal: bool,
    given_by: bool,
    vet: bool,
    against: bool,
    certificate: bool,
    time: bool,
    /// The lot is of a vet's own stock.
    of_vet: bool,
}

fn filled() -> impl Strategy<Value = Filled> {
    prop::collection::vec(prop::bool::weighted(0.75), 14).prop_map(|yes| Filled {
        address_of_keeper: yes[0],
        authorisation: yes[1],
        batch: yes[2],
        expiry: yes[3],
        supplier: yes[4],
        supplier_address: yes[5],
        proof: yes[6],
        withdrawal: yes[7],
        given_by: yes[8],
        vet: yes[9],
        against: yes[10],
        certificate: yes[11],
        time: yes[12],
        of_vet: !yes[13],
    })
}

impl Filled {
    /// Whether a field of a law is filled in. Conditional ones are not tested here.
    fn has(&self, field: &str) -> bool {
        match field {
            "keeper_name_and_address" => self.address_of_keeper,
            "authorisation_number" => self.authorisation,
            "batch" => self.batch,
            "expiry" => self.expiry,
            // What a vet gave from the vet's own stock, the vet supplied, and nothing was bought.
            "supplier_name" => self.supplier || self.of_vet,
            // Nothing was prescribed, so who dispensed or gave it counts.
            "prescriber" => self.supplier || self.given_by || self.by_vet(),
            "supplier_address" => (self.supplier || self.of_vet) && self.supplier_address,
            "proof_of_purchase" => self.proof || self.of_vet,
            "withdrawal_period" => self.withdrawal,
            "given_by" => self.given_by || self.by_vet(),
            "reason" => self.against,
            "certificate_number" => self.certificate,
            "time_of_day" => self.time,
            // Fields that every entry has, that come with the strips, or that the removal supplies.
            "product_name"
            | "active_substance"
            | "date_acquired"
            | "quantity_acquired"
            | "date_first_given"
            | "date_last_given"
            | "duration"
            | "quantity_given"
            | "quantity_per_colony"
            | "route"
            | "colonies"
            | "number_treated"
            | "apiary"
            | "apiary_during_withdrawal"
            | "withdrawal_end"
            | "vet_name"
            | "date_disposed"
            | "quantity_disposed"
            | "disposal_how_and_where" => true,
            other => panic!("`{other}` is a field that this test does not know"),
        }
    }

    /// A vet gave it: as the entry says, or since the lot is a vet's.
    const fn by_vet(&self) -> bool {
        self.vet || self.of_vet
    }

    fn entries(&self, jurisdiction: &str, leaflet: &str) -> Vec<Value> {
        let maybe = |there: bool, value: Value| if there { value } else { Value::Null };
        let supplier = json!({ "name": "Shop", "address": maybe(self.supplier_address, json!("1 Street")) });
        let entry = |id: &str, on: &str, kind: &str, body: Value| json!({ "id": id, "on": on, "kind": kind, "body": without_nulls(&body) });
        let mut given = entry(
            "in",
            "2026-03-02",
            "administration",
            json!({
                "given": [{ "lot": "S-1", "each": 2, "colonies": ["A1"] }],
                "withdrawal_days": maybe(self.withdrawal, json!(0)),
                "given_by": maybe(self.given_by, json!("a helper")),
                "vet": maybe(self.vet, json!("a vet")),
                "against": maybe(self.against, json!("varroosis")),
                "certificate": maybe(self.certificate, json!("C-1")),
            }),
        );
        if self.time {
            given["at"] = json!("09:30");
        }
        let batch = maybe(self.batch, json!("B-1"));
        let expiry = maybe(self.expiry, json!("2027-01-31"));
        let of_vet = json!({
            "lot": "S-1", "medicine": "strip", "vet": "a vet", "batch": batch, "expiry": expiry,
            "contact": maybe(self.supplier_address, json!("1 Street")),
        });
        let acquired = json!({
            "lot": "S-1", "medicine": "strip", "quantity": 20, "batch": batch, "expiry": expiry,
            "supplier": maybe(self.supplier, without_nulls(&supplier)), "proof": maybe(self.proof, json!("invoice 7")),
        });
        let lot = if self.of_vet {
            entry("l", "2026-01-10", "vet_lot", of_vet)
        } else {
            entry("l", "2026-01-10", "lot_acquired", acquired)
        };
        let mut entries = vec![
            entry(
                "h",
                "2026-01-01",
                "holding_details",
                json!({
                    "keeper": "keeper", "jurisdiction": jurisdiction, "address": maybe(self.address_of_keeper, json!("1 Lane")),
                }),
            ),
            entry("a", "2026-01-01", "apiary_details", json!({ "apiary": "East" })),
            entry(
                "c",
                "2026-01-01",
                "colony_established",
                json!({ "colony": "A1", "apiary": "East", "medicines": "none" }),
            ),
            entry(
                "m",
                "2026-01-01",
                "medicine_described",
                json!({
                    "medicine": "strip", "pack_name": "Strip", "unit": "strip", "leaflet": leaflet,
                    "authorisation": maybe(self.authorisation, json!("AN 1")),
                }),
            ),
            lot,
            given,
            entry("out", "2026-05-11", "removal", json!({ "administration": "in", "colonies": ["A1"] })),
        ];
        if !self.of_vet {
            let disposed = json!({ "lot": "S-1", "quantity": 2, "how_and_where": "council site" });
            entries.push(entry("d", "2026-06-01", "disposal", disposed));
        }
        entries
    }

    /// The required fields that are not filled in, according to the law files.
    fn missing(&self, jurisdiction: &str) -> BTreeSet<String> {
        let giving = if self.by_vet() { "vet_administration" } else { "administration" };
        let moved: &[&str] = if self.of_vet { &[giving] } else { &["acquisition", "disposal", giving] };
        let required = required(jurisdiction);
        let asked = required.iter().filter(|(occasion, _)| moved.contains(&occasion.as_str()));
        asked.filter(|(_, field)| !self.has(field)).map(|(_, field)| field.clone()).collect()
    }
}

/// Occasion and field of every required rule that is in force in 2026, with those of the included files.
fn required(jurisdiction: &str) -> Vec<(String, String)> {
    let path = root().join(format!("crates/leaflets/law/{jurisdiction}.toml"));
    let law: toml::Table = toml::from_str(&std::fs::read_to_string(path).unwrap()).unwrap();
    let text = |table: &toml::Value, key: &str| match table.get(key)? {
        toml::Value::String(text) => Some(text.clone()),
        toml::Value::Datetime(date) => Some(date.to_string()),
        other => panic!("{key}: {other:?}"),
    };
    let mut found = Vec::new();
    for rule in law.get("field").and_then(toml::Value::as_array).into_iter().flatten() {
        let from = text(rule, "from").unwrap();
        let until = text(rule, "until").unwrap_or("9999".to_owned());
        if text(rule, "need").unwrap() == "required"
            && from.as_str() <= "2026-01-10"
            && until.as_str() >= "2026-06-01"
        {
            found.push((text(rule, "occasion").unwrap(), text(rule, "field").unwrap()));
        }
    }
    for include in law.get("includes").and_then(toml::Value::as_array).into_iter().flatten() {
        found.extend(required(include.as_str().unwrap()));
    }
    found
}

fn without_nulls(value: &Value) -> Value {
    let fields = value.as_object().unwrap().iter().filter(|(_, value)| !value.is_null());
    Value::Object(fields.map(|(name, value)| (name.clone(), value.clone())).collect())
}

proptest! {
    #![proptest_config(some(64))]

    #[test]
    fn the_required_gaps_are_exactly_the_required_fields_that_are_not_filled_in(filled in filled()) {
        let (leaflets, laws) = (leaflets(), combclear_leaflets::laws().unwrap());
        for jurisdiction in JURISDICTIONS {
            let here = leaflets.holding_in(&jurisdiction.parse().unwrap());
            let wider = leaflets.holding_in(&"gb".parse().unwrap());
            // Leaflets that state removal and a withdrawal period.
            let whole = |leaflet: &&&Arc<Leaflet>| {
                let comes_out = |rule: &Rule| matches!(rule.says, Says::Removal { value: RemovalNeed::Needed });
                leaflet.methods.is_empty() && leaflet.states_withdrawal_days() && leaflet.rules.iter().any(comes_out)
            };
            let leaflet = here.iter().chain(&wider).find(whole);
            let known = here.iter().any(|own| own.id == leaflet.unwrap().id);
            let entries: Vec<toml::Value> = filled
                .entries(jurisdiction, leaflet.unwrap().id.as_str())
                .iter()
                .map(|entry| toml::Value::try_from(entry).unwrap())
                .collect();
            let holding = holding(&entries).unwrap();
            let day = |text: &str| text.parse::<Day>().unwrap();
            let period = Period::new(day("2026-01-01"), day("2026-12-31")).unwrap();
            let found = Gaps::of(&holding, leaflets, laws, period, day("2026-12-31"), &[]);
            let gaps: BTreeSet<String> = found
                .gaps
                .iter()
                .filter(|gap| gap.weight == GapWeight::Required)
                .map(|gap| gap.finding.as_str().to_owned())
                // If nobody stated the period, its end depends on the leaflet.
                .filter(|missing| filled.withdrawal || missing != "withdrawal_end")
                // Without a leaflet, the active, the methods and the end of a period are not known.
                .filter(|missing| known || !["active_substance", "route", "withdrawal_end"].contains(&missing.as_str()))
                .collect();
            let missing = filled.missing(jurisdiction);
            prop_assert_eq!(&gaps, &missing, "{}", jurisdiction);
            if missing.is_empty() && known {
                prop_assert_ne!(found.complete, Verdict::No, "{}", jurisdiction);
            }
        }
    }
}
