//! Archived bodies: what the tables permit, once, and what they refuse; and what is detected.

use std::sync::Arc;

use combclear_domain::basics::words::{HoldingName, MediaType};
use combclear_domain::journal::archive::{Rest, digest};
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Content, Draft, Entry, Event, Hash};
use combclear_store::{AppendError, Holdings, Journal, RecordError, StoreError, Verified};
use combclear_testkit::documents::sample;

use super::Bench;
use crate::making::{attaching, chain, day, draft, holding, id, recorded_at};

/// Two colonies that ended, two documents of one content and one of another, and the step that moves places 2, 3 and 5.
pub(crate) struct Kept {
    pub(crate) bench: Bench,
    pub(crate) journal: Arc<dyn Journal>,
    pub(crate) holding: HoldingName,
    entries: Vec<Entry>,
    contents: Vec<Content>,
    step: Entry,
}

fn step(holding: &HoldingName, entries: &[Entry], number: u64, places: &[u64], contents: u64) -> Entry {
    let named = entries.iter().filter(|entry| places.contains(&entry.seq));
    let rests: Vec<Rest> = named.map(|entry| Rest::of(holding, entry)).collect();
    let event = Event::from(Archived {
        through: day(),
        places: Places::of(places.iter().copied()).unwrap(),
        entries: u64::try_from(places.len()).unwrap(),
        digest: digest(&rests),
        file: Hash([7; 32]),
        contents,
        law_checked: None,
    });
    let draft = Draft::new(id(number), day(), "A. Keeper".parse().unwrap(), event);
    Entry::seal(holding, draft, recorded_at(), entries.last().map(Entry::tip))
}

pub(crate) async fn before() -> Kept {
    let bench = Bench::new();
    let journal = bench.open().await;
    let holding = holding("first");
    let contents: Vec<Content> = ["one", "two"].map(|note| Content::new(sample(MediaType::Png, note))).into();
    let drafts = [
        draft(3),
        draft(4),
        attaching(5, &contents[0]),
        attaching(6, &contents[1]),
        attaching(7, &contents[1]),
    ];
    let entries = chain(&holding, None, drafts);
    journal.append(&holding, None, &entries, &contents).await.unwrap();
    let step = step(&holding, &entries, 20, &[2, 3, 5], 1);
    Kept { bench, journal, holding, entries, contents, step }
}

impl Kept {
    fn tip(&self) -> Option<(u64, Hash)> {
        self.entries.last().map(Entry::tip)
    }

    pub(crate) async fn archive(&self) -> Result<(), AppendError> {
        self.journal.archive(&self.holding, self.tip(), &self.step, &[self.contents[0].hash()]).await
    }

    /// What the journal shows after the step.
    pub(crate) fn after(&self) -> Vec<Entry> {
        let entries = self.entries.iter().map(|entry| match entry.seq {
            2 | 3 | 5 => entry.without_body(),
            _ => entry.clone(),
        });
        entries.chain([self.step.clone()]).collect()
    }

    pub(crate) async fn verified(&self) -> Verified {
        self.journal.verify(&self.holding, None).await.unwrap()
    }

    pub(crate) fn sound(&self) -> Verified {
        Verified::Sound { entries: 6, head: Some(self.step.hash) }
    }
}

pub(crate) async fn archived() -> Kept {
    let kept = before().await;
    kept.archive().await.unwrap();
    kept
}

#[tokio::test]
async fn bodies_go_and_everything_else_stays() {
    let kept = archived().await;
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.after());
    assert_eq!(kept.verified().await, kept.sound());
    // The first content is gone with the only entry that named it; the second is still named by another.
    let held = |content: &Content| (content.hash(), u64::try_from(content.bytes().len()).unwrap());
    assert_eq!(kept.journal.contents(&kept.holding).await.unwrap(), [held(&kept.contents[1])]);
    let found = kept.journal.entry(&kept.holding, id(5)).await.unwrap().unwrap();
    assert!(found.to_json().contains(r#""kind":"document_attached","body":null,"#), "{}", found.to_json());
    assert_eq!(Entry::from_json(&found.to_json()).unwrap(), found);
}

#[tokio::test]
async fn a_step_that_does_not_fit_moves_nothing() {
    let kept = before().await;
    let good = [kept.contents[0].hash()];
    let other = |places: &[u64], contents| step(&kept.holding, &kept.entries, 20, places, contents);
    let reseal = |change: fn(&mut Archived)| {
        let Event::Archived(body) = &kept.step.draft.event else { panic!() };
        let mut body = (**body).clone();
        change(&mut body);
        let draft = Draft::new(id(20), day(), "A. Keeper".parse().unwrap(), body.into());
        Entry::seal(&kept.holding, draft, recorded_at(), kept.tip())
    };
    let cases: [(&str, Entry, Vec<Hash>); 7] = [
        ("a place that is not there", other(&[2, 9], 0), vec![]),
        ("the step itself", other(&[2, 6], 0), vec![]),
        ("a digest of something else", reseal(|body| body.digest = Hash([1; 32])), good.to_vec()),
        ("a wrong count", reseal(|body| body.entries = 4), good.to_vec()),
        ("contents that are not promised", kept.step.clone(), vec![]),
        ("a content that a remaining entry names", kept.step.clone(), vec![kept.contents[1].hash()]),
        ("a content that is not there", kept.step.clone(), vec![Hash([9; 32])]),
    ];
    for (name, step, contents) in cases {
        let tried = kept.journal.archive(&kept.holding, kept.tip(), &step, &contents).await;
        assert!(tried.is_err(), "{name}");
        assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.entries, "{name}");
        assert_eq!(kept.journal.contents(&kept.holding).await.unwrap().len(), 2, "{name}");
    }
    let after_another = Some((4, kept.entries[3].hash));
    let tried = kept.journal.archive(&kept.holding, after_another, &kept.step, &good).await;
    assert!(matches!(tried, Err(AppendError::TipMoved { .. })), "{tried:?}");
    let plain = chain(&kept.holding, kept.tip(), [draft(8)]);
    let tried = kept.journal.archive(&kept.holding, kept.tip(), &plain[0], &[]).await;
    assert!(matches!(tried, Err(AppendError::NotSealed(_))), "{tried:?}");
    kept.archive().await.unwrap();
    // A second time: nothing is left to move.
    let again = step(&kept.holding, &kept.after(), 21, &[2], 0);
    let tried = kept.journal.archive(&kept.holding, Some(kept.step.tip()), &again, &[]).await;
    assert!(matches!(tried, Err(AppendError::NotSealed(_))), "{tried:?}");
    assert_eq!(kept.verified().await, kept.sound());
}

#[tokio::test]
async fn an_entry_that_was_changed_is_not_moved() {
    let kept = before().await;
    let mut raw = kept.bench.by_hand_unguarded().await;
    raw.run("update entries set body = replace(body, 'queenless', 'Queenless') where seq = 2").await.unwrap();
    raw.run("update entries set recorded_by = 'B' where seq = 2").await.unwrap();
    let tried = kept.archive().await;
    assert!(matches!(&tried, Err(AppendError::NotSealed(broken)) if broken.seq == 2), "{tried:?}");
}

#[tokio::test]
async fn what_was_recorded_after_the_file_was_written_stops_the_step() {
    let kept = before().await;
    let holdings = Holdings::new(kept.bench.open().await);
    let late = chain(&kept.holding, kept.tip(), [draft(9)]);
    kept.journal.append(&kept.holding, kept.tip(), &late, &[]).await.unwrap();
    let (after, draft) = (kept.tip().unwrap(), kept.step.draft.clone());
    let tried =
        holdings.archive(&kept.holding, after, draft, &[kept.contents[0].hash()], recorded_at()).await;
    assert!(matches!(tried, Err(RecordError::Busy)), "{tried:?}");
    let whole: Vec<Entry> = kept.entries.iter().cloned().chain(late).collect();
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), whole);
}

#[tokio::test]
async fn a_content_that_is_attached_again_is_kept_again() {
    let kept = archived().await;
    let again = chain(&kept.holding, Some(kept.step.tip()), [attaching(30, &kept.contents[0])]);
    let after = Some(kept.step.tip());
    kept.journal.append(&kept.holding, after, &again, &kept.contents[..1]).await.unwrap();
    let mut raw = kept.bench.by_hand().await;
    let error = raw.run("delete from contents").await.unwrap_err().to_string();
    assert!(error.contains("a document is never deleted"), "{error}");
    assert_eq!(kept.journal.contents(&kept.holding).await.unwrap().len(), 2);
}

#[tokio::test]
async fn an_export_from_before_brings_nothing_back() {
    let kept = archived().await;
    let holdings = Holdings::new(kept.bench.open().await);
    assert_eq!(holdings.restore(&kept.holding, &kept.entries, &kept.contents).await.unwrap(), 0);
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.after());
    assert_eq!(kept.journal.contents(&kept.holding).await.unwrap().len(), 1);
    // Unless it has other content.
    let mut other = kept.entries.clone();
    other[1].draft.recorded_by = "B".parse().unwrap();
    let tried = holdings.restore(&kept.holding, &other, &[]).await;
    assert!(matches!(&tried, Err(RecordError::NotNext(broken)) if broken.seq == 2), "{tried:?}");
}

#[tokio::test]
async fn whoever_had_read_the_bodies_forgets_them_with_the_next_question() {
    let kept = before().await;
    let holdings = Holdings::new(kept.bench.open().await);
    let asked = async || {
        let named = holdings.read(&kept.holding, |holding| {
            holding
                .in_order()
                .iter()
                .map(|record| matches!(record.event, Event::InArchive(_)))
                .collect::<Vec<_>>()
        });
        named.await.unwrap().unwrap()
    };
    assert_eq!(asked().await, [false; 5]);
    kept.archive().await.unwrap();
    assert_eq!(asked().await, [false, true, true, false, true, false]);
}

#[tokio::test]
async fn no_answer_rests_on_a_body_that_was_taken_away_without_a_word() {
    let kept = archived().await;
    let mut raw = kept.bench.by_hand_unguarded().await;
    raw.run("update entries set body = '' where seq = 4").await.unwrap();
    let holdings = Holdings::new(Arc::clone(&kept.journal));
    for _ in 0..2 {
        let asked = holdings.read(&kept.holding, |_| ()).await;
        assert!(matches!(&asked, Err(StoreError::Unreadable { seq: 4, .. })), "{asked:?}");
    }
    let recorded = holdings.record(&kept.holding, vec![draft(9)], recorded_at()).await;
    assert!(
        matches!(&recorded, Err(RecordError::Store(StoreError::Unreadable { seq: 4, .. }))),
        "{recorded:?}"
    );
}

#[tokio::test]
async fn a_journal_with_an_archive_goes_into_another_database_as_it_is() {
    let kept = archived().await;
    let other = Bench::new();
    let journal = other.open().await;
    let entries = kept.after();
    // Refused without the `archived` entry, or if that differs.
    for part in [&entries[..5], &entries[..2]] {
        let tried = journal.append(&kept.holding, None, part, &[]).await;
        assert!(matches!(&tried, Err(AppendError::NotSealed(broken)) if broken.seq == 2), "{tried:?}");
    }
    let mut changed = entries.clone();
    changed[1].draft.recorded_by = "B".parse().unwrap();
    let tried = journal.append(&kept.holding, None, &changed, &[]).await;
    assert!(matches!(&tried, Err(AppendError::NotSealed(broken)) if broken.seq == 6), "{tried:?}");
    journal.append(&kept.holding, None, &entries, &kept.contents[1..]).await.unwrap();
    assert_eq!(journal.page(&kept.holding, 0, 100).await.unwrap(), entries);
    assert_eq!(journal.verify(&kept.holding, None).await.unwrap(), kept.sound());
}
