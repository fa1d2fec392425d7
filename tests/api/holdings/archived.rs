//! Archived entries in answers. HTTP has no way to archive.

use combclear_domain::journal::archive::{Rest, digest};
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Draft, Entry, Event, Hash};
use serde_json::{Value, json};

use crate::bench::{Bench, TODAY};
use crate::seed;

/// The seed, with its last entry, the nectar flow, in an archive.
async fn archived() -> Bench {
    let bench = seed::bench().await;
    let holding = seed::HOLDING.parse().unwrap();
    let flow = bench.journal.page(&holding, 15, 1).await.unwrap().remove(0);
    let today = TODAY.parse().unwrap();
    let event = Event::from(Archived {
        through: today,
        places: Places::of([16]).unwrap(),
        entries: 1,
        digest: digest(&[Rest::of(&holding, &flow)]),
        file: Hash([7; 32]),
        contents: 0,
        law_checked: None,
    });
    let draft = Draft::new(seed::id(17).parse().unwrap(), today, "A. Keeper".parse().unwrap(), event);
    let step = Entry::seal(
        &holding,
        draft,
        "2026-04-11T08:00:00.000Z".parse::<combclear_domain::Instant>().unwrap(),
        Some(flow.tip()),
    );
    bench.journal.archive(&holding, Some(flow.tip()), &step, &[]).await.unwrap();
    bench
}

#[tokio::test]
async fn an_entry_in_an_archive_is_answered_without_body() {
    let before = seed::bench().await.get(&seed::path(16)).await.good();
    let bench = archived().await;
    let after = bench.get(&seed::path(16)).await.good();
    assert_eq!(after["body"], Value::Null);
    for field in ["seq", "id", "on", "recorded_by", "kind"] {
        assert_eq!(after[field], before[field], "{field}");
    }
    let page = bench.get("/holdings/heathside/entries?after=15").await.good();
    assert_eq!(page["items"][0], after);
    assert_eq!(
        (&page["items"][1]["kind"], &page["items"][1]["body"]["places"]),
        (&json!("archived"), &json!("16"))
    );
    let found = bench.get("/holdings/heathside/verification").await.good();
    assert_eq!((&found["answer"], &found["entries"]), (&json!("sound"), &json!(17)));
}

#[tokio::test]
async fn what_is_in_an_archive_is_known_when_it_is_sent_again() {
    let bench = archived().await;
    let entries = seed::entries();
    let answer = bench.put(&seed::path(16), &entries[15]).await;
    assert_eq!(answer.status, 200, "{}", answer.text());
    let mut other = entries[15].clone();
    other["body"]["forage"] = json!("cherry");
    assert_eq!(bench.put(&seed::path(16), &other).await.status, 409);
}

#[tokio::test]
async fn nobody_archives_over_http_and_nobody_corrects_what_is_archived() {
    let bench = archived().await;
    let step = bench.get(&seed::path(17)).await.good();
    let again = seed::entry(18, TODAY, "archived", step["body"].clone());
    assert_eq!(
        bench.put(&seed::path(18), &again).await.fault(422, "refused-entry", &seed::path(18)).0,
        "/kind"
    );
    for of in [16, 17] {
        let mut strike = seed::entry(18, TODAY, "strike_out", json!({}));
        strike["corrects"] = seed::id(of).into();
        strike["reason"] = "why".into();
        let fault = bench.put(&seed::path(18), &strike).await.fault(422, "refused-entry", &seed::path(18));
        assert_eq!(fault.0, "/corrects", "{of}");
    }
    let null = json!({ "on": TODAY, "recorded_by": "K", "kind": "inspection", "body": null });
    assert_eq!(bench.put(&seed::path(19), &null).await.status, 422);
    assert_eq!(bench.entries_of(seed::HOLDING).await, 17);
}
