//! A journal with its holdings in memory: records new entries and answers questions.
//!
//! Each holding is folded once and then caught up with the journal by place. So a question costs as much as its colony, not
//! as much as the journal. Catching up before every question keeps answers right when another process writes too.

use std::collections::{HashMap, HashSet};
use std::sync::{Arc, Mutex};

use combclear_domain::basics::spelling::nearest_name;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::{Holding, Record, Refusal};
use combclear_domain::journal::key::{Key, KeyId, Stamp};
use combclear_domain::journal::misfit::Misfit;
use combclear_domain::journal::seal::{Broken, hash_of};
use combclear_domain::journal::{Content, Draft, Entry, EntryId, Event, Hash};

use crate::documents::{Attached, Seen, documents_seen};
use crate::fold::held;
use crate::folds::{Folds, InMemory};
use crate::journal::{Journal, Version};
use crate::recording::{self, Batch, Outcome, same_content};
use combclear_domain::journal::keeping::StoreError;

/// A journal with its holdings in memory.
pub struct Holdings {
    folds: Arc<Folds>,
    keys: Mutex<KnownKeys>,
    seen: Seen,
}

/// The keys that were looked up at a version of the database.
#[derive(Default)]
struct KnownKeys {
    as_of: Option<Version>,
    keys: HashMap<KeyId, (Key, Hash)>,
}

/// An entry that was sent in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Recorded {
    /// It was added.
    New(Entry),
    /// It was recorded before; this is the recorded entry.
    Known(Entry),
}

impl Recorded {
    /// The entry as it is in the journal.
    #[must_use]
    pub fn entry(&self) -> &Entry {
        match self {
            Recorded::New(entry) | Recorded::Known(entry) => entry,
        }
    }
}

/// Why entries were not recorded. None of them was.
#[derive(Debug, thiserror::Error)]
pub enum RecordError {
    /// One of them cannot be true.
    #[error("entry {index} ({id}) is refused: {refusal}")]
    Refused {
        /// Its index, from 0.
        index: usize,
        /// Its id.
        id: EntryId,
        /// The reason.
        refusal: Refusal,
    },
    /// One of them carries the id of another entry with other content.
    #[error("conflict of entry {index} ({id})")]
    Conflict {
        /// Its index, from 0.
        index: usize,
        /// Its id.
        id: EntryId,
    },
    /// A sealed entry does not follow the last one of the journal.
    #[error(transparent)]
    NotNext(Broken),
    /// The journal keeps no such holding. It is begun on purpose, never by a slip of the pen.
    #[error("no holding {holding}")]
    NoHolding {
        /// Its name as it was given.
        holding: HoldingName,
        /// The holding that is written much like it.
        near: Option<HoldingName>,
    },
    /// The holding that was to be begun is in the journal.
    #[error("holding {holding} was begun before")]
    BegunBefore {
        /// Its name.
        holding: HoldingName,
    },
    /// Other writers kept adding entries in between.
    #[error("busy")]
    Busy,
    /// The database.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl Holdings {
    /// The holdings of this journal, of which as many stay in memory as [`Holdings::ROOM`] holds.
    #[must_use]
    pub fn new(journal: Arc<dyn Journal>) -> Holdings {
        Holdings::within(journal, Holdings::ROOM)
    }

    /// What holdings may take in memory together if nothing else is said, in bytes: 1 GiB, some two million entries.
    pub const ROOM: u64 = 1024 * 1024 * 1024;

    /// The same with other room, in bytes. One holding may be in memory however large it is.
    #[must_use]
    pub fn within(journal: Arc<dyn Journal>, room: u64) -> Holdings {
        Holdings { folds: Arc::new(Folds::new(journal, room)), keys: Mutex::default(), seen: Seen::default() }
    }

    /// The journal.
    #[must_use]
    pub fn journal(&self) -> &Arc<dyn Journal> {
        &self.folds.journal
    }

    /// Tells somebody how many entries each commit adds. Only the first who asks for it is told.
    pub fn tell_of_commits(&self, told: impl Fn(usize) + Send + Sync + 'static) {
        let _ = self.folds.told.set(Box::new(told));
    }

    /// Asks a question of a holding; `None` if it has no entries.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn read<T>(
        &self,
        holding: &HoldingName,
        question: impl FnOnce(&Holding) -> T,
    ) -> Result<Option<T>, StoreError> {
        Ok(self.snapshot(holding).await?.map(|holding| question(&holding)))
    }

    /// The holding at the current state of its journal; `None` if it has no entries. A snapshot never changes and does not
    /// block writers.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn snapshot(&self, holding: &HoldingName) -> Result<Option<Arc<Holding>>, StoreError> {
        self.folds.snapshot(holding).await
    }

    /// The key with this id, and the hash of its secret, as [`Journal::key`] finds them. It is looked up again only after something
    /// was committed to the database.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn key(&self, id: KeyId) -> Result<Option<(Key, Hash)>, StoreError> {
        self.journal().trusted()?;
        // Asked before the key is looked up: what is committed in between counts as later.
        let version = self.journal().version()?;
        {
            let mut known = held(&self.keys);
            if version.is_none() || known.as_of != version {
                *known = KnownKeys { as_of: version, keys: HashMap::new() };
            } else if let Some(key) = known.keys.get(&id) {
                return Ok(Some(key.clone()));
            }
        }
        let found = self.journal().key(id).await?;
        let mut known = held(&self.keys);
        if let Some(key) = &found
            && version.is_some()
            && known.as_of == version
        {
            known.keys.insert(id, key.clone());
        }
        Ok(found)
    }

    /// Every entry that attaches a document, as [`documents`](crate::documents()) finds them, but a content that this process has
    /// read before and found as attached is not read again.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn documents(&self, holding: &HoldingName) -> Result<Vec<Attached>, StoreError> {
        documents_seen(self.journal().as_ref(), holding, &self.seen).await
    }

    /// What is in memory.
    #[must_use]
    pub fn in_memory(&self) -> InMemory {
        self.folds.in_memory()
    }

    /// Begins a holding with its first entry. The same entry again counts as recorded.
    ///
    /// # Errors
    /// [`RecordError::BegunBefore`], or as [`Holdings::record`].
    pub async fn begin(
        &self,
        holding: &HoldingName,
        first: Draft,
        now: impl Into<Stamp>,
    ) -> Result<Recorded, RecordError> {
        if self.journal().tip(holding).await?.is_some() {
            return match self.journal().entry(holding, first.id).await? {
                Some(known) if same_content(holding, &known, &first) => Ok(Recorded::Known(known)),
                Some(_) | None => Err(RecordError::BegunBefore { holding: holding.clone() }),
            };
        }
        let id = first.id;
        let (on_refusal, if_new) = (OnRefusal::Stop, IfNew::BeginOnly);
        let (drafts, contents, now) = (vec![first], Vec::new(), now.into());
        one(self.record_batch(holding, Batch { drafts, contents, now, on_refusal, if_new }).await?, id)
    }

    /// Records entries as of `now`: all of them, or none if one cannot be true. An entry that is already recorded counts as
    /// recorded.
    ///
    /// # Errors
    /// The first entry that cannot be recorded, and why.
    pub async fn record(
        &self,
        holding: &HoldingName,
        drafts: Vec<Draft>,
        now: impl Into<Stamp>,
    ) -> Result<Vec<Recorded>, RecordError> {
        let (recorded, refused) =
            self.record_each(holding, drafts, now, OnRefusal::Stop, IfNew::Refuse).await?;
        match refused.into_iter().next() {
            Some(error) => Err(error),
            None => Ok(recorded),
        }
    }

    /// Records an entry that attaches a document, together with the content. If the entry is recorded and only its content
    /// is missing, the content is added.
    ///
    /// # Errors
    /// As [`Holdings::record`].
    pub async fn attach(
        &self,
        holding: &HoldingName,
        draft: Draft,
        content: Content,
        now: impl Into<Stamp>,
    ) -> Result<Recorded, RecordError> {
        let id = draft.id;
        let (on_refusal, if_new) = (OnRefusal::Stop, IfNew::Refuse);
        let (drafts, contents, now) = (vec![draft], vec![content], now.into());
        one(self.record_batch(holding, Batch { drafts, contents, now, on_refusal, if_new }).await?, id)
    }

    /// Records entries as of `now` and returns the refusals. With [`OnRefusal::Stop`] or [`OnRefusal::Collect`] one refusal
    /// means that nothing is recorded; with [`OnRefusal::LeaveOut`] the others are.
    ///
    /// # Errors
    /// The database. Nothing was recorded.
    pub async fn record_each(
        &self,
        holding: &HoldingName,
        drafts: Vec<Draft>,
        now: impl Into<Stamp>,
        on_refusal: OnRefusal,
        if_new: IfNew,
    ) -> Outcome {
        let (contents, now) = (Vec::new(), now.into());
        self.record_batch(holding, Batch { drafts, contents, now, on_refusal, if_new }).await
    }

    async fn record_batch(&self, holding: &HoldingName, batch: Batch) -> Outcome {
        let fold = self.folds.of(holding);
        // What has been shown was in the journal, and nothing is ever taken out of it.
        let is_known = fold.shown().holding.tip().is_some();
        if batch.if_new == IfNew::Refuse && !is_known && self.journal().tip(holding).await?.is_none() {
            let known = self.journal().holdings().await?;
            let near = nearest_name(holding.as_str(), known.iter().map(HoldingName::as_str));
            return Err(RecordError::NoHolding { holding: holding.clone(), near });
        }
        recording::record(&self.folds, &fold, batch).await
    }

    /// Imports sealed entries of an export. Each must follow the previous one. Entries already in the same place are
    /// skipped, as are stored contents. Returns the number of entries added.
    ///
    /// # Errors
    /// The first entry that does not follow, or cannot be true.
    pub async fn restore(
        &self,
        holding: &HoldingName,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<usize, RecordError> {
        let write = self.journal().begin_write(holding).await?;
        let fold = self.folds.of(holding);
        let mut second = fold.work.lock().await;
        self.folds.catch_up(&fold, &mut second).await?;
        let shown = fold.shown().holding;
        // If it comes to nothing, it is dropped: the second copy is then made anew when it is needed.
        let mut current = second.take(&shown).await;
        let mut taken = Vec::new();
        for (index, entry) in entries.iter().enumerate() {
            let next = current.tip().map_or(1, |(seq, _)| seq.saturating_add(1));
            if entry.seq < next {
                self.check_same(holding, entry).await?;
                continue;
            }
            entry.follows(holding, current.tip()).map_err(RecordError::NotNext)?;
            let refused = |refusal| RecordError::Refused { index, id: entry.draft.id, refusal };
            current.accept_sealed(entry).map_err(refused)?;
            taken.push(entry.clone());
        }
        if let Some((seq, id)) = current.first_without_body() {
            return Err(RecordError::NotNext(Broken { seq, id, what: Misfit::BodyGone }));
        }
        // An older export must not bring back contents that were archived.
        let named: HashSet<Hash> = current.in_order().iter().filter_map(|record| attached(record)).collect();
        let contents: Vec<Content> =
            contents.iter().filter(|content| named.contains(&content.hash())).cloned().collect();
        if taken.is_empty() && contents.is_empty() {
            return Ok(0);
        }
        write.append(shown.tip(), &taken, &contents).await?;
        self.folds.added(&fold, shown, &mut second, current, &taken);
        Ok(taken.len())
    }

    /// Moves entries into an archive that is already written: records `draft`, and removes the bodies of the places it names
    /// and these contents from the journal. `after` is the last entry at the time the archive was written.
    ///
    /// # Errors
    /// Why nothing was moved: [`RecordError::Busy`] if entries were added since `after`.
    pub async fn archive(
        &self,
        holding: &HoldingName,
        after: (u64, Hash),
        draft: Draft,
        contents: &[Hash],
        now: impl Into<Stamp>,
    ) -> Result<Entry, RecordError> {
        let write = self.journal().begin_write(holding).await?;
        let fold = self.folds.of(holding);
        let mut second = fold.work.lock().await;
        self.folds.catch_up(&fold, &mut second).await?;
        let shown = fold.shown().holding;
        if shown.tip() != Some(after) {
            return Err(RecordError::Busy);
        }
        let id = draft.id;
        let entry = Entry::seal_with(holding, draft, now.into(), Some(after));
        let mut current = second.take(&shown).await;
        let refused = |refusal| RecordError::Refused { index: 0, id, refusal };
        current.accept_archived(&entry).map_err(refused)?;
        write.archive(Some(after), &entry, contents).await?;
        fold.show(Arc::new(current));
        // What was moved has left the copy that was shown, too.
        second.forget();
        Ok(entry)
    }

    async fn check_same(&self, holding: &HoldingName, entry: &Entry) -> Result<(), RecordError> {
        let known = self.journal().entry(holding, entry.draft.id).await?;
        // A body archived on one side is proved by the hash of the other.
        let whole = |entry: &Entry| entry.is_in_archive() || hash_of(holding, entry) == entry.hash;
        let same = |known: &Entry| {
            known == entry
                || ((known.is_in_archive() || entry.is_in_archive())
                    && known.without_body() == entry.without_body()
                    && whole(known)
                    && whole(entry))
        };
        if known.as_ref().is_some_and(same) {
            return Ok(());
        }
        let (seq, id, what) = (entry.seq, entry.draft.id, Misfit::OtherEntry);
        Err(RecordError::NotNext(Broken { seq, id, what }))
    }
}

/// What became of the only draft of a batch.
fn one((recorded, refused): (Vec<Recorded>, Vec<RecordError>), id: EntryId) -> Result<Recorded, RecordError> {
    match (recorded.into_iter().next(), refused.into_iter().next()) {
        (Some(recorded), None) => Ok(recorded),
        (_, Some(error)) => Err(error),
        // Unreachable: one draft is either recorded or refused.
        (None, None) => Err(RecordError::Conflict { index: 0, id }),
    }
}

/// The content that an entry attaches.
fn attached(record: &Record) -> Option<Hash> {
    match &record.event {
        Event::DocumentAttached(document) => Some(document.content),
        _ => None,
    }
}

/// What to do when an entry cannot be recorded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum OnRefusal {
    /// Stop at once; record nothing.
    Stop,
    /// Check the others too, to report every fault; record nothing.
    Collect,
    /// Skip it; record the others.
    LeaveOut,
}

/// What to do when the journal keeps no such holding.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IfNew {
    /// Record nothing: the name is a slip of the pen.
    Refuse,
    /// Begin it with these entries.
    Begin,
    /// Begin it with these entries, and record nothing if the journal has it: somebody else may be beginning it too.
    BeginOnly,
}
