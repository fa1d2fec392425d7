//! Statements made about a medicine.

use combclear_domain::basics::topic::Topic;
use std::collections::BTreeSet;

use combclear_domain::basics::words::MedicineName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Event, Kind};
use combclear_domain::rules::leaflet::{Force, Leaflet, Release};
use combclear_testkit::entries::Journal;
use serde_json::{Value, json};

use super::leaflets;

/// The length of stay is one topic: a carrier that need not come out is used up after the longest of these.
const STAYS: [&str; 3] = ["stay_min_days", "stay_min_days_with_brood", "stay_max_days"];

/// The terms of a medicine that anybody has stated. A stated withdrawal period may cover the wait too, so that counts as
/// stated.
pub(super) fn stated(journal: &Journal, holding: &Holding, medicine: &MedicineName) -> BTreeSet<String> {
    let mut stated = BTreeSet::new();
    let mut by_people = |terms: Value| stated.extend(terms.as_object().unwrap().keys().cloned());
    let of_medicine = |lot| holding.lot(lot).is_some_and(|(_, lot)| lot.medicine == medicine);
    for draft in &journal.0 {
        match &draft.event {
            Event::MedicineDescribed(body) if body.medicine == *medicine => {
                body.terms.iter().for_each(|terms| by_people(serde_json::to_value(terms).unwrap()));
            }
            Event::Prescription(body) if body.medicine == *medicine => {
                by_people(serde_json::to_value(&body.terms).unwrap());
            }
            Event::LeafletReading(body) if of_medicine(&body.lot) => {
                by_people(serde_json::to_value(&body.terms).unwrap());
            }
            Event::Administration(body) if body.given.iter().any(|given| of_medicine(&given.lot)) => {
                by_people(body.withdrawal_days.map_or(json!({}), |days| json!({ "withdrawal_days": days })));
            }
            _ => {}
        }
    }
    let leaflet = leaflet_of(holding, medicine);
    for rule in
        leaflet.into_iter().flat_map(|leaflet| &leaflet.rules).filter(|rule| rule.force != Force::Advice)
    {
        let fields: &[&str] = match rule.says.topic() {
            Topic::SupersDuring => &["supers_during"],
            Topic::Withdrawal => &["withdrawal_days", "withdrawal"],
            Topic::WaitAfterRemoval => &["wait_after_removal_days"],
            Topic::Removal => &["removal"],
            Topic::StayMin | Topic::StayMax => &STAYS,
            Topic::Doses => &["doses"],
            _ => &[],
        };
        stated.extend(fields.iter().map(|field| (*field).to_owned()));
    }
    if stated.contains("withdrawal_days") || stated.contains("withdrawal") {
        stated.extend(["withdrawal_days", "withdrawal", "wait_after_removal_days"].map(str::to_owned));
    }
    if STAYS.iter().any(|field| stated.contains(*field)) {
        stated.extend(STAYS.map(str::to_owned));
    }
    if leaflet.is_some_and(|leaflet| leaflet.release == Release::Single) {
        stated.insert("removal".to_owned());
    }
    stated
}

pub(super) fn leaflet_of(holding: &Holding, medicine: &MedicineName) -> Option<&'static Leaflet> {
    let id = holding.medicine(medicine)?.1.leaflet.as_ref()?;
    Some(leaflets().get(&"zz".parse().unwrap(), id)?)
}

/// Kinds of entry that add knowledge rather than events of a colony.
pub(super) fn is_knowledge(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::HoldingDetails
            | Kind::MedicineDescribed
            | Kind::LotAcquired
            | Kind::LeafletReading
            | Kind::Prescription
            | Kind::NectarFlow
    )
}
