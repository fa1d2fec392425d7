//! Unknown paths and methods.

use axum::body::Body;
use axum::http::{Method, Request};

use crate::bench::{Bench, json};
use crate::seed;

#[tokio::test]
async fn a_path_that_is_not_served_is_a_problem() {
    let bench = Bench::new().await;
    for path in
        ["/holding", "/holdings/", "/holdings/heathside/", "/holdings/heathside/colonies/M1/supering/now"]
    {
        let problem = bench.get(path).await.problem(404, "unknown-path", path);
        assert_eq!(problem["errors"], serde_json::json!([]));
    }
}

#[tokio::test]
async fn a_method_that_a_path_does_not_take_is_a_problem_that_names_those_it_takes() {
    let bench = Bench::new().await;
    let entry = seed::path(1);
    for (method, path, allowed) in [
        (Method::DELETE, entry.as_str(), ["GET", "HEAD", "PUT"].as_slice()),
        (Method::PATCH, &entry, &["GET", "HEAD", "PUT"]),
        (Method::PUT, "/holdings/heathside/entries", &["GET", "HEAD", "POST"]),
        (Method::GET, "/holdings/heathside", &["PUT"]),
        (Method::POST, "/healthz", &["GET", "HEAD"]),
    ] {
        let answer = bench.send(json(method, path, "{}")).await;
        answer.problem(405, "wrong-method", path);
        let mut listed: Vec<&str> = answer.header("allow").unwrap().split(',').collect();
        listed.sort_unstable();
        assert_eq!(listed, allowed, "{path}");
    }
}

#[tokio::test]
async fn head_is_answered_like_get_without_the_body() {
    let bench = seed::bench().await;
    let answer = bench.send(Request::head("/holdings").body(Body::empty()).unwrap()).await;
    assert_eq!((answer.status, answer.body.len()), (200, 0));
    let answer = bench.send(Request::head("/nowhere").body(Body::empty()).unwrap()).await;
    assert_eq!((answer.status, answer.header("content-type")), (404, Some("application/problem+json")));
}

#[tokio::test]
async fn a_query_parameter_that_a_path_does_not_take_is_a_problem_everywhere() {
    let bench = seed::bench().await;
    for path in [
        "/healthz",
        "/readyz",
        "/openapi.json",
        "/docs",
        "/docs/index.html",
        "/problems/timeout",
        "/laws",
        "/laws/gb",
        "/holdings/heathside/retention",
        "/leaflets",
        "/leaflets/gb/demo-strip",
        "/holdings",
        "/holdings/heathside/entries",
        "/holdings/heathside/verification",
        "/holdings/heathside/documents",
        &format!("/holdings/heathside/documents/{}", "0".repeat(64)),
        "/holdings/heathside/colonies",
        "/holdings/heathside/colonies/M1",
        "/holdings/heathside/colonies/M1/supering",
        "/holdings/heathside/apiaries",
        "/holdings/heathside/apiaries/orchard",
        "/holdings/heathside/apiaries/orchard/supering",
        "/holdings/heathside/colonies/M1/treatment-options",
        "/holdings/heathside/apiaries/orchard/treatment-options",
        seed::path(1).as_str(),
    ] {
        let answer = bench.get(&format!("{path}?ON=2026-04-11")).await;
        let (parameter, detail, help) = answer.fault(400, "bad-parameter", path);
        assert_eq!(parameter, "ON", "{path}");
        assert_eq!(detail, "this path has no query parameter `ON`", "{path}");
        assert!(help.starts_with("this path takes "), "{path}: {help}");
    }
    let answer = bench.get("/holdings/heathside/colonies?no=1").await;
    assert_eq!(answer.fault(400, "bad-parameter", "/holdings/heathside/colonies").2, "this path takes `on`");
    for sent in [
        json(Method::PUT, &format!("{}?dry=1", seed::path(1)), "{}"),
        json(Method::POST, "/holdings/heathside/entries?dry=1", "[]"),
    ] {
        let path = sent.uri().path().to_owned();
        let answer = bench.send(sent).await;
        assert_eq!(answer.fault(400, "bad-parameter", &path).0, "dry");
    }
}

#[tokio::test]
async fn a_query_parameter_is_given_once() {
    let bench = seed::bench().await;
    let path = "/holdings/heathside/colonies";
    let (parameter, detail, _) =
        bench.get(&format!("{path}?on=2026-04-11&on=2026-04-12")).await.fault(400, "bad-parameter", path);
    assert_eq!((parameter.as_str(), detail.as_str()), ("on", "the query parameter `on` is given twice"));
}

#[tokio::test]
async fn a_day_that_is_not_in_the_calendar_is_a_problem() {
    let bench = seed::bench().await;
    for (day, why) in [
        ("2025-02-29", "`2025-02-29` is not a day of the calendar"),
        ("11.04.2026", "`11.04.2026` is not a date written like 2026-04-11"),
        ("2026-04-11T00:00:00Z", "`2026-04-11T00:00:00Z` is not a date written like 2026-04-11"),
        ("", "`` is not a date written like 2026-04-11"),
        ("1899-12-31", "`1899-12-31` is not a day between 1900-01-01 and 2199-12-31"),
    ] {
        for path in [
            "/holdings/heathside/colonies",
            "/holdings/heathside/colonies/M1",
            "/holdings/heathside/colonies/M1/supering",
            "/holdings/heathside/apiaries",
            "/holdings/heathside/apiaries/orchard",
            "/holdings/heathside/apiaries/orchard/supering",
        ] {
            let (parameter, detail, help) =
                bench.get(&format!("{path}?on={day}")).await.fault(400, "bad-parameter", path);
            assert_eq!((parameter.as_str(), detail.as_str()), ("on", why), "{path}");
            assert_eq!(help, "correct `on`, or leave it out");
        }
    }
}

#[tokio::test]
async fn a_part_of_a_path_that_cannot_be_a_name_is_a_problem() {
    let bench = seed::bench().await;
    let long = "x".repeat(81);
    let cases = [
        (
            "/holdings/a%2Fb/colonies".to_owned(),
            "holding",
            "`a/b` cannot be the name of a holding: it contains a `/`",
        ),
        (format!("/holdings/{long}/colonies"), "holding", "it is longer than 80 characters"),
        ("/holdings/heathside/colonies/M1%00".to_owned(), "colony", "it contains a control character"),
        (
            "/holdings/heathside/colonies/%20M1/supering".to_owned(),
            "colony",
            "it begins or ends with a space",
        ),
        (
            "/holdings/heathside/apiaries/%FF".to_owned(),
            "apiary",
            "a part of the path is not UTF-8 once percent-decoded",
        ),
        ("/holdings/heathside/entries/x".to_owned(), "id", "`x` is neither the id of an entry"),
        (
            "/holdings/heathside/documents/17".to_owned(),
            "document",
            "`17` is not a hash of 64 hexadecimal digits",
        ),
        ("/leaflets/g%0Ab/demo-strip".to_owned(), "jurisdiction", "it contains a control character"),
    ];
    for (path, name, why) in cases {
        let (parameter, detail, help) = bench.get(&path).await.fault(400, "bad-parameter", &path);
        assert_eq!(parameter, name, "{path}");
        assert!(detail.contains(why), "{path}: {detail}");
        assert!(!help.is_empty());
    }
}
