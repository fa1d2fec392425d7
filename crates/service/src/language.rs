//! The language of an answer: the first of those that the client asks for (`Accept-Language`) that there are words in, else English.
//!
//! It is said once around a request, and goes with its work to other threads. What is data stays as it was written: leaflets, laws
//! and whatever people recorded.

use axum::http::header::{ACCEPT_LANGUAGE, CONTENT_LANGUAGE, VARY};
use axum::http::{HeaderMap, HeaderValue};
use axum::response::Response;
use combclear_wording::Words;

use crate::accept::weight;

tokio::task_local! {
    static SPOKEN: &'static Words;
}

/// The words in which the request at hand is answered.
pub(crate) fn words() -> &'static Words {
    SPOKEN.try_with(|words| *words).unwrap_or_else(|_| Words::english())
}

/// Does work with these words, on whichever thread.
pub(crate) fn speaking<T>(words: &'static Words, work: impl FnOnce() -> T) -> T {
    SPOKEN.sync_scope(words, work)
}

/// Answers in the language that the client prefers.
pub(crate) async fn spoken(words: &'static Words, answer: impl Future<Output = Response>) -> Response {
    let mut response = SPOKEN.scope(words, answer).await;
    let headers = response.headers_mut();
    headers.insert(CONTENT_LANGUAGE, HeaderValue::from_static(words.language()));
    headers.append(VARY, HeaderValue::from_static("accept-language"));
    response
}

/// The language that weighs most; the earlier of two equals in the order of the client.
pub(crate) fn preferred(headers: &HeaderMap) -> &'static Words {
    let lines = headers.get_all(ACCEPT_LANGUAGE).iter().filter_map(|line| line.to_str().ok());
    let mut best: Option<(u16, &'static Words)> = None;
    for range in lines.flat_map(|line| line.split(',')) {
        let mut parts = range.split(';').map(str::trim);
        let named = parts.next().unwrap_or_default();
        let weight = weight(parts);
        // `de-CH` is answered in German.
        let language = named.split('-').next().unwrap_or_default();
        let known = Words::all().into_iter().find(|words| words.language().eq_ignore_ascii_case(language));
        if let Some(words) = known.filter(|_| weight > best.map_or(0, |(best, _)| best)) {
            best = Some((weight, words));
        }
    }
    best.map_or_else(Words::english, |(_, words)| words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_language_that_weighs_most_is_spoken_and_english_if_there_are_words_in_none() {
        let cases = [
            ("nothing said", "", "en"),
            ("one language", "de", "de"),
            ("of a country", "de-AT", "de"),
            ("a browser", "de-DE,de;q=0.9,en-GB;q=0.8,en;q=0.7", "de"),
            ("weights", "de;q=0.5, en;q=0.9", "en"),
            ("refused", "de;q=0, en;q=0.1", "en"),
            ("unknown before known", "nl, de;q=0.3", "de"),
            ("no words in it", "nl", "en"),
            ("anything", "*", "en"),
            ("letters of any size", "DE-ch", "de"),
            ("a weight that cannot be read", "de;q=x, en;q=0.1", "en"),
        ];
        for (name, accept, expected) in cases {
            let mut headers = HeaderMap::new();
            if !accept.is_empty() {
                headers.insert(ACCEPT_LANGUAGE, accept.parse().unwrap());
            }
            assert_eq!(preferred(&headers).language(), expected, "{name}");
        }
    }
}
