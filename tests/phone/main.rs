//! What answers on a phone without signal: it takes in a journal as the service sends it, expects what was not sent yet, and answers as
//! the service does (`check_answers.mjs` holds the two together).
#![expect(clippy::unwrap_used, reason = "a test stops at the first surprise")]

use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Draft, Entry};
use combclear_domain::rules::leaflet::Leaflets;
use combclear_phone::Phone;
use combclear_wording::Words;
use combclear_wording::reports::rules;
use serde_json::{Value, json};

const NOW: &str = "2026-04-11T08:15:30.000Z";

fn id(number: u128) -> String {
    format!("01964c7e-6f00-7000-8000-{number:012}")
}

fn entry(number: u128, on: &str, kind: &str, body: &Value) -> Value {
    json!({ "id": id(number), "on": on, "recorded_by": "A. Keeper", "kind": kind, "body": body })
}

/// Two colonies, and a lot of strips that no leaflet is known of.
fn journal() -> Vec<Value> {
    let mut number = 0;
    let mut next = |kind: &str, body: Value| {
        number += 1;
        entry(number, "2026-01-05", kind, &body)
    };
    vec![
        next("holding_details", json!({ "keeper": "A. Keeper", "jurisdiction": "gb" })),
        next("apiary_details", json!({ "apiary": "orchard" })),
        next("colony_established", json!({ "colony": "M1", "apiary": "orchard", "medicines": "none" })),
        next("colony_established", json!({ "colony": "M2", "apiary": "orchard", "medicines": "none" })),
        next(
            "medicine_described",
            json!({ "medicine": "strips", "pack_name": "Demo strips", "authorisation": "DEMO 1", "unit": "strip" }),
        ),
        next(
            "lot_acquired",
            json!({
                "lot": "L1", "medicine": "strips", "batch": "B 1", "expiry": "2027-06-30", "quantity": 20,
                "supplier": { "name": "A. Supplier" }, "proof": "invoice 17",
            }),
        ),
    ]
}

/// The journal as the service would send it.
fn sealed(entries: &[Value]) -> Vec<String> {
    let mut holding = Holding::new("heathside".parse().unwrap());
    let drafts = entries.iter().map(|entry| Draft::from_json(&entry.to_string(), None).unwrap());
    drafts
        .map(|draft| holding.record(draft, NOW.parse().unwrap()).unwrap())
        .map(|entry: Entry| entry.to_json())
        .collect()
}

fn told(phone: &mut Phone, task: &str) -> Value {
    serde_json::from_str(&phone.do_as_told(task)).unwrap()
}

fn take_in(phone: &mut Phone, entries: &[String]) -> Value {
    told(
        phone,
        &format!(r#"{{"take_in":{{"holding":"heathside","page":{{"items":[{}]}}}}}}"#, entries.join(",")),
    )
}

fn expect(phone: &mut Phone, batches: &Value) -> Value {
    let task =
        json!({ "expect": { "holding": "heathside", "batches": batches, "now": NOW, "language": "en" } });
    told(phone, &task.to_string())
}

fn supering(phone: &mut Phone, colony: &str) -> Value {
    let path = format!("/holdings/heathside/colonies/{colony}/supering");
    answer(phone, &path, None)
}

fn answer(phone: &mut Phone, path: &str, body: Option<&Value>) -> Value {
    let body = body.map(Value::to_string);
    let task = json!({ "answer": { "path": path, "body": body, "now": NOW, "today": "2026-04-11", "language": "en" } });
    told(phone, &task.to_string())
}

/// A phone with the journal.
fn phone() -> Phone {
    let mut phone = Phone::default();
    assert_eq!(take_in(&mut phone, &sealed(&journal())), json!({ "tip": 6 }));
    assert_eq!(expect(&mut phone, &json!([])), json!({ "refused": [] }));
    phone
}

fn strips_in(number: u128, colony: &str) -> Value {
    let body =
        json!({ "given": [{ "lot": "L1", "each": 2, "colonies": [colony] }], "given_by": "A. Keeper" });
    entry(number, "2026-04-10", "administration", &body)
}

#[test]
fn what_waits_turns_a_yes_into_another_answer_before_it_is_sent_and_only_where_it_was_given() {
    let mut phone = phone();
    assert_eq!(supering(&mut phone, "M1")["body"]["answer"], "yes");
    assert_eq!(expect(&mut phone, &json!([[strips_in(7, "M1")]])), json!({ "refused": [] }));
    assert_ne!(supering(&mut phone, "M1")["body"]["answer"], "yes");
    assert_eq!(supering(&mut phone, "M2")["body"]["answer"], "yes");
    // What was thrown away is expected no more.
    expect(&mut phone, &json!([]));
    assert_eq!(supering(&mut phone, "M1")["body"]["answer"], "yes");
}

#[test]
fn a_batch_is_expected_as_a_whole_or_not_at_all_and_those_after_it_still_are() {
    let mut phone = phone();
    let refused =
        expect(&mut phone, &json!([[strips_in(7, "M1"), strips_in(8, "Nobody")], [strips_in(9, "M2")]]));
    let refused = refused["refused"].as_array().unwrap();
    assert_eq!(refused.len(), 1, "{refused:?}");
    assert_eq!(refused[0]["batch"], 0);
    assert!(refused[0]["detail"].as_str().unwrap().contains("Nobody"), "{refused:?}");
    assert!(!refused[0]["help"].as_str().unwrap().is_empty());
    assert_eq!(supering(&mut phone, "M1")["body"]["answer"], "yes", "nothing of the first batch is expected");
    assert_ne!(supering(&mut phone, "M2")["body"]["answer"], "yes");
}

#[test]
fn an_entry_that_has_arrived_already_is_expected_once() {
    let mut phone = Phone::default();
    let entries = [journal(), vec![strips_in(7, "M1")]].concat();
    assert_eq!(take_in(&mut phone, &sealed(&entries)), json!({ "tip": 7 }));
    assert_eq!(expect(&mut phone, &json!([[strips_in(7, "M1")]])), json!({ "refused": [] }));
    let stock = answer(&mut phone, "/holdings/heathside/stock", None);
    assert_eq!(stock["body"]["lots"][0]["given"], 2);
}

#[test]
fn an_entry_that_does_not_follow_is_not_taken_in() {
    let sealed = sealed(&journal());
    let changed = sealed[2].replace("M1", "M9");
    let cases = [
        ("one is left out", vec![sealed[0].clone(), sealed[2].clone()]),
        ("one comes twice", vec![sealed[0].clone(), sealed[0].clone()]),
        ("one was changed", vec![sealed[0].clone(), sealed[1].clone(), changed]),
        ("it is no entry", vec!["{}".to_owned()]),
    ];
    for (name, entries) in cases {
        let outcome = take_in(&mut Phone::default(), &entries);
        assert!(outcome["broken"].as_str().is_some_and(|why| !why.is_empty()), "{name}: {outcome}");
    }
}

#[test]
fn what_only_the_service_can_answer_is_not_answered() {
    let mut phone = phone();
    let cases = [
        ("another holding", "/holdings/elsewhere/colonies"),
        ("the journal", "/holdings/heathside/entries"),
        ("the list of holdings", "/holdings"),
        ("no such path", "/nowhere"),
        ("a parameter that nobody knows", "/holdings/heathside/colonies?no=1"),
        ("a day that is none", "/holdings/heathside/colonies?on=soon"),
        ("a kind that nobody fills in", "/holdings/heathside/forms/archived"),
    ];
    for (name, path) in cases {
        assert_eq!(answer(&mut phone, path, None), Value::Null, "{name}");
    }
    told(&mut phone, r#"{"forget":{"holding":"heathside"}}"#);
    assert_eq!(supering(&mut phone, "M1"), Value::Null, "what was forgotten");
    assert!(told(&mut phone, "no task")["fault"].is_string());
}

#[test]
fn a_refusal_is_told_before_anything_waits() {
    let mut phone = phone();
    let path = "/holdings/heathside/forms/inspection";
    let filled = |colony: &str| json!({ "on": "2026-04-11", "recorded_by": "A. Keeper", "fields": { "colony": [colony], "brood": ["present"] } });
    let good = answer(&mut phone, path, Some(&filled("M1")));
    assert_eq!(good["status"], 200, "{good}");
    assert_eq!((good["status"].as_u64(), good["body"]["entries"].as_array().unwrap().len()), (Some(200), 1));
    let bad = answer(&mut phone, path, Some(&filled("Nobody")));
    assert_eq!(bad["status"], 422, "{bad}");
    assert!(!bad["body"]["errors"][0]["help"].as_str().unwrap().is_empty());
    let missing = answer(&mut phone, "/holdings/heathside/colonies/Nobody/supering", None);
    assert_eq!(missing["status"], 404);
}

#[test]
fn it_says_by_which_leaflets_and_laws_it_answers() {
    let expected = rules(combclear_leaflets::builtin().unwrap(), combclear_leaflets::laws().unwrap());
    assert_eq!(told(&mut Phone::default(), r#"{"rules":{}}"#), json!({ "rules": expected }));
    // Others are told apart.
    let none = rules(&Leaflets::default(), combclear_leaflets::laws().unwrap());
    assert_ne!(expected, none);
}

#[test]
fn every_language_is_spoken() {
    let mut phone = phone();
    let mut said = Vec::new();
    for words in Words::all() {
        let task = json!({ "answer": {
            "path": "/holdings/heathside/colonies/M1/supering", "now": NOW, "today": "2026-04-11", "language": words.language(),
        } });
        said.push(told(&mut phone, &task.to_string())["body"]["summary"].clone());
    }
    assert_ne!(said[0], said[1]);
}
