//! The interface of the store.

use std::path::Path;

use async_trait::async_trait;
use combclear_domain::basics::calendar::Instant;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::key::{Key, KeyId};
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Content, Entry, EntryId, Hash, Kept};

use combclear_domain::journal::keeping::{DocumentFault, Missed, StoreError};

/// The journals of all holdings in one database.
#[async_trait]
pub trait Journal: Send + Sync {
    /// The place and hash of the last entry; `None` if the holding has no entries.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn tip(&self, holding: &HoldingName) -> Result<Option<(u64, Hash)>, StoreError>;

    /// What is another whenever anything was committed to the database in between, by whomever; asked without waiting. `None` if this
    /// kind of database does not tell: then only the last place says whether a journal has gone on.
    ///
    /// # Errors
    /// [`StoreError::Replaced`].
    fn version(&self) -> Result<Option<Version>, StoreError> {
        Ok(None)
    }

    /// Begins a write to a holding: no other writer gets in until it is done or dropped. Waits for one that is at work, so take it
    /// before any lock that readers need.
    ///
    /// # Errors
    /// [`StoreError`]; [`StoreError::Locked`] if another writer takes too long.
    async fn begin_write(&self, holding: &HoldingName) -> Result<Box<dyn Writing>, StoreError>;

    /// Begins a write and appends: see [`Writing::append`].
    ///
    /// # Errors
    /// As there.
    async fn append(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<(), AppendError> {
        self.begin_write(holding).await?.append(after, entries, contents).await
    }

    /// Begins a write and archives: see [`Writing::archive`].
    ///
    /// # Errors
    /// As there.
    async fn archive(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        entry: &Entry,
        contents: &[Hash],
    ) -> Result<(), AppendError> {
        self.begin_write(holding).await?.archive(after, entry, contents).await
    }

    /// Up to `limit` entries after place `after_seq`, in order. 0 starts with the first.
    ///
    /// # Errors
    /// [`StoreError`]; [`StoreError::Unreadable`] names a row that cannot be read.
    async fn page(&self, holding: &HoldingName, after_seq: u64, limit: u32)
    -> Result<Vec<Entry>, StoreError>;

    /// Entries after this one, in order, as the fold takes them in. `None` starts with the first. Each is as it was sealed and
    /// follows the one before it. Many of them are to be asked for on a thread that may be kept busy.
    ///
    /// # Errors
    /// As [`Journal::page`], and [`StoreError::Broken`] for the first that does not follow.
    async fn kept(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        limit: u32,
    ) -> Result<Vec<Kept>, StoreError>;

    /// Whether the database was in order when it was opened: its tables, what guards them, its pages. Verification and export work
    /// without; answers and new entries do not.
    ///
    /// # Errors
    /// [`StoreError::Guards`] or [`StoreError::Damaged`].
    fn trusted(&self) -> Result<(), StoreError>;

    /// Checks that a journal read up to its end, and that has this last place, is whole: no entry is lost from one of the orders in
    /// which the database keeps it, and what was moved into archives is as the journal says.
    ///
    /// # Errors
    /// [`StoreError::Lost`] or [`StoreError::Broken`].
    async fn is_whole(&self, holding: &HoldingName, last: u64, has_archives: bool) -> Result<(), StoreError>;

    /// The entry with this id, if the holding has it.
    ///
    /// # Errors
    /// As [`Journal::page`].
    async fn entry(&self, holding: &HoldingName, id: EntryId) -> Result<Option<Entry>, StoreError>;

    /// The entries that attach documents, in order, including those corrected or struck out later.
    ///
    /// # Errors
    /// As [`Journal::page`].
    async fn attached(&self, holding: &HoldingName) -> Result<Vec<Entry>, StoreError>;

    /// The bytes stored under the hash of a document. They are not checked against the hash.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn content(&self, holding: &HoldingName, hash: Hash) -> Result<Option<Vec<u8>>, StoreError>;

    /// The hashes of stored contents, in order, each with its size in bytes.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn contents(&self, holding: &HoldingName) -> Result<Vec<(Hash, u64)>, StoreError>;

    /// The holdings that have entries, by name.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn holdings(&self) -> Result<Vec<HoldingName>, StoreError>;

    /// Walks the whole chain of a holding and names the first entry that breaks it; then every missing or altered document.
    ///
    /// It reads raw rows rather than parsed entries, so it also names an entry that became unreadable. Only a checkpoint
    /// kept elsewhere can show that the end was cut off or that the chain was rebuilt from some point on.
    ///
    /// # Errors
    /// [`StoreError`] if the database cannot be read. A broken chain is an answer, not an error.
    async fn verify(&self, holding: &HoldingName, since: Option<&Checkpoint>)
    -> Result<Verified, StoreError>;

    /// Keeps a new key, of which only the hash of the secret is known here.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn add_key(&self, key: &Key, secret: Hash) -> Result<(), StoreError>;

    /// Every key, in the order of their ids; those that ended too.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn keys(&self) -> Result<Vec<Key>, StoreError>;

    /// The key with this id, and the hash of its secret.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn key(&self, id: KeyId) -> Result<Option<(Key, Hash)>, StoreError>;

    /// Ends a key at this time. Returns whether it was ended now: false if there is none with this id, or if it ended before.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn end_key(&self, id: KeyId, at: Instant) -> Result<bool, StoreError>;

    /// Writes a copy of the whole database, as it is at one moment, into a new file that opens as `sqlite:FILE`. Others may go on
    /// writing meanwhile. False if this kind of database makes no such file: its holdings are then read one by one.
    ///
    /// # Errors
    /// [`StoreError`]. Something may be in the file then.
    async fn copy_into(&self, file: &Path) -> Result<bool, StoreError> {
        let _ = file;
        Ok(false)
    }

    /// What would lose entries that were acknowledged, or refuse what this program needs.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn weaknesses(&self) -> Result<Vec<Weakness>, StoreError> {
        Ok(Vec::new())
    }

    /// Checks that the database answers, and that it is trusted.
    ///
    /// # Errors
    /// [`StoreError`] if it does not.
    async fn ready(&self) -> Result<(), StoreError>;

    /// Closes the database and waits until everything is written to its main file. Later calls fail.
    ///
    /// Nothing is lost without it, but a copy of the file alone may lack what is still in the write-ahead log.
    async fn close(&self);
}

/// What is weak about a database, although it works today.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Weakness {
    /// A setting of its server is off, so that a crash can lose what was acknowledged.
    SettingOff {
        /// Its name.
        setting: String,
    },
    /// The user of the address lacks a right.
    NoRight {
        /// The right, as `insert`.
        right: String,
        /// The table.
        table: String,
    },
}

/// A state of a database, told from others of the same one as long as it is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Version(pub i64);

/// A write to one holding that has begun. If it is dropped, nothing was written.
#[async_trait]
pub trait Writing: Send {
    /// The place and hash of the last entry. It stays the last until this write ends.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn tip(&mut self) -> Result<Option<(u64, Hash)>, StoreError>;

    /// Adds entries sealed after `after`, and contents of documents: all or none. Contents already stored are skipped. An
    /// entry without a body must come together with the entry that names its archive.
    ///
    /// # Errors
    /// Checked in this order: whether `after` is still the last entry; then, entry by entry, the chain and whether the id is
    /// new.
    async fn append(
        self: Box<Self>,
        after: Option<(u64, Hash)>,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<(), AppendError>;

    /// Adds an entry that moves others into an archive, sealed after `after`, and removes the bodies of the places it names
    /// and these contents: all or nothing. Everything else of an entry stays unchanged.
    ///
    /// The caller must first make sure that the bodies are safe in a file.
    ///
    /// # Errors
    /// As [`Writing::append`]. Also [`AppendError::NotSealed`] for a place that does not exist, was archived before or does
    /// not match the entry, and for a content that is not stored.
    async fn archive(
        self: Box<Self>,
        after: Option<(u64, Hash)>,
        entry: &Entry,
        contents: &[Hash],
    ) -> Result<(), AppendError>;
}

/// Why entries were not added. None of the batch was.
#[derive(Debug, thiserror::Error)]
pub enum AppendError {
    /// Another entry was added meanwhile. Read it, seal again, retry.
    #[error("the journal has moved on: {}", last(*.now))]
    TipMoved {
        /// The last place and hash now.
        now: Option<(u64, Hash)>,
    },
    /// An entry with this id is already recorded, or is twice in the batch.
    #[error("an entry with the id {id} is already in the journal")]
    DuplicateId {
        /// The id.
        id: EntryId,
    },
    /// An entry does not follow the previous one, or its body does not match its event.
    #[error(transparent)]
    NotSealed(Broken),
    /// The database.
    #[error(transparent)]
    Store(#[from] StoreError),
}

fn last(tip: Option<(u64, Hash)>) -> String {
    tip.map_or_else(|| "it has no entries".to_owned(), |(seq, _)| format!("its last entry is {seq}"))
}

/// The result of a walk over a journal.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verified {
    /// Every entry is as sealed and in its place.
    Sound {
        /// Number of entries.
        entries: u64,
        /// The hash of the last.
        head: Option<Hash>,
    },
    /// Every entry is as sealed, but not every document is as attached.
    Lacking {
        /// Number of entries.
        entries: u64,
        /// The hash of the last.
        head: Option<Hash>,
        /// The missing or altered documents, in the order of their entries; at least one.
        documents: Vec<DocumentFault>,
    },
    /// The first entry that breaks the chain.
    Broken(Broken),
    /// The chain is sound, but does not match the checkpoint.
    CheckpointMissed(Missed),
}
