//! `/holdings/{holding}/verification`

use combclear_domain::journal::EntryId;
use combclear_domain::journal::misfit::Misfit;
use combclear_domain::journal::seal::Broken;
use serde_json::json;

use crate::bench::Bench;
use crate::faulty::{Faulty, Trouble};
use crate::seed;

#[tokio::test]
async fn a_sound_journal_is_answered_with_its_length_and_its_head() {
    let bench = seed::bench().await;
    let head = bench.get(&seed::path(16)).await.good()["hash"].clone();
    let want = json!({ "answer": "sound", "entries": 16, "head": head });
    assert_eq!(bench.get("/holdings/heathside/verification").await.good(), want);
}

/// Detecting tampering is the store's job, and tested there.
#[tokio::test]
async fn a_broken_journal_is_answered_with_the_first_entry_that_does_not_fit() {
    let id = EntryId(seed::id(3).parse().unwrap());
    let what = "its content does not match its hash: it was changed after it was recorded";
    let bench =
        Bench::over(Faulty::with(Trouble::Broken(Broken { seq: 3, id, what: Misfit::Changed }))).await;
    seed::record(&bench).await;
    let want = json!({ "answer": "broken", "seq": 3, "id": seed::id(3), "what": what });
    assert_eq!(bench.get("/holdings/heathside/verification").await.good(), want);
}
