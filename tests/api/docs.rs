//! `/docs`

use crate::bench::Bench;

#[tokio::test]
async fn the_page_is_served_with_all_that_it_needs() {
    let bench = Bench::new().await;
    let answer = bench.get("/docs").await;
    assert_eq!((answer.status, answer.header("location")), (308, Some("/docs/index.html")));
    let page = bench.get("/docs/index.html").await;
    assert_eq!((page.status, page.header("content-type")), (200, Some("text/html; charset=utf-8")));
    let page = page.text();
    let files: Vec<&str> = page.split(['"', '\'']).filter_map(|part| part.strip_prefix("./")).collect();
    assert!(files.len() >= 4, "{files:?}");
    for file in files {
        let answer = bench.get(&format!("/docs/{file}")).await;
        assert_eq!(answer.status, 200, "{file}");
        assert!(!answer.body.is_empty(), "{file}");
    }
}

#[tokio::test]
async fn the_page_shows_the_document_and_fetches_nothing_from_elsewhere() {
    let bench = Bench::new().await;
    let start = bench.get("/docs/swagger-initializer.js").await.text();
    assert!(start.contains(r#""url": "/openapi.json""#), "{start}");
    assert!(start.contains(r#""validatorUrl": "none""#), "{start}");
    let page = bench.get("/docs/index.html").await.text();
    for elsewhere in ["http://", "https://", "//cdn"] {
        assert!(!page.contains(elsewhere), "{page}");
        assert!(!start.contains(elsewhere), "{start}");
    }
    // No mark or name of the toolkit that draws it.
    assert!(start.contains(r#""layout": "BaseLayout""#), "{start}");
    assert!(page.contains("<title>Combclear: the HTTP API</title>") && !page.contains("favicon"), "{page}");
}

#[tokio::test]
async fn a_file_that_the_page_does_not_have_is_a_problem() {
    let bench = Bench::new().await;
    for path in ["/docs/other.html", "/docs/..%2FCargo.toml"] {
        let (parameter, _, help) = bench.get(path).await.fault(404, "unknown-path", path);
        assert_eq!((parameter.as_str(), help.as_str()), ("file", "the page is at /docs"));
    }
}
