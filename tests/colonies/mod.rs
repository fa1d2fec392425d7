//! Lists of colonies as people say them, and the order in which they count.

use std::cmp::Ordering;

use combclear_domain::basics::natural::natural_order;
use combclear_wording::Words;
use combclear_wording::colonies::counted;
use proptest::prelude::*;

#[test]
fn names_are_listed_as_people_count_and_say_them() {
    for (case, names, said) in [
        ("one colony has no count", &["H2"][..], "H2"),
        ("nothing is nothing", &[], ""),
        ("a run of three is said by its ends", &["H1", "H2", "H3"], "H1-H3 (3)"),
        ("two stand side by side", &["H1", "H2"], "H1, H2 (2)"),
        ("10 comes after 9", &["H10", "H9", "H1", "H8"], "H1, H8-H10 (4)"),
        ("a gap ends a run", &["R1", "R2", "R3", "R5", "R6", "R7"], "R1-R3, R5-R7 (6)"),
        ("every second one is no run", &["R1", "R3", "R5"], "R1, R3, R5 (3)"),
        ("leading zeros go on into two digits", &["B08", "B09", "B10", "B11"], "B08-B11 (4)"),
        ("another way of writing numbers ends a run", &["B8", "B9", "B010"], "B8, B9, B010 (3)"),
        (
            "the same number in another spelling is another colony",
            &["B7", "B07", "B8", "B9"],
            "B07, B7-B9 (4)",
        ),
        ("one prefix within another", &["NA1", "N1", "N2", "NA2", "N3", "NA3"], "N1-N3, NA1-NA3 (6)"),
        ("names without numbers", &["swarm", "blue hive", "queen"], "blue hive, queen, swarm (3)"),
        ("numbers alone", &["12", "11", "10", "2"], "2, 10-12 (4)"),
        (
            "a number within a name makes no run",
            &["2 east", "1 east", "3 east"],
            "1 east, 2 east, 3 east (3)",
        ),
        ("hyphens in names", &["A-1", "A-2", "A-3"], "A-1 to A-3 (3)"),
        ("a name given twice counts once", &["H1", "H1", "H2"], "H1, H2 (2)"),
        (
            "numbers too long to read stand alone",
            &["1000000000000000000000000", "1000000000000000000000001", "1000000000000000000000002"],
            "1000000000000000000000000, 1000000000000000000000001, 1000000000000000000000002 (3)",
        ),
        ("other alphabets", &["Übung2", "Übung1", "Übung3"], "Übung1-Übung3 (3)"),
    ] {
        assert_eq!(counted(Words::english(), names.iter().copied()), said, "{case}");
    }
}

#[test]
fn the_order_of_names_is_that_of_counting() {
    let sorted = ["2", "10", "H", "H07", "H7", "H8", "H08a", "H9", "H10", "H10a", "H10b", "HA1", "N1", "h1"];
    for (place, one) in sorted.iter().enumerate() {
        for (other_place, other) in sorted.iter().enumerate() {
            assert_eq!(natural_order(one, other), place.cmp(&other_place), "{one} and {other}");
        }
    }
}

proptest! {
    #![proptest_config(super::some(2_000))]

    /// Whatever the names, it is an order: the same from both sides, equal only for the same name, and transitive.
    #[test]
    fn it_is_an_order(names in prop::collection::vec("[A-B0-2-]{0,6}", 3)) {
        let [one, other, third] = [&names[0], &names[1], &names[2]];
        prop_assert_eq!(natural_order(one, other), natural_order(other, one).reverse());
        prop_assert_eq!(natural_order(one, other) == Ordering::Equal, one == other);
        if natural_order(one, other).is_le() && natural_order(other, third).is_le() {
            prop_assert!(natural_order(one, third).is_le());
        }
    }
}
