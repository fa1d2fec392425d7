//! Which entries belong together.

use std::collections::BTreeMap;

use combclear_domain::basics::words::LotName;
use combclear_domain::journal::EntryId;
use combclear_domain::questions::retention::sets::{Told, of_holding, sets};
use combclear_testkit::entries::id;
use proptest::prelude::*;
use serde_json::json;

use super::Book;

/// An entry in short: its number, the lots and entries it names, the prescription it records, and the one it was given
/// under.
fn told(number: usize, lots: &[&str], entries: &[usize], records: &str, under: &str) -> Told {
    Told {
        entry: id(number),
        lots: lots.iter().map(|lot| lot.parse().unwrap()).collect(),
        entries: entries.iter().map(|entry| id(*entry)).collect(),
        prescription: records.parse().ok(),
        given_under: under.parse().ok(),
    }
}

/// The sets as numbers, each as its lots and its entries.
fn grouped(all: &[Told]) -> Vec<(String, Vec<usize>)> {
    let number = |entry: &EntryId| entry.to_string().rsplit('-').next().unwrap().parse().unwrap();
    let lots = |set: &combclear_domain::questions::retention::RecordSet| {
        set.lots.iter().map(LotName::as_str).collect::<Vec<_>>().join(" ")
    };
    sets(all).iter().map(|set| (lots(set), set.entries.iter().map(number).collect())).collect()
}

type Case = (&'static str, Vec<Told>, &'static [(&'static str, &'static [usize])]);

#[test]
fn a_set_is_closed() {
    let cases: Vec<Case> = vec![
        (
            "two lots have two sets",
            vec![told(1, &["A"], &[], "", ""), told(2, &["B"], &[], "", "")],
            &[("A", &[1]), ("B", &[2])],
        ),
        (
            "what is given from a lot belongs to it",
            vec![told(1, &["A"], &[], "", ""), told(2, &["A"], &[], "", "")],
            &[("A", &[1, 2])],
        ),
        (
            "one administration of several lots links them",
            vec![
                told(1, &["A"], &[], "", ""),
                told(2, &["B"], &[], "", ""),
                told(3, &["C"], &[], "", ""),
                told(4, &["A", "C"], &[], "", ""),
            ],
            &[("A C", &[1, 3, 4]), ("B", &[2])],
        ),
        (
            "lots linked through a third share a set",
            vec![
                told(1, &["A", "B"], &[], "", ""),
                told(2, &["C", "D"], &[], "", ""),
                told(3, &["B", "C"], &[], "", ""),
            ],
            &[("A B C D", &[1, 2, 3])],
        ),
        (
            "a later dose from another lot links it",
            vec![told(1, &["A"], &[], "", ""), told(2, &["B"], &[1], "", "")],
            &[("A B", &[1, 2])],
        ),
        (
            "a removal belongs to what comes out",
            vec![told(1, &["A"], &[], "", ""), told(2, &["B"], &[], "", ""), told(3, &[], &[1], "", "")],
            &[("A", &[1, 3]), ("B", &[2])],
        ),
        (
            "a correction that names another lot links both, since the old entry stays and names the old one",
            vec![
                told(1, &["A"], &[], "", ""),
                told(2, &["B"], &[], "", ""),
                told(3, &["A"], &[], "", ""),
                told(4, &["B"], &[3], "", ""),
            ],
            &[("A B", &[1, 2, 3, 4])],
        ),
        (
            "a strike-out belongs to what it strikes out",
            vec![told(1, &["A"], &[], "", ""), told(2, &[], &[1], "", "")],
            &[("A", &[1, 2])],
        ),
        (
            "a strike-out of something else is in no set",
            vec![told(1, &["A"], &[], "", ""), told(2, &[], &[9], "", "")],
            &[("A", &[1])],
        ),
        (
            "a prescription used in one set belongs to it",
            vec![told(1, &[], &[], "P", ""), told(2, &["A"], &[], "", "P"), told(3, &["A"], &[], "", "P")],
            &[("A", &[1, 2, 3])],
        ),
        (
            "a prescription that two sets used stands alone and links nothing",
            vec![told(1, &[], &[], "P", ""), told(2, &["A"], &[], "", "P"), told(3, &["B"], &[], "", "P")],
            &[("", &[1]), ("A", &[2]), ("B", &[3])],
        ),
        (
            "its correction goes with it",
            vec![
                told(1, &[], &[], "P", ""),
                told(2, &[], &[1], "P", ""),
                told(3, &["A"], &[], "", "P"),
                told(4, &["B"], &[], "", "P"),
            ],
            &[("", &[1, 2]), ("A", &[3]), ("B", &[4])],
        ),
        ("a prescription that nobody used stands alone", vec![told(1, &[], &[], "P", "")], &[("", &[1])]),
    ];
    for (name, all, wanted) in cases {
        let wanted: Vec<(String, Vec<usize>)> =
            wanted.iter().map(|(lots, entries)| ((*lots).to_owned(), entries.to_vec())).collect();
        assert_eq!(grouped(&all), wanted, "{name}");
    }
}

#[test]
fn a_shared_prescription_is_named_by_the_sets_that_used_it() {
    let all = [told(1, &[], &[], "P", ""), told(2, &["A"], &[], "", "P"), told(3, &["B"], &[], "", "P")];
    let shared: Vec<usize> = sets(&all).iter().map(|set| set.shared_prescriptions.len()).collect();
    assert_eq!(shared, [0, 1, 1]);
}

#[test]
fn the_set_of_a_lot_in_a_journal_holds_all_that_speaks_of_it() {
    let mut book = Book::of("gb");
    let bought = book.buy("2026-01-01", "strips", "S", 3);
    book.buy("2026-01-01", "liquid", "L", 1);
    let terms = json!({ "withdrawal_days": 0 });
    let read = book.write("2026-01-02", "leaflet_reading", json!({ "lot": "S", "terms": terms }));
    let document = |target: &str, name: &str| json!({ "content": "ab".repeat(32), "media_type": "application/pdf", "bytes": 1, target: name });
    let proof = book.write("2026-01-02", "document_attached", document("lot", "S"));
    let opened = book.write("2026-01-02", "lot_opened", json!({ "lot": "S" }));
    let body = json!({ "prescription": "P1", "vet": "V", "medicine": "strips", "terms": {} });
    let prescribed = book.write("2026-01-03", "prescription", body);
    let copy = book.write("2026-01-03", "document_attached", document("prescription", "P1"));
    let given = book.give_more("2026-08-20", &["S"], json!({ "prescription": "P1" }));
    let mistaken = book.take_out("2026-09-30", &given);
    let more = json!({ "corrects": mistaken, "reason": "wrong day" });
    let body = json!({ "administration": given, "colonies": ["A"] });
    let mended = book.write_with("2026-10-01", "removal", body, more);
    let wrong = book.dispose("2026-10-02", "S", 1);
    let more = json!({ "corrects": wrong, "reason": "it did not happen" });
    let struck = book.write_with("2026-10-03", "strike_out", json!({}), more);
    book.write("2026-10-03", "inspection", json!({ "colony": "A" }));
    let told: Vec<Vec<String>> = of_holding(&book.holding)
        .iter()
        .map(|set| set.entries.iter().map(ToString::to_string).collect())
        .collect();
    assert_eq!(
        told[0],
        [bought, read, proof, opened, prescribed, copy, given, mistaken, mended, wrong, struck]
    );
    assert_eq!((told.len(), told[1].len()), (2, 1));
}

proptest! {
    /// No entry names a lot or an entry of another set; each entry that names a lot is in one set; and the order of the
    /// lots within an entry does not matter.
    #[test]
    fn no_set_is_named_from_outside(
        shape in prop::collection::vec((prop::collection::vec(0..8_usize, 0..3), prop::option::of(0..40_usize), prop::option::of(0..4_usize), any::<bool>()), 1..40)
    ) {
        let all: Vec<Told> = shape.iter().enumerate().map(|(number, (lots, refers, number_of, records))| {
            let lots: Vec<String> = lots.iter().map(|lot| format!("lot{lot}")).collect();
            let lots: Vec<&str> = lots.iter().map(String::as_str).collect();
            let entries: Vec<usize> = refers.iter().copied().filter(|refers| *refers < number).collect();
            let prescription = number_of.map_or(String::new(), |number| format!("P{number}"));
            let (recorded, under) = if *records { (prescription.as_str(), "") } else { ("", prescription.as_str()) };
            told(number, &lots, &entries, recorded, under)
        }).collect();
        let sets = sets(&all);
        let mut of_entry = BTreeMap::new();
        let mut of_lot = BTreeMap::new();
        for (index, set) in sets.iter().enumerate() {
            for entry in &set.entries {
                prop_assert_eq!(of_entry.insert(*entry, index), None);
            }
            for lot in &set.lots {
                prop_assert_eq!(of_lot.insert(lot.clone(), index), None);
            }
        }
        let mut prescribed: BTreeMap<_, usize> = BTreeMap::new();
        for one in &all {
            let here = of_entry.get(&one.entry).copied();
            prop_assert!(here.is_some() || one.lots.is_empty());
            for lot in &one.lots {
                prop_assert_eq!(of_lot.get(lot).copied(), here);
            }
            for entry in &one.entries {
                prop_assert_eq!(of_entry.get(entry).copied(), here);
            }
            if let (Some(number), Some(here)) = (&one.prescription, here) {
                prop_assert_eq!(*prescribed.entry(number.clone()).or_insert(here), here);
            }
        }
        // An administration under a prescription of another set says so.
        for one in all.iter().filter(|one| !one.lots.is_empty()) {
            let Some(number) = &one.given_under else { continue };
            let here = of_entry[&one.entry];
            let apart = prescribed.get(number).is_some_and(|there| *there != here);
            prop_assert!(!apart || sets[here].shared_prescriptions.contains(number));
        }
    }
}
