//! Worked examples by jurisdiction.

use combclear_domain::Day;
use combclear_domain::journal::Kind;
use combclear_domain::rules::law::RecordSort;
use combclear_wording::retention::KeepUntil;
use serde_json::json;

use super::{Book, at_least, until};

/// Bought 1 May 2024, last dose 20 August 2026, the rest disposed of on 1 March 2028: all of it until 1 March 2033.
fn british() -> Book {
    let mut book = Book::of("gb");
    book.buy("2024-05-01", "liquid", "L", 3);
    book.write("2024-05-02", "leaflet_reading", json!({ "lot": "L", "terms": { "withdrawal_days": 0 } }));
    book.give("2025-08-20", &["L"]);
    book.give("2026-08-20", &["L"]);
    book.dispose("2028-03-01", "L", 1);
    book
}

#[test]
fn in_great_britain_five_years_run_from_the_last_use_or_disposal_of_the_lot() {
    let set = british().set("L", "2028-03-02");
    assert_eq!(set.entries.len(), 5);
    for entry in &set.entries {
        assert_eq!(until(&entry.keep), "2033-03-01", "{:?}", entry.entry.kind);
    }
    let KeepUntil::Until { decided_by, .. } = &set.keep else { panic!("{:?}", set.keep) };
    assert_eq!(
        decided_by.statement,
        "5 years from the last use or disposal of the lot (2028-03-01), by the law of Great Britain"
    );
    assert!(!decided_by.rule.sources.is_empty());
    assert_eq!(set.entries[0].entry.records, [RecordSort::Acquisition, RecordSort::Proof]);
}

#[test]
fn it_could_go_on_the_day_after_and_not_the_day_before_or_on_it() {
    for (on, could_go) in [("2033-02-28", false), ("2033-03-01", false), ("2033-03-02", true)] {
        let set = british().set("L", on);
        assert_eq!((set.could_go, set.could_go_from), (could_go, "2033-03-02".parse().ok()), "{on}");
    }
}

#[test]
fn while_some_is_left_the_count_still_runs_and_that_is_said() {
    let mut book = Book::of("gb");
    book.buy("2024-05-01", "liquid", "L", 3);
    book.give("2026-08-20", &["L"]);
    let set = book.set("L", "2199-12-31");
    let (day, because) = at_least(&set.keep);
    assert_eq!(day, "2031-08-20");
    assert_eq!(
        because,
        [
            "lot L: 2 pieces left on record, so the retention period may still move (record its use or disposal)"
        ]
    );
    assert!(!set.could_go && set.could_go_from.is_none());
    book.write_with(
        "2026-09-01",
        "disposal",
        json!({ "lot": "L", "quantity": 4, "how_and_where": "x", "count_corrected": true }),
        json!({}),
    );
    let (day, because) = at_least(&book.set("L", "2199-12-31").keep);
    assert_eq!(day, "2031-09-01");
    assert_eq!(
        because,
        [
            "lot L: 2 pieces more gone than acquired, so the retention period may still move (correct the entry that is wrong)"
        ]
    );
}

#[test]
fn strips_count_as_used_until_they_are_taken_out() {
    let mut book = Book::of("gb");
    book.buy("2026-01-01", "strips", "S", 1);
    let given = book.give("2026-08-20", &["S"]);
    let (day, because) = at_least(&book.set("S", "2199-12-31").keep);
    assert_eq!((day.as_str(), because.len()), ("2031-08-20", 1));
    assert_eq!(because, ["lot S: no record of removal from A (record the removal)"]);
    book.take_out("2026-10-01", &given);
    assert_eq!(until(&book.set("S", "2026-10-01").keep), "2031-10-01");
}

#[test]
fn strips_in_a_colony_that_ended_went_with_it() {
    let mut book = Book::of("gb");
    book.buy("2026-01-01", "strips", "S", 1);
    book.give("2026-08-20", &["S"]);
    book.write("2026-09-15", "colony_ended", json!({ "colony": "A", "cause": "wasps" }));
    assert_eq!(until(&book.set("S", "2026-10-01").keep), "2031-09-15");
}

#[test]
fn strips_that_went_along_into_another_colony_are_still_in() {
    let mut book = Book::of("gb");
    book.buy("2026-01-01", "strips", "S", 1);
    let given = book.give("2026-08-20", &["S"]);
    let body = json!({ "colony": "A", "into": "B", "strips": "went_along" });
    book.write("2026-09-15", "colony_united", body);
    let (day, because) = at_least(&book.set("S", "2026-10-01").keep);
    assert_eq!(
        (day.as_str(), because),
        ("2031-09-15", vec!["lot S: no record of removal from B (record the removal)".to_owned()])
    );
    book.write("2026-10-20", "removal", json!({ "administration": given, "colonies": ["B"] }));
    assert_eq!(until(&book.set("S", "2026-10-20").keep), "2031-10-20");
}

#[test]
fn where_nobody_said_whether_it_comes_out_the_count_still_runs() {
    let mut book = Book::of("gb");
    let body = json!({ "medicine": "dust", "pack_name": "dust", "unit": "piece" });
    book.write("2026-01-01", "medicine_described", body);
    book.buy("2026-01-01", "dust", "D", 1);
    book.give("2026-08-20", &["D"]);
    let (_, because) = at_least(&book.set("D", "2026-10-01").keep);
    let wanted =
        "lot D: not known whether it has to come out of A (record what the leaflet says, or the removal)";
    assert_eq!(because, [wanted]);
}

/// Any day of 2026, including the first and the last: until 31 December 2031.
#[test]
fn in_france_five_years_follow_the_year_of_the_last_entry() {
    for on in ["2026-01-01", "2026-08-20", "2026-12-31"] {
        let mut book = Book::of("fr");
        book.buy("2026-01-01", "liquid", "L", 1);
        book.give(on, &["L"]);
        assert_eq!(until(&book.set("L", on).keep), "2031-12-31", "{on}");
    }
    for (on, wanted) in [("2025-12-31", "2030-12-31"), ("2027-01-01", "2032-12-31")] {
        let mut book = Book::of("fr");
        book.buy("2025-01-01", "liquid", "L", 1);
        book.give(on, &["L"]);
        assert_eq!(until(&book.set("L", on).keep), wanted, "{on}");
    }
}

/// Made on 20 August 2026: until 20 August 2031. Before Article 108 that rule applies alone; since then the longer period
/// wins.
#[test]
fn in_germany_five_years_run_from_the_making_of_the_entry_or_longer_by_the_union() {
    let mut book = Book::of("de");
    book.buy("2026-08-20", "liquid", "L", 2);
    book.give("2026-08-20", &["L"]);
    book.dispose("2026-08-20", "L", 1);
    for entry in book.set("L", "2026-08-21").entries {
        let KeepUntil::Until { day, decided_by } = entry.keep else { panic!("{:?}", entry.keep) };
        // The ordinance knows no record of disposal.
        let of = if entry.entry.kind == Kind::Disposal { "eu" } else { "de" };
        assert_eq!((day.to_string(), decided_by.rule.jurisdiction.as_str()), ("2031-08-20".to_owned(), of));
    }
    let mut book = Book::of("de");
    book.buy("2020-03-01", "liquid", "L", 1);
    book.give("2021-08-20", &["L"]);
    let days: Vec<String> =
        book.set("L", "2021-08-21").entries.iter().map(|entry| until(&entry.keep)).collect();
    assert_eq!(days, ["2025-03-01", "2026-08-20"], "before 28 January 2022: from the making of each entry");
    let mut book = Book::of("de");
    book.buy("2022-03-01", "liquid", "L", 1);
    book.give("2023-08-20", &["L"]);
    let days: Vec<String> =
        book.set("L", "2023-08-21").entries.iter().map(|entry| until(&entry.keep)).collect();
    assert_eq!(days, ["2028-08-20", "2028-08-20"], "since: from the last use of the lot");
}

#[test]
fn in_the_united_states_two_years_run_from_the_day_it_happened() {
    let mut book = Book::of("us");
    book.buy("2026-01-10", "liquid", "L", 1);
    book.give("2026-08-20", &["L"]);
    let set = book.set("L", "2028-08-21");
    let days: Vec<String> = set.entries.iter().map(|entry| until(&entry.keep)).collect();
    assert_eq!(days, ["2028-08-20", "2028-08-20"], "the acquisition counts from the last use of the lot");
}

/// Common practice, no source: while some of a lot may still be given, its acquisition is needed, whatever the years count from.
#[test]
fn nothing_could_go_while_some_is_left_or_in_a_hive_whichever_rule_decides() {
    for (of, bought, given, least, could_go) in [
        // A law that was not read in its own text releases nothing.
        ("us", "2026-01-10", "2026-08-20", "2028-08-20", false),
        ("de", "2026-01-10", "2026-08-20", "2031-08-20", true),
        ("fr", "2026-01-10", "2026-08-20", "2031-12-31", false),
        ("gb", "2026-01-10", "2026-08-20", "2031-08-20", true),
    ] {
        let left = "lot S: 1 piece left on record, so the retention period may still move (record its use or disposal)";
        let inside = "lot S: no record of removal from A (record the removal)";
        let mut book = Book::of(of);
        book.buy(bought, "strips", "S", 2);
        let first = book.give(given, &["S"]);
        let still = |book: &Book, wanted: &[&str]| {
            let set = book.set("S", "2199-12-31");
            assert!(!set.could_go && set.could_go_from.is_none(), "{of}");
            assert_eq!(
                at_least(&set.keep),
                (least.to_owned(), wanted.iter().map(ToString::to_string).collect())
            );
            for entry in &set.entries {
                assert_eq!(at_least(&entry.keep).1, wanted, "{of} {:?}", entry.entry.kind);
            }
        };
        still(&book, &[left, inside]);
        book.take_out(given, &first);
        still(&book, &[left]);
        book.dispose(given, "S", 1);
        let set = book.set("S", "2199-12-31");
        assert_eq!((until(&set.keep).as_str(), set.could_go), (least, could_go), "{of}");
    }
}

/// Source: Regulation (EU) 2019/6, Article 108(4): member states may add requirements.
#[test]
fn where_only_the_unions_part_of_the_law_is_known_it_is_kept_at_least_so_long() {
    for of in ["se", "fi", "it"] {
        let mut book = Book::of(of);
        book.buy("2026-01-10", "liquid", "L", 1);
        book.give("2026-08-20", &["L"]);
        let set = book.set("L", "2199-12-31");
        let why = format!("only the Union's part of the law of `{of}` is known here");
        assert_eq!(at_least(&set.keep), ("2031-08-20".to_owned(), vec![why.clone()]));
        assert!(!set.could_go && set.could_go_from.is_none(), "{of}");
        let mut book = Book::of(of);
        book.buy("2021-01-10", "liquid", "L", 1);
        book.give("2021-08-20", &["L"]);
        let begin = format!("the rules of `{of}` known here begin on 2022-01-28");
        let missing = vec![why, begin];
        assert_eq!(book.set("L", "2199-12-31").keep, KeepUntil::NotKnown { missing });
    }
    let mut book = Book::of("eu");
    book.buy("2026-01-10", "liquid", "L", 1);
    book.give("2026-08-20", &["L"]);
    assert_eq!(until(&book.set("L", "2026-08-21").keep), "2031-08-20");
}

#[test]
fn the_law_of_the_day_on_which_a_colony_died_with_strips_in_it_bears() {
    for (moved, wanted) in
        [("2026-09-14", "2031-09-15"), ("2026-09-15", "2031-09-15"), ("2026-09-16", "2028-09-15")]
    {
        let mut book = Book::of("us");
        book.buy("2026-01-01", "strips", "S", 1);
        book.give("2026-08-20", &["S"]);
        book.write("2026-09-15", "colony_ended", json!({ "colony": "A", "cause": "wasps" }));
        book.write(moved, "holding_details", json!({ "keeper": "K", "jurisdiction": "gb" }));
        assert_eq!(until(&book.set("S", "2026-10-01").keep), wanted, "{moved}");
    }
    // In France the year of that day counts as the year of the last entry.
    let mut book = Book::of("fr");
    book.buy("2026-01-01", "strips", "S", 1);
    book.give("2026-08-20", &["S"]);
    book.write("2027-02-15", "colony_ended", json!({ "colony": "A", "cause": "starved" }));
    assert_eq!(until(&book.set("S", "2027-03-01").keep), "2032-12-31");
}

#[test]
fn in_northern_ireland_the_scheme_is_the_longest_and_wins() {
    let mut book = Book::of("ni");
    book.buy("2026-01-10", "liquid", "L", 1);
    book.give("2026-08-20", &["L"]);
    let KeepUntil::Until { day, decided_by } = book.set("L", "2026-08-21").keep else { panic!() };
    assert_eq!(day.to_string(), "2031-12-31");
    assert_eq!(
        decided_by.statement,
        "5 years from the end of the year of the last entry (2026-12-31), by a scheme or advice of Northern Ireland"
    );
}

#[test]
fn a_holding_that_comes_under_another_law_keeps_by_both() {
    let mut book = Book::of("us");
    book.buy("2024-05-01", "liquid", "L", 2);
    book.give("2025-05-01", &["L"]);
    let details = json!({ "keeper": "K", "jurisdiction": "gb" });
    book.write("2026-01-01", "holding_details", details);
    book.give("2026-05-01", &["L"]);
    for entry in book.set("L", "2026-06-01").entries {
        assert_eq!(until(&entry.keep), "2031-05-01", "{:?}", entry.entry.kind);
    }
}

#[test]
fn what_the_law_is_not_known_to_say_is_kept_and_named() {
    for (jurisdiction, missing) in [
        ("xz", "no law of `xz` is built in, so its retention period is not known"),
        ("ch", "the rules of `ch` known here begin on 2022-07-01"),
    ] {
        let mut book = Book::of(jurisdiction);
        book.buy("2022-01-10", "liquid", "L", 1);
        book.give("2022-06-30", &["L"]);
        let set = book.set("L", "2199-12-31");
        assert_eq!(set.keep, KeepUntil::NotKnown { missing: vec![missing.to_owned()] });
        assert!(!set.could_go);
    }
}

/// Five years follow the use or the disposal, not the day on which somebody found the invoice or read the leaflet again.
#[test]
fn an_invoice_attached_later_or_a_leaflet_read_later_moves_nothing() {
    let invoice =
        json!({ "lot": "L", "content": "0".repeat(64), "media_type": "application/pdf", "bytes": 100 });
    let reading = json!({ "lot": "L", "terms": { "withdrawal_days": 0 } });
    for (of, wanted) in
        [("gb", "2025-08-20"), ("ni", "2025-12-31"), ("fr", "2025-12-31"), ("de", "2025-08-20")]
    {
        let book = |later: &[(&str, &serde_json::Value)]| {
            let mut book = Book::of(of);
            book.buy("2020-08-20", "liquid", "L", 1);
            book.give("2020-08-20", &["L"]);
            for (kind, body) in later {
                book.write("2026-03-01", kind, (*body).clone());
            }
            until(&book.set("L", "2026-04-01").keep)
        };
        assert_eq!(book(&[]), wanted, "{of}");
        assert_eq!(book(&[("document_attached", &invoice)]), wanted, "{of}, with the invoice");
        if of == "gb" {
            assert_eq!(book(&[("leaflet_reading", &reading)]), wanted, "{of}, with the reading");
        }
    }
}

/// A rule that is known second hand or from memory may be shorter than the law: it releases nothing by itself.
#[test]
fn a_law_that_was_not_read_in_its_own_text_holds_back() {
    for (of, confidence) in [
        ("us", Some("second hand")),
        ("fr", Some("second hand")),
        ("ie", Some("second hand")),
        ("gb", None),
        ("ni", None),
        ("ch", None),
        ("de", None),
        ("eu", None),
    ] {
        let mut book = Book::of(of);
        book.buy("2026-01-10", "liquid", "L", 1);
        book.give("2026-08-20", &["L"]);
        let set = book.set("L", "2199-12-31");
        let said = match &set.keep {
            KeepUntil::AtLeast { because, .. } => because.clone(),
            KeepUntil::Until { .. } | KeepUntil::NotKnown { .. } => Vec::new(),
        };
        let wanted = confidence.map(|confidence| {
            format!("the law of `{of}` on this is known here only {confidence}, and its own text may ask for more (look it up)")
        });
        assert_eq!(said, Vec::from_iter(wanted.clone()), "{of}");
        assert_eq!((set.could_go, set.could_go_from.is_some()), (wanted.is_none(), wanted.is_none()), "{of}");
    }
}

#[test]
fn of_29_february_the_years_end_on_1_march_where_there_is_none() {
    let day = |text: &str| -> Day { text.parse().unwrap() };
    for (from, years, wanted) in [
        ("2024-02-28", 5, "2029-02-28"),
        ("2024-02-29", 5, "2029-03-01"),
        ("2024-03-01", 5, "2029-03-01"),
        ("2024-02-29", 4, "2028-02-29"),
        ("2199-06-01", 5, "2199-12-31"),
    ] {
        assert_eq!(day(from).plus_years(years), day(wanted), "{from}");
    }
    let mut book = Book::of("gb");
    book.buy("2024-01-10", "liquid", "L", 1);
    book.give("2024-02-29", &["L"]);
    assert_eq!(until(&book.set("L", "2024-03-01").keep), "2029-03-01");
}

/// Source: the note on retention in Great Britain: acquisition, proof and all uses are kept until the last of them may go.
#[test]
fn what_proves_a_purchase_is_kept_as_long_as_the_purchase() {
    let mut book = Book::of("gb");
    let bought = book.buy("2024-05-01", "liquid", "L", 2);
    let body = json!({ "content": "ab".repeat(32), "media_type": "image/png", "bytes": 1, "lot": "L" });
    let proof = book.write("2024-05-02", "document_attached", body);
    book.give("2026-08-20", &["L"]);
    book.dispose("2028-03-01", "L", 1);
    let set = book.set("L", "2030-01-01");
    let kept = |entry: &str| {
        let kept = set.entries.iter().find(|kept| kept.entry.entry.to_string() == entry).unwrap();
        serde_json::to_value(&kept.keep).unwrap()["day"].clone()
    };
    assert_eq!((kept(&bought), kept(&proof)), (json!("2033-03-01"), json!("2033-03-01")));
}
