//! The page at the hive: files that the program carries, and its words. It asks the service over the public interface only.

use std::borrow::Cow;
use std::collections::BTreeMap;

use axum::Json;
use axum::extract::State;
use axum::http::header::{CONTENT_SECURITY_POLICY, CONTENT_TYPE, REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS};
use axum::http::{HeaderMap, HeaderName, HeaderValue};
use axum::response::{IntoResponse, Response};
use combclear_domain::basics::spelling::nearest;
use combclear_domain::journal::Hash;
use combclear_wording::{Label, http};
use serde::Serialize;

use crate::app::App;
use crate::extract::{FilePath, Nothing, Path, Query};
use crate::language::words;
use crate::packed::unpacked_for;
use crate::problem::{Problem, ProblemKind, label};

const HTML: &str = "text/html; charset=utf-8";
const STYLES: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
const WASM: &str = "application/wasm";

/// The script that keeps the page and the last answers where there is no signal.
const WORKER: &str = "sw.js";

/// Name, media type and text of each file.
const FILES: [(&str, &str, &str); 20] = [
    ("index.html", HTML, include_str!("../page/index.html")),
    ("page.css", STYLES, include_str!("../page/page.css")),
    ("page.js", SCRIPT, include_str!("../page/page.js")),
    ("ask.js", SCRIPT, include_str!("../page/ask.js")),
    ("clock.js", SCRIPT, include_str!("../page/clock.js")),
    ("engine.js", SCRIPT, include_str!("../page/engine.js")),
    ("kept.js", SCRIPT, include_str!("../page/kept.js")),
    ("sync.js", SCRIPT, include_str!("../page/sync.js")),
    ("waiting.js", SCRIPT, include_str!("../page/waiting.js")),
    ("leaflet.js", SCRIPT, include_str!("../page/leaflet.js")),
    ("desk.js", SCRIPT, include_str!("../page/desk.js")),
    ("office.js", SCRIPT, include_str!("../page/office.js")),
    ("order.js", SCRIPT, include_str!("../page/order.js")),
    ("draw.js", SCRIPT, include_str!("../page/draw.js")),
    ("words.js", SCRIPT, include_str!("../page/words.js")),
    ("visit.js", SCRIPT, include_str!("../page/visit.js")),
    ("colony.js", SCRIPT, include_str!("../page/colony.js")),
    ("form.js", SCRIPT, include_str!("../page/form.js")),
    (WORKER, SCRIPT, include_str!("../page/sw.js")),
    ("mark.svg", "image/svg+xml", include_str!("../page/mark.svg")),
];

/// What answers on a phone without signal, as WebAssembly, compressed. Empty if this program was built without it.
static ENGINE: &[u8] = include_bytes!(concat!(env!("OUT_DIR"), "/engine.wasm.gz"));

const ENGINE_FILE: &str = "engine.wasm";

/// Tells the files of this page from those of another version.
const VERSION: &str = include_str!(concat!(env!("OUT_DIR"), "/page-version"));

/// Nothing runs and nothing is fetched but what the service itself sends; no other page shows this one inside itself. The one word that
/// sounds unsafe lets WebAssembly run that the service itself sent (Content Security Policy Level 3, section 4.3).
const POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; worker-src 'self'; \
                      base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

/// Which page the service has.
#[derive(Serialize)]
struct Version {
    /// Another page has another word here.
    version: &'static str,
    /// Whether what answers without signal is there.
    engine: bool,
}

/// The words of the page.
#[derive(Serialize)]
struct PageWords<'a> {
    language: &'static str,
    /// The leaflets and laws by which the service answers: what answers on the phone must have the same.
    rules: &'a Hash,
    #[serde(flatten)]
    version: Version,
    words: BTreeMap<&'static str, &'static str>,
}

/// Open the page
pub(crate) async fn open(Query(Nothing {}): Query<Nothing>) -> Result<Response, Problem> {
    file("index.html")
}

/// Read a file of the page
pub(crate) async fn get_file(
    State(app): State<App>,
    Path(path): Path<FilePath>,
    Query(Nothing {}): Query<Nothing>,
    asked: HeaderMap,
) -> Result<Response, Problem> {
    let version = Version { version: VERSION, engine: !ENGINE.is_empty() };
    match path.file.as_str() {
        "words.json" => {
            let (language, words) = (words().language(), words().of_the_page().collect());
            let rules = app.rules();
            Ok((headers(), Json(PageWords { language, rules, version, words })).into_response())
        }
        "version.json" => Ok((headers(), Json(version)).into_response()),
        WORKER => {
            let script = include_str!("../page/sw.js").replace("kept-1", &format!("kept-{VERSION}"));
            // It lies beside the other files, and answers for the whole service.
            let allowed =
                [(HeaderName::from_static("service-worker-allowed"), HeaderValue::from_static("/"))];
            Ok((headers(), [(CONTENT_TYPE, HeaderValue::from_static(SCRIPT))], allowed, script)
                .into_response())
        }
        ENGINE_FILE if !ENGINE.is_empty() => {
            let engine = unpacked_for(&asked, Cow::Borrowed(ENGINE)).await?;
            Ok((headers(), [(CONTENT_TYPE, HeaderValue::from_static(WASM))], engine).into_response())
        }
        name => file(name),
    }
}

fn file(name: &str) -> Result<Response, Problem> {
    let found = FILES.iter().find(|(known, ..)| *known == name);
    let Some((_, media_type, text)) = found else {
        let problem = Problem::new(ProblemKind::UnknownPath, http::no_file(words(), name));
        let near = nearest(name, FILES.iter().map(|(known, ..)| *known));
        return Err(problem.at_unknown("file", near, label(Label::HttpNoFileHelp)));
    };
    let content_type = [(CONTENT_TYPE, HeaderValue::from_static(media_type))];
    Ok((headers(), content_type, *text).into_response())
}

fn headers() -> [(HeaderName, HeaderValue); 3] {
    [
        (CONTENT_SECURITY_POLICY, HeaderValue::from_static(POLICY)),
        (X_CONTENT_TYPE_OPTIONS, HeaderValue::from_static("nosniff")),
        (REFERRER_POLICY, HeaderValue::from_static("no-referrer")),
    ]
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// The names that the page asks its words by: `word("name"...)`, or `word(condition ? "one" : "other"...)`.
    fn asked_for() -> BTreeSet<&'static str> {
        let scripts = FILES.iter().filter(|(_, kind, _)| *kind == SCRIPT).map(|(.., text)| *text);
        let calls = scripts.flat_map(|text| text.split("word(").skip(1));
        let arguments = calls.filter_map(|call| call.split([',', ')']).next());
        arguments.flat_map(|argument| argument.split('"').skip(1).step_by(2)).collect()
    }

    #[test]
    fn the_page_has_each_word_that_it_asks_for_and_no_other() {
        let known: BTreeSet<&str> = words().of_the_page().map(|(name, _)| name).collect();
        // These follow from answers of the service.
        let from_answers = ["yes", "no", "unknown", "option_usable", "option_unknown", "option_ruled_out"];
        // These stand in lists.
        let listed =
            ["board", "stock", "register", "proofs", "journal", "as_pages", "as_pdf", "as_table", "as_pack"];
        let asked: BTreeSet<&str> = asked_for().into_iter().chain(from_answers).chain(listed).collect();
        assert_eq!(asked, known);
    }

    #[test]
    fn no_file_names_another_host_or_runs_what_is_written_in_the_page() {
        for (name, _, text) in FILES {
            assert!(!text.contains("https://") && !text.contains("innerHTML"), "{name}");
            assert!(!text.contains(" style=") && !text.contains("onclick="), "{name}");
        }
    }
}
