//! Civil days and period counting, checked against an independent implementation.
//!
//! Source: the Python standard library's `datetime`, asked by `check_dates.py` beside this file. What a period blocks is
//! the policy `calendar-1`; that `day + n` is the right day of the right week is what Python knows.

use std::collections::BTreeSet;
use std::process::Command;

use combclear_domain::basics::calendar::{Day, first_free_day, last_blocked_day};
use combclear_testkit::entries::day;
use combclear_testkit::files::root;

const SCRIPT: &str = "tests/dates/check_dates.py";

/// The script's result for one day and one period.
struct Row {
    day: Day,
    days: u16,
    last_blocked: Option<Day>,
    first_free: Day,
    weekday: String,
    since_1970: i64,
}

#[test]
fn python_counts_the_same_days() {
    let rows = rows(&asked("python3").unwrap_or_else(|why| panic!("{why}")));
    assert!(rows.len() > 20_000, "only {} rows", rows.len());
    let epoch = day("1970-01-01");
    let mut wrong = Vec::new();
    for row in &rows {
        let Row { day, days, last_blocked, first_free, weekday, since_1970 } = row;
        let got = (
            last_blocked_day(*day, *days),
            first_free_day(*day, *days),
            day.weekday(),
            day.days_since(epoch),
        );
        if got != (*last_blocked, *first_free, weekday.as_str(), *since_1970) {
            wrong.push(format!(
                "{day} and {days} days: {last_blocked:?} {first_free} {weekday} {since_1970}, got {got:?}"
            ));
        }
        // And in reverse: the text parses to the day, and the sum lies as many days later as were added.
        let sum = day.plus(*days);
        if day.to_string().parse() != Ok(*day)
            || sum.days_since(*day) != i64::from(*days)
            || sum.next().before() != sum
        {
            wrong.push(format!("{day} and {days} days do not come back: {sum}"));
        }
    }
    assert!(wrong.is_empty(), "{} of {} rows:\n{}", wrong.len(), rows.len(), wrong.join("\n"));
}

#[test]
fn what_python_is_asked_covers_leap_days_centuries_and_both_ends() {
    let rows = rows(&asked("python3").unwrap_or_else(|why| panic!("{why}")));
    let days: BTreeSet<Day> = rows.iter().map(|row| row.day).collect();
    for wanted in
        ["1900-02-28", "1904-02-29", "2000-02-29", "2024-02-29", "2096-02-29", "2100-02-28", "2100-03-01"]
    {
        assert!(days.contains(&day(wanted)), "{wanted} is not asked");
    }
    for missing in ["1900-02-29", "2023-02-29", "2100-02-29", "2026-04-31"] {
        assert!(missing.parse::<Day>().is_err(), "{missing} is taken for a day");
    }
    let over_leap_day = |row: &&Row| row.day == day("2024-02-28") && row.days == 1;
    let row = rows.iter().find(over_leap_day).expect("one day after 28 February 2024 is asked");
    assert_eq!((row.last_blocked, row.first_free), (Some(day("2024-02-29")), day("2024-03-01")));
    let none = rows.iter().filter(|row| row.days == 0);
    assert!(none.clone().count() > 100 && none.into_iter().all(|row| row.last_blocked.is_none()));
    assert!(rows.iter().any(|row| row.since_1970 < 0), "no day before 1970 is asked");
    assert!(
        rows.iter().any(|row| row.first_free == Day::LAST || row.last_blocked == Some(Day::LAST)),
        "the last day"
    );
}

#[test]
fn without_python_the_test_fails_and_names_the_command() {
    let why = asked("no-such-python3").expect_err("there is no such program");
    assert!(why.contains("no-such-python3 tests/dates/check_dates.py"), "{why}");
}

/// The output of the script. Without Python this is an error that names the command, never a skipped test.
fn asked(python: &str) -> Result<String, String> {
    let by_hand = format!("run `{python} {SCRIPT}` in the root of the repository to see for yourself");
    let output = Command::new(python).arg(SCRIPT).current_dir(root()).output();
    let output =
        output.map_err(|error| format!("`{python}` cannot be run ({error}): install Python 3; {by_hand}"))?;
    if !output.status.success() {
        return Err(format!("{}{}; {by_hand}", String::from_utf8_lossy(&output.stderr), output.status));
    }
    String::from_utf8(output.stdout).map_err(|error| format!("{error}; {by_hand}"))
}

fn rows(csv: &str) -> Vec<Row> {
    let mut lines = csv.lines();
    assert_eq!(lines.next(), Some("day,n,last_blocked,first_free,weekday,days_since"));
    lines.map(row).collect()
}

fn row(line: &str) -> Row {
    let fields: Vec<&str> = line.split(',').collect();
    let [asked, days, last_blocked, first_free, weekday, since_1970] = fields.as_slice() else {
        panic!("`{line}` has not six fields");
    };
    Row {
        day: day(asked),
        days: days.parse().unwrap_or_else(|error| panic!("`{line}`: {error}")),
        last_blocked: (!last_blocked.is_empty()).then(|| day(last_blocked)),
        first_free: day(first_free),
        weekday: (*weekday).to_owned(),
        since_1970: since_1970.parse().unwrap_or_else(|error| panic!("`{line}`: {error}")),
    }
}
