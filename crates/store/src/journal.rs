//! What the rest of the program sees of the store.

use async_trait::async_trait;
use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::seal::Broken;
use combclear_domain::journal::{Checkpoint, Content, Entry, EntryId, Hash};

use combclear_domain::journal::keeping::{DocumentFault, Missed, StoreError};

/// The journals of all holdings in one database.
#[async_trait]
pub trait Journal: Send + Sync {
    /// The place and hash of the last entry; none if the holding has no entries.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn tip(&self, holding: &HoldingName) -> Result<Option<(u64, Hash)>, StoreError>;

    /// Adds entries that were sealed after `after`, and contents of documents: all of them, or none if anything is wrong
    /// with one. A content that is kept already is passed over. An entry without body goes in only together with the entry
    /// that says in which archive it is.
    ///
    /// # Errors
    /// What is checked first is reported first: whether `after` is still the last entry, then entry by entry whether
    /// it is sealed into the chain and whether its id is new.
    async fn append(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        entries: &[Entry],
        contents: &[Content],
    ) -> Result<(), AppendError>;

    /// Adds an entry that moves others into an archive, sealed after `after`, and takes away the bodies of the places it
    /// names, and these contents: all of it, or none. What stays of an entry is never changed.
    ///
    /// That the bodies are safe in a file is for the caller to see to before this.
    ///
    /// # Errors
    /// As [`Journal::append`]; [`AppendError::NotSealed`] also for a place that is not there, went before, or is not as
    /// the entry says, and for a content that is not there.
    async fn archive(
        &self,
        holding: &HoldingName,
        after: Option<(u64, Hash)>,
        entry: &Entry,
        contents: &[Hash],
    ) -> Result<(), AppendError>;

    /// Up to `limit` entries that stand after place `after_seq`, in order. Place 0 stands before the first.
    ///
    /// # Errors
    /// [`StoreError`]; [`StoreError::Unreadable`] names a row that cannot be understood.
    async fn page(&self, holding: &HoldingName, after_seq: u64, limit: u32)
    -> Result<Vec<Entry>, StoreError>;

    /// The entry with this id, if the holding has it.
    ///
    /// # Errors
    /// As [`Journal::page`].
    async fn entry(&self, holding: &HoldingName, id: EntryId) -> Result<Option<Entry>, StoreError>;

    /// The entries that attach documents, in order; also those that were corrected or struck out since.
    ///
    /// # Errors
    /// As [`Journal::page`].
    async fn attached(&self, holding: &HoldingName) -> Result<Vec<Entry>, StoreError>;

    /// What is kept under the hash of a document. Whether it is what was attached shows in its own hash only.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn content(&self, holding: &HoldingName, hash: Hash) -> Result<Option<Vec<u8>>, StoreError>;

    /// The hashes under which something is kept, in order, each with how many bytes it has.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn contents(&self, holding: &HoldingName) -> Result<Vec<(Hash, u64)>, StoreError>;

    /// The holdings that have entries, by name.
    ///
    /// # Errors
    /// [`StoreError`].
    async fn holdings(&self) -> Result<Vec<HoldingName>, StoreError>;

    /// Walks the whole chain of a holding and names the first thing that does not fit; then every document whose content
    /// is missing or altered.
    ///
    /// It reads what is kept, not what is understood, so an entry that was made unreadable is named too. Only a
    /// checkpoint kept elsewhere shows that the end was cut off or that the chain was made anew from some point on.
    ///
    /// # Errors
    /// [`StoreError`] if the database cannot be read. A broken chain is an answer, not an error.
    async fn verify(&self, holding: &HoldingName, since: Option<&Checkpoint>)
    -> Result<Verified, StoreError>;

    /// Says whether the database answers.
    ///
    /// # Errors
    /// [`StoreError`] if it does not.
    async fn ready(&self) -> Result<(), StoreError>;

    /// Lets go of the database, and waits until everything written stands in its own file. What is asked after that fails.
    ///
    /// Without it nothing is lost, but a copy of the file alone may miss what still stands in the log beside it.
    async fn close(&self);
}

/// Why entries were not added. None of the batch was.
#[derive(Debug, thiserror::Error)]
pub enum AppendError {
    /// Something else was added meanwhile. Read it, seal anew, try again.
    #[error("the journal has moved on: {}", last(*.now))]
    TipMoved {
        /// The last place and hash now.
        now: Option<(u64, Hash)>,
    },
    /// An entry with this id is there already, or stands twice in the batch.
    #[error("an entry with the id {id} is already in the journal")]
    DuplicateId {
        /// The id.
        id: EntryId,
    },
    /// An entry that is not sealed after the one before it, or whose body does not say what the entry says.
    #[error(transparent)]
    NotSealed(Broken),
    /// The database.
    #[error(transparent)]
    Store(#[from] StoreError),
}

fn last(tip: Option<(u64, Hash)>) -> String {
    tip.map_or_else(|| "it has no entries".to_owned(), |(seq, _)| format!("its last entry is {seq}"))
}

/// What a walk over a journal found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Verified {
    /// Every entry is what was sealed, in its place.
    Sound {
        /// How many entries.
        entries: u64,
        /// The hash of the last.
        head: Option<Hash>,
    },
    /// Every entry is what was sealed, but not every document is what was attached.
    Lacking {
        /// How many entries.
        entries: u64,
        /// The hash of the last.
        head: Option<Hash>,
        /// The documents that are missing or altered, in the order of their entries. One at least.
        documents: Vec<DocumentFault>,
    },
    /// The first entry that does not fit.
    Broken(Broken),
    /// The chain holds up to there, but it is not the one that the checkpoint was taken of.
    CheckpointMissed(Missed),
}
