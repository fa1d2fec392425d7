//! Writes the documents that show what the built-in data holds: COVERAGE.md for the leaflets, LAW.md for the laws.
//!
//! The part of a document between [`BEGIN`] and [`END`] is made from the data, so that a document never falls behind it.
//! `COMBCLEAR_WRITE_COVERAGE=1 cargo test -p combclear-leaflets coverage::` writes both anew.

mod law;

use combclear_domain::basics::confidence::Confidence;
use combclear_domain::basics::topic::Topic;
use combclear_domain::basics::verdict::Verdict;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::sync::Arc;

use combclear_domain::basics::words::Jurisdiction;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::Holding;
use combclear_domain::rules::leaflet::{Leaflet, Leaflets, Release, Says, WithdrawalPeriod};
use combclear_testkit::entries::{self, id, record};
use combclear_testkit::files::root;
use serde_json::json;

const BEGIN: &str = "<!-- made from the data, do not edit -->\n";
const END: &str = "<!-- end of what is made from the data -->\n";

#[test]
fn the_table_shows_what_the_leaflets_cover() {
    is_shown_in("crates/leaflets/COVERAGE.md", &tables());
}

/// Checks that a document shows what was made from the data, or writes it there if asked to.
fn is_shown_in(document: &str, made: &str) {
    let path = root().join(document);
    let text = std::fs::read_to_string(&path).unwrap();
    let (before, rest) = text.split_once(BEGIN).unwrap_or_else(|| panic!("{document} has no {BEGIN}"));
    let (shown, after) = rest.split_once(END).unwrap_or_else(|| panic!("{document} has no {END}"));
    if std::env::var_os("COMBCLEAR_WRITE_COVERAGE").is_some() {
        std::fs::write(&path, format!("{before}{BEGIN}{made}{END}{after}")).unwrap();
        return;
    }
    assert!(
        shown == made,
        "{document} is behind the data; run\n  COMBCLEAR_WRITE_COVERAGE=1 cargo test -p combclear-leaflets coverage::"
    );
}

/// The letter for how well a value is established.
fn letter(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::Document => "D",
        Confidence::SecondHand => "s",
        Confidence::Unconfirmed => "u",
    }
}

fn tables() -> String {
    let leaflets = combclear_leaflets::builtin().unwrap_or_else(|faults| panic!("{faults:#?}"));
    let mut by_jurisdiction: BTreeMap<&Jurisdiction, Vec<&Arc<Leaflet>>> = BTreeMap::new();
    for leaflet in leaflets.iter() {
        by_jurisdiction.entry(&leaflet.jurisdiction).or_default().push(leaflet);
    }
    let mut text = sums(leaflets, &by_jurisdiction);
    for (jurisdiction, leaflets) in by_jurisdiction {
        writeln!(text, "\n**{jurisdiction}**\n").unwrap();
        for (number, leaflet) in leaflets.iter().enumerate() {
            writeln!(text, "{}. `{}`: {}", number + 1, leaflet.id, leaflet.title).unwrap();
        }
        let heads: String =
            (1..=leaflets.len()).fold(String::new(), |heads, number| format!("{heads} {number} |"));
        writeln!(text, "\n| rule |{heads}").unwrap();
        writeln!(text, "| --- |{}", " --- |".repeat(leaflets.len())).unwrap();
        for topic in Topic::ALL {
            let cells: Vec<&str> = leaflets.iter().map(|leaflet| mark(leaflet, *topic)).collect();
            writeln!(text, "| {} | {} |", topic.as_str().replace('_', " "), cells.join(" | ")).unwrap();
        }
    }
    text.push('\n');
    text
}

/// For each jurisdiction: the number of rules by confidence, and of leaflets that support a yes once the medicine is out,
/// without and with one complete reading of the pack.
fn sums(set: &Leaflets, by_jurisdiction: &BTreeMap<&Jurisdiction, Vec<&Arc<Leaflet>>>) -> String {
    let mut text = "\n| | leaflets | document | second hand | unconfirmed | topics absent | yes without a reading | yes with one |\n\
                    | --- | --- | --- | --- | --- | --- | --- | --- |\n"
        .to_owned();
    for (jurisdiction, leaflets) in by_jurisdiction {
        let rules = || leaflets.iter().flat_map(|leaflet| &leaflet.rules);
        let marked = |mark: Confidence| rules().filter(|rule| rule.confidence == mark).count();
        let absent: usize = leaflets
            .iter()
            .map(|leaflet| {
                let stated = |topic: &&Topic| leaflet.rules.iter().any(|rule| rule.says.topic() == **topic);
                Topic::ALL.len() - Topic::ALL.iter().filter(stated).count()
            })
            .sum();
        let yes = |read: bool| leaflets.iter().filter(|leaflet| carries_a_yes(set, leaflet, read)).count();
        writeln!(
            text,
            "| {jurisdiction} | {} | {} | {} | {} | {absent} | {} | {} |",
            leaflets.len(),
            marked(Confidence::Document),
            marked(Confidence::SecondHand),
            marked(Confidence::Unconfirmed),
            yes(false),
            yes(true)
        )
        .unwrap();
    }
    text
}

/// Whether a colony treated in March and clear of the medicine in July is a yes at the end of the year, with the next nectar
/// flow on record for the following spring; with `read`, after a complete reading of the pack.
fn carries_a_yes(set: &Leaflets, leaflet: &Leaflet, read: bool) -> bool {
    let jurisdiction = &leaflet.jurisdiction;
    let unit = leaflet.unit.as_str();
    let mut entries = vec![
        json!({ "kind": "holding_details", "body": { "keeper": "K", "jurisdiction": jurisdiction } }),
        json!({ "kind": "apiary_details", "body": { "apiary": "East" } }),
        json!({ "kind": "colony_established", "body": { "colony": "A", "apiary": "East", "medicines": "none" } }),
        json!({ "kind": "medicine_described", "body": { "medicine": "m", "pack_name": "M", "unit": unit, "leaflet": leaflet.id } }),
        json!({ "kind": "lot_acquired", "body": { "lot": "L", "medicine": "m", "quantity": 10 } }),
        json!({ "kind": "nectar_flow", "body":
            { "apiary": "East", "forage": "sycamore", "stage": "expected", "from": "2027-04-20", "to": "2027-05-20" } }),
    ];
    if read {
        let mut terms =
            json!({ "supers_during": "off", "wait_after_removal_days": 0, "flow_before_days": 0 });
        let knows = leaflet
            .rules
            .iter()
            .any(|rule| matches!(rule.says, Says::Withdrawal { days: WithdrawalPeriod::None(_) }));
        let period =
            if knows { ("withdrawal", json!("none_by_label")) } else { ("withdrawal_days", json!(0)) };
        terms[period.0] = period.1;
        if leaflet.release == Release::Slow {
            terms["removal"] = json!("needed");
        }
        entries.push(json!({ "kind": "leaflet_reading", "body": { "lot": "L", "terms": terms } }));
    }
    let mut given = json!({ "given": [{ "lot": "L", "each": 1, "colonies": ["A"] }] });
    if let Some(method) = leaflet.methods.first() {
        given["method"] = json!(method);
    }
    entries.push(json!({ "kind": "administration", "on": "2026-03-01", "id": id(99), "body": given }));
    let gone = json!({ "administration": id(99), "colonies": ["A"] });
    entries.push(json!({ "kind": "removal", "on": "2026-07-31", "body": gone }));
    let mut holding = Holding::new("coverage".parse().unwrap());
    for (number, mut entry) in entries.into_iter().enumerate() {
        let fields = entry.as_object_mut().unwrap();
        fields.entry("on").or_insert("2026-02-01".into());
        fields.entry("id").or_insert(json!(id(number)));
        fields.insert("recorded_by".to_owned(), "K".into());
        record(&mut holding, &entries::read(&entry)).unwrap();
    }
    let history = History::of(&holding, set, &"A".parse().unwrap());
    history.may_be_supered("2026-12-31".parse().unwrap()) == Verdict::Yes
}

/// How well the rules of a leaflet on a topic are established: by the weakest of those that are in force.
fn mark(leaflet: &Leaflet, topic: Topic) -> &'static str {
    let rules = leaflet.rules.iter().filter(|rule| rule.says.topic() == topic && rule.until.is_none());
    rules.map(|rule| rule.confidence).max().map_or("–", letter)
}
