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
use proptest::prelude::{Strategy, any};
use proptest::sample::Index;
use proptest::test_runner::{Config, TestCaseError, TestRunner};
use sqlx::SqliteConnection;

use crate::making::{Bench, attaching, chain, day, draft, holding, id, recorded_at, run};

fn content(number: u64) -> Content {
    let types = MediaType::ALL;
    let media_type = types[usize::try_from(number).unwrap() % types.len()];
    Content::new(sample(media_type, &format!("invoice {number}")))
}

/// A journal of one apiary and four documents, of which the last is the same as the first.
async fn with_documents() -> (Bench, Arc<dyn Journal>, HoldingName, Vec<Entry>, Vec<Content>) {
    let (bench, journal, holding, first) = Bench::with_entries(1).await;
    let mut contents: Vec<Content> = (2..=4).map(content).collect();
    contents.push(contents[0].clone());
    let drafts = (2..=5).zip(&contents).map(|(number, content)| attaching(number, content));
    let after = Some(first[0].tip());
    let entries = chain(&holding, after, drafts);
    journal.append(&holding, after, &entries, &contents).await.unwrap();
    (bench, journal, holding, entries, contents)
}

fn fault(entry: &Entry, content: &Content, state: ContentState) -> DocumentFault {
    DocumentFault {
        content: content.hash(),
        seq: entry.seq,
        id: entry.draft.id,
        lot: Some(format!("lot {}", entry.seq).parse().unwrap()),
        prescription: None,
        state,
    }
}

async fn faults(journal: &dyn Journal, holding: &HoldingName) -> Vec<DocumentFault> {
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
    let (hash, bytes): (Vec<u8>, Vec<u8>) =
        sqlx::query_as("select hash, bytes from contents where bytes = $1")
            .bind(contents[1].bytes())
            .fetch_one(&mut bench.raw().await)
            .await
            .unwrap();
    assert_eq!((hash.as_slice(), bytes.as_slice()), (&contents[1].hash().0[..], contents[1].bytes()));
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
    run(&mut bench.unguarded().await, "delete from contents").await.unwrap();
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
    let mut raw = bench.unguarded().await;
    run(&mut raw, "delete from contents").await.unwrap();
    run(&mut raw, "update entries set body = '{}' where seq = 4").await.unwrap();
    let found = journal.verify(&holding, None).await.unwrap();
    assert!(matches!(&found, Verified::Broken(broken) if broken.seq == 4), "{found:?}");
}

#[tokio::test]
async fn contents_can_neither_be_changed_nor_deleted_nor_replaced() {
    let (bench, journal, holding, _, contents) = with_documents().await;
    let mut raw = bench.raw().await;
    for (sql, message) in [
        ("update contents set bytes = x'00'", "a document is never changed"),
        ("update contents set hash = hash", "a document is never changed"),
        ("update or ignore contents set holding = 'second'", "a document is never changed"),
        ("delete from contents", "a document is never deleted"),
        ("insert into contents values ('first', zeroblob(31), x'00')", "length(hash) = 32"),
        ("insert into contents values ('first', zeroblob(32), x'')", "length(bytes) between 1 and 10000000"),
        (
            "insert into contents values ('first', zeroblob(32), zeroblob(10000001))",
            "length(bytes) between 1 and 10000000",
        ),
        ("insert into contents values ('first', zeroblob(32), 'text')", "cannot store TEXT"),
        ("insert into contents values ('first', null, x'00')", "NOT NULL"),
    ] {
        let error = run(&mut raw, sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    let replace = "insert or replace into contents select holding, hash, x'00' from contents";
    assert_eq!(run(&mut raw, replace).await.unwrap(), 0);
    for content in &contents {
        let kept = journal.content(&holding, content.hash()).await.unwrap();
        assert_eq!(kept.as_deref(), Some(content.bytes()));
    }
    let most = "insert into contents values ('first', zeroblob(32), zeroblob(10000000))";
    assert_eq!(run(&mut raw, most).await.unwrap(), 1);
}

/// A database as each earlier version of this program left it: made by the migrations up to then, with rows of that time.
#[tokio::test]
async fn a_database_of_each_earlier_version_is_brought_up_to_date() {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../migrations/sqlite");
    let mut files: Vec<_> = std::fs::read_dir(root).unwrap().map(|file| file.unwrap().path()).collect();
    files.sort();
    for version in 1..files.len() {
        let bench = Bench::new();
        let folder = tempfile::tempdir().unwrap();
        for file in &files[..version] {
            std::fs::copy(file, folder.path().join(file.file_name().unwrap())).unwrap();
        }
        let holding = holding("first");
        // None of these was copied from paper, which earlier versions did not know.
        let entries = chain(&holding, None, [1, 2, 4].map(draft));
        let mut raw = bench.raw().await;
        let migrations = sqlx::migrate::Migrator::new(folder.path()).await.unwrap();
        migrations.run_direct(None, &mut raw, false).await.unwrap();
        for entry in &entries {
            let draft = &entry.draft;
            let correction = draft.correction.as_deref();
            sqlx::query(
                "insert into entries (holding, seq, id, happened_on, happened_at, recorded_at, recorded_by, kind, body,
                corrects, reason, prev, hash) values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13)",
            )
            .bind(holding.as_str())
            .bind(i64::try_from(entry.seq).unwrap())
            .bind(draft.id.0)
            .bind(draft.on.to_string())
            .bind(draft.at.map(|at| at.to_string()))
            .bind(entry.recorded_at.to_string())
            .bind(draft.recorded_by.as_str())
            .bind(draft.kind().as_str())
            .bind(&*draft.body)
            .bind(correction.map(|correction| correction.of.0))
            .bind(correction.map(|correction| correction.reason.as_str()))
            .bind(&entry.prev.0[..])
            .bind(&entry.hash.0[..])
            .execute(&mut raw)
            .await
            .unwrap();
        }
        drop(raw);
        let journal = bench.open().await;
        assert_eq!(journal.page(&holding, 0, 9).await.unwrap(), entries, "version {version}");
        let tip = entries.last().map(Entry::tip);
        let new = content(9);
        let attached = chain(&holding, tip, [attaching(9, &new)]);
        journal.append(&holding, tip, &attached, std::slice::from_ref(&new)).await.unwrap();
        assert_eq!(journal.content(&holding, new.hash()).await.unwrap().as_deref(), Some(new.bytes()));
        let head = Some(attached[0].hash);
        assert_eq!(journal.verify(&holding, None).await.unwrap(), Verified::Sound { entries: 4, head });
    }
}

async fn write(raw: &mut SqliteConnection, hash: Hash, bytes: &[u8]) {
    let sql = "update contents set bytes = $1 where hash = $2";
    let done = sqlx::query(sql).bind(bytes).bind(&hash.0[..]).execute(raw).await.unwrap();
    assert_eq!(done.rows_affected(), 1);
}

/// Any single byte of any content: changed, dropped, added.
#[test]
fn any_changed_byte_names_its_document() {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let (bench, journal, holding, entries, contents) = runtime.block_on(with_documents());
    let raw = std::cell::RefCell::new(runtime.block_on(bench.unguarded()));
    runtime.block_on(run(&mut raw.borrow_mut(), "pragma synchronous = off")).unwrap();
    let cases = (0..3_usize, any::<Index>(), 0..3_u8, 1..=u8::MAX).prop_map(|(which, at, how, byte)| {
        let before = content(u64::try_from(which).unwrap() + 2).into_bytes();
        let at = at.index(before.len());
        let mut after = before;
        match how {
            0 => after[at] ^= byte,
            1 => drop(after.remove(at)),
            _ => after.insert(at, byte),
        }
        (which, after)
    });
    let mut runner = TestRunner::new(Config { cases: 300, failure_persistence: None, ..Config::default() });
    runner
        .run(&cases, |(which, after)| {
            let mut raw = raw.borrow_mut();
            runtime.block_on(write(&mut raw, contents[which].hash(), &after));
            let found = runtime.block_on(faults(journal.as_ref(), &holding));
            runtime.block_on(write(&mut raw, contents[which].hash(), contents[which].bytes()));
            let wanted: Vec<_> = entries
                .iter()
                .zip(&contents)
                .filter(|(_, content)| content.hash() == contents[which].hash())
                .map(|(entry, content)| fault(entry, content, ContentState::Altered))
                .collect();
            if found != wanted {
                return Err(TestCaseError::fail(format!("{found:?} instead of {wanted:?}")));
            }
            Ok(())
        })
        .unwrap();
    assert_eq!(runtime.block_on(faults(journal.as_ref(), &holding)), []);
}

#[tokio::test]
async fn a_content_under_another_hash_leaves_its_document_missing() {
    let (bench, journal, holding, entries, contents) = with_documents().await;
    let mut raw = bench.unguarded().await;
    let sql = "update contents set hash = zeroblob(32) where hash = $1";
    sqlx::query(sql).bind(&contents[1].hash().0[..]).execute(&mut raw).await.unwrap();
    let missing = fault(&entries[1], &contents[1], ContentState::Missing);
    assert_eq!(faults(journal.as_ref(), &holding).await, [missing]);
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
    holdings.record_each(&holding, &drafts, recorded_at(), on_refusal, begin).await.unwrap();
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
    let other = crate::documents::content(3);
    let conflict = attach(&attaching(2, &other), &other).await;
    assert!(matches!(conflict, Err(RecordError::Conflict { .. })), "{conflict:?}");
    // That lot was never acquired.
    let refused = attach(&attaching(3, &other), &other).await;
    assert!(matches!(refused, Err(RecordError::Refused { .. })), "{refused:?}");
    let journal = holdings.journal();
    let kept: Vec<Hash> =
        journal.contents(&holding).await.unwrap().into_iter().map(|(hash, _)| hash).collect();
    assert_eq!(kept, [content.hash()], "what was refused left nothing behind");
    run(&mut bench.unguarded().await, "delete from contents").await.unwrap();
    assert_eq!(faults(journal.as_ref(), &holding).await.len(), 1);
    assert!(matches!(attach(&draft, &content).await, Ok(Recorded::Known(_))));
    assert_eq!(faults(journal.as_ref(), &holding).await, []);
}

/// What is remembered of contents that were read, and what is looked at all the same.
#[tokio::test]
async fn a_content_that_was_read_is_looked_up_from_then_on_and_read_again_when_it_is_verified() {
    let (bench, journal, holding, _, contents) = with_documents().await;
    let holdings = Holdings::new(Arc::clone(&journal));
    let mut raw = bench.unguarded().await;
    let (hash, bytes) = (contents[1].hash(), contents[1].bytes());
    let state = async || {
        let found = holdings.documents(&holding).await.unwrap();
        found.iter().find(|attached| attached.document.content == hash).unwrap().state
    };
    let mut other = bytes.to_vec();
    other[0] ^= 1;

    write(&mut raw, hash, &other).await;
    assert_eq!(state().await, ContentState::Altered);
    write(&mut raw, hash, bytes).await;
    assert_eq!(state().await, ContentState::Kept);

    let mut longer = bytes.to_vec();
    longer.push(0);
    write(&mut raw, hash, &longer).await;
    assert_eq!(state().await, ContentState::Altered);

    // The one change that is missed, but not by verification nor by whoever starts anew.
    write(&mut raw, hash, &other).await;
    assert_eq!(state().await, ContentState::Kept);
    assert_eq!(faults(journal.as_ref(), &holding).await.len(), 1);
    let again = Holdings::new(Arc::clone(&journal)).documents(&holding).await.unwrap();
    assert_eq!(again.iter().filter(|attached| attached.state == ContentState::Altered).count(), 1);

    run(&mut raw, "delete from contents").await.unwrap();
    assert_eq!(state().await, ContentState::Missing);
}
