//! Unreadable entries: place, message, help.

use combclear_domain::journal::entry::{EntryFault, Envelope};
use combclear_domain::journal::{Draft, Kind};
use proptest::prelude::*;
use serde_json::{Value, json};

use super::drafts::envelopes;
use super::told::{Told, told};

const ID: &str = "0190f0a1-beef-7abc-8def-abcdefabcdef";
const OTHER: &str = "0190f0a1-cafe-7abc-8def-abcdefabcdef";

fn read(text: &str) -> Result<Draft, EntryFault> {
    Envelope::from_json(text).and_then(Envelope::read)
}

/// An entry with some parts replaced; null removes a part.
fn entry(kind: &str, body: &Value, parts: &Value) -> String {
    let mut entry = json!({ "id": ID, "on": "2026-04-11", "recorded_by": "k", "kind": kind, "body": body });
    for (key, part) in parts.as_object().unwrap() {
        if part.is_null() {
            entry.as_object_mut().unwrap().remove(key);
        } else {
            entry[key] = part.clone();
        }
    }
    entry.to_string()
}

fn fault(text: &str) -> Told {
    told(&read(text).map(|draft| format!("{draft:?}")).expect_err(text))
}

/// Compares the fault of a text with this pointer and parts of message and help.
fn check(text: &str, pointer: &str, message: &str, help: &str) {
    let fault = fault(text);
    assert_eq!(fault.pointer, pointer, "{text}: {fault:?}");
    assert!(fault.message.contains(message), "{text}: {fault:?}");
    assert!(fault.help.contains(help), "{text}: {fault:?}");
    assert!(!fault.message.ends_with('.') && !fault.help.ends_with('.'), "{fault:?}");
}

#[test]
fn an_unknown_kind_is_named_with_the_nearest_one() {
    let none = json!({});
    for (written, near) in [
        ("administraton", "administration"),
        ("Inspection", "inspection"),
        ("super_on", "supers_on"),
        ("strikeout", "strike_out"),
        ("colony_establised", "colony_established"),
    ] {
        let help = format!("did you mean `{near}`?");
        check(&entry(written, &none, &none), "/kind", &format!("`{written}` is not a kind of entry"), &help);
    }
    let fault = fault(&entry("weather", &none, &none));
    assert_eq!(
        (fault.pointer.as_str(), fault.message.as_str()),
        ("/kind", "`weather` is not a kind of entry")
    );
    for kind in Kind::ALL {
        assert!(fault.help.contains(kind.as_str()), "the help names `{}`", kind.as_str());
        assert_eq!(Kind::from_word(kind.as_str()), Some(*kind));
    }
}

#[test]
fn a_body_is_read_strictly_and_the_fault_points_at_its_field() {
    let with = |given: Value| json!({ "given": [{ "lot": "L", "each": 1, "colonies": ["A1"] }, given] });
    for (kind, body, pointer, message) in [
        ("inspection", json!({ "colony": "A1", "colour": "red" }), "/body/colour", "unknown field `colour`"),
        ("inspection", json!({}), "/body", "missing field `colony`"),
        ("inspection", Value::Null, "/body", "null"),
        ("inspection", json!("A1"), "/body", "A1"),
        ("inspection", json!({ "colony": 7 }), "/body/colony", "`7`"),
        (
            "inspection",
            json!({ "colony": "" }),
            "/body/colony",
            "`` cannot be the name of a colony: it is empty",
        ),
        ("inspection", json!({ "colony": " A1" }), "/body/colony", "it begins or ends with a space"),
        ("inspection", json!({ "colony": "A\n1" }), "/body/colony", "it contains a control character"),
        ("inspection", json!({ "colony": "a/b" }), "/body/colony", "it contains a `/`"),
        (
            "inspection",
            json!({ "colony": "a".repeat(81) }),
            "/body/colony",
            "it is longer than 80 characters",
        ),
        ("inspection", json!({ "colony": "A1", "brood": "some" }), "/body/brood", "`some`"),
        ("inspection", json!({ "colony": "A1", "seams": 256 }), "/body/seams", "`256`"),
        ("inspection", json!({ "colony": "A1", "feeder": "yes" }), "/body/feeder", "yes"),
        (
            "administration",
            with(json!({ "lot": "L", "each": -1, "colonies": [] })),
            "/body/given/1/each",
            "`-1` is not an amount",
        ),
        (
            "administration",
            with(json!({ "lot": "L", "each": 0.0001, "colonies": [] })),
            "/body/given/1/each",
            "at most three decimals",
        ),
        (
            "administration",
            with(json!({ "lot": "L", "each": "2", "colonies": [] })),
            "/body/given/1/each",
            "2",
        ),
        (
            "administration",
            with(json!({ "lot": "L", "each": 1, "colonies": ["A1", ""] })),
            "/body/given/1/colonies/1",
            "it is empty",
        ),
        (
            "administration",
            with(json!({ "lot": "L", "each": 1 })),
            "/body/given/1",
            "missing field `colonies`",
        ),
        ("administration", json!({ "given": [], "withdrawal_days": 1.5 }), "/body/withdrawal_days", "`1.5`"),
        ("administration", json!({ "given": [], "withdrawal_days": -1 }), "/body/withdrawal_days", "`-1`"),
        ("administration", json!({ "given": [], "continues": "first" }), "/body/continues", ""),
        (
            "site_conditions",
            json!({ "apiary": "E", "until": "2025-02-29" }),
            "/body/until",
            "`2025-02-29` is not a day of the calendar",
        ),
        (
            "lot_acquired",
            json!({ "lot": "L", "medicine": "m", "quantity": 1, "supplier": { "name": "n", "town": "t" } }),
            "/body/supplier/town",
            "unknown field `town`",
        ),
        (
            "leaflet_reading",
            json!({ "lot": "L", "terms": { "withdrawal_day": 0 } }),
            "/body/terms/withdrawal_day",
            "unknown field `withdrawal_day`",
        ),
        ("strike_out", json!({ "why": 1 }), "/body/why", "unknown field `why`"),
    ] {
        let corrects =
            if kind == "strike_out" { json!({ "corrects": OTHER, "reason": "r" }) } else { json!({}) };
        check(&entry(kind, &body, &corrects), pointer, message, "");
    }
}

#[test]
fn a_body_or_an_entry_that_is_a_list_without_names_is_not_read() {
    for (kind, body) in [
        ("colony_moved", json!(["A1", "East"])),
        ("supers_off", json!([["A1"], 0])),
        ("disposal", json!(["L", 1, "returned"])),
        ("administration", json!({ "given": [["L", 1, ["A1"]]] })),
        ("leaflet_reading", json!({ "lot": "L", "terms": ["on", 0, 0, "not_needed", 0, 0, 0, 1] })),
    ] {
        let text = entry(kind, &body, &json!({}));
        let fault = read(&text)
            .map(|draft| draft.body)
            .expect_err("fields have names, so that none is taken for another");
        assert!(fault.pointer.starts_with("/body"), "{fault:?}");
    }
    let list =
        json!([ID, "2026-04-11", null, "k", "colony_moved", { "colony": "A1", "to": "East" }, null, null]);
    assert!(read(&list.to_string()).is_err(), "an entry is an object");
}

#[test]
fn the_help_for_a_field_fits_the_fault() {
    let body = json!({ "colony": "A1" });
    check(&entry("inspection", &json!({}), &json!({})), "/body", "missing field", "add it");
    let unknown = json!({ "colony": "A1", "colour": "red" });
    check(&entry("inspection", &unknown, &json!({})), "/body/colour", "unknown field", "no such field");
    let twice =
        entry("inspection", &body, &json!({})).replace(r#""colony":"A1""#, r#""colony":"A1","colony":"A2""#);
    let fault = fault(&twice);
    assert!(fault.message.contains("duplicate field `colony`"), "{fault:?}");
    assert!(!fault.help.contains("no such field"), "there is such a field, only twice: {fault:?}");
}

#[test]
fn a_correction_names_what_it_corrects_and_says_why() {
    let body = json!({ "colony": "A1" });
    let corrected = |parts: Value| entry("inspection", &body, &parts);
    check(
        &corrected(json!({ "corrects": OTHER })),
        "/reason",
        "a correction must give its reason",
        "why the earlier entry was wrong",
    );
    for blank in ["", "   ", "\t\n"] {
        let text = corrected(json!({ "corrects": OTHER, "reason": blank }));
        check(&text, "/reason", "a correction must give its reason", "why the earlier entry was wrong");
    }
    for (field, text) in [("reason", "a\u{0}b"), ("reason", "\u{0}")] {
        let text = corrected(json!({ "corrects": OTHER, field: text }));
        check(&text, "/reason", "the text contains U+0000", "leave that sign out");
    }
    let copied = json!({ "copied_from": "red\u{0} notebook", "written_on": "2026-04-11" });
    check(&corrected(copied), "/copied_from", "the text contains U+0000", "leave that sign out");
    check(&corrected(json!({ "reason": "r" })), "/corrects", "no entry is corrected", "leave `reason` out");
    check(&corrected(json!({ "corrects": "the first", "reason": "r" })), "/corrects", "", "");
    check(
        &entry("strike_out", &json!({}), &json!({})),
        "/corrects",
        "a strike-out must name the entry",
        "`reason`",
    );
    let whole = read(&corrected(json!({ "corrects": OTHER, "reason": "a slip" }))).unwrap();
    let correction = whole.correction.unwrap();
    assert_eq!((correction.of.to_string().as_str(), correction.reason.as_str()), (OTHER, "a slip"));
}

#[test]
fn the_parts_around_a_body_are_read_strictly_too() {
    let body = json!({ "colony": "A1" });
    let with = |parts: Value| entry("inspection", &body, &parts);
    for (parts, pointer, message) in [
        (json!({ "on": "2025-02-29" }), "/on", "`2025-02-29` is not a day of the calendar"),
        (json!({ "on": "11.04.2026" }), "/on", "`11.04.2026` is not a date written like 2026-04-11"),
        (json!({ "on": "2200-01-01" }), "/on", "`2200-01-01` is not a day between 1900-01-01 and 2199-12-31"),
        (json!({ "on": 20_260_411 }), "/on", "20260411"),
        (json!({ "at": "9:30" }), "/at", "`9:30` is not a time of day written like 09:30"),
        (json!({ "at": "24:00" }), "/at", "`24:00` is not a time of day"),
        (json!({ "recorded_by": "" }), "/recorded_by", "`` cannot be the name of a person: it is empty"),
        (json!({ "recorded_by": null }), "", "missing field `recorded_by`"),
        (json!({ "body": null }), "", "missing field `body`"),
        (json!({ "kind": null }), "", "missing field `kind`"),
        (json!({ "on": null }), "", "missing field `on`"),
        (json!({ "id": null }), "/id", "the entry has no id"),
        (json!({ "id": "7" }), "/id", ""),
        (json!({ "seq": 7 }), "/seq", "unknown field `seq`"),
        (json!({ "hash": "00" }), "/hash", "unknown field `hash`"),
    ] {
        check(&with(parts), pointer, message, "");
    }
    check(&with(json!({ "on": "2025-02-29" })), "/on", "", "leap years");
    check(&with(json!({ "id": null })), "/id", "", "make a UUID for it");
}

#[test]
fn text_that_is_no_json_object_is_refused_with_its_place() {
    let whole = entry("inspection", &json!({ "colony": "A1" }), &json!({}));
    for cut in [
        "",
        "x",
        "[]",
        "7",
        "null",
        &whole[..whole.len() - 1],
        &whole[..40],
        &format!("{whole} {{}}"),
        &format!("{whole},"),
    ] {
        let fault = fault(cut);
        assert!(!fault.pointer.starts_with("/body"), "{cut}: {fault:?}");
        assert!(!fault.message.contains(" at line "), "{fault:?}");
        assert!(fault.message.contains("(near character ") && !fault.help.is_empty(), "{fault:?}");
    }
    assert!(read(&format!("  {whole}\t")).is_ok(), "space around an entry does no harm");
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_the_reader_fall_over(text in "\\PC{0,60}") {
        prop_assert!(read(&text).is_err());
    }

    #[test]
    fn an_entry_cut_short_is_not_read(envelope in envelopes(), at in any::<prop::sample::Index>()) {
        let text = envelope.to_string();
        let mut cut = at.index(text.len());
        while !text.is_char_boundary(cut) {
            cut -= 1;
        }
        prop_assert!(read(&text[..cut]).is_err(), "{}", &text[..cut]);
    }

    #[test]
    fn a_field_too_many_is_found_and_pointed_at(envelope in envelopes()) {
        let mut wrong = envelope;
        wrong["body"]["surplus"] = json!(1);
        let fault = fault(&wrong.to_string());
        prop_assert_eq!(fault.pointer.as_str(), "/body/surplus");
        prop_assert!(fault.message.starts_with("unknown field `surplus`"), "{:?}", fault);
    }
}
