//! The language of an answer: as the client asks for it (RFC 9110, section 12.5.4), else English.

use axum::body::Body;
use axum::http::Request;

use crate::bench::{Answer, Bench};
use crate::seed::{self, HOLDING};

async fn asking(bench: &Bench, path: &str, language: &str) -> Answer {
    let request = Request::get(path).header("accept-language", language);
    bench.send(request.body(Body::empty()).unwrap()).await
}

#[tokio::test]
async fn an_answer_is_in_the_language_that_was_asked_for_and_says_so() {
    let bench = seed::bench().await;
    let path = format!("/holdings/{HOLDING}/colonies/M1/supering");
    let (english, german) =
        (asking(&bench, &path, "en-GB").await, asking(&bench, &path, "de-AT, en;q=0.5").await);
    for (answer, language) in [(&english, "en"), (&german, "de")] {
        assert_eq!(answer.header("content-language"), Some(language));
        let vary: Vec<_> =
            answer.headers.get_all("vary").iter().map(|one| one.to_str().unwrap().to_owned()).collect();
        assert!(vary.iter().any(|one| one.contains("accept-language")), "{vary:?}");
    }
    let (english, german) = (english.good(), german.good());
    assert_ne!(english["summary"], german["summary"]);
    // What programs go by is the same in every language.
    for field in ["answer", "first_free_day", "last_blocked_day", "colony", "on", "named_entries"] {
        assert_eq!(english[field], german[field], "{field}");
    }
    assert_eq!(asking(&bench, &path, "nl").await.good(), english, "there are no words in it");
}

#[tokio::test]
async fn a_kept_answer_is_given_to_nobody_who_asks_in_another_language() {
    let bench = seed::bench().await;
    let path = format!("/holdings/{HOLDING}/apiaries/orchard/visit");
    let tag = |answer: &Answer| answer.header("etag").unwrap().to_owned();
    let first = asking(&bench, &path, "en").await;
    let german = asking(&bench, &path, "de").await;
    assert_ne!(tag(&first), tag(&german));
    assert_eq!(asking(&bench, &path, "en").await.text(), first.text());
    assert_eq!(asking(&bench, &path, "de").await.text(), german.text());
    let request = Request::get(&path).header("accept-language", "de").header("if-none-match", tag(&first));
    assert_eq!(bench.send(request.body(Body::empty()).unwrap()).await.status, 200, "it was kept in English");
}

#[tokio::test]
async fn problems_forms_papers_and_the_words_of_the_page_are_in_that_language_too() {
    let bench = seed::bench().await;
    let unknown = format!("/holdings/{HOLDING}/colonies/Nobody");
    let (english, german) = (asking(&bench, &unknown, "en").await, asking(&bench, &unknown, "de").await);
    let (english, german) =
        (english.problem(404, "unknown-colony", &unknown), german.problem(404, "unknown-colony", &unknown));
    assert_ne!(english["detail"], german["detail"]);
    assert_ne!(english["title"], german["title"]);
    for path in [
        "/forms".to_owned(),
        "/page/words.json".to_owned(),
        format!("/holdings/{HOLDING}/register?format=html"),
        format!("/holdings/{HOLDING}/register/gaps"),
        format!("/holdings/{HOLDING}/due?format=calendar"),
        format!("/holdings/{HOLDING}/stock"),
    ] {
        let (english, german) = (asking(&bench, &path, "en").await, asking(&bench, &path, "de").await);
        assert_eq!((english.status, german.status), (200, 200), "{path}");
        assert_ne!(english.text(), german.text(), "{path}");
    }
    let page = asking(&bench, &format!("/holdings/{HOLDING}/register?format=html"), "de").await.text();
    assert!(page.contains("lang=\"de\""), "{page}");
}
