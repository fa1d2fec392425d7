//! Each kind of entry as a form: what it says of a field holds when a body is read.

use combclear_domain::journal::fault::Unreadable;
use combclear_domain::journal::form::{Input, blanks, faults};
use combclear_domain::journal::{Draft, EntryId, Event, Kind};
use serde_json::{Map, Value, json};

use super::told::told;

/// Bodies of every kind, as the demo journal and the rest of the kinds have them.
fn bodies() -> Vec<(Kind, Map<String, Value>)> {
    let demo = include_str!("../../demo/holding.jsonl");
    let rows = demo.lines().skip(1).filter_map(|line| serde_json::from_str::<Value>(line).ok());
    let rows = rows.filter(|row| row["kind"].is_string());
    let of_demo =
        rows.map(|row| (Kind::from_word(row["kind"].as_str().unwrap()).unwrap(), row["body"].to_string()));
    let others = [
        (
            Kind::TemperatureNormals,
            json!({"apiary": "A", "months": [{"month": 1, "min_c": -2, "max_c": 4.5}]}),
        ),
        (Kind::LotOpened, json!({"lot": "L"})),
        (
            Kind::VetLot,
            json!({"lot": "V", "medicine": "M", "vet": "V. Vet", "batch": "B", "expiry": "2028-05-31"}),
        ),
        (Kind::Harvest, json!({"harvest_lot": "H 1", "colonies": ["C"], "kilograms": 12.5})),
    ];
    let others = others.map(|(kind, body)| (kind, body.to_string()));
    let read = |(kind, body): (Kind, String)| (kind, serde_json::from_str(&body).unwrap());
    of_demo.chain(others).map(read).collect()
}

#[test]
fn a_form_finds_no_fault_in_a_body_that_can_be_read() {
    for (kind, body) in bodies() {
        let text = Value::Object(body).to_string();
        assert!(Event::read(kind, &text).is_ok(), "{text}");
        assert_eq!(faults(kind, &text), [], "{text}");
    }
}

#[test]
fn a_field_that_a_form_needs_is_the_one_without_which_a_body_cannot_be_read() {
    let mut kinds: Vec<Kind> = Vec::new();
    for (kind, body) in bodies() {
        kinds.push(kind);
        for field in kind.fields() {
            let mut without = body.clone();
            without.remove(field.name);
            let text = Value::Object(without).to_string();
            let read = Event::read(kind, &text);
            assert_eq!(read.is_err(), field.needed, "{kind:?} without {}", field.name);
            let found = faults(kind, &text);
            assert_eq!(
                found.iter().map(|fault| &fault.what).collect::<Vec<_>>(),
                read.err().iter().map(|fault| &fault.what).collect::<Vec<_>>()
            );
        }
    }
    let unseen = Kind::ALL.iter().filter(|kind| !kinds.contains(kind));
    // The archive step makes its entries by itself.
    assert_eq!(unseen.collect::<Vec<_>>(), [&Kind::Archived]);
}

#[test]
fn no_two_blanks_of_a_form_have_the_same_key() {
    for kind in Kind::ALL {
        let mut keys: Vec<String> = blanks(*kind).into_iter().map(|blank| blank.key).collect();
        keys.sort_unstable();
        let count = keys.len();
        keys.dedup();
        assert_eq!(keys.len(), count, "{kind:?}");
    }
}

#[test]
fn a_blank_is_needed_only_if_everything_around_it_is() {
    let supplier = blanks(Kind::LotAcquired).into_iter().find(|blank| blank.key == "supplier").unwrap();
    assert_eq!((supplier.path.as_slice(), supplier.needed), (&["supplier", "name"][..], false));
    let lot = blanks(Kind::Administration).into_iter().find(|blank| blank.key == "lot").unwrap();
    assert_eq!((lot.path.as_slice(), lot.needed), (&["given", "lot"][..], true));
    assert!(matches!(blanks(Kind::Temperature)[2].input, Input::Parts(_)));
}

#[test]
fn everything_that_is_wrong_with_an_entry_is_told_at_once() {
    let text =
        r#"{"on":"2026-13-01","kind":"inspection","body":{"colony":"","brood":"some","seams":900,"size":1}}"#;
    let found = Draft::from_json(text, None).unwrap_err();
    let told: Vec<(String, String)> =
        found.iter().map(told).map(|told| (told.pointer, told.message)).collect();
    let pointers: Vec<&str> = told.iter().map(|(pointer, _)| pointer.as_str()).collect();
    assert_eq!(
        pointers,
        ["/on", "", "/body/colony", "/body/brood", "/body/seams", "/body/size"],
        "{told:#?}"
    );
}

#[test]
fn an_entry_with_one_fault_has_one() {
    let text =
        r#"{"on":"2026-04-01","recorded_by":"A","kind":"inspection","body":{"colony":"C","seams":"many"}}"#;
    let id = "00000000-0000-7000-8000-000000000001".parse().ok();
    let found = Draft::from_json(text, id).unwrap_err();
    assert_eq!(found.iter().map(|fault| fault.pointer.as_str()).collect::<Vec<_>>(), ["/body/seams"]);
    let found = Draft::from_json(text, None).unwrap_err();
    assert_eq!(found.iter().map(|fault| fault.pointer.as_str()).collect::<Vec<_>>(), ["/id", "/body/seams"]);
}

/// The fields that there are include the body, wherever the fault is found first.
#[test]
fn a_field_that_there_is_not_is_told_once() {
    for on in ["2026-04-01", "2026-13-01"] {
        let text = format!(
            r#"{{"id":"00000000-0000-7000-8000-000000000001","on":"{on}","recorded_by":"A","kind":"inspection","colour":"blue","body":{{"colony":"C"}}}}"#
        );
        let found = Draft::from_json(&text, None).unwrap_err();
        let colours = found.iter().filter(|fault| fault.pointer == "/colour");
        let told: Vec<String> = colours.map(told).map(|told| told.message).collect();
        let wanted = "unknown field `colour`, expected one of `id`, `on`, `at`, `recorded_by`, `kind`, `body`, \
                      `copied_from`, `written_on`, `corrects`, `reason`";
        assert!(told.len() == 1 && told.iter().all(|told| told.starts_with(wanted)), "{told:?}");
    }
}

/// A number is read where an id may stand, and only there; what else is wrong is told without it.
#[test]
fn a_first_dose_is_named_by_its_number_where_there_is_a_journal() {
    let entry = |kind: &str, body: &str| {
        format!(
            r#"{{"id":"00000000-0000-7000-8000-000000000002","on":"2026-04-01","recorded_by":"A","kind":"{kind}","body":{body}}}"#
        )
    };
    let seventh: EntryId = "00000000-0000-7000-8000-000000000007".parse().unwrap();
    let numbered =
        |number| (number == 7).then_some(seventh).ok_or(Unreadable::NoEntryNumbered { number, last: 9 });
    let pointers = |text: &str| -> Vec<String> {
        let found = Draft::from_json_where(text, None, numbered).unwrap_err();
        found.into_iter().map(|fault| fault.pointer).collect()
    };
    let named = [
        ("removal", r#"{"administration":7,"colonies":["H1"]}"#),
        ("administration", r#"{"given":[{"lot":"L1","each":0.125,"colonies":["H1"]}],"continues":7}"#),
    ];
    for (kind, by_number) in named {
        let by_id = by_number.replace(":7", r#":"00000000-0000-7000-8000-000000000007""#);
        let read = Draft::from_json_where(&entry(kind, by_number), None, numbered).unwrap();
        assert_eq!(read, Draft::from_json(&entry(kind, &by_id), None).unwrap());
        let nowhere = Draft::from_json(&entry(kind, by_number), None).unwrap_err();
        assert_eq!(nowhere.len(), 1, "{nowhere:?}");
        assert_eq!(told(&nowhere[0]).help, "name the entry by its id");
    }
    for (body, wrong) in [
        (r#"{"administration":8,"colonies":["H1"]}"#, vec!["/body/administration"]),
        (r#"{"administration":7,"colonies":["H1",""],"left":1}"#, vec!["/body/left", "/body/colonies/1"]),
        (r#"{"administration":7.5,"colonies":["H1"]}"#, vec!["/body/administration"]),
        (r#"{"administration":-7,"colonies":["H1"]}"#, vec!["/body/administration"]),
        (r#"{"administration":7,"administration":7,"colonies":["H1"]}"#, vec!["/body"]),
        (r#"{"administration":7,"colonies":[7]}"#, vec!["/body/colonies/0"]),
    ] {
        let mut found = pointers(&entry("removal", body));
        found.sort_unstable();
        let mut wanted: Vec<String> = wrong.into_iter().map(str::to_owned).collect();
        wanted.sort_unstable();
        assert_eq!(found, wanted, "{body}");
    }
}

/// Without a journal there is nothing in which to look a number up.
#[test]
fn an_entry_is_named_by_its_number_only_where_there_is_a_journal() {
    let text = r#"{"id":"00000000-0000-7000-8000-000000000002","on":"2026-04-01","recorded_by":"A","kind":"strike_out","body":{},"corrects":7,"reason":"twice"}"#;
    let found = Draft::from_json(text, None).unwrap_err();
    assert_eq!(found.iter().map(|fault| fault.pointer.as_str()).collect::<Vec<_>>(), ["/corrects"]);
    assert_eq!(told(&found[0]).help, "name the entry by its id");
    let seventh: EntryId = "00000000-0000-7000-8000-000000000007".parse().unwrap();
    let draft = Draft::from_json_where(text, None, |number| {
        assert_eq!(number, 7);
        Ok(seventh)
    });
    assert_eq!(draft.unwrap().correction.unwrap().of, seventh);
}
