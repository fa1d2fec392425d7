//! The archive file: written as a whole, read back line by line.

use std::fs::{File, OpenOptions};
use std::io::{BufRead, BufReader, BufWriter, Write};
use std::path::Path;

use combclear_domain::basics::words::HoldingName;
use combclear_domain::journal::archive::{FileHash, Header, Rest, digest};
use combclear_domain::journal::entry::EntryFault;
use combclear_domain::journal::seal::hash_of;
use combclear_domain::journal::{Content, Entry, Event, Hash};

use crate::commands::output;
use crate::failure::{Failure, why};

/// An archive file, read and checked.
pub(crate) struct ArchiveFile {
    pub(crate) header: Header,
    /// What the journal keeps of its entries, in order.
    pub(crate) rests: Vec<Rest>,
    /// The contents, in order.
    pub(crate) contents: Vec<Hash>,
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
    // The name must reach the disk too. Some systems cannot sync a folder, which is no reason to stop.
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
    Ok(())
}

/// Removes a file that was not recorded.
pub(super) fn discard(path: &Path, failure: Failure) -> Failure {
    if std::fs::remove_file(path).is_err() {
        return failure.and("the file was not recorded as an archive; delete it");
    }
    failure
}

pub(super) fn cannot_write(path: &Path, error: &std::io::Error) -> Failure {
    let message = format!("nothing was moved: cannot write `{}`: {}", path.display(), why(error));
    Failure::new(message, "look where it goes, then try again")
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
    let name = path.display();
    let cannot = |error: std::io::Error| {
        Failure::new(format!("cannot read `{name}`: {}", why(&error)), "name the file of an archive")
    };
    let broken = |line: u64, what: String| Unsound::DoesNotHold(format!("line {line}: {what}"));
    let bad = |line: u64, fault: EntryFault| {
        let at = if fault.pointer.is_empty() { String::new() } else { format!("{}: ", fault.pointer) };
        broken(line, format!("{at}{}", fault.message))
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
            return Err(broken(line, "it ends in the middle of a line".to_owned()));
        };
        String::from_utf8(row.to_vec()).map_err(|_| broken(line, "it is not text".to_owned()))
    };
    next(&mut row)?;
    let header = Header::from_json(&text(&row, 1)?).map_err(|fault| bad(1, fault))?;
    if header.holding != *holding {
        let message = format!("`{name}` is an archive of `{}`, not of `{holding}`", header.holding);
        return Err(Failure::new(message, "name the right file, or the holding with --holding").into());
    }
    let (mut rests, mut contents): (Vec<Rest>, Vec<Hash>) = (Vec::new(), Vec::new());
    let mut named = Vec::new();
    let mut line = 1_u64;
    while next(&mut row)? {
        line = line.saturating_add(1);
        let text = text(&row, line)?;
        if u64::try_from(rests.len()).is_ok_and(|count| count < header.entries) {
            let entry = Entry::from_json(&text).map_err(|fault| bad(line, fault))?;
            if entry.is_in_archive() || hash_of(holding, &entry) != entry.hash {
                return Err(broken(
                    line,
                    format!("entry {} does not give its hash: it was changed", entry.seq),
                ));
            }
            if rests.last().is_some_and(|last: &Rest| last.seq >= entry.seq) {
                return Err(broken(line, format!("entry {} stands out of order", entry.seq)));
            }
            if let Event::DocumentAttached(document) = &entry.draft.event {
                named.push(document.content);
            }
            rests.push(Rest::of(holding, &entry));
        } else {
            let content = Content::from_json(&text).map_err(|fault| bad(line, fault))?;
            if !named.contains(&content.hash()) || contents.contains(&content.hash()) {
                return Err(broken(
                    line,
                    format!("no entry of the file asks for document {}", content.hash()),
                ));
            }
            contents.push(content.hash());
        }
    }
    let count = |found: usize| u64::try_from(found).unwrap_or(u64::MAX);
    if (count(rests.len()), count(contents.len())) != (header.entries, header.contents) {
        let what = format!(
            "{} entries and {} documents are promised, {} and {} are here",
            header.entries,
            header.contents,
            rests.len(),
            contents.len()
        );
        return Err(broken(1, what));
    }
    Ok(ArchiveFile { header, rests, contents, hash: whole.finish() })
}
