//! `/holdings/{holding}/entries/{id}`

use axum::body::Body;
use axum::http::{Method, Request};
use serde_json::{Value, json};

use crate::bench::{Answer, Bench, json as as_json};
use crate::seed::{self, HOLDING, entry, id, path};

/// The second entry of the holding: its details again, where any entry would do.
fn details() -> Value {
    entry(2, "2026-01-02", "holding_details", json!({ "keeper": "A. Keeper", "jurisdiction": "gb" }))
}

#[tokio::test]
async fn a_new_entry_is_recorded_at_the_time_of_the_clock_and_sealed_into_the_chain() {
    let bench = seed::begun().await;
    let first = bench.get(&path(1)).await.good();
    let answer = bench.put(&path(2), &details()).await;
    let stored = answer.good();
    assert_eq!(answer.status, 201);
    assert_eq!(answer.header("location"), Some(path(2).as_str()));
    assert_eq!(answer.header("etag"), Some(format!("{}", stored["hash"]).as_str()));
    let want = json!({
        "seq": 2, "id": id(2), "on": "2026-01-02", "recorded_at": "2026-04-11T08:15:30.123Z",
        "recorded_by": "A. Keeper", "kind": "holding_details", "body": { "keeper": "A. Keeper", "jurisdiction": "gb" },
        "prev": first["hash"], "hash": stored["hash"],
    });
    assert_eq!(stored, want);
    assert_eq!(bench.entries_of(HOLDING).await, 2);
}

#[tokio::test]
async fn the_same_entry_sent_again_is_answered_as_it_was_recorded_then() {
    let bench = seed::begun().await;
    let first = bench.put(&path(2), &details()).await;
    bench.clock.move_on(5);
    let again = bench.put(&path(2), &details()).await;
    assert_eq!(again.status, 200);
    assert_eq!(again.text(), first.text());
    assert_eq!(again.header("etag"), first.header("etag"));
    assert_eq!(again.header("location"), first.header("location"));
    assert_eq!(bench.entries_of(HOLDING).await, 2);
    // A different spelling of the same content is the same entry.
    let spaced = r#"  { "body": { "jurisdiction": "gb", "keeper": "A. Keeper" },
        "kind": "holding_details", "recorded_by": "A. Keeper", "on": "2026-01-02" }"#;
    assert_eq!(bench.send(as_json(Method::PUT, &path(2), spaced)).await.status, 200);
}

#[tokio::test]
async fn other_content_under_the_same_id_is_a_problem_and_changes_nothing() {
    let bench = seed::begun().await;
    let first = bench.put(&path(2), &details()).await.good();
    let mut other = details();
    other["body"]["keeper"] = json!("B. Keeper");
    let (pointer, detail, help) =
        bench.put(&path(2), &other).await.fault(409, "same-id-other-content", &path(2));
    assert_eq!(pointer, "/id");
    assert_eq!(detail, format!("an entry with the id {} is already recorded, with different content", id(2)));
    assert_eq!(help, "make a new id for a new entry, or correct the recorded one with another entry");
    assert_eq!(bench.get(&path(2)).await.good(), first);
}

#[tokio::test]
async fn the_id_may_be_left_out_of_the_body_but_not_differ_from_the_path() {
    let bench = seed::begun().await;
    let mut entry = details();
    entry["id"] = json!(id(3));
    let (pointer, detail, help) = bench.put(&path(2), &entry).await.fault(422, "unreadable-entry", &path(2));
    assert_eq!(pointer, "/id");
    assert_eq!(detail, format!("the id in the entry is {}, but the id in the path is {}", id(3), id(2)));
    assert_eq!(help, "leave `id` out, or make both the same");
    entry.as_object_mut().unwrap().remove("id");
    let answer = bench.put(&path(2), &entry).await;
    assert_eq!((answer.status, &answer.good()["id"]), (201, &json!(id(2))));
}

#[tokio::test]
async fn a_correction_is_an_entry_that_names_the_wrong_one_and_the_reason() {
    let bench = seed::bench().await;
    let mut wrong_day = seed::entries().remove(14);
    wrong_day["id"] = json!(id(20));
    wrong_day["on"] = json!("2026-04-07");
    wrong_day["corrects"] = json!(id(15));
    wrong_day["reason"] = json!("it was Tuesday");
    wrong_day["at"] = json!("09:30");
    let answer = bench.put(&path(20), &wrong_day).await;
    let stored = answer.good();
    assert_eq!(
        (answer.status, &stored["corrects"], &stored["reason"]),
        (201, &json!(id(15)), &json!("it was Tuesday"))
    );
    assert_eq!(bench.get(&path(20)).await.good(), stored);
    assert_eq!(bench.get(&path(15)).await.good()["on"], "2026-04-06");
    let report = bench.get("/holdings/heathside/colonies/M2/supering").await.good();
    assert_eq!(report["first_free_day"], "2026-04-07");
}

#[tokio::test]
async fn a_body_that_is_not_declared_as_json_is_a_problem() {
    let bench = seed::begun().await;
    for (declared, what) in [
        (None, "the request does not declare the media type of its body"),
        (Some("text/plain"), "the body is declared as `text/plain`"),
        (
            Some("application/x-www-form-urlencoded"),
            "the body is declared as `application/x-www-form-urlencoded`",
        ),
    ] {
        let mut request = Request::put(path(2));
        if let Some(declared) = declared {
            request = request.header("content-type", declared);
        }
        let answer = bench.send(request.body(Body::from(details().to_string())).unwrap()).await;
        let (_, detail, help) = answer.fault(415, "wrong-media-type", &path(2));
        assert_eq!(detail, what);
        assert_eq!(help, "send it with the header `Content-Type: application/json`");
    }
    let request = Request::put(path(2)).header("content-type", "Application/JSON; charset=utf-8");
    assert_eq!(bench.send(request.body(Body::from(details().to_string())).unwrap()).await.status, 201);
}

#[tokio::test]
async fn a_body_that_is_not_json_is_a_problem_with_its_line_and_column() {
    let bench = seed::begun().await;
    for (body, place) in [
        ("{\n  \"on\": \"2026-01-02\"\n  \"kind\": 1 }", "line 3, column 3: expected `,` or `}`"),
        ("{\"on\": ", "line 1, column 7: EOF while parsing a value"),
        ("", "line 1, column 0: EOF while parsing a value"),
        ("{} {}", "line 1, column 4: trailing characters"),
        ("on=2026-01-02", "line 1, column 1: expected value"),
    ] {
        let answer = bench.send(as_json(Method::PUT, &path(2), body)).await;
        let (_, detail, help) = answer.fault(400, "malformed-json", &path(2));
        assert_eq!(detail, place);
        assert_eq!(help, "check there, or just before, for a missing quote, comma or bracket");
    }
}

#[tokio::test]
async fn a_body_that_is_not_utf_8_is_a_problem() {
    let bench = seed::begun().await;
    let answer = bench.send(as_json(Method::PUT, &path(2), vec![b'"', 0xe4, b'"'])).await;
    let (_, detail, help) = answer.fault(400, "unreadable-body", &path(2));
    assert_eq!((detail.as_str(), help.as_str()), ("the body is not UTF-8 text", "encode it as UTF-8"));
}

/// The fault of the entry with some fields changed.
async fn fault_of(bench: &Bench, changes: Value) -> (String, String, String) {
    let mut entry = details();
    entry.as_object_mut().unwrap().extend(changes.as_object().unwrap().clone());
    bench.put(&path(2), &entry).await.fault(422, "unreadable-entry", &path(2))
}

#[tokio::test]
async fn an_entry_of_the_wrong_form_is_a_problem_that_points_at_the_field() {
    let bench = seed::begun().await;
    for (changes, pointer, detail) in [
        (json!({ "on": "2025-02-29" }), "/on", "`2025-02-29` is not a day of the calendar"),
        (json!({ "on": 20_260_102 }), "/on", "the number `20260102`, expected a text"),
        (json!({ "at": "9.30" }), "/at", "`9.30` is not a time of day written like 09:30"),
        (json!({ "kind": "holding_detail" }), "/kind", "`holding_detail` is not a kind of entry"),
        (json!({ "colour": "blue" }), "/colour", "unknown field `colour`"),
        (json!({ "body": { "jurisdiction": "gb" } }), "/body", "missing field `keeper`"),
        (
            json!({ "body": { "keeper": "A", "jurisdiction": "gb", "vat": 1 } }),
            "/body/vat",
            "unknown field `vat`",
        ),
        (
            json!({ "body": { "keeper": "", "jurisdiction": "gb" } }),
            "/body/keeper",
            "`` cannot be the name of a person: it is empty",
        ),
        (json!({ "corrects": id(2) }), "/reason", "a correction must give its reason"),
        (json!({ "reason": "why not" }), "/corrects", "a reason is given but no entry is corrected"),
    ] {
        let (at, said, help) = fault_of(&bench, changes).await;
        assert_eq!(at, pointer, "{said}");
        assert!(said.starts_with(detail), "{said}");
        assert!(!said.contains("near character"), "{said}");
        assert!(!help.is_empty(), "{said}");
    }
    assert_eq!(
        fault_of(&bench, json!({ "kind": "holding_detail" })).await.2,
        "did you mean `holding_details`?"
    );
    assert_eq!(bench.entries_of(HOLDING).await, 1);
}

#[tokio::test]
async fn a_body_that_is_json_but_no_entry_is_a_problem() {
    let bench = seed::begun().await;
    for body in [json!([]), json!("entry"), json!(null), json!([details()])] {
        let (pointer, detail, _) = bench.put(&path(2), &body).await.fault(422, "unreadable-entry", &path(2));
        assert_eq!((pointer.as_str(), detail.as_str()), ("", "this is not an entry"));
    }
}

async fn refusal(bench: &Bench, entry: Value) -> (String, String, String) {
    let answer: Answer = bench.put(&path(20), &entry).await;
    answer.fault(422, "refused-entry", &path(20))
}

#[tokio::test]
async fn an_entry_that_cannot_be_true_is_refused_with_what_contradicts_it() {
    let bench = seed::bench().await;
    let moved = entry(20, "2026-04-10", "colony_moved", json!({ "colony": "M11", "to": "far field" }));
    let fault = refusal(&bench, moved).await;
    let want =
        ("/body/colony".to_owned(), "there is no colony `M11`".to_owned(), "did you mean `M1`?".to_owned());
    assert_eq!(fault, want);

    let early = entry(20, "2026-02-19", "removal", json!({ "administration": id(11), "colonies": ["M1"] }));
    let (pointer, detail, _) = refusal(&bench, early).await;
    assert_eq!(pointer, "/on");
    assert_eq!(detail, "it was placed on 2026-02-20, so it cannot come out on 2026-02-19");

    let answer = bench
        .put(&path(20), &entry(20, "2026-04-10", "colony_ended", json!({ "colony": "M4", "cause": "again" })))
        .await;
    let problem = answer.problem(422, "refused-entry", &path(20));
    let detail = "the entry cannot be true: colony `M4` ended on 2026-03-01; nothing was recorded";
    assert_eq!(problem["detail"], detail);
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

#[tokio::test]
async fn an_entry_on_a_day_that_has_not_come_anywhere_on_earth_is_refused() {
    let bench = seed::bench().await;
    let seen = |on: &str| entry(20, on, "inspection", json!({ "colony": "M1", "brood": "present" }));
    let (pointer, detail, help) = refusal(&bench, seen("2026-04-12")).await;
    assert_eq!(pointer, "/on");
    assert_eq!(detail, "2026-04-12 is in the future; an entry can be dated 2026-04-11 at the latest");
    assert_eq!(help, "record what happened, on the day it happened or later");
    assert_eq!(bench.put(&path(20), &seen("2026-04-11")).await.status, 201);
}

#[tokio::test]
async fn a_recorded_entry_can_be_read_and_says_when_it_is_still_the_same() {
    let bench = seed::bench().await;
    let answer = bench.get(&path(11)).await;
    let stored = answer.good();
    assert_eq!((&stored["seq"], &stored["kind"]), (&json!(11), &json!("administration")));
    assert_eq!(stored["body"]["given"][0]["each"], 2);
    let etag = answer.header("etag").unwrap().to_owned();
    assert_eq!(etag, format!("{}", stored["hash"]));
    for known in [etag.clone(), format!("W/{etag}"), format!("\"other\", {etag}"), "*".to_owned()] {
        let request = Request::get(path(11)).header("if-none-match", &known).body(Body::empty()).unwrap();
        let answer = bench.send(request).await;
        assert_eq!(
            (answer.status, answer.body.len(), answer.header("etag")),
            (304, 0, Some(etag.as_str())),
            "{known}"
        );
    }
    let request = Request::get(path(11)).header("if-none-match", "\"other\"").body(Body::empty()).unwrap();
    assert_eq!(bench.send(request).await.status, 200);
}

#[tokio::test]
async fn an_entry_that_is_not_recorded_is_a_problem() {
    let bench = seed::bench().await;
    let (parameter, detail, help) = bench.get(&path(99)).await.fault(404, "unknown-entry", &path(99));
    assert_eq!(parameter, "id");
    assert_eq!(detail, format!("the holding `heathside` has no entry with the id {}", id(99)));
    assert_eq!(help, "GET /holdings/heathside/entries lists what is recorded");
}

#[tokio::test]
async fn an_entry_for_a_holding_that_was_never_begun_names_the_nearest_and_begins_none() {
    let bench = seed::bench().await;
    let path = format!("/holdings/heathsite/entries/{}", id(2));
    let fault = bench.put(&path, &details()).await.fault(404, "unknown-holding", &path);
    let detail = "no entry is recorded under the holding `heathsite`".to_owned();
    assert_eq!(fault, ("holding".to_owned(), detail, "did you mean `heathside`?".to_owned()));
    assert_eq!(bench.entries_of("heathsite").await, 0);
    assert_eq!(bench.get("/holdings").await.good()["items"].as_array().unwrap().len(), 1);
}

/// The number of an entry is what people read on the register; the id is what the journal keeps.
#[tokio::test]
async fn a_correction_names_the_wrong_entry_by_its_number_or_by_its_id() {
    for named in [json!(15), json!(id(15))] {
        let bench = seed::bench().await;
        let mut wrong_day = seed::entries().remove(14);
        wrong_day["id"] = json!(id(20));
        wrong_day["on"] = json!("2026-04-07");
        wrong_day["corrects"] = named;
        wrong_day["reason"] = json!("it was Tuesday");
        let answer = bench.put(&path(20), &wrong_day).await;
        assert_eq!((answer.status, &answer.good()["corrects"]), (201, &json!(id(15))));
        // Sent again, and named the other way, it is the same entry.
        for named in [json!(15), json!(id(15))] {
            wrong_day["corrects"] = named;
            assert_eq!(bench.put(&path(20), &wrong_day).await.status, 200);
        }
        assert_eq!(bench.entries_of(HOLDING).await, 17);
    }
}

#[tokio::test]
async fn an_entry_copied_from_a_paper_register_says_so() {
    let bench = seed::bench().await;
    let mut copied = entry(20, "2026-04-01", "inspection", json!({ "colony": "M1", "brood": "present" }));
    copied["copied_from"] = json!("red notebook");
    let fault = bench.put(&path(20), &copied).await.fault(422, "unreadable-entry", &path(20));
    assert_eq!(fault.0, "/written_on");
    copied["written_on"] = json!("2026-03-31");
    let fault = bench.put(&path(20), &copied).await.fault(422, "refused-entry", &path(20));
    assert_eq!(fault.0, "/written_on");
    copied["written_on"] = json!("2026-04-01");
    let recorded = bench.put(&path(20), &copied).await;
    assert_eq!((recorded.status, &recorded.good()["copied_from"]), (201, &json!("red notebook")));
    assert_eq!(bench.put(&path(20), &copied).await.status, 200);
    assert_eq!(bench.get(&path(20)).await.good(), recorded.good());
    copied["written_on"] = json!("2026-04-02");
    bench.put(&path(20), &copied).await.problem(409, "same-id-other-content", &path(20));
    assert_eq!(bench.get("/holdings/heathside/verification").await.good()["answer"], "sound");
}

#[tokio::test]
async fn a_removal_and_a_further_dose_name_the_first_dose_by_its_number_or_by_its_id() {
    let bench = seed::bench().await;
    let entries = bench.get("/holdings/heathside/entries").await.good();
    let doses = entries["items"].as_array().unwrap().iter();
    let first = doses.clone().find(|entry| entry["kind"] == "administration").unwrap();
    let (seq, id) = (&first["seq"], &first["id"]);
    for (number, kind, field, body) in [
        (20, "removal", "administration", json!({ "colonies": ["M1"] })),
        (
            21,
            "administration",
            "continues",
            json!({ "given": [{ "lot": "strips-1", "each": 1, "colonies": ["M1"] }], "withdrawal_days": 0 }),
        ),
    ] {
        let named = |first: &Value| {
            let mut body = body.clone();
            body[field] = first.clone();
            entry(number, "2026-04-10", kind, body)
        };
        let answer = bench.put(&path(number), &named(seq)).await;
        assert_eq!((answer.status, &answer.good()["body"][field]), (201, id), "{kind}");
        assert_eq!(bench.put(&path(number), &named(id)).await.status, 200, "{kind}");
        let mut nobody = named(&json!(99));
        nobody["id"] = json!(seed::id(30));
        let fault = bench.put(&path(30), &nobody).await.fault(422, "unreadable-entry", &path(30));
        assert_eq!(fault.0, format!("/body/{field}"));
        assert!(fault.1.starts_with("there is no entry `99` in the journal"), "{fault:?}");
    }
}

/// The last number there is, the one after it, and others that no entry has.
#[tokio::test]
async fn a_correction_of_a_number_that_no_entry_has_is_a_problem_with_the_last_one() {
    let bench = seed::bench().await;
    let correcting = |named: Value| {
        let mut struck_out = entry(20, "2026-04-10", "strike_out", json!({}));
        struck_out["corrects"] = named;
        struck_out["reason"] = json!("it did not happen");
        struck_out
    };
    for number in [0, 17, 9_007_199_254_740_991_u64] {
        let sent = correcting(json!(number));
        let fault = bench.put(&path(20), &sent).await.fault(422, "unreadable-entry", &path(20));
        let detail = format!("there is no entry `{number}` in the journal; the last is 16");
        let help = "give the number that `seq` has in the list of entries, or the id".to_owned();
        assert_eq!(fault, ("/corrects".to_owned(), detail, help));
    }
    // An entry of a batch has no number before it is recorded.
    let (new, batch) =
        (entry(19, "2026-04-10", "inspection", json!({ "colony": "M1" })), correcting(json!(17)));
    let entries = "/holdings/heathside/entries";
    let (pointer, ..) =
        bench.post(entries, &json!([new, batch])).await.fault(422, "unreadable-entry", entries);
    assert_eq!(pointer, "/1/corrects");
    for (named, said) in [
        (json!("16"), "`16` is neither the id of an entry, written like"),
        (json!(1.5), "the number `1.5`, expected the id of an entry, or its number in the journal"),
        (json!(-1), "the number `-1`, expected the id of an entry, or its number in the journal"),
        (json!([16]), "a list, expected the id of an entry, or its number in the journal"),
    ] {
        let sent = correcting(named);
        let (pointer, detail, _) =
            bench.put(&path(20), &sent).await.fault(422, "unreadable-entry", &path(20));
        assert_eq!(pointer, "/corrects");
        assert!(detail.starts_with(said), "{detail}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
    assert_eq!(bench.put(&path(20), &correcting(json!(16))).await.status, 201);
}

#[tokio::test]
async fn a_recorded_entry_is_read_by_its_number_as_by_its_id() {
    let bench = seed::bench().await;
    for number in 1..=16 {
        let by_number = bench.get(&format!("/holdings/heathside/entries/{number}")).await;
        let by_id = bench.get(&path(number)).await;
        assert_eq!((by_number.good(), by_number.header("etag")), (by_id.good(), by_id.header("etag")));
    }
    for number in ["17", "9007199254740991", "18446744073709551615"] {
        let at = format!("/holdings/heathside/entries/{number}");
        let (parameter, detail, help) = bench.get(&at).await.fault(404, "unknown-entry", &at);
        assert_eq!(parameter, "id");
        assert_eq!(detail, format!("there is no entry `{number}` in the journal; the last is 16"));
        assert_eq!(help, "GET /holdings/heathside/entries lists what is recorded");
    }
    for text in ["0", "007", "+7", "7.0", "-1", "18446744073709551616", "seven"] {
        let at = format!("/holdings/heathside/entries/{text}");
        let (parameter, detail, help) = bench.get(&at).await.fault(400, "bad-parameter", &at);
        assert_eq!(parameter, "id");
        assert!(detail.starts_with(&format!("`{text}` is neither the id of an entry")), "{detail}");
        assert!(help.starts_with("name the entry by its id, as in"), "{help}");
    }
    bench.get("/holdings/nobody/entries/7").await.problem(
        404,
        "unknown-holding",
        "/holdings/nobody/entries/7",
    );
    // A new entry has no number before it is recorded: its writer gives it an id.
    let at = "/holdings/heathside/entries/17";
    let (parameter, detail, _) = bench.put(at, &details()).await.fault(400, "bad-parameter", at);
    assert_eq!(parameter, "id");
    assert!(detail.starts_with("this is not the id of an entry: `17` is not a UUID"), "{detail}");
}

#[tokio::test]
async fn a_null_where_nothing_need_be_said_is_no_fault_beside_another() {
    let bench = seed::bench().await;
    let mut entry = seed::entries()[12].clone();
    for optional in ["id", "at", "copied_from", "written_on", "corrects", "reason"] {
        entry[optional] = Value::Null;
    }
    assert_eq!(bench.put(&path(70), &entry).await.status, 201);
    entry["at"] = json!("9:30");
    let (pointer, ..) = bench.put(&path(71), &entry).await.fault(422, "unreadable-entry", &path(71));
    assert_eq!(pointer, "/at");
}

#[tokio::test]
async fn the_number_of_an_entry_is_no_fault_beside_another() {
    let bench = seed::bench().await;
    let mut entry = entry(72, "2026-04-10", "removal", json!({ "administration": 11, "colonies": ["M1"] }));
    entry["recorded_by"] = json!(" outer spaces");
    let (pointer, ..) = bench.put(&path(72), &entry).await.fault(422, "unreadable-entry", &path(72));
    assert_eq!(pointer, "/recorded_by");
}
