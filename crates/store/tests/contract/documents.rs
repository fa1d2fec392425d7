//! The documents of a holding on a file.

use std::sync::Arc;

use combclear_domain::journal::Hash;
use combclear_store::{ContentState, Holdings};
use proptest::prelude::{Strategy, any};
use proptest::sample::Index;
use proptest::test_runner::{Config, TestCaseError, TestRunner};
use sqlx::SqliteConnection;

use crate::making::run;
use crate::on_sqlite::documents::{content, fault, faults, with_documents};

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
