//! One holding in memory: what readers are shown, and a second copy for whoever brings it further.
//!
//! Readers take what is shown and go; nothing that is shown ever changes. Whoever has new entries, a writer or one who finds that the
//! journal has gone on, adds them to the second copy, and the two change places once that is in the journal. The copy that was shown
//! until then is caught up at the next turn, when its readers have gone. So a write holds up a read for as long as the change of
//! places takes, and costs what it adds.

use std::collections::VecDeque;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::{Entry, Kept};
use tokio::task::{JoinError, JoinHandle};

use crate::journal::Version;
use crate::recording::Job;

/// More entries than this are not kept to be taken in a second time: the second copy is made anew when it is needed.
const FEW: usize = 1_000;

/// A holding with more entries is copied on a blocking thread: others would wait for milliseconds.
const MANY: u64 = 10_000;

/// A holding in memory.
pub(crate) struct Fold {
    pub(crate) name: HoldingName,
    shown: Mutex<Shown>,
    /// Whoever brings the fold further.
    pub(crate) work: tokio::sync::Mutex<Second>,
    /// What was sent and is not being recorded yet.
    waiting: Mutex<VecDeque<Job>>,
    /// Whose turn it is to record what was sent.
    pub(crate) turn: tokio::sync::Mutex<()>,
    /// When it was last asked for, in the order of all.
    used: AtomicU64,
    /// What it took in memory when that was last counted, in bytes.
    counted: AtomicU64,
}

/// What readers are shown.
#[derive(Clone)]
pub(crate) struct Shown {
    /// The holding. Without entries if it was not read yet.
    pub(crate) holding: Arc<Holding>,
    /// The version of the database at which its journal ended here, if that is known.
    as_of: Option<Version>,
}

impl Shown {
    /// Whether it is known, without a look into the journal, that this is all there is.
    pub(crate) fn is_all_of(&self, version: Option<Version>) -> bool {
        version.is_some() && self.as_of == version && self.holding.tip().is_some()
    }
}

impl Fold {
    pub(crate) fn new(name: HoldingName) -> Fold {
        let holding = Arc::new(Holding::new(name.clone()));
        Fold {
            name,
            shown: Mutex::new(Shown { holding, as_of: None }),
            work: tokio::sync::Mutex::default(),
            waiting: Mutex::default(),
            turn: tokio::sync::Mutex::default(),
            used: AtomicU64::new(0),
            counted: AtomicU64::new(0),
        }
    }

    pub(crate) fn shown(&self) -> Shown {
        held(&self.shown).clone()
    }

    /// Shows another holding, and returns what was shown before.
    pub(crate) fn show(&self, holding: Arc<Holding>) -> Arc<Holding> {
        let mut shown = held(&self.shown);
        shown.as_of = None;
        std::mem::replace(&mut shown.holding, holding)
    }

    /// Notes that what is shown is all that the journal had at this version of the database.
    pub(crate) fn is_all_of(&self, looked_at: &Arc<Holding>, version: Option<Version>) {
        let mut shown = held(&self.shown);
        if Arc::ptr_eq(&shown.holding, looked_at) {
            shown.as_of = version;
        }
    }

    pub(crate) fn waits(&self, job: Job) {
        held(&self.waiting).push_back(job);
    }

    /// What is to be recorded together: as many jobs as have so many entries, but at least one.
    pub(crate) fn next_together(&self, entries_most: usize) -> Vec<Job> {
        let mut waiting = held(&self.waiting);
        let mut entries = 0;
        let mut together = Vec::new();
        while let Some(job) = waiting.pop_front() {
            entries += job.entries();
            if entries > entries_most && !together.is_empty() {
                waiting.push_front(job);
                break;
            }
            together.push(job);
        }
        together
    }

    /// How many bytes more it takes than when this was last asked.
    pub(crate) fn grown_since(&self) -> u64 {
        let now = self.shown().holding.weight();
        now.saturating_sub(self.counted.swap(now, Ordering::Relaxed))
    }

    pub(crate) fn is_used(&self, at: u64) {
        self.used.store(at, Ordering::Relaxed);
    }

    pub(crate) fn last_used(&self) -> u64 {
        self.used.load(Ordering::Relaxed)
    }
}

/// The second copy of a holding.
#[derive(Default)]
pub(crate) struct Second {
    copy: Option<Arc<Holding>>,
    /// What it lacks of what is shown.
    lacks: Vec<Kept>,
}

impl Second {
    /// A copy of what is shown that nobody else has.
    pub(crate) async fn take(&mut self, shown: &Arc<Holding>) -> Holding {
        let lacks = std::mem::take(&mut self.lacks);
        // Somebody may be reading it still.
        if let Some(mut own) = self.copy.take().and_then(Arc::into_inner) {
            for entry in lacks {
                own.restore(entry);
            }
            if own.tip() == shown.tip() {
                return own;
            }
        }
        if shown.tip().is_none_or(|(entries, _)| entries < MANY) {
            return Holding::clone(shown);
        }
        let shown = Arc::clone(shown);
        on_a_blocking_thread(move || Holding::clone(&shown)).await
    }

    /// Gives back a copy that equals what is shown.
    pub(crate) fn give_back(&mut self, copy: Holding) {
        *self = Second { copy: Some(Arc::new(copy)), lacks: Vec::new() };
    }

    /// Keeps what was shown until now, and what came after it.
    pub(crate) fn keep(&mut self, copy: Arc<Holding>, lacks: Option<Vec<Kept>>) {
        *self = lacks.map_or_else(Second::default, |lacks| Second { copy: Some(copy), lacks });
    }

    pub(crate) fn forget(&mut self) {
        *self = Second::default();
    }
}

/// Entries that are taken in, kept for the other copy too if they are few.
pub(crate) struct TakenIn(Option<Vec<Kept>>);

impl TakenIn {
    pub(crate) fn none() -> TakenIn {
        TakenIn(Some(Vec::new()))
    }

    pub(crate) fn add(&mut self, page: &[Kept]) {
        self.0 = self.0.take().filter(|kept| kept.len() + page.len() <= FEW).map(|mut kept| {
            kept.extend_from_slice(page);
            kept
        });
    }

    pub(crate) fn if_few(self) -> Option<Vec<Kept>> {
        self.0
    }
}

/// Entries as the other copy takes them in.
pub(crate) fn for_the_other(entries: &[Entry]) -> Option<Vec<Kept>> {
    (entries.len() <= FEW).then(|| entries.iter().map(Kept::from).collect())
}

/// Runs what computes for long apart from what answers.
pub(crate) async fn on_a_blocking_thread<T: Send + 'static>(work: impl FnOnce() -> T + Send + 'static) -> T {
    ended(tokio::task::spawn_blocking(work)).await
}

/// What a task comes to. If it panics, so does whoever waits for it.
pub(crate) async fn ended<T>(task: JoinHandle<T>) -> T {
    match task.await.map_err(JoinError::try_into_panic) {
        Ok(done) => done,
        Err(Ok(panic)) => std::panic::resume_unwind(panic),
        // The program ends, and this call with it.
        Err(Err(_)) => std::future::pending().await,
    }
}

/// Holds a lock, for some instructions only. Nothing that is done under it can stop half-way.
pub(crate) fn held<T>(lock: &Mutex<T>) -> MutexGuard<'_, T> {
    lock.lock().unwrap_or_else(PoisonError::into_inner)
}
