//! Due items as an iCalendar feed, read by a parser that shares no code with the writer.
//!
//! Source: RFC 5545, sections 3.1 (content lines), 3.3.4 (dates), 3.3.11 (text), 3.6.1 (events), 3.8 (properties).

use std::collections::BTreeMap;

use combclear_domain::basics::calendar::Day;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::entry::EntryId;
use combclear_domain::questions::due::{Due, DueKind, Item, ToDo, Weight};
use combclear_domain::questions::options::Span;
use combclear_papers::calendar::calendar;
use combclear_testkit::files::demo_holding;
use combclear_wording::Words;
use combclear_wording::due::{DueItem, DueReport, DueVisit};
use ical::parser::ical::component::{IcalCalendar, IcalEvent, IcalTodo};
use proptest::prelude::*;

fn report(from: &str, to: &str) -> DueReport {
    let span = Span::new(from.parse().unwrap(), to.parse().unwrap()).unwrap();
    of_holding(&demo_holding(), span)
}

fn of_holding(holding: &Holding, span: Span) -> DueReport {
    let (leaflets, laws) = (combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
    DueReport::of(Words::english(), holding, Due::of(holding, leaflets, laws, span, None))
}

/// A report with one item of this text and these days.
fn with_item(text: &str, from: Option<Day>, by: Option<Day>, sequence: u64) -> DueReport {
    let uid: EntryId = EntryId(uuid::Uuid::from_u128(7));
    let empty = Holding::new("one, two; three\\four".parse().unwrap());
    let span = Span::new("2026-04-18".parse().unwrap(), "2026-06-16".parse().unwrap()).unwrap();
    let apiary = Some("Far, far; away".parse().unwrap());
    let item = Item {
        kind: DueKind::LegalGap,
        key: "legal_gap:7".to_owned(),
        uid,
        apiary: apiary.clone(),
        colonies: vec!["A 1".parse().unwrap(), "Ä2".parse().unwrap()],
        from,
        by,
        from_without_brood: None,
        from_with_brood: None,
        weight: Weight::Must,
        overdue: false,
        to_do: ToDo::AskFormerKeeper { since: span.from() },
        anchor: uid,
        grounds: vec![uid],
        sequence,
        recorded_at: "2026-04-11T08:15:30.987Z".parse().unwrap(),
    };
    let item = DueItem { item, title: "a title".to_owned(), text: text.to_owned() };
    let visit = DueVisit { apiary, overdue: true, from, by, items: vec![item] };
    DueReport { visits: vec![visit], ..of_holding(&empty, span) }
}

/// The events of a calendar by id, as the other parser reads them. It leaves escapes as they are.
fn events(text: &str) -> BTreeMap<String, BTreeMap<String, String>> {
    let calendar = parsed(text);
    let read = |event: IcalEvent| {
        let mut read = properties(event.properties);
        for alarm in event.alarms {
            let of = |name: &str| {
                let property = alarm.properties.iter().find(|property| property.name == name).unwrap();
                let related = property.params.iter().flatten().find(|(name, _)| name == "RELATED");
                let related = related.map_or_else(String::new, |(_, of)| format!("{} ", of[0]));
                related + property.value.as_deref().unwrap()
            };
            assert_eq!((of("ACTION").as_str(), &of("DESCRIPTION")), ("DISPLAY", &read["SUMMARY"]));
            assert_eq!(read.insert("TRIGGER".to_owned(), of("TRIGGER")), None, "one alarm at most");
        }
        read
    };
    by_id(calendar.events.into_iter().map(read).collect())
}

/// The to-dos of a calendar by id.
fn to_dos(text: &str) -> BTreeMap<String, BTreeMap<String, String>> {
    let calendar = parsed(text);
    let read = |to_do: IcalTodo| {
        assert!(to_do.alarms.is_empty());
        properties(to_do.properties)
    };
    by_id(calendar.todos.into_iter().map(read).collect())
}

fn parsed(text: &str) -> IcalCalendar {
    let mut calendars = ical::IcalParser::new(text.as_bytes());
    let calendar = calendars.next().unwrap().unwrap();
    assert!(calendars.next().is_none(), "one calendar");
    assert!(calendar.alarms.is_empty());
    calendar
}

fn properties(properties: Vec<ical::property::Property>) -> BTreeMap<String, String> {
    let mut read = BTreeMap::new();
    for property in properties {
        let date = property.params.iter().flatten().any(|(name, of)| name == "VALUE" && of[0] == "DATE");
        assert_eq!(date, property.name.starts_with("DT") && property.name != "DTSTAMP", "{}", property.name);
        let before = read.insert(property.name.clone(), property.value.unwrap());
        assert_eq!(before, None, "{} stands once", property.name);
    }
    read
}

fn by_id(read: Vec<BTreeMap<String, String>>) -> BTreeMap<String, BTreeMap<String, String>> {
    let count = read.len();
    let by_id: BTreeMap<_, _> =
        read.into_iter().map(|properties| (properties["UID"].clone(), properties)).collect();
    assert_eq!(by_id.len(), count, "ids are unique");
    by_id
}

/// Unescaped text (section 3.3.11).
fn unescaped(text: &str) -> String {
    let mut letters = text.chars();
    let mut plain = String::new();
    while let Some(letter) = letters.next() {
        match letter {
            '\\' => match letters.next().unwrap() {
                'n' | 'N' => plain.push('\n'),
                other @ ('\\' | ',' | ';') => plain.push(other),
                other => panic!("`\\{other}` is no escape"),
            },
            ',' | ';' => panic!("a bare `{letter}` in {text}"),
            letter => plain.push(letter),
        }
    }
    plain
}

fn date(day: Day) -> String {
    day.to_string().replace('-', "")
}

#[track_caller]
fn check_lines(text: &str) {
    assert!(text.ends_with("\r\n"));
    for line in text.split_terminator("\r\n") {
        assert!(line.len() <= 75, "{} octets: {line}", line.len());
        assert!(!line.is_empty() && !line.contains(['\r', '\n']), "{line:?}");
    }
}

#[test]
fn every_item_of_the_demo_with_a_day_is_an_event_of_whole_days_with_its_id_and_its_sequence_and_one_without_a_to_do()
 {
    let report = report("2026-08-29", "2026-10-27");
    let text = calendar(Words::english(), &report);
    check_lines(&text);
    let events = events(&text);
    let to_dos = to_dos(&text);
    assert_eq!(events.len() + to_dos.len(), report.items().count());
    assert!(events.len() > 15, "{}", events.len());
    for DueItem { item, title, text } in report.items() {
        let id = item.uid.to_string();
        let days: Vec<Day> = item.from.into_iter().chain(item.by).collect();
        let (first, last) = if item.overdue {
            (Some(&report.from), Some(report.from))
        } else {
            (days.iter().min(), item.by.or(item.from))
        };
        let event = match (first, last) {
            (Some(first), Some(last)) => {
                let event = &events[&id];
                assert_eq!(event["DTSTART"], date(*first), "{}", item.key);
                assert_eq!(event["DTEND"], date(last.next()), "{}", item.key);
                event
            }
            _ => &to_dos[&id],
        };
        assert_eq!(event["SEQUENCE"], item.sequence.to_string());
        assert_eq!(unescaped(&event["DESCRIPTION"]), format!("{text}\n{}", report.notice));
        let overdue = if item.overdue { "overdue: " } else { "" };
        assert!(unescaped(&event["SUMMARY"]).starts_with(&format!("{overdue}{title}")));
        let alarm = match item.weight {
            Weight::Must if item.overdue => Some("PT32400S"),
            Weight::Must if item.by.is_some() => Some("END -PT140400S"),
            _ => None,
        };
        let found = event.get("TRIGGER").map(|trigger| trigger.trim_start_matches("START "));
        assert_eq!(found, alarm, "{}", item.key);
        let apiary = item.apiary.as_ref().map(ToString::to_string);
        assert_eq!(event.get("LOCATION").map(|text| unescaped(text)), apiary);
        let recorded_at = demo_holding().entry(item.grounds[0]).unwrap().recorded_at;
        assert!(item.recorded_at >= recorded_at, "{}", item.key);
        assert_eq!(event["DTSTAMP"].len(), "20260411T081530Z".len());
    }
}

#[test]
fn the_same_task_keeps_its_id_from_day_to_day() {
    let (one, next) = (report("2026-08-29", "2026-10-27"), report("2026-08-30", "2026-10-27"));
    let (before, after) =
        (events(&calendar(Words::english(), &one)), events(&calendar(Words::english(), &next)));
    let kept = before.iter().filter(|(id, event)| after.get(*id) == Some(*event)).count();
    // What is overdue moves to the day asked about.
    let overdue = one.items().filter(|due| due.item.overdue).count();
    assert!(kept + 2 + overdue >= before.len(), "{kept} of {}", before.len());
    assert_eq!(calendar(Words::english(), &one), calendar(Words::english(), &one));
}

#[test]
fn an_item_without_a_last_day_is_an_event_of_its_first_day() {
    let day = "2026-12-31".parse().unwrap();
    let events = events(&calendar(Words::english(), &with_item("text", Some(day), None, 1)));
    let event = events.values().next().unwrap();
    assert_eq!((event["DTSTART"].as_str(), event["DTEND"].as_str()), ("20261231", "20270101"));
}

#[test]
fn an_item_of_which_nobody_stated_the_first_day_is_an_event_of_its_last() {
    let last = "2026-05-09".parse().unwrap();
    let events = events(&calendar(Words::english(), &with_item("text", None, Some(last), 1)));
    let event = events.values().next().unwrap();
    assert_eq!((event["DTSTART"].as_str(), event["DTEND"].as_str()), ("20260509", "20260510"));
}

#[test]
fn an_item_without_any_day_is_a_to_do_and_names_none() {
    let text = calendar(Words::english(), &with_item("text", None, None, 1));
    assert!(events(&text).is_empty());
    let to_dos = to_dos(&text);
    let to_do = to_dos.values().next().unwrap();
    let named: Vec<&String> = to_do.keys().filter(|name| *name != "DTSTAMP").collect();
    assert!(!named.iter().any(|name| name.starts_with("DT") || *name == "DUE"), "{named:?}");
    assert_eq!(unescaped(&to_do["SUMMARY"]), "a title (A 1, Ä2)");
}

#[test]
fn the_end_is_the_day_after_the_last_over_the_end_of_february_too() {
    for (from, by, end) in [
        ("2028-02-28", "2028-02-28", "20280229"),
        ("2028-02-01", "2028-02-29", "20280301"),
        ("2027-02-01", "2027-02-28", "20270301"),
        // If the last permitted day comes before the first, the event is on the last permitted day.
        ("2027-03-05", "2027-03-01", "20270302"),
    ] {
        let report = with_item("text", Some(from.parse().unwrap()), Some(by.parse().unwrap()), 1);
        let events = events(&calendar(Words::english(), &report));
        let event = events.values().next().unwrap();
        assert_eq!(event["DTEND"], end);
        assert!(event["DTSTART"] < event["DTEND"]);
    }
}

#[test]
fn past_the_last_nameable_day_no_end_is_named_and_a_sequence_stays_a_whole_number_of_the_standard() {
    let events =
        events(&calendar(Words::english(), &with_item("text", Some(Day::LAST), Some(Day::LAST), u64::MAX)));
    let event = events.values().next().unwrap();
    assert_eq!((event.get("DTEND"), event["SEQUENCE"].as_str()), (None, "2147483647"));
    assert_eq!(event["DTSTAMP"], "20260411T081530Z");
}

#[test]
fn names_with_marks_of_the_format_are_escaped() {
    let text = calendar(Words::english(), &with_item("text", Some("2026-05-01".parse().unwrap()), None, 1));
    assert!(text.contains("\r\nNAME:Combclear: what is due\\, one\\, two\\; three\\\\four\r\n"), "{text}");
    let events = events(&text);
    let event = events.values().next().unwrap();
    assert_eq!(unescaped(&event["LOCATION"]), "Far, far; away");
    assert_eq!(unescaped(&event["SUMMARY"]), "a title (A 1, Ä2)");
}

#[test]
fn a_calendar_of_nothing_is_a_calendar() {
    let empty = Holding::new("empty".parse().unwrap());
    let span = Span::new("2026-04-18".parse().unwrap(), "2026-06-16".parse().unwrap()).unwrap();
    let report = of_holding(&empty, span);
    insta::assert_snapshot!(calendar(Words::english(), &report).replace("\r\n", "\n"));
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    // Begins with a letter: the other parser loses a leading colon.
    fn any_text_comes_back_as_it_was_and_no_line_is_too_long(said in "[a-z][ -~äß🐝,;\\\\\n\t]{0,300}") {
        let text = calendar(Words::english(), &with_item(&said, Some("2026-05-01".parse().unwrap()), None, 1));
        check_lines(&text);
        let unfolded = text.replace("\r\n ", "");
        let line = unfolded.lines().find_map(|line| line.strip_prefix("DESCRIPTION:")).unwrap();
        let wanted: String = said.chars().filter(|letter| *letter == '\n' || !letter.is_control()).collect();
        prop_assert!(unescaped(line).starts_with(&wanted), "{} {}", line, wanted);
        let events = events(&text);
        prop_assert_eq!(&events.values().next().unwrap()["DESCRIPTION"], line);
    }
}

/// A phone shows only the summary of an event, so it must say that something depends on a removal.
#[test]
fn a_free_day_that_turns_on_a_removal_says_so_in_its_summary() {
    let free: Vec<(String, bool)> = report("2026-08-29", "2026-10-27")
        .items()
        .filter(|item| item.item.kind == DueKind::SupersFree)
        .map(|item| (item.title.clone(), item.text.contains("if everything is out")))
        .collect();
    assert!(free.iter().any(|(_, turns)| *turns) && free.iter().any(|(_, turns)| !turns), "{free:?}");
    for (title, turns) in free {
        assert_eq!(title.contains("if everything is out"), turns, "{title}");
    }
}
