//! Which entries can be archived together.

use combclear_domain::facts::holding::{Bond, Holding, Tie};
use combclear_testkit::entries::{id, read, take_in};
use serde_json::json;

/// Two lots of one medicine. Of the first: acquired (5), given to a colony (6), given again (7), taken out (8), its
/// withdrawal corrected (9), all disposed of (10). Of the second: acquired (11), and nothing else.
fn holding() -> Holding {
    let given = json!([{"lot": "L1", "each": 2, "colonies": ["A1"]}]);
    let entries = [
        ("holding_details", json!({"keeper": "A. Keeper", "jurisdiction": "gb"}), None),
        ("apiary_details", json!({"apiary": "East"}), None),
        ("colony_established", json!({"colony": "A1", "apiary": "East", "medicines": "none"}), None),
        (
            "medicine_described",
            json!({"medicine": "strips", "pack_name": "Strips (invented)", "unit": "strip"}),
            None,
        ),
        ("lot_acquired", json!({"lot": "L1", "medicine": "strips", "quantity": 10}), None),
        ("administration", json!({"given": given}), None),
        ("administration", json!({"given": given, "continues": id(6)}), None),
        ("removal", json!({"administration": id(6), "colonies": ["A1"]}), None),
        ("removal", json!({"administration": id(6), "colonies": ["A1"]}), Some(8)),
        ("disposal", json!({"lot": "L1", "quantity": 6, "how_and_where": "handed in"}), None),
        ("lot_acquired", json!({"lot": "L2", "medicine": "strips", "quantity": 10}), None),
    ];
    let mut holding = Holding::new("test".parse().unwrap());
    for (number, (kind, body, corrects)) in (1..).zip(entries) {
        let mut entry =
            json!({"id": id(number), "on": "2020-03-01", "recorded_by": "me", "kind": kind, "body": body});
        if let Some(corrects) = corrects {
            entry["corrects"] = json!(id(corrects));
            entry["reason"] = json!("wrong");
        }
        take_in(&mut holding, read(&entry), "2020-03-02T12:00:00.000Z").unwrap();
    }
    holding
}

#[test]
fn entries_go_together_or_what_ties_them_to_the_rest_is_named() {
    let holding = holding();
    let tie = |stays, goes, how| Some(Tie { stays: id(stays), goes: id(goes), how });
    for (what, going, wanted) in [
        ("nothing", vec![], None),
        ("all of a lot", vec![5, 6, 7, 8, 9, 10], None),
        ("in another order", vec![10, 9, 8, 7, 6, 5], None),
        ("a lot that was never used", vec![11], None),
        ("everything", (1..=11).collect(), None),
        ("a lot whose use stays", vec![5], tie(6, 5, Bond::Name)),
        ("a lot without its last use", vec![5, 6, 7, 8, 9], tie(10, 5, Bond::Name)),
        ("the first dose without the second", vec![5, 6, 8, 9, 10], tie(7, 6, Bond::Course)),
        ("the second dose without the first", vec![7], tie(6, 7, Bond::Course)),
        ("a dose without its removal", vec![5, 6, 7, 10], tie(8, 6, Bond::Course)),
        ("a removal without its dose", vec![8, 9], tie(6, 8, Bond::Course)),
        ("what was corrected, without the correction", vec![5, 6, 7, 8, 10], tie(9, 8, Bond::Correction)),
        ("a correction without what it corrects", vec![5, 6, 7, 9, 10], tie(8, 6, Bond::Course)),
        ("a colony that was treated", vec![3], tie(6, 3, Bond::Name)),
        ("an apiary in which a colony stands", vec![2], tie(3, 2, Bond::Name)),
        ("a medicine of which lots stay", vec![4], tie(5, 4, Bond::Name)),
        ("an entry that is not there", vec![11, 12], tie(12, 12, Bond::Unknown)),
    ] {
        let going: Vec<_> = going.into_iter().map(id).collect();
        assert_eq!(holding.first_tie(&going), wanted, "{what}");
    }
}
