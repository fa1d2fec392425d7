//! `/problems/{slug}`

use crate::bench::Bench;

/// The pages as a keeper reads them.
#[tokio::test]
async fn every_problem_has_a_page_that_says_what_to_do() {
    let bench = Bench::new().await;
    let list = bench.get("/problems/zzz").await.fault(404, "unknown-problem", "/problems/zzz").2;
    let slugs: Vec<&str> = list.strip_prefix("the problems are: ").unwrap().split(", ").collect();
    assert_eq!(slugs.len(), 40);
    let mut pages = Vec::new();
    for slug in slugs {
        let answer = bench.get(&format!("/problems/{slug}")).await;
        assert_eq!((answer.status, answer.header("content-type")), (200, Some("text/plain; charset=utf-8")));
        pages.push(format!("/problems/{slug}\n\n{}", answer.text()));
    }
    insta::assert_snapshot!(pages.join("\n\n"));
}

#[tokio::test]
async fn a_problem_that_there_is_not_is_a_problem_too() {
    let bench = Bench::new().await;
    let (parameter, detail, help) = bench.get("/problems/unknown-colonie").await.fault(
        404,
        "unknown-problem",
        "/problems/unknown-colonie",
    );
    assert_eq!(parameter, "slug");
    assert_eq!(detail, "there is no problem `unknown-colonie`");
    assert_eq!(help, "did you mean `unknown-colony`?");
}
