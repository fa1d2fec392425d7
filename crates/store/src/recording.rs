//! Entries on their way into the journal: what is sent while another write is under way is committed together.
//!
//! Whoever sends entries puts them in a queue and waits for a turn. Whoever has the turn begins one write for all that wait, adds to
//! the second copy of the holding what can be true, commits, and answers all of them. So many writers share one wait for the disk,
//! each of them is answered only after its entries are on it, and a refused batch takes out only itself.

use std::collections::HashMap;
use std::sync::Arc;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::keeping::StoreError;
use combclear_domain::journal::key::Stamp;
use combclear_domain::journal::seal::hash_of;
use combclear_domain::journal::{Content, Draft, Entry, EntryId};
use tokio::sync::oneshot;
use tokio::sync::oneshot::error::TryRecvError;

use crate::fold::{Fold, ended};
use crate::folds::Folds;
use crate::holdings::{IfNew, OnRefusal, RecordError, Recorded};
use crate::journal::{AppendError, Writing};

/// Entries in one commit, unless one batch alone has more.
const TOGETHER_MOST: usize = 1_000;

/// What became of a batch: what is recorded, and what was refused.
pub(crate) type Outcome = Result<(Vec<Recorded>, Vec<RecordError>), RecordError>;

/// Entries that are all recorded or not at all, and contents of documents.
pub(crate) struct Batch {
    pub(crate) drafts: Vec<Draft>,
    pub(crate) contents: Vec<Content>,
    pub(crate) now: Stamp,
    pub(crate) on_refusal: OnRefusal,
    pub(crate) if_new: IfNew,
}

/// A batch, and who waits for it.
pub(crate) struct Job {
    batch: Batch,
    answer: oneshot::Sender<Outcome>,
}

impl Job {
    pub(crate) fn entries(&self) -> usize {
        self.batch.drafts.len()
    }
}

/// Records a batch, together with others that wait.
pub(crate) async fn record(folds: &Arc<Folds>, fold: &Arc<Fold>, batch: Batch) -> Outcome {
    let (answer, mut answered) = oneshot::channel();
    fold.waits(Job { batch, answer });
    let turn = fold.turn.lock().await;
    match answered.try_recv() {
        Ok(outcome) => return outcome,
        // Whoever was to record it came to nothing.
        Err(TryRecvError::Closed) => return Err(RecordError::Busy),
        Err(TryRecvError::Empty) => {}
    }
    // Others wait for this too, so it goes on if this call is cancelled.
    let (folds, fold) = (Arc::clone(folds), Arc::clone(fold));
    ended(tokio::spawn(async move { folds.record_together(&fold).await })).await;
    drop(turn);
    // If whoever had the turn before was cancelled, what it began may still be under way.
    answered.await.unwrap_or(Err(RecordError::Busy))
}

impl Folds {
    /// Records what waits, in one commit.
    async fn record_together(&self, fold: &Arc<Fold>) {
        let write = self.journal.begin_write(&fold.name).await;
        let jobs = fold.next_together(TOGETHER_MOST);
        let (batches, answers): (Vec<Batch>, Vec<_>) =
            jobs.into_iter().map(|job| (job.batch, job.answer)).unzip();
        if batches.is_empty() {
            return;
        }
        let outcomes = match write {
            Ok(write) => self.record_batches(fold, write, &batches).await,
            Err(error) => Err(AppendError::Store(error)),
        };
        match outcomes {
            Ok(outcomes) => {
                for (answer, outcome) in answers.into_iter().zip(outcomes) {
                    // Nobody may be waiting any more. It is recorded all the same.
                    let _ = answer.send(outcome);
                }
            }
            // One of them does not fit, and no other is refused for that.
            Err(AppendError::NotSealed(_) | AppendError::DuplicateId { .. }) if batches.len() > 1 => {
                for (batch, answer) in batches.iter().zip(answers) {
                    let alone = self.record_alone(fold, batch).await;
                    let _ = answer.send(alone);
                }
            }
            Err(AppendError::Store(error)) => {
                for answer in answers {
                    let _ = answer.send(Err(RecordError::Store(error.clone())));
                }
            }
            // Nobody else writes meanwhile, so the fold was not what it was taken for.
            Err(AppendError::TipMoved { .. }) => {
                for answer in answers {
                    let _ = answer.send(Err(RecordError::Busy));
                }
            }
            Err(error) => {
                if let Some(answer) = answers.into_iter().next() {
                    let _ = answer.send(Err(error.into()));
                }
            }
        }
    }

    async fn record_alone(&self, fold: &Arc<Fold>, batch: &Batch) -> Outcome {
        let write = self.journal.begin_write(&fold.name).await?;
        let outcomes = self.record_batches(fold, write, std::slice::from_ref(batch)).await?;
        outcomes.into_iter().next().unwrap_or(Err(RecordError::Busy))
    }

    /// Takes batches in, one after the other, and appends what is new. What is answered holds once this has returned.
    async fn record_batches(
        &self,
        fold: &Arc<Fold>,
        mut write: Box<dyn Writing>,
        batches: &[Batch],
    ) -> Result<Vec<Outcome>, AppendError> {
        // Other writers were waited for before the fold is locked: whoever has to bring it further meanwhile is not held up.
        let mut second = fold.work.lock().await;
        let tip = write.tip().await?;
        self.catch_up_to(tip, None, fold, &mut second).await?;
        let shown = fold.shown().holding;
        let mut taken = Taken::over(second.take(&shown).await);
        let mut contents = Vec::new();
        let mut outcomes = Vec::with_capacity(batches.len());
        for batch in batches {
            let before = taken.entries.len();
            let outcome = self.take(&mut taken, batch).await;
            let is_taken = outcome
                .as_ref()
                .is_ok_and(|(_, refused)| refused.is_empty() || batch.on_refusal == OnRefusal::LeaveOut);
            if is_taken {
                contents.extend_from_slice(&batch.contents);
            } else {
                taken.take_back(before, &shown);
            }
            outcomes.push(outcome.map(
                |(recorded, refused)| {
                    if is_taken { (recorded, refused) } else { (Vec::new(), refused) }
                },
            ));
        }
        if taken.entries.is_empty() && contents.is_empty() {
            second.give_back(taken.holding);
            return Ok(outcomes);
        }
        let appended = write.append(shown.tip(), &taken.entries, &contents).await;
        if let Err(error) = appended {
            taken.take_back(0, &shown);
            second.give_back(taken.holding);
            return Err(error);
        }
        self.added(fold, shown, &mut second, taken.holding, &taken.entries);
        Ok(outcomes)
    }

    /// Takes one batch in, up to the first entry that is refused if it says so.
    async fn take(&self, taken: &mut Taken, batch: &Batch) -> Outcome {
        let holding = || taken.holding.name().clone();
        match (batch.if_new, taken.holding.tip()) {
            (IfNew::Refuse, None) => return Err(RecordError::NoHolding { holding: holding(), near: None }),
            (IfNew::BeginOnly, Some(_)) if !batch.drafts.iter().all(|draft| taken.has(draft.id)) => {
                return Err(RecordError::BegunBefore { holding: holding() });
            }
            (IfNew::Refuse | IfNew::Begin | IfNew::BeginOnly, _) => {}
        }
        let mut recorded = Vec::with_capacity(batch.drafts.len());
        let mut refused = Vec::new();
        for (index, draft) in batch.drafts.iter().enumerate() {
            match self.take_one(taken, index, draft, batch.now).await {
                Ok(entry) => recorded.push(entry),
                Err(error @ (RecordError::Refused { .. } | RecordError::Conflict { .. })) => {
                    refused.push(error);
                    if batch.on_refusal == OnRefusal::Stop {
                        break;
                    }
                }
                Err(error) => return Err(error),
            }
        }
        Ok((recorded, refused))
    }

    /// Takes one draft in, unless it is already recorded or cannot be true.
    async fn take_one(
        &self,
        taken: &mut Taken,
        index: usize,
        draft: &Draft,
        now: Stamp,
    ) -> Result<Recorded, RecordError> {
        let name = taken.holding.name().clone();
        if taken.has(draft.id) {
            let known = match taken.get(draft.id) {
                Some(entry) => Some(entry.clone()),
                None => self.journal.entry(&name, draft.id).await?,
            };
            return match known {
                Some(known) if same_content(&name, &known, draft) => Ok(Recorded::Known(known)),
                Some(_) => Err(RecordError::Conflict { index, id: draft.id }),
                // It is in memory, so the journal had it: its id cannot be found any more.
                None => {
                    let by_place = taken.holding.tip().map_or(0, |(seq, _)| seq);
                    let by_id = by_place.saturating_sub(1);
                    Err(StoreError::Lost { holding: name, by_place, by_id }.into())
                }
            };
        }
        let entry = Entry::seal_with(&name, draft.clone(), now, taken.holding.tip());
        let refused = |refusal| RecordError::Refused { index, id: draft.id, refusal };
        taken.holding.accept(&entry).map_err(refused)?;
        taken.add(entry.clone());
        Ok(Recorded::New(entry))
    }
}

/// A holding with entries that are not yet in the journal.
struct Taken {
    holding: Holding,
    entries: Vec<Entry>,
    places: HashMap<EntryId, usize>,
}

impl Taken {
    fn over(holding: Holding) -> Taken {
        Taken { holding, entries: Vec::new(), places: HashMap::new() }
    }

    fn add(&mut self, entry: Entry) {
        self.places.insert(entry.draft.id, self.entries.len());
        self.entries.push(entry);
    }

    /// Whether the holding has an entry with this id, in the journal or to be.
    fn has(&self, id: EntryId) -> bool {
        self.holding.entry(id).is_some()
    }

    fn get(&self, id: EntryId) -> Option<&Entry> {
        self.entries.get(*self.places.get(&id)?)
    }

    /// Takes out again what came after the first so many.
    fn take_back(&mut self, count: usize, shown: &Holding) {
        let after = self.entries.split_off(count);
        for entry in &after {
            self.places.remove(&entry.draft.id);
        }
        if !after.iter().rev().all(|entry| self.holding.take_back(entry)) {
            self.holding = shown.clone();
            for entry in &self.entries {
                self.holding.restore(entry);
            }
        }
    }
}

impl From<AppendError> for RecordError {
    fn from(error: AppendError) -> RecordError {
        match error {
            // Nobody else writes meanwhile, so the fold was not what it was taken for.
            AppendError::TipMoved { .. } => RecordError::Busy,
            AppendError::NotSealed(broken) => RecordError::NotNext(broken),
            AppendError::DuplicateId { id } => RecordError::Conflict { index: 0, id },
            AppendError::Store(error) => RecordError::Store(error),
        }
    }
}

/// Whether an entry and a draft have the same content, whoever sealed it and when. For an archived body, the hash decides.
pub(crate) fn same_content(holding: &HoldingName, known: &Entry, two: &Draft) -> bool {
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
