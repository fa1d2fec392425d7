//! The medicine of a dose is that of its lot. No accepted journal lacks the lot or the first dose; one that was changed
//! outside this program may, and its courses and rows must not vanish.

use combclear_domain::basics::fact::Fact;
use combclear_domain::basics::verdict::Verdict;
use combclear_domain::facts::NotOnRecord;
use combclear_domain::facts::history::History;
use combclear_domain::facts::holding::untrue::{Courses, Lots};
use combclear_domain::facts::holding::{Holding, Untrue};
use combclear_domain::journal::Entry;
use combclear_testkit::entries::{WRITTEN, day, draft, take_in, uuid_of};
use combclear_wording::Words;
use combclear_wording::supering::SuperingReport;
use serde_json::{Value, json};

use super::register;
use crate::supering::leaflets;

/// A lot, a dose of it, and its removal.
fn entries() -> Vec<Entry> {
    let given = json!([{ "lot": "S-1", "each": 2, "colonies": ["A1"] }]);
    let drafts = [
        ("details", "2026-01-01", "holding_details", json!({ "keeper": "keeper", "jurisdiction": "zz" })),
        ("apiary", "2026-01-01", "apiary_details", json!({ "apiary": "East" })),
        (
            "colony",
            "2026-01-01",
            "colony_established",
            json!({ "colony": "A1", "apiary": "East", "medicines": "none" }),
        ),
        (
            "medicine",
            "2026-01-01",
            "medicine_described",
            json!({ "medicine": "strip", "pack_name": "Strip", "unit": "strip" }),
        ),
        ("lot", "2026-01-02", "lot_acquired", json!({ "lot": "S-1", "medicine": "strip", "quantity": 9 })),
        ("dose", "2026-02-01", "administration", json!({ "given": given })),
        (
            "removal",
            "2026-03-01",
            "removal",
            json!({ "administration": uuid_of("dose"), "colonies": ["A1"] }),
        ),
        (
            "disposal",
            "2026-03-02",
            "disposal",
            json!({ "lot": "S-1", "quantity": 7, "how_and_where": "collection point" }),
        ),
    ];
    let mut holding = Holding::new("test".parse().unwrap());
    let take = |(word, on, kind, body): (&str, &str, &str, Value)| {
        take_in(&mut holding, draft(word, day(on), kind, &body), WRITTEN).unwrap()
    };
    drafts.map(take).into()
}

/// The journal as it would be opened without one of its entries.
fn opened_without(word: &str) -> Holding {
    let mut holding = Holding::new("test".parse().unwrap());
    let gone = uuid_of(word);
    for entry in entries().iter().filter(|entry| entry.draft.id.to_string() != gone) {
        holding.restore(entry);
    }
    holding
}

#[test]
fn a_dose_whose_lot_is_gone_keeps_its_course_and_its_row_and_frees_nothing() {
    let holding = opened_without("lot");
    let history = History::of(&holding, leaflets(), &"A1".parse().unwrap());
    assert_eq!(history.courses.len(), 1);
    assert_eq!(history.courses[0].medicine, Fact::NotKnown(NotOnRecord::Lot));
    for on in ["2026-02-01", "2026-03-01", "2027-01-01"] {
        assert_ne!(history.may_be_supered(day(on)), Verdict::Yes, "{on}");
    }
    let report = register(&holding, "2026-01-01", "2026-12-31", "2026-12-31");
    let medicines = [
        &report.administrations[0].medicine.medicine,
        &report.removals[0].medicine.medicine,
        &report.disposals[0].medicine.medicine,
        &report.totals[0].medicine.medicine,
    ];
    assert_eq!(medicines, [&Fact::NotKnown(NotOnRecord::Lot); 4]);
    let report = serde_json::to_value(&report).unwrap();
    assert_eq!(report["removals"][0]["medicine"]["medicine"], Value::Null);
}

#[test]
fn a_sentence_that_would_name_the_medicine_says_that_it_is_not_recorded() {
    for (gone, name) in [("nothing", "Strip placed 2026-02-01"), ("lot", "(not recorded) placed 2026-02-01")]
    {
        let holding = opened_without(gone);
        let colony = "A1".parse().unwrap();
        let report = SuperingReport::ask(Words::english(), &holding, leaflets(), &colony, day("2026-02-10"));
        let grounds: Vec<&str> = report.grounds.iter().map(|ground| ground.statement.as_str()).collect();
        assert!(grounds.iter().any(|ground| ground.contains(name)), "without {gone}: {grounds:#?}");
    }
}

#[test]
fn a_removal_whose_first_dose_is_gone_keeps_its_row() {
    let holding = opened_without("dose");
    let report = register(&holding, "2026-01-01", "2026-12-31", "2026-12-31");
    assert_eq!(report.removals[0].medicine.medicine, Fact::NotKnown(NotOnRecord::FirstDose));
    assert_eq!(report.removals[0].placed, None);
}

/// An entry whose body was archived names nothing. If another entry still rests on it, the journal is refused.
#[test]
fn a_journal_with_an_archived_lot_or_first_dose_that_others_rest_on_is_refused() {
    for (archived, refused) in [("lot", "dose"), ("dose", "removal")] {
        let mut holding = Holding::new("test".parse().unwrap());
        let (archived, refused) = (uuid_of(archived), uuid_of(refused));
        let refusal = entries().iter().find_map(|entry| {
            let id = entry.draft.id.to_string();
            let kept = if id == archived { entry.without_body() } else { entry.clone() };
            holding.accept_sealed(&kept).err().map(|refusal| (id, refusal.why))
        });
        let (id, why) = refusal.unwrap();
        assert_eq!(id, refused);
        assert!(
            matches!(
                why,
                Untrue::Lots(Lots::NoSuchLot { .. }) | Untrue::Courses(Courses::FirstDoseOfOtherKind { .. })
            ),
            "{why:?}"
        );
    }
}
