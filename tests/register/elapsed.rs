//! The opt-in policy of full days of 24 hours, against its published examples. Civil days are shown beside it in any case.

use combclear_domain::basics::calendar::Counting;
use combclear_testkit::entries::holding;

use super::register;

/// A dose with a time of day (or none), the period in days, and the result: last blocked day, first free day, free at.
const CASES: [(&str, &str, Option<&str>, u16, &str); 6] = [
    // Source: a Canadian stewardship course on withdrawal times: Friday 08:00 and five days are Wednesday 08:00.
    // 2026-04-10 is a Friday.
    ("Friday and five days", "2026-04-10", Some("08:00"), 5, "2026-04-15 2026-04-16 2026-04-15 08:00"),
    // Source: the same course: Monday 08:00 and 48 hours are Wednesday 08:00. 2026-04-13 is a Monday.
    ("Monday and two days", "2026-04-13", Some("08:00"), 2, "2026-04-15 2026-04-16 2026-04-15 08:00"),
    ("no period", "2026-04-10", Some("08:00"), 0, "- 2026-04-10 2026-04-10 08:00"),
    ("over the new year", "2025-12-31", Some("23:59"), 14, "2026-01-14 2026-01-15 2026-01-14 23:59"),
    // Without a time of day it might free up to a day early, so no moment is given.
    ("no time noted", "2026-04-10", None, 5, "2026-04-15 2026-04-16 -"),
    ("one day", "2024-02-28", Some("12:00"), 1, "2024-02-29 2024-03-01 2024-02-29 12:00"),
];

#[test]
fn full_days_of_24_hours_are_counted_where_they_are_asked_for_and_the_time_was_noted() {
    for (name, on, at, days, expected) in CASES {
        let at = at.map_or(String::new(), |at| format!("at = \"{at}\""));
        let journal = format!(
            r#"
            [[entry]]
            on = "2015-01-01"
            kind = "holding_details"
            body = {{ keeper = "keeper", jurisdiction = "zz" }}
            [[entry]]
            on = "2015-01-01"
            kind = "apiary_details"
            body = {{ apiary = "East" }}
            [[entry]]
            on = "2015-01-01"
            kind = "colony_established"
            body = {{ colony = "A1", apiary = "East", medicines = "none" }}
            [[entry]]
            on = "2015-01-01"
            kind = "medicine_described"
            body = {{ medicine = "shot", pack_name = "Shot", unit = "g", leaflet = "shot" }}
            [[entry]]
            on = "2015-01-01"
            kind = "lot_acquired"
            body = {{ lot = "G-1", medicine = "shot", quantity = 100 }}
            [[entry]]
            on = "{on}"
            {at}
            kind = "administration"
            body = {{ given = [{{ lot = "G-1", each = 1, colonies = ["A1"] }}], withdrawal_days = {days} }}
            "#
        );
        let journal: toml::Table = toml::from_str(&journal).unwrap();
        let holding = holding(journal["entry"].as_array().unwrap()).unwrap();
        let report = register(&holding, "2015-01-01", "2026-12-31", "2026-12-31");
        let civil = report.administrations[0].courses[0].clone();
        let elapsed = report.counted_by(Counting::Elapsed);
        assert_eq!((civil.free_at, elapsed.policy), (None, "elapsed-24"), "{name}");
        let course = &elapsed.administrations[0].courses[0];
        let said = [
            course.last_blocked_day.map(|day| day.to_string()),
            course.first_free_day.map(|day| day.to_string()),
            course.free_at.map(|at| at.to_string()),
        ];
        assert_eq!(said.map(|said| said.unwrap_or("-".to_owned())).join(" "), expected, "{name}");
    }
}

/// If the wait before supers is not stated, the withdrawal period alone frees nothing, whatever its length.
#[test]
fn a_wait_that_is_not_known_frees_nothing_by_full_days_of_24_hours_either() {
    let removal = r#"
        [[entry]]
        on = "2026-04-20"
        at = "08:00"
        kind = "removal"
        body = { administration = "given", colonies = ["A1"] }
    "#;
    for (name, leaflet, removal, wait) in [
        ("a leaflet that is not known here", "of-elsewhere", removal, None),
        ("a wait that nobody read in a document", "shot-unread", "", Some(0)),
    ] {
        let journal = format!(
            r#"
            [[entry]]
            on = "2015-01-01"
            kind = "holding_details"
            body = {{ keeper = "keeper", jurisdiction = "zz" }}
            [[entry]]
            on = "2015-01-01"
            kind = "apiary_details"
            body = {{ apiary = "East" }}
            [[entry]]
            on = "2015-01-01"
            kind = "colony_established"
            body = {{ colony = "A1", apiary = "East", medicines = "none" }}
            [[entry]]
            on = "2015-01-01"
            kind = "medicine_described"
            body = {{ medicine = "powder", pack_name = "Powder", unit = "g", leaflet = "{leaflet}" }}
            [[entry]]
            on = "2015-01-01"
            kind = "lot_acquired"
            body = {{ lot = "P-1", medicine = "powder", quantity = 100 }}
            [[entry]]
            id = "given"
            on = "2026-04-10"
            at = "08:00"
            kind = "administration"
            body = {{ given = [{{ lot = "P-1", each = 1, colonies = ["A1"] }}], withdrawal_days = 0 }}
            {removal}
            "#
        );
        let journal: toml::Table = toml::from_str(&journal).unwrap();
        let holding = holding(journal["entry"].as_array().unwrap()).unwrap();
        let report = register(&holding, "2015-01-01", "2026-12-31", "2026-12-31");
        let elapsed = report.counted_by(Counting::Elapsed);
        let course = &elapsed.administrations[0].courses[0];
        assert!(course.last.is_some(), "{name}");
        assert_eq!(course.wait_days, wait, "{name}");
        assert_eq!((course.first_free_day, course.free_at), (None, None), "{name}");
    }
}
