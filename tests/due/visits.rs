//! Which items share a visit, and items supplied by another question.

use combclear_domain::journal::EntryId;
use combclear_domain::questions::due::{DueKind, Item, ToDo, Weight};
use combclear_testkit::cases;
use combclear_testkit::entries::{Journal, day, uuid_of};

use super::typed;

/// A legal gap, as another question would supply it.
fn gap(word: &str, apiary: Option<&str>, from: &str, by: Option<&str>) -> Item {
    Item { from: Some(day(from)), ..undated(word, apiary, by) }
}

/// The same without a first day.
fn undated(word: &str, apiary: Option<&str>, by: Option<&str>) -> Item {
    let id: EntryId = uuid_of(word).parse().unwrap();
    let by = by.map(day);
    Item {
        kind: DueKind::LegalGap,
        key: format!("legal_gap:{word}"),
        uid: id,
        apiary: apiary.map(|apiary| apiary.parse().unwrap()),
        colonies: Vec::new(),
        from: None,
        by,
        from_without_brood: None,
        from_with_brood: None,
        weight: Weight::Must,
        overdue: by.is_some_and(|by| by < day("2026-05-10")),
        // What is told of it makes no difference to the visits.
        to_do: ToDo::AskFormerKeeper { since: day("2026-05-01") },
        anchor: id,
        grounds: vec![id],
        sequence: 1,
        recorded_at: "2026-05-01T00:00:00.000Z".parse().unwrap(),
    }
}

fn of(gaps: impl IntoIterator<Item = Item>) -> Vec<String> {
    let empty = typed(&Journal(Vec::new()).holding(), day("2026-05-10"), day("2026-06-10"), None);
    let report = empty.and(gaps);
    let visits = report.visits.iter().map(|visit| {
        let items: Vec<&str> =
            visit.items.iter().filter_map(|item| item.key.strip_prefix("legal_gap:")).collect();
        let overdue = if visit.overdue { "!" } else { "" };
        format!("{overdue}{} {}: {}", cases::day(visit.from), cases::day(visit.by), items.join(" "))
    });
    visits.collect()
}

#[test]
fn what_overlaps_is_one_visit_on_the_days_that_all_have() {
    let gaps = [
        gap("a", Some("East"), "2026-05-01", Some("2026-05-20")),
        gap("b", Some("East"), "2026-05-15", Some("2026-05-30")),
        gap("c", Some("East"), "2026-05-21", Some("2026-05-31")),
        gap("d", Some("West"), "2026-05-15", Some("2026-05-30")),
    ];
    assert_eq!(
        of(gaps),
        ["2026-05-15 2026-05-20: a b", "2026-05-15 2026-05-30: d", "2026-05-21 2026-05-31: c"]
    );
}

#[test]
fn what_is_overdue_stands_first_and_what_is_open_is_not_put_off() {
    let gaps = [
        gap("later", Some("East"), "2026-05-20", Some("2026-05-30")),
        gap("open", Some("East"), "2026-04-01", None),
        gap("late", Some("East"), "2026-04-01", Some("2026-05-09")),
        gap("at home", None, "2026-04-01", None),
    ];
    let visits = [
        "!2026-05-10 2026-05-10: late",
        "2026-05-10 -: open",
        "2026-05-10 -: at home",
        "2026-05-20 2026-05-30: later",
    ];
    assert_eq!(of(gaps), visits);
}

#[test]
fn what_begins_after_the_days_asked_about_is_left_out_and_what_is_overdue_never_is() {
    let gaps = [
        gap("on the last day", None, "2026-06-10", None),
        gap("after it", None, "2026-06-11", None),
        gap("long ago", None, "2024-01-01", Some("2024-01-02")),
    ];
    assert_eq!(of(gaps), ["!2026-05-10 2026-05-10: long ago", "2026-06-10 -: on the last day"]);
}

#[test]
fn what_has_no_first_day_gets_none_from_what_stands_beside_it_and_is_never_left_out() {
    let gaps = [
        gap("dated", Some("East"), "2026-05-01", None),
        undated("take out", Some("East"), None),
        undated("dose", Some("East"), Some("2026-06-20")),
        undated("late", Some("East"), Some("2026-05-09")),
        undated("elsewhere", Some("West"), None),
    ];
    let visits = [
        "!2026-05-10 2026-05-10: late",
        "- 2026-06-20: dose take out",
        "- -: elsewhere",
        "2026-05-10 -: dated",
    ];
    assert_eq!(of(gaps), visits);
}
