//! The clock of the machine, held against the times at which entries were recorded.

use combclear_domain::facts::holding::Holding;
use combclear_testkit::entries::{day, draft, take_in};
use serde_json::json;

/// A holding with an entry recorded at each of these times.
fn recorded_at(times: &[&str]) -> Holding {
    let mut holding = Holding::new("test".parse().unwrap());
    for (number, time) in times.iter().enumerate() {
        let (word, body) = (format!("entry {number}"), json!({ "apiary": format!("East {number}") }));
        take_in(&mut holding, draft(&word, day("2020-03-01"), "apiary_details", &body), time).unwrap();
    }
    holding
}

#[test]
fn a_clock_is_doubted_if_its_day_was_over_everywhere_when_an_entry_was_recorded() {
    // The last place on Earth in which the first of March ends is 12 hours behind UTC.
    for (times, today, doubted) in [
        (&["2026-03-02T11:59:59.999Z"][..], "2026-03-01", None),
        (&["2026-03-02T12:00:00.000Z"], "2026-03-01", Some(1)),
        (&["2026-03-02T12:00:00.000Z"], "2026-03-02", None),
        (&["2026-03-02T12:00:00.000Z"], "2026-03-03", None),
        (&["2026-03-02T12:00:00.000Z"], "2026-02-28", Some(1)),
        // The latest time counts, wherever it is in the journal.
        (
            &["2026-03-01T12:00:00.000Z", "2031-03-01T12:00:00.000Z", "2026-03-02T12:00:00.000Z"],
            "2026-03-05",
            Some(2),
        ),
        (&[], "2026-03-01", None),
    ] {
        let holding = recorded_at(times);
        let found = holding.recorded_after(day(today)).map(|record| record.seq);
        assert_eq!(found, doubted, "{times:?} on {today}");
    }
}
