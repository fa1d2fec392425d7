//! Keys: kept with the hash of their secret only, ended once, never taken away.

use combclear_domain::Instant;
use combclear_domain::journal::key::{Key, KeyId, Role, Stamp};
use combclear_domain::journal::{Entry, Hash};
use combclear_store::{Holdings, Verified};

use super::Bench;
use crate::making::{chain, draft, holding, recorded_at};

fn key(id: &str, role: Role) -> Key {
    Key {
        id: id.parse().unwrap(),
        holding: role.is_of_a_holding().then(|| holding("first")),
        role,
        holder: "Jory (invented)".parse().unwrap(),
        made_at: recorded_at(),
        until: None,
        ended_at: None,
    }
}

fn secret(number: u8) -> Hash {
    Hash::of_content(&[number])
}

fn later() -> Instant {
    "2026-05-01T10:00:00.000Z".parse().unwrap()
}

#[tokio::test]
async fn keys_come_back_as_they_were_made() {
    let bench = Bench::new();
    let journal = bench.open().await;
    assert_eq!(journal.keys().await.unwrap(), []);
    let mut made = Vec::new();
    for (number, role) in (1u8..).zip(Role::ALL) {
        let until = (role == Role::Reader).then(|| "2026-12-31".parse().unwrap());
        let key = Key { until, ..key(&format!("key0000{number}"), role) };
        journal.add_key(&key, secret(number)).await.unwrap();
        assert_eq!(journal.key(key.id).await.unwrap(), Some((key.clone(), secret(number))));
        made.push(key);
    }
    assert_eq!(journal.keys().await.unwrap(), made);
    let nobody: KeyId = "nobodyxx".parse().unwrap();
    assert_eq!(journal.key(nobody).await.unwrap(), None);
    assert!(!journal.end_key(nobody, later()).await.unwrap());
    // Another program sees them too.
    assert_eq!(bench.open().await.keys().await.unwrap(), made);
}

#[tokio::test]
async fn an_id_or_a_secret_is_used_once() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let first = key("key00001", Role::Keeper);
    journal.add_key(&first, secret(1)).await.unwrap();
    assert!(journal.add_key(&key("key00001", Role::Reader), secret(2)).await.is_err());
    assert!(journal.add_key(&key("key00002", Role::Reader), secret(1)).await.is_err());
    assert_eq!(journal.keys().await.unwrap(), [first]);
}

#[tokio::test]
async fn a_key_is_ended_once_and_stays() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let made = key("key00001", Role::Keeper);
    journal.add_key(&made, secret(1)).await.unwrap();
    assert!(journal.end_key(made.id, later()).await.unwrap());
    assert!(!journal.end_key(made.id, recorded_at()).await.unwrap());
    let ended = Key { ended_at: Some(later()), ..made };
    assert_eq!(journal.keys().await.unwrap(), [ended]);
    let mut raw = bench.by_hand().await;
    for sql in [
        "update keys set ended_at = null",
        "update keys set role = 'reader'",
        "update keys set until = '2099-01-01'",
        "delete from keys",
    ] {
        assert!(raw.run(sql).await.is_err(), "{sql}");
    }
}

#[tokio::test]
async fn an_entry_says_with_which_key_it_was_recorded_and_that_cannot_be_changed_unseen() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holdings = Holdings::new(bench.open().await);
    let first = holding("first");
    let key: KeyId = "key00001".parse().unwrap();
    holdings.begin(&first, draft(3), recorded_at()).await.unwrap();
    let plain = combclear_domain::journal::Draft { correction: None, ..draft(6) };
    holdings.record(&first, vec![plain.clone()], Stamp { at: later(), key: Some(key) }).await.unwrap();
    let entries = journal.page(&first, 0, 9).await.unwrap();
    assert_eq!(entries.iter().map(|entry| entry.key).collect::<Vec<_>>(), [None, Some(key)]);
    // The same entry again, with another key or none, is known.
    holdings.record(&first, vec![plain], later()).await.unwrap();
    assert_eq!(journal.page(&first, 0, 9).await.unwrap().len(), 2);
    // Its text names the key, and reads back.
    let text = entries[1].to_json();
    assert!(text.contains(r#""recorded_by":"A. Keeper","key":"key00001","kind""#), "{text}");
    assert_eq!(Entry::from_json(&text).unwrap(), entries[1]);
    let head = Some(entries[1].hash);
    assert_eq!(journal.verify(&first, None).await.unwrap(), Verified::Sound { entries: 2, head });
    assert!(holdings.read(&first, |_| ()).await.unwrap().is_some());

    for change in ["key = 'key00002'", "key = null", "key = 'x'"] {
        let mut raw = bench.by_hand_unguarded().await;
        // A key of another length is refused by the column itself, guarded or not.
        if raw.run(&format!("update entries set {change} where seq = 2")).await.is_err() {
            continue;
        }
        let found = journal.verify(&first, None).await.unwrap();
        assert!(matches!(&found, Verified::Broken(broken) if broken.seq == 2), "{change}: {found:?}");
        raw.run("update entries set key = 'key00001' where seq = 2").await.unwrap();
    }
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("update entries set key = 'key00002' where seq = 1").await.unwrap();
    let found = journal.verify(&first, None).await.unwrap();
    assert!(matches!(&found, Verified::Broken(broken) if broken.seq == 1), "{found:?}");
    assert_eq!(chain(&first, None, [draft(3)])[0].key, None);
}
