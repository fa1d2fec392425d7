//! The journal in an SQL database, written once for all of them.

use std::collections::{HashMap, HashSet};
use std::future::Future;
use std::path::Path;
use std::sync::{Arc, OnceLock};
use std::time::Duration;

use async_trait::async_trait;
use combclear_domain::basics::calendar::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::{Archives, Rest};
use combclear_domain::journal::key::{Key, KeyId};
use combclear_domain::journal::seal::{Broken, hash_of};
use combclear_domain::journal::{Checkpoint, Content, Entry, EntryId, Event, Hash, Kept, Kind};
use sqlx::pool::PoolConnection;
use sqlx::{Database, Pool, Transaction};

use crate::documents;
use crate::journal::{AppendError, Journal, Verified, Version, Weakness, Writing};
use crate::key_row::{self, KeyRow};
use crate::row::{self, NotKept, Row};
use crate::statements::Statements;
use crate::verify::Walk;
use combclear_domain::journal::keeping::StoreError;
use combclear_domain::journal::misfit::Misfit;

/// Rows in memory at a time during a walk.
const ROWS_PER_STEP: u16 = 500;

/// The differences between databases.
pub(crate) trait Backend: Send + Sync + 'static {
    /// The sqlx driver.
    type Db: Database<Connection: Statements>;

    /// How long a statement may take, where the other end can fall silent.
    const PATIENCE: Option<Duration>;

    /// Connections for reading.
    fn readers(&self) -> &Pool<Self::Db>;

    /// Begins a write to a holding, or to what belongs to none: the keys. No other writer of the holding gets in until the
    /// transaction ends.
    fn begin_write(
        &self,
        holding: Option<&HoldingName>,
    ) -> impl Future<Output = sqlx::Result<Transaction<'static, Self::Db>>> + Send;

    /// Why nothing that the database holds is to be trusted, if something was wrong with it when it was opened.
    fn trusted(&self) -> Result<(), StoreError>;

    /// Checks that the pages of the database do not contradict each other.
    fn sound(&self) -> impl Future<Output = Result<(), StoreError>> + Send;

    /// Why nothing can be written, if the database is open for reading only.
    fn may_write(&self) -> Result<(), StoreError>;

    /// See [`Journal::version`].
    fn version(&self) -> Option<Version>;

    /// As [`Journal::kept`], on this thread; `None` where entries cannot be read like that.
    fn kept_on_the_spot(
        &self,
        _holding: &str,
        _after: Option<(u64, Hash)>,
        _limit: u32,
    ) -> Option<Result<Vec<Kept>, NotKept>> {
        None
    }

    /// Checks that the database is still where it was opened, and no other was put in its place.
    fn is_in_place(&self) -> Result<(), StoreError>;

    /// See [`Journal::copy_into`].
    fn copy_into(&self, file: &Path) -> impl Future<Output = Result<bool, StoreError>> + Send;

    /// See [`Journal::weaknesses`].
    fn weaknesses(&self) -> impl Future<Output = Result<Vec<Weakness>, StoreError>> + Send;

    /// Closes every connection, the writing one last.
    fn close(&self) -> impl Future<Output = ()> + Send;

    /// Translates an error of the driver.
    fn explain(&self, error: sqlx::Error) -> StoreError;

    /// Waits for a statement, but not for ever.
    fn ask<T: Send>(
        &self,
        statement: impl Future<Output = sqlx::Result<T>> + Send,
    ) -> impl Future<Output = Result<T, StoreError>> + Send {
        async move {
            let answer = match Self::PATIENCE {
                None => statement.await,
                Some(patience) => {
                    let answer = tokio::time::timeout(patience, statement).await;
                    answer.unwrap_or_else(|late| Err(sqlx::Error::Io(late.into())))
                }
            };
            answer.map_err(|error| self.explain(error))
        }
    }
}

/// The journals in one database.
pub(crate) struct SqlJournal<B> {
    backend: Arc<B>,
}

impl<B: Backend> SqlJournal<B> {
    pub(crate) fn new(backend: B) -> SqlJournal<B> {
        SqlJournal { backend: Arc::new(backend) }
    }

    #[cfg(test)]
    pub(crate) fn backend(&self) -> &B {
        &self.backend
    }

    /// Walks the chain of a holding.
    async fn walk(&self, holding: &HoldingName, since: Option<&Checkpoint>) -> Result<Verified, StoreError> {
        let told = {
            let mut reader = self.reader().await?;
            self.backend.ask(reader.of_kind(holding.as_str(), Kind::Archived)).await?
        };
        let mut walk = match Walk::begin(holding, since, &told) {
            Ok(walk) => walk,
            Err(found) => return Ok(found),
        };
        // From the lowest number, to find a row moved before the first.
        let mut from = i64::MIN;
        loop {
            // As between two contents: here a call can be given up.
            tokio::task::yield_now().await;
            let mut reader = self.reader().await?;
            let rows = self.backend.ask(reader.page(holding.as_str(), from, ROWS_PER_STEP.into())).await?;
            for row in &rows {
                if let Err(found) = walk.step(row) {
                    return Ok(found);
                }
            }
            let next = rows.last().and_then(|row| row.seq.checked_add(1));
            match next {
                Some(next) if rows.len() >= usize::from(ROWS_PER_STEP) => from = next,
                _ => break,
            }
        }
        Ok(walk.end())
    }

    async fn reader(&self) -> Result<PoolConnection<B::Db>, StoreError> {
        self.backend.is_in_place()?;
        self.backend.ask(self.backend.readers().acquire()).await
    }
}

#[async_trait]
impl<B: Backend> Journal for SqlJournal<B> {
    async fn tip(&self, holding: &HoldingName) -> Result<Option<(u64, Hash)>, StoreError> {
        let mut reader = self.reader().await?;
        tip_on(&*self.backend, &mut reader, holding).await
    }

    fn version(&self) -> Result<Option<Version>, StoreError> {
        self.backend.is_in_place()?;
        Ok(self.backend.version())
    }

    async fn begin_write(&self, holding: &HoldingName) -> Result<Box<dyn Writing>, StoreError> {
        let backend = Arc::clone(&self.backend);
        backend.may_write()?;
        backend.is_in_place()?;
        let write = backend.ask(backend.begin_write(Some(holding))).await?;
        Ok(Box::new(SqlWriting { backend, write, holding: holding.clone(), tip: OnceLock::new() }))
    }

    async fn page(
        &self,
        holding: &HoldingName,
        after_seq: u64,
        limit: u32,
    ) -> Result<Vec<Entry>, StoreError> {
        let Some(from) = i64::try_from(after_seq).ok().and_then(|after| after.checked_add(1)) else {
            return Ok(Vec::new());
        };
        let mut reader = self.reader().await?;
        let rows = self.backend.ask(reader.page(holding.as_str(), from, limit.into())).await?;
        rows.iter().map(|row| understand(holding, row)).collect()
    }

    async fn kept(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        limit: u32,
    ) -> Result<Vec<Kept>, StoreError> {
        self.backend.is_in_place()?;
        let on_the_spot = self.backend.kept_on_the_spot(holding.as_str(), after, limit);
        let kept = if let Some(kept) = on_the_spot {
            kept
        } else {
            let mut reader = self.reader().await?;
            self.backend.ask(reader.kept(holding.as_str(), after, limit.into())).await?
        };
        kept.map_err(|why| match why {
            NotKept::Broken(broken) => {
                StoreError::Broken { holding: holding.clone(), broken: Box::new(broken) }
            }
            NotKept::Unreadable(seq, what) => unreadable(holding, seq, what),
        })
    }

    fn trusted(&self) -> Result<(), StoreError> {
        self.backend.trusted()
    }

    async fn is_whole(&self, holding: &HoldingName, last: u64, has_archives: bool) -> Result<(), StoreError> {
        let mut reader = self.reader().await?;
        let by_id = self.backend.ask(reader.count_by_id(holding.as_str())).await?;
        drop(reader);
        let by_id = u64::try_from(by_id).unwrap_or_default();
        // Another process may have added some meanwhile. None is ever taken away.
        if by_id < last || (by_id > last && self.tip(holding).await?.is_none_or(|(seq, _)| seq == last)) {
            return Err(StoreError::Lost { holding: holding.clone(), by_place: last, by_id });
        }
        if !has_archives {
            return Ok(());
        }
        match self.walk(holding, None).await? {
            Verified::Broken(broken) => {
                Err(StoreError::Broken { holding: holding.clone(), broken: Box::new(broken) })
            }
            Verified::Sound { .. } | Verified::Lacking { .. } | Verified::CheckpointMissed(_) => Ok(()),
        }
    }

    async fn entry(&self, holding: &HoldingName, id: EntryId) -> Result<Option<Entry>, StoreError> {
        let mut reader = self.reader().await?;
        let row = self.backend.ask(reader.by_id(holding.as_str(), id.0)).await?;
        row.map(|row| understand(holding, &row)).transpose()
    }

    async fn attached(&self, holding: &HoldingName) -> Result<Vec<Entry>, StoreError> {
        let mut reader = self.reader().await?;
        let rows = self.backend.ask(reader.of_kind(holding.as_str(), Kind::DocumentAttached)).await?;
        rows.iter().map(|row| understand(holding, row)).collect()
    }

    async fn content(&self, holding: &HoldingName, hash: Hash) -> Result<Option<Vec<u8>>, StoreError> {
        let mut reader = self.reader().await?;
        self.backend.ask(reader.content(holding.as_str(), hash)).await
    }

    async fn contents(&self, holding: &HoldingName) -> Result<Vec<(Hash, u64)>, StoreError> {
        let mut reader = self.reader().await?;
        let kept = self.backend.ask(reader.contents(holding.as_str())).await?;
        // A hash of another length cannot come from this program, so it is skipped.
        let kept = kept.iter().filter_map(|(hash, bytes)| {
            Some((row::hash("hash", hash).ok()?, u64::try_from(*bytes).unwrap_or_default()))
        });
        Ok(kept.collect())
    }

    async fn holdings(&self) -> Result<Vec<HoldingName>, StoreError> {
        let mut reader = self.reader().await?;
        let names = self.backend.ask(reader.holdings()).await?;
        let name = |text: &String| HoldingName::new(text).map_err(StoreError::UnreadableName);
        let mut names = names.iter().map(name).collect::<Result<Vec<_>, _>>()?;
        // Databases sort text differently.
        names.sort();
        Ok(names)
    }

    async fn verify(
        &self,
        holding: &HoldingName,
        since: Option<&Checkpoint>,
    ) -> Result<Verified, StoreError> {
        let found = self.walk(holding, since).await?;
        // An entry that was changed is named first.
        if let Verified::Sound { entries, .. } = &found {
            self.is_whole(holding, *entries, false).await?;
            self.backend.trusted()?;
            self.backend.sound().await?;
        }
        match found {
            Verified::Sound { entries, head } => {
                let documents = documents::faults(self, holding).await?;
                Ok(match documents.as_slice() {
                    [] => Verified::Sound { entries, head },
                    _ => Verified::Lacking { entries, head, documents },
                })
            }
            found => Ok(found),
        }
    }

    async fn add_key(&self, key: &Key, secret: Hash) -> Result<(), StoreError> {
        self.backend.trusted()?;
        self.backend.may_write()?;
        self.backend.is_in_place()?;
        let mut write = self.backend.ask(self.backend.begin_write(None)).await?;
        self.backend.ask(write.add_key(key, secret)).await?;
        self.backend.ask(write.commit()).await
    }

    async fn keys(&self) -> Result<Vec<Key>, StoreError> {
        self.backend.trusted()?;
        let mut reader = self.reader().await?;
        let rows = self.backend.ask(reader.keys()).await?;
        rows.iter().map(|row| Ok(understand_key(row)?.0)).collect()
    }

    async fn key(&self, id: KeyId) -> Result<Option<(Key, Hash)>, StoreError> {
        self.backend.trusted()?;
        let mut reader = self.reader().await?;
        let row = self.backend.ask(reader.key(id)).await?;
        row.as_ref().map(understand_key).transpose()
    }

    async fn end_key(&self, id: KeyId, at: Instant) -> Result<bool, StoreError> {
        self.backend.may_write()?;
        self.backend.is_in_place()?;
        let mut write = self.backend.ask(self.backend.begin_write(None)).await?;
        let ended = self.backend.ask(write.end_key(id, at)).await?;
        self.backend.ask(write.commit()).await?;
        Ok(ended == 1)
    }

    async fn copy_into(&self, file: &Path) -> Result<bool, StoreError> {
        self.backend.is_in_place()?;
        self.backend.copy_into(file).await
    }

    async fn weaknesses(&self) -> Result<Vec<Weakness>, StoreError> {
        self.backend.weaknesses().await
    }

    async fn ready(&self) -> Result<(), StoreError> {
        self.backend.trusted()?;
        let mut reader = self.reader().await?;
        self.backend.ask(reader.probe()).await?;
        Ok(())
    }

    async fn close(&self) {
        self.backend.close().await;
    }
}

/// A write that has begun.
struct SqlWriting<B: Backend> {
    backend: Arc<B>,
    write: Transaction<'static, B::Db>,
    holding: HoldingName,
    /// The last entry, once it was looked up: nobody else adds one meanwhile.
    tip: OnceLock<Option<(u64, Hash)>>,
}

impl<B: Backend> SqlWriting<B> {
    /// Checks that this is still the last entry.
    async fn is_next_after(&mut self, after: Option<(u64, Hash)>) -> Result<(), AppendError> {
        let now = Writing::tip(self).await?;
        if now == after { Ok(()) } else { Err(AppendError::TipMoved { now }) }
    }

    async fn commit(self: Box<Self>) -> Result<(), AppendError> {
        let SqlWriting { backend, write, .. } = *self;
        backend.ask(write.commit()).await?;
        // What went into a file that is gone from its place is lost when this program ends.
        backend.is_in_place()?;
        Ok(())
    }
}

#[async_trait]
impl<B: Backend> Writing for SqlWriting<B> {
    async fn tip(&mut self) -> Result<Option<(u64, Hash)>, StoreError> {
        if let Some(tip) = self.tip.get() {
            return Ok(*tip);
        }
        let tip = tip_on(&*self.backend, &mut self.write, &self.holding).await?;
        Ok(*self.tip.get_or_init(|| tip))
    }

    async fn append(
        mut self: Box<Self>,
        after: Option<(u64, Hash)>,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<(), AppendError> {
        self.is_next_after(after).await?;
        // Every exit but the last line drops the transaction, which rolls it back.
        let SqlWriting { backend, write, holding, .. } = &mut *self;
        let holding = &*holding;
        let vouched = vouched_for(holding, entries).map_err(AppendError::NotSealed)?;
        let mut tip = after;
        for entry in entries {
            entry.follows(holding, tip).map_err(AppendError::NotSealed)?;
            says_what_it_means(entry).map_err(AppendError::NotSealed)?;
            if let Some(archived_by) = vouched.get(&entry.seq) {
                let seq = i64::try_from(entry.seq).unwrap_or(i64::MAX);
                backend.ask(write.note_moved(holding.as_str(), seq, archived_by.0)).await?;
            }
            tip = Some(entry.tip());
        }
        for rows in in_few_statements(entries) {
            let added = backend.ask(write.insert(holding.as_str(), rows)).await;
            if added == Ok(u64::try_from(rows.len()).unwrap_or(u64::MAX)) {
                continue;
            }
            // Of several rows the database does not say which it did not take.
            let taken = first_taken(&**backend, holding, entries).await.ok().flatten();
            return Err(match (taken, added) {
                (Some(id), _) => AppendError::DuplicateId { id },
                (None, Err(why)) => why.into(),
                (None, Ok(_)) => AppendError::TipMoved { now: after },
            });
        }
        for content in contents {
            backend.ask(write.keep(holding.as_str(), content)).await?;
        }
        self.commit().await
    }

    async fn archive(
        mut self: Box<Self>,
        after: Option<(u64, Hash)>,
        entry: &Entry,
        contents: &[Hash],
    ) -> Result<(), AppendError> {
        let misfit =
            |seq: u64, what: Misfit| AppendError::NotSealed(Broken { seq, id: entry.draft.id, what });
        self.is_next_after(after).await?;
        // Every way out of here but the last line drops the transaction, which takes back what was written.
        let SqlWriting { backend, write, holding, .. } = &mut *self;
        let holding = &*holding;
        entry.follows(holding, after).map_err(AppendError::NotSealed)?;
        says_what_it_means(entry).map_err(AppendError::NotSealed)?;
        let Event::Archived(body) = &entry.draft.event else {
            return Err(misfit(entry.seq, Misfit::MovesNothing));
        };
        if u64::try_from(contents.len()) != Ok(body.contents) {
            return Err(misfit(entry.seq, Misfit::ContentsDiffer));
        }
        if backend.ask(write.insert(holding.as_str(), std::slice::from_ref(entry))).await? == 0 {
            return Err(AppendError::DuplicateId { id: entry.draft.id });
        }
        let mut archives = Archives::default();
        for place in body.places.iter() {
            let seq = i64::try_from(place).unwrap_or(i64::MAX);
            let found = backend.ask(write.page(holding.as_str(), seq, 1)).await?;
            let row = found.first().filter(|row| row.seq == seq && place < entry.seq);
            let Some(row) = row else {
                return Err(misfit(entry.seq, Misfit::NothingToMove { seq: place }));
            };
            let whole = whole(holding, row).map_err(|what| misfit(place, what))?;
            backend.ask(write.note_moved(holding.as_str(), seq, entry.draft.id.0)).await?;
            if backend.ask(write.take_body(holding.as_str(), seq)).await? != 1 {
                return Err(misfit(place, Misfit::WentBefore));
            }
            archives.without_body(Rest::of(holding, &whole));
        }
        archives.archived(entry.seq, entry.draft.id, body).map_err(AppendError::NotSealed)?;
        for hash in contents {
            let taken = write.take_content(holding.as_str(), *hash, entry.draft.id.0);
            if backend.ask(taken).await? != 1 {
                return Err(misfit(entry.seq, Misfit::NoDocument { hash: *hash }));
            }
        }
        self.commit().await
    }
}

/// The last place and hash, on a connection that may be inside a write.
async fn tip_on<B: Backend>(
    backend: &B,
    connection: &mut <B::Db as Database>::Connection,
    holding: &HoldingName,
) -> Result<Option<(u64, Hash)>, StoreError> {
    let tip = backend.ask(connection.tip(holding.as_str())).await?;
    let Some((seq, hash)) = tip else { return Ok(None) };
    let seq = u64::try_from(seq).unwrap_or(0);
    let hash = row::hash("hash", &hash).map_err(|what| unreadable(holding, seq, what))?;
    Ok(Some((seq, hash)))
}

/// Rows for one statement each: 64, 16, 4 or 1, so that few statements have to be prepared.
fn in_few_statements(mut entries: &[Entry]) -> impl Iterator<Item = &[Entry]> {
    std::iter::from_fn(move || {
        let count = [64, 16, 4, 1].into_iter().find(|count| *count <= entries.len())?;
        let (now, later) = entries.split_at_checked(count)?;
        entries = later;
        Some(now)
    })
}

/// The id of the first of these that is taken: in the journal, or by one before it among them.
async fn first_taken<B: Backend>(
    backend: &B,
    holding: &HoldingName,
    entries: &[Entry],
) -> Result<Option<EntryId>, StoreError> {
    let mut reader = backend.readers().acquire().await.map_err(|error| backend.explain(error))?;
    let mut among = HashSet::new();
    for id in entries.iter().map(|entry| entry.draft.id) {
        if !among.insert(id) || backend.ask(reader.by_id(holding.as_str(), id.0)).await?.is_some() {
            return Ok(Some(id));
        }
    }
    Ok(None)
}

/// The entries without bodies, each with the id of the entry that names its archive. Both must be imported together.
fn vouched_for(holding: &HoldingName, entries: &[Entry]) -> Result<HashMap<u64, EntryId>, Broken> {
    let mut archives = Archives::default();
    let mut vouched = HashMap::new();
    for entry in entries {
        if entry.is_in_archive() {
            archives.without_body(Rest::of(holding, entry));
        }
        if let Event::Archived(body) = &entry.draft.event {
            archives.archived(entry.seq, entry.draft.id, body)?;
            vouched.extend(body.places.iter().map(|place| (place, entry.draft.id)));
        }
    }
    archives.end()?;
    Ok(vouched)
}

/// The entry of a row whose body is there and gives its hash. What was changed must not be moved: it would look as if it
/// had been recorded so.
fn whole(holding: &HoldingName, row: &Row) -> Result<Entry, Misfit> {
    let entry = row.entry()?;
    if entry.is_in_archive() {
        return Err(Misfit::WentBefore);
    }
    if hash_of(holding, &entry) != entry.hash {
        return Err(Misfit::Changed);
    }
    Ok(entry)
}

/// Refuses a body that does not read back. Nothing is ever deleted, so it would block the whole journal for good.
fn says_what_it_means(entry: &Entry) -> Result<(), Broken> {
    let draft = &entry.draft;
    if entry.is_in_archive() && draft.body.is_empty() {
        return Ok(());
    }
    match Event::read(draft.kind(), &draft.body) {
        Ok(event) if event == draft.event => Ok(()),
        _ => Err(Broken { seq: entry.seq, id: draft.id, what: Misfit::OtherMeaning }),
    }
}

fn understand(holding: &HoldingName, row: &Row) -> Result<Entry, StoreError> {
    row.entry().map_err(|what| unreadable(holding, row.place(), what))
}

fn understand_key(row: &KeyRow) -> Result<(Key, Hash), StoreError> {
    key_row::understand(row)
        .map_err(|what| StoreError::UnreadableKey { id: row.0.clone(), what: Box::new(what) })
}

fn unreadable(holding: &HoldingName, seq: u64, what: Misfit) -> StoreError {
    StoreError::Unreadable { holding: holding.clone(), seq, what }
}
