//! The holdings in memory: brought up to their journals before each answer, and put out of memory where there is no room.
//!
//! Each holding is folded once and then caught up with the journal by place. So a question costs as much as its colony, not
//! as much as the journal. Looking for the end of the journal before every question keeps answers right when another process writes
//! too; a database that tells at once whether anything was committed spares that look.

use std::collections::HashMap;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, OnceLock};

use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::misfit::Misfit;
use combclear_domain::journal::{Entry, Hash, Kept};
use tokio::runtime::Handle;
use tokio::task::JoinHandle;

use crate::fold::{Fold, Second, TakenIn, ended, for_the_other, held, on_a_blocking_thread};
use crate::journal::{Journal, Version};
use combclear_domain::journal::keeping::StoreError;

/// Entries read at a time when catching up.
const PAGE: u32 = 5_000;

/// The holdings of a journal in memory.
pub(crate) struct Folds {
    pub(crate) journal: Arc<dyn Journal>,
    by_name: Mutex<HashMap<HoldingName, Arc<Fold>>>,
    /// Bytes that they may take together.
    room: u64,
    /// No less than what they take together. It is counted anew when it seems to be more than there is room for.
    taken: AtomicU64,
    /// Counts what is asked for, to know what was not asked for longest.
    asked: AtomicU64,
    /// Who is told how many entries each commit adds.
    pub(crate) told: OnceLock<Box<dyn Fn(usize) + Send + Sync>>,
}

/// What is in memory of a journal.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct InMemory {
    /// Holdings.
    pub holdings: u64,
    /// Entries of them.
    pub entries: u64,
    /// What they take, in bytes, as far as it is known: the text of what was recorded, and what goes with each entry.
    pub bytes: u64,
}

impl Folds {
    pub(crate) fn new(journal: Arc<dyn Journal>, room: u64) -> Folds {
        let (taken, asked, told) = (AtomicU64::new(0), AtomicU64::new(0), OnceLock::new());
        Folds { journal, by_name: Mutex::default(), room, taken, asked, told }
    }

    /// The holding at the current state of its journal.
    pub(crate) async fn snapshot(
        self: &Arc<Folds>,
        holding: &HoldingName,
    ) -> Result<Option<Arc<Holding>>, StoreError> {
        self.journal.trusted()?;
        // Looked at before the journal: what is committed in between counts as later.
        let version = self.journal.version()?;
        let known = held(&self.by_name).get(holding).cloned();
        if let Some(fold) = &known {
            let shown = fold.shown();
            if shown.is_all_of(version) {
                self.is_asked_for(fold);
                return Ok(Some(shown.holding));
            }
        }
        let tip = self.journal.tip(holding).await?;
        if tip.is_none() {
            return Ok(None);
        }
        let fold = known.unwrap_or_else(|| self.of(holding));
        self.is_asked_for(&fold);
        let shown = fold.shown().holding;
        if shown.tip() == tip {
            is_accounted_for(&shown)?;
            fold.is_all_of(&shown, version);
            return Ok(Some(shown));
        }
        // Others ask too, so it goes on if this call is cancelled.
        let (folds, behind) = (Arc::clone(self), Arc::clone(&fold));
        let caught_up = tokio::spawn(async move {
            let mut second = behind.work.lock().await;
            folds.catch_up(&behind, &mut second).await
        });
        ended(caught_up).await?;
        let shown = fold.shown().holding;
        Ok(shown.tip().is_some().then_some(shown))
    }

    /// The place of a holding in memory, with nothing in it at first.
    pub(crate) fn of(&self, holding: &HoldingName) -> Arc<Fold> {
        let mut folds = held(&self.by_name);
        let new = || Arc::new(Fold::new(holding.clone()));
        Arc::clone(folds.entry(holding.clone()).or_insert_with(new))
    }

    pub(crate) fn in_memory(&self) -> InMemory {
        held(&self.by_name).values().fold(InMemory::default(), |all, fold| {
            let shown = fold.shown().holding;
            let Some((entries, _)) = shown.tip() else { return all };
            InMemory {
                holdings: all.holdings + 1,
                entries: all.entries + entries,
                bytes: all.bytes + shown.weight(),
            }
        })
    }

    /// Brings what is shown to the end of the journal. Whoever calls this has the second copy.
    pub(crate) async fn catch_up(&self, fold: &Fold, second: &mut Second) -> Result<(), StoreError> {
        let version = self.journal.version()?;
        let tip = self.journal.tip(&fold.name).await?;
        self.catch_up_to(tip, version, fold, second).await
    }

    /// The same if it is known already where the journal ends.
    pub(crate) async fn catch_up_to(
        &self,
        tip: Option<(u64, Hash)>,
        version: Option<Version>,
        fold: &Fold,
        second: &mut Second,
    ) -> Result<(), StoreError> {
        self.journal.trusted()?;
        let shown = fold.shown().holding;
        if shown.tip() == tip {
            is_accounted_for(&shown)?;
            fold.is_all_of(&shown, version);
            return Ok(());
        }
        let is_behind = shown.tip().is_some_and(|(seq, _)| tip.is_some_and(|(last, _)| seq < last));
        if is_behind {
            let copy = second.take(&shown).await;
            match self.read_on(&fold.name, copy).await {
                Ok((on, read)) => {
                    self.change_places(fold, shown, second, on, read.if_few());
                    return Ok(());
                }
                // The journal may have been put back from an older copy and gone on from there.
                Err(StoreError::Broken { .. }) => {}
                Err(error) => return Err(error),
            }
        }
        // What was not looked at as a whole supports no answer, and neither does what the journal does not have any more.
        fold.show(Arc::new(Holding::new(fold.name.clone())));
        second.forget();
        let (anew, _) = self.read_on(&fold.name, Holding::new(fold.name.clone())).await?;
        // The tip alone proves nothing: it may be found in the same broken order.
        let last = anew.tip().map_or(0, |(seq, _)| seq);
        let has_archives = !anew.archives().is_empty();
        self.journal.is_whole(&fold.name, last, has_archives).await?;
        fold.show(Arc::new(anew));
        self.is_grown(fold);
        Ok(())
    }

    /// Takes in what the journal has after the last entry of a copy.
    async fn read_on(&self, name: &HoldingName, mut copy: Holding) -> Result<(Holding, TakenIn), StoreError> {
        let mut after = copy.tip();
        let mut read = TakenIn::none();
        let mut next = self.read_ahead(name, after);
        loop {
            let page = match next.await {
                Ok(page) => page?,
                // It came to nothing on its own. Here it shows why.
                Err(_) => self.journal.kept(name, after, PAGE).await?,
            };
            let Some(last) = page.last() else { break };
            after = Some((last.seq, last.hash));
            next = self.read_ahead(name, after);
            read.add(&page);
            copy = on_a_blocking_thread(move || {
                for entry in page {
                    copy.restore(entry);
                }
                copy
            })
            .await;
        }
        is_accounted_for(&copy)?;
        Ok((copy, read))
    }

    /// Reads the page after an entry while the one before it is taken in.
    fn read_ahead(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
    ) -> JoinHandle<Result<Vec<Kept>, StoreError>> {
        let (journal, holding) = (Arc::clone(&self.journal), holding.clone());
        // On a blocking thread: reading and checking a page computes longer than others may be kept waiting.
        let runtime = Handle::current();
        tokio::task::spawn_blocking(move || runtime.block_on(journal.kept(&holding, after, PAGE)))
    }

    /// Shows a holding with entries that are now in the journal.
    pub(crate) fn added(
        &self,
        fold: &Fold,
        shown: Arc<Holding>,
        second: &mut Second,
        with_them: Holding,
        entries: &[Entry],
    ) {
        self.change_places(fold, shown, second, with_them, for_the_other(entries));
        if let Some(told) = self.told.get() {
            told(entries.len());
        }
    }

    /// Shows a copy that has more, and keeps what was shown until now as the second one, with what it lacks if that is little.
    fn change_places(
        &self,
        fold: &Fold,
        shown: Arc<Holding>,
        second: &mut Second,
        with_more: Holding,
        lacks: Option<Vec<Kept>>,
    ) {
        let before = fold.show(Arc::new(with_more));
        drop(shown);
        second.keep(before, lacks);
        self.is_grown(fold);
    }

    fn is_asked_for(&self, fold: &Fold) {
        fold.is_used(self.asked.fetch_add(1, Ordering::Relaxed));
    }

    /// Puts out of memory what was not asked for longest, while all together take more than there is room for. What somebody is
    /// reading lives on until he has done; what somebody writes to stays.
    pub(crate) fn is_grown(&self, grown: &Fold) {
        self.is_asked_for(grown);
        let more = grown.grown_since();
        if self.taken.fetch_add(more, Ordering::Relaxed).saturating_add(more) <= self.room {
            return;
        }
        let mut folds = held(&self.by_name);
        let weighed = |fold: &Arc<Fold>| {
            let weight = fold.shown().holding.weight();
            (fold.last_used(), weight, fold.name.clone())
        };
        let mut all: Vec<(u64, u64, HoldingName)> = folds.values().map(weighed).collect();
        let mut taken: u64 = all.iter().map(|(_, bytes, _)| bytes).sum();
        all.sort_unstable();
        for (_, bytes, name) in all {
            if taken <= self.room {
                break;
            }
            let is_idle = folds.get(&name).is_some_and(|fold| {
                // The one that has just grown is being worked on.
                name != grown.name && fold.work.try_lock().is_ok()
            });
            if is_idle {
                folds.remove(&name);
                taken = taken.saturating_sub(bytes);
            }
        }
        self.taken.store(taken, Ordering::Relaxed);
    }
}

/// Refuses a holding with a body that is missing but not archived: no answer may be based on the rest.
fn is_accounted_for(holding: &Holding) -> Result<(), StoreError> {
    holding.first_without_body().map_or(Ok(()), |(seq, _)| {
        let what = Misfit::BodyGone;
        Err(StoreError::Unreadable { holding: holding.name().clone(), seq, what })
    })
}
