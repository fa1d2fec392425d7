//! A journal with one failure.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::time::{Duration, Instant};

use async_trait::async_trait;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::key::{Key, KeyId};
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Content, Entry, EntryId, Hash, Kept};
use combclear_store::{AppendError, Journal, StoreError, Verified, Writing};
use tokio::sync::Semaphore;

/// The failure. The real journal does everything else.
pub(crate) enum Trouble {
    /// The database does not answer the readiness check.
    NotReady,
    /// Listing the holdings never ends.
    HoldingsHang,
    /// Listing the holdings panics.
    HoldingsPanic,
    /// Listing the holdings fails with this error.
    HoldingsFail(fn() -> StoreError),
    /// An append waits at a gate until it is let through.
    AppendWaits(Arc<Gate>),
    /// An append panics.
    AppendPanics,
    /// The chain is broken at this entry.
    Broken(Broken),
    /// Looking at the journal as a whole waits at a gate. There an entry is found to be lost, or not.
    LookWaits(Arc<Gate>, Found),
    /// Whatever reads much of the journal keeps its thread busy.
    Slow(Arc<Slow>),
}

/// How long each read keeps its thread busy, and how many there were. At first they take no time.
#[derive(Default)]
pub(crate) struct Slow {
    milliseconds: AtomicU64,
    reads: AtomicU64,
    contents: AtomicU64,
}

impl Slow {
    /// Every read from now on takes this long.
    pub(crate) fn down(&self, each: Duration) {
        self.milliseconds.store(u64::try_from(each.as_millis()).unwrap(), Ordering::SeqCst);
        self.reads.store(0, Ordering::SeqCst);
    }

    /// Every read from now on lasts until it is told otherwise.
    pub(crate) fn stop(&self) {
        self.milliseconds.store(u64::MAX, Ordering::SeqCst);
        self.reads.store(0, Ordering::SeqCst);
    }

    /// How many reads began since.
    pub(crate) fn reads(&self) -> u64 {
        self.reads.load(Ordering::SeqCst)
    }

    /// How many contents of documents were read.
    pub(crate) fn contents(&self) -> u64 {
        self.contents.load(Ordering::SeqCst)
    }

    /// Computes, as it were: nothing else runs on this thread meanwhile.
    fn read(&self) {
        self.reads.fetch_add(1, Ordering::SeqCst);
        let begun = Instant::now();
        while begun.elapsed() < Duration::from_millis(self.milliseconds.load(Ordering::SeqCst)) {
            std::thread::sleep(Duration::from_millis(2));
        }
    }
}

/// What a look at the journal as a whole finds.
#[derive(PartialEq, Eq)]
pub(crate) enum Found {
    AllInOrder,
    Lost,
}

/// Where an append or a look waits.
pub(crate) struct Gate {
    reached: Semaphore,
    open: Semaphore,
}

impl Gate {
    pub(crate) fn closed() -> Arc<Gate> {
        Arc::new(Gate { reached: Semaphore::new(0), open: Semaphore::new(0) })
    }

    async fn passes(&self) {
        self.reached.add_permits(1);
        self.open.acquire().await.unwrap().forget();
    }

    /// Waits until somebody reaches it.
    pub(crate) async fn is_reached(&self) {
        self.reached.acquire().await.unwrap().forget();
    }

    /// Lets one through.
    pub(crate) fn let_through(&self) {
        self.open.add_permits(1);
    }
}

pub(crate) struct Faulty {
    pub(crate) journal: Arc<dyn Journal>,
    pub(crate) trouble: Trouble,
}

impl Faulty {
    /// For [`crate::bench::Bench::over`].
    pub(crate) fn with(trouble: Trouble) -> impl FnOnce(Arc<dyn Journal>) -> Arc<dyn Journal> {
        move |journal| Arc::new(Faulty { journal, trouble })
    }

    fn is_slow(&self) {
        if let Trouble::Slow(slow) = &self.trouble {
            slow.read();
        }
    }
}

pub(crate) fn locked() -> StoreError {
    StoreError::Locked { place: "a/secret/place".to_owned() }
}

pub(crate) fn unreachable() -> StoreError {
    StoreError::Unreachable { place: "a/secret/place".to_owned(), what: "connection refused".to_owned() }
}

pub(crate) fn damaged() -> StoreError {
    StoreError::Damaged { place: "a/secret/place".to_owned(), what: "page 3".to_owned() }
}

#[async_trait]
impl Journal for Faulty {
    async fn tip(&self, holding: &HoldingName) -> Result<Option<(u64, Hash)>, StoreError> {
        self.journal.tip(holding).await
    }

    async fn begin_write(&self, holding: &HoldingName) -> Result<Box<dyn Writing>, StoreError> {
        let write = self.journal.begin_write(holding).await?;
        Ok(match &self.trouble {
            Trouble::AppendWaits(gate) => Box::new(FaultyWrite { write, gate: Some(Arc::clone(gate)) }),
            Trouble::AppendPanics => Box::new(FaultyWrite { write, gate: None }),
            _ => write,
        })
    }

    async fn page(
        &self,
        holding: &HoldingName,
        after_seq: u64,
        limit: u32,
    ) -> Result<Vec<Entry>, StoreError> {
        self.journal.page(holding, after_seq, limit).await
    }

    async fn kept(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        limit: u32,
    ) -> Result<Vec<Kept>, StoreError> {
        self.is_slow();
        self.journal.kept(holding, after, limit).await
    }

    fn trusted(&self) -> Result<(), StoreError> {
        self.journal.trusted()
    }

    async fn is_whole(&self, holding: &HoldingName, last: u64, has_archives: bool) -> Result<(), StoreError> {
        if let Trouble::LookWaits(gate, found) = &self.trouble {
            gate.passes().await;
            if *found == Found::Lost {
                return Err(StoreError::Lost { holding: holding.clone(), by_place: last, by_id: last - 1 });
            }
        }
        self.journal.is_whole(holding, last, has_archives).await
    }

    async fn entry(&self, holding: &HoldingName, id: EntryId) -> Result<Option<Entry>, StoreError> {
        self.journal.entry(holding, id).await
    }

    async fn attached(&self, holding: &HoldingName) -> Result<Vec<Entry>, StoreError> {
        self.journal.attached(holding).await
    }

    async fn content(&self, holding: &HoldingName, hash: Hash) -> Result<Option<Vec<u8>>, StoreError> {
        self.is_slow();
        if let Trouble::Slow(slow) = &self.trouble {
            slow.contents.fetch_add(1, Ordering::SeqCst);
        }
        self.journal.content(holding, hash).await
    }

    async fn contents(&self, holding: &HoldingName) -> Result<Vec<(Hash, u64)>, StoreError> {
        self.journal.contents(holding).await
    }

    async fn holdings(&self) -> Result<Vec<HoldingName>, StoreError> {
        match &self.trouble {
            Trouble::HoldingsHang => std::future::pending().await,
            Trouble::HoldingsPanic => panic!("the secret of the panic"),
            Trouble::HoldingsFail(error) => Err(error()),
            _ => self.journal.holdings().await,
        }
    }

    async fn verify(
        &self,
        holding: &HoldingName,
        since: Option<&Checkpoint>,
    ) -> Result<Verified, StoreError> {
        self.is_slow();
        match &self.trouble {
            Trouble::Broken(broken) => Ok(Verified::Broken(broken.clone())),
            _ => self.journal.verify(holding, since).await,
        }
    }

    async fn add_key(&self, key: &Key, secret: Hash) -> Result<(), StoreError> {
        self.journal.add_key(key, secret).await
    }

    async fn keys(&self) -> Result<Vec<Key>, StoreError> {
        self.journal.keys().await
    }

    async fn key(&self, id: KeyId) -> Result<Option<(Key, Hash)>, StoreError> {
        self.journal.key(id).await
    }

    async fn end_key(&self, id: KeyId, at: combclear_domain::Instant) -> Result<bool, StoreError> {
        self.journal.end_key(id, at).await
    }

    async fn ready(&self) -> Result<(), StoreError> {
        match &self.trouble {
            Trouble::NotReady => Err(locked()),
            _ => self.journal.ready().await,
        }
    }

    async fn close(&self) {
        self.journal.close().await;
    }
}

/// A write that waits at a gate, or falls over if there is none.
struct FaultyWrite {
    write: Box<dyn Writing>,
    gate: Option<Arc<Gate>>,
}

#[async_trait]
impl Writing for FaultyWrite {
    async fn tip(&mut self) -> Result<Option<(u64, Hash)>, StoreError> {
        self.write.tip().await
    }

    async fn append(
        self: Box<Self>,
        after: Option<(u64, Hash)>,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<(), AppendError> {
        let Some(gate) = &self.gate else { panic!("the append fell over") };
        gate.passes().await;
        self.write.append(after, entries, contents).await
    }

    async fn archive(
        self: Box<Self>,
        after: Option<(u64, Hash)>,
        entry: &Entry,
        contents: &[Hash],
    ) -> Result<(), AppendError> {
        self.write.archive(after, entry, contents).await
    }
}
