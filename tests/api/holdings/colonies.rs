//! `/holdings/{holding}/colonies` and `/holdings/{holding}/colonies/{colony}`

use serde_json::{Value, json};

use crate::seed::{self, id};

const PATH: &str = "/holdings/heathside/colonies";

#[tokio::test]
async fn the_colonies_that_live_today_are_listed_with_their_answers() {
    let bench = seed::bench().await;
    insta::assert_json_snapshot!(bench.get(PATH).await.good());
}

#[tokio::test]
async fn the_list_of_another_day_has_the_colonies_that_lived_then() {
    let bench = seed::bench().await;
    let names = async |on: &str| {
        let list = bench.get(&format!("{PATH}?on={on}")).await.good();
        assert_eq!(list["on"], on);
        list["items"]
            .as_array()
            .unwrap()
            .iter()
            .map(|item| item["colony"].as_str().unwrap().to_owned())
            .collect::<Vec<_>>()
    };
    assert_eq!(names("2026-01-04").await, Vec::<String>::new());
    assert_eq!(names("2026-01-05").await, ["F1", "M1", "M2", "M3", "M4"]);
    assert_eq!(names("2026-02-28").await, ["F1", "M1", "M2", "M3", "M4"]);
    assert_eq!(names("2026-03-01").await, ["F1", "M1", "M2", "M3"]);
}

#[tokio::test]
async fn a_list_says_the_same_of_a_colony_as_its_report() {
    let bench = seed::bench().await;
    let list = bench.get(&format!("{PATH}?on=2026-04-02")).await.good();
    for item in list["items"].as_array().unwrap() {
        let path = format!("{PATH}/{}/supering?on=2026-04-02", item["colony"].as_str().unwrap());
        let report = bench.get(&path).await.good();
        for field in
            ["colony", "apiary", "answer", "summary", "last_blocked_day", "first_free_day", "if_out_on"]
        {
            assert_eq!(item[field], report[field], "{field} of {path}");
        }
        assert_eq!(list["notice"], report["notice"]);
    }
}

#[tokio::test]
async fn a_colony_is_shown_with_its_life_its_courses_and_who_said_each_term() {
    let bench = seed::bench().await;
    insta::assert_json_snapshot!(bench.get(&format!("{PATH}/M2")).await.good());
}

#[tokio::test]
async fn a_colony_is_shown_as_it_stood_on_the_day() {
    let bench = seed::bench().await;
    let on = async |colony: &str, on: &str| bench.get(&format!("{PATH}/{colony}?on={on}")).await.good();

    let before = on("M2", "2026-01-04").await;
    assert_eq!(
        before["life"],
        json!({ "alive": false, "begun": { "on": "2026-01-05", "entry": id(5) }, "ended": null })
    );
    assert_eq!((&before["apiary"], &before["courses"]), (&Value::Null, &json!([])));
    assert_eq!(on("M2", "2026-02-19").await["courses"], json!([]));
    let inside = on("M2", "2026-02-20").await;
    assert_eq!(inside["courses"][0]["end"], json!({ "state": "open" }));
    assert_eq!(inside["courses"][0]["doses"], json!([{ "on": "2026-02-20", "entry": id(11) }]));
    let out = on("M2", "2026-04-06").await;
    assert_eq!(out["courses"][0]["end"], json!({ "state": "out", "on": "2026-04-06", "entry": id(15) }));

    let ended = on("M4", "2026-04-11").await;
    assert_eq!(ended["life"]["alive"], false);
    assert_eq!(ended["life"]["ended"], json!({ "on": "2026-03-01", "entry": id(12) }));
    assert_eq!(on("M4", "2026-02-01").await["life"]["alive"], true);

    let brood = json!([{ "on": "2026-03-20", "brood": "present", "entry": id(13) }]);
    assert_eq!(on("M1", "2026-03-19").await["broods"], json!([]));
    assert_eq!(on("M1", "2026-03-20").await["broods"], brood);
    assert_eq!(on("M3", "2026-04-11").await["unknown_since"], json!({ "on": "2026-01-05", "entry": id(6) }));
    assert_eq!(on("M3", "2026-01-04").await["unknown_since"], Value::Null);
}

#[tokio::test]
async fn supers_are_shown_from_the_day_they_went_on_to_the_day_they_came_off() {
    let bench = seed::bench().await;
    let off = seed::entry(20, "2026-04-10", "supers_off", json!({ "colonies": ["F1"], "left_on": 0 }));
    bench.put(&seed::path(20), &off).await.good();
    let supers = async |on: &str| bench.get(&format!("{PATH}/F1?on={on}")).await.good()["supers"].clone();
    assert_eq!(supers("2026-04-04").await, json!([]));
    assert_eq!(supers("2026-04-09").await, json!([{ "from": "2026-04-05", "off": null, "entry": id(14) }]));
    assert_eq!(
        supers("2026-04-10").await,
        json!([{ "from": "2026-04-05", "off": "2026-04-10", "entry": id(14) }])
    );
}

#[tokio::test]
async fn a_split_that_does_not_say_where_the_strips_went_is_shown_in_both_colonies() {
    let bench = seed::bench().await;
    let split = seed::entry(
        20,
        "2026-04-10",
        "colony_split",
        json!({ "colony": "M1", "into": "M5", "hive_mark": "11" }),
    );
    bench.put(&seed::path(20), &split).await.good();
    let not_said = json!({ "state": "not_said", "since": "2026-04-10", "entry": id(20) });
    let old = bench.get(&format!("{PATH}/M1")).await.good();
    assert_eq!((&old["courses"][0]["end"], &old["courses"][0]["came_by"]), (&not_said, &Value::Null));
    let new = bench.get(&format!("{PATH}/M5")).await.good();
    assert_eq!((&new["courses"][0]["end"], &new["courses"][0]["came_by"]), (&not_said, &json!(id(20))));
    assert_eq!((&new["hive_mark"], &new["apiary"]), (&json!("11"), &json!("orchard")));
}

#[tokio::test]
async fn a_term_says_which_authority_stated_it_and_what_it_overrules() {
    let bench = seed::bench().await;
    let reading = seed::entry(
        20,
        "2026-02-20",
        "leaflet_reading",
        json!({ "lot": "strips-1", "revision": "2026-01", "terms": { "supers_during": "on", "stay_max_days": 84 } }),
    );
    bench.put(&seed::path(20), &reading).await.good();
    let terms = bench.get(&format!("{PATH}/M1")).await.good()["courses"][0]["terms"].clone();
    let supers = &terms["supers_during"];
    assert_eq!((&supers["value"], &supers["said_by"]), (&json!("on"), &json!("leaflet_reading")));
    assert_eq!((&supers["entry"], &supers["looser_than"]), (&json!(id(20)), &json!("off")));
    assert_eq!(
        (&terms["stay_max_days"]["present"]["value"], &terms["removal"]["said_by"]),
        (&json!(84), &json!("leaflet"))
    );
    assert_eq!(
        (&terms["withdrawal_days"]["said_by"], &terms["withdrawal_days"]["entry"]),
        (&json!("pack"), &json!(id(11)))
    );
}

#[tokio::test]
async fn a_colony_that_is_in_no_entry_is_a_problem_that_names_the_nearest() {
    let bench = seed::bench().await;
    for below in ["m1", "m1/supering", "m1/supering?on=2026-01-01"] {
        let path = format!("{PATH}/{below}");
        let fault = bench.get(&path).await.fault(404, "unknown-colony", path.split('?').next().unwrap());
        let detail = "no entry of the holding `heathside` mentions a colony `m1`".to_owned();
        assert_eq!(fault, ("colony".to_owned(), detail, "did you mean `M1`?".to_owned()));
    }
    let path = format!("{PATH}/Heather-12");
    let help = bench.get(&path).await.fault(404, "unknown-colony", &path).2;
    assert_eq!(help, "look it up among the colonies of the holding; if it is new, record it as established");
}
