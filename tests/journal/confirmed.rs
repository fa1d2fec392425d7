//! Confirmations of leaflet values: in words, as in older journals, and as values.

use combclear_domain::basics::topic::Topic;
use combclear_domain::journal::Draft;
use combclear_domain::journal::entry::{Entry, EntryFault, Envelope};
use combclear_domain::journal::event::{Body, Confirmed, LeafletReading};

use super::told::told;

fn read(confirms: &str) -> Result<Draft, EntryFault> {
    let text = format!(
        r#"{{"id":"0190f0a1-beef-7abc-8def-abcdefabcdef","on":"2026-04-11","recorded_by":"k","kind":"leaflet_reading","body":{}}}"#,
        body(confirms)
    );
    Envelope::from_json(&text).and_then(Envelope::read)
}

fn body(confirms: &str) -> String {
    format!(r#"{{"lot":"L","terms":{{}},"confirms":[{confirms}]}}"#)
}

fn confirmed(confirms: &str) -> Confirmed {
    let draft = read(confirms).unwrap_or_else(|fault| panic!("{confirms}: {fault:?}"));
    let Some(LeafletReading { confirms, .. }) = LeafletReading::of(&draft.event) else { panic!("{draft:?}") };
    confirms[0].clone()
}

#[test]
fn both_forms_are_read_and_kept_to_the_byte() {
    for confirms in [
        r#"{"topic":"brood","says":"brood absent"}"#,
        r#"{"topic":"brood","value":{"value":"absent"}}"#,
        r#"{"topic":"dose","value":{"amount":2,"per":"hive"}}"#,
        r#"{"topic":"temperature","value":{"window":"at_use","min_tenths_c":50}}"#,
        r#"{"topic":"not_with","value":{"text":"Not with others.","others":["feeding"]}}"#,
        r#"{"topic":"class","says":"a"},{"topic":"class","value":{"name":"a"}}"#,
    ] {
        let draft = read(confirms).unwrap_or_else(|fault| panic!("{confirms}: {fault:?}"));
        assert_eq!(*draft.body, body(confirms));
        let recorded = "2026-04-11T12:00:00.000Z".parse().unwrap();
        let sealed = Entry::seal(&"test".parse().unwrap(), draft, recorded, None);
        assert_eq!(Entry::from_json(&sealed.to_json()), Ok(sealed));
    }
}

#[test]
fn the_order_and_the_spelling_of_a_value_are_made_those_of_the_journal() {
    let written = r#"{"value":{"per":"hive","amount":2.0,"unit":null},"topic":"dose"}"#;
    let kept = r#"{"topic":"dose","value":{"amount":2,"per":"hive"}}"#;
    assert_eq!(*read(written).unwrap().body, body(kept));
    assert_eq!(confirmed(written), confirmed(kept));
    assert_eq!(confirmed(kept).topic(), Topic::Dose);
}

#[test]
fn a_confirmation_that_cannot_be_read_is_pointed_at() {
    let at = "/body/confirms/0";
    for (confirms, pointer, message) in [
        (
            r#"{"topic":"dose","value":{"amount":2,"per":"hive","colour":"red"}}"#,
            "/value/colour",
            "unknown field `colour`, expected one of `amount`,",
        ),
        (r#"{"topic":"brood","value":{"days":3}}"#, "/value/days", "unknown field `days`, expected `value`"),
        (r#"{"topic":"dose","value":{"amount":2}}"#, "/value", "missing field `per`"),
        (r#"{"topic":"dose","value":{"amount":"2","per":"hive"}}"#, "/value/amount", "\"2\""),
        (r#"{"topic":"dose","value":{"amount":2,"per":"hives"}}"#, "/value/per", "unknown word `hives`"),
        (r#"{"topic":"courses_per_year","value":{"count":256}}"#, "/value/count", "`256`"),
        (r#"{"topic":"needs","value":{"list":["hive_opened","luck"]}}"#, "/value/list/1", "`luck`"),
        (r#"{"topic":"season","value":{"from_day":"11-31","to_day":"01-31"}}"#, "/value/from_day", "11-31"),
        (r#"{"topic":"brood","value":"absent"}"#, "/value", "\"absent\""),
        (r#"{"topic":"brood","value":["absent"]}"#, "/value", "not a list"),
        (r#"{"topic":"brood","value":null}"#, "/value", "null"),
        (
            r#"{"topic":"brood","value":{"value":"absent"},"says":"brood absent"}"#,
            "",
            "`says` and `value` are both given",
        ),
        (r#"{"topic":"brood"}"#, "", "missing field `says` or `value`"),
        (r#"{"value":{"value":"absent"}}"#, "", "missing field `topic`"),
        (
            r#"{"topic":"brood","text":"absent"}"#,
            "/text",
            "unknown field `text`, expected one of `topic`, `says`, `value`",
        ),
        (r#"{"topic":"brood","says":"a","says":"b"}"#, "", "duplicate field `says`"),
        (
            r#"{"topic":"brood","value":{"value":"absent"},"value":{"value":"absent"}}"#,
            "",
            "duplicate field `value`",
        ),
        (
            r#"{"value":{"value":"absent"},"topic":"brood","value":{"value":"absent"}}"#,
            "",
            "duplicate field `value`",
        ),
        (r#"{"value":{"colour":"red"},"topic":"brood"}"#, "", "unknown field `colour`"),
        (r#"{"topic":"colour","value":{}}"#, "/topic", "`colour`"),
        (r#"["brood","brood absent"]"#, "", "expected an object with named fields, not a list"),
    ] {
        let fault = read(confirms).map(|draft| draft.body).expect_err(confirms);
        let fault = told(&fault);
        assert_eq!(fault.pointer, format!("{at}{pointer}"), "{confirms}: {fault:?}");
        assert!(fault.message.contains(message), "{confirms}: {fault:?}");
        assert!(!fault.help.is_empty(), "{confirms}: {fault:?}");
    }
}
