//! A journal with its holdings in memory: records new entries and answers questions.
//!
//! Each holding is folded once and then caught up with the journal by place. So a question costs as much as its colony, not
//! as much as the journal. Catching up before every question keeps answers right when another process writes too.

use std::collections::{HashMap, HashSet};
use std::sync::Arc;

use combclear_domain::basics::spelling::nearest_name;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::{Holding, Record, Refusal};
use combclear_domain::journal::key::Stamp;
use combclear_domain::journal::misfit::Misfit;
use combclear_domain::journal::seal::hash_of;
use combclear_domain::journal::{Content, Draft, Entry, EntryId, Event, Hash, Kept};
use tokio::runtime::Handle;
use tokio::sync::Mutex;
use tokio::task::{JoinError, JoinHandle};

use crate::documents::{Attached, Seen, documents_seen};
use crate::journal::{AppendError, Journal, Writing};
use combclear_domain::journal::keeping::StoreError;

/// Entries read at a time when catching up.
const PAGE: u32 = 5_000;

/// A journal with its holdings in memory.
pub struct Holdings {
    journal: Arc<dyn Journal>,
    folds: Mutex<HashMap<HoldingName, Fold>>,
    seen: Seen,
}

/// A holding in memory, shared by readers. A writer holds the lock and changes it in place, or a copy while somebody reads:
/// a reader's holding never changes.
type Fold = Arc<Mutex<Arc<Holding>>>;

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
    NotNext(combclear_domain::journal::seal::Broken),
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
    /// The holdings of this journal.
    #[must_use]
    pub fn new(journal: Arc<dyn Journal>) -> Holdings {
        Holdings { journal, folds: Mutex::new(HashMap::new()), seen: Seen::default() }
    }

    /// The journal.
    #[must_use]
    pub fn journal(&self) -> &Arc<dyn Journal> {
        &self.journal
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
        self.journal.trusted()?;
        let tip = self.journal.tip(holding).await?;
        if tip.is_none() {
            return Ok(None);
        }
        let fold = self.fold(holding).await;
        let mut current = fold.lock().await;
        if current.tip() == tip {
            is_accounted_for(&current)?;
        } else {
            self.catch_up(&mut current).await?;
        }
        Ok(Some(Arc::clone(&current)))
    }

    /// Every entry that attaches a document, as [`documents`](crate::documents()) finds them, but a content that this process has
    /// read before and found as attached is not read again.
    ///
    /// # Errors
    /// [`StoreError`].
    pub async fn documents(&self, holding: &HoldingName) -> Result<Vec<Attached>, StoreError> {
        documents_seen(self.journal.as_ref(), holding, &self.seen).await
    }

    /// How many holdings are in memory, and how many entries they have together. Those that are just being written to are left out.
    pub async fn in_memory(&self) -> (u64, u64) {
        let folds = self.folds.lock().await;
        let known = folds.values().filter_map(|fold| fold.try_lock().ok()?.tip());
        known.fold((0, 0), |(holdings, entries), (last, _)| (holdings + 1, entries + last))
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
        if self.journal.tip(holding).await?.is_some() {
            return match self.journal.entry(holding, first.id).await? {
                Some(known) if same_content(holding, &known, &first) => Ok(Recorded::Known(known)),
                Some(_) | None => Err(RecordError::BegunBefore { holding: holding.clone() }),
            };
        }
        let id = first.id;
        let (recorded, refused) =
            self.record_with(holding, &[first], &[], now.into(), OnRefusal::Stop, IfNew::Begin).await?;
        match (recorded.into_iter().next(), refused.into_iter().next()) {
            (Some(recorded), None) => Ok(recorded),
            (_, Some(error)) => Err(error),
            // Unreachable: one draft is either recorded or refused.
            (None, None) => Err(RecordError::Conflict { index: 0, id }),
        }
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
            self.record_each(holding, &drafts, now, OnRefusal::Stop, IfNew::Refuse).await?;
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
        let (recorded, refused) = self
            .record_with(holding, &[draft], &[content], now.into(), OnRefusal::Stop, IfNew::Refuse)
            .await?;
        match (recorded.into_iter().next(), refused.into_iter().next()) {
            (Some(recorded), None) => Ok(recorded),
            (_, Some(error)) => Err(error),
            // Unreachable: one draft is either recorded or refused.
            (None, None) => Err(RecordError::Conflict { index: 0, id }),
        }
    }

    /// Records entries as of `now` and returns the refusals. With [`OnRefusal::Stop`] or [`OnRefusal::Collect`] one refusal
    /// means that nothing is recorded; with [`OnRefusal::LeaveOut`] the others are.
    ///
    /// # Errors
    /// The database. Nothing was recorded.
    pub async fn record_each(
        &self,
        holding: &HoldingName,
        drafts: &[Draft],
        now: impl Into<Stamp>,
        on_refusal: OnRefusal,
        if_new: IfNew,
    ) -> Result<(Vec<Recorded>, Vec<RecordError>), RecordError> {
        self.record_with(holding, drafts, &[], now.into(), on_refusal, if_new).await
    }

    async fn record_with(
        &self,
        holding: &HoldingName,
        drafts: &[Draft],
        contents: &[Content],
        now: Stamp,
        on_refusal: OnRefusal,
        if_new: IfNew,
    ) -> Result<(Vec<Recorded>, Vec<RecordError>), RecordError> {
        if if_new == IfNew::Refuse && self.journal.tip(holding).await?.is_none() {
            let known = self.journal.holdings().await?;
            let near = nearest_name(holding.as_str(), known.iter().map(HoldingName::as_str));
            return Err(RecordError::NoHolding { holding: holding.clone(), near });
        }
        // Other writers are waited for before the fold is locked: whoever asks a question meanwhile is not held up.
        let write = self.journal.begin_write(holding).await?;
        let fold = self.fold(holding).await;
        let mut current = fold.lock().await;
        self.catch_up(&mut current).await?;
        let mut recorded: Vec<Recorded> = Vec::with_capacity(drafts.len());
        let mut refused = Vec::new();
        let mut taken = Taken::default();
        for (index, draft) in drafts.iter().enumerate() {
            match self.take(holding, &mut current, &mut taken, index, draft, now).await {
                Ok(entry) => recorded.push(entry),
                Err(error @ (RecordError::Refused { .. } | RecordError::Conflict { .. })) => {
                    refused.push(error);
                    if on_refusal == OnRefusal::Stop {
                        break;
                    }
                }
                Err(error) => {
                    undo(&mut current, &taken.entries);
                    return Err(error);
                }
            }
        }
        if !refused.is_empty() && on_refusal != OnRefusal::LeaveOut {
            undo(&mut current, &taken.entries);
            return Ok((Vec::new(), refused));
        }
        append(write, &mut current, &taken.entries, contents).await?;
        Ok((recorded, refused))
    }

    /// Adds one draft to the fold, unless it is already recorded or cannot be true.
    async fn take(
        &self,
        holding: &HoldingName,
        current: &mut Arc<Holding>,
        taken: &mut Taken,
        index: usize,
        draft: &Draft,
        now: Stamp,
    ) -> Result<Recorded, RecordError> {
        if current.entry(draft.id).is_some() {
            let known = match taken.get(draft.id) {
                Some(entry) => Some(entry.clone()),
                None => self.journal.entry(holding, draft.id).await?,
            };
            return match known {
                Some(known) if same_content(holding, &known, draft) => Ok(Recorded::Known(known)),
                Some(_) => Err(RecordError::Conflict { index, id: draft.id }),
                // It is in memory, so the journal had it: its id cannot be found any more.
                None => {
                    let by_place = current.tip().map_or(0, |(seq, _)| seq);
                    let by_id = by_place.saturating_sub(1);
                    Err(StoreError::Lost { holding: holding.clone(), by_place, by_id }.into())
                }
            };
        }
        let entry = Entry::seal_with(holding, draft.clone(), now, current.tip());
        Arc::make_mut(current).accept(&entry).map_err(|refusal| RecordError::Refused {
            index,
            id: draft.id,
            refusal,
        })?;
        taken.add(entry.clone());
        Ok(Recorded::New(entry))
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
        let write = self.journal.begin_write(holding).await?;
        let fold = self.fold(holding).await;
        let mut current = fold.lock().await;
        self.catch_up(&mut current).await?;
        let mut taken = Vec::new();
        for (index, entry) in entries.iter().enumerate() {
            let next = current.tip().map_or(1, |(seq, _)| seq.saturating_add(1));
            if entry.seq < next {
                self.check_same(holding, entry).await?;
                continue;
            }
            let followed = entry.follows(holding, current.tip());
            let accepted = followed.map_err(RecordError::NotNext).and_then(|()| {
                let refused = |refusal| RecordError::Refused { index, id: entry.draft.id, refusal };
                Arc::make_mut(&mut current).accept_sealed(entry).map_err(refused)
            });
            if let Err(error) = accepted {
                undo(&mut current, &taken);
                return Err(error);
            }
            taken.push(entry.clone());
        }
        if let Some((seq, id)) = current.first_without_body() {
            undo(&mut current, &taken);
            let what = Misfit::BodyGone;
            return Err(RecordError::NotNext(combclear_domain::journal::seal::Broken { seq, id, what }));
        }
        // An older export must not bring back contents that were archived.
        let named: HashSet<Hash> = current.in_order().iter().filter_map(|record| attached(record)).collect();
        let contents: Vec<Content> =
            contents.iter().filter(|content| named.contains(&content.hash())).cloned().collect();
        append(write, &mut current, &taken, &contents).await?;
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
        let write = self.journal.begin_write(holding).await?;
        let fold = self.fold(holding).await;
        let mut current = fold.lock().await;
        self.catch_up(&mut current).await?;
        if current.tip() != Some(after) {
            return Err(RecordError::Busy);
        }
        let id = draft.id;
        let entry = Entry::seal_with(holding, draft, now.into(), Some(after));
        let accepted = Arc::make_mut(&mut current).accept_archived(&entry);
        accepted.map_err(|refusal| RecordError::Refused { index: 0, id, refusal })?;
        match write.archive(Some(after), &entry, contents).await {
            Ok(()) => Ok(entry),
            Err(error) => {
                undo(&mut current, std::slice::from_ref(&entry));
                Err(match error {
                    AppendError::TipMoved { .. } => RecordError::Busy,
                    AppendError::NotSealed(broken) => RecordError::NotNext(broken),
                    AppendError::DuplicateId { id } => RecordError::Conflict { index: 0, id },
                    AppendError::Store(error) => RecordError::Store(error),
                })
            }
        }
    }

    async fn check_same(&self, holding: &HoldingName, entry: &Entry) -> Result<(), RecordError> {
        let known = self.journal.entry(holding, entry.draft.id).await?;
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
        let what = Misfit::OtherEntry;
        let broken = combclear_domain::journal::seal::Broken { seq: entry.seq, id: entry.draft.id, what };
        Err(RecordError::NotNext(broken))
    }

    async fn fold(&self, holding: &HoldingName) -> Fold {
        let mut folds = self.folds.lock().await;
        let fold = folds.entry(holding.clone());
        let empty = || Arc::new(Mutex::new(Arc::new(Holding::new(holding.clone()))));
        Arc::clone(fold.or_insert_with(empty))
    }

    async fn catch_up(&self, holding: &mut Arc<Holding>) -> Result<(), StoreError> {
        self.journal.trusted()?;
        let name = holding.name().clone();
        let tip = self.journal.tip(&name).await?;
        if holding.tip() == tip {
            return is_accounted_for(holding);
        }
        // A cancelled call may have left the fold ahead of the journal.
        let is_behind = holding.tip().is_some_and(|(seq, _)| tip.is_some_and(|(last, _)| seq < last));
        if is_behind {
            match self.read_on(&name, holding).await {
                // The journal may have been put back from an older copy and gone on from there.
                Err(StoreError::Broken { .. }) => {}
                read => return read,
            }
        }
        // What was not looked at as a whole supports no answer. So it is kept only then: a call may be cancelled on the way.
        *holding = Arc::new(Holding::new(name.clone()));
        let mut anew = Arc::clone(holding);
        self.read_on(&name, &mut anew).await?;
        // The tip alone proves nothing: it may be found in the same broken order.
        let last = anew.tip().map_or(0, |(seq, _)| seq);
        self.journal.is_whole(&name, last, has_archives(&anew)).await?;
        *holding = anew;
        Ok(())
    }

    /// Takes in what the journal has after the last entry of the fold.
    async fn read_on(&self, name: &HoldingName, holding: &mut Arc<Holding>) -> Result<(), StoreError> {
        let mut after = holding.tip();
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
            take_in(holding, page).await;
        }
        is_accounted_for(holding)
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
}

/// Takes a page into the fold, on a blocking thread. If the call is cancelled meanwhile, the fold starts empty.
async fn take_in(fold: &mut Arc<Holding>, page: Vec<Kept>) {
    let empty = Arc::new(Holding::new(fold.name().clone()));
    let mut taken = std::mem::replace(fold, empty);
    let work = tokio::task::spawn_blocking(move || {
        let holding = Arc::make_mut(&mut taken);
        for entry in page {
            holding.restore(entry);
        }
        taken
    });
    *fold = match work.await.map_err(JoinError::try_into_panic) {
        Ok(taken) => taken,
        Err(Ok(panic)) => std::panic::resume_unwind(panic),
        // The program ends, and this call with it.
        Err(Err(_)) => std::future::pending().await,
    };
}

/// Writes entries that are in the fold, and contents. If they are not written, they leave the fold again.
async fn append(
    write: Box<dyn Writing>,
    current: &mut Arc<Holding>,
    taken: &[Entry],
    contents: &[Content],
) -> Result<(), RecordError> {
    let after = match taken.first() {
        Some(first) => (first.seq > 1).then(|| (first.seq.saturating_sub(1), first.prev)),
        None if contents.is_empty() => return Ok(()),
        None => current.tip(),
    };
    write.append(after, taken, contents).await.map_err(|error| {
        undo(current, taken);
        match error {
            // Nobody else writes meanwhile, so the fold was not what it was taken for.
            AppendError::TipMoved { .. } => RecordError::Busy,
            AppendError::NotSealed(broken) => RecordError::NotNext(broken),
            AppendError::DuplicateId { id } => RecordError::Conflict { index: 0, id },
            AppendError::Store(error) => RecordError::Store(error),
        }
    })
}

/// Whether entries were moved into an archive.
fn has_archives(holding: &Holding) -> bool {
    !holding.archives().is_empty()
}

/// The content that an entry attaches.
fn attached(record: &Record) -> Option<Hash> {
    match &record.event {
        Event::DocumentAttached(document) => Some(document.content),
        _ => None,
    }
}

/// Refuses a holding with a body that is missing but not archived: no answer may be based on the rest.
fn is_accounted_for(holding: &Holding) -> Result<(), StoreError> {
    holding.first_without_body().map_or(Ok(()), |(seq, _)| {
        let what = Misfit::BodyGone;
        Err(StoreError::Unreadable { holding: holding.name().clone(), seq, what })
    })
}

/// Takes entries out of the fold that did not reach the journal. If that is impossible the fold starts empty and is caught
/// up before its next use.
fn undo(current: &mut Arc<Holding>, taken: &[Entry]) {
    if taken.is_empty() {
        return;
    }
    let holding = Arc::make_mut(current);
    if !taken.iter().rev().all(|entry| holding.take_back(entry)) {
        *current = Arc::new(Holding::new(current.name().clone()));
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
}

/// Entries in the fold but not yet in the journal.
#[derive(Default)]
struct Taken {
    entries: Vec<Entry>,
    places: HashMap<EntryId, usize>,
}

impl Taken {
    fn add(&mut self, entry: Entry) {
        self.places.insert(entry.draft.id, self.entries.len());
        self.entries.push(entry);
    }

    fn get(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(*self.places.get(&id)?)
    }
}

/// Whether an entry and a draft have the same content, whoever sealed it and when. For an archived body, the hash decides.
fn same_content(holding: &HoldingName, known: &Entry, two: &Draft) -> bool {
    if known.is_in_archive() {
        return hash_of(holding, &Entry { draft: two.clone(), ..known.clone() }) == known.hash;
    }
    let one = &known.draft;
    one.on == two.on
        && one.at == two.at
        && one.recorded_by == two.recorded_by
        && one.event == two.event
        && one.copied_from == two.copied_from
        && one.correction == two.correction
}
