//! The documents of a holding: which entry attaches them, and whether what is kept is what was attached.

use std::collections::{HashMap, HashSet};
use std::sync::Arc;

use combclear_domain::basics::words::{HoldingName, LotName, PrescriptionName};
use combclear_domain::journal::event::DocumentAttached;
use combclear_domain::journal::{Content, Entry, EntryId, Event, Hash};

use serde::Serialize;

use crate::error::StoreError;
use crate::journal::Journal;

/// Whether the content of a document is kept.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum ContentState {
    /// It is, as it was attached.
    Kept,
    /// Nothing is kept under its hash. The entry came in without it, or it was taken away.
    Missing,
    /// Something else is kept in its place.
    Altered,
}

impl ContentState {
    /// The state in a word.
    #[must_use]
    pub fn as_str(self) -> &'static str {
        match self {
            ContentState::Kept => "kept",
            ContentState::Missing => "missing",
            ContentState::Altered => "altered",
        }
    }
}

/// An entry that attaches a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Attached {
    /// The entry.
    pub entry: Entry,
    /// What it says of the document.
    pub document: Arc<DocumentAttached>,
    /// Whether the content is kept.
    pub state: ContentState,
}

impl Attached {
    /// What is wrong with the document, if something is.
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

/// A document that is missing or altered.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, thiserror::Error)]
#[error("document `{content}` {} (entry {seq}, {id}) {}", self.of(), self.what())]
pub struct DocumentFault {
    /// Its hash.
    pub content: Hash,
    /// The place of the entry that attaches it.
    pub seq: u64,
    /// The id of that entry.
    pub id: EntryId,
    /// The lot whose purchase it proves.
    pub lot: Option<LotName>,
    /// The prescription that it is a copy of.
    pub prescription: Option<PrescriptionName>,
    /// Missing or altered.
    pub state: ContentState,
}

impl DocumentFault {
    fn of(&self) -> String {
        match (&self.lot, &self.prescription) {
            (Some(lot), _) => format!("of lot `{lot}`"),
            (None, Some(prescription)) => format!("of prescription `{prescription}`"),
            (None, None) => "of nothing".to_owned(),
        }
    }

    fn what(&self) -> &'static str {
        match self.state {
            ContentState::Kept => "is kept",
            ContentState::Missing => "is missing: nothing is kept under its hash",
            ContentState::Altered => "is altered: what is kept is not what was attached",
        }
    }

    /// How to mend it.
    #[must_use]
    pub fn help(&self) -> &'static str {
        match self.state {
            ContentState::Kept | ContentState::Missing => {
                "attach the same file again, or import an export that has it"
            }
            ContentState::Altered => {
                "import an export from before the change into a new database (--db), and work on with that one"
            }
        }
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
    let entries = journal.attached(holding).await?;
    if entries.is_empty() {
        return Ok(Vec::new());
    }
    let lengths: HashMap<Hash, u64> = journal.contents(holding).await?.into_iter().collect();
    // One content may be attached to several lots: an invoice often is.
    let mut fits: HashMap<Hash, bool> = HashMap::new();
    let mut found = Vec::with_capacity(entries.len());
    for entry in entries {
        let Event::DocumentAttached(document) = &entry.draft.event else { continue };
        let document = document.clone();
        let hash = document.content;
        let state = match lengths.get(&hash) {
            None => ContentState::Missing,
            Some(length) if *length != u64::from(document.bytes) => ContentState::Altered,
            Some(_) => {
                let fit = if let Some(fit) = fits.get(&hash) {
                    *fit
                } else {
                    let bytes = journal.content(holding, hash).await?;
                    let fit = bytes.is_some_and(|bytes| Hash::of_content(&bytes) == hash);
                    fits.insert(hash, fit);
                    fit
                };
                if fit { ContentState::Kept } else { ContentState::Altered }
            }
        };
        found.push(Attached { entry, document, state });
    }
    Ok(found)
}

/// The contents of these hashes, each once, in their order; and those that cannot be given, each with its state.
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
        match journal.content(holding, hash).await?.map(Content::new) {
            Some(content) if content.hash() == hash => contents.push(content),
            Some(_) => failing.push((hash, ContentState::Altered)),
            None => failing.push((hash, ContentState::Missing)),
        }
    }
    Ok((contents, failing))
}

/// The documents that are missing or altered.
pub(crate) async fn faults<J: Journal + ?Sized>(
    journal: &J,
    holding: &HoldingName,
) -> Result<Vec<DocumentFault>, StoreError> {
    Ok(documents(journal, holding).await?.iter().filter_map(Attached::fault).collect())
}
