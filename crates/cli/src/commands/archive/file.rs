//! The archive file: written as a whole, read back line by line.

use std::fs::{File, OpenOptions};
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::{FileHash, Header, Rest, digest};
use combclear_domain::journal::entry::EntryFault;
use combclear_domain::journal::seal::hash_of;
use combclear_domain::journal::{Content, Entry, Event, Hash};

use combclear_wording::terminal::{archive as say, failures, import};
use combclear_wording::{Label, Words, unreadable};

use crate::commands::output;
use crate::failure::{Failure, Said, why};

/// An archive file, read and checked.
pub(crate) struct ArchiveFile {
    pub(crate) header: Header,
    /// What the journal keeps of its entries, in order.
    pub(crate) rests: Vec<Rest>,
    /// Its entries, in order.
    pub(crate) entries: Vec<Entry>,
    /// The contents, in order.
    pub(crate) contents: Vec<Content>,
    /// The hash of the file.
    pub(crate) hash: Hash,
}

impl ArchiveFile {
    pub(crate) fn digest(&self) -> Hash {
        digest(&self.rests)
    }
}

/// Creates the file, which must not exist, and syncs it to disk. An incomplete file is removed.
pub(super) fn write(
    path: &Path,
    lines: impl FnOnce(&mut dyn Write) -> Result<(), Failure>,
) -> Result<(), Failure> {
    let opened = OpenOptions::new().write(true).create_new(true).open(path);
    let file = opened.map_err(|error| output::cannot_make(path, &error))?;
    let mut out = BufWriter::new(file);
    let written = lines(&mut out).and_then(|()| finish(path, &mut out));
    written.map_err(|failure| {
        drop(out.into_parts());
        discard(path, failure)
    })
}

fn finish(path: &Path, out: &mut BufWriter<File>) -> Result<(), Failure> {
    out.flush().and_then(|()| out.get_ref().sync_all()).map_err(|error| cannot_write(path, &error))?;
    output::name_on_disk(path);
    Ok(())
}

/// Removes a file that was not recorded.
pub(super) fn discard(path: &Path, failure: Failure) -> Failure {
    if std::fs::remove_file(path).is_err() {
        return failure.and(Label::ArchiveDeleteFile);
    }
    failure
}

pub(super) fn cannot_write(path: &Path, error: &std::io::Error) -> Failure {
    let words = Words::english();
    let message = failures::cannot_write(words, &path.display().to_string(), &why(error));
    Failure::new(say::nothing_moved(words, &message), Label::FileLookTryAgain)
}

/// Why an archive file proves nothing.
pub(crate) enum Unsound {
    /// It could not be read, or belongs to another holding.
    NotRead(Failure),
    /// It was changed or cut: where and how.
    DoesNotHold(String),
}

impl From<Failure> for Unsound {
    fn from(failure: Failure) -> Unsound {
        Unsound::NotRead(failure)
    }
}

/// Reads an archive file of this holding. Checks the hash of every entry and content, that an entry of the file names each
/// content, and that all are there.
pub(crate) fn read(path: &Path, holding: &HoldingName) -> Result<ArchiveFile, Unsound> {
    let (words, name) = (Words::english(), path.display().to_string());
    let cannot = |error: std::io::Error| {
        Failure::new(failures::cannot_read(words, &name, &why(&error)), Label::ArchiveNameTheFile)
    };
    let broken = |line: u64, what: String| Unsound::DoesNotHold(say::line(words, line, &what));
    let bad = |line: u64, fault: EntryFault| {
        broken(line, import::at(words, &fault.pointer, &unreadable::line(words, &fault).message))
    };
    let mut reader = BufReader::new(File::open(path).map_err(cannot)?);
    let mut whole = FileHash::default();
    let mut row = Vec::new();
    let mut next = |row: &mut Vec<u8>| -> Result<bool, Failure> {
        row.clear();
        reader.read_until(b'\n', row).map_err(cannot)?;
        whole.update(row);
        Ok(!row.is_empty())
    };
    let text = |row: &[u8], line: u64| -> Result<String, Unsound> {
        let Some(row) = row.strip_suffix(b"\n") else {
            return Err(broken(line, Label::ArchiveCutLine.said()));
        };
        String::from_utf8(row.to_vec()).map_err(|_| broken(line, Label::ArchiveNotText.said()))
    };
    next(&mut row)?;
    let header = Header::from_json(&text(&row, 1)?).map_err(|fault| bad(1, fault))?;
    if header.holding != *holding {
        let message = say::of_other_holding(words, &name, &header.holding, holding);
        return Err(Failure::new(message, Label::NameTheRightFile).into());
    }
    let (mut rests, mut contents): (Vec<Rest>, Vec<Content>) = (Vec::new(), Vec::new());
    let mut entries = Vec::new();
    let mut named = Vec::new();
    let mut line = 1_u64;
    while next(&mut row)? {
        line = line.saturating_add(1);
        let text = text(&row, line)?;
        if u64::try_from(rests.len()).is_ok_and(|count| count < header.entries) {
            let entry = Entry::from_json(&text).map_err(|fault| bad(line, fault))?;
            if entry.is_in_archive() || hash_of(holding, &entry) != entry.hash {
                return Err(broken(line, say::entry_changed(words, entry.seq)));
            }
            if rests.last().is_some_and(|last: &Rest| last.seq >= entry.seq) {
                return Err(broken(line, say::entry_out_of_order(words, entry.seq)));
            }
            if let Event::DocumentAttached(document) = &entry.draft.event {
                named.push(document.content);
            }
            rests.push(Rest::of(holding, &entry));
            entries.push(entry);
        } else {
            let content = Content::from_json(&text).map_err(|fault| bad(line, fault))?;
            if !named.contains(&content.hash()) || contents.iter().any(|known| known.hash() == content.hash())
            {
                return Err(broken(line, say::document_of_none(words, content.hash())));
            }
            contents.push(content);
        }
    }
    let count = |found: usize| u64::try_from(found).unwrap_or(u64::MAX);
    if (count(rests.len()), count(contents.len())) != (header.entries, header.contents) {
        let what = say::promised(words, header.entries, header.contents, rests.len(), contents.len());
        return Err(broken(1, what));
    }
    Ok(ArchiveFile { header, rests, entries, contents, hash: whole.finish() })
}
