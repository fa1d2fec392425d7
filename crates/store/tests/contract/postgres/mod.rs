//! PostgreSQL: a schema for each test, in a server that all tests share.

use std::sync::Arc;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::Entry;
use combclear_store::Journal;
use combclear_testkit::postgres::shared;
use sqlx::{Connection, PgConnection};

use crate::making::{ByHand, chain, drafts, holding};

mod address;
mod faults;
mod guards;
mod same_tables;
mod several;

/// An empty schema.
pub(crate) struct Bench {
    url: String,
}

impl Bench {
    pub(crate) fn new() -> Bench {
        Bench { url: shared().empty() }
    }

    pub(crate) fn url(&self) -> String {
        self.url.clone()
    }

    pub(crate) async fn open(&self) -> Arc<dyn Journal> {
        combclear_store::open(&self.url).await.unwrap()
    }

    /// A store with this many entries of one holding.
    pub(crate) async fn with_entries(count: u64) -> (Bench, Arc<dyn Journal>, HoldingName, Vec<Entry>) {
        let bench = Bench::new();
        let journal = bench.open().await;
        let holding = holding("first");
        let entries = chain(&holding, None, drafts(1..=count));
        journal.append(&holding, None, &entries, &[]).await.unwrap();
        (bench, journal, holding, entries)
    }

    /// The tables as another program would change them.
    pub(crate) async fn by_hand(&self) -> ByHand {
        ByHand::Postgres(PgConnection::connect(&self.url).await.unwrap())
    }

    /// The same without the triggers that guard the tables.
    pub(crate) async fn by_hand_unguarded(&self) -> ByHand {
        ByHand::PostgresUnguarded(PgConnection::connect(&self.url).await.unwrap())
    }
}
