//! New colonies named by a range: what stands for several names, and what does not.

use std::collections::BTreeMap;

use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::{Body, ColonyEstablished};
use combclear_domain::journal::{Event, Kind};
use combclear_domain::recording::{FilledIn, WrongWith};
use combclear_domain::rules::leaflet::Leaflets;

/// The names of the colonies that a text stands for, or what is wrong with it.
fn named(text: &str) -> Result<Vec<String>, WrongWith> {
    let texts = [("colony", text), ("apiary", "East"), ("medicines", "none")];
    let filled = FilledIn {
        kind: Kind::ColonyEstablished,
        on: "2026-03-01".parse().unwrap(),
        at: None,
        copied_from: None,
        written_on: None,
        recorded_by: "me".parse().ok(),
        texts: texts
            .map(|(key, text)| (key.to_owned(), vec![text.to_owned()]))
            .into_iter()
            .collect::<BTreeMap<_, _>>(),
        chosen: None,
    };
    let holding = Holding::new("mine".parse().unwrap());
    let leaflets = Leaflets::load(std::iter::empty()).unwrap();
    let name = |event: &Event| ColonyEstablished::of(event).unwrap().colony.to_string();
    match filled.write(&holding, &leaflets) {
        Ok(written) => Ok(written.events.iter().map(name).collect()),
        Err(wrong) => Err(wrong.into_iter().next().unwrap().with),
    }
}

#[test]
fn a_range_is_two_names_that_differ_in_the_number_at_their_end() {
    for (text, names) in [
        ("R1-R3", &["R1", "R2", "R3"][..]),
        ("R9-11", &["R9", "R10", "R11"]),
        ("A-1-A-2", &["A-1", "A-2"]),
        ("08-10", &["08", "09", "10"]),
        ("R1, R5", &["R1", "R5"]),
        ("R1-S3", &["R1-S3"]),
        ("east-west", &["east-west"]),
        ("R1", &["R1"]),
    ] {
        assert_eq!(named(text).unwrap(), names, "{text}");
    }
}

#[test]
fn a_range_that_runs_backwards_or_is_very_long_is_refused() {
    assert_eq!(named("R3-R1"), Err(WrongWith::RangeIsBackwards { text: "R3-R1".to_owned() }));
    assert_eq!(named("R1-R1000").unwrap().len(), 1_000);
    let too_long = WrongWith::RangeTooLong { text: "R1-R1001".to_owned(), most: 1_000 };
    assert_eq!(named("R1-R1001"), Err(too_long));
}
