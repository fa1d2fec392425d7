//! Changes of any single byte, in any column of text or bytes.

use combclear_store::Verified;
use proptest::prelude::{Just, Strategy, any, prop_oneof};
use proptest::sample::Index;
use proptest::test_runner::{Config, TestCaseError, TestRunner};
use sqlx::{AssertSqlSafe, SqliteConnection};

use crate::making::{Bench, run};

const COLUMNS: [(&str, &str); 11] = [
    ("id", "blob"),
    ("happened_on", "text"),
    ("happened_at", "text"),
    ("recorded_at", "text"),
    ("recorded_by", "text"),
    ("kind", "text"),
    ("body", "text"),
    ("corrects", "blob"),
    ("reason", "text"),
    ("prev", "blob"),
    ("hash", "blob"),
];

/// A change to one byte.
#[derive(Debug, Clone, Copy)]
enum Change {
    Flip(u8),
    Drop,
    Insert(u8),
}

impl Change {
    fn to(self, bytes: &[u8], at: usize) -> Vec<u8> {
        let mut changed = bytes.to_vec();
        match self {
            Change::Flip(mask) => changed[at] ^= mask,
            Change::Drop => drop(changed.remove(at)),
            Change::Insert(byte) => changed.insert(at, byte),
        }
        changed
    }
}

async fn read(raw: &mut SqliteConnection, column: &str, seq: i64) -> Option<Vec<u8>> {
    let sql = format!("select cast({column} as blob) from entries where seq = {seq}");
    sqlx::query_scalar(AssertSqlSafe(sql)).fetch_one(raw).await.unwrap()
}

/// Returns the number of rows changed: 0 if an id would occur twice, which the table refuses even now.
async fn write(raw: &mut SqliteConnection, column: &str, affinity: &str, seq: i64, bytes: &[u8]) -> u64 {
    let sql = format!("update or ignore entries set {column} = cast($1 as {affinity}) where seq = {seq}");
    sqlx::query(AssertSqlSafe(sql)).bind(bytes).execute(raw).await.unwrap().rows_affected()
}

#[test]
fn any_changed_byte_names_its_entry() {
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let (bench, journal, holding, entries) = runtime.block_on(Bench::with_entries(8));
    let mut raw = runtime.block_on(bench.unguarded());
    runtime.block_on(run(&mut raw, "pragma synchronous = off")).unwrap();
    let sound = Verified::Sound { entries: 8, head: Some(entries[7].hash) };

    let change = prop_oneof![
        (1..=u8::MAX).prop_map(Change::Flip),
        Just(Change::Drop),
        any::<u8>().prop_map(Change::Insert),
    ];
    let cases = (1..=8i64, 0..COLUMNS.len(), any::<Index>(), change);
    let mut touched = [0u32; COLUMNS.len()];
    let mut runner = TestRunner::new(Config { cases: 600, failure_persistence: None, ..Config::default() });
    let raw = std::cell::RefCell::new(raw);
    let touched_in_run = std::cell::RefCell::new(&mut touched);
    runner
        .run(&cases, |(seq, column, at, change)| {
            let (name, affinity) = COLUMNS[column];
            let raw = &mut *raw.borrow_mut();
            let Some(before) = runtime.block_on(read(raw, name, seq)) else {
                return Err(TestCaseError::reject("nothing stands there"));
            };
            let after = change.to(&before, at.index(before.len()));
            if runtime.block_on(write(raw, name, affinity, seq, &after)) == 0 {
                return Err(TestCaseError::reject("this id stands there already"));
            }
            touched_in_run.borrow_mut()[column] += 1;
            let found = runtime.block_on(journal.verify(&holding, None)).unwrap();
            assert_eq!(runtime.block_on(write(raw, name, affinity, seq, &before)), 1);
            let named = matches!(&found, Verified::Broken(broken) if i64::try_from(broken.seq) == Ok(seq));
            if !named {
                return Err(TestCaseError::fail(format!("{name} of entry {seq}: {found:?}")));
            }
            Ok(())
        })
        .unwrap();
    assert!(touched.iter().all(|times| *times > 5), "{touched:?}");
    assert_eq!(runtime.block_on(journal.verify(&holding, None)).unwrap(), sound);
}
