//! Temperature windows of treatments, against an independent calculation on real weather.
//!
//! Source: daily temperatures of the Python package aquacrop 3.1.0 (see `README.md` here); `windows.json` was worked out from
//! them by `make_windows.py`, which shares no code with this program. The monthly counts are also those of a table that was
//! computed with pandas; DIFFERENCE: two of its counts change by rounding to one decimal, as the script says.

use std::collections::BTreeMap;

use combclear_domain::basics::calendar::Day;
use combclear_domain::basics::topic::Topic;
use combclear_domain::facts::holding::Holding;
use combclear_domain::questions::options::{About, Ask, ColonyOptions, Span, State};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_testkit::cases::word;
use combclear_testkit::entries::holding;
use combclear_testkit::files::root;
use serde::Deserialize;
use serde_json::json;

/// The excerpts, and the year of each.
const EXCERPTS: [(&str, i32); 3] =
    [("brussels-2003", 2003), ("northumberland-2010", 2010), ("cambridge-2018", 2018)];

/// The rules of `windows.json`, each as a leaflet of its own: temperature rules and the least stay in days.
const RULES: [(&str, u16, &[&str]); 8] = [
    (
        "formic_strip",
        7,
        &[
            "window = \"maximum_on_placing_day\"\nmin_c = 10.0\nmax_c = 29.5",
            "window = \"maximum_in_first_days\"\nfirst_days = 3\nmax_c = 33.0",
        ],
    ),
    ("thymol_gel", 28, &["window = \"maximum_over_stay\"\nmin_c = 15.0\nmax_c = 40.0"]),
    ("thymol_blend", 28, &["window = \"maximum_over_stay\"\nmax_c = 30.0"]),
    ("mean_15", 28, &["window = \"mean_over_stay\"\nmin_c = 15.0"]),
    ("oxalic_solution", 1, &["window = \"at_use\"\nmin_c = 3.0"]),
    ("lactic_acid", 1, &["window = \"at_use\"\nmin_c = 4.0\nmax_c = 10.0"]),
    // For the counts by month.
    ("formic", 7, &["window = \"maximum_on_placing_day\"\nmin_c = 10.0\nmax_c = 29.5"]),
    ("thymol", 1, &["window = \"mean_over_stay\"\nmin_c = 15.0"]),
];

#[derive(Deserialize)]
struct Windows {
    excerpts: BTreeMap<String, Excerpt>,
}

#[derive(Deserialize)]
struct Excerpt {
    months: BTreeMap<String, BTreeMap<String, Counts>>,
    starts: BTreeMap<String, BTreeMap<String, Vec<(Day, Day)>>>,
}

#[derive(Deserialize, Debug, PartialEq)]
struct Counts {
    met: usize,
    broken: usize,
    unknown: usize,
}

#[test]
fn every_start_day_is_what_was_worked_out_apart() {
    let windows = windows();
    for (name, year) in EXCERPTS {
        let excerpt = windows.excerpts.get(name).unwrap();
        let report = report(name, year, 7, 10);
        for (rule, wanted) in &excerpt.starts {
            let got = states(&report, rule);
            for (state, ranges) in wanted {
                let days = |(first, last): &(Day, Day)| days(*first, *last);
                let wanted: Vec<Day> = ranges.iter().flat_map(days).collect();
                let got: Vec<Day> =
                    got.iter().filter(|(_, got)| word(*got) == *state).map(|(day, _)| *day).collect();
                assert_eq!(got, wanted, "{name}: {rule}, {state}");
            }
        }
        assert_eq!(excerpt.starts.len(), 6, "{name}");
    }
}

#[test]
fn the_days_of_each_month_are_as_many_as_counted_apart() {
    let windows = windows();
    for (name, year) in EXCERPTS {
        let report = report(name, year, 7, 10);
        for (month, counts) in &windows.excerpts.get(name).unwrap().months {
            for rule in ["formic", "thymol"] {
                let of_month = states(&report, rule);
                let of_month = of_month.iter().filter(|(day, _)| day.to_string().starts_with(month));
                let count = |wanted: State| of_month.clone().filter(|(_, state)| *state == wanted).count();
                let got = Counts {
                    met: count(State::Met),
                    broken: count(State::Broken),
                    unknown: count(State::Unknown),
                };
                assert_eq!(Some(&got), counts.get(rule), "{name}: {rule} days of {month}");
            }
        }
    }
}

#[test]
fn days_without_a_temperature_are_not_known() {
    // The excerpt ends with November: a stay of 28 days from 4 November would end on 1 December.
    let report = report("brussels-2003", 2003, 11, 11);
    let got = states(&report, "thymol_blend");
    for (day, state) in got {
        let known = day <= "2003-11-03".parse().unwrap();
        assert_eq!(state, if known { State::Met } else { State::Unknown }, "{day}");
    }
}

/// The options of a colony with the temperatures of an excerpt, for the days of some months.
fn report(name: &str, year: i32, first_month: u32, last_month: u32) -> ColonyOptions {
    let day = |month, day| Day::new(year, month, day).unwrap();
    let last = if last_month == 11 { 30 } else { 31 };
    let span = Span::new(day(first_month, 1), day(last_month, last)).unwrap();
    let ask = Ask { as_of: day(12, 31), ..Ask::about(span) };
    ColonyOptions::of(&with_weather(name, year), &leaflets(), &"A1".parse().unwrap(), &ask)
}

fn with_weather(name: &str, year: i32) -> Holding {
    let text = std::fs::read_to_string(root().join(format!("tests/weather/{name}.csv"))).unwrap();
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let days: Vec<serde_json::Value> = lines
        .map(|line| {
            let fields: Vec<&str> = line.split(',').collect();
            let [day, min, max] = fields[..] else { panic!("{line}") };
            let number = |text: &str| serde_json::from_str::<serde_json::Number>(text).unwrap();
            json!({ "day": day, "min_c": number(min), "max_c": number(max) })
        })
        .collect();
    assert_eq!(days.len(), 153, "{name}");
    let on = format!("{year}-12-31");
    let entry = |on: &str, kind: &str, body: serde_json::Value| {
        toml::Value::try_from(json!({ "on": on, "kind": kind, "body": body })).unwrap()
    };
    let first = format!("{year}-01-01");
    let entries = [
        entry(&first, "holding_details", json!({ "keeper": "tester", "jurisdiction": "zz" })),
        entry(&first, "apiary_details", json!({ "apiary": "East" })),
        entry(&first, "colony_established", json!({ "colony": "A1", "apiary": "East", "medicines": "none" })),
        entry(&on, "temperature", json!({ "apiary": "East", "stage": "measured", "days": days })),
    ];
    holding(&entries).unwrap()
}

/// The combined state of the temperature rules of one leaflet on each start day.
fn states(report: &ColonyOptions, leaflet: &str) -> Vec<(Day, State)> {
    let id = leaflet.replace('_', "-");
    let option = report.options.iter().find(|option| option.leaflet.id.as_str() == id).unwrap();
    let conditions: Vec<_> = option
        .conditions
        .iter()
        .filter(|condition| condition.about == About::Topic(Topic::Temperature))
        .collect();
    assert!(!conditions.is_empty(), "{leaflet} has no temperature rule");
    days(report.asked.from, report.asked.to)
        .map(|day| {
            let on_day = conditions.iter().map(|condition| {
                condition.runs.iter().find(|run| run.from <= day && day <= run.to).unwrap().state
            });
            (day, on_day.reduce(State::and).unwrap())
        })
        .collect()
}

fn days(first: Day, last: Day) -> impl Iterator<Item = Day> {
    std::iter::successors(Some(first), |day| Some(day.next())).take_while(move |day| *day <= last)
}

fn windows() -> Windows {
    let text = std::fs::read_to_string(root().join("tests/weather/windows.json")).unwrap();
    serde_json::from_str(&text).unwrap()
}

fn leaflets() -> Leaflets {
    let common = "from = 2000-01-01\nforce = \"label\"\nsource = [\"T\"]\nconfidence = \"document\"\nchecked_on = 2026-01-01\n";
    let rule = |keys: &str| format!("\n[[rule]]\n{keys}\n{common}");
    let files: Vec<(String, String)> = RULES
        .iter()
        .map(|(name, stay, temperatures)| {
            let id = name.replace('_', "-");
            let mut text = format!(
                "format = 1\nid = \"{id}\"\njurisdiction = \"zz\"\ntitle = \"{id}\"\nactives = [\"testing agent\"]\n\
                 form = \"strip\"\nstrength = \"1 mg\"\nunit = \"strip\"\nrelease = \"slow\"\n\n\
                 [[source]]\nid = \"T\"\ntitle = \"windows.json of this test\"\ncountry = \"zz\"\nkind = \"authority\"\n"
            );
            text.push_str(&rule("kind = \"doses\"\ncount = 1"));
            text.push_str(&rule(&format!("kind = \"stay_min\"\ndays = {stay}")));
            for temperature in *temperatures {
                text.push_str(&rule(&format!("kind = \"temperature\"\n{temperature}")));
            }
            (format!("zz/{id}.toml"), text)
        })
        .collect();
    let loaded = Leaflets::load(files.iter().map(|(path, text)| (path.as_str(), text.as_str())));
    loaded.unwrap_or_else(|faults| panic!("{faults:?}"))
}
