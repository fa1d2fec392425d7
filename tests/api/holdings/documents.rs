//! `/holdings/{holding}/documents` and below.

use std::pin::Pin;
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::task::{Context, Poll};

use axum::body::Body;
use axum::http::Request;
use combclear_domain::basics::words::MediaType;
use combclear_domain::journal::{Content, Hash};
use combclear_testkit::documents::sample;
use serde_json::{Value, json};
use tokio::io::{AsyncRead, ReadBuf};
use tokio_util::io::ReaderStream;

use crate::bench::{Answer, Bench};
use crate::seed::{self, HOLDING};

const LIST: &str = "/holdings/heathside/documents";
const QUERY: &str = "lot=strips-1&on=2026-04-10&recorded_by=A.%20Keeper&file_name=invoice%2017.pdf";

fn path(number: u32) -> String {
    format!("{LIST}/{}", seed::id(number))
}

fn hash_of(bytes: &[u8]) -> String {
    Hash::of_content(bytes).to_string()
}

/// Sends a file under the id with this number, with this declared type if there is one.
async fn attach(bench: &Bench, number: u32, query: &str, declared: Option<&str>, bytes: &[u8]) -> Answer {
    let mut request = Request::put(format!("{}?{query}", path(number)));
    if let Some(declared) = declared {
        request = request.header("content-type", declared);
    }
    bench.send(request.body(Body::from(bytes.to_vec())).unwrap()).await
}

#[tokio::test]
async fn a_document_of_each_type_is_attached_listed_and_handed_out_to_the_byte() {
    let bench = seed::bench().await;
    let mut wanted = Vec::new();
    for (number, media_type) in (20..).zip(MediaType::ALL) {
        let bytes = sample(*media_type, "invoice 17");
        let hash = hash_of(&bytes);
        // A declared type makes no difference.
        let declared = (number % 2 == 0).then_some(media_type.as_str());
        let answer = attach(&bench, number, QUERY, declared, &bytes).await;
        assert_eq!(answer.status, 201, "{}", answer.text());
        let (location, answer) = (answer.header("location").map(str::to_owned), answer.good());
        let entry = answer["entry"].clone();
        // The sample in HEIC holds no picture, so no copy can be made for an office.
        let no_copy = json!(["some offices cannot open HEIC, and no copy in another format could be made"]);
        assert_eq!(answer["cautions"], if *media_type == MediaType::Heic { no_copy } else { json!([]) });
        let place = format!("{LIST}/{hash}");
        assert_eq!(location.as_deref(), Some(place.as_str()));
        let body = json!({
            "content": hash, "media_type": media_type, "bytes": bytes.len(), "file_name": "invoice 17.pdf",
            "lot": "strips-1",
        });
        assert_eq!((&entry["kind"], &entry["body"]), (&json!("document_attached"), &body));
        assert_eq!(bench.get(&seed::path(number)).await.good(), entry);

        let answer = bench.get(&place).await;
        assert_eq!((answer.status, &answer.body), (200, &bytes));
        let usual = [("pdf", ""), ("jpeg", ".jpg"), ("png", ".png"), ("heic", ".heic")];
        let ending = usual.iter().find(|(word, _)| media_type.as_str().ends_with(word)).unwrap().1;
        for (name, value) in [
            ("content-type", media_type.as_str().to_owned()),
            ("x-content-type-options", "nosniff".to_owned()),
            ("content-security-policy", "sandbox; default-src 'none'".to_owned()),
            ("etag", format!("\"{hash}\"")),
            (
                "content-disposition",
                format!(
                    "attachment; filename=\"invoice 17.pdf{ending}\"; filename*=UTF-8''invoice%2017.pdf{ending}"
                ),
            ),
        ] {
            assert_eq!(answer.header(name), Some(value.as_str()), "{media_type}");
        }
        wanted.push(json!({
            "id": seed::id(number), "seq": number - 3, "on": "2026-04-10", "recorded_by": "A. Keeper",
            "content": hash, "media_type": media_type, "bytes": bytes.len(), "file_name": "invoice 17.pdf",
            "lot": "strips-1", "state": "kept", "path": place,
        }));
    }
    assert_eq!(bench.get(LIST).await.good(), json!({ "items": wanted }));
    assert_eq!(bench.get("/holdings/heathside/verification").await.good()["answer"], "sound");
}

#[tokio::test]
async fn a_document_for_a_holding_that_was_never_begun_names_the_nearest_and_is_not_kept() {
    let bench = seed::bench().await;
    let path = path(20).replace("heathside", "heathsite");
    let request = Request::put(format!("{path}?{QUERY}"));
    let sent = request.body(Body::from(sample(MediaType::Pdf, "invoice 17"))).unwrap();
    let fault = bench.send(sent).await.fault(404, "unknown-holding", &path);
    let detail = "no entry is recorded under the holding `heathsite`".to_owned();
    assert_eq!(fault, ("holding".to_owned(), detail, "did you mean `heathside`?".to_owned()));
    assert_eq!(bench.get("/holdings").await.good()["items"].as_array().unwrap().len(), 1);
}

#[tokio::test]
async fn the_same_document_sent_again_is_known_and_another_under_its_id_is_a_problem() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Pdf, "invoice 17");
    let first = attach(&bench, 20, QUERY, None, &bytes).await;
    let again = attach(&bench, 20, QUERY, None, &bytes).await;
    assert_eq!((first.status, again.status), (201, 200));
    assert_eq!(first.good(), again.good());
    assert_eq!(first.header("location"), again.header("location"));
    let other = sample(MediaType::Pdf, "invoice 18");
    for (query, bytes) in
        [(QUERY, &other), (&QUERY.replace("04-10", "04-09"), &bytes), (&QUERY.replace("17", "18"), &bytes)]
    {
        let answer = attach(&bench, 20, query, None, bytes).await;
        let (parameter, detail, _) = answer.fault(409, "same-id-other-content", &path(20));
        assert_eq!(parameter, "document");
        assert!(detail.ends_with("is already recorded, with different content"), "{detail}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 17);
    let answer = bench.get(&format!("{LIST}/{}", hash_of(&other))).await;
    answer.problem(404, "unknown-document", &format!("{LIST}/{}", hash_of(&other)));
    // The same file may prove the purchase of several lots, each in an entry of its own.
    assert_eq!(attach(&bench, 21, QUERY, None, &bytes).await.status, 201);
}

#[tokio::test]
async fn what_is_no_document_is_refused_whatever_it_is_called_or_declared_as() {
    let bench = seed::bench().await;
    for (what, bytes) in [
        ("a ZIP", &b"PK\x03\x04\x14\0\0\0\0\0"[..]),
        ("HTML", b"<!DOCTYPE html><script>alert(1)</script>"),
        ("HTML with a PDF in it", b"<html>%PDF-1.4 %%EOF</html>"),
        ("SVG", br#"<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>"#),
        ("a program", b"MZ\x90\0\x03\0\0\0\x04\0\0\0\xff\xff\0\0\xb8\0\0\0"),
        ("text", b"invoice 17"),
    ] {
        for declared in [None, Some("application/pdf"), Some("image/png")] {
            let answer = attach(&bench, 20, QUERY, declared, bytes).await;
            let (_, detail, help) = answer.fault(415, "other-document-type", &path(20));
            assert!(
                detail.ends_with("not a PDF, JPEG, PNG or HEIC; nothing was recorded"),
                "{what}: {detail}"
            );
            assert_eq!(help, "attach a scan or a photograph of the paper");
        }
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

#[tokio::test]
async fn a_declared_type_is_the_one_that_the_content_shows() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Jpeg, "invoice 17");
    for declared in ["image/png", "application/octet", "application/json", "text/html", "image/jpg"] {
        let answer = attach(&bench, 20, QUERY, Some(declared), &bytes).await;
        let (_, detail, help) = answer.fault(415, "other-document-type", &path(20));
        let said = format!(
            "the document is declared as `{declared}`, but its content is a JPEG; nothing was recorded"
        );
        assert_eq!(detail, said);
        assert_eq!(help, "leave the header Content-Type out, or send `Content-Type: image/jpeg`");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
    for (number, declared) in [
        (20, "image/jpeg"),
        (21, "IMAGE/JPEG; name=x"),
        // Declares only that it is bytes.
        (22, "application/octet-stream"),
    ] {
        assert_eq!(attach(&bench, number, QUERY, Some(declared), &bytes).await.status, 201, "{declared}");
    }
}

#[tokio::test]
async fn a_document_that_is_not_all_there_is_refused() {
    let bench = seed::bench().await;
    let (_, detail, help) =
        attach(&bench, 20, QUERY, None, b"").await.fault(422, "unfit-document", &path(20));
    assert_eq!(detail, "the document is empty; nothing was recorded");
    assert_eq!(help, "attach the file itself");
    for media_type in MediaType::ALL {
        let whole = sample(*media_type, "invoice 17");
        let answer = attach(&bench, 20, QUERY, None, &whole[..whole.len() - 9]).await;
        let (_, detail, help) = answer.fault(422, "unfit-document", &path(20));
        assert!(detail.contains("looks cut off"), "{detail}");
        assert!(help.starts_with("copy it again from the original"), "{help}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

#[tokio::test]
async fn an_upload_that_breaks_off_is_refused() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Jpeg, "invoice 17");
    let request = Request::put(format!("{}?{QUERY}", path(20))).header("content-length", bytes.len() + 1);
    let answer = bench.send(request.body(Body::from(bytes.clone())).unwrap()).await;
    let (_, detail, help) = answer.fault(400, "unreadable-body", &path(20));
    let wanted =
        format!("the upload broke off: {} bytes were announced, {} arrived", bytes.len() + 1, bytes.len());
    assert_eq!(detail, wanted);
    assert_eq!(help, "send the whole file again under the same id");
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

#[tokio::test]
async fn ten_megabytes_are_taken_and_one_byte_more_is_not() {
    let bench = seed::bench().await;
    let mut bytes = sample(MediaType::Jpeg, "large");
    bytes.resize(10_000_000, 0);
    let answer = attach(&bench, 20, QUERY, None, &bytes).await;
    assert_eq!(answer.status, 201, "{}", answer.text());
    assert_eq!(bench.get(&format!("{LIST}/{}", hash_of(&bytes))).await.body, bytes);
    bytes.push(0);
    let said = Request::put(format!("{}?{QUERY}", path(21))).header("content-length", bytes.len());
    let said = said.body(Body::from(bytes.clone())).unwrap();
    let unsaid = Request::put(format!("{}?{QUERY}", path(21)));
    let unsaid = unsaid.body(Body::new(Body::from(bytes))).unwrap();
    for request in [said, unsaid] {
        let (_, detail, help) = bench.send(request).await.fault(413, "body-too-large", &path(21));
        assert_eq!(detail, "the document has more than 10 MB (10000000 bytes); nothing was recorded");
        assert_eq!(help, "scan it at a lower resolution, or take a smaller photograph");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 17);
}

/// An endless file that counts the bytes read.
struct Endless(Arc<AtomicUsize>);

impl AsyncRead for Endless {
    fn poll_read(
        self: Pin<&mut Self>,
        _: &mut Context<'_>,
        into: &mut ReadBuf<'_>,
    ) -> Poll<std::io::Result<()>> {
        self.0.fetch_add(into.remaining(), Ordering::SeqCst);
        let length = into.remaining();
        into.initialize_unfilled().fill(0xff);
        into.advance(length);
        Poll::Ready(Ok(()))
    }
}

#[tokio::test]
async fn a_file_without_an_end_is_read_no_further_than_a_document_may_be() {
    let bench = seed::bench().await;
    let read = Arc::new(AtomicUsize::new(0));
    let body = Body::from_stream(ReaderStream::with_capacity(Endless(Arc::clone(&read)), 65_536));
    let request = Request::put(format!("{}?{QUERY}", path(20))).body(body).unwrap();
    bench.send(request).await.problem(413, "body-too-large", &path(20));
    let read = read.load(Ordering::SeqCst);
    assert!((10_000_000..10_200_000).contains(&read), "{read}");
}

#[tokio::test]
async fn what_the_document_is_attached_to_is_said_in_the_address() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Png, "invoice 17");
    for (query, parameter, detail) in [
        ("on=2026-04-10&recorded_by=A", "lot", "neither a lot nor a prescription is named"),
        ("on=2026-04-10&recorded_by=A&lot=a&prescription=b", "lot", "a lot and a prescription are named"),
        ("lot=strips-1&recorded_by=A", "on", "the query parameter `on` is missing"),
        ("lot=strips-1&on=2026-04-10", "recorded_by", "the query parameter `recorded_by` is missing"),
        ("lot=&on=2026-04-10&recorded_by=A", "lot", "`` cannot be the name of a lot: it is empty"),
        (
            "lot=strips-1&on=10.4.2026&recorded_by=A",
            "on",
            "`10.4.2026` is not a date written like 2026-04-11",
        ),
        (&format!("{QUERY}&size=1"), "size", "this path has no query parameter `size`"),
        (&QUERY.replace("invoice", "..%2Finvoice"), "file_name", "`../invoice%2017.pdf`"),
        (&QUERY.replace("invoice", "%0A"), "file_name", "it contains a control character"),
        (&QUERY.replace("invoice%2017.pdf", "%20"), "file_name", "it is empty"),
        (&QUERY.replace("invoice", &"x".repeat(200)), "file_name", "it is longer than 200 characters"),
    ] {
        let answer = attach(&bench, 20, query, None, &bytes).await;
        let (at, said, help) = answer.fault(400, "bad-parameter", &path(20));
        assert_eq!(at, parameter, "{query}: {said}");
        assert!(said.contains(&detail.replace("%20", " ")), "{query}: {said}");
        assert!(!help.is_empty());
    }
    for (query, parameter, detail) in [
        (QUERY.replace("strips-1", "strips-2"), "lot", "there is no lot `strips-2`"),
        (
            QUERY.replace("lot=strips-1", "prescription=17"),
            "prescription",
            "no prescription `17` is recorded",
        ),
        (QUERY.replace("04-10", "04-12"), "on", "2026-04-12 is in the future"),
    ] {
        let answer = attach(&bench, 20, &query, None, &bytes).await;
        let (at, said, _) = answer.fault(422, "refused-entry", &path(20));
        assert_eq!(at, parameter, "{said}");
        assert!(said.starts_with(detail), "{said}");
    }
    assert_eq!(bench.entries_of(HOLDING).await, 16);
}

/// The entry that attaches these bytes, as another program would send it.
fn entry_of(number: u32, bytes: &[u8], media_type: MediaType) -> Value {
    let body = json!({
        "content": hash_of(bytes), "media_type": media_type, "bytes": bytes.len(), "lot": "strips-1",
    });
    seed::entry(number, "2026-04-10", "document_attached", body)
}

#[tokio::test]
async fn a_document_whose_entry_came_without_it_is_missing_until_it_is_sent() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Heic, "invoice 17");
    bench.put(&seed::path(20), &entry_of(20, &bytes, MediaType::Heic)).await.good();
    let place = format!("{LIST}/{}", hash_of(&bytes));
    assert_eq!(bench.get(LIST).await.good()["items"][0]["state"], "missing");
    let (_, detail, help) = bench.get(&place).await.fault(404, "missing-document", &place);
    assert_eq!(detail, format!("the content of document `{}` is not kept", hash_of(&bytes)));
    assert!(help.starts_with("send the same file again"), "{help}");
    let found = bench.get("/holdings/heathside/verification").await.good();
    let lacking = json!([{
        "content": hash_of(&bytes), "seq": 17, "id": seed::id(20), "lot": "strips-1", "state": "missing",
        "help": "attach the same file again, or import an export that has it",
    }]);
    assert_eq!((&found["answer"], &found["documents"]), (&json!("lacking"), &lacking));
    assert_eq!(found["entries"], 17);
    // Other bytes are refused.
    let query = "lot=strips-1&on=2026-04-10&recorded_by=A.%20Keeper";
    let other = sample(MediaType::Heic, "invoice 18");
    assert_eq!(attach(&bench, 20, query, None, &other).await.status, 409);
    assert_eq!(attach(&bench, 20, query, None, &bytes).await.status, 200);
    assert_eq!(bench.get(&place).await.body, bytes);
    assert_eq!(bench.get("/holdings/heathside/verification").await.good()["answer"], "sound");
    assert_eq!(bench.entries_of(HOLDING).await, 17);
}

#[tokio::test]
async fn a_document_that_was_struck_out_stays_and_says_so() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Png, "invoice 17");
    attach(&bench, 20, QUERY, None, &bytes).await.good();
    let mut strike_out = seed::entry(21, "2026-04-10", "strike_out", json!({}));
    strike_out["corrects"] = json!(seed::id(20));
    strike_out["reason"] = json!("of another lot");
    bench.put(&seed::path(21), &strike_out).await.good();
    let listed = bench.get(LIST).await.good();
    assert_eq!(listed["items"][0]["superseded_by"]["entry"], seed::id(21));
    assert_eq!(bench.get(&format!("{LIST}/{}", hash_of(&bytes))).await.body, bytes);
}

#[tokio::test]
async fn a_client_that_has_the_document_is_told_so() {
    let bench = seed::bench().await;
    let bytes = sample(MediaType::Png, "invoice 17");
    attach(&bench, 20, QUERY, None, &bytes).await.good();
    let place = format!("{LIST}/{}", hash_of(&bytes));
    let asked =
        |known: String| Request::get(&place).header("if-none-match", known).body(Body::empty()).unwrap();
    let answer = bench.send(asked(format!("\"{}\"", hash_of(&bytes)))).await;
    assert_eq!((answer.status, answer.body.len()), (304, 0));
    assert_eq!(bench.send(asked("\"other\"".to_owned())).await.status, 200);
}

#[tokio::test]
async fn the_name_to_save_it_under_is_safe_and_ends_as_the_content_is() {
    let bench = seed::bench().await;
    for (number, name, plain, encoded) in [
        (20, "r%C3%A9sum%C3%A9.PNG", "r_sum_.PNG", "r%C3%A9sum%C3%A9.PNG"),
        (21, "setup.exe", "setup.exe.png", "setup.exe.png"),
        (22, "a%22b%3Bc.png", "a_b;c.png", "a_b%3Bc.png"),
        (23, ".htaccess", "htaccess.png", "htaccess.png"),
        (24, "100%25.png", "100_.png", "100%25.png"),
    ] {
        let bytes = sample(MediaType::Png, &format!("invoice {number}"));
        let query = format!("lot=strips-1&on=2026-04-10&recorded_by=A&file_name={name}");
        attach(&bench, number, &query, None, &bytes).await.good();
        let answer = bench.get(&format!("{LIST}/{}", hash_of(&bytes))).await;
        let wanted = format!("attachment; filename=\"{plain}\"; filename*=UTF-8''{encoded}");
        assert_eq!(answer.header("content-disposition"), Some(wanted.as_str()));
    }
    // An imported entry may have any file name, or none.
    let bytes = sample(MediaType::Png, "invoice 30");
    let mut entry = entry_of(30, &bytes, MediaType::Png);
    entry["body"]["file_name"] = json!("../../etc/\r\nset-cookie: a");
    bench.put(&seed::path(30), &entry).await.good();
    let content = Content::new(bytes.clone());
    let holding = HOLDING.parse().unwrap();
    let tip = bench.journal.tip(&holding).await.unwrap();
    bench.journal.append(&holding, tip, &[], &[content]).await.unwrap();
    let answer = bench.get(&format!("{LIST}/{}", hash_of(&bytes))).await;
    let disposition = answer.header("content-disposition").unwrap();
    assert!(
        disposition.starts_with("attachment; filename=\"_.._etc___set-cookie_ a.png\";"),
        "{disposition}"
    );
    assert_eq!(answer.header("set-cookie"), None);
}

#[tokio::test]
async fn an_upload_that_stalls_is_told_that_nothing_was_recorded() {
    let bench = seed::bench().await;
    let entries = bench.entries_of(HOLDING).await;
    let request = Request::put(format!("{}?{QUERY}", path(20)));
    let stalled = request.body(Body::from_stream(ReaderStream::new(Stalled))).unwrap();
    tokio::time::pause();
    let answer = bench.send(stalled).await;
    let problem = answer.problem(408, "stalled-body", &path(20));
    assert_eq!(problem["detail"], "the upload stopped in the middle; nothing was recorded");
    assert_eq!(problem["errors"][0]["help"], "send it again under the same id");
    tokio::time::resume();
    assert_eq!(bench.entries_of(HOLDING).await, entries);
}

/// A body that stops arriving.
struct Stalled;

impl AsyncRead for Stalled {
    fn poll_read(
        self: Pin<&mut Self>,
        _: &mut Context<'_>,
        _: &mut ReadBuf<'_>,
    ) -> Poll<std::io::Result<()>> {
        Poll::Pending
    }
}
