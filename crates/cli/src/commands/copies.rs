//! Copies of a whole database: holdings and keys carried from one to another, verified, and compared with where they come from.

use std::path::Path;
use std::sync::Arc;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::places::Places;
use combclear_domain::journal::{Checkpoint, Content, Entry, Event};
use combclear_store::{DocumentFault, Holdings, Journal, RecordError, StoreError, Verified};
use combclear_wording::refusals::Refused;
use combclear_wording::terminal::{care as say, failures, verify};
use combclear_wording::{Label, Words, keeping};
use serde::Serialize;

use super::output::{folder_of, name_on_disk};
use super::{print, print_json, seen};
use crate::Outcome;
use crate::failure::{Failure, not_recorded};
use crate::layout::tell;

/// Entries read at a time.
const PAGE: u32 = 5_000;

/// Bytes of documents in memory at a time, or one document.
const DOCUMENTS: usize = 32 * 1024 * 1024;

/// A copy, and what is in it.
#[derive(Serialize)]
pub(crate) struct Copied {
    pub(crate) file: String,
    /// The size of the file.
    pub(crate) bytes: u64,
    pub(crate) keys: usize,
    pub(crate) holdings: Vec<CopiedHolding>,
}

/// A holding in a copy.
#[derive(Serialize)]
pub(crate) struct CopiedHolding {
    holding: HoldingName,
    entries: u64,
    /// The hash of the last entry.
    head: String,
    /// Documents that are kept.
    documents: usize,
    /// Documents that are missing or altered, as they were before they were copied.
    lacking: Vec<DocumentFault>,
}

impl Copied {
    /// Prints it, under this line for people.
    pub(crate) fn show(&self, json: bool, first: &str) -> Result<Outcome, Failure> {
        let words = Words::english();
        let lacking: Vec<&DocumentFault> =
            self.holdings.iter().flat_map(|holding| &holding.lacking).collect();
        if json {
            print_json(self)?;
        } else {
            let line =
                |of: &CopiedHolding| say::of_holding(words, &of.holding, of.entries, of.documents, &of.head);
            let lines: Vec<String> =
                std::iter::once(first.to_owned()).chain(self.holdings.iter().map(line)).collect();
            print(&lines.join("\n"))?;
            for fault in &lacking {
                let Refused { message, help } = keeping::document(words, fault);
                let said = failures::warning(words, &seen(&message));
                tell(&format!("{said}\n  {}", failures::help(words, &seen(&help))));
            }
        }
        Ok(if lacking.is_empty() { Outcome::Done } else { Outcome::InPart })
    }
}

/// Why a database was not copied.
pub(crate) enum Uncopied {
    /// One of the two databases.
    Store(StoreError),
    /// Anything else.
    Other(Failure),
}

impl Uncopied {
    /// A fault of the file in the making, said of the one that it would have become: the other is gone by then.
    pub(crate) fn of(self, making: &Path, file: &Path) -> Failure {
        let (made, place) = (making.display().to_string(), file.display().to_string());
        match self {
            Uncopied::Other(failure) => failure,
            Uncopied::Store(StoreError::Full { place: at }) if at == made => {
                StoreError::Full { place }.into()
            }
            Uncopied::Store(StoreError::Device { place: at, what }) if at == made => {
                StoreError::Device { place, what }.into()
            }
            Uncopied::Store(StoreError::CannotOpen { place: at, why }) if at == made => {
                StoreError::CannotOpen { place, why }.into()
            }
            Uncopied::Store(error) => error.into(),
        }
    }
}

impl From<StoreError> for Uncopied {
    fn from(error: StoreError) -> Uncopied {
        Uncopied::Store(error)
    }
}

impl From<Failure> for Uncopied {
    fn from(failure: Failure) -> Uncopied {
        Uncopied::Other(failure)
    }
}

impl From<Uncopied> for Failure {
    fn from(why: Uncopied) -> Failure {
        match why {
            Uncopied::Store(error) => error.into(),
            Uncopied::Other(failure) => failure,
        }
    }
}

/// The last entry of every holding.
pub(crate) async fn tips(journal: &dyn Journal) -> Result<Vec<Checkpoint>, StoreError> {
    let mut tips = Vec::new();
    for holding in journal.holdings().await? {
        if let Some((entries, head)) = journal.tip(&holding).await? {
            tips.push(Checkpoint { holding, entries, head });
        }
    }
    Ok(tips)
}

/// Whether a database keeps nothing at all.
pub(crate) async fn is_empty(journal: &dyn Journal) -> Result<bool, StoreError> {
    Ok(journal.holdings().await?.is_empty() && journal.keys().await?.is_empty())
}

/// Verifies every holding of a copy, and that it has what its source had: each holding, up to this entry or a later one.
pub(crate) async fn prove(
    copy: &dyn Journal,
    source: &dyn Journal,
    had: &[Checkpoint],
) -> Result<Vec<CopiedHolding>, Uncopied> {
    let words = Words::english();
    let holdings = copy.holdings().await?;
    if let Some(lost) = had.iter().find(|had| !holdings.contains(&had.holding)) {
        return Err(Failure::new(say::lost(words, &lost.holding), Label::CareTryAgain).into());
    }
    let mut proved = Vec::new();
    for holding in holdings {
        let since = had.iter().find(|had| had.holding == holding);
        let verified = copy.verify(&holding, since).await.map_err(|error| match error {
            // A copy is damaged as its source is: that one is named.
            StoreError::Guards { .. } | StoreError::Damaged { .. } => source.trusted().err().unwrap_or(error),
            error => error,
        })?;
        let (entries, head, lacking) = match verified {
            Verified::Sound { entries, head } => (entries, head, Vec::new()),
            Verified::Lacking { entries, head, documents } => (entries, head, documents),
            Verified::Broken(broken) => {
                return Err(StoreError::Broken { holding, broken: Box::new(broken) }.into());
            }
            Verified::CheckpointMissed(missed) => {
                let message = verify::missed(words, &holding, &keeping::missed(words, &missed));
                return Err(Failure::new(message, Label::CareTryAgain).into());
            }
        };
        let head = head.map(|head| head.to_string()).unwrap_or_default();
        let documents = copy.contents(&holding).await?.len();
        proved.push(CopiedHolding { holding, entries, head, documents, lacking });
    }
    Ok(proved)
}

/// Carries the holdings over, each up to this entry, and then the keys: a key is made before an entry is recorded with it.
pub(crate) async fn carry(
    from: &dyn Journal,
    to: &Arc<dyn Journal>,
    up_to: &[Checkpoint],
) -> Result<(), Uncopied> {
    for known in up_to {
        let to = Holdings::new(Arc::clone(to));
        carry_entries(from, &to, known).await?;
        carry_documents(from, &to, &known.holding).await?;
    }
    for key in from.keys().await? {
        if let Some((key, secret)) = from.key(key.id).await? {
            to.add_key(&key, secret).await?;
        }
    }
    Ok(())
}

/// The number of keys, which must be the same in both databases.
pub(crate) async fn same_keys(copy: &dyn Journal, source: &dyn Journal) -> Result<usize, Uncopied> {
    let keys = copy.keys().await?;
    if keys != source.keys().await? {
        return Err(Failure::new(Label::CareOtherKeys, Label::CareTryAgain).into());
    }
    Ok(keys.len())
}

async fn carry_entries(from: &dyn Journal, to: &Holdings, known: &Checkpoint) -> Result<(), Uncopied> {
    let holding = &known.holding;
    let (mut after, mut batch) = (0, Vec::new());
    while after < known.entries {
        let page = from.page(holding, after, PAGE).await?;
        let Some(last) = page.last() else {
            let (holding, by_place, by_id) = (holding.clone(), after, known.entries);
            return Err(StoreError::Lost { holding, by_place, by_id }.into());
        };
        after = last.seq;
        batch.extend(page.into_iter().filter(|entry| entry.seq <= known.entries));
        if after >= known.entries || !awaits_archive(&batch) {
            to.restore(holding, &batch, &[]).await.map_err(|error| told(holding, error))?;
            batch.clear();
        }
    }
    Ok(())
}

/// Whether an entry has no body, and the entry that says so is still to come. They are taken in together.
fn awaits_archive(entries: &[Entry]) -> bool {
    let places = |entry: &Entry| -> Option<Places> {
        let Event::Archived(body) = &entry.draft.event else { return None };
        Some(body.places.clone())
    };
    let named: Vec<Places> = entries.iter().filter_map(places).collect();
    let is_named = |seq| named.iter().any(|places| places.contains(seq));
    entries.iter().any(|entry| entry.is_in_archive() && !is_named(entry.seq))
}

/// Those that are missing or altered stay behind; verification names them.
async fn carry_documents(from: &dyn Journal, to: &Holdings, holding: &HoldingName) -> Result<(), Uncopied> {
    let (mut contents, mut bytes): (Vec<Content>, usize) = (Vec::new(), 0);
    for (hash, _) in from.contents(holding).await? {
        let Ok(content) = combclear_store::content_of(from, holding, hash).await? else { continue };
        bytes += content.bytes().len();
        contents.push(content);
        if bytes >= DOCUMENTS {
            to.restore(holding, &[], &contents).await.map_err(|error| told(holding, error))?;
            contents.clear();
            bytes = 0;
        }
    }
    to.restore(holding, &[], &contents).await.map_err(|error| told(holding, error))?;
    Ok(())
}

fn told(holding: &HoldingName, error: RecordError) -> Uncopied {
    match error {
        RecordError::NotNext(broken) => {
            StoreError::Broken { holding: holding.clone(), broken: Box::new(broken) }.into()
        }
        RecordError::Store(error) => error.into(),
        error => Failure::new(not_recorded(&error), Label::CareTryAgain).into(),
    }
}

/// A database that is made in a folder of its own beside the place where it goes. Whatever is in the folder is removed with it.
pub(crate) struct InTheMaking {
    folder: tempfile::TempDir,
}

impl InTheMaking {
    pub(crate) fn beside(file: &Path) -> Result<InTheMaking, Failure> {
        let made = tempfile::Builder::new().prefix(".combclear-").tempdir_in(folder_of(file));
        let folder = made.map_err(|error| super::output::cannot_make(file, &error))?;
        Ok(InTheMaking { folder })
    }

    pub(crate) fn path(&self) -> std::path::PathBuf {
        self.folder.path().join("copy.db")
    }

    /// Puts the database, which is closed, where it goes, unless something is there by now. Returns its size in bytes.
    pub(crate) fn put(self, file: &Path) -> Result<u64, Failure> {
        let made = self.path();
        let cannot = |error: &std::io::Error| super::output::cannot_make(file, error);
        let synced = std::fs::File::open(&made).and_then(|made| {
            made.sync_all()?;
            Ok(made.metadata()?.len())
        });
        let bytes = synced.map_err(|error| cannot(&error))?;
        let moved = tempfile::TempPath::try_from_path(made).map_err(|error| cannot(&error))?;
        moved.persist_noclobber(file).map_err(|error| cannot(&error.error))?;
        name_on_disk(file);
        Ok(bytes)
    }
}
