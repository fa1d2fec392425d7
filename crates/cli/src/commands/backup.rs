//! `combclear backup` and `combclear restore`: a verified copy of the whole database in one file, and back.

use std::path::Path;
use std::sync::Arc;

use combclear_domain::journal::Checkpoint;
use combclear_store::{Journal, address_of, file_of};
use combclear_wording::terminal::{care as say, failures};
use combclear_wording::{Label, Words};

use super::copies::{Copied, CopiedHolding, InTheMaking, Uncopied, carry, is_empty, prove, same_keys, tips};
use super::output;
use crate::args::{Backup, Place, Restore};
use crate::failure::Failure;
use crate::{Outcome, place};

pub(crate) async fn run(at: &Place, ask: &Backup) -> Result<Outcome, Failure> {
    let words = Words::english();
    output::must_be_new([ask.file.as_path()])?;
    let journal = place::open_existing(at).await?;
    let copied = back_up(at, journal.as_ref(), &ask.file).await;
    journal.close().await;
    let copied = copied.map_err(|failure| failure.told(|why| say::not_backed_up(words, why)))?;
    copied.show(ask.json, &say::backed_up(words, &copied.file, copied.bytes, copied.keys))
}

/// Writes the copy beside the file, proves it, and only then gives it its name.
async fn back_up(at: &Place, journal: &dyn Journal, file: &Path) -> Result<Copied, Failure> {
    let words = Words::english();
    let had = tips(journal).await?;
    if had.is_empty() && journal.keys().await?.is_empty() {
        let message = failures::no_journal(words, &at.db.to_string());
        return Err(Failure::new(message, Label::JournalNameTheDatabase));
    }
    let making = InTheMaking::beside(file)?;
    let path = making.path();
    let of_file = |why: Uncopied| why.of(&path, file);
    let at_once = journal.copy_into(&path).await.map_err(|error| of_file(error.into()))?;
    let copy = combclear_store::open(&address_of(&path)).await.map_err(|error| of_file(error.into()))?;
    let done = proved_copy(journal, &copy, &had, at_once).await;
    copy.close().await;
    let (holdings, keys) = done.map_err(of_file)?;
    let bytes = making.put(file)?;
    Ok(Copied { file: file.display().to_string(), bytes, keys, holdings })
}

async fn proved_copy(
    journal: &dyn Journal,
    copy: &Arc<dyn Journal>,
    had: &[Checkpoint],
    at_once: bool,
) -> Result<(Vec<CopiedHolding>, usize), Uncopied> {
    if !at_once {
        carry(journal, copy, had).await?;
    }
    let holdings = prove(copy.as_ref(), journal, had).await?;
    // Others may make a key meanwhile, so those of the source are not compared.
    Ok((holdings, copy.keys().await?.len()))
}

pub(crate) async fn restore(at: &Place, ask: &Restore) -> Result<Outcome, Failure> {
    let words = Words::english();
    let name = ask.file.display().to_string();
    let copied = match combclear_store::open_existing(&address_of(&ask.file)).await {
        Ok(backup) => {
            let restored = restore_from(at, backup.as_ref(), &name).await;
            backup.close().await;
            restored
        }
        Err(error) => Err(error.into()),
    };
    let copied = copied.map_err(|failure| failure.told(|why| say::not_restored(words, why)))?;
    copied.show(ask.json, &say::restored(words, &name, &at.db.to_string(), copied.keys))
}

async fn restore_from(at: &Place, backup: &dyn Journal, name: &str) -> Result<Copied, Failure> {
    if is_empty(backup).await? {
        let message = failures::no_journal(Words::english(), name);
        return Err(Failure::new(message, Label::CareNameABackup));
    }
    let had = tips(backup).await?;
    prove(backup, backup, &had).await?;
    let given = at.db.whole();
    let only_if_there = given.ends_with("?mode=rw") || given.ends_with("?mode=ro");
    let (holdings, keys, bytes) = match file_of(given).filter(|file| !file.exists() && !only_if_there) {
        Some(file) => into_new_file(backup, &had, &file).await?,
        None => into_database(at, backup, &had).await?,
    };
    Ok(Copied { file: name.to_owned(), bytes, keys, holdings })
}

async fn into_new_file(
    backup: &dyn Journal,
    had: &[Checkpoint],
    file: &Path,
) -> Result<(Vec<CopiedHolding>, usize, u64), Failure> {
    let making = InTheMaking::beside(file)?;
    let path = making.path();
    let of_file = |why: Uncopied| why.of(&path, file);
    let journal = combclear_store::open(&address_of(&path)).await.map_err(|error| of_file(error.into()))?;
    let filled = fill(backup, &journal, had).await;
    journal.close().await;
    let (holdings, keys) = filled.map_err(of_file)?;
    let bytes = making.put(file)?;
    Ok((holdings, keys, bytes))
}

async fn into_database(
    at: &Place,
    backup: &dyn Journal,
    had: &[Checkpoint],
) -> Result<(Vec<CopiedHolding>, usize, u64), Failure> {
    let journal = combclear_store::open(at.db.whole()).await?;
    let filled = if is_empty(journal.as_ref()).await? {
        match fill(backup, &journal, had).await {
            // Entries are never removed, so what came in stays.
            Err(why) if !is_empty(journal.as_ref()).await.unwrap_or(true) => {
                Err(Failure::from(why).and(Label::CareInPart))
            }
            filled => filled.map_err(Failure::from),
        }
    } else {
        let message = say::not_empty(Words::english(), &at.db.to_string());
        Err(Failure::new(message, Label::CareNotEmptyHelp))
    };
    journal.close().await;
    let (holdings, keys) = filled?;
    let bytes = file_of(at.db.whole()).and_then(|file| file.metadata().ok()).map_or(0, |file| file.len());
    Ok((holdings, keys, bytes))
}

async fn fill(
    backup: &dyn Journal,
    journal: &Arc<dyn Journal>,
    had: &[Checkpoint],
) -> Result<(Vec<CopiedHolding>, usize), Uncopied> {
    carry(backup, journal, had).await?;
    let holdings = prove(journal.as_ref(), backup, had).await?;
    Ok((holdings, same_keys(journal.as_ref(), backup).await?))
}
