//! Reading: pages, single entries, holdings, unreadable rows.

use super::Bench;
use crate::making::{chain, drafts, holding, id, said};

#[tokio::test]
async fn a_page_begins_after_a_place_and_holds_no_more_than_asked_for() {
    let (_bench, journal, holding, entries) = Bench::with_entries(10).await;
    for (after, limit, expected) in [
        (0, 3, 0..3),
        (3, 3, 3..6),
        (9, 3, 9..10),
        (0, 10, 0..10),
        (0, u32::MAX, 0..10),
        (0, 0, 0..0),
        (10, 5, 0..0),
        (11, 5, 0..0),
        (u64::MAX, 5, 0..0),
        (u64::MAX / 2, 5, 0..0),
    ] {
        let page = journal.page(&holding, after, limit).await.unwrap();
        assert_eq!(page, entries[expected], "after {after}, at most {limit}");
    }
}

#[tokio::test]
async fn a_holding_without_entries_is_empty() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let nobody = holding("nobody");
    assert_eq!(journal.tip(&nobody).await.unwrap(), None);
    assert_eq!(journal.page(&nobody, 0, 10).await.unwrap(), []);
    assert_eq!(journal.entry(&nobody, id(1)).await.unwrap(), None);
    assert_eq!(journal.holdings().await.unwrap(), []);
    journal.ready().await.unwrap();
}

#[tokio::test]
async fn holdings_do_not_mix() {
    let bench = Bench::new();
    let journal = bench.open().await;
    let names = ["zeta", "Alpha", "alpha", "o'clock \"; drop table entries; --", "\u{e4}hre", "al%", "al_ha"];
    let mut kept = Vec::new();
    for (name, first) in names.into_iter().zip((1u64..).step_by(10)) {
        let holding = holding(name);
        let entries = chain(&holding, None, drafts(first..first + 3));
        journal.append(&holding, None, &entries, &[]).await.unwrap();
        kept.push((holding, entries));
    }
    for (holding, entries) in &kept {
        assert_eq!(&journal.page(holding, 0, 100).await.unwrap(), entries);
        assert_eq!(journal.tip(holding).await.unwrap(), Some(entries[2].tip()));
    }
    assert_eq!(journal.entry(&kept[0].0, kept[1].1[0].draft.id).await.unwrap(), None);
    let listed: Vec<_> = journal.holdings().await.unwrap().iter().map(ToString::to_string).collect();
    assert_eq!(
        listed,
        ["Alpha", "al%", "al_ha", "alpha", "o'clock \"; drop table entries; --", "zeta", "\u{e4}hre"]
    );
}

#[tokio::test]
async fn opening_again_keeps_everything() {
    let (bench, journal, holding, entries) = Bench::with_entries(5).await;
    drop(journal);
    let journal = bench.open().await;
    assert_eq!(journal.page(&holding, 0, 100).await.unwrap(), entries);
    let after = Some(entries[4].tip());
    let more = chain(&holding, after, drafts(6..=7));
    journal.append(&holding, after, &more, &[]).await.unwrap();
    drop(journal);
    let journal = bench.open().await;
    assert_eq!(journal.page(&holding, 5, 100).await.unwrap(), more);
    assert_eq!(journal.holdings().await.unwrap(), [holding]);
}

#[tokio::test]
async fn entries_under_an_impossible_name_are_not_passed_over() {
    let (bench, journal, ..) = Bench::with_entries(2).await;
    bench.by_hand_unguarded().await.run("update entries set holding = 'a/b'").await.unwrap();
    let error = journal.holdings().await.unwrap_err();
    assert_eq!(
        said(&error).message,
        "entries are kept under a name that cannot be read: `a/b` cannot be the name of a holding: it contains a `/`"
    );
}
