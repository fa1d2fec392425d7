//! `combclear due`: due items of the demo, as a table, as JSON and as a calendar.

use serde_json::Value;

use crate::bench::{Bench, DEMO_DAY};

#[test]
fn what_is_due_in_the_demo_is_shown_visit_by_visit_with_what_is_overdue_first() {
    insta::assert_snapshot!(Bench::with_demo().run(&["due", "--from", DEMO_DAY]).done().out);
}

#[test]
fn in_full_each_item_is_shown_with_its_days_and_its_reason() {
    insta::assert_snapshot!(Bench::with_demo().run(&["due", "--from", DEMO_DAY, "--full"]).done().out);
}

#[test]
fn json_agrees_with_the_table() {
    let bench = Bench::with_demo();
    let table = bench.run(&["due", "--from", DEMO_DAY]).done().out;
    let json = bench.run(&["due", "--from", DEMO_DAY, "--json"]).done().json();
    assert_eq!((json["from"].as_str(), json["to"].as_str()), (Some(DEMO_DAY), Some("2026-10-27")));
    let items: Vec<&Value> = json["visits"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|visit| visit["items"].as_array().unwrap())
        .collect();
    assert!(table.contains(&format!("\n{} items: ", items.len())), "{table}");
    let overdue = items.iter().filter(|item| item["overdue"] == true).count();
    assert!(table.contains(&format!(": {overdue} overdue. ")), "{table}");
}

#[test]
fn one_apiary_can_be_asked_about() {
    let bench = Bench::with_demo();
    let json = bench.run(&["due", "--from", DEMO_DAY, "--apiary", "Ternholm", "--json"]).done().json();
    let visits = json["visits"].as_array().unwrap();
    assert!(visits.len() > 1 && visits.iter().all(|visit| visit["apiary"] == "Ternholm"), "{json}");
    bench
        .run(&["due", "--apiary", "Ternhol"])
        .failed_with("there is no apiary `Ternhol`", "did you mean `Ternholm`?");
}

#[test]
fn the_calendar_goes_into_a_file_is_written_anew_and_is_the_same_on_standard_output() {
    let bench = Bench::with_demo();
    let ask = ["due", "--from", DEMO_DAY, "--calendar", "due.ics"];
    assert_eq!(bench.run(&ask).done().out, "");
    let first = bench.read("due.ics");
    assert!(first.starts_with("BEGIN:VCALENDAR\r\nVERSION:2.0\r\n") && first.ends_with("END:VCALENDAR\r\n"));
    bench.run(&ask).done();
    assert_eq!(bench.read("due.ics"), first);
    assert_eq!(bench.run(&["due", "--from", DEMO_DAY, "--calendar", "-"]).done().out, first);
    // An item with neither first nor last day is a to-do.
    let events = first.matches("BEGIN:VEVENT").count() + first.matches("BEGIN:VTODO").count();
    let json = bench.run(&["due", "--from", DEMO_DAY, "--json"]).done().json();
    let items =
        json["visits"].as_array().unwrap().iter().map(|visit| visit["items"].as_array().unwrap().len());
    assert_eq!(events, items.sum::<usize>());
    bench.run(&["due", "--calendar", "nowhere/due.ics"]).failed_with(
        "cannot write `nowhere/due.ics`: there is no such file or folder",
        "name a file in an existing folder",
    );
}

#[test]
fn days_that_cannot_be_asked_about_are_refused() {
    let bench = Bench::with_mine();
    bench.run(&["due", "--from", "2026-05-02", "--to", "2026-05-01"]).failed_with(
        "the last day 2026-05-01 is before the first, 2026-05-02",
        "swap --from and --to, or correct one of them",
    );
    bench.run(&["due", "--from", "2026-01-01", "--to", "2028-01-01"]).failed_with(
        "731 days are too many: at most 400 can be asked about at once",
        "ask about a shorter period",
    );
}
