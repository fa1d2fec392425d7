//! The walk along the chain, and checkpoints.

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Entry, EntryId, Hash};
use combclear_store::{Missed, Verified};
use combclear_wording::Words;
use combclear_wording::unreadable::misfit;

use super::Bench;
use crate::making::{chain, drafts, holding, id};

fn checkpoint(holding: &HoldingName, entry: &Entry) -> Checkpoint {
    Checkpoint { holding: holding.clone(), entries: entry.seq, head: entry.hash }
}

pub(crate) fn sound(entries: &[Entry]) -> Verified {
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

/// What a walk found, with what does not fit in words.
#[derive(Debug, PartialEq)]
pub(crate) enum Told {
    Broken { seq: u64, id: EntryId, what: String },
    Else(Verified),
}

pub(crate) fn told(found: Verified) -> Told {
    match found {
        Verified::Broken(Broken { seq, id, what }) => {
            Told::Broken { seq, id, what: misfit(Words::english(), &what) }
        }
        found => Told::Else(found),
    }
}

pub(crate) fn broken(seq: u64, id_number: u64, what: &str) -> Told {
    Told::Broken { seq, id: id(id_number), what: what.to_owned() }
}

pub(crate) const BODY_GONE: &str =
    "its body is not here, and no entry says that it was moved into an archive";
pub(crate) const WRONG_PREV: &str = "its `prev` is not the hash of the entry before it";

#[tokio::test]
async fn an_entry_moved_to_another_holding_is_named_there_too() {
    let (bench, journal, ..) = Bench::with_entries(3).await;
    let second = holding("second");
    let entries = chain(&second, None, drafts(11..=13));
    journal.append(&second, None, &entries, &[]).await.unwrap();
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("update entries set holding = 'second', seq = 4 where holding = 'first' and seq = 3")
        .await
        .unwrap();
    assert_eq!(told(journal.verify(&second, None).await.unwrap()), broken(4, 3, WRONG_PREV));
}

#[tokio::test]
async fn a_journal_cut_short_is_found_by_its_checkpoint_only() {
    let (bench, journal, holding, entries) = Bench::with_entries(8).await;
    bench.by_hand_unguarded().await.run("delete from entries where seq > 6").await.unwrap();
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
    bench.by_hand_unguarded().await.run("delete from entries where seq > 3").await.unwrap();
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
    let mut raw = bench.by_hand_unguarded().await;
    raw.run("update entries set body = '' where seq in (5, 7)").await.unwrap();
    let other = Checkpoint { head: Hash([1; 32]), ..checkpoint(&holding, &entries[5]) };
    assert_eq!(told(journal.verify(&holding, Some(&other)).await.unwrap()), broken(5, 5, BODY_GONE));
    let other = Checkpoint { head: Hash([1; 32]), ..checkpoint(&holding, &entries[3]) };
    let missed = Missed::Differs { seq: 4, had: other.head, has: entries[3].hash };
    assert_eq!(journal.verify(&holding, Some(&other)).await.unwrap(), Verified::CheckpointMissed(missed));
}
