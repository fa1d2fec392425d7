//! Places in a journal as text.

use std::collections::BTreeSet;

use combclear_domain::journal::places::Places;
use proptest::prelude::*;

use super::told::said;

#[test]
fn places_are_written_in_runs() {
    for (places, text) in [
        (&[25, 12, 13, 14, 15, 16, 17, 18][..], "12-18,25"),
        (&[1], "1"),
        (&[2, 1], "1-2"),
        (&[1, 3, 5, 5], "1,3,5"),
        (&[u64::MAX], "18446744073709551615"),
    ] {
        let of = Places::of(places.iter().copied()).unwrap();
        assert_eq!(of.to_string(), text);
        assert_eq!(text.parse(), Ok(of));
    }
    assert_eq!(Places::of([]), None);
    assert_eq!(Places::of([0, 1]), None);
}

#[test]
fn text_that_could_be_read_in_two_ways_names_no_places() {
    for text in [
        "",
        ",",
        "0",
        "0-3",
        "1,",
        ",1",
        "1,1",
        "1,2",
        "1-1",
        "1-3,4",
        "2,1",
        "3-1",
        "1-",
        "-1",
        "1--2",
        "1-2-3",
        "01",
        "+1",
        " 1",
        "1, 3",
        "1-3,2-5",
        "a",
        "18446744073709551616",
    ] {
        let fault = text.parse::<Places>().expect_err(text);
        let wanted =
            format!("`{text}` is not a list of places in a journal, in order and each once, like 12-18,25");
        assert_eq!(said(fault), wanted);
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn places_come_back_in_order_and_each_once(places in prop::collection::vec(1_u64..60, 1..40)) {
        let wanted: BTreeSet<u64> = places.iter().copied().collect();
        let of = Places::of(places).unwrap();
        prop_assert!(of.iter().eq(wanted.iter().copied()));
        prop_assert_eq!(of.count(), u64::try_from(wanted.len()).unwrap());
        prop_assert!((0..62).all(|place| of.contains(place) == wanted.contains(&place)));
        prop_assert_eq!(of.to_string().parse::<Places>().unwrap(), of);
    }
}
