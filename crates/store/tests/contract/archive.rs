//! Archived bodies: what the tables permit, once, and what they refuse; and what is detected.

use std::sync::Arc;

use combclear_domain::basics::words::{HoldingName, MediaType};
use combclear_domain::journal::archive::{Rest, digest};
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Content, Draft, Entry, Event, Hash};
use combclear_store::{AppendError, Holdings, Journal, RecordError, StoreError, Verified};
use combclear_testkit::documents::sample;

use crate::making::{Bench, attaching, chain, day, draft, holding, id, recorded_at, run};

/// Two colonies that ended, two documents of one content and one of another, and the step that moves places 2, 3 and 5.
struct Kept {
    bench: Bench,
    journal: Arc<dyn Journal>,
    holding: HoldingName,
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

async fn before() -> Kept {
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

    async fn archive(&self) -> Result<(), AppendError> {
        self.journal.archive(&self.holding, self.tip(), &self.step, &[self.contents[0].hash()]).await
    }

    /// What the journal shows after the step.
    fn after(&self) -> Vec<Entry> {
        let entries = self.entries.iter().map(|entry| match entry.seq {
            2 | 3 | 5 => entry.without_body(),
            _ => entry.clone(),
        });
        entries.chain([self.step.clone()]).collect()
    }

    async fn verified(&self) -> Verified {
        self.journal.verify(&self.holding, None).await.unwrap()
    }

    fn sound(&self) -> Verified {
        Verified::Sound { entries: 6, head: Some(self.step.hash) }
    }
}

async fn archived() -> Kept {
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
    let mut raw = kept.bench.unguarded().await;
    run(&mut raw, "update entries set body = replace(body, 'queenless', 'Queenless') where seq = 2")
        .await
        .unwrap();
    run(&mut raw, "update entries set recorded_by = 'B' where seq = 2").await.unwrap();
    let tried = kept.archive().await;
    assert!(matches!(&tried, Err(AppendError::NotSealed(broken)) if broken.seq == 2), "{tried:?}");
}

#[tokio::test]
async fn the_tables_let_nothing_else_through() {
    const STAYS: &str = "what was moved into an archive stays there";
    const NEVER: &str = "an entry is never changed";
    let kept = before().await;
    let mut raw = kept.bench.raw().await;
    let hexed = |id: combclear_domain::journal::EntryId| format!("x'{}'", id.0.simple());
    let step = hexed(id(20));
    // Before the step nothing is noted, so no body and no content can be removed.
    for (sql, message) in [
        ("update entries set body = '' where seq = 2".to_owned(), NEVER),
        ("delete from contents".to_owned(), "a document is never deleted"),
        (format!("insert into moved values ('first', 2, {step})"), "FOREIGN KEY constraint failed"),
        (
            format!("insert into moved_contents values ('first', zeroblob(32), {step})"),
            "FOREIGN KEY constraint failed",
        ),
    ] {
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    // Noted for an entry that archives nothing, or comes earlier.
    let plain = hexed(id(7));
    run(&mut raw, &format!("insert into moved values ('first', 1, {plain})")).await.unwrap();
    let error = run(&mut raw, "update entries set body = '' where seq = 1").await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{error}");
    kept.archive().await.unwrap();
    let columns = "happened_on, null, recorded_at, recorded_by";
    for (sql, message) in [
        ("update entries set body = '{}' where seq = 2".to_owned(), NEVER),
        ("update entries set body = '' where seq = 2".to_owned(), NEVER),
        ("update entries set body = '' where seq = 4".to_owned(), NEVER),
        ("update entries set body = '' where seq = 6".to_owned(), NEVER),
        ("update entries set body = '', kind = 'harvest' where seq = 3".to_owned(), NEVER),
        ("update or replace entries set seq = 4 where seq = 2".to_owned(), NEVER),
        ("delete from entries where seq = 2".to_owned(), "an entry is never deleted"),
        ("update moved set seq = 4 where seq = 2".to_owned(), STAYS),
        ("delete from moved".to_owned(), STAYS),
        (format!("insert or replace into moved values ('first', 2, {plain})"), STAYS),
        ("update moved_contents set hash = zeroblob(32)".to_owned(), STAYS),
        ("delete from moved_contents".to_owned(), STAYS),
        ("insert or replace into moved_contents select * from moved_contents".to_owned(), STAYS),
        ("delete from contents".to_owned(), "a document is never deleted"),
        (
            format!(
                "insert into entries select 'first', 7, randomblob(16), {columns}, 'harvest', '', null, null, prev, hash, null, null
                from entries where seq = 6"
            ),
            "an entry comes with its body",
        ),
        (
            format!(
                "insert into entries select 'first', 7, randomblob(16), {columns}, kind, '', null, null, prev, hash, null, null
                from entries where seq = 6"
            ),
            "an entry comes with its body",
        ),
    ] {
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(message), "{sql}: {error}");
    }
    // Every other column, changed together with a body that may be emptied.
    run(&mut raw, &format!("insert into moved values ('first', 4, {step})")).await.unwrap();
    for (column, value) in [
        ("holding", "'other'"),
        ("seq", "40"),
        ("id", "randomblob(16)"),
        ("happened_on", "'2026-04-12'"),
        ("happened_at", "'10:00'"),
        ("recorded_at", "'2026-04-11T08:15:30.124Z'"),
        ("recorded_by", "'B'"),
        ("kind", "'harvest'"),
        ("prev", "zeroblob(32)"),
        ("hash", "zeroblob(32)"),
    ] {
        let sql = format!("update entries set body = '', {column} = {value} where seq = 4");
        let error = run(&mut raw, &sql).await.unwrap_err().to_string();
        assert!(error.contains(NEVER), "{sql}: {error}");
    }
    let sql = "update entries set body = '', corrects = randomblob(16), reason = 'why' where seq = 4";
    let error = run(&mut raw, sql).await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{sql}: {error}");
    let sql =
        "update entries set body = '', copied_from = 'notebook', written_on = '2026-04-11' where seq = 4";
    let error = run(&mut raw, sql).await.unwrap_err().to_string();
    assert!(error.contains(NEVER), "{sql}: {error}");
    assert_eq!(kept.journal.page(&kept.holding, 0, 100).await.unwrap(), kept.after());
    assert_eq!(kept.verified().await, kept.sound());
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
    let mut raw = kept.bench.raw().await;
    let error = run(&mut raw, "delete from contents").await.unwrap_err().to_string();
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
async fn any_change_of_what_stays_is_named() {
    let kept = archived().await;
    let mut raw = kept.bench.unguarded().await;
    let step = r#"replace(body, '"entries":3', '"entries":2')"#;
    for (seq, column, value, named) in [
        (2, "id", "randomblob(16)", 6),
        (2, "happened_on", "'2026-04-12'", 6),
        (2, "happened_at", "'10:01'", 6),
        (2, "recorded_at", "'2026-04-11T08:15:30.124Z'", 6),
        (2, "recorded_by", "'B'", 6),
        (2, "kind", "'harvest'", 6),
        (2, "prev", "zeroblob(32)", 2),
        // The next entry then no longer follows it.
        (2, "hash", "zeroblob(32)", 3),
        (5, "hash", "zeroblob(32)", 6),
        (3, "body", "'{}'", 3),
        (6, "body", step, 6),
        // No entry then names the first of them any more.
        (6, "body", "'{}'", 2),
        (4, "body", "''", 4),
        (6, "body", "''", 2),
    ] {
        let old = format!("create temp table old as select * from entries where seq = {seq}");
        run(&mut raw, &old).await.unwrap();
        let change = format!("update entries set {column} = {value} where seq = {seq}");
        assert_eq!(run(&mut raw, &change).await.unwrap(), 1, "{change}");
        let found = kept.verified().await;
        assert!(matches!(&found, Verified::Broken(broken) if broken.seq == named), "{change}: {found:?}");
        let back = format!("update entries set {column} = (select {column} from old) where seq = {seq}");
        run(&mut raw, &back).await.unwrap();
        run(&mut raw, "drop table old").await.unwrap();
    }
    assert_eq!(kept.verified().await, kept.sound());
}

#[tokio::test]
async fn no_answer_rests_on_a_body_that_was_taken_away_without_a_word() {
    let kept = archived().await;
    let mut raw = kept.bench.unguarded().await;
    run(&mut raw, "update entries set body = '' where seq = 4").await.unwrap();
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
