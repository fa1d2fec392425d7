//! A clock that is behind the journal: an answer about "today" says so.

use serde_json::{Value, json};

use crate::bench::Bench;
use crate::schema::Document;
use crate::seed;

/// The day by a clock that is behind: when the holding was recorded, it was over everywhere on Earth.
const BEHIND: &str = "2026-04-09";

/// The paths of the questions whose day is today if none is named, each with a query that names it.
fn questions() -> Vec<(String, String)> {
    let document = Document::of_the_service();
    let day = |operation: &Value, named: &str| {
        let parameters = operation["parameters"].as_array().into_iter().flatten();
        let days = parameters
            .filter(|parameter| ["on", "from", "to", "as_of"].contains(&parameter["name"].as_str().unwrap()));
        days.map(|parameter| format!("{}={named}", parameter["name"].as_str().unwrap()))
            .collect::<Vec<_>>()
            .join("&")
    };
    let of_a_holding =
        document.operations().filter(|(path, method, _)| *method == "get" && path.contains("{holding}"));
    let asked = of_a_holding.map(|(path, _, operation)| {
        let path = path
            .replace("{holding}", "heathside")
            .replace("{colony}", "M1")
            .replace("{apiary}", "orchard")
            .replace("{lot}", "strips-1");
        (path, day(operation, BEHIND))
    });
    asked.filter(|(_, query)| !query.is_empty()).collect()
}

#[tokio::test]
async fn an_answer_about_today_says_that_the_clock_is_behind_the_journal() {
    let bench = seed::bench().await;
    let questions = questions();
    assert!(questions.len() >= 14, "{questions:?}");
    let said =
        "by this machine's clock it is 2026-04-09, but entry 16 was recorded on 2026-04-11T08:15:30.123Z";
    let help =
        "set the clock before you record anything or ask about today; if it was wrong then, name the day";
    let warning = json!({
        "today": BEHIND, "seq": 16, "recorded_at": "2026-04-11T08:15:30.123Z", "said": said, "help": help,
    });
    for (path, query) in &questions {
        let doubt = async |bench: &Bench, path: &str| {
            let answer = bench.get(path).await;
            assert_eq!(answer.status, 200, "{path}: {}", answer.text());
            let in_header = answer.header("clock-behind").map(str::to_owned);
            let is_report =
                answer.header("content-type") == Some("application/json") && !path.contains("/exchange/");
            (in_header, is_report.then(|| answer.json()["clock_behind"].clone()))
        };
        assert_eq!(doubt(&bench, path).await.0, None, "{path}");
        bench.clock.move_to(BEHIND);
        let (in_header, in_report) = doubt(&bench, path).await;
        assert_eq!(in_header.as_deref(), Some("2026-04-11T08:15:30.123Z"), "{path}");
        assert!(in_report.is_none_or(|told| told == warning), "{path}");
        // Who names the day does not ask the clock.
        let (in_header, in_report) = doubt(&bench, &format!("{path}?{query}")).await;
        assert_eq!(in_header, None, "{path}?{query}");
        assert!(in_report.is_none_or(|told| told.is_null()), "{path}?{query}");
        bench.clock.move_to(crate::bench::TODAY);
    }
}

#[tokio::test]
async fn a_file_about_today_says_it_in_a_header() {
    let bench = seed::bench().await;
    bench.clock.move_to(BEHIND);
    for path in [
        "register?format=csv",
        "register?format=html",
        "register?format=pdf",
        "register?format=csv&to=2026-04-09",
        "register/pack?as_of=2026-04-09",
        "due?format=calendar",
    ] {
        let answer = bench.get(&format!("/holdings/heathside/{path}")).await;
        assert_eq!(
            (answer.status, answer.header("clock-behind")),
            (200, Some("2026-04-11T08:15:30.123Z")),
            "{path}"
        );
    }
}

#[test]
fn the_document_describes_the_warning_wherever_it_may_stand() {
    let document = Document::of_the_service();
    let mut described = 0;
    for (path, method, operation) in document.operations().filter(|(path, ..)| path.contains("{holding}")) {
        let response = &operation["responses"]["200"];
        let Some(header) = response["headers"].get("clock-behind") else { continue };
        assert_eq!((method, &header["schema"]["format"]), ("get", &json!("date-time")), "{path}");
        if let Some(reference) = response["content"]["application/json"]["schema"]["$ref"].as_str() {
            let schema = document.resolve(reference).unwrap();
            assert!(schema["properties"]["clock_behind"].is_object(), "{path}: {schema}");
            assert!(!schema["required"].to_string().contains("clock_behind"), "{path}");
            described += 1;
        }
    }
    assert!(described >= 13, "{described}");
}
