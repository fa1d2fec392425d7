//! The walk along the chain, and checkpoints.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Entry, EntryId, Hash};
use combclear_store::{Missed, Verified};
use combclear_wording::Words;
use combclear_wording::unreadable::misfit;

use crate::making::{Bench, chain, drafts, holding, id, run};

fn checkpoint(holding: &HoldingName, entry: &Entry) -> Checkpoint {
    Checkpoint { holding: holding.clone(), entries: entry.seq, head: entry.hash }
}

fn sound(entries: &[Entry]) -> Verified {
    let entry = entries.last();
    Verified::Sound { entries: entry.map_or(0, |entry| entry.seq), head: entry.map(|entry| entry.hash) }
}

#[tokio::test]
async fn a_journal_of_many_pages_is_sound_and_keeps_every_checkpoint() {
    let (_bench, journal, holding, entries) = Bench::with_entries(1001).await;
    assert_eq!(journal.verify(&holding, None).await.unwrap(), sound(&entries));
    for place in [1, 499, 500, 501, 1000, 1001] {
        let kept = checkpoint(&holding, &entries[place - 1]);
        assert_eq!(journal.verify(&holding, Some(&kept)).await.unwrap(), sound(&entries), "at {place}");
        let other = Checkpoint { head: Hash([1; 32]), ..kept.clone() };
        let missed = Missed::Differs { seq: kept.entries, had: other.head, has: kept.head };
        assert_eq!(journal.verify(&holding, Some(&other)).await.unwrap(), Verified::CheckpointMissed(missed));
    }
}

#[tokio::test]
async fn a_journal_of_exactly_one_page_is_sound() {
    let (_bench, journal, holding, entries) = Bench::with_entries(500).await;
    assert_eq!(journal.verify(&holding, None).await.unwrap(), sound(&entries));
}

#[tokio::test]
async fn an_empty_journal_is_sound_and_keeps_only_an_empty_checkpoint() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    assert_eq!(journal.verify(&holding, None).await.unwrap(), sound(&[]));
    let empty = Checkpoint { holding: holding.clone(), entries: 0, head: Hash::GENESIS };
    assert_eq!(journal.verify(&holding, Some(&empty)).await.unwrap(), sound(&[]));
    let false_start = Checkpoint { head: Hash([1; 32]), ..empty.clone() };
    let missed = Missed::Differs { seq: 0, had: false_start.head, has: Hash::GENESIS };
    assert_eq!(
        journal.verify(&holding, Some(&false_start)).await.unwrap(),
        Verified::CheckpointMissed(missed)
    );
    let had_some = Checkpoint { entries: 3, ..empty };
    let missed = Missed::Shorter { had: 3, has: 0 };
    assert_eq!(journal.verify(&holding, Some(&had_some)).await.unwrap(), Verified::CheckpointMissed(missed));
}

#[tokio::test]
async fn a_checkpoint_of_another_holding_is_missed() {
    let (_bench, journal, holding, entries) = Bench::with_entries(2).await;
    let of = crate::making::holding("second");
    let foreign = Checkpoint { holding: of.clone(), ..checkpoint(&holding, &entries[1]) };
    let missed = Verified::CheckpointMissed(Missed::OtherHolding { of });
    assert_eq!(journal.verify(&holding, Some(&foreign)).await.unwrap(), missed);
}

/// Changes the file of a journal of eight entries behind the program's back, and says what the walk finds.
async fn after(change: &str) -> Told {
    let (bench, journal, holding, _) = Bench::with_entries(8).await;
    let mut raw = bench.unguarded().await;
    for sql in change.split(';') {
        run(&mut raw, sql).await.unwrap();
    }
    told(journal.verify(&holding, None).await.unwrap())
}

/// What a walk found, with what does not fit in words.
#[derive(Debug, PartialEq)]
enum Told {
    Broken { seq: u64, id: EntryId, what: String },
    Else(Verified),
}

fn told(found: Verified) -> Told {
    match found {
        Verified::Broken(Broken { seq, id, what }) => {
            Told::Broken { seq, id, what: misfit(Words::english(), &what) }
        }
        found => Told::Else(found),
    }
}

fn broken(seq: u64, id_number: u64, what: &str) -> Told {
    Told::Broken { seq, id: id(id_number), what: what.to_owned() }
}

fn nil() -> EntryId {
    EntryId(uuid::Uuid::nil())
}

fn misplaced(seq: u64, id_number: u64, last: u64) -> Told {
    let what = format!("it comes after entry {last}, so it should be entry {}", last + 1);
    broken(seq, id_number, &what)
}

const EMPTY_ID: &str = "its `corrects` is empty; it must be an id, or null";
const BODY_GONE: &str = "its body is not here, and no entry says that it was moved into an archive";
const CHANGED: &str = "its content does not match its hash: it was changed after it was recorded";
const WRONG_PREV: &str = "its `prev` is not the hash of the entry before it";

#[tokio::test]
async fn a_change_to_any_column_names_the_entry() {
    // Entry 6 has a time and a correction, entry 3 has neither.
    for (change, expected) in [
        ("happened_on = '2026-04-12' where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = '00:01' where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = null where seq = 6", broken(6, 6, CHANGED)),
        ("happened_at = '09:30' where seq = 3", broken(3, 3, CHANGED)),
        (
            "happened_at = '' where seq = 3",
            broken(3, 3, "its `happened_at` is empty; it must be a time, or null"),
        ),
        ("recorded_at = '2026-04-11T08:15:30.124Z' where seq = 6", broken(6, 6, CHANGED)),
        ("recorded_at = '2026-04-11T10:15:30.123+02:00' where seq = 6", broken(6, 6, CHANGED)),
        ("recorded_by = 'B. Keeper' where seq = 6", broken(6, 6, CHANGED)),
        // Entry 3 was copied, entry 6 was not.
        ("copied_from = 'blue notebook' where seq = 3", broken(3, 3, CHANGED)),
        ("written_on = '2026-04-12' where seq = 3", broken(3, 3, CHANGED)),
        ("copied_from = null, written_on = null where seq = 3", broken(3, 3, CHANGED)),
        ("copied_from = 'notebook', written_on = '2026-04-11' where seq = 6", broken(6, 6, CHANGED)),
        ("kind = 'strike_out' where seq = 6", broken(6, 6, CHANGED)),
        ("body = replace(body, ':', ' :') where seq = 6", broken(6, 6, CHANGED)),
        ("body = body || char(10) where seq = 6", broken(6, 6, CHANGED)),
        ("body = '' where seq = 6", broken(6, 6, BODY_GONE)),
        ("body = cast(x'ff' as text) where seq = 6", broken(6, 6, "its `body` is not text")),
        ("corrects = randomblob(16) where seq = 6", broken(6, 6, CHANGED)),
        ("corrects = null, reason = null where seq = 6", broken(6, 6, CHANGED)),
        ("corrects = x'', reason = '' where seq = 3", broken(3, 3, EMPTY_ID)),
        (
            "reason = '' where seq = 3",
            broken(3, 3, "it has one of `corrects` and `reason` without the other"),
        ),
        (
            "reason = null where seq = 6",
            broken(6, 6, "it has one of `corrects` and `reason` without the other"),
        ),
        ("reason = '' where seq = 6", broken(6, 6, CHANGED)),
        ("prev = zeroblob(32) where seq = 6", broken(6, 6, WRONG_PREV)),
        ("prev = zeroblob(31) where seq = 6", broken(6, 6, "its `prev` has 31 bytes, not 32")),
        ("hash = zeroblob(32) where seq = 6", broken(6, 6, CHANGED)),
        ("hash = x'' where seq = 6", broken(6, 6, "its `hash` has 0 bytes, not 32")),
        ("seq = 60 where seq = 6", misplaced(7, 7, 5)),
        ("seq = 9 where seq = 8", misplaced(9, 8, 7)),
        ("seq = 0 where seq = 1", misplaced(0, 1, 0)),
        ("seq = -9223372036854775808 where seq = 1", misplaced(0, 1, 0)),
        ("seq = 9223372036854775807 where seq = 8", misplaced(9_223_372_036_854_775_807, 8, 7)),
        ("holding = 'second' where seq = 6", misplaced(7, 7, 5)),
    ] {
        assert_eq!(after(&format!("update entries set {change}")).await, expected, "{change}");
    }
}

#[tokio::test]
async fn another_id_names_the_place() {
    let found = after("update entries set id = zeroblob(16) where seq = 6").await;
    assert_eq!(found, Told::Broken { seq: 6, id: nil(), what: CHANGED.to_owned() });
    assert!(matches!(after("update entries set id = x'' where seq = 6").await, Told::Broken { seq: 6, .. }));
}

#[tokio::test]
async fn rows_that_go_come_or_change_places_name_the_first_that_does_not_fit() {
    for (change, expected) in [
        ("delete from entries where seq = 4", misplaced(5, 5, 3)),
        ("delete from entries where seq = 1", misplaced(2, 2, 0)),
        // The gap is closed.
        (
            "delete from entries where seq = 4; update entries set seq = 4 where seq = 5;
             update entries set seq = 5 where seq = 6; update entries set seq = 6 where seq = 7;
             update entries set seq = 7 where seq = 8",
            broken(4, 5, WRONG_PREV),
        ),
        // Two swap places.
        (
            "update entries set seq = 99 where seq = 3; update entries set seq = 3 where seq = 4;
             update entries set seq = 4 where seq = 99",
            broken(3, 4, WRONG_PREV),
        ),
        // One occurs twice.
        (
            "insert into entries select holding, 9, zeroblob(16), happened_on, happened_at, recorded_at, recorded_by,
             kind, body, corrects, reason, prev, hash, copied_from, written_on from entries where seq = 8",
            Told::Broken { seq: 9, id: nil(), what: WRONG_PREV.to_owned() },
        ),
    ] {
        assert_eq!(after(change).await, expected, "{change}");
    }
}

#[tokio::test]
async fn an_entry_moved_to_another_holding_is_named_there_too() {
    let (bench, journal, ..) = Bench::with_entries(3).await;
    let second = holding("second");
    let entries = chain(&second, None, drafts(11..=13));
    journal.append(&second, None, &entries, &[]).await.unwrap();
    let mut raw = bench.unguarded().await;
    run(&mut raw, "update entries set holding = 'second', seq = 4 where holding = 'first' and seq = 3")
        .await
        .unwrap();
    assert_eq!(told(journal.verify(&second, None).await.unwrap()), broken(4, 3, WRONG_PREV));
}

#[tokio::test]
async fn a_journal_cut_short_is_found_by_its_checkpoint_only() {
    let (bench, journal, holding, entries) = Bench::with_entries(8).await;
    run(&mut bench.unguarded().await, "delete from entries where seq > 6").await.unwrap();
    assert_eq!(journal.verify(&holding, None).await.unwrap(), sound(&entries[..6]));
    let early = checkpoint(&holding, &entries[5]);
    assert_eq!(journal.verify(&holding, Some(&early)).await.unwrap(), sound(&entries[..6]));
    let late = checkpoint(&holding, &entries[7]);
    let missed = Missed::Shorter { had: 8, has: 6 };
    assert_eq!(journal.verify(&holding, Some(&late)).await.unwrap(), Verified::CheckpointMissed(missed));
}

#[tokio::test]
async fn a_chain_made_anew_is_found_by_its_checkpoint_only() {
    let (bench, journal, holding, entries) = Bench::with_entries(8).await;
    run(&mut bench.unguarded().await, "delete from entries where seq > 3").await.unwrap();
    let after = Some(entries[2].tip());
    let anew = chain(&holding, after, drafts(104..=110));
    journal.append(&holding, after, &anew, &[]).await.unwrap();
    assert_eq!(journal.verify(&holding, None).await.unwrap(), sound(&anew));
    let kept = checkpoint(&holding, &entries[2]);
    assert_eq!(journal.verify(&holding, Some(&kept)).await.unwrap(), sound(&anew));
    let lost = checkpoint(&holding, &entries[5]);
    let missed = Missed::Differs { seq: 6, had: entries[5].hash, has: anew[2].hash };
    assert_eq!(journal.verify(&holding, Some(&lost)).await.unwrap(), Verified::CheckpointMissed(missed));
}

#[tokio::test]
async fn what_comes_first_in_the_journal_is_named_first() {
    let (bench, journal, holding, entries) = Bench::with_entries(8).await;
    let mut raw = bench.unguarded().await;
    run(&mut raw, "update entries set body = '' where seq in (5, 7)").await.unwrap();
    let other = Checkpoint { head: Hash([1; 32]), ..checkpoint(&holding, &entries[5]) };
    assert_eq!(told(journal.verify(&holding, Some(&other)).await.unwrap()), broken(5, 5, BODY_GONE));
    let other = Checkpoint { head: Hash([1; 32]), ..checkpoint(&holding, &entries[3]) };
    let missed = Missed::Differs { seq: 4, had: other.head, has: entries[3].hash };
    assert_eq!(journal.verify(&holding, Some(&other)).await.unwrap(), Verified::CheckpointMissed(missed));
}
