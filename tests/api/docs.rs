//! `/docs`

use axum::body::Body;
use axum::http::Request;

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

/// The program carries these files compressed.
#[tokio::test]
async fn a_client_that_does_not_take_gzip_is_sent_plain_bytes() {
    let bench = Bench::new().await;
    let file = "/docs/swagger-ui.css";
    let ask = async |takes: &str| {
        let request = Request::get(file).header("accept-encoding", takes);
        bench.send(request.body(Body::empty()).unwrap()).await
    };
    let plain = bench.get(file).await;
    assert_eq!(plain.header("content-encoding"), None);
    assert!(plain.text().contains(".swagger-ui"));
    for takes in ["identity", "gzip;q=0", "br"] {
        let answer = ask(takes).await;
        assert_eq!((answer.header("content-encoding"), &answer.body), (None, &plain.body), "{takes}");
    }
    let packed = ask("gzip").await;
    assert_eq!(packed.header("content-encoding"), Some("gzip"));
    assert!(packed.body.len() * 3 < plain.body.len() && packed.body.starts_with(&[0x1f, 0x8b]));
    let vary = packed.header("vary").unwrap_or_default();
    assert!(vary.contains("accept-encoding"), "{vary}");
}
