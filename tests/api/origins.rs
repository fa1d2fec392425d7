//! Pages elsewhere that call the service from a browser.
//!
//! Source: the Fetch standard of the WHATWG, section "HTTP CORS protocol".

use axum::body::Body;
use axum::http::{Method, Request};
use combclear_service::App;

use crate::bench::{Answer, Bench};
use crate::seed;

const PAGE: &str = "https://hives.example.org";

async fn from(bench: &Bench, method: Method, path: &str, origin: &str, headers: &[(&str, &str)]) -> Answer {
    let mut request = Request::builder().method(method).uri(path).header("origin", origin);
    for (name, value) in headers {
        request = request.header(*name, *value);
    }
    bench.send(request.body(Body::empty()).unwrap()).await
}

async fn open_to_page() -> Bench {
    let bench = Bench::made(|app: App| app.open_to(vec![PAGE.parse().unwrap()])).await;
    seed::record(&bench).await;
    bench
}

#[tokio::test]
async fn without_a_list_no_page_elsewhere_may_read_an_answer() {
    let bench = seed::bench().await;
    let answer = from(&bench, Method::GET, "/holdings", PAGE, &[]).await;
    assert_eq!((answer.status, answer.header("access-control-allow-origin")), (200, None));
    let asked = [("access-control-request-method", "PUT")];
    let answer = from(&bench, Method::OPTIONS, &seed::path(1), PAGE, &asked).await;
    assert_eq!(answer.header("access-control-allow-origin"), None);
}

#[tokio::test]
async fn a_page_on_the_list_may_read_answers_and_problems_and_see_their_tags() {
    let bench = open_to_page().await;
    for (path, status) in [("/holdings/heathside/stock", 200), ("/holdings/nowhere/stock", 404)] {
        let answer = from(&bench, Method::GET, path, PAGE, &[]).await;
        assert_eq!(
            (answer.status, answer.header("access-control-allow-origin")),
            (status, Some(PAGE)),
            "{path}"
        );
        let exposed = answer.header("access-control-expose-headers").unwrap().to_lowercase();
        assert!(exposed.contains("etag") && exposed.contains("location"), "{exposed}");
    }
    let asked = [
        ("access-control-request-method", "PUT"),
        ("access-control-request-headers", "content-type,if-none-match"),
    ];
    let answer = from(&bench, Method::OPTIONS, &seed::path(1), PAGE, &asked).await;
    assert_eq!((answer.status, answer.header("access-control-allow-origin")), (200, Some(PAGE)));
    assert!(answer.header("access-control-allow-methods").unwrap().contains("PUT"));
    assert!(answer.header("access-control-allow-headers").unwrap().to_lowercase().contains("content-type"));
}

#[tokio::test]
async fn a_page_that_is_not_on_the_list_may_not() {
    let bench = open_to_page().await;
    for origin in [
        "https://hives.example.org.evil.example",
        "http://hives.example.org",
        "https://hives.example.org:8443",
        "null",
    ] {
        let answer = from(&bench, Method::GET, "/holdings", origin, &[]).await;
        assert_eq!(answer.header("access-control-allow-origin"), None, "{origin}");
    }
}
