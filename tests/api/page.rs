//! The page at the hive, as files, and the forms that it fills in.

use serde_json::{Value, json};

use combclear_wording::reports::rules;

use crate::bench::{Bench, laws, leaflets};
use crate::seed::{self, HOLDING};

#[tokio::test]
async fn the_page_is_served_with_all_that_it_needs_and_may_fetch_nothing_from_elsewhere() {
    let bench = Bench::new().await;
    let page = bench.get("/").await;
    assert_eq!((page.status, page.header("content-type")), (200, Some("text/html; charset=utf-8")));
    let mut wanted: Vec<String> = vec!["/".to_owned()];
    let mut seen: Vec<String> = Vec::new();
    while let Some(path) = wanted.pop() {
        let file = bench.get(&path).await;
        if path.ends_with("engine.wasm") && file.status == 404 {
            continue;
        }
        assert_eq!(file.status, 200, "{path}");
        let policy = file.header("content-security-policy").unwrap();
        let strict = policy.replace("'wasm-unsafe-eval'", "");
        assert!(strict.starts_with("default-src 'none'") && !strict.contains("unsafe"), "{path}: {policy}");
        assert_eq!(file.header("x-content-type-options"), Some("nosniff"), "{path}");
        assert!(file.header("etag").is_some(), "{path}");
        // A program needs nothing else.
        let text = if path.ends_with("engine.wasm") { String::new() } else { file.text() };
        let named = text.split(['"', '\'']).filter_map(|part| {
            let name = part.strip_prefix("/page/").or_else(|| part.strip_prefix("./"))?;
            Some(format!("/page/{name}"))
        });
        seen.push(path);
        wanted.extend(named.filter(|path| !seen.contains(path)).collect::<std::collections::BTreeSet<_>>());
    }
    seen.sort();
    seen.dedup();
    // The program that answers without signal is there if it was built.
    seen.retain(|path| !path.ends_with("engine.wasm"));
    assert_eq!(seen.len(), 22, "{seen:?}");
    bench.get("/page/pge.js").await.problem(404, "unknown-path", "/page/pge.js");
}

#[tokio::test]
async fn the_page_is_told_by_which_leaflets_and_laws_the_service_answers() {
    let bench = Bench::new().await;
    let words = bench.get("/page/words.json").await.json();
    // Those of the tests, not the built-in ones: what answers on a phone must not be used with these.
    assert_eq!(words["rules"], json!(rules(&leaflets(), &laws())));
    assert_ne!(words["rules"], json!(rules(combclear_leaflets::builtin().unwrap(), &laws())));
    let version = bench.get("/page/version.json").await.json();
    assert_eq!(words["version"], version["version"]);
    let worker = bench.get("/page/sw.js").await.text();
    assert!(worker.contains(&format!("kept-{}", version["version"].as_str().unwrap())), "{worker}");
}

#[tokio::test]
async fn only_the_reading_of_a_leaflet_confirms_anything() {
    let bench = seed::bench().await;
    let path = format!("/holdings/{HOLDING}/forms/inspection");
    let filled = json!({
        "on": "2026-04-11", "fields": { "colony": ["M1"], "brood": ["present"] },
        "confirms": [{ "topic": "dose", "value": { "amount": 2, "per": "hive" } }],
    });
    let problem = bench.post(&path, &filled).await.problem(422, "unreadable-entry", &path);
    assert_eq!(problem["errors"][0]["pointer"], "/confirms", "{problem}");
    assert!(!problem["errors"][0]["help"].as_str().unwrap().is_empty());
}

#[tokio::test]
async fn the_sheet_of_a_visit_says_what_the_board_says() {
    let bench = seed::bench().await;
    let path = format!("/holdings/{HOLDING}/apiaries/orchard");
    for on in ["2026-03-01", "2026-04-11", "2026-08-01"] {
        let sheet = bench.get(&format!("{path}/visit?on={on}")).await.good();
        let board = bench.get(&format!("{path}/supering?on={on}")).await.good();
        let lines = sheet["colonies"].as_array().unwrap();
        assert_eq!(lines.len(), board["colonies"].as_array().unwrap().len(), "{on}");
        assert!(!lines.is_empty());
        for answer in board["colonies"].as_array().unwrap() {
            let line = lines.iter().find(|line| line["colony"] == answer["colony"]).unwrap();
            for field in ["answer", "first_free_day", "if_out_on"] {
                assert_eq!(line[field], answer[field], "{on} {field}");
            }
            // Until when it holds is the end of the first of the days ahead.
            assert_eq!(line["holds_through"], answer["ahead"][0]["to"], "{on}");
            assert!(line["word"].as_str().is_some_and(|word| !word.is_empty()));
            assert_eq!(line["why"].is_null(), answer["answer"] == "yes", "{on}: {line}");
        }
        let due =
            bench.get(&format!("/holdings/{HOLDING}/due?apiary=orchard&from={on}&to={on}")).await.good();
        let items =
            due["visits"].as_array().unwrap().iter().flat_map(|visit| visit["items"].as_array().unwrap());
        let keys: Vec<&Value> = items.map(|item| &item["key"]).collect();
        assert_eq!(
            sheet["due"].as_array().unwrap().iter().map(|task| &task["key"]).collect::<Vec<_>>(),
            keys
        );
    }
}

#[tokio::test]
async fn the_season_of_a_colony_and_of_an_apiary_is_one_picture_each() {
    let bench = seed::bench().await;
    for (path, shown) in [("colonies/M1", 1), ("apiaries/orchard", 2)] {
        let picture = bench.get(&format!("/holdings/{HOLDING}/{path}/season?on=2026-04-11")).await;
        assert_eq!((picture.status, picture.header("content-type")), (200, Some("image/svg+xml")));
        assert_eq!(picture.header("content-security-policy"), Some("default-src 'none'"));
        let picture = picture.text();
        assert!(picture.starts_with("<svg ") && picture.ends_with("</svg>"), "{picture}");
        assert!(picture.contains("<title ") && picture.contains("<desc "), "{picture}");
        assert!(picture.matches("may be supered: ").count() >= shown, "{picture}");
        assert!(!picture.contains("<script") && !picture.contains("href"), "{picture}");
    }
    bench.get(&format!("/holdings/{HOLDING}/colonies/X9/season")).await.problem(
        404,
        "unknown-colony",
        &format!("/holdings/{HOLDING}/colonies/X9/season"),
    );
}

#[tokio::test]
async fn a_form_that_is_filled_in_gives_entries_that_can_be_recorded_and_records_nothing_itself() {
    let bench = seed::bench().await;
    let before = bench.entries_of(HOLDING).await;
    let path = format!("/holdings/{HOLDING}/forms/inspection");
    let form = json!({ "on": "2026-04-10", "fields": { "colony": ["M1", "M2"], "brood": ["absent"], "seams": ["5"] } });
    let filled = bench.post(&path, &form).await.good();
    assert_eq!(bench.entries_of(HOLDING).await, before);
    let mut entries = filled["entries"].as_array().unwrap().clone();
    assert_eq!(entries.len(), 2, "{filled}");
    assert_eq!(entries[0]["recorded_by"], "A. Keeper", "who recorded the last entry");
    for (number, entry) in (800..).zip(&mut entries) {
        entry["id"] = json!(seed::id(number));
    }
    bench.post(&format!("/holdings/{HOLDING}/entries"), &json!(entries)).await.good();
    assert_eq!(bench.entries_of(HOLDING).await, before + 2);
    let colony = bench.get(&format!("/holdings/{HOLDING}/colonies/M2?on=2026-04-11")).await.good();
    let broods = colony["broods"].as_array().unwrap();
    assert_eq!(broods.last().unwrap()["on"], "2026-04-10", "{colony}");
}

#[tokio::test]
async fn what_is_wrong_with_a_form_is_said_at_each_field() {
    let bench = seed::bench().await;
    let before = bench.entries_of(HOLDING).await;
    let path = format!("/holdings/{HOLDING}/forms/inspection");
    let cases = [
        (
            json!({ "fields": { "colony": ["M1"], "brood": ["maybe"], "seams": ["many"] } }),
            vec!["/fields/brood", "/fields/seams"],
        ),
        (json!({ "fields": {} }), vec!["/fields/colony"]),
        (json!({ "fields": { "colony": ["M1"], "queen": ["red"] } }), vec!["/fields/queen"]),
        (json!({ "fields": { "colony": ["M1"], "": [], "a/b": ["c"] } }), vec!["/fields/", "/fields/a~1b"]),
        // A day to come cannot be true.
        (json!({ "on": "2027-01-01", "fields": { "colony": ["M1"], "seams": ["3"] } }), vec![""]),
        (json!({ "fields": { "colony": ["No such"], "seams": ["3"] } }), vec![""]),
        (json!({ "colour": "red" }), vec!["/colour"]),
        (json!({ "on": "28.08.2026", "fields": {} }), vec!["/on"]),
        (json!({ "recorded_by": "" }), vec!["/recorded_by"]),
        (json!([]), vec![""]),
    ];
    for (form, pointers) in cases {
        let answer = bench.post(&path, &form).await;
        assert_eq!(answer.status, 422, "{form}: {}", answer.text());
        let problem = answer.json();
        let found: Vec<&str> = problem["errors"]
            .as_array()
            .unwrap()
            .iter()
            .map(|fault| fault["pointer"].as_str().unwrap())
            .collect();
        assert_eq!(found, pointers, "{form}: {problem}");
        for fault in problem["errors"].as_array().unwrap() {
            assert!(fault["help"].as_str().is_some_and(|help| !help.is_empty()), "{fault}");
        }
    }
    for kind in ["archived", "no_such_kind"] {
        let path = format!("/holdings/{HOLDING}/forms/{kind}");
        assert_eq!(bench.post(&path, &json!({})).await.status, 400, "{kind}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, before);
}

#[tokio::test]
async fn each_kind_of_entry_that_people_fill_in_has_a_form_with_words_for_each_field() {
    let bench = Bench::new().await;
    let forms = bench.get("/forms").await.good();
    let forms = forms["items"].as_array().unwrap();
    assert!(forms.len() >= 20, "{}", forms.len());
    for form in forms {
        for text in ["kind", "title"] {
            assert!(form[text].as_str().is_some_and(|text| !text.is_empty()), "{form}");
        }
        for field in form["fields"].as_array().unwrap() {
            for text in ["key", "label", "hint", "example"] {
                assert!(field[text].as_str().is_some_and(|text| !text.is_empty()), "{field}");
            }
            let choices = field["choices"].as_array().unwrap();
            assert_eq!(field["input"] == "choice", !choices.is_empty(), "{field}");
            assert_eq!(field["input"] == "name" || field["input"] == "names", field["of"].is_string());
        }
    }
}
