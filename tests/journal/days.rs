//! Days, times and instants as text. `tests/dates` checks the counting of days against Python.

use combclear_domain::basics::calendar::{Day, Instant, TimeOfDay};
use combclear_testkit::entries::day;
use proptest::prelude::*;

use super::told::said;

#[test]
fn a_day_is_read_in_one_spelling_only() {
    for good in ["2026-04-11", "1900-01-01", "2199-12-31", "2024-02-29", "2000-02-29"] {
        assert_eq!(day(good).to_string(), good);
    }
    for (bad, why) in [
        ("", "a date written like"),
        ("2026-4-11", "a date written like"),
        ("2026-04-1", "a date written like"),
        ("26-04-11", "a date written like"),
        ("2026/04/11", "a date written like"),
        ("11.04.2026", "a date written like"),
        ("20260411", "a date written like"),
        (" 2026-04-11", "a date written like"),
        ("2026-04-11 ", "a date written like"),
        ("2026-04-11T00:00:00Z", "a date written like"),
        ("2026-W15-6", "a date written like"),
        ("+026-04-11", "a date written like"),
        ("२०२६-०४-११", "a date written like"),
        ("2025-02-29", "a day of the calendar"),
        ("1900-02-29", "a day of the calendar"),
        ("2100-02-29", "a day of the calendar"),
        ("2026-04-31", "a day of the calendar"),
        ("2026-00-10", "a day of the calendar"),
        ("2026-13-10", "a day of the calendar"),
        ("2026-04-00", "a day of the calendar"),
        ("1899-12-31", "a day between 1900-01-01 and 2199-12-31"),
        ("2200-01-01", "a day between 1900-01-01 and 2199-12-31"),
        ("0000-01-01", "a day between 1900-01-01 and 2199-12-31"),
    ] {
        let message = said(bad.parse::<Day>().unwrap_err());
        assert!(message.starts_with(&format!("`{bad}` is not {why}")), "{message}");
    }
}

#[test]
fn sums_of_days_stop_at_both_ends_of_the_calendar() {
    assert_eq!(Day::new(1899, 12, 31), None);
    assert_eq!(Day::new(2200, 1, 1), None);
    assert_eq!(Day::new(2025, 2, 29), None);
    assert_eq!(Day::new(2024, 2, 29), Some(day("2024-02-29")));
    assert_eq!(Day::FIRST.before(), Day::FIRST);
    assert_eq!(Day::LAST.next(), Day::LAST);
    assert_eq!(day("2199-12-30").plus(1), Day::LAST);
    assert_eq!(day("2199-12-30").plus(u16::MAX), Day::LAST);
    assert_eq!(day("2024-02-28").next(), day("2024-02-29"));
    assert_eq!(day("2023-02-28").next(), day("2023-03-01"));
    assert_eq!(day("2024-03-01").before(), day("2024-02-29"));
    assert_eq!(day("2024-03-01").days_since(day("2023-03-01")), 366);
    assert_eq!(day("2023-03-01").days_since(day("2024-03-01")), -366);
}

#[test]
fn a_time_of_day_is_read_in_one_spelling_only() {
    for good in ["00:00", "09:30", "23:59"] {
        assert_eq!(good.parse::<TimeOfDay>().unwrap().to_string(), good);
    }
    let bad = [
        "", "9:30", "09:3", "0930", "24:00", "09:60", "09.30", "09:30:00", "9:30 ", " 9:30", "9: 30",
        "+9:30", "-1:30", "٠٩:٣",
    ];
    for text in bad {
        let message = said(text.parse::<TimeOfDay>().map(|time| time.to_string()).unwrap_err());
        assert_eq!(message, format!("`{text}` is not a time of day written like 09:30"));
    }
}

#[test]
fn an_instant_is_written_in_one_spelling_only() {
    for (read, written) in [
        ("2026-04-11T08:15:30.123Z", "2026-04-11T08:15:30.123Z"),
        ("1970-01-01T00:00:00.000Z", "1970-01-01T00:00:00.000Z"),
        ("2024-02-29T23:59:59.999Z", "2024-02-29T23:59:59.999Z"),
    ] {
        assert_eq!(read.parse::<Instant>().map(|instant| instant.to_string()), Ok(written.to_owned()));
    }
    for bad in [
        "",
        "2026-04-11",
        "2026-04-11T08:15:30.123",
        "08:15:30.123Z",
        "2026-02-30T08:15:30.123Z",
        "2026-04-11T24:00:00.000Z",
        "1744359330",
    ] {
        let message = said(bad.parse::<Instant>().map(|instant| instant.to_string()).unwrap_err());
        assert_eq!(message, format!("`{bad}` is not an instant written like 2026-04-11T08:15:30.123Z"));
    }
}

#[test]
fn today_is_the_latest_date_anywhere_on_earth() {
    for (instant, today) in [
        ("2026-03-01T09:59:59.999Z", "2026-03-01"),
        ("2026-03-01T10:00:00.000Z", "2026-03-02"),
        ("2026-02-28T10:00:00.000Z", "2026-03-01"),
        ("2024-02-28T10:00:00.000Z", "2024-02-29"),
        ("2025-12-31T23:00:00.000Z", "2026-01-01"),
    ] {
        assert_eq!(instant.parse::<Instant>().unwrap().latest_civil_date(), day(today), "{instant}");
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn days_add_up_and_come_back(start in 0..60_000_u16, more in 0..40_000_u16) {
        let start = Day::FIRST.plus(start);
        let end = start.plus(more);
        prop_assert_eq!(end.days_since(start), i64::from(more));
        prop_assert_eq!(end.to_string().parse::<Day>(), Ok(end));
        prop_assert_eq!(end.next().before(), end);
        prop_assert!(start <= end);
    }

    #[test]
    fn no_text_makes_a_reader_fall_over(text in "\\PC{0,30}") {
        let day = text.parse::<Day>().map(|day| day.to_string());
        let time = text.parse::<TimeOfDay>().map(|time| time.to_string());
        for read in [day, time] {
            prop_assert!(read.is_err() || read == Ok(text.clone()));
        }
        prop_assert!(text.parse::<Instant>().is_err());
    }
}
