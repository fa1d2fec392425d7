//! The documents of a holding: which entry attaches each, and whether the stored content is the one attached.

use std::collections::{HashMap, HashSet};
use std::sync::{Arc, Mutex, PoisonError};

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::event::DocumentAttached;
use combclear_domain::journal::{Content, Entry, Event, Hash};

use crate::journal::Journal;
use combclear_domain::journal::keeping::{ContentState, DocumentFault, StoreError};

/// An entry that attaches a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attached {
    /// The entry.
    pub entry: Entry,
    /// The body of the entry.
    pub document: Arc<DocumentAttached>,
    /// Whether the content is stored.
    pub state: ContentState,
}

impl Attached {
    /// The fault of the document, if it is missing or altered.
    #[must_use]
    pub fn fault(&self) -> Option<DocumentFault> {
        (self.state != ContentState::Kept).then(|| DocumentFault {
            content: self.document.content,
            seq: self.entry.seq,
            id: self.entry.draft.id,
            lot: self.document.lot.clone(),
            prescription: self.document.prescription.clone(),
            state: self.state,
        })
    }
}

/// Every entry that attaches a document, in order, also those that were corrected or struck out since. Each content is
/// read and its hash worked out, one at a time.
///
/// # Errors
/// [`StoreError`].
pub async fn documents<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
) -> Result<Vec<Attached>, StoreError> {
    documents_seen(journal, holding, &Seen::default()).await
}

/// The same, where a content that was read before and found as attached is only looked up: whether it is stored, and how long it is.
pub(crate) async fn documents_seen<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
    seen: &Seen,
) -> Result<Vec<Attached>, StoreError> {
    let entries = journal.attached(holding).await?;
    if entries.is_empty() {
        return Ok(Vec::new());
    }
    let lengths: HashMap<Hash, u64> = journal.contents(holding).await?.into_iter().collect();
    // Several lots may share one content, as with an invoice. One that does not fit is read again the next time.
    let mut fits: HashMap<Hash, bool> = HashMap::new();
    let mut found = Vec::with_capacity(entries.len());
    for entry in entries {
        let Event::DocumentAttached(document) = &entry.draft.event else { continue };
        let document = document.clone();
        let hash = document.content;
        let state = match lengths.get(&hash) {
            None => ContentState::Missing,
            Some(length) if *length != u64::from(document.bytes) => ContentState::Altered,
            Some(_) if seen.has(holding, hash) => ContentState::Kept,
            Some(_) => {
                let fit = if let Some(fit) = fits.get(&hash) {
                    *fit
                } else {
                    let fit = content_of(journal, holding, hash).await?.is_ok();
                    fits.insert(hash, fit);
                    if fit {
                        seen.add(holding, hash);
                    }
                    fit
                };
                if fit { ContentState::Kept } else { ContentState::Altered }
            }
        };
        found.push(Attached { entry, document, state });
    }
    Ok(found)
}

/// Contents that this process has read and found as they were attached.
///
/// Triggers refuse every change of a content, and this program makes none. So only a change of the file from outside is missed,
/// and only if it leaves the length as it was and comes after the content was read: until the process starts again, gaps count
/// such a document as kept. Verification, the list of documents, the pack and a download read the bytes each time.
#[derive(Debug, Default)]
pub(crate) struct Seen(Mutex<HashMap<HoldingName, HashSet<Hash>>>);

/// The most contents that are remembered, some 5 MB. One more, and all are forgotten.
const SEEN_MOST: usize = 100_000;

impl Seen {
    fn has(&self, holding: &HoldingName, hash: Hash) -> bool {
        let seen = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        seen.get(holding).is_some_and(|seen| seen.contains(&hash))
    }

    fn add(&self, holding: &HoldingName, hash: Hash) {
        let mut seen = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if seen.values().map(HashSet::len).sum::<usize>() >= SEEN_MOST {
            seen.clear();
        }
        seen.entry(holding.clone()).or_default().insert(hash);
    }
}

/// The contents of these hashes, each once and in this order; and those that are missing or altered, with their state.
///
/// # Errors
/// [`StoreError`].
pub async fn contents_of<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
    wanted: &[Hash],
) -> Result<(Vec<Content>, Vec<(Hash, ContentState)>), StoreError> {
    let (mut contents, mut failing) = (Vec::new(), Vec::new());
    let mut looked_at = HashSet::new();
    for hash in wanted.iter().copied().filter(|hash| looked_at.insert(*hash)) {
        match content_of(journal, holding, hash).await? {
            Ok(content) => contents.push(content),
            Err(state) => failing.push((hash, state)),
        }
    }
    Ok((contents, failing))
}

/// The content of this hash; or its state, if it is missing or altered.
///
/// # Errors
/// [`StoreError`].
pub async fn content_of<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
    hash: Hash,
) -> Result<Result<Content, ContentState>, StoreError> {
    // A database that answers at once never waits, and only where a call waits can it be given up.
    tokio::task::yield_now().await;
    Ok(match journal.content(holding, hash).await?.map(Content::new) {
        Some(content) if content.hash() == hash => Ok(content),
        Some(_) => Err(ContentState::Altered),
        None => Err(ContentState::Missing),
    })
}

/// The missing and altered documents.
pub(crate) async fn faults<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
) -> Result<Vec<DocumentFault>, StoreError> {
    Ok(documents(journal, holding).await?.iter().filter_map(Attached::fault).collect())
}
