//! The contents of documents: stored with their entries, read back byte for byte, never changed, and reported when missing.

use std::sync::Arc;

use combclear_domain::basics::words::{HoldingName, MediaType};
use combclear_domain::journal::event::DocumentAttached;
use combclear_domain::journal::{Content, Draft, Entry, Event, Hash};
use combclear_store::{
    AppendError, ContentState, DocumentFault, Holdings, Journal, RecordError, Recorded, Verified, documents,
};
use combclear_testkit::documents::sample;
use combclear_wording::Words;
use combclear_wording::keeping::document;

use super::Bench;
use crate::making::{attaching, chain, day, draft, holding, id, recorded_at};

pub(crate) fn content(number: u64) -> Content {
    let types = MediaType::ALL;
    let media_type = types[usize::try_from(number).unwrap() % types.len()];
    Content::new(sample(media_type, &format!("invoice {number}")))
}

/// A journal of one apiary and four documents, of which the last is the same as the first.
pub(crate) async fn with_documents() -> (Bench, Arc<dyn Journal>, HoldingName, Vec<Entry>, Vec<Content>) {
    let (bench, journal, holding, first) = Bench::with_entries(1).await;
    let mut contents: Vec<Content> = (2..=4).map(content).collect();
    contents.push(contents[0].clone());
    let drafts = (2..=5).zip(&contents).map(|(number, content)| attaching(number, content));
    let after = Some(first[0].tip());
    let entries = chain(&holding, after, drafts);
    journal.append(&holding, after, &entries, &contents).await.unwrap();
    (bench, journal, holding, entries, contents)
}

pub(crate) fn fault(entry: &Entry, content: &Content, state: ContentState) -> DocumentFault {
    DocumentFault {
        content: content.hash(),
        seq: entry.seq,
        id: entry.draft.id,
        lot: Some(format!("lot {}", entry.seq).parse().unwrap()),
        prescription: None,
        state,
    }
}

pub(crate) async fn faults(journal: &dyn Journal, holding: &HoldingName) -> Vec<DocumentFault> {
    match journal.verify(holding, None).await.unwrap() {
        Verified::Sound { .. } => Vec::new(),
        Verified::Lacking { documents, entries, head } => {
            assert_eq!(journal.tip(holding).await.unwrap(), Some((entries, head.unwrap())));
            documents
        }
        other => panic!("{other:?}"),
    }
}

#[tokio::test]
async fn contents_come_back_to_the_byte_each_kept_once() {
    let (bench, journal, holding, entries, contents) = with_documents().await;
    for content in &contents {
        let kept = journal.content(&holding, content.hash()).await.unwrap();
        assert_eq!(kept.as_deref(), Some(content.bytes()));
    }
    let mut wanted: Vec<(Hash, u64)> = contents[..3]
        .iter()
        .map(|content| (content.hash(), u64::try_from(content.bytes().len()).unwrap()))
        .collect();
    wanted.sort_by_key(|(hash, _)| hash.0);
    assert_eq!(journal.contents(&holding).await.unwrap(), wanted);
    assert_eq!(journal.attached(&holding).await.unwrap(), entries);
    assert_eq!(faults(journal.as_ref(), &holding).await, []);
    let found = documents(journal.as_ref(), &holding).await.unwrap();
    assert!(found.iter().all(|found| found.state == ContentState::Kept && found.fault().is_none()));
    // Checked with raw SQL, in case reading and writing are wrong in the same way.
    let mut raw = bench.by_hand().await;
    let hash = contents[1].hash().0;
    assert_eq!(raw.content(&hash).await.as_deref(), Some(contents[1].bytes()));
}

#[tokio::test]
async fn contents_belong_to_one_holding() {
    let (_bench, journal, _, _, contents) = with_documents().await;
    let second = holding("second");
    assert_eq!(journal.content(&second, contents[0].hash()).await.unwrap(), None);
    assert_eq!(journal.contents(&second).await.unwrap(), []);
    assert_eq!(journal.attached(&second).await.unwrap(), []);
    let entries = chain(&second, None, [attaching(1, &contents[0])]);
    journal.append(&second, None, &entries, &contents[..1]).await.unwrap();
    assert_eq!(faults(journal.as_ref(), &second).await, []);
}

#[tokio::test]
async fn a_batch_that_is_refused_leaves_no_content_behind() {
    let (_bench, journal, holding, entries, contents) = with_documents().await;
    let tip = entries.last().map(Entry::tip);
    let new = content(9);
    let kept = journal.contents(&holding).await.unwrap();
    // A moved tip, a taken id, an unsealed entry.
    let late = chain(&holding, None, [attaching(9, &new)]);
    let error = journal.append(&holding, None, &late, std::slice::from_ref(&new)).await.unwrap_err();
    assert!(matches!(error, AppendError::TipMoved { .. }), "{error}");
    let taken = chain(&holding, tip, [attaching(9, &new), attaching(2, &contents[0])]);
    let error = journal.append(&holding, tip, &taken, std::slice::from_ref(&new)).await.unwrap_err();
    assert!(matches!(error, AppendError::DuplicateId { .. }), "{error}");
    let mut spoilt = chain(&holding, tip, [attaching(9, &new), draft(10)]);
    spoilt[1].hash.0[0] ^= 1;
    let error = journal.append(&holding, tip, &spoilt, std::slice::from_ref(&new)).await.unwrap_err();
    assert!(matches!(error, AppendError::NotSealed(_)), "{error}");
    // A content that the table refuses rolls the entries back too.
    let good = chain(&holding, tip, [attaching(9, &new)]);
    let empty = [new.clone(), Content::new(Vec::new())];
    let error = journal.append(&holding, tip, &good, &empty).await.unwrap_err();
    assert!(matches!(error, AppendError::Store(_)), "{error}");
    assert_eq!(journal.tip(&holding).await.unwrap(), tip);
    assert_eq!(journal.contents(&holding).await.unwrap(), kept);
    journal.append(&holding, tip, &good, &[new]).await.unwrap();
}

#[tokio::test]
async fn a_content_that_is_kept_already_is_passed_over_and_one_that_is_missing_is_supplied() {
    let (bench, journal, holding, entries, contents) = with_documents().await;
    let tip = entries.last().map(Entry::tip);
    journal.append(&holding, tip, &[], &contents).await.unwrap();
    bench.by_hand_unguarded().await.run("delete from contents").await.unwrap();
    let missing: Vec<_> = entries
        .iter()
        .zip(&contents)
        .map(|(entry, content)| fault(entry, content, ContentState::Missing))
        .collect();
    assert_eq!(faults(journal.as_ref(), &holding).await, missing);
    let said = document(Words::english(), &missing[1]);
    let wanted = format!(
        "document `{}` of lot `lot 3` (entry 3, {}) is missing: nothing is kept under its hash",
        contents[1].hash(),
        id(3)
    );
    assert_eq!(said.message, wanted);
    assert!(said.help.starts_with("attach the same file again"));
    journal.append(&holding, tip, &[], &contents[1..3]).await.unwrap();
    assert_eq!(faults(journal.as_ref(), &holding).await, [missing[0].clone(), missing[3].clone()]);
    journal.append(&holding, tip, &[], &contents[..1]).await.unwrap();
    assert_eq!(faults(journal.as_ref(), &holding).await, []);
}

#[tokio::test]
async fn a_broken_chain_is_named_before_a_missing_document() {
    let (bench, journal, holding, ..) = with_documents().await;
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("delete from contents").await.unwrap();
    raw.run("update entries set body = '{}' where seq = 4").await.unwrap();
    let found = journal.verify(&holding, None).await.unwrap();
    assert!(matches!(&found, Verified::Broken(broken) if broken.seq == 4), "{found:?}");
}

#[tokio::test]
async fn an_entry_that_gives_another_length_than_its_content_has_is_named() {
    let (_bench, journal, holding, entries, contents) = with_documents().await;
    let tip = entries.last().map(Entry::tip);
    let Event::DocumentAttached(body) = attaching(6, &contents[0]).event else { panic!() };
    let event = Event::from(DocumentAttached { bytes: body.bytes + 1, ..(*body).clone() });
    let wrong = chain(&holding, tip, [Draft::new(id(6), day(), "A. Keeper".parse().unwrap(), event)]);
    journal.append(&holding, tip, &wrong, &[]).await.unwrap();
    let altered = fault(&wrong[0], &contents[0], ContentState::Altered);
    assert_eq!(faults(journal.as_ref(), &holding).await, [altered]);
}

/// A holding with a lot 2, on a journal in a file.
async fn holdings() -> (Bench, Holdings, HoldingName) {
    let bench = Bench::new();
    let holdings = Holdings::new(bench.open().await);
    let holding = holding("first");
    let read = |kind: &str, body: &str| {
        Event::read(combclear_domain::journal::Kind::from_word(kind).unwrap(), body).unwrap()
    };
    let drafts = [
        read("medicine_described", r#"{"medicine":"strips","pack_name":"Strips (invented)","unit":"strip"}"#),
        read("lot_acquired", r#"{"lot":"lot 2","medicine":"strips","quantity":10}"#),
    ];
    let drafts = (100..)
        .zip(drafts)
        .map(|(number, event)| Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), event))
        .collect();
    let drafts: Vec<Draft> = drafts;
    let on_refusal = combclear_store::OnRefusal::Stop;
    let begin = combclear_store::IfNew::Begin;
    holdings.record_each(&holding, drafts, recorded_at(), on_refusal, begin).await.unwrap();
    (bench, holdings, holding)
}

#[tokio::test]
async fn a_document_is_attached_once_and_its_content_supplied_when_it_is_missing() {
    let (bench, holdings, holding) = holdings().await;
    let content = content(2);
    let draft = attaching(2, &content);
    let attach = async |draft: &Draft, content: &Content| {
        holdings.attach(&holding, draft.clone(), content.clone(), recorded_at()).await
    };
    assert!(matches!(attach(&draft, &content).await, Ok(Recorded::New(_))));
    assert!(matches!(attach(&draft, &content).await, Ok(Recorded::Known(_))));
    let other = self::content(3);
    let conflict = attach(&attaching(2, &other), &other).await;
    assert!(matches!(conflict, Err(RecordError::Conflict { .. })), "{conflict:?}");
    // That lot was never acquired.
    let refused = attach(&attaching(3, &other), &other).await;
    assert!(matches!(refused, Err(RecordError::Refused { .. })), "{refused:?}");
    let journal = holdings.journal();
    let kept: Vec<Hash> =
        journal.contents(&holding).await.unwrap().into_iter().map(|(hash, _)| hash).collect();
    assert_eq!(kept, [content.hash()], "what was refused left nothing behind");
    bench.by_hand_unguarded().await.run("delete from contents").await.unwrap();
    assert_eq!(faults(journal.as_ref(), &holding).await.len(), 1);
    assert!(matches!(attach(&draft, &content).await, Ok(Recorded::Known(_))));
    assert_eq!(faults(journal.as_ref(), &holding).await, []);
}
