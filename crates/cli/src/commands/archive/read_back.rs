//! Reads archive files back in for one question. The journal stays as it is.

use std::collections::BTreeMap;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::facts::holding::Holding;
use combclear_domain::journal::event::Archived;
use combclear_domain::journal::{Content, Entry, EntryId, Event};
use combclear_store::Holdings;
use combclear_wording::terminal::verify as say;
use combclear_wording::{Label, Words};

use super::PAGE;
use super::file::{ArchiveFile, Unsound, read};
use crate::args::ReadBack;
use crate::failure::Failure;

/// A holding with the entries of some archives read back in.
pub(crate) struct Whole {
    pub(crate) holding: Holding,
    /// The documents of these archives.
    pub(crate) contents: Vec<Content>,
}

/// The `archived` entry that names a file: its id, its place, and what it says.
pub(crate) type Proved = Result<(EntryId, u64, Archived), String>;

/// Whether a file is an archive of this journal: its hash is in an `archived` entry, and its entries match what the journal
/// keeps of them. Otherwise, what is wrong.
pub(crate) async fn prove(
    holdings: &Holdings,
    holding: &HoldingName,
    file: &ArchiveFile,
) -> Result<Proved, Failure> {
    let words = Words::english();
    let told = holdings.read(holding, |folded| {
        let archives = folded.archives();
        archives.into_iter().map(|(record, body)| (record.id, record.seq, body.clone())).collect::<Vec<_>>()
    });
    let told = told.await?.unwrap_or_default();
    let Some((id, seq, body)) = told.iter().find(|(_, _, body)| body.file == file.hash) else {
        let near = told.iter().find(|(_, _, body)| body.digest == file.digest());
        return Ok(Err(near.map_or_else(
            || say::archive_untold(words, holding),
            |(id, seq, _)| say::archive_other_file(words, *seq, *id),
        )));
    };
    let contents = u64::try_from(file.contents.len()).unwrap_or(u64::MAX);
    if body.digest != file.digest() || body.contents != contents {
        return Ok(Err(say::archive_other_entries(words, *seq, *id)));
    }
    Ok(Ok((*id, *seq, body.clone())))
}

/// The holding as it was before the entries in these files were archived.
pub(crate) async fn whole(
    holdings: &Holdings,
    name: &HoldingName,
    archives: &ReadBack,
) -> Result<Whole, Failure> {
    let words = Words::english();
    let mut back: BTreeMap<u64, Entry> = BTreeMap::new();
    let (mut files, mut contents) = (Vec::new(), Vec::new());
    for path in &archives.archives {
        let shown = path.display().to_string();
        let broken = |what: String| {
            Failure::new(say::archive_broken(words, &shown, &what), Label::ArchiveNameOneOfThisJournal)
        };
        let file = match read(path, name) {
            Ok(file) => file,
            Err(Unsound::NotRead(failure)) => return Err(failure),
            Err(Unsound::DoesNotHold(what)) => return Err(broken(what)),
        };
        prove(holdings, name, &file).await?.map_err(broken)?;
        back.extend(file.entries.into_iter().map(|entry| (entry.seq, entry)));
        contents.extend(file.contents);
        files.push(file.hash);
    }
    let mut holding = Holding::new(name.clone());
    let mut after = 0;
    loop {
        let page = holdings.journal().page(name, after, PAGE).await?;
        let Some(last) = page.last() else { break };
        after = last.seq;
        for entry in &page {
            match &entry.draft.event {
                Event::Archived(body) if files.contains(&body.file) => holding.restore_whole(entry),
                _ => holding.restore(back.get(&entry.seq).unwrap_or(entry)),
            }
        }
    }
    Ok(Whole { holding, contents })
}
