//! Keys and roles: every route with every role, what a key lets one record, and what a refusal gives away.

use std::collections::BTreeSet;

use axum::body::Body;
use axum::http::{Method, Request};
use combclear_domain::journal::Hash;
use combclear_domain::journal::key::{Key, Role};
use combclear_service::Rate;
use serde_json::{Value, json};

use crate::bench::{Answer, Bench, TODAY};
use crate::layers::logged;
use crate::seed::{self, HOLDING, entry, id};

/// Another holding of the same database.
const OTHER: &str = "moorside";

/// Who calls: with what he sends, and whether it is a key that holds for [`HOLDING`].
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
enum Caller {
    Keeper,
    Helper,
    Vet,
    Reader,
    Operator,
    /// A keeper, but of [`OTHER`].
    Foreign,
    Nobody,
    WrongSecret,
    UnknownKey,
    Ended,
    RunOut,
    OtherScheme,
}

use Caller::{
    Ended, Foreign, Helper, Keeper, Nobody, Operator, OtherScheme, Reader, RunOut, UnknownKey, Vet,
    WrongSecret,
};

const WITHOUT: [Caller; 6] = [Nobody, WrongSecret, UnknownKey, Ended, RunOut, OtherScheme];
const WITH: [Caller; 6] = [Keeper, Helper, Vet, Reader, Operator, Foreign];

impl Caller {
    fn header(self) -> Option<String> {
        let (id, secret) = match self {
            Nobody => return None,
            Keeper | OtherScheme => ("keeper00", "one"),
            Helper => ("helper00", "two"),
            Vet => ("vet00000", "three"),
            Reader => ("reader00", "four"),
            Operator => ("operator", "five"),
            Foreign => ("foreign0", "six"),
            Ended => ("ended000", "seven"),
            RunOut => ("runout00", "eight"),
            WrongSecret => ("keeper00", "two"),
            UnknownKey => ("nobody00", "one"),
        };
        let scheme = if self == OtherScheme { "Basic" } else { "Bearer" };
        Some(format!("{scheme} {id}.{secret}"))
    }
}

/// Every key there is, over the holding of the other tests.
async fn keyed() -> Bench {
    keyed_at(Rate::default()).await
}

async fn keyed_at(rate: Rate) -> Bench {
    let bench = seed::bench().await;
    seed::begin(&bench, OTHER, &seed::entries()[0]).await;
    let made_at = "2026-01-01T10:00:00.000Z".parse().unwrap();
    for (caller, role, holding, until) in [
        (Keeper, Role::Keeper, Some(HOLDING), None),
        (Helper, Role::Helper, Some(HOLDING), None),
        (Vet, Role::Vet, Some(HOLDING), None),
        // Today is the last day.
        (Reader, Role::Reader, Some(HOLDING), Some(TODAY)),
        (Operator, Role::Operator, None, None),
        (Foreign, Role::Keeper, Some(OTHER), None),
        (Ended, Role::Keeper, Some(HOLDING), None),
        (RunOut, Role::Keeper, Some(HOLDING), Some("2026-04-10")),
    ] {
        let header = caller.header().unwrap();
        let (id, secret) = header.split_once(' ').unwrap().1.split_once('.').unwrap();
        let key = Key {
            id: id.parse().unwrap(),
            holding: holding.map(|name| name.parse().unwrap()),
            role,
            holder: "Somebody (invented)".parse().unwrap(),
            made_at,
            until: until.map(|day| day.parse().unwrap()),
            ended_at: None,
        };
        bench.journal.add_key(&key, Hash::of_content(secret.as_bytes())).await.unwrap();
    }
    assert!(bench.journal.end_key("ended000".parse().unwrap(), made_at).await.unwrap());
    bench.asking_for_keys(rate)
}

async fn ask(bench: &Bench, caller: Caller, method: Method, path: &str, body: Option<&Value>) -> Answer {
    let mut request = Request::builder().method(method).uri(path);
    if let Some(header) = caller.header() {
        request = request.header("authorization", header);
    }
    if body.is_some() {
        request = request.header("content-type", "application/json");
    }
    let body = body.map_or_else(Body::empty, |body| Body::from(body.to_string()));
    bench.send(request.body(body).unwrap()).await
}

/// Who may do what: written by hand from the description of the roles, not from the code that decides.
///
/// `all` is everybody, `any` whoever has a key that holds.
const TABLE: &[(&str, &str, &[Caller])] = &[
    ("GET", "/holdings", ANY),
    ("PUT", "/holdings/{holding}", &[Operator]),
    ("GET", "/holdings/{holding}/apiaries", READ),
    ("GET", "/holdings/{holding}/apiaries/{apiary}", READ),
    ("GET", "/holdings/{holding}/apiaries/{apiary}/supering", READ),
    ("GET", "/holdings/{holding}/apiaries/{apiary}/treatment-options", READ),
    ("GET", "/holdings/{holding}/apiaries/{apiary}/visit", READ),
    ("GET", "/holdings/{holding}/apiaries/{apiary}/season", READ),
    ("GET", "/holdings/{holding}/colonies/{colony}/season", READ),
    ("GET", "/holdings/{holding}/colonies", READ),
    ("GET", "/holdings/{holding}/colonies/{colony}", READ),
    ("GET", "/holdings/{holding}/colonies/{colony}/supering", READ),
    ("GET", "/holdings/{holding}/colonies/{colony}/history", READ),
    ("GET", "/holdings/{holding}/colonies/{colony}/treatment-options", READ),
    ("GET", "/holdings/{holding}/documents", READ),
    ("GET", "/holdings/{holding}/documents/{document}", READ),
    ("PUT", "/holdings/{holding}/documents/{document}", ADD),
    ("GET", "/holdings/{holding}/due", READ),
    ("GET", "/holdings/{holding}/entries", READ),
    ("POST", "/holdings/{holding}/entries", ADD),
    ("GET", "/holdings/{holding}/entries/{id}", READ),
    ("PUT", "/holdings/{holding}/entries/{id}", ADD),
    ("GET", "/holdings/{holding}/medicines", READ),
    ("GET", "/holdings/{holding}/register", READ),
    ("GET", "/holdings/{holding}/register/exchange/transactions", READ),
    ("GET", "/holdings/{holding}/register/exchange/treatments", READ),
    ("GET", "/holdings/{holding}/register/gaps", READ),
    ("GET", "/holdings/{holding}/register/pack", READ),
    ("GET", "/holdings/{holding}/retention", READ),
    ("GET", "/holdings/{holding}/stock", READ),
    ("GET", "/holdings/{holding}/lots/{lot}/leaflet", READ),
    ("GET", "/holdings/{holding}/verification", READ),
    ("GET", "/forms", ANY),
    ("POST", "/holdings/{holding}/forms/{kind}", ADD),
    ("GET", "/laws", ANY),
    ("GET", "/laws/{jurisdiction}", ANY),
    ("GET", "/leaflets", ANY),
    ("GET", "/leaflets/{jurisdiction}/{id}", ANY),
    ("GET", "/metrics", &[Operator]),
    ("GET", "/", ALL),
    ("GET", "/page/{file}", ALL),
    ("GET", "/docs", ALL),
    ("GET", "/docs/{file}", ALL),
    ("GET", "/openapi.json", ALL),
    ("GET", "/healthz", ALL),
    ("GET", "/readyz", ALL),
    ("GET", "/problems/{slug}", ALL),
    // Nothing is served there, and nobody without a key is told so.
    ("GET", "/nowhere", ANY),
    ("DELETE", "/holdings", ANY),
];
const READ: &[Caller] = &[Keeper, Helper, Vet, Reader];
const ADD: &[Caller] = &[Keeper, Helper, Vet];
const ANY: &[Caller] = &WITH;
const ALL: &[Caller] = &[
    Keeper,
    Helper,
    Vet,
    Reader,
    Operator,
    Foreign,
    Nobody,
    WrongSecret,
    UnknownKey,
    Ended,
    RunOut,
    OtherScheme,
];

/// A path with something in each of its places.
fn filled(path: &str) -> String {
    path.replace("{holding}", HOLDING)
        .replace("{apiary}", "orchard")
        .replace("{colony}", "M1")
        .replace("{document}", &"0".repeat(64))
        .replace("{jurisdiction}", "gb")
        .replace("{id}", &id(900))
        .replace("{file}", "index.html")
        .replace("{kind}", "inspection")
        .replace("{slug}", "no-key")
}

#[tokio::test]
async fn the_table_names_every_route_of_the_document() {
    let document = combclear_service::openapi();
    let document: Value = serde_json::from_str(&document.to_json().unwrap()).unwrap();
    let described: BTreeSet<(String, String)> = document["paths"]
        .as_object()
        .unwrap()
        .iter()
        .flat_map(|(path, of)| {
            of.as_object().unwrap().keys().map(|method| (method.to_uppercase(), path.clone()))
        })
        .collect();
    let named: BTreeSet<(String, String)> =
        TABLE.iter().map(|(method, path, _)| ((*method).to_owned(), (*path).to_owned())).collect();
    let missing: Vec<_> = described.difference(&named).collect();
    assert!(missing.is_empty(), "not in the table: {missing:?}");
}

#[tokio::test]
async fn every_route_lets_in_whom_the_table_says_and_nobody_else() {
    let bench = keyed().await;
    let before = bench.entries_of(HOLDING).await;
    for (method, path, may) in TABLE {
        // `HEAD` is a question too.
        let methods: &[&str] = if *method == "GET" { &["GET", "HEAD"] } else { &[*method] };
        for method in methods {
            for caller in WITHOUT.into_iter().chain(WITH) {
                let method: Method = method.parse().unwrap();
                let writes = method == Method::PUT || method == Method::POST;
                // A body that nothing is recorded from: it is looked at only after the door.
                let body = json!({});
                let answer =
                    ask(&bench, caller, method.clone(), &filled(path), writes.then_some(&body)).await;
                let let_in = ![401, 403].contains(&answer.status);
                let what = format!(
                    "{method} {path} by {caller:?}: {} {}",
                    answer.status,
                    String::from_utf8_lossy(&answer.body)
                );
                assert_eq!(let_in, may.contains(&caller), "{what}");
                let without = WITHOUT.contains(&caller);
                assert!(let_in || (answer.status == 401) == without, "{what}");
                if answer.status == 401 {
                    assert_eq!(answer.header("www-authenticate"), Some("Bearer realm=\"combclear\""));
                }
            }
        }
    }
    assert_eq!(bench.entries_of(HOLDING).await, before);
}

#[tokio::test]
async fn a_holding_is_begun_by_the_operator_and_no_other_holding_is_seen_by_a_key() {
    let bench = keyed().await;
    let first = &seed::entries()[0];
    let third = "/holdings/seaside";
    for caller in [Keeper, Helper, Vet, Reader, Foreign] {
        let answer = ask(&bench, caller, Method::PUT, third, Some(first)).await;
        answer.problem(403, "foreign-holding", third);
    }
    assert_eq!(ask(&bench, Operator, Method::PUT, third, Some(first)).await.status, 201);
    for (caller, seen) in [
        (Keeper, vec![HOLDING]),
        (Reader, vec![HOLDING]),
        (Foreign, vec![OTHER]),
        (Operator, vec![HOLDING, OTHER, "seaside"]),
    ] {
        let list = ask(&bench, caller, Method::GET, "/holdings", None).await.good();
        let names: Vec<&str> =
            list["items"].as_array().unwrap().iter().map(|item| item["holding"].as_str().unwrap()).collect();
        assert_eq!(names, seen, "{caller:?}");
    }
    // The operator begins a holding and reads none.
    for path in ["/holdings/seaside/entries", "/holdings/seaside/colonies", "/holdings/seaside/verification"]
    {
        ask(&bench, Operator, Method::GET, path, None).await.problem(403, "not-allowed", path);
    }
}

/// What a refusal says is the same whether a holding, an entry or a document is there or not.
#[tokio::test]
async fn a_refusal_gives_nothing_away() {
    let bench = keyed().await;
    let told = |answer: &Answer, path: &str| {
        let text = answer.text().replace(path, "PATH");
        (answer.status, text, answer.headers.len())
    };
    for (there, not_there) in [
        (format!("/holdings/{OTHER}/entries"), "/holdings/nowhere/entries".to_owned()),
        (format!("/holdings/{OTHER}/entries/{}", id(1)), format!("/holdings/{OTHER}/entries/{}", id(77))),
        (
            format!("/holdings/{OTHER}/documents/{}", "0".repeat(64)),
            format!("/holdings/x/documents/{}", "1".repeat(64)),
        ),
        (
            format!("/holdings/{OTHER}/colonies/M1/supering"),
            format!("/holdings/{OTHER}/colonies/M77/supering"),
        ),
    ] {
        for caller in [Keeper, Reader, Nobody, UnknownKey] {
            let (one, two) = (
                ask(&bench, caller, Method::GET, &there, None).await,
                ask(&bench, caller, Method::GET, &not_there, None).await,
            );
            assert_eq!(told(&one, &there), told(&two, &not_there), "{caller:?}");
        }
    }
    // A key that is not known, one with another secret, and none at all.
    let path = format!("/holdings/{HOLDING}/colonies");
    let nobody = told(&ask(&bench, Nobody, Method::GET, &path, None).await, &path);
    for caller in [WrongSecret, UnknownKey, OtherScheme] {
        assert_eq!(told(&ask(&bench, caller, Method::GET, &path, None).await, &path), nobody, "{caller:?}");
    }
    for odd in [
        "",
        "Bearer",
        "Bearer ",
        "Bearer keeper00",
        "Bearer keeper00.",
        "Bearer .one",
        "Bearer KEEPER00.one",
        "bearer keeper00 .one",
        "keeper00.one",
    ] {
        let request = Request::get(&path).header("authorization", odd).body(Body::empty()).unwrap();
        assert_eq!(told(&bench.send(request).await, &path), nobody, "`{odd}`");
    }
    // The scheme is written in any case.
    let request =
        Request::get(&path).header("authorization", "bEARER keeper00.one").body(Body::empty()).unwrap();
    bench.send(request).await.good();
    // Whoever holds the secret is told that the key has ended.
    let answer = ask(&bench, RunOut, Method::GET, &path, None).await;
    assert_eq!(answer.problem(401, "ended-key", &path)["detail"], "key `runout00` ran out on 2026-04-10");
    let answer = ask(&bench, Ended, Method::GET, &path, None).await;
    assert_eq!(answer.problem(401, "ended-key", &path)["detail"], "key `ended000` was ended");
    // Names of other holdings are not told as likely ones either.
    let misspelt = "/holdings/moorsid/colonies";
    assert!(!ask(&bench, Keeper, Method::GET, misspelt, None).await.text().contains(OTHER));
}

/// The day before, on and after the last day of a key.
#[tokio::test]
async fn a_key_holds_up_to_its_last_day() {
    let bench = keyed().await;
    let path = format!("/holdings/{HOLDING}/colonies");
    for (day, holds) in [("2026-04-10", true), ("2026-04-11", true), ("2026-04-12", false)] {
        bench.clock.move_to(day);
        let answer = ask(&bench, Reader, Method::GET, &path, None).await;
        assert_eq!(answer.status == 200, holds, "{day}: {}", answer.text());
    }
    bench.clock.move_to(TODAY);
    // One that is ended while the service runs is refused from then on.
    ask(&bench, Keeper, Method::GET, &path, None).await.good();
    assert!(
        bench
            .journal
            .end_key("keeper00".parse().unwrap(), "2026-04-11T09:00:00.000Z".parse().unwrap())
            .await
            .unwrap()
    );
    ask(&bench, Keeper, Method::GET, &path, None).await.problem(401, "ended-key", &path);
}

fn put(number: u32) -> String {
    format!("/holdings/{HOLDING}/entries/{}", id(number))
}

#[tokio::test]
async fn a_helper_adds_and_corrects_nothing_and_a_vet_adds_what_a_vet_writes() {
    let bench = keyed().await;
    let inspection = entry(50, "2026-04-10", "inspection", json!({ "colony": "M1" }));
    let mut correction = entry(51, "2026-04-10", "inspection", json!({ "colony": "M2" }));
    correction["corrects"] = json!(id(50));
    correction["reason"] = json!("the other hive");
    let mut struck_out = entry(52, "2026-04-10", "strike_out", json!({}));
    struck_out["corrects"] = json!(id(50));
    struck_out["reason"] = json!("never happened");
    let prescription = entry(
        53,
        "2026-04-10",
        "prescription",
        json!({
            "prescription": "P1", "medicine": "strips", "issued_by": "A. Vet (invented)",
        }),
    );

    let recorded = ask(&bench, Helper, Method::PUT, &put(50), Some(&inspection)).await;
    assert_eq!((recorded.status, &recorded.json()["key"]), (201, &json!("helper00")), "{}", recorded.text());
    for (caller, number, body, pointer) in [
        (Helper, 51, &correction, "/corrects"),
        (Helper, 52, &struck_out, "/corrects"),
        (Vet, 50, &inspection, "/kind"),
        (Vet, 51, &correction, "/corrects"),
    ] {
        let (at, detail, help) = ask(&bench, caller, Method::PUT, &put(number), Some(body)).await.fault(
            403,
            "not-allowed",
            &put(number),
        );
        assert_eq!(at, pointer, "{caller:?} {number}: {detail}");
        assert_eq!(help, "ask the keeper to record it");
    }
    let answer = ask(&bench, Vet, Method::PUT, &put(53), Some(&prescription)).await;
    // Whether or not the entry is true, the vet may send it.
    assert!([201, 422].contains(&answer.status), "{}", answer.text());
    // A batch with one entry that is not allowed records none.
    let before = bench.entries_of(HOLDING).await;
    let more = entry(60, "2026-04-10", "inspection", json!({ "colony": "M2" }));
    let batch = Value::Array(vec![more, correction.clone()]);
    let path = format!("/holdings/{HOLDING}/entries");
    let (at, ..) =
        ask(&bench, Helper, Method::POST, &path, Some(&batch)).await.fault(403, "not-allowed", &path);
    assert_eq!(at, "/1/corrects");
    assert_eq!(bench.entries_of(HOLDING).await, before);
    // The keeper may.
    let corrected = ask(&bench, Keeper, Method::PUT, &put(51), Some(&correction)).await;
    assert_eq!(
        (corrected.status, &corrected.json()["key"]),
        (201, &json!("keeper00")),
        "{}",
        corrected.text()
    );
    // The same entry sent again with another key is the one that was recorded.
    let again = ask(&bench, Keeper, Method::PUT, &put(50), Some(&inspection)).await;
    assert_eq!((again.status, &again.json()["key"]), (200, &json!("helper00")), "{}", again.text());
}

#[tokio::test]
async fn a_key_that_asks_too_often_is_told_to_wait_and_holds_up_no_other() {
    let few = std::num::NonZeroU32::new(5).unwrap();
    let slow = std::num::NonZeroU32::new(1).unwrap();
    let bench = keyed_at(Rate { per_second: slow, at_once: few }).await;
    let path = format!("/holdings/{HOLDING}/colonies");
    for _ in 0..5 {
        ask(&bench, Keeper, Method::GET, &path, None).await.good();
    }
    let answer = ask(&bench, Keeper, Method::GET, &path, None).await;
    answer.problem(429, "too-many-requests", &path);
    ask(&bench, Helper, Method::GET, &path, None).await.good();
    // Whoever has no key that holds shares one rate with all such, and keeps nobody else out.
    let mut statuses = Vec::new();
    for caller in [Nobody, WrongSecret, UnknownKey, Ended, Nobody, Nobody, WrongSecret] {
        statuses.push(ask(&bench, caller, Method::GET, &path, None).await.status);
    }
    assert_eq!(statuses, [401, 401, 401, 401, 401, 429, 429]);
    ask(&bench, Helper, Method::GET, &path, None).await.good();
    // What is open to all is not counted.
    for _ in 0..20 {
        ask(&bench, Nobody, Method::GET, "/healthz", None).await.good();
    }
}

/// What was looked up, and what was answered, is kept for the next request: not for a key that was ended meanwhile.
#[tokio::test]
async fn a_key_that_is_ended_is_refused_from_the_next_request_on() {
    let bench = keyed().await;
    let path = format!("/holdings/{HOLDING}/colonies");
    for _ in 0..3 {
        ask(&bench, Keeper, Method::GET, &path, None).await.good();
    }
    let now = "2026-04-11T10:00:00.000Z".parse().unwrap();
    assert!(bench.journal.end_key("keeper00".parse().unwrap(), now).await.unwrap());
    assert_eq!(ask(&bench, Keeper, Method::GET, &path, None).await.status, 401);
    ask(&bench, Helper, Method::GET, &path, None).await.good();
}

/// Who asked for an answer that was given to somebody else before is asked for a key all the same.
#[tokio::test]
async fn an_answer_that_is_kept_is_given_to_nobody_who_may_not_have_it() {
    let bench = keyed().await;
    let path = format!("/holdings/{HOLDING}/colonies/M1/supering");
    let whole = ask(&bench, Keeper, Method::GET, &path, None).await;
    whole.good();
    let again = ask(&bench, Reader, Method::GET, &path, None).await;
    assert_eq!(again.text(), whole.text());
    for (caller, status) in [(Foreign, 403), (Operator, 403), (Nobody, 401), (Ended, 401), (RunOut, 401)] {
        let refused = ask(&bench, caller, Method::GET, &path, None).await;
        assert_eq!(refused.status, status, "{caller:?}: {}", refused.text());
        assert!(!refused.text().contains("grounds"), "{caller:?}");
    }
}

#[tokio::test]
async fn the_log_names_the_key_and_never_its_secret() {
    let bench = keyed().await;
    let path = format!("/holdings/{HOLDING}/colonies");
    for (caller, id) in [(Reader, "keyed-1"), (WrongSecret, "keyed-2")] {
        let request = Request::get(&path).header("authorization", caller.header().unwrap());
        bench.send(request.header("x-request-id", id).body(Body::empty()).unwrap()).await;
    }
    let keys = logged(|line| {
        let id = line["span"]["id"].as_str().filter(|id| id.starts_with("keyed-"))?;
        Some(json!([id, line["span"]["key"]]))
    });
    assert_eq!(keys, [json!(["keyed-1", "reader00"]), json!(["keyed-2", null])]);
}

/// A body is read only after the door.
#[tokio::test]
async fn a_body_without_a_key_is_not_read() {
    let bench = keyed().await;
    // Nothing ever arrives.
    let (_open, body) = tokio::io::duplex(8);
    let body = Body::from_stream(tokio_util::io::ReaderStream::new(body));
    let request = Request::put(put(50)).header("content-type", "application/json").body(body).unwrap();
    let answer = tokio::time::timeout(std::time::Duration::from_secs(5), bench.send(request)).await;
    answer.expect("it did not wait for the body").problem(401, "no-key", &put(50));
}
